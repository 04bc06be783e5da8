//! Notices about a piece that can be built, but not quite as it was entered.

use units::{Area, Length, System, show_area, show_length};

use super::fields::BayPlace;
use super::layout::{Members, Unit};
use super::problem::in_bay;
use crate::part::PartId;
use crate::surface::Surface;

/// Rows or sections that miss their room by less than this do not count as stretched: half a millimeter, less than a
/// tape shows (common practice, no source).
const STRETCH_TOLD: f64 = 0.000_5;

/// Something that differs from what was entered. The piece can be built all the same.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Notice {
    /// All rows were measured and miss their room by an error of the tape, so all are stretched or shrunk.
    RowsStretched {
        /// In which bay.
        place: BayPlace,
        /// The sum of the measured rows.
        measured: Length,
        /// The height there is for them.
        room: Length,
    },
    /// The same of all sections side by side.
    BaysStretched {
        /// Whether in the upper of two cases.
        upper: bool,
        /// What the measured sections take.
        measured: Length,
        /// The width there is for them.
        room: Length,
    },
    /// A hole is in a surface that the piece does not have, or not under this name any more.
    NoSurfaceForHole {
        /// The hole.
        hole: PartId,
        /// The surface that it names.
        surface: String,
    },
    /// A hole is larger than what is left of its surface.
    HoleTooLarge {
        /// The hole.
        hole: PartId,
        /// The part that it is in.
        part: PartId,
        /// What a maker calls the surface within the part.
        side: String,
        /// Its area.
        given: Area,
        /// How much of it was deducted.
        deducted: Area,
    },
}

impl Notice {
    /// The sentence for the maker, in the units of the workshop.
    pub fn message(&self, system: System) -> String {
        let length = |length| show_length(length, system);
        let area = |area| {
            let (number, unit) = show_area(area, system);
            format!("{number} {unit}")
        };
        match self {
            Notice::RowsStretched {
                place,
                measured,
                room,
            } => format!(
                "{}rows add up to {}; there is room for {}. {}",
                in_bay(*place),
                length(*measured),
                length(*room),
                fitted(*measured, *room)
            ),
            Notice::BaysStretched {
                upper,
                measured,
                room,
            } => format!(
                "{}olumns add up to {}; there is room for {}. {}",
                if *upper { "Upper c" } else { "C" },
                length(*measured),
                length(*room),
                fitted(*measured, *room)
            ),
            Notice::NoSurfaceForHole { hole, surface } => format!(
                "{} isn't deducted. There is no surface \"{}\" anymore.",
                hole.label(),
                surface_words(surface)
            ),
            Notice::HoleTooLarge {
                hole,
                part,
                side,
                given,
                deducted,
            } => format!(
                "{} is {}, larger than {}, {side}. Only {} is deducted. Check its size.",
                hole.label(),
                area(*given),
                part.label(),
                area(*deducted)
            ),
        }
    }
}

/// What happens to rows or sections that miss their room.
fn fitted(measured: Length, room: Length) -> String {
    let how = if measured < room { "larger" } else { "smaller" };
    format!("Each is made slightly {how} to fit.")
}

/// The name of a surface that is not there, as far as it can be read: `top/moulded-front` is `top, molded front`.
pub fn surface_words(name: &str) -> String {
    name.replace('/', ", ")
        .replace('-', " ")
        .replace("moulded", "molded")
}

/// The rows and sections of these cases that are stretched or shrunk to fit.
pub(super) fn of_slips(units: &[Unit]) -> Vec<Notice> {
    let mut found = Vec::new();
    for unit in units {
        let members = Members::of(unit.furniture, unit.has_crown);
        let (claims, room) = unit.bay_claims(&members);
        found.extend(
            missed(&claims, room).map(|[measured, room]| Notice::BaysStretched {
                upper: unit.upper,
                measured,
                room,
            }),
        );
        for (i, bay) in unit.bays.iter().enumerate() {
            let (claims, room) = unit.row_claims(&members, &bay.rows);
            found.extend(
                missed(&claims, room).map(|[measured, room]| Notice::RowsStretched {
                    place: unit.place(i),
                    measured,
                    room,
                }),
            );
        }
    }
    found
}

/// What was measured, and the room there is, where all was measured and misses it.
fn missed(claims: &[Option<f64>], room: f64) -> Option<[Length; 2]> {
    let all: Option<f64> = claims.iter().copied().sum();
    let measured = all.filter(|measured| (measured - room).abs() > STRETCH_TOLD)?;
    Some([measured, room].map(Length::metres))
}

