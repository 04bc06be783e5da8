//! The picture of a piece: the paths of all visible parts in sheet units.

use geometry::{BayPlace, Dimension, Drawing, FieldId, Furniture, Point2, Surface, SurfaceId, View};
use units::Length;
use workshop::SurfaceLine;
use yew::AttrValue;

use super::margins::{from_the_top, margins};
use super::room::Room;
use super::scale::Scale;

/// The shade of a face seen edge on. Faces turned away from the viewer get less light.
const DARKEST: f64 = 0.38;
/// The same in a cabinet projection, where the lines alone tell the top from the front.
const DARKEST_IN_CABINET: f64 = 0.16;
/// From the front, surfaces behind this share of the depth are inside the piece, as in an open row and unlike
/// a drawer front.
const DEEP: f64 = 0.5;
/// The shade of surfaces inside the piece.
const INSIDE: f64 = 0.34;
/// Lighter shades are not drawn.
const LIGHTEST: f64 = 0.005;

/// Everything that a drawing shows of a piece. It depends only on the piece and the view, not on selection or
/// paint.
pub struct Picture {
    /// The visible faces.
    pub faces: Vec<Face>,
    /// All lines within the outline.
    pub edges: AttrValue,
    /// The outline.
    pub outline: AttrValue,
    /// The dimension lines.
    pub dimensions: Vec<Dimension>,
    /// The lengths that divide the remaining space where nothing was measured.
    pub shared: Vec<(FieldId, Length)>,
    /// The furniture with its default sizes.
    pub furniture: Furniture,
    /// The lower left and upper right corner of the drawing, in meters.
    pub bounds: (Point2, Point2),
    /// The scale from meters to sheet units.
    pub scale: Scale,
    /// The sheet.
    pub room: Room,
}

/// The visible part of a surface.
pub struct Face {
    /// The index of the surface among those of the piece.
    pub place: usize,
    /// The name of the surface.
    pub name: String,
    /// The visible region.
    pub region: AttrValue,
    /// The lines on it.
    pub lines: AttrValue,
    /// Its shaded regions, each with its opacity.
    pub shades: Vec<(AttrValue, String)>,
}

impl Picture {
    /// Draws a piece from one side. Where there is room for the row heights of one bay only, those of `rows_of` are shown.
    pub fn of(
        furniture: &Furniture,
        lines: &[SurfaceLine],
        view: View,
        rows_of: Option<BayPlace>,
        room: Room,
    ) -> Self {
        Picture::no_larger(furniture, lines, view, rows_of, (room, f64::INFINITY))
    }

    /// Draws a piece from one side with at most `most` sheet units per meter, so that it can be placed next
    /// to another picture.
    pub fn no_larger(
        furniture: &Furniture,
        lines: &[SurfaceLine],
        view: View,
        rows_of: Option<BayPlace>,
        (room, most): (Room, f64),
    ) -> Self {
        let surfaces: Vec<Surface> = lines.iter().map(|line| line.surface.clone()).collect();
        let drawing = Drawing::of(&surfaces, view);
        let checked = furniture.checked().ok();
        let dimensions = checked.map(|piece| match rows_of {
            Some(place) => piece.dimensions_with_rows_of(view, place),
            None => piece.dimensions(view),
        });
        let dimensions = dimensions.unwrap_or_default();
        let scale = Scale::fitting(&drawing, room.size, margins(&dimensions, &room), most);
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
        let darkest = match view {
            View::Cabinet => DARKEST_IN_CABINET,
            _ => DARKEST,
        };
        let face = |face: &geometry::VisibleFace| {
            let lines = scale.lines(&face.lines);
            edges.push_str(&lines);
            Face {
                place: place(face.surface),
                name: face.surface.to_string(),
                region: scale.path(&face.region).into(),
                lines: lines.into(),
                shades: shades(face, &scale, (darkest, inside(place(face.surface)))),
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
            room,
        }
    }
}

/// Returns the shaded regions of a face. Surfaces deep inside get no light from the front.
fn shades(
    face: &geometry::VisibleFace,
    scale: &Scale,
    (darkest, inside): (f64, Option<f64>),
) -> Vec<(AttrValue, String)> {
    let shades = face.shades.iter();
    let dark = shades.map(|shade| (shade, inside.unwrap_or((1.0 - shade.squareness) * darkest)));
    dark.filter(|(_, dark)| *dark >= LIGHTEST)
        .map(|(shade, dark)| (scale.path(&shade.region).into(), format!("{dark:.3}")))
        .collect()
}
