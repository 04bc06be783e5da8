//! A field of a line. Its kind determines what it shows and accepts.

use coatings::{Substrate, TOOLS};
use geometry::Kind;
use web_sys::{HtmlInputElement, HtmlTextAreaElement};
use workshop::Colour;
use workshop::book::FieldKind;
use yew::prelude::*;

use super::Form;
use crate::browser::mark_all_soon;
use crate::parts::{palette, select};
use crate::state::{Action, DraftId};

impl Form<'_> {
    /// Shows the field with this key.
    pub fn field(&self, key: &str) -> Html {
        let Some(field) = self.book.field(key) else {
            return Html::default();
        };
        let label = match field.kind {
            FieldKind::Of(quantity) => {
                format!(
                    "{}, {}",
                    field.label,
                    quantity.usual_unit(self.app.workshop.units)
                )
            }
            FieldKind::Scale => format!("{}, g", field.label),
            FieldKind::Amount(bare) => {
                let (quantity, system) = bare.means(self.app.workshop.units);
                format!("{}, {}", field.label, quantity.usual_unit(system))
            }
            // Browsers show black if no color was chosen.
            FieldKind::Colour if self.text(key).is_empty() => {
                format!("{}: none yet", field.label)
            }
            _ => field.label.into(),
        };
        match field.kind {
            FieldKind::Text => self.written(key, &label, "text", false),
            FieldKind::Hours => self.written(key, &label, "text", true),
            FieldKind::Count(_) => self.written(key, &label, "numeric", true),
            FieldKind::Money => self.written(key, &label, "decimal", true),
            FieldKind::Scale | FieldKind::Amount(_) => self.written(key, &label, "text", true),
            FieldKind::Colour => self.native(key, &label, "color"),
            FieldKind::Of(_) => self.written(key, &label, "text", true),
            FieldKind::Words => self.words(key, &label),
            FieldKind::Day => self.native(key, &label, "date"),
            FieldKind::Material => self.material(key, &label),
            FieldKind::Can => {
                let cans = coatings::can_sizes(self.app.workshop.units).iter();
                self.chosen(key, &label, cans.map(|can| (can.key, can.label)))
            }
            FieldKind::Tool => self.chosen(key, &label, TOOLS.iter().map(|tool| (tool.key, tool.name))),
            FieldKind::Substrate => {
                let grounds = Substrate::ALL.iter();
                self.chosen(key, &label, grounds.map(|ground| (ground.key(), ground.label())))
            }
            FieldKind::Tick => self.tick(key, &label),
            FieldKind::Picture => self.picture(key, &label),
            FieldKind::Choice(answers) if key == "status" => self.status(key, &label, answers),
            FieldKind::Choice(answers) => self.chosen(key, &label, answers.iter().copied()),
            FieldKind::Furniture => self.chosen(
                key,
                &label,
                Kind::ALL.into_iter().map(|kind| (kind.key(), kind.label())),
            ),
        }
    }

    /// Returns the text in the field with this key.
    pub(super) fn text(&self, key: &str) -> String {
        self.app.text_of(&DraftId::Entry(self.id(key)))
    }

    /// Shows a text field. If `marks` is true, entering the field selects its text, so that a new number
    /// replaces the old one.
    fn written(&self, key: &str, label: &str, mode: &'static str, marks: bool) -> Html {
        self.input(key, label.into(), mode, marks, (None, None))
    }

    /// Shows a text field with this label and placeholder, and with suggestions from the list with this id.
    pub fn typed(
        &self,
        key: &str,
        label: Html,
        placeholder: Option<String>,
        list: Option<&'static str>,
    ) -> Html {
        self.input(key, label, "text", list.is_none(), (placeholder, list))
    }

    fn input(
        &self,
        key: &str,
        label: Html,
        mode: &'static str,
        marks: bool,
        (placeholder, list): (Option<String>, Option<&'static str>),
    ) -> Html {
        let id = self.id(key);
        let element = id.element();
        let error = format!("{element}-error");
        let fault = self.app.fault(&DraftId::Entry(id.clone()));
        let said = fault.as_ref().map(|fault| {
            html! {
                <span class="error" id={error.clone()}>
                    <span class="unseen">{ "Error: " }</span>{ fault }
                </span>
            }
        });
        let (writing, leaving) = (id.clone(), id.clone());
        let write = self.send.reform(move |event: InputEvent| {
            let text = event.target_unchecked_into::<HtmlInputElement>().value();
            Action::Write(writing.clone(), text)
        });
        let leave = self
            .send
            .reform(move |_: FocusEvent| Action::LeaveEntry(leaving.clone()));
        html! {
            <div class={classes!("field", fault.is_some().then_some("wrong"))}>
                <label for={element.clone()}>{ label }</label>
                <input id={element.clone()} type="text" inputmode={mode} onfocus={marks.then(|| mark_all_soon(element))} autocomplete="off" value={self.text(key)}
                    {placeholder} {list} aria-describedby={fault.is_some().then_some(error)}
                    aria-invalid={fault.is_some().then_some("true")} oninput={write} onblur={leave} />
                // Always emit one node, or the next field would be rebuilt and lose the focus.
                { said.unwrap_or_default() }
            </div>
        }
    }

    fn words(&self, key: &str, label: &str) -> Html {
        let id = self.id(key);
        let element = id.element();
        let (writing, leaving) = (id.clone(), id.clone());
        let write = self.send.reform(move |event: InputEvent| {
            let text = event.target_unchecked_into::<HtmlTextAreaElement>().value();
            Action::Write(writing.clone(), text)
        });
        let leave = self
            .send
            .reform(move |_: FocusEvent| Action::LeaveEntry(leaving.clone()));
        html! {
            <div class="field wide">
                <label for={element.clone()}>{ label }</label>
                <textarea id={element} rows="2" value={self.text(key)} oninput={write} onblur={leave} />
            </div>
        }
    }

    /// Shows a field with a native browser control.
    fn native(&self, key: &str, label: &str, kind: &'static str) -> Html {
        let id = self.id(key);
        let element = id.element();
        let set = self
            .set(key)
            .reform(|event: Event| event.target_unchecked_into::<HtmlInputElement>().value());
        let written = self.text(key);
        let unsaid = written.is_empty().then_some("unsaid");
        // A color control does not accept an empty value.
        let value = match kind {
            "color" if written.is_empty() => "#000000".into(),
            _ => written,
        };
        html! {
            <div class="field">
                <label for={element.clone()}>{ label }</label>
                <input id={element} type={kind} class={unsaid} {value} onchange={set} />
            </div>
        }
    }

    /// Shows a palette for the field with this key.
    pub fn palette(&self, key: &str, chosen: Option<Colour>) -> Html {
        let set = self.set(key).reform(Colour::write);
        palette(
            &self.id(key).element(),
            &workshop::palette(&self.app.workshop),
            chosen,
            &set,
        )
    }

    fn tick(&self, key: &str, label: &str) -> Html {
        let id = self.id(key);
        let element = id.element();
        let is_set = !self.text(key).is_empty();
        let next = if is_set { "" } else { "yes" };
        let set = self.set(key).reform(move |_: Event| next.into());
        html! {
            <label class="switch" for={element.clone()}>
                <input id={element} type="checkbox" checked={is_set} onchange={set} />{ label }
            </label>
        }
    }

    /// Shows the status of the open piece. It has one by its other facts if none was chosen.
    fn status(&self, key: &str, label: &str, answers: &[(&str, &str)]) -> Html {
        let status = self.app.piece().map_or("", |piece| piece.status().key());
        let answers = answers.iter().copied();
        select(label, self.id(key).element(), answers, status, self.set(key))
    }

    fn chosen<'b>(&self, key: &str, label: &str, answers: impl Iterator<Item = (&'b str, &'b str)>) -> Html {
        self.listed(key, label, std::iter::once(("", "Not sure")).chain(answers))
    }

    /// Shows a list with these answers for the field with this key.
    pub fn listed<'b>(
        &self,
        key: &str,
        label: &str,
        answers: impl Iterator<Item = (&'b str, &'b str)>,
    ) -> Html {
        select(
            label,
            self.id(key).element(),
            answers,
            &self.text(key),
            self.set(key),
        )
    }

    fn material(&self, key: &str, label: &str) -> Html {
        let own = self.app.workshop.materials.iter();
        let own = own.map(|own| (&*own.key, own.name.as_str()));
        let known = coatings::materials().map(|material| (&*material.key, &*material.name));
        self.chosen(key, label, own.chain(known))
    }
}
