//! The takeoff for people: tables of at most 110 columns, in the units of the file.

use coatings::{Amount, Enough};
use geometry::{Edges, Orientation, Overlap, PartId};
use units::{Area, Length, System, Volume, show_area, show_length, show_volume};
use workshop::{Piece, SurfaceLine, Takeoff, Workshop, ZoneLine, edges, takeoff};

use super::{plain, verdict_word};
use crate::table::{Align, Table};

/// The takeoff of every piece.
pub fn of(workshop: &Workshop) -> String {
    let pieces = workshop
        .pieces
        .iter()
        .map(|piece| of_piece(piece, workshop.units));
    pieces.collect::<Vec<_>>().join("\n\n")
}

fn of_piece(piece: &Piece, system: System) -> String {
    let takeoff = match takeoff(piece) {
        Ok(takeoff) => takeoff,
        Err(problems) => {
            let show = |length| show_length(length, system);
            let lines = problems
                .iter()
                .map(|problem| format!("  {}\n", problem.message(show)));
            return format!(
                "{}: cannot be measured up\n{}",
                plain(&piece.name),
                lines.collect::<String>()
            );
        }
    };
    let each = area(takeoff.painted_each, system);
    let uncertainty = area(takeoff.painted.standard_uncertainty, system);
    let painted = match piece.count {
        1 => each,
        count => format!(
            "{each} each, {} for all {count}",
            area(takeoff.painted.area, system)
        ),
    };
    let name = plain(&piece.name);
    let line = "=".repeat(name.chars().count());
    [
        format!(
            "{name}\n{line}\nPainted area {painted}; standard uncertainty {uncertainty}\n{}{}",
            edges(piece).map_or_else(|_| String::new(), |edges| edge_lengths(edges, system)),
            overlaps(&takeoff.overlaps, system),
        ),
        surfaces(&takeoff, system),
        zones(&takeoff, system),
        materials(&takeoff, system),
        cans(&takeoff, system),
        tools(&takeoff, system),
    ]
    .join("\n")
}

/// What is sanded round, cleaned out and cut in on one piece.
fn edge_lengths(edges: Edges, system: System) -> String {
    let [arrises, corners, borders] =
        [edges.arrises, edges.corners, edges.borders].map(|length| long(length, system));
    format!(
        "Painted edges of one: {arrises} of arrises, {corners} of inner corners, {borders} to cut in or mask\n"
    )
}

/// The most overlaps that are listed.
const MOST_OVERLAPS: usize = 20;

fn overlaps(overlaps: &[Overlap], system: System) -> String {
    let warning = |overlap: &Overlap| {
        format!(
            "Warning: {} and {} run into each other by {}; the areas of both are too large.\n",
            overlap.a.label(),
            overlap.b.label(),
            show_length(overlap.depth, system)
        )
    };
    let mut text: String = overlaps.iter().take(MOST_OVERLAPS).map(warning).collect();
    if let Some(more) = overlaps.len().checked_sub(MOST_OVERLAPS).filter(|more| *more > 0) {
        text.push_str(&format!(
            "Warning: {more} more pairs of parts run into each other.\n"
        ));
    }
    text
}

