//! A second witness of what is seen: rays from the eye through a screen of points, against every facet.

use crate::surface::{Surface, SurfaceId};
use crate::{Facet, Point2, Point3, Region, Vector3, View};

/// The directions to the right, up and toward the eye, from the words of [`View`].
pub(super) fn axes(view: View) -> [Vector3; 3] {
    let eye = match view {
        View::Front => Vector3::new(0.0, -1.0, 0.0),
        View::Side => Vector3::new(1.0, 0.0, 0.0),
        View::Left => Vector3::new(-1.0, 0.0, 0.0),
        View::Top => return [Vector3::x(), Vector3::y(), Vector3::z()],
        View::Cabinet => {
            // Half a meter at 30 degrees for each meter of depth.
            let (up, right) = libm::sincos(std::f64::consts::FRAC_PI_6);
            let [right, up] = [right / 2.0, up / 2.0];
            return [
                Vector3::new(1.0, right, 0.0),
                Vector3::new(0.0, up, 1.0),
                Vector3::new(right, -1.0, up).normalize(),
            ];
        }
        View::Turned { turn, tilt } => {
            let level = Vector3::new(libm::sin(turn), -libm::cos(turn), 0.0);
            level * libm::cos(tilt) + Vector3::z() * libm::sin(tilt)
        }
    };
    // A tilted eye leans back in the upright plane that it stands in.
    let right = match view {
        View::Turned { turn, .. } => Vector3::new(libm::cos(turn), libm::sin(turn), 0.0),
        _ => Vector3::z().cross(&eye),
    };
    [right, eye.cross(&right), eye]
}

/// What one sees at a point.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Sight {
    pub(super) id: SurfaceId,
    /// How near to the eye, meters.
    pub(super) near: f64,
    pub(super) normal: Vector3,
    pub(super) squareness: f64,
}

impl Sight {
    /// Whether both see one face of one part; what it looks at may differ.
    pub(super) fn is_of_one_face(&self, other: &Sight) -> bool {
        (self.id.part, self.id.side) == (other.id.part, other.id.side)
    }
}

/// Looks at every facet of the surfaces.
pub(super) struct Witness<'a> {
    facets: Vec<(SurfaceId, &'a Facet, [Point2; 2])>,
    axes: [Vector3; 3],
    /// What is drawn as one meter to the right, and as one meter up.
    steps: [Vector3; 2],
}

impl<'a> Witness<'a> {
    pub(super) fn of(surfaces: &'a [Surface], view: View) -> Self {
        let axes = axes(view);
        let facets = surfaces.iter().flat_map(|surface| {
            let facets = surface.facets.iter();
            facets.map(move |facet| (surface.id, facet, around(facet, &axes)))
        });
        Witness {
            facets: facets.collect(),
            axes,
            steps: match view {
                View::Cabinet => [Vector3::x(), Vector3::z()],
                _ => [axes[0], axes[1]],
            },
        }
    }

    /// The nearest facet on the ray through a point of the drawing.
    pub(super) fn look(&self, point: Point2) -> Option<Sight> {
        let mut seen: Option<Sight> = None;
        for (id, facet, [low, high]) in &self.facets {
            if (0..2).any(|axis| point[axis] < low[axis] || point[axis] > high[axis]) {
                continue;
            }
            if let Some(sight) = self.meet(*id, facet, point)
                && seen.as_ref().is_none_or(|before| before.near < sight.near)
            {
                seen = Some(sight);
            }
        }
        seen
    }

    fn meet(&self, id: SurfaceId, facet: &Facet, point: Point2) -> Option<Sight> {
        let ([.., eye], [across, upward]) = (&self.axes, &self.steps);
        let normal = facet.plane.normal();
        let squareness = normal.dot(eye);
        if squareness < 1e-6 {
            return None;
        }
        let start = Point3::from(across * point[0] + upward * point[1]);
        let near = -facet.plane.height_of(&start) / squareness;
        let within = facet.plane.project(&(start + eye * near));
        contains(&facet.region, within).then_some(Sight {
            id,
            near,
            normal,
            squareness,
        })
    }
}

/// The box around a facet in the drawing.
fn around(facet: &Facet, [right, up, _]: &[Vector3; 3]) -> [Point2; 2] {
    let mut bounds = [[f64::INFINITY; 2], [f64::NEG_INFINITY; 2]];
    for &corner in facet.region.contours().flatten() {
        let point = facet.plane.at(corner).coords;
        let point = [point.dot(right), point.dot(up)];
        for axis in 0..2 {
            bounds[0][axis] = bounds[0][axis].min(point[axis]);
            bounds[1][axis] = bounds[1][axis].max(point[axis]);
        }
    }
    bounds
}

/// Whether a point lies in a region, by the number of contours to its right.
pub(super) fn contains(region: &Region, [x, y]: Point2) -> bool {
    let mut inside = false;
    for contour in region.contours() {
        let next = contour.iter().cycle().skip(1);
        for (&[px, py], &[qx, qy]) in contour.iter().zip(next) {
            if (py > y) != (qy > y) && x < px + (y - py) / (qy - py) * (qx - px) {
                inside = !inside;
            }
        }
    }
    inside
}
