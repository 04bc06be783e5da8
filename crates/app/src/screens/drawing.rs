//! The drawing of a piece: a sheet with visible faces, outline and dimension lines, made of the same surfaces
//! that are counted.

use std::collections::BTreeSet;
use std::rc::Rc;

use geometry::{Dimension, Drawing, Furniture, Region, View};
use units::{Area, show_length};
use workshop::{Piece, SurfaceLine, Takeoff};
use yew::prelude::*;

use super::Shown;
use super::surfaces::switch;
use crate::browser::focus;
use crate::parts::Choice;
use crate::state::{Act, Look, Sheet};
use crate::words;

/// The width and height of the sheet in its own units.
const SHEET: [f64; 2] = [1000.0, 570.0];
/// How far the first dimension line stands from the piece, and each further one from the one before.
const DIMENSION_STEP: f64 = 44.0;
/// A step of turning, radians.
const STEP: f64 = std::f64::consts::PI / 12.0;
/// How far from above a turned view looks, radians.
const TILT: f64 = 0.42;

/// The sheet with the drawing, its views and the tapped surface.
#[component]
pub fn Board(shown: &Shown) -> Html {
    let Shown {
        app,
        piece,
        result,
        send,
    } = shown;
    let look = app.look;
    // What was last drawn stays on the sheet while a measurement does not fit.
    let last = use_mut_ref(|| None::<(Rc<Piece>, Rc<super::Result>)>);
    if result.is_ok() {
        *last.borrow_mut() = Some((piece.clone(), result.clone()));
    }
    let drawn = last.borrow().clone();
    let sheet = match drawn.as_ref().map(|(piece, result)| (piece, result.as_ref())) {
        Some((drawn, Ok(takeoff))) if drawn.id == piece.id => sheet(shown, &drawn.furniture(), takeoff),
        _ => html! { <p class="nothing">{ "Mend the measurements; then the piece is drawn here." }</p> },
    };
    html! {
        <section class={classes!("sheet", result.is_err().then_some("stale"))} aria-label="Drawing">
            { sheet }
            { views(look, send) }
            { picked(shown) }
        </section>
    }
}

fn views(look: Look, send: &super::Send) -> Html {
    let corner = match look {
        Look::Corner(step) => Look::Corner(step),
        _ => Look::Corner(2),
    };
    let options = vec![
        (Look::Front, "front", "Front"),
        (Look::Side, "side", "Side"),
        (Look::Above, "above", "Above"),
        (corner, "corner", "Corner"),
    ];
    let turn = |by: i8, id: &'static str, label: &'static str, face: &'static str| match look {
        Look::Corner(step) => {
            let next = (step + by).clamp(-5, 5);
            html! {
                <button type="button" {id} aria-label={label} disabled={next == step}
                    onclick={send.reform(move |_| Act::Look(Look::Corner(next)))}>{ face }</button>
            }
        }
        _ => Html::default(),
    };
    html! {
        <div class="views">
            <Choice<Look> label="Seen from" id="look" {options} value={look} on_choose={send.reform(Act::Look)} />
            { turn(-1, "turn-left", "Turn to the left", "\u{21ba}") }
            { turn(1, "turn-right", "Turn to the right", "\u{21bb}") }
        </div>
    }
}

fn view(look: Look) -> View {
    match look {
        Look::Front => View::Front,
        Look::Side => View::Side,
        Look::Above => View::Top,
        Look::Corner(step) => View::Turned {
            turn: f64::from(step) * STEP,
            tilt: TILT,
        },
    }
}

/// From metres of the drawing to units of the sheet.
struct Scale {
    factor: f64,
    shift: [f64; 2],
}

impl Scale {
    fn fitting(drawing: &Drawing, sheet: [f64; 2], margins: [f64; 4]) -> Self {
        let (low, high) = drawing.bounds();
        let [left, right, top, bottom] = margins;
        let room = [sheet[0] - left - right, sheet[1] - top - bottom];
        let size = [high[0] - low[0], high[1] - low[1]];
        let factor = (room[0] / size[0]).min(room[1] / size[1]);
        let spare = [room[0] - size[0] * factor, room[1] - size[1] * factor];
        Scale {
            factor,
            shift: [
                left + spare[0] / 2.0 - low[0] * factor,
                top + spare[1] / 2.0 + high[1] * factor,
            ],
        }
    }

    fn at(&self, point: [f64; 2]) -> [f64; 2] {
        [
            self.shift[0] + point[0] * self.factor,
            self.shift[1] - point[1] * self.factor,
        ]
    }

