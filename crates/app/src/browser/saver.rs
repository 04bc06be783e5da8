//! The saver writes each change of the document to the database in order, and listens for changes from other
//! tabs.
//!
//! Nothing is written until all saved data was read or the maker decided about the rest. Data that could not
//! be read now may be intact.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use gloo::timers::callback::Timeout;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::spawn_local;
use workshop::records::Saved;
use workshop::{Edit, Workshop};
use yew::Callback;

use super::device::after_next_frame;
use super::device_status;
use super::store::{DATABASE, Store, StoreError};
use crate::state::{Action, Load, Message, SaveStatus};

/// How long the database may take before the maker is told, in milliseconds.
const SLOW: u32 = 8_000;

/// How many times to reopen a database that was closed by the browser, and the interval in milliseconds.
const REOPENINGS: u32 = 10;
const BETWEEN_OPENINGS: u32 = 300;

/// Whether data is read because another tab has written it.
#[derive(Clone, Copy, PartialEq)]
enum Heard {
    Yes,
    No,
}

/// Saves the document. A clone is another handle to the same saver.
#[derive(Clone)]
pub struct Saver(Rc<Inner>);

struct Inner {
    tell: Callback<Action>,
    /// The name of the database.
    name: &'static str,
    store: RefCell<Option<Rc<Store>>>,
    /// The document when the page and the database last agreed. Changes are computed from it to `wanted`.
    kept: RefCell<Rc<Workshop>>,
    /// The document that the database should contain.
    wanted: RefCell<Rc<Workshop>>,
    /// True if anything was read.
    was_read: Cell<bool>,
    /// True if the database may be written to.
    may_write: Cell<bool>,
    writing: Cell<bool>,
    /// True if there is saved data that has not been read yet, such as a change from another tab.
    heard: Cell<bool>,
    /// True if the browser was asked not to clear the data.
    asked: Cell<bool>,
    channel: Option<web_sys::BroadcastChannel>,
}

impl Saver {
    /// Opens the database and loads the document. All events go to `tell`.
    pub fn start(tell: Callback<Action>) -> Self {
        Self::start_with(DATABASE, tell)
    }

    /// Like [`Saver::start`], with another database for tests.
    pub fn start_with(name: &'static str, tell: Callback<Action>) -> Self {
        let saver = Saver(Rc::new(Inner {
            tell,
            name,
            store: RefCell::default(),
            kept: RefCell::default(),
            wanted: RefCell::default(),
            was_read: Cell::new(false),
            may_write: Cell::new(false),
            writing: Cell::new(false),
            heard: Cell::new(false),
            asked: Cell::new(false),
            channel: web_sys::BroadcastChannel::new(name).ok(),
        }));
        saver.listen();
        saver.try_again();
        let waiting = saver.clone();
        Timeout::new(SLOW, move || waiting.tell(Action::Load(Load::Slow))).forget();
        saver
    }

    /// Reads the saved data again after a failure.
    pub fn try_again(&self) {
        let saver = self.clone();
        spawn_local(async move {
            if saver.0.store.borrow().is_none()
                && let Err(error) = saver.open().await
            {
                return saver.tell(Action::Load(Load::Failed(error.reason)));
            }
            saver.read(Heard::No).await;
        });
    }

    /// Replaces all saved data with the document, after the maker gave up what cannot be read.
    pub fn leave_out(&self) {
        let Some(store) = self.0.store.borrow().clone() else {
            return;
        };
        let saver = self.clone();
        spawn_local(async move {
            let wanted = saver.0.wanted.borrow().clone();
            match store.save_whole(&wanted).await {
                Ok(()) => {
                    *saver.0.kept.borrow_mut() = wanted;
                    saver.0.may_write.set(true);
                    saver.tell(Action::Load(Load::Whole));
                    saver.done();
                    // The maker may have continued in the meantime.
                    saver.write_soon();
                }
                Err(error) => saver.fail(error),
            }
        });
    }

    /// Saves this document after the previous one was written and the page has shown its results.
    pub fn keep(&self, workshop: &Rc<Workshop>) {
        *self.0.wanted.borrow_mut() = workshop.clone();
        if self.0.may_write.get() && !self.0.writing.get() && self.is_kept() {
            return self.tell(Action::SaveStatus(SaveStatus::Saved));
        }
        self.write_soon();
    }

    fn tell(&self, act: Action) {
        self.0.tell.emit(act);
    }

    fn is_kept(&self) -> bool {
        Rc::ptr_eq(&self.0.kept.borrow(), &self.0.wanted.borrow())
    }

    /// Opens the database.
    async fn open(&self) -> Result<Rc<Store>, StoreError> {
        let saver = self.clone();
        let store = Store::open(self.0.name, move || saver.lost()).await?;
        let store = Rc::new(store);
        *self.0.store.borrow_mut() = Some(store.clone());
        Ok(store)
    }

    /// Handles a database that was closed by the browser, for example because somebody cleared the site data.
    /// It is reopened, and the whole document is written if nothing is left.
    fn lost(&self) {
        if self.0.store.borrow_mut().take().is_none() {
            // It is already being reopened.
            return;
        }
        self.tell(Action::SaveStatus(SaveStatus::Writing));
        self.reopen(REOPENINGS);
    }