/// Notices for holes that were not fully deducted. Each hole has the name of its surface and its area.
pub(super) fn of_holes(holes: &[(PartId, String, Area)], surfaces: &[Surface]) -> Vec<Notice> {
    let of_hole = |(hole, name, given): &(PartId, String, Area)| {
        let Some(surface) = surfaces.iter().find(|surface| surface.id.to_string() == *name) else {
            return Some(Notice::NoSurfaceForHole {
                hole: *hole,
                surface: name.clone(),
            });
        };
        let deducted = surface.deductions.iter().find(|deduction| deduction.by == *hole);
        let deducted = deducted.map_or(Area::ZERO, |deduction| deduction.area);
        (deducted < *given).then(|| Notice::HoleTooLarge {
            hole: *hole,
            part: surface.id.part,
            side: surface.side_label(),
            given: *given,
            deducted,
        })
    };
    holes.iter().filter_map(of_hole).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Alteration, Fill, Furniture, Kind, Row};

    fn noticed(piece: &Furniture) -> Vec<Notice> {
        let assembly = piece.assembly().unwrap();
        piece.checked().unwrap().notices(&assembly, &assembly.surfaces())
    }

    fn chest(inches: [f64; 3]) -> Furniture {
        let mut chest = Furniture::usual(Kind::ChestOfDrawers);
        chest.bays[0].rows = inches
            .map(|inches| Row {
                height: Some(Length::inches(inches)),
                columns: 1,
                fill: Fill::Drawers,
                shelves: 0,
            })
            .into();
        chest
    }

    /// 48 in less top, plinth and two frames of 1/2 in, and two gaps of 1/8 in: 41 3/4 in for the fronts.
    #[test]
    fn rows_that_are_stretched_say_so() {
        let notices = |inches| noticed(&chest(inches));
        assert_eq!(notices([13.75, 14.0, 14.0]), []);
        for (last, how) in [(14.25, "smaller"), (13.5, "larger")] {
            let found = notices([13.75, 14.0, last]);
            let [
                Notice::RowsStretched {
                    place,
                    measured,
                    room,
                },
            ] = found[..]
            else {
                panic!("{found:?}");
            };
            assert_eq!(place, BayPlace { upper: false, bay: 1 });
            assert!((measured.as_inches() - 27.75 - last).abs() < 1e-9);
            assert!((room.as_inches() - 41.75).abs() < 1e-9);
            let message = found[0].message(System::UsCustomary);
            assert!(message.contains("41 3/4") && message.contains(how), "{message}");
        }
        // One row that takes the rest stretches nothing.
        let mut open = chest([13.75, 14.0, 1.0]);
        open.bays[0].rows[2].height = None;
        assert_eq!(noticed(&open), []);
    }

    #[test]
    fn sections_that_are_stretched_say_so() {
        let mut sideboard = Furniture::usual(Kind::Sideboard);
        let clear = sideboard.checked().unwrap().shared_lengths()[0].1;
        for bay in &mut sideboard.bays {
            bay.width = Some(clear * 1.01);
        }
        let found = noticed(&sideboard);
        assert!(
            matches!(found[..], [Notice::BaysStretched { upper: false, measured, room }] if measured > room),
            "{found:?}"
        );
    }

    fn holed(surface: &str, inches: f64) -> (f64, Vec<Notice>) {
        let mut table = Furniture::usual(Kind::SideTable);
        table.changes = vec![Alteration::Hole {
            surface: surface.into(),
            width: Length::inches(inches),
            height: Length::inches(inches),
        }];
        let surfaces = table.assembly().unwrap().surfaces();
        let net = surfaces
            .iter()
            .map(|surface| surface.net.as_square_metres())
            .sum();
        (net, noticed(&table))
    }

    #[test]
    fn a_hole_that_is_not_deducted_says_so() {
        let (whole, _) = holed("top/top", 0.1);
        assert_eq!(holed("top/top", 2.0).1, []);
        let (net, found) = holed("top/moulded-front", 2.0);
        assert!(net >= whole);
        assert!(
            matches!(&found[..], [Notice::NoSurfaceForHole { surface, .. }] if surface == "top/moulded-front"),
            "{found:?}"
        );
        assert_eq!(
            found[0].message(System::UsCustomary),
            "Hole 1 isn't deducted. There is no surface \"top, molded front\" anymore."
        );
    }

    /// The top is 20 in square.
    #[test]
    fn a_hole_larger_than_its_surface_says_so() {
        let (_, found) = holed("top/top", 21.0);
        let [Notice::HoleTooLarge { given, deducted, .. }] = &found[..] else {
            panic!("{found:?}");
        };
        let square_inches = |area: &Area| area.as_square_metres() / 0.0254 / 0.0254;
        assert!((square_inches(given) - 441.0).abs() < 1e-6);
        assert!((square_inches(deducted) - 400.0).abs() < 1e-6);
    }
}