    fn path(&self, region: &Region) -> String {
        let mut path = String::new();
        for contour in region.contours() {
            for (i, &point) in contour.iter().enumerate() {
                let [x, y] = self.at(point);
                path.push_str(if i == 0 { "M" } else { "L" });
                path.push_str(&format!("{x:.1} {y:.1}"));
            }
            path.push('Z');
        }
        path
    }
}

fn sheet(shown: &Shown, furniture: &Furniture, takeoff: &Takeoff) -> Html {
    let Shown { app, piece, .. } = shown;
    let view = view(app.look);
    let surfaces: Vec<_> = takeoff.surfaces.iter().map(|line| line.surface.clone()).collect();
    let drawing = Drawing::of(&surfaces, view);
    let dimensions = furniture.dimensions(view).unwrap_or_default();
    let scale = Scale::fitting(&drawing, SHEET, margins(&dimensions));
    let painted: BTreeSet<_> = takeoff
        .surfaces
        .iter()
        .filter(|l| l.painted)
        .map(|l| l.surface.id)
        .collect();
    let faces = drawing.faces.iter().map(|face| {
        let name = face.surface.to_string();
        let is_picked = app.picked.as_deref() == Some(name.as_str());
        let is_painted = painted.contains(&face.surface);
        let pick = shown
            .send
            .reform(move |_: MouseEvent| Act::Pick(if is_picked { None } else { Some(name.clone()) }));
        let fill = if is_painted {
            piece.scheme.colour.write()
        } else {
            "url(#bare)".into()
        };
        let path = scale.path(&face.region);
        // Faces that turn away from the eye get less light.
        let shade = format!("{:.2}", (1.0 - face.squareness) * 0.38);
        html! {
            <g class={classes!("face", is_picked.then_some("picked"))} onclick={pick}>
                <path d={path.clone()} {fill} />
                <path class="shade" d={path} opacity={shade} />
            </g>
        }
    });
    html! {
        <svg class="drawing" viewBox={format!("0 0 {} {}", SHEET[0], SHEET[1])} role="group"
            aria-label={format!("{}, drawn to scale", piece.name)}>
            <defs>
                <pattern id="bare" width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                    <rect class="bare-ground" width="9" height="9" /><rect class="bare-line" width="1.2" height="9" />
                </pattern>
            </defs>
            { for faces }
            <path class="outline" d={scale.path(&drawing.outline)} />
            { for dimensions.iter().map(|dimension| dimension_line(shown, furniture, &scale, dimension)) }
        </svg>
    }
}

/// What is kept free around the piece for its dimensions: left, right, top, bottom.
fn margins(dimensions: &[Dimension]) -> [f64; 4] {
    let rows = |away: [f64; 2]| {
        let rows = dimensions
            .iter()
            .filter(|line| line.away == away)
            .map(|line| line.row);
        rows.max().map_or(0.0, |row| f64::from(row) * DIMENSION_STEP)
    };
    // Beside the lines stand figures: turned at the left, written out at the right.
    [
        ([-1.0, 0.0], 50.0),
        ([1.0, 0.0], 160.0),
        ([0.0, 1.0], 40.0),
        ([0.0, -1.0], 45.0),
    ]
    .map(|(away, figures)| rows(away) + if rows(away) > 0.0 { figures } else { 36.0 })
}