/// The surfaces below the part that they belong to. The name of a surface is that of its part with what stands
/// here.
fn surfaces(takeoff: &Takeoff, system: System) -> String {
    let mut table = Table::new(&[
        ("Surface", Align::Left),
        ("Gross", Align::Right),
        ("Profile", Align::Right),
        ("Net", Align::Right),
        ("Zone", Align::Left),
        ("", Align::Left),
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
        zone.map_or_else(String::new, zone_label),
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
        return "takes none".into();
    }
    let word = if line.painted { "painted" } else { "left" };
    let chosen = if line.painted == line.painted_with_zone {
        ""
    } else {
        ", chosen"
    };
    format!("{word}{chosen}")
}

/// The longest name of a zone that is shown whole, in characters.
const ZONE_NAME: usize = 22;

fn zone_label(zone: &ZoneLine) -> String {
    let label = plain(&zone.label);
    if label.chars().count() <= ZONE_NAME {
        return label;
    }
    let start: String = label.chars().take(ZONE_NAME - 1).collect();
    format!("{}\u{2026}", start.trim_end())
}

fn zones(takeoff: &Takeoff, system: System) -> String {
    let lie = Orientation::ALL.map(|orientation| (orientation.label(), Align::Right));
    let mut table = Table::new(
        &[
            &[("Zone", Align::Left)],
            &lie[..],
            &[("Painted", Align::Right), ("Left", Align::Right)],
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
        row(zone_label(zone), zone.areas, zone.left);
        for (sum, area) in sum.0.iter_mut().zip(zone.areas) {
            *sum += area;
        }
        sum.1 += zone.left;
    }
    row("All zones".into(), sum.0, sum.1);
    table.to_string()
}

const AMOUNTS: [(&str, Align); 3] = [
    ("Low", Align::Right),
    ("Likely", Align::Right),
    ("High", Align::Right),
];

fn materials(takeoff: &Takeoff, system: System) -> String {
    let heads = [
        ("Stage", Align::Left),
        ("Material", Align::Left),
        ("Tool", Align::Left),
        ("Coats", Align::Right),
    ];
    let mut table = Table::new(&[&heads[..], &AMOUNTS].concat());
    for line in &takeoff.materials {
        let words = [line.stage.label(), line.material.name, line.tool.name];
        let cells = words
            .map(String::from)
            .into_iter()
            .chain([line.coats.to_string()]);
        table.row(cells.chain(amounts(&line.amount, system)));
    }
    table.to_string()
}

fn cans(takeoff: &Takeoff, system: System) -> String {
    let mut table = Table::new(&[
        ("Stage", Align::Left),
        ("Can", Align::Left),
        ("Is it enough", Align::Left),
        ("Likely left", Align::Right),
        ("Likely lacking", Align::Right),
    ]);
    for line in takeoff.materials.iter().filter(|line| line.coats > 0) {
        let some = |amount| some(amount, Volume::ZERO, |amount| volume(amount, system));
        table.row([
            line.stage.label().into(),
            line.can.label.into(),
            verdict(&line.enough),
            some(line.enough.left),
            some(line.enough.lacking),
        ]);
    }
    table.to_string()
}

fn tools(takeoff: &Takeoff, system: System) -> String {
    let heads = [
        ("All with the", Align::Left),
        ("Stage", Align::Left),
        ("Coats", Align::Right),
    ];
    let tail = [
        ("Is the can enough", Align::Left),
        ("For equal film", Align::Right),
    ];
    let mut table = Table::new(&[&heads[..], &AMOUNTS, &tail].concat());
    for column in &takeoff.tools {
        for (place, figure) in column.figures.iter().enumerate() {
            let tool = if place == 0 { column.tool.name } else { "" };
            let cells = [tool.into(), figure.stage.label().into(), figure.coats.to_string()];
            let tail = [verdict(&figure.enough), figure.coats_for_equal_film.to_string()];
            table.row(
                cells
                    .into_iter()
                    .chain(amounts(&figure.amount, system))
                    .chain(tail),
            );
        }
    }
    table.to_string()
}

fn amounts(amount: &Amount, system: System) -> [String; 3] {
    [amount.low(), amount.likely(), amount.high()].map(|value| volume(value, system))
}

fn verdict(enough: &Enough) -> String {
    // A probability from so many trials is never quite nothing or all.
    let percent = (enough.probability * 100.0).clamp(0.0, 100.0);
    let shown = match percent {
        p if p < 1.0 => "under 1 %".into(),
        p if p > 99.0 => "over 99 %".into(),
        p => format!("{p:.0} %"),
    };
    format!("{} ({shown})", verdict_word(enough.verdict))
}

/// A dash stands for nothing.
fn some<T: PartialOrd>(amount: T, nothing: T, shown: impl Fn(T) -> String) -> String {
    if amount > nothing {
        shown(amount)
    } else {
        "-".into()
    }
}

/// A sum of lengths, longer than any tape.
fn long(length: Length, system: System) -> String {
    match system {
        System::UsCustomary => format!("{:.1} ft", length.as_inches() / 12.0),
        System::Metric => format!("{:.1} m", length.as_metres()),
    }
}

fn area(area: Area, system: System) -> String {
    let (figure, unit) = show_area(area, system);
    format!("{figure} {unit}")
}

fn volume(volume: Volume, system: System) -> String {
    let (figure, unit) = show_volume(volume, system);
    format!("{figure} {unit}")
}
