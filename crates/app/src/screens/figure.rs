//! The field of a name, a label value or the price of a can.

use std::rc::Rc;

use coatings::CanSize;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

use super::Send;
use crate::parts::option;
use crate::state::{Action, App, DraftId, FigureId};

/// A remark about a value.
#[derive(Clone)]
pub enum Remark {
    /// The value cannot be read or is impossible.
    Error(String),
    /// The value is possible but unlikely.
    Question(String),
}

/// The inputs of a field.
pub struct Asked {
    /// The value.
    pub id: FigureId,
    /// The label.
    pub label: String,
    /// The unit of the entered value, or the usual unit. Empty if it has none.
    pub unit: &'static str,
    /// The accepted units: key, symbol and factor.
    pub units: &'static [(&'static str, &'static str, f64)],
    /// The default.
    pub usual: String,
    /// The remark about the entered value.
    pub remark: Option<Remark>,
}

/// Shows the price field of a can for the material with this key.
pub fn price_field(app: &App, send: &Send, material: Rc<str>, can: &'static CanSize) -> Html {
    let asked = Asked {
        id: FigureId::Price(material, can.key),
        label: format!("Price of {}", can.label),
        unit: "",
        units: &[],
        usual: String::new(),
        remark: None,
    };
    figure_field(app, send, &asked)
}

/// Shows the field of a value, with its unit and errors.
pub fn figure_field(app: &App, send: &Send, asked: &Asked) -> Html {
    let Asked { id, label, units, .. } = asked;
    let draft = DraftId::Figure(id.clone());
    let text = app.text_of(&draft);
    let unit = app.draft(&draft).map_or(asked.unit, |draft| draft.unit);
    let fault = app.fault(&draft).map(Remark::Error);
    let remark = fault.or_else(|| asked.remark.clone());
    let is_wrong = matches!(remark, Some(Remark::Error(_)));
    let element = id.element();
    let error = format!("{element}-error");
    let said = remark.as_ref().map(|remark| match remark {
        Remark::Error(text) => html! {
            <span class="error" id={error.clone()}><span class="unseen">{ "Error: " }</span>{ text }</span>
        },
        Remark::Question(text) => html! { <span class="asked" id={error.clone()}>{ text }</span> },
    });
    let (typing, leaving, choosing) = (id.clone(), id.clone(), id.clone());
    let type_in = send.reform(move |event: InputEvent| {
        let text = event.target_unchecked_into::<HtmlInputElement>().value();
        Action::Figure(typing.clone(), text, unit)
    });
    let leave = send.reform(move |_: FocusEvent| Action::LeaveFigure(leaving.clone()));
    let all: &'static [(&'static str, &'static str, f64)] = units;
    let kept = text.clone();
    let choose = send.reform(move |event: Event| {
        let chosen = event.target_unchecked_into::<HtmlSelectElement>().value();
        let known = all.iter().find(|(key, ..)| *key == chosen);
        Action::Figure(
            choosing.clone(),
            kept.clone(),
            known.map_or(unit, |(key, ..)| *key),
        )
    });
    let is_name = matches!(id, FigureId::Name(_));
    let mode = if is_name { "text" } else { "decimal" };
    let sign_of = |(key, sign, _): &(&'static str, &'static str, f64)| option(key, sign, *key == unit);
    html! {
        <div class={classes!("field", is_name.then_some("wide"), is_wrong.then_some("wrong"))}>
            <label for={element.clone()}>{ label }</label>
            <div class="with-unit">
                <input id={element.clone()} type="text" inputmode={mode} autocomplete="off" value={text}
                    placeholder={asked.usual.clone()} aria-describedby={remark.is_some().then_some(error)}
                    aria-invalid={is_wrong.then_some("true")} oninput={type_in} onblur={leave} />
                if !units.is_empty() {
                    <select id={format!("{element}-unit")} aria-label={format!("Unit of {label}")} onchange={choose}>
                        { for units.iter().map(sign_of) }
                    </select>
                }
            </div>
            // Always emit one node, or the next field would be rebuilt and lose the focus.
            { said.unwrap_or_default() }
        </div>
    }
}