fn dimension_line(shown: &Shown, furniture: &Furniture, scale: &Scale, line: &Dimension) -> Html {
    let Shown { app, piece, send, .. } = shown;
    let off = DIMENSION_STEP * f64::from(line.row);
    let moved = |point: [f64; 2], by: f64| {
        let [x, y] = scale.at(point);
        [x + line.away[0] * by, y - line.away[1] * by]
    };
    let (a, b) = (moved(line.from, off), moved(line.to, off));
    let (a0, b0) = (moved(line.from, 8.0), moved(line.to, 8.0));
    let (a1, b1) = (moved(line.from, off + 8.0), moved(line.to, off + 8.0));
    let upright = line.away[0] != 0.0;
    let measured = piece.reading(line.field).map(workshop::Reading::with_unit);
    let text = measured.clone().unwrap_or_else(|| {
        let length = match line.field {
            geometry::FieldId::Of(key) => geometry::fields::by_key(key).map(|field| furniture.length(field)),
            geometry::FieldId::RowHeight(row) => furniture
                .row_heights()
                .ok()
                .and_then(|heights| heights.get(row - 1).copied()),
        };
        length
            .map(|length| show_length(length, app.workshop.units))
            .unwrap_or_default()
    });
    let middle = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
    // Figures read from the foot of the sheet, or from its right where they stand left of the piece (ISO 129).
    let (x, y, turn, anchor) = match line.away {
        [away, _] if away < 0.0 => {
            let (x, y) = (middle[0] - 10.0, middle[1]);
            (x, y, Some(format!("rotate(-90 {x:.1} {y:.1})")), "middle")
        }
        [away, _] if away > 0.0 => (middle[0] + 12.0, middle[1] + 8.0, None, "start"),
        [_, away] if away > 0.0 => (middle[0], middle[1] - 10.0, None, "middle"),
        _ => (middle[0], middle[1] + 30.0, None, "middle"),
    };
    let element = words::field_element(line.field);
    let (send, away) = (send.clone(), app.sheet != Sheet::Measure);
    let onclick = move |_: MouseEvent| {
        if !away {
            return focus(&element);
        }
        send.emit(Act::Sheet(Sheet::Measure));
        // The field is there once the other sheet is drawn.
        let element = element.clone();
        gloo::timers::callback::Timeout::new(0, move || focus(&element)).forget();
    };
    // Short strokes across the ends, at 45 degrees, as joiners draw them.
    let tick = |[x, y]: [f64; 2]| format!("M{:.1} {:.1}L{:.1} {:.1}", x - 6.0, y + 6.0, x + 6.0, y - 6.0);
    let stroke = |p: [f64; 2], q: [f64; 2]| format!("M{:.1} {:.1}L{:.1} {:.1}", p[0], p[1], q[0], q[1]);
    let hit = if upright {
        [if line.away[0] < 0.0 { x - 40.0 } else { x - 12.0 }, y - 40.0]
    } else {
        [x - 80.0, y - 45.0]
    };
    html! {
        <g class={classes!("dimension", measured.is_none().then_some("guessed"))} {onclick}>
            <path class="thin" d={[stroke(a0, a1), stroke(b0, b1), stroke(a, b)].concat()} />
            <path class="end" d={[tick(a), tick(b)].concat()} />
            <rect class="hit" x={format!("{:.0}", hit[0])} y={format!("{:.0}", hit[1])} width="160" height="70" />
            <text x={format!("{x:.1}")} y={format!("{y:.1}")} transform={turn} text-anchor={anchor}>{ text }</text>
        </g>
    }
}

/// The working of the surface that was tapped.
fn picked(shown: &Shown) -> Html {
    let line = shown.result.as_ref().as_ref().ok().and_then(|takeoff| {
        let name = shown.app.picked.as_deref()?;
        takeoff
            .surfaces
            .iter()
            .find(|line| line.surface.id.to_string() == name)
    });
    let Some(line) = line else {
        return html! { <p class="picked hint">{ "Touch a face for its working, a dimension to change it." }</p> };
    };
    html! {
        <div class="picked" aria-live="polite">
            <b>{ line.surface.id.part.label() }</b>
            { switch_or_word(shown, line) }
            <span class="figure">{ words::area(line.surface.net, shown.app.workshop.units) }</span>
            <span class="working">{ words::working(&line.surface, shown.app.workshop.units) }</span>
        </div>
    }
}

fn switch_or_word(shown: &Shown, line: &SurfaceLine) -> Html {
    if line.surface.net == Area::ZERO {
        html! { <span>{ line.surface.side_label() }</span> }
    } else {
        switch(shown, line, &line.surface.id.to_string())
    }
}

#[derive(Properties, PartialEq)]
pub struct SilhouetteProps {
    pub piece: Rc<Piece>,
}

/// A small picture of a piece from the front, in its colour.
#[component]
pub fn Silhouette(props: &SilhouetteProps) -> Html {
    let drawing = use_memo(props.piece.clone(), |piece| {
        let surfaces = piece.furniture().assembly().ok()?.surfaces();
        Some(Drawing::of(&surfaces, View::Front))
    });
    let Some(drawing) = drawing.as_ref() else {
        return html! { <svg class="silhouette" viewBox="0 0 100 64" /> };
    };
    let scale = Scale::fitting(drawing, [100.0, 64.0], [4.0; 4]);
    let fill = props.piece.scheme.colour.write();
    html! {
        <svg class="silhouette" viewBox="0 0 100 64" aria-hidden="true">
            <path {fill} d={scale.path(&drawing.outline)} />
            { for drawing.faces.iter().map(|face| html! { <path class="seam" d={scale.path(&face.region)} /> }) }
        </svg>
    }
}
