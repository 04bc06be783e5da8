//! Profiles: the curve of a molding or a worked edge, its length, and the polyline that approximates it.
//!
//! A profile lies in a plane of its own with the axes *in* (toward the wood) and *up*, meters. Each member is a
//! straight piece or a quarter of an ellipse, as `tests/cad/CONSTRUCTION.md` lays down.
//!
//! Lengths, moments and areas come from closed formulas of the ellipse and never from points. [`Profile::line`]
//! cuts the same ellipses into points for drawings in space and for solids.

mod arc;
mod member;
mod shape;
#[cfg(test)]
mod tests;

pub(crate) use arc::{equal_area_arc, equal_area_circle};
pub use member::{First, Member};
pub use shape::Shape;

use member::plus;

use crate::Point2;

/// The curve of a molding or a worked edge, from its foot up.
///
/// # Example
/// ```
/// use geometry::{Profile, Shape};
/// let edge = Profile::standard(Shape::Roundover, 0.010, 0.010);
/// assert!((edge.girth() - 0.010 * std::f64::consts::FRAC_PI_2).abs() < 1e-15);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    start: f64,
    /// Normalized; none has zero length.
    members: Vec<Member>,
}

impl Profile {
    /// The worked edge of a board: it goes toward the wood and up, `width` by `height`, meters.
    ///
    /// Source of the members: `tests/cad/CONSTRUCTION.md`.
    pub fn standard(shape: Shape, width: f64, height: f64) -> Self {
        let (start, members) = shape.members(width, height);
        Self::begun_at(start, members)
    }

    /// A crown, or a member of a molding: it goes away from the wall and up, `projection` by `height`, meters; *in* counts
    /// negative.
    ///
    /// A `cove` is hollow and a `roundover` is full here too, and a bead bulges away from the wall. Source:
    /// `tests/cad/CONSTRUCTION.md`.
    pub fn crown(shape: Shape, projection: f64, height: f64) -> Self {
        let quarter = |inward, up, first| Member::Quarter { inward, up, first };
        let (half_out, quarter_up) = (projection / 2.0, height / 4.0);
        // Turned outward like the others, a bead would become a hollow.
        let members = match shape {
            Shape::HalfRound => vec![
                quarter(-projection, height / 2.0, First::In),
                quarter(projection, height / 2.0, First::Up),
            ],
            Shape::BeadAndCove => vec![
                Member::Straight {
                    inward: -half_out,
                    up: 0.0,
                },
                quarter(-half_out, quarter_up, First::In),
                quarter(half_out, quarter_up, First::Up),
                quarter(-half_out, height / 2.0, First::Up),
            ],
            _ => {
                let (_, members) = shape.members(projection, height);
                members.into_iter().map(Member::outward).collect()
            }
        };
        Self::begun_at(0.0, members)
    }

    /// Members joined end to end, from the stated edge.
    pub fn composed(members: Vec<Member>) -> Self {
        Self::begun_at(0.0, members)
    }

    fn begun_at(start: f64, mut members: Vec<Member>) -> Self {
        members.retain(|member| member.moves() != [0.0, 0.0]);
        for member in &mut members {
            *member = member.settled();
        }
        Profile { start, members }
    }

    /// The same profile on a ground: members along the ground at its foot are left out.
    pub fn grounded(mut self) -> Self {
        let level = |member: &Member| member.moves()[1] == 0.0;
        let count = self.members.iter().take_while(|member| level(member)).count();
        self.start += self
            .members
            .drain(..count)
            .map(|member| member.moves()[0])
            .sum::<f64>();
        self
    }

    /// The same profile in a corner: besides what [`Profile::grounded`] leaves out, members up the side at its end are
    /// left out.
    pub fn in_corner(self) -> Self {
        let mut profile = self.grounded();
        while profile
            .members
            .last()
            .is_some_and(|member| member.moves()[0] == 0.0)
        {
            profile.members.pop();
        }
        profile
    }

    /// How far within the stated edge the profile begins, meters: the width of a half round, otherwise nothing.
    pub fn start(&self) -> f64 {
        self.start
    }

    /// The whole move from the first end to the last, (in, up), meters.
    pub fn size(&self) -> [f64; 2] {
        self.members
            .iter()
            .fold([0.0; 2], |sum, member| plus(sum, member.moves()))
    }

    /// Each member with the point where it begins.
    fn placed(&self) -> impl Iterator<Item = (Point2, Member)> {
        let mut next = [self.start, 0.0];
        self.members.iter().map(move |member| {
            let from = next;
            next = plus(from, member.moves());
            (from, *member)
        })
    }

    /// The length along the curve, meters: what a strip of paper pressed around the profile measures.
    pub fn girth(&self) -> f64 {
        self.members.iter().map(|member| member.length()).sum()
    }

    /// The first moment of the curve about the stated edge, square meters: the integral of *in* along it.
    ///
    /// Where two worked edges are mitered at a right angle, each is shorter by *in* than the stated edge, and so
    /// has this much less area than girth times length.
    pub fn moment(&self) -> f64 {
        self.placed().map(|(from, member)| member.moment(from[0])).sum()
    }

    /// The developed girth over the flat height.
    pub fn multiplier(&self) -> f64 {
        multiplier_of(self.girth(), self.size()[1])
    }

    /// The points of a polyline in (in, up), from `(start, 0)` to the last end.
    ///
    /// Straight members give just their ends. Quarters are divided so that the polyline stays within `tolerance`
    /// (meters) of the curve, and their inner points are pushed out from the center of the ellipse so that the
    /// polyline bounds exactly the area that the curve bounds: planar areas of sections are exact.
    pub fn line(&self, tolerance: f64) -> Vec<Point2> {
        let mut points = vec![[self.start, 0.0]];
        for (from, member) in self.placed() {
            member.append_inner(from, tolerance, &mut points);
            points.push(plus(from, member.moves()));
        }
        points
    }

    /// The area between the curve and the stated edge, square meters: the integral of *in* over *up*.
    pub fn area_within(&self) -> f64 {
        self.placed()
            .map(|(from, member)| member.area_within(from[0]))
            .sum()
    }
}

/// The profile multiplier of a measured edge: girth over flat height, both in meters.
///
/// The girth is measured with a strip of paper pressed around the profile and laid flat again. Without a height
/// there is no flat edge to compare with, and the multiplier is 1.
pub fn multiplier_of(girth: f64, flat_height: f64) -> f64 {
    if flat_height > 0.0 {
        girth / flat_height
    } else {
        1.0
    }
}
