//! The takeoff for people: tables of at most 110 columns, in the units of the file.

use coatings::{Amount, Enough};
use geometry::PartId;
use units::{Area, System, Volume, show_area, show_length, show_volume};
use workshop::{Piece, SurfaceLine, Takeoff, Workshop, takeoff};

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
        format!("{name}\n{line}\nPainted area {painted}; standard uncertainty {uncertainty}\n"),
        surfaces(&takeoff, system),
        materials(&takeoff, system),
        cans(&takeoff, system),
        tools(&takeoff, system),
    ]
    .join("\n")
}

fn surfaces(takeoff: &Takeoff, system: System) -> String {
    let mut table = Table::new(&[
        ("Surface", Align::Left),
        ("Name", Align::Left),
        ("Gross", Align::Right),
        ("Net", Align::Right),
        ("", Align::Left),
    ]);
    let mut part: Option<PartId> = None;
    for line in &takeoff.surfaces {
        let of = line.surface.id.part;
        if part.replace(of) != Some(of) {
            table.row([of.label()]);
        }
        surface(&mut table, line, system);
    }
    table.to_string()
}

fn surface(table: &mut Table, line: &SurfaceLine, system: System) {
    let surface = &line.surface;
    let word = match (surface.net > Area::ZERO, line.painted) {
        (false, _) => "covered",
        (true, true) => "painted",
        (true, false) => "left",
    };
    let chosen = if line.painted == line.painted_by_default {
        ""
    } else {
        ", chosen"
    };
    table.row([
        format!("  {}", surface.side_label()),
        surface.id.to_string(),
        area(surface.gross, system),
        area(surface.net, system),
        format!("{word}{chosen}"),
    ]);
    for deduction in &surface.deductions {
        table.row([
            format!("    less {}", deduction.by.label()),
            String::new(),
            format!("-{}", area(deduction.area, system)),
        ]);
    }
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
        let some = |amount: Volume| {
            if amount > Volume::ZERO {
                volume(amount, system)
            } else {
                "-".into()
            }
        };
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

fn area(area: Area, system: System) -> String {
    let (figure, unit) = show_area(area, system);
    format!("{figure} {unit}")
}

fn volume(volume: Volume, system: System) -> String {
    let (figure, unit) = show_volume(volume, system);
    format!("{figure} {unit}")
}
