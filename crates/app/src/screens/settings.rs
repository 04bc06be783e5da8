//! The room of settings: units, light, files, and how safe the data is.

use std::rc::Rc;

use units::System;
use workshop::Edit;
use yew::prelude::*;

use super::Send;
use super::files::files;
use crate::parts::choice;
use crate::state::{Act, App, Light};

/// The settings.
pub fn settings(app: &Rc<App>, send: &Send) -> Html {
    let units = [
        (System::UsCustomary, "us", "Inches, ounces"),
        (System::Metric, "metric", "Millimetres, litres"),
    ];
    let lights = [
        (Light::Device, "device", "As the device"),
        (Light::Light, "light", "Light"),
        (Light::Dark, "dark", "Dark"),
        (Light::Contrast, "contrast", "High contrast"),
    ];
    html! {
        <section class="settings" aria-labelledby="settings-title">
            <h2 id="settings-title">{ "Settings and files" }</h2>
            { choice("Read and write in", "units", &units, app.workshop.units,
                send.reform(|units| Act::Edit(Edit::Units(units)))) }
            { choice("Light of the page", "light", &lights, app.light, send.reform(Act::Light)) }
            <h3>{ "The workshop as a file" }</h3>
            { files(app, send) }
        </section>
    }
}
