//! Open rows: the surfaces that are visible in an opening of a case.

use super::Checked;
use super::bay::Fill;
use super::layout::{Span, length_of};
use crate::CONTACT_GAP;
use crate::face::Side;
use crate::part_kind::PartKind;
use crate::space::{Exposure, Space};
use crate::surface::{Surface, SurfaceId};

impl Checked<'_> {
    /// The surfaces that one touch in a drawing selects. Touching the back of an open row, the only part of it that can
    /// be touched from the front, selects everything visible in the opening. Touching any other surface selects only
    /// that.
    ///
    /// A back shared by several open rows selects all of them.
    pub fn touched_with<'a>(
        self,
        surfaces: impl Iterator<Item = &'a Surface> + Clone,
        touched: &SurfaceId,
    ) -> Vec<SurfaceId> {
        let is_back = touched.part.kind == PartKind::Back
            && touched.side == Side::Front
            && touched.exposure == Exposure::Outside;
        let back = surfaces.clone().find(|surface| is_back && surface.id == *touched);
        let Some(back) = back else {
            return vec![*touched];
        };
        let openings: Vec<Space> = self
            .openings()
            .into_iter()
            .filter(|opening| seen_in(back, opening) > 0.0)
            .flatten()
            .collect();
        let is_in = |surface: &&Surface| {
            let drawn: f64 = surface.facets.iter().map(|facet| facet.region.area()).sum();
            surface.id == *touched
                || surface.id.exposure == Exposure::Outside && 2.0 * seen_in(surface, &openings) > drawn
        };
        surfaces.filter(is_in).map(|surface| surface.id).collect()
    }

    /// The spaces of open rows, from the front to the back. A row with a face frame has two: within the frame and
    /// behind it.
    fn openings(self) -> Vec<Vec<Space>> {
        // The front edges of shelves are at the front of the opening and face out of it, but belong to it.
        let before = 2.0 * CONTACT_GAP;
        let block = |x: Span, y: Span, z: Span| {
            Space::block(Exposure::Outside, [x[0], y[0] - before, z[0]], [x[1], y[1], z[1]])
        };
        let mut list = Vec::new();
        for unit in self.units() {
            let at = unit.layout();
            let behind_frame = unit.y[0] + at.members.frame_depth;
            let rear = if length_of(at.back) > 0.0 {
                at.back[0]
            } else {
                unit.y[1]
            };
            for bay in &at.bays {
                for (r, row) in bay.rows.iter().enumerate() {
                    if row.fill != Fill::Open {
                        continue;
                    }
                    let compartment = unit.compartment(&at, bay, (r, row));
                    let mut spaces = vec![block(bay.between, [behind_frame, rear], compartment)];
                    if at.members.has_frame {
                        spaces.push(block(bay.clear, [unit.y[0], behind_frame], row.opening));
                    }
                    list.push(spaces);
                }
            }
        }
        list
    }
}

/// The drawn area of a surface that looks into these spaces, square meters.
fn seen_in(surface: &Surface, spaces: &[Space]) -> f64 {
    let of_space = |space: &Space| -> f64 {
        let facets = surface.facets.iter();
        facets
            .map(|facet| space.seen_from(&facet.plane, &facet.region).area())
            .sum()
    };
    spaces.iter().map(of_space).sum()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Furniture, Kind, Row, styles};

    fn names(piece: &Furniture, touched: &str) -> Vec<String> {
        let surfaces = piece.assembly().unwrap().surfaces();
        let touched = surfaces
            .iter()
            .find(|surface| surface.id.to_string() == touched)
            .unwrap();
        let with = piece
            .checked()
            .unwrap()
            .touched_with(surfaces.iter(), &touched.id);
        let takes_finish = surfaces
            .iter()
            .filter(|surface| with.contains(&surface.id) && surface.takes_finish());
        takes_finish.map(|surface| surface.id.to_string()).collect()
    }

    /// One open row above a drawer: its back, its floor, its ceiling, and what one sees of both sides.
    #[test]
    fn an_open_cubby_goes_with_its_back() {
        for frame in ["none", "frame"] {
            let mut piece = Furniture::usual(Kind::Nightstand);
            assert!(
                styles::by_key("face-frame")
                    .unwrap()
                    .choose(&mut piece.styles, frame)
            );
            piece.bays[0].rows = vec![Row::of(Fill::Open, 1, 1), Row::of(Fill::Drawers, 1, 0)];
            let mut cubby = names(&piece, "back/front");
            cubby.sort();
            let mut expected = vec![
                "back/front",
                "rail-1/top",
                "shelf-1-1/bottom",
                "shelf-1-1/front",
                "shelf-1-1/top",
                "left-side/right",
                "right-side/left",
                "top-rail-1/bottom",
            ];
            if frame == "frame" {
                expected.extend([
                    "frame-rail-1/top",
                    "frame-stile-1/right",
                    "frame-stile-2/left",
                    "frame-top/bottom",
                ]);
            }
            expected.sort_unstable();
            assert_eq!(cubby, expected, "{frame}");
            assert_eq!(names(&piece, "rail-1/top"), ["rail-1/top"]);
            assert_eq!(
                names(&piece, "drawer-front-2-1/front"),
                ["drawer-front-2-1/front"]
            );
        }
    }

    /// Nothing of the outside of a bookcase goes with what one sees in it.
    #[test]
    fn a_bookcase_keeps_its_outside() {
        let piece = Furniture::usual(Kind::Bookcase);
        let within = names(&piece, "back/front");
        for outer in [
            "left-side/left",
            "right-side/right",
            "left-side/front",
            "top/top",
            "top/front",
            "back/back",
        ] {
            assert!(!within.contains(&outer.to_owned()), "{outer}");
        }
        let shelves = within.iter().filter(|name| name.starts_with("shelf-")).count();
        assert_eq!(shelves, 4 * 3, "{within:?}");
    }
}
