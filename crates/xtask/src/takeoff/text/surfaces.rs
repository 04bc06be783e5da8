//! The surfaces of a piece with their deductions.

use geometry::PartId;
use units::{Area, System};
use workshop::{SurfaceLine, Takeoff};

use super::show::area;
use super::zones::zone_label;
use crate::table::{Align, Table};

/// The surfaces below the part that they belong to. The name of a surface is that of its part with what stands
/// here.
pub(super) fn table(takeoff: &Takeoff, system: System) -> String {
    let mut table = Table::new(&[
        ("Surface", Align::Left),
        ("Gross", Align::Right),
        ("Profile", Align::Right),
        ("Net", Align::Right),
        ("Group", Align::Left),
        ("Painted", Align::Left),
    ]);
    // The headings stand between the lines of the table, so that long ones do not make it wide.
    let mut headings = vec![String::new()];
    for of_part in takeoff
        .surfaces
        .chunk_by(|a, b| a.surface.id.part == b.surface.id.part)
    {
        let mut heading = of_part
            .first()
            .map(|line| part_heading(line.surface.id.part, of_part, system));
        for line in of_part {
            for row in surface_rows(line, takeoff, system) {
                table.row(row);
                headings.push(heading.take().unwrap_or_default());
            }
        }
    }
    let lines = table.to_string();
    let lines = lines.lines().zip(headings);
    lines
        .map(|(line, heading)| format!("{heading}{line}\n"))
        .collect()
}

fn part_heading(part: PartId, lines: &[SurfaceLine], system: System) -> String {
    let painted: Area = lines
        .iter()
        .filter(|line| line.painted)
        .map(|line| line.surface.net)
        .sum();
    let painted = if painted > Area::ZERO {
        format!(", {} painted", area(painted, system))
    } else {
        String::new()
    };
    format!("{} ({part}){painted}\n", part.label())
}

/// A line for the surface, and one for each deduction.
fn surface_rows(line: &SurfaceLine, takeoff: &Takeoff, system: System) -> Vec<Vec<String>> {
    let surface = &line.surface;
    let part = surface.id.part.to_string();
    let name = surface.id.to_string();
    let place = name.strip_prefix(&part).unwrap_or(&name);
    let zone = takeoff.zones.iter().find(|zone| zone.key == line.zone);
    let own = vec![
        format!("  {place}"),
        area(surface.gross, system),
        profile(surface.multiplier),
        area(surface.net, system),
        zone.map_or_else(String::new, |zone| zone_label(&zone.label)),
        finish(line),
    ];
    let deductions = surface.deductions.iter().map(|deduction| {
        vec![
            format!("    less {}", deduction.by),
            format!("-{}", area(deduction.area, system)),
        ]
    });
    std::iter::once(own).chain(deductions).collect()
}

/// Developed girth over flat height, which the gross area holds already.
fn profile(multiplier: f64) -> String {
    if multiplier == 1.0 {
        String::new()
    } else {
        format!("\u{d7} {multiplier:.2}")
    }
}

fn finish(line: &SurfaceLine) -> String {
    if line.surface.net <= Area::ZERO {
        return "covered".into();
    }
    if !line.surface.takes_finish() {
        return "can't be painted".into();
    }
    let word = if line.painted { "yes" } else { "no" };
    let chosen = if line.painted == line.painted_with_zone {
        ""
    } else {
        ", chosen"
    };
    format!("{word}{chosen}")
}
