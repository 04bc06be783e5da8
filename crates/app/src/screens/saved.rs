//! Buttons that save tables and pictures as files.

use wasm_bindgen_futures::spawn_local;
use workshop::Takeoff;
use workshop::out::{amounts_csv, earnings_csv, surfaces_csv};
use yew::prelude::*;

use super::Shown;
use super::drawing::svg;
use super::files::tell_saved;
use crate::browser::device;
use crate::browser::files::file_name;
use crate::parts::button;

/// A file that a button saves: the end of its name, the word on the button, and its text.
pub type Kind = (&'static str, &'static str, fn(&Shown, &Takeoff) -> String);

/// The files of the export screen.
pub const FILES: [Kind; 5] = [
    ("surfaces.csv", "Surfaces (CSV)", |shown, takeoff| {
        surfaces_csv(&shown.piece, takeoff, shown.app.workshop.units)
    }),
    ("amounts.csv", "Amounts (CSV)", |shown, takeoff| {
        amounts_csv(&shown.app.workshop, takeoff)
    }),
    EARNINGS,
    ("drawing.svg", "Drawing (SVG)", drawing),
    ("drawing.png", "Drawing (PNG)", drawing),
];

/// The earnings of all pieces.
pub const EARNINGS: Kind = (
    "earnings.csv",
    "Earnings of all pieces as a spreadsheet (CSV)",
    |shown, _| {
        let app = &shown.app;
        earnings_csv(&app.workshop, &app.analysis().earnings())
    },
);

fn drawing(shown: &Shown, takeoff: &Takeoff) -> String {
    svg(&shown.app.workshop, &shown.piece, takeoff, shown.app.look)
}

/// Shows the button for a file. The text is created when it is pressed.
pub fn file(shown: &Shown, (ending, word, text): Kind) -> Html {
    let of = shown.clone();
    let save = move |_: MouseEvent| {
        let Some(text) = of.takeoff().map(|takeoff| text(&of, takeoff)) else {
            return;
        };
        let (name, send) = (file_name(&of.piece.name, ending), of.send.clone());
        spawn_local(async move {
            let saved = match ending.rsplit('.').next() {
                Some("png") => device::save_picture(&name, &text).await,
                Some("svg") => device::save(&name, "image/svg+xml", &text).await,
                _ => device::save(&name, "text/csv", &text).await,
            };
            tell_saved(&send, saved);
        });
    };
    button(format!("save-{}", ending.replace('.', "-")), word, save.into())
}