    /// Reopens the database. While the browser is clearing data it refuses, so several attempts are made.
    fn reopen(&self, tries: u32) {
        let saver = self.clone();
        spawn_local(async move {
            let found = match saver.open().await {
                Ok(store) => store.load().await,
                Err(error) => Err(error),
            };
            match found {
                Err(_) if tries > 0 => {
                    let again = move || saver.reopen(tries - 1);
                    Timeout::new(BETWEEN_OPENINGS, again).forget();
                    return;
                }
                Ok(None) => {
                    *saver.0.kept.borrow_mut() = Rc::default();
                    // There is nothing to overwrite.
                    if !saver.0.may_write.replace(true) {
                        saver.tell(Action::Load(Load::Whole));
                    }
                }
                Ok(Some(_)) => saver.0.heard.set(true),
                Err(error) => return saver.fail(error),
            }
            if saver.is_quiet() {
                saver.done();
            }
            saver.write_soon();
            saver.read_what_was_heard();
        });
    }

    /// Writes the wanted document, unless the database already contains it.
    fn write_soon(&self) {
        let inner = &self.0;
        if inner.writing.get() || !inner.may_write.get() || inner.store.borrow().is_none() || self.is_kept() {
            return;
        }
        inner.writing.set(true);
        let saver = self.clone();
        after_next_frame(move || {
            spawn_local(async move { saver.write().await });
        });
    }

    async fn write(&self) {
        while !self.is_kept() {
            let Some(store) = self.0.store.borrow().clone() else {
                return self.0.writing.set(false);
            };
            let (wanted, kept) = (self.0.wanted.borrow().clone(), self.0.kept.borrow().clone());
            match store.save(&wanted, &kept).await {
                Ok(is_mixed) => {
                    *self.0.kept.borrow_mut() = wanted;
                    // The database now has changes that this page does not know.
                    if is_mixed {
                        self.0.heard.set(true);
                    }
                }
                Err(error) => {
                    self.0.writing.set(false);
                    return match error.is_closed {
                        true => self.lost(),
                        false => self.fail(error),
                    };
                }
            }
        }
        self.0.writing.set(false);
        self.done();
        self.read_what_was_heard();
    }

    /// Reports that everything is saved.
    fn done(&self) {
        self.tell(Action::SaveStatus(SaveStatus::Saved));
        self.ask_once();
        if let Some(channel) = &self.0.channel {
            // Without the message, the other tabs read the database the next time they open.
            let _ = channel.post_message(&JsValue::from_str("kept"));
        }
    }

    /// Reads what another tab has saved. If a change of this page is being written, the reading waits for it.
    fn read_what_was_heard(&self) {
        if self.0.heard.get() && self.is_quiet() {
            self.0.heard.set(false);
            let saver = self.clone();
            spawn_local(async move { saver.read(Heard::Yes).await });
        }
    }

    /// Asks once, and only when there is something to lose, because some browsers then ask the maker.
    fn ask_once(&self) {
        if !self.0.asked.get() && device_status::has_own_piece(&self.0.kept.borrow()) {
            self.0.asked.set(true);
            device_status::ask_to_last();
        }
    }

    /// Returns true if the database contains the wanted document and nothing is being written.
    fn is_quiet(&self) -> bool {
        self.is_kept() && !self.0.writing.get()
    }

    async fn read(&self, heard: Heard) {
        let Some(store) = self.0.store.borrow().clone() else {
            return;
        };
        match store.load().await {
            // The maker changed the document during the read, so it is newer than the data. Read again after
            // it is saved.
            Ok(_) if heard == Heard::Yes && !self.is_quiet() => self.0.heard.set(true),
            Ok(saved) => self.take(saved.unwrap_or_default()),
            Err(error) if heard == Heard::No => self.tell(Action::Load(Load::Failed(error.reason))),
            Err(error) => self.fail(error),
        }
    }

    /// Accepts the data that was read.
    fn take(&self, saved: Saved) {
        let Saved {
            workshop,
            as_found,
            unread,
        } = saved;
        let load = unread.map_or(Load::Whole, |unread| Load::Partly(Rc::new(unread)));
        self.0.may_write.set(load == Load::Whole);
        let is_first = !self.0.was_read.replace(true);
        let (wanted, kept) = (self.0.wanted.borrow().clone(), self.0.kept.borrow().clone());
        let is_changed = !self.is_kept() && *wanted != *kept;
        if is_changed && !is_first {
            // Changes made while nothing could be written are applied to the current data, which is read
            // afterward.
            self.0.heard.set(true);
            self.tell(Action::Load(load));
            return self.write_soon();
        }
        // If older records were updated, the difference is written.
        *self.0.kept.borrow_mut() = as_found;
        let saved = workshop;
        // Pieces added while nothing could be read are added to the saved ones.
        let both = match is_changed {
            true => saved.apply(Edit::Gather((*wanted).clone())).map(Rc::new),
            false => Ok(saved.clone()),
        };
        let document = both.unwrap_or_else(|error| {
            self.tell(Action::Tell(Message::Plain(error.to_string())));
            saved
        });
        *self.0.wanted.borrow_mut() = document.clone();
        self.tell(Action::Loaded(document));
        self.tell(Action::Load(load));
        if self.0.may_write.get() {
            if self.is_kept() {
                self.tell(Action::SaveStatus(SaveStatus::Saved));
            }
            // Data that could not be read completely must not be overwritten.
            self.tell(Action::Told);
        }
        self.write_soon();
    }

    /// Listens for changes from other tabs.
    fn listen(&self) {
        let Some(channel) = &self.0.channel else { return };
        let saver = self.clone();
        let heard = Closure::<dyn Fn()>::new(move || {
            saver.0.heard.set(true);
            saver.read_what_was_heard();
        });
        channel.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        // The saver and its listener live as long as the page.
        heard.forget();
    }

    fn fail(&self, error: StoreError) {
        self.tell(Action::SaveStatus(SaveStatus::Failed(error.reason)));
    }
}
