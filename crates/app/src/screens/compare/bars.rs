//! A chart of where the paint goes: one bar for each way, on the same scale, for the piece, the tool and the
//! air.

use coatings::Place;
use units::Volume;
use workshop::{ComparedAt, MaterialLine, WayColumn, WayWhole};
use yew::prelude::*;

use super::super::{Shown, money};
use crate::words;

/// The length of the longest bar.
const LONGEST: f64 = 1000.0;

/// Shows the bars with their descriptions.
pub fn bars(
    shown: &Shown,
    lines: &[MaterialLine],
    columns: &[WayColumn],
    compared: ComparedAt,
    in_hours: bool,
) -> Html {
    let all = || columns.iter().map(|column| column.whole(compared).all());
    let most = all().fold(Volume::ZERO, Volume::max);
    let least = all().fold(most, Volume::min);
    let way = |column: &WayColumn| {
        let whole = column.whole(compared);
        let price = whole.price.map(|price| format!(", {}", money(&shown.app)(price)));
        let more = if compared == ComparedAt::Planned {
            String::new()
        } else {
            words::more_coats(lines, column)
        };
        html! {
            <li>
                <h4>{ column.label }</h4>
                <p class="figure">
                    { words::volume_beside(whole.all(), least, shown.app.workshop.units) }{ ", " }
                    { words::minutes_as(whole.minutes, in_hours) }{ price }
                </p>
                { bar(whole, most) }
                <p class="goes"><b>{ more }</b>{ goes(shown, whole) }</p>
                <p class="hint">{ column.remarks.join(" ") }</p>
            </li>
        }
    };
    html! {
        <>
            <svg class="unseen" aria-hidden="true"><defs>
                <pattern id="in-tool" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                    <rect class="hatch" width="3" height="9" />
                </pattern>
                <pattern id="in-air" width="9" height="9" patternUnits="userSpaceOnUse">
                    <circle class="hatch" cx="4.5" cy="4.5" r="1.9" />
                </pattern>
            </defs></svg>
            <h3>{ "All coats together" }</h3>
            <ul class="ways">{ for columns.iter().map(way) }</ul>
        </>
    }
}

/// Draws a bar. It has no material's color because it covers all materials.
fn bar(whole: &WayWhole, most: Volume) -> Html {
    let length = |volume: Volume| volume / most * LONGEST;
    let mut at = 0.0;
    let mut part = |volume: Volume, class: &'static str, fill: AttrValue| {
        let (x, width) = (at, length(volume));
        at += width;
        html! {
            <rect {class} {fill} x={format!("{x:.1}")} y="2" width={format!("{width:.1}")} height="36" />
        }
    };
    let on_piece = part(whole.on_piece, "on-piece", "var(--primer)".into());
    let lost = whole.lost.iter().map(|(place, volume)| {
        let fill = match place {
            Place::InAir => "url(#in-air)",
            _ => "url(#in-tool)",
        };
        part(*volume, "lost", fill.into())
    });
    let lost: Html = lost.collect();
    html! {
        <svg class="bar" viewBox="0 0 1000 40" preserveAspectRatio="none" aria-hidden="true">{ on_piece }{ lost }</svg>
    }
}

/// Describes a bar: `19 fl oz on the piece, 1.1 fl oz in the sleeve and 0.9 fl oz in the tray`.
fn goes(shown: &Shown, whole: &WayWhole) -> String {
    let system = shown.app.workshop.units;
    let stays = format!("{} on the piece", words::volume(whole.on_piece, system));
    let lost = whole
        .lost
        .iter()
        .map(|(place, volume)| format!("{} {}", words::volume(*volume, system), words::place(*place)));
    let all: Vec<String> = std::iter::once(stays).chain(lost).collect();
    let all: Vec<&str> = all.iter().map(String::as_str).collect();
    words::and(&all)
}
