//! The saver: writes each change of the document into the database, one after the other, and listens to what
//! other tabs have written.
//!
//! Nothing is written before all that is saved was read, or the maker decided what becomes of the rest: what could not be
//! read once may be whole.

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

/// How long the database may take before the maker is told, milliseconds.
const SLOW: u32 = 8_000;

/// How often a database that was closed under the page is opened again, and how long after the last time, milliseconds.
const REOPENINGS: u32 = 10;
const BETWEEN_OPENINGS: u32 = 300;

/// Whether what is saved is read because another tab has written.
#[derive(Clone, Copy, PartialEq)]
enum Heard {
    Yes,
    No,
}

/// Keeps the document. Cloning gives another handle to the same saver.
#[derive(Clone)]
pub struct Saver(Rc<Inner>);

struct Inner {
    tell: Callback<Action>,
    /// The name of the database.
    name: &'static str,
    store: RefCell<Option<Rc<Store>>>,
    /// The document as it was when the page and the database last agreed. Changes are made from it to what is wanted.
    kept: RefCell<Rc<Workshop>>,
    /// What the database should hold.
    wanted: RefCell<Rc<Workshop>>,
    /// Whether anything was read at all.
    was_read: Cell<bool>,
    /// Whether the database may be written.
    may_write: Cell<bool>,
    writing: Cell<bool>,
    /// Whether there is something saved that was not read yet, such as what another tab wrote.
    heard: Cell<bool>,
    /// Whether the browser was asked to clear nothing by itself.
    asked: Cell<bool>,
    channel: Option<web_sys::BroadcastChannel>,
}

impl Saver {
    /// Opens the database and loads the document; everything that happens is told to `tell`.
    pub fn start(tell: Callback<Action>) -> Self {
        Self::start_with(DATABASE, tell)
    }

    /// The same with a database of another name, for tests.
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

    /// Reads what is saved, once more if that failed.
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

    /// The maker lets go of what cannot be read: the document takes the place of all that is saved.
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
                    // The maker may have gone on meanwhile.
                    saver.write_soon();
                }
                Err(error) => saver.fail(error),
            }
        });
    }

    /// Keeps this document as soon as the one before is written, and the page has shown what it comes to.
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

    /// The database was closed under the page, as when someone clears the data of the site. It is opened again, and gets
    /// the whole document if nothing is left there.
    fn lost(&self) {
        if self.0.store.borrow_mut().take().is_none() {
            // It is being opened again already.
            return;
        }
        self.tell(Action::SaveStatus(SaveStatus::Writing));
        self.reopen(REOPENINGS);
    }

    /// Opens the database again. While the browser still clears, it refuses; so that is tried some times.
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
                    // Nothing is there that could be written over.
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

    /// Writes what is wanted, unless that is done already.
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
                    // There is more now than this page knows.
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

    /// All is kept.
    fn done(&self) {
        self.tell(Action::SaveStatus(SaveStatus::Saved));
        self.ask_once();
        if let Some(channel) = &self.0.channel {
            // The other tabs only miss a hint; they read the database when they are opened again.
            let _ = channel.post_message(&JsValue::from_str("kept"));
        }
    }

    /// Takes over what another tab has kept, unless there is a change of our own on its way; then it is done after that.
    fn read_what_was_heard(&self) {
        if self.0.heard.get() && self.is_quiet() {
            self.0.heard.set(false);
            let saver = self.clone();
            spawn_local(async move { saver.read(Heard::Yes).await });
        }
    }

    /// Once there is something to lose, and once only: some browsers ask the maker in turn.
    fn ask_once(&self) {
        if !self.0.asked.get() && device_status::has_own_piece(&self.0.kept.borrow()) {
            self.0.asked.set(true);
            device_status::ask_to_last();
        }
    }

    /// Whether the database holds what it should.
    fn is_quiet(&self) -> bool {
        self.is_kept() && !self.0.writing.get()
    }

    async fn read(&self, heard: Heard) {
        let Some(store) = self.0.store.borrow().clone() else {
            return;
        };
        match store.load().await {
            // What the maker changed while the database was read is newer than what was read: it is read again when that
            // is kept.
            Ok(_) if heard == Heard::Yes && !self.is_quiet() => self.0.heard.set(true),
            Ok(saved) => self.take(saved.unwrap_or_default()),
            Err(error) if heard == Heard::No => self.tell(Action::Load(Load::Failed(error.reason))),
            Err(error) => self.fail(error),
        }
    }

    /// Takes over what was read.
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
            // What was changed while nothing could be written is made on what is there now, and that is read then.
            self.0.heard.set(true);
            self.tell(Action::Load(load));
            return self.write_soon();
        }
        // Where older records were brought up to date, what lies between is written.
        *self.0.kept.borrow_mut() = as_found;
        let saved = workshop;
        // What was begun while nothing could be read comes in beside what is there.
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
            // Nothing is written over what could not be read whole.
            self.tell(Action::Told);
        }
        self.write_soon();
    }

    /// Listens to what other tabs keep.
    fn listen(&self) {
        let Some(channel) = &self.0.channel else { return };
        let saver = self.clone();
        let heard = Closure::<dyn Fn()>::new(move || {
            saver.0.heard.set(true);
            saver.read_what_was_heard();
        });
        channel.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        // The saver lives as long as the page, and so does its ear.
        heard.forget();
    }

    fn fail(&self, error: StoreError) {
        self.tell(Action::SaveStatus(SaveStatus::Failed(error.reason)));
    }
}
