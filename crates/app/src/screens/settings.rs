//! The settings screen: units, the certainty for a can, currency, default finish, brightness, files and the
//! safety of the data.

use std::rc::Rc;

use units::{Inches, System};
use workshop::{Confidence, Currency, Edit, SettingEdit};
use yew::prelude::*;

use super::Send;
use super::files::files;
use crate::parts::{button, choice, select};
use crate::state::{Action, App, Light};
use crate::words;

/// The currencies to choose from (ISO 4217), in alphabetical order. A file may contain others.
const CURRENCIES: [&str; 14] = [
    "AUD", "CAD", "CHF", "CZK", "DKK", "EUR", "GBP", "INR", "JPY", "NOK", "NZD", "PLN", "SEK", "USD",
];

/// Shows the settings.
pub fn settings(app: &Rc<App>, send: &Send) -> Html {
    let set = |edit: SettingEdit| Action::Edit(Edit::Settings(edit));
    let settings = &app.workshop.settings;
    let units = [
        (System::UsCustomary, "us", "Inches, ounces"),
        (System::Metric, "metric", "Millimeters, liters"),
    ];
    let inches = [
        (Inches::Fractions, "fractions", "33 7/8"),
        (Inches::Decimals, "decimals", "33.88"),
    ];
    let confidences = [
        (Confidence::Percent80, "80", "80%"),
        (Confidence::Percent90, "90", "90%"),
        (Confidence::Percent95, "95", "95%"),
        (Confidence::Percent99, "99", "99%"),
    ];
    let lights = [
        (Light::Device, "device", "Same as device"),
        (Light::Light, "light", "Light"),
        (Light::Dark, "dark", "Dark"),
        (Light::Contrast, "contrast", "High contrast"),
    ];
    html! {
        <section class="settings" aria-labelledby="settings-title">
            <h2 id="settings-title">{ "Settings and files" }</h2>
            { choice("Units", "units", &units, app.workshop.units,
                send.reform(|units| Action::Edit(Edit::Units(units)))) }
            { choice("Inches as", "inches", &inches, settings.inches,
                send.reform(move |inches| set(SettingEdit::Inches(inches)))) }
            { choice("How sure a can must be", "confidence", &confidences, settings.confidence,
                send.reform(move |confidence| set(SettingEdit::Confidence(confidence)))) }
            { currency(app, send) }
            { usual_finish(app, send) }
            { choice("Light or dark", "light", &lights, app.light, send.reform(Action::Light)) }
            <h3>{ "Workshop file" }</h3>
            { files(app, send) }
            <p id="safety">{ words::safety(&app.device_status, js_sys::Date::now()) }</p>
            <p>{ format!("{}.", words::offline(app.device_status.offline).1) }</p>
        </section>
    }
}

fn currency(app: &App, send: &Send) -> Html {
    let present = app.workshop.settings.currency;
    let present = present.as_ref().map_or("", Currency::code);
    // A currency from a file stays in the list while it is selected.
    let foreign = (!present.is_empty() && !CURRENCIES.contains(&present)).then_some((present, present));
    let options = std::iter::once(("", "None"))
        .chain(foreign)
        .chain(CURRENCIES.map(|code| (code, code)));
    let choose = send.reform(|code: String| {
        Action::Edit(Edit::Settings(SettingEdit::Currency(Currency::new(&code).ok())))
    });
    select("Currency", "currency".into(), options, present, choose)
}

/// Shows the default finish of new pieces.
fn usual_finish(app: &App, send: &Send) -> Html {
    let is_own = app.workshop.settings.finish.is_some();
    let word = if is_own {
        "New pieces start with your own finish."
    } else {
        "New pieces start with the common finish: clean, primer, 2 coats of paint, 2 of clear."
    };
    let set = |of| {
        let act = Action::Edit(Edit::Settings(SettingEdit::FinishOf(of)));
        send.reform(move |_: MouseEvent| act.clone())
    };
    let open = app.piece().map(|piece| (piece.name.clone(), piece.id.clone()));
    html! {
        <div class="choice">
            <span class="label">{ word }</span>
            <div class="row">
                if let Some((name, id)) = open {
                    <button type="button" id="finish-usual" onclick={set(Some(id))}>
                        { format!("Start new pieces with the finish of \u{201c}{name}\u{201d}") }
                    </button>
                }
                if is_own { { button("finish-common", "Use the common finish", set(None)) } }
            </div>
        </div>
    }
}
