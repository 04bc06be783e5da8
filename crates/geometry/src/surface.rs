//! Surfaces: what a finisher can paint, with the working behind each area.

use std::fmt;

use units::{Area, Length};

use crate::face::{Facet, Side};
use crate::furniture::styles::Stand;
use crate::part::PartId;
use crate::space::Exposure;
use crate::zone::Zone;

/// The name of a surface. It holds no dimension, so it stays when the piece is measured again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct SurfaceId {
    /// The part it belongs to.
    pub part: PartId,
    /// Which way the face looks.
    pub side: Side,
    /// What the surface faces.
    pub exposure: Exposure,
}

impl SurfaceId {
    /// The zone that the surface usually belongs to. The back of a free-standing piece is seen.
    pub fn usual_zone(&self, stand: Stand) -> Zone {
        match self.exposure {
            Exposure::Outside => self.part.kind.zone(),
            Exposure::Wall if stand == Stand::Free => self.part.kind.zone(),
            Exposure::Inside => Zone::Inside,
            Exposure::Wall | Exposure::Floor | Exposure::Underneath | Exposure::Glued => Zone::Unseen,
        }
    }

    /// Whether the surface can be finished at all if so much of it is left to paint.
    pub fn takes_finish(&self, net: Area) -> bool {
        self.part.kind.takes_finish() && net > Area::ZERO
    }
}

impl fmt::Display for SurfaceId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.part, self.side.word())?;
        match self.exposure {
            Exposure::Outside => Ok(()),
            other => write!(f, "/{}", other.key()),
        }
    }
}

/// What covers a surface, and how much of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Deduction {
    /// The part that lies against the surface, or the hole in it.
    pub by: PartId,
    /// How much it covers.
    pub area: Area,
}

/// The orientation of a surface: horizontal surfaces drip less and wear more than vertical ones.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Orientation {
    /// Looks up, within 45 degrees.
    Up,
    /// Stands, within 45 degrees.
    Upright,
    /// Looks down, within 45 degrees.
    Down,
}

impl Orientation {
    /// Every orientation.
    pub const ALL: [Orientation; 3] = [Orientation::Up, Orientation::Upright, Orientation::Down];

    /// What a maker calls it.
    pub fn label(self) -> &'static str {
        match self {
            Orientation::Up => "Facing up",
            Orientation::Upright => "Upright",
            Orientation::Down => "Facing down",
        }
    }
}

/// A surface with its working: gross area, less each deduction, is the net area.
#[derive(Clone, Debug, PartialEq)]
pub struct Surface {
    /// Its name.
    pub id: SurfaceId,
    /// Whether it is an edge of a board rather than one of its faces.
    pub is_edge: bool,
    /// What it is made of or drawn with: one flat outline, or the facets of a folded or curved surface.
    pub facets: Facets,
    /// Profile multiplier: developed girth over flat height; 1 for a surface without a profile. The gross area includes
    /// it already.
    pub multiplier: f64,
    /// The developed area before deductions.
    pub gross: Area,
    /// What lies against it.
    pub deductions: Vec<Deduction>,
    /// What is left to paint; zero if it is wholly covered.
    pub net: Area,
}

/// The facets of a surface; nearly all surfaces have one.
#[derive(Clone, Debug, PartialEq)]
pub enum Facets {
    /// A flat surface.
    One(Facet),
    /// A folded or curved surface.
    Many(Vec<Facet>),
}

impl std::ops::Deref for Facets {
    type Target = [Facet];

    fn deref(&self) -> &[Facet] {
        match self {
            Facets::One(facet) => std::slice::from_ref(facet),
            Facets::Many(facets) => facets,
        }
    }
}

impl Surface {
    /// What a maker calls the surface within its part: `front face`, `top edge`, `underside`.
    pub fn side_label(&self) -> String {
        let place = self.id.side.label(self.is_edge);
        match self.id.exposure {
            Exposure::Outside => place.into(),
            Exposure::Inside => format!("{place}, inside the case"),
            Exposure::Wall => format!("{place}, at the back"),
            Exposure::Floor => format!("{place}, on the floor"),
            Exposure::Underneath => format!("{place}, underneath"),
            Exposure::Glued => format!("{place}, glued"),
        }
    }

    /// Both sides of a surface that is one flat rectangle, the longer first; nothing for any other.
    pub fn rectangle(&self) -> Option<[Length; 2]> {
        let [facet] = &*self.facets else { return None };
        let (low, high) = facet.region.bounds();
        let [a, b] = [high[0] - low[0], high[1] - low[1]];
        let is_full = (a * b - facet.region.area()).abs() < 1e-9 * a * b;
        is_full.then(|| [a.max(b), a.min(b)].map(Length::metres))
    }

    /// The zone that it usually belongs to.
    pub fn usual_zone(&self, stand: Stand) -> Zone {
        self.id.usual_zone(stand)
    }

    /// Whether it can be finished at all.
    pub fn takes_finish(&self) -> bool {
        self.id.takes_finish(self.net)
    }

    /// The net area by orientation, in the order of [`Orientation::ALL`]. What covers a curved surface is deducted
    /// evenly.
    pub fn by_orientation(&self) -> [Area; 3] {
        let [mut above, mut upright, mut below] = [0.0; 3];
        for facet in self.facets.iter() {
            let up = facet.plane.normal().z;
            let level = std::f64::consts::FRAC_1_SQRT_2;
            let area = if up > level {
                &mut above
            } else if up < -level {
                &mut below
            } else {
                &mut upright
            };
            *area += facet.region.area();
        }
        let drawn = [above, upright, below];
        let sum: f64 = drawn.iter().sum();
        drawn.map(|area| {
            if sum > 0.0 {
                self.net * (area / sum)
            } else {
                Area::ZERO
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use crate::{Furniture, Kind, PartKind, fields};

    #[test]
    fn the_sides_of_a_top_are_what_the_tape_says() {
        let dresser = Furniture::usual(Kind::Dresser);
        let length = |field| dresser.length(field).as_metres();
        let long = length(&fields::WIDTH) + 2.0 * length(&fields::OVERHANG_SIDE);
        let short = length(&fields::DEPTH) + length(&fields::OVERHANG_FRONT);
        let surfaces = dresser.assembly().unwrap().surfaces();
        let of_top = surfaces
            .iter()
            .filter(|surface| surface.id.part.kind == PartKind::Top);
        // Its largest surface is the one that looks up.
        let upper = of_top.max_by(|a, b| a.gross.as_square_metres().total_cmp(&b.gross.as_square_metres()));
        let [a, b] = upper.unwrap().rectangle().unwrap().map(|side| side.as_metres());
        assert!((a - long).abs() < 1e-9 && (b - short).abs() < 1e-9, "{a} by {b}");
    }

    #[test]
    fn what_is_turned_is_no_rectangle() {
        let vanity = Furniture::usual(Kind::Vanity);
        let surfaces = vanity.assembly().unwrap().surfaces();
        let turned: Vec<_> = surfaces
            .iter()
            .filter(|surface| surface.facets.len() > 1)
            .collect();
        assert!(!turned.is_empty() && turned.iter().all(|surface| surface.rectangle().is_none()));
    }
}
