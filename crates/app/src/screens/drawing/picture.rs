//! A drawing brought to the sheet: the paths of all that is seen, in the units of the sheet.

use geometry::{Dimension, Drawing, FieldId, Furniture, Point2, Surface, SurfaceId, View};
use units::Length;
use workshop::Takeoff;
use yew::AttrValue;

use super::margins::{from_the_top, margins};
use super::scale::Scale;

/// The width and height of the sheet in its own units.
pub const SHEET: [f64; 2] = [1000.0, 570.0];
/// How dark a face is that is seen edge on: faces that turn away from the eye get less light.
const DARKEST: f64 = 0.38;
/// What lies behind this share of the depth of a piece is inside, as seen from the front: an open row, not a drawer.
const DEEP: f64 = 0.5;
/// How dark it is there.
const INSIDE: f64 = 0.34;
/// Shades that are lighter than this are not drawn.
const LIGHTEST: f64 = 0.005;

/// All that a drawing shows of a piece. It hangs on the piece and the view only, not on what is chosen or painted.
pub struct Picture {
    /// What is seen, face by face.
    pub faces: Vec<Face>,
    /// All lines within the outline.
    pub edges: AttrValue,
    /// The outline.
    pub outline: AttrValue,
    /// Where the dimension lines stand.
    pub dimensions: Vec<Dimension>,
    /// What is shared out where nothing was measured.
    pub shared: Vec<(FieldId, Length)>,
    /// The usual sizes.
    pub furniture: Furniture,
    /// The lower left and the upper right corner of all that is drawn, metres.
    pub bounds: (Point2, Point2),
    /// From metres to the sheet.
    pub scale: Scale,
}

/// What is seen of one surface.
pub struct Face {
    /// The place of the surface in the takeoff.
    pub place: usize,
    /// Its name.
    pub name: String,
    /// All that is seen of it.
    pub region: AttrValue,
    /// Its lines.
    pub lines: AttrValue,
    /// Where it is in the shade, and how dark.
    pub shades: Vec<(AttrValue, String)>,
}

impl Picture {
    /// A piece as seen from one side.
    pub fn of(furniture: &Furniture, takeoff: &Takeoff, view: View) -> Self {
        Picture::no_larger(furniture, takeoff, view, f64::INFINITY)
    }

    /// The same at no more than so many units of the sheet to the metre, to stand beside another.
    pub fn no_larger(furniture: &Furniture, takeoff: &Takeoff, view: View, most: f64) -> Self {
        let surfaces: Vec<Surface> = takeoff.surfaces.iter().map(|line| line.surface.clone()).collect();
        let drawing = Drawing::of(&surfaces, view);
        let checked = furniture.checked().ok();
        let dimensions = checked.map(|piece| piece.dimensions(view)).unwrap_or_default();
        let scale = Scale::fitting(&drawing, SHEET, margins(&dimensions), most);
        let mut edges = String::new();
        let place = |id: SurfaceId| {
            surfaces
                .iter()
                .position(|surface| surface.id == id)
                .unwrap_or(usize::MAX)
        };
        let nearness: Vec<f64> = surfaces.iter().map(|surface| view.nearness(surface)).collect();
        let front = nearness.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let back = nearness.iter().copied().fold(f64::INFINITY, f64::min);
        let inside = |place: usize| {
            let behind = (front - nearness.get(place)?) / (front - back);
            (view == View::Front && behind > DEEP).then_some(INSIDE)
        };
        let face = |face: &geometry::VisibleFace| {
            let lines = scale.lines(&face.lines);
            edges.push_str(&lines);
            Face {
                place: place(face.surface),
                name: face.surface.to_string(),
                region: scale.path(&face.region).into(),
                lines: lines.into(),
                shades: shades(face, &scale, inside(place(face.surface))),
            }
        };
        Picture {
            faces: drawing.faces.iter().map(face).collect(),
            edges: edges.into(),
            outline: scale.path(&drawing.outline).into(),
            shared: checked.map(|piece| piece.shared_lengths()).unwrap_or_default(),
            furniture: furniture.clone(),
            bounds: drawing.bounds(),
            dimensions: from_the_top(dimensions, &scale),
            scale,
        }
    }
}

/// How dark each part of a face is; what lies far inside gets no light from before.
fn shades(face: &geometry::VisibleFace, scale: &Scale, inside: Option<f64>) -> Vec<(AttrValue, String)> {
    let shades = face.shades.iter();
    let dark = shades.map(|shade| (shade, inside.unwrap_or((1.0 - shade.squareness) * DARKEST)));
    dark.filter(|(_, dark)| *dark >= LIGHTEST)
        .map(|(shade, dark)| (scale.path(&shade.region).into(), format!("{dark:.3}")))
        .collect()
}
