//! Editing the lines of books. All books are edited in the same way.

mod field;
mod picture;

use std::rc::Rc;

use workshop::BookEdit;
use workshop::book::{Book, book};
use yew::prelude::*;

use super::Send;
use crate::browser::{new_name, now, today};
use crate::parts::{button, button_for};
use crate::state::{Action, App, EntryId};

/// A line of a book that can be edited.
pub struct Form<'a> {
    app: &'a App,
    send: &'a Send,
    book: &'static Book,
    line: Rc<str>,
}

impl<'a> Form<'a> {
    /// Returns the form for the line with this id in the book with this key, if the book exists.
    pub fn of(app: &'a App, send: &'a Send, key: &str, line: Rc<str>) -> Option<Self> {
        Some(Form {
            app,
            send,
            book: book(key)?,
            line,
        })
    }

    /// Shows these fields side by side.
    pub fn fields(&self, keys: &[&str]) -> Html {
        html! { <div class="fields">{ for keys.iter().map(|key| self.field(key)) }</div> }
    }

    /// Returns a callback that sets several values at once.
    pub fn fill(&self) -> Callback<Vec<(&'static str, String)>> {
        let (book, line) = (self.book.key, Rc::clone(&self.line));
        self.send
            .reform(move |values| Action::Book(BookEdit::Fill(book, Rc::clone(&line), values)))
    }

    fn id(&self, key: &str) -> EntryId {
        EntryId {
            book: self.book.key,
            line: Rc::clone(&self.line),
            field: key.to_owned(),
        }
    }

    /// Returns a callback that sets a value that was selected instead of typed.
    fn set(&self, key: &str) -> Callback<String> {
        let EntryId { book, line, field } = self.id(key);
        self.send.reform(move |text| {
            Action::Book(BookEdit::Write(
                book,
                Rc::clone(&line),
                field.clone(),
                String::into(text),
            ))
        })
    }

    /// Shows a button that deletes the line. Where two are close together, the button says what it deletes.
    pub fn strike(&self, what: &str) -> Html {
        let (key, line) = (self.book.key, Rc::clone(&self.line));
        let word = match key {
            "recipes" => "Delete recipe",
            "batches" => "Delete batch",
            "weighings" => "Delete weighing",
            "shelf" => "Delete can",
            _ => "Delete",
        };
        let id = format!("strike-{key}-{line}");
        let strike = self
            .send
            .reform(move |_: MouseEvent| Action::Book(BookEdit::Strike(key, Rc::clone(&line))));
        button_for(id, word, format!("{word}: {what}"), strike)
    }
}

/// Shows these fields of a single-line book.
pub fn only(app: &App, send: &Send, key: &str, fields: &[&str]) -> Html {
    let form = Form::of(app, send, key, "only".into());
    form.map_or_else(Html::default, |form| form.fields(fields))
}

/// Returns the edit that checks off an item today, or unchecks it.
pub fn tick_off(book: &'static str, thing: &Rc<str>, is_ticked: bool) -> BookEdit {
    match is_ticked {
        true => BookEdit::Strike(book, Rc::clone(thing)),
        false => BookEdit::Add(book, Rc::clone(thing), vec![("day", today().to_string())]),
    }
}

/// Returns the edit that checks off a step now, or unchecks it. Drying counts from that time.
pub fn tick_step(step: &Rc<str>, is_ticked: bool) -> BookEdit {
    match is_ticked {
        true => BookEdit::Strike("done", Rc::clone(step)),
        false => {
            let now = now();
            let values = vec![
                ("day", now.day().to_string()),
                ("minute", now.minute().to_string()),
            ];
            BookEdit::Add("done", Rc::clone(step), values)
        }
    }
}

/// Shows a button that adds a line with these initial values.
pub fn add(
    send: &Send,
    key: &'static str,
    word: &'static str,
    first: impl Fn() -> Vec<(&'static str, String)> + 'static,
) -> Html {
    let add = send.reform(move |_: MouseEvent| Action::Book(BookEdit::Add(key, new_name().into(), first())));
    button(format!("add-{key}"), word, add)
}
