//! The keeper: writes each change of the document into the database, one after the other, and listens to what
//! other tabs have written.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::spawn_local;
use workshop::Workshop;
use yew::Callback;

use super::device::after_next_frame;
use super::standing;
use super::store::{Store, StoreError};
use crate::state::{Act, Keeping, Message};

/// Whether the database is read for the first time.
#[derive(Clone, Copy, PartialEq)]
enum First {
    Yes,
    No,
}

/// Keeps the document. Cloning gives another handle to the same keeper.
#[derive(Clone)]
pub struct Keeper(Rc<Inner>);

struct Inner {
    tell: Callback<Act>,
    store: RefCell<Option<Rc<Store>>>,
    /// What the database holds.
    kept: RefCell<Rc<Workshop>>,
    /// What it should hold.
    wanted: RefCell<Rc<Workshop>>,
    writing: Cell<bool>,
    /// Whether another tab has kept something that was not read yet.
    heard: Cell<bool>,
    /// Whether the browser was asked to clear nothing by itself.
    asked: Cell<bool>,
    channel: Option<web_sys::BroadcastChannel>,
}

impl Keeper {
    /// Opens the database and loads the document; everything that happens is told to `tell`.
    pub fn start(tell: Callback<Act>) -> Self {
        let keeper = Keeper(Rc::new(Inner {
            tell,
            store: RefCell::default(),
            kept: RefCell::default(),
            wanted: RefCell::default(),
            writing: Cell::new(false),
            heard: Cell::new(false),
            asked: Cell::new(false),
            channel: web_sys::BroadcastChannel::new("coatwright").ok(),
        }));
        keeper.listen();
        let opening = keeper.clone();
        spawn_local(async move {
            match Store::open().await {
                Ok(store) => {
                    *opening.0.store.borrow_mut() = Some(Rc::new(store));
                    opening.read(First::Yes).await;
                }
                Err(error) => opening.fail(error),
            }
        });
        keeper
    }

    /// Keeps this document as soon as the one before is written, and the page has shown what it comes to.
    pub fn keep(&self, workshop: &Rc<Workshop>) {
        *self.0.wanted.borrow_mut() = workshop.clone();
        if self.0.writing.get() || self.0.store.borrow().is_none() {
            return;
        }
        if self.is_kept() {
            return self.0.tell.emit(Act::Keeping(Keeping::Kept));
        }
        self.0.writing.set(true);
        let keeper = self.clone();
        after_next_frame(move || {
            spawn_local(async move { keeper.write().await });
        });
    }

    fn is_kept(&self) -> bool {
        Rc::ptr_eq(&self.0.kept.borrow(), &self.0.wanted.borrow())
    }

    async fn write(&self) {
        let Some(store) = self.0.store.borrow().clone() else {
            return;
        };
        while !self.is_kept() {
            let (wanted, kept) = (self.0.wanted.borrow().clone(), self.0.kept.borrow().clone());
            if let Err(error) = store.keep(&wanted, &kept).await {
                self.0.writing.set(false);
                return self.fail(error);
            }
            *self.0.kept.borrow_mut() = wanted;
        }
        self.0.writing.set(false);
        self.0.tell.emit(Act::Keeping(Keeping::Kept));
        self.read_what_was_heard();
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
            let keeper = self.clone();
            spawn_local(async move { keeper.read(First::No).await });
        }
    }

    /// Once there is something to lose, and once only: some browsers ask the maker in turn.
    fn ask_once(&self) {
        if !self.0.asked.get() && standing::has_own_piece(&self.0.kept.borrow()) {
            self.0.asked.set(true);
            standing::ask_to_last();
        }
    }

    /// Whether the database holds what it should.
    fn is_quiet(&self) -> bool {
        self.is_kept() && !self.0.writing.get()
    }

    async fn read(&self, first: First) {
        let Some(store) = self.0.store.borrow().clone() else {
            return;
        };
        match store.load().await {
            // What the maker changed while the database was read is newer than what was read: it is read again when that
            // is kept.
            Ok(_) if first == First::No && !self.is_quiet() => self.0.heard.set(true),
            Ok(found) => {
                let (workshop, notices) = found.unwrap_or_default();
                let workshop = Rc::new(workshop);
                *self.0.kept.borrow_mut() = workshop.clone();
                *self.0.wanted.borrow_mut() = workshop.clone();
                self.0.tell.emit(Act::Loaded(workshop));
                self.0.tell.emit(Act::Keeping(Keeping::Kept));
                // Nothing is written over what could not be read whole until the maker changes it.
                if notices.is_empty() {
                    self.0.tell.emit(Act::Told);
                }
                for notice in notices {
                    self.0.tell.emit(Act::Tell(Message::Plain(notice.to_string())));
                }
            }
            Err(error) => self.fail(error),
        }
    }

    /// Listens to what other tabs keep.
    fn listen(&self) {
        let Some(channel) = &self.0.channel else { return };
        let keeper = self.clone();
        let heard = Closure::<dyn Fn()>::new(move || {
            keeper.0.heard.set(true);
            keeper.read_what_was_heard();
        });
        channel.set_onmessage(Some(heard.as_ref().unchecked_ref()));
        // The keeper lives as long as the page, and so does its ear.
        heard.forget();
    }

    fn fail(&self, StoreError(reason): StoreError) {
        self.0.tell.emit(Act::Keeping(Keeping::Failed(reason)));
    }
}
