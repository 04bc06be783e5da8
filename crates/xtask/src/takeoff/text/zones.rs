//! The zones of a piece.

use geometry::Orientation;
use units::{Area, System};
use workshop::Takeoff;

use super::show::{area, short, some};
use crate::table::{Align, Table};

/// The longest name of a zone that is shown whole, in characters.
const ZONE_NAME: usize = 22;

/// What a maker calls a zone, shortened.
pub(super) fn zone_label(label: &str) -> String {
    short(label, ZONE_NAME)
}

/// What is painted of each zone, by how it lies.
pub(super) fn table(takeoff: &Takeoff, system: System) -> String {
    let lie = Orientation::ALL.map(|orientation| (orientation.label(), Align::Right));
    let mut table = Table::new(
        &[
            &[("Group", Align::Left)],
            &lie[..],
            &[("Painted", Align::Right), ("Not painted", Align::Right)],
        ]
        .concat(),
    );
    let mut row = |label: String, areas: [Area; 3], left: Area| {
        let painted: Area = areas.into_iter().sum();
        let figures = areas.into_iter().chain([painted, left]);
        let figures = figures.map(|figure| some(figure, Area::ZERO, |figure| area(figure, system)));
        table.row(std::iter::once(label).chain(figures));
    };
    let mut sum = ([Area::ZERO; 3], Area::ZERO);
    for zone in &takeoff.zones {
        row(zone_label(&zone.label), zone.areas, zone.left);
        for (sum, area) in sum.0.iter_mut().zip(zone.areas) {
            *sum += area;
        }
        sum.1 += zone.left;
    }
    row("Total".into(), sum.0, sum.1);
    table.to_string()
}
