//! The calculation of surface areas, their orientation, and problems with them.

use geometry::{Deduction, Orientation, Overlap, PartKind, Surface};
use units::{Area, Length, System, show_length};

use super::{area, number};

/// Shows the calculation of a surface: gross area, profile multiplier, each deduction with its cause, and the
/// result.
pub fn working(surface: &Surface, system: System) -> String {
    let multiplier = number(&format!("{:.2}", surface.multiplier));
    let is_plain = multiplier == "1.00";
    let mut text = match surface.rectangle().filter(|_| is_plain) {
        Some([long, short]) => format!(
            "{} by {} is {}",
            show_length(long, system),
            show_length(short, system),
            area(surface.gross, system)
        ),
        None => area(surface.gross, system),
    };
    if !is_plain {
        text.push_str(&format!(" along the profile, {multiplier} times flat"));
    }
    if surface.deductions.is_empty() {
        return text + ", nothing covers it";
    }
    let less = surface.deductions.iter().map(|d| deduction(d, system));
    let less = less.collect::<Vec<_>>().join(", ");
    format!("{text} minus {less}, leaves {}", area(surface.net, system))
}

fn deduction(deduction: &Deduction, system: System) -> String {
    let word = if deduction.by.kind == PartKind::Hole {
        "for"
    } else {
        "covered by"
    };
    let by = deduction.by.label().to_ascii_lowercase();
    format!("{} {word} {by}", area(deduction.area, system))
}

/// Lists the areas by orientation, without empty ones: `12 ft² facing up; 20 ft² upright`.
pub fn lying(areas: [Area; 3], system: System) -> String {
    let of = Orientation::ALL.into_iter().zip(areas);
    let some = of.filter(|(_, area)| *area > Area::ZERO);
    let words =
        some.map(|(lies, size)| format!("{} {}", area(size, system), lies.label().to_ascii_lowercase()));
    words.collect::<Vec<_>>().join("; ")
}

/// Describes two parts that overlap.
pub fn overlap(overlap: &Overlap, system: System) -> String {
    format!(
        "{} and {} overlap by {}. Their areas include hidden parts. Move or shorten one.",
        overlap.a.label(),
        overlap.b.label(),
        show_length(overlap.depth, system)
    )
}

/// Formats a total length, in feet for US units and in meters otherwise.
pub fn run(length: Length, system: System) -> String {
    match system {
        System::UsCustomary => format!("{} ft", tenths(length.as_inches() / 12.0)),
        System::Metric => format!("{} m", tenths(length.as_metres())),
    }
}

fn tenths(value: f64) -> String {
    number(&format!("{value:.1}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::{Furniture, Kind, PartId};

    fn deducted(by: PartId, area: f64) -> Deduction {
        Deduction {
            by,
            area: Area::square_metres(area),
        }
    }

    #[test]
    fn the_working_goes_from_gross_to_net() {
        let surfaces = Furniture::usual(Kind::Dresser).assembly().unwrap().surfaces();
        let mut surface = surfaces[0].clone();
        surface.gross = Area::square_metres(1.0);
        surface.net = Area::square_metres(0.7);
        surface.multiplier = 1.0;
        surface.deductions.clear();
        let [long, short] = surface
            .rectangle()
            .unwrap()
            .map(|side| show_length(side, System::Metric));
        let sides = format!("{long} by {short} is ");
        assert_eq!(
            working(&surface, System::Metric),
            format!("{sides}1.00 m², nothing covers it")
        );
        surface.multiplier = 1.314;
        surface.deductions = vec![
            deducted(PartId::only(PartKind::LeftSide), 0.2),
            deducted(PartId::nth(PartKind::Hole, 1), 0.1),
        ];
        assert_eq!(
            working(&surface, System::Metric),
            "1.00 m² along the profile, 1.31 times flat minus 0.20 m² covered by left side, 0.10 m² for hole 1, \
             leaves 0.70 m²"
        );
    }

    #[test]
    fn only_what_there_is_lies_some_way() {
        let areas = [2.0, 0.0, 0.5].map(Area::square_metres);
        let said = lying(areas, System::Metric);
        assert!(
            said.starts_with("2.00 m² ") && said.contains("; 0.50 m² "),
            "{said}"
        );
        assert_eq!(lying([Area::ZERO; 3], System::Metric), "");
    }

    #[test]
    fn an_overlap_says_what_to_do() {
        let sentence = overlap(
            &Overlap {
                a: PartId::nth(PartKind::Board, 2),
                b: PartId::only(PartKind::LeftSide),
                depth: Length::millimetres(12.0),
            },
            System::Metric,
        );
        let expected =
            "Board 2 and Left side overlap by 12 mm. Their areas include hidden parts. Move or shorten one.";
        assert_eq!(sentence, expected);
    }
}
