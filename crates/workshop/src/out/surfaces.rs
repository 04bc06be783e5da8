//! The surfaces of a piece, as a table for a spreadsheet.

use units::{Area, System};

use super::csv::{Cell, Table, number, text};
use crate::document::Piece;
use crate::takeoff::{SurfaceLine, Takeoff};

/// Returns the unit of areas and its number of decimals, for a resolution of about 10 mm².
fn unit(system: System) -> (&'static str, usize) {
    match system {
        System::UsCustomary => ("ft2", 4),
        System::Metric => ("m2", 5),
    }
}

fn figure(area: Area, system: System) -> f64 {
    match system {
        System::UsCustomary => area.as_square_feet(),
        System::Metric => area.as_square_metres(),
    }
}

/// Returns every surface of one piece as CSV (RFC 4180): part, face, zone, whether it is painted, gross area,
/// deductions with their reasons, profile multiplier and net area. Areas are in square feet or square meters,
/// as the heading says.
///
/// # Example
/// ```
/// use workshop::{out::surfaces_csv, takeoff};
/// let workshop = workshop::invented_workshop();
/// let piece = &workshop.pieces[0];
/// let taken = takeoff(&workshop, piece, &[]).unwrap();
/// let table = surfaces_csv(piece, &taken, workshop.units);
/// assert!(table.starts_with("Part,Face,Zone,Painted,Gross (ft2),"));
/// ```
pub fn surfaces_csv(piece: &Piece, takeoff: &Takeoff, system: System) -> String {
    let (sign, _) = unit(system);
    let [gross, deducted, each, net] =
        ["Gross", "Deducted", "Deducted for", "Net"].map(|what| format!("{what} ({sign})"));
    let mut table = Table::new(&[
        "Part",
        "Face",
        "Zone",
        "Painted",
        &gross,
        &deducted,
        &each,
        "Profile multiplier",
        &net,
    ]);
    for line in &takeoff.surfaces {
        table.line(cells(piece, line, system));
    }
    table.into_text()
}

fn cells(piece: &Piece, line: &SurfaceLine, system: System) -> Vec<Cell> {
    let (_, decimals) = unit(system);
    let surface = &line.surface;
    let area = |area: Area| number(figure(area, system), decimals);
    let causes: Vec<String> = surface
        .deductions
        .iter()
        .map(|deduction| {
            let area = figure(deduction.area, system);
            format!("{}: {area:.decimals$}", deduction.by.label())
        })
        .collect();
    vec![
        text(&surface.id.part.label()),
        text(&surface.side_label()),
        text(&piece.zone_label(&line.zone)),
        text(if line.painted { "yes" } else { "no" }),
        area(surface.gross),
        area(surface.deductions.iter().map(|deduction| deduction.area).sum()),
        text(&causes.join("; ")),
        number(surface.multiplier, 4),
        area(surface.net),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::PieceId;
    use crate::out::csv::tests::read;
    use geometry::Kind;

    #[test]
    fn areas_of_the_table_add_up() {
        for (kind, system) in [
            (Kind::Hutch, System::UsCustomary),
            (Kind::Dresser, System::Metric),
            (Kind::Bench, System::Metric),
        ] {
            let mut piece = Piece::new(PieceId("a".into()), kind);
            let hole = crate::ChangeKind::Hole {
                surface: "top/top".into(),
            };
            piece.changes.push(crate::PieceChange::new(hole));
            let taken = crate::samples::takeoff(&piece).unwrap();
            let table = read(&surfaces_csv(&piece, &taken, system));
            let (heading, lines) = table.split_first().unwrap();
            let (sign, decimals) = unit(system);
            assert_eq!(heading[4], format!("Gross ({sign})"));
            assert_eq!(lines.len(), taken.surfaces.len());
            let half = 0.5 * libm::pow(0.1, decimals as f64) + 1e-9;
            let mut painted = 0.0;
            for (line, surface) in lines.iter().zip(&taken.surfaces) {
                let of = |place: usize| line[place].parse::<f64>().unwrap();
                assert!((of(4) - figure(surface.surface.gross, system)).abs() <= half);
                assert!((of(8) - figure(surface.surface.net, system)).abs() <= half);
                // Tiny remnants count as zero.
                let rest = of(4) - of(5) - of(8);
                assert!(rest.abs() < 3.0 * half || of(8) == 0.0, "{line:?}");
                let causes: f64 = line[6]
                    .split("; ")
                    .filter(|cause| !cause.is_empty())
                    .map(|cause| cause.rsplit(": ").next().unwrap().parse::<f64>().unwrap())
                    .sum();
                let count = surface.surface.deductions.len() as f64;
                assert!((causes - of(5)).abs() <= half * (count + 1.0), "{line:?}");
                painted += if line[3] == "yes" { of(8) } else { 0.0 };
            }
            let all = figure(taken.painted_each, system);
            assert!(
                (painted - all).abs() <= half * lines.len() as f64,
                "{painted} {all}"
            );
            assert!(lines.iter().any(|line| line[6].contains(": ")));
        }
    }

    #[test]
    fn a_zone_of_ones_own_cannot_be_a_formula() {
        let mut piece = Piece::new(PieceId("a".into()), Kind::Bench);
        let zone = crate::ZoneChoice {
            name: "=HYPERLINK(\"x\",\"y\")".into(),
            ..Default::default()
        };
        piece.zones.insert("own-1".into(), zone);
        let choice = crate::SurfaceChoice {
            zone: Some("own-1".into()),
            painted: None,
        };
        piece.choices.insert("top/top".into(), choice);
        let taken = crate::samples::takeoff(&piece).unwrap();
        let table = read(&surfaces_csv(&piece, &taken, System::Metric));
        assert!(table.iter().any(|line| line[2].starts_with("'=HYPERLINK")));
    }
}
