//! A can drawn to scale, with the amount that the job takes.

use units::Volume;
use workshop::shelf::OnHand;
use workshop::{Colour, MaterialLine};
use yew::prelude::*;

/// The width and height of the drawing, and the y coordinate of the bottom of a can.
const SHEET: [f64; 2] = [100.0, 116.0];
const FLOOR: f64 = 112.0;
/// The width and height of the largest can.
const LARGEST: [f64; 2] = [76.0, 88.0];
/// The minimum size of a can relative to the largest, so that its level stays visible.
const SMALLEST: f64 = 0.45;

/// Draws the can on hand, or else the one to buy. `largest` is the largest can next to it. Sizes scale with
/// the cube root of the volume. The amount is drawn from the bottom: solid up to the low end, hatched up to
/// the high end, with a line at the likely amount. Any excess rises above the rim.
pub fn vessel(line: &MaterialLine, can: Volume, largest: Volume) -> Html {
    let share = libm::cbrt(can / largest).max(SMALLEST);
    let fills = |volume: Volume| volume / can;
    // If the excess needs room above the rim, the can is drawn lower.
    let room = (FLOOR - 8.0) / LARGEST[1];
    let high = fills(line.need.high()).max(1.0);
    let squeeze = (room / (share * high)).min(1.0);
    let (width, height) = (LARGEST[0] * share, LARGEST[1] * share * squeeze);
    let left = (SHEET[0] - width) / 2.0;
    let y = |volume: Volume| FLOOR - (fills(volume) * height).min(FLOOR - 4.0);
    let contents = line.on_hand.iter().flat_map(OnHand::contents);
    let held: Volume = contents.map(|contents| contents.likely()).sum();
    let filled = if line.on_hand.is_some() {
        fills(held).min(1.0)
    } else {
        1.0
    };
    let level = FLOOR - height * filled;
    let fill = line.need.colour.map_or_else(
        || super::strip::fill_of(line.need.material.stage).into(),
        |colour| Colour(colour).write(),
    );
    let low = y(line.need.low());
    let rect = |class: &'static str, top: f64, bottom: f64, fill: Option<AttrValue>| {
        html! {
            <rect {class} {fill} x={tenth(left)} y={tenth(top)} width={tenth(width)} height={tenth((bottom - top).max(0.0))} />
        }
    };
    let across = |class: &'static str, at: f64, beyond: f64| {
        let d = format!(
            "M{} {}h{}",
            tenth(left - beyond),
            tenth(at),
            tenth(width + 2.0 * beyond)
        );
        html! { <path {class} {d} /> }
    };
    let walls = format!(
        "M{x} {top}V{FLOOR}h{width}V{top}",
        x = tenth(left),
        top = tenth(FLOOR - height),
        width = tenth(width)
    );
    html! {
        <svg class="vessel" viewBox={format!("0 0 {} {}", SHEET[0], SHEET[1])} aria-hidden="true">
            { rect("inside", level, FLOOR, None) }
            { rect("sure", low, FLOOR, Some(fill.into())) }
            { rect("unsure", y(line.need.high()), low, Some("url(#range)".into())) }
            { across("likely", y(line.need.likely()), 5.0) }
            if filled < 1.0 { { across("level", level, 0.0) } }
            <path class="walls" d={walls} />
            { across("rim", FLOOR - height, 3.0) }
        </svg>
    }
}

fn tenth(value: f64) -> String {
    format!("{value:.1}")
}
