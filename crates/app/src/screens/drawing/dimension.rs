//! The dimension lines of the drawing: thin lines with oblique strokes at their ends, which break for the figure. Each
//! figure is the field of its measurement.

use geometry::{Dimension, FieldId, Point2};
use units::Length;
use workshop::Piece;
use yew::prelude::*;

use super::super::tape::stands_in;
use super::super::tape_focus::focus_measurement_soon;
use super::super::{Send, Shown};
use super::margins::{extent, offset};
use super::picture::Picture;
use super::room::Room;
use crate::state::{Action, DraftId};
use crate::words;

/// The least side of a touch target, in drawing units.
const TARGET: f64 = 48.0;

/// A dimension line placed on the sheet.
pub struct Line {
    /// The measurement.
    pub field: FieldId,
    /// The dimension line itself, which breaks for its figure.
    pub thin: String,
    /// The lines from the piece to the dimension line.
    pub extensions: String,
    /// The strokes at the ends.
    pub ends: String,
    /// The text of the figure.
    pub text: String,
    /// True if the length was not measured.
    pub is_guessed: bool,
    /// The position of the baseline of the figure.
    pub at: Point2,
    /// The SVG text anchor of the figure.
    pub anchor: &'static str,
    /// The upper left corner of the touch target, and its size.
    hit: [Point2; 2],
    /// Where the measured length is on the piece.
    pub ends_on_piece: [Point2; 2],
}

impl Line {
    /// Returns true if the line is long enough to be shown on a small sheet. A shorter one shows while it is measured.
    fn has_room(&self, room: &Room) -> bool {
        room.figure > SMALL_FIGURE || !is_short(self.ends_on_piece, room)
    }
}

/// Returns true if a length on the sheet is shorter than its figure is high.
fn is_short([[x0, y0], [x1, y1]]: [Point2; 2], room: &Room) -> bool {
    libm::hypot(x1 - x0, y1 - y0) <= room.figure * 1.3
}

/// How many times larger the drawing is around a short measurement.
const CLOSER: f64 = 3.0;

/// Returns where to look closer, and how many times: at the current measurement, if it is too short to see.
pub fn closer(field: Option<FieldId>, picture: &Picture) -> Option<(Point2, f64)> {
    let line = picture.dimensions.iter().find(|line| Some(line.field) == field)?;
    let ends @ [[x0, y0], [x1, y1]] = [line.from, line.to].map(|point| picture.scale.at(point));
    is_short(ends, &picture.room).then_some(([(x0 + x1) / 2.0, (y0 + y1) / 2.0], CLOSER))
}

/// The size of figures on small sheets.
const SMALL_FIGURE: f64 = 20.0;

/// Returns all dimension lines, with figures moved apart so that they do not overlap. `written` formats a
/// length. `draft` returns the text being typed for a measurement, which is shown in its place at once.
pub fn lines(
    piece: &Piece,
    picture: &Picture,
    room: &Room,
    written: &dyn Fn(Length) -> String,
    draft: &dyn Fn(FieldId) -> Option<String>,
) -> Vec<Line> {
    let mut taken = Vec::new();
    let line = |line: &Dimension| {
        let measured = piece.reading(line.field).map(|reading| match reading.unit() {
            units::LengthUnit::Foot => words::reading(reading),
            _ => words::without_unit(&words::reading(reading)).to_owned(),
        });
        let is_guessed = measured.is_none();
        let text = draft(line.field).or(measured).unwrap_or_else(|| {
            let stand_in = stands_in(&picture.furniture, &picture.shared, line.field);
            stand_in.map_or(String::new(), |(length, _)| written(length))
        });
        placed(picture, room, line, text, is_guessed, &mut taken)
    };
    picture.dimensions.iter().map(line).collect()
}

/// Places one dimension line. `taken` holds the boxes of earlier figures.
fn placed(
    picture: &Picture,
    room: &Room,
    line: &Dimension,
    text: String,
    is_guessed: bool,
    taken: &mut Vec<[Point2; 2]>,
) -> Line {
    let unit = room.figure / picture.room.figure;
    let off = offset(line, room) + beyond(picture, line);
    let moved = |point: Point2, by: f64| {
        let [x, y] = picture.scale.at(point);
        [x + line.away[0] * by, y - line.away[1] * by]
    };
    let (a, b) = (moved(line.from, off), moved(line.to, off));
    let (a0, b0) = (moved(line.from, 6.0 * unit), moved(line.to, 6.0 * unit));
    let (a1, b1) = (
        moved(line.from, off + 6.0 * unit),
        moved(line.to, off + 6.0 * unit),
    );
    let size = extent(&text, room);
    let spot = spot(line, (a, b), size, taken);
    let [x, y] = spot.middle;
    let half = [size[0] / 2.0, size[1] / 2.0];
    taken.push([[x - half[0], y - half[1]], [x + half[0], y + half[1]]]);
    let target = [size[0].max(TARGET * unit), size[1].max(TARGET * unit)];
    let anchored = match spot.anchor {
        "start" => x - half[0],
        "end" => x + half[0],
        _ => x,
    };
    Line {
        field: line.field,
        thin: broken((a, b), spot.middle, spot.breaks.then_some(size)),
        extensions: [stroke(a0, a1), stroke(b0, b1)].concat(),
        ends: [tick(a, unit), tick(b, unit)].concat(),
        text,
        is_guessed,
        at: [anchored, y + room.figure * 0.35],
        anchor: spot.anchor,
        hit: [[x - target[0] / 2.0, y - target[1] / 2.0], target],
        ends_on_piece: [line.from, line.to].map(|point| picture.scale.at(point)),
    }
}

/// Where a figure goes.
struct Spot {
    middle: Point2,
    anchor: &'static str,
    /// True if the figure breaks its line.
    breaks: bool,
}

/// Finds the place for a figure: in the middle of its line, or beside a line that is too short for it.
fn spot(line: &Dimension, (a, b): (Point2, Point2), size: Point2, taken: &[[Point2; 2]]) -> Spot {
    let [x, y] = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
    let [width, height] = size;
    let [across, up] = line.away;
    let (length_x, length_y) = ((b[0] - a[0]).abs(), (b[1] - a[1]).abs());
    if across != 0.0 && up != 0.0 {
        // Along a receding edge: beside the line, on the side away from the piece.
        let anchor = if across < 0.0 { "end" } else { "start" };
        let beside = width / 2.0 + height * 0.4;
        let middle = [x + across.signum() * beside, y - up.signum() * height * 0.35];
        return Spot {
            middle: free(middle, [0.0, -up.signum()], size, taken),
            anchor,
            breaks: false,
        };
    }
    let is_upright = up == 0.0;
    let fits = if is_upright {
        length_y > height * 1.6
    } else {
        length_x > width + height
    };
    if fits {
        let middle = free([x, y], [0.0, if is_upright { 1.0 } else { -up }], size, taken);
        return Spot {
            middle,
            anchor: "middle",
            breaks: middle == [x, y],
        };
    }
    match is_upright {
        true => {
            let anchor = if across < 0.0 { "end" } else { "start" };
            let middle = [x + across * (width / 2.0 + height * 0.5), y];
            Spot {
                middle: free(middle, [0.0, -1.0], size, taken),
                anchor,
                breaks: false,
            }
        }
        false => {
            let middle = [x, y - up * height * 0.9];
            Spot {
                middle: free(middle, [0.0, -up], size, taken),
                anchor: "middle",
                breaks: false,
            }
        }
    }
}

/// Moves a figure along a direction until it does not overlap earlier ones.
fn free(mut middle: Point2, along: Point2, size: Point2, taken: &[[Point2; 2]]) -> Point2 {
    let overlaps = |[x, y]: Point2| {
        taken.iter().any(|[low, high]| {
            x - size[0] / 2.0 < high[0]
                && x + size[0] / 2.0 > low[0]
                && y - size[1] / 2.0 < high[1]
                && y + size[1] / 2.0 > low[1]
        })
    };
    let mut steps = 0;
    while overlaps(middle) && steps < 400 {
        middle = [middle[0] + along[0] * 2.0, middle[1] + along[1] * 2.0];
        steps += 1;
    }
    middle
}

/// Returns the dimension line, with a gap for its figure.
fn broken((a, b): (Point2, Point2), middle: Point2, size: Option<Point2>) -> String {
    let Some(size) = size else { return stroke(a, b) };
    let length = libm::hypot(b[0] - a[0], b[1] - a[1]);
    let along = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
    let gap = (along[0] * size[0]).abs().max((along[1] * size[1]).abs()) / 2.0 + 5.0;
    let end = |by: f64| [middle[0] + along[0] * by, middle[1] + along[1] * by];
    [stroke(a, end(-gap)), stroke(end(gap), b)].concat()
}

/// Shows the dimension lines on the page. Each starts its measurement.
pub fn dimension_lines(shown: &Shown, picture: &Picture) -> Html {
    let app = &shown.app;
    let closer = closer(app.field, picture).map_or(1.0, |(_, times)| times);
    let room = Room {
        figure: picture.room.figure / closer,
        ..picture.room
    };
    // A refused text is only shown in its field, because the drawing does not use it.
    let draft = |field| {
        let draft = app.draft(&DraftId::Field(field)).map(|draft| draft.text.clone());
        draft.filter(|text| !text.is_empty() && app.fault(&DraftId::Field(field)).is_none())
    };
    let written = |length| words::without_unit(&app.length(length)).to_owned();
    let all = lines(&shown.piece, picture, &room, &written, &draft);
    let all = all
        .into_iter()
        .filter(|line| app.field == Some(line.field) || line.has_room(&room) || closer > 1.0);
    let (active, others): (Vec<Line>, Vec<Line>) = all.partition(|line| app.field == Some(line.field));
    html! {
        <g font-size={room.figure.to_string()}>
            { for others.into_iter().map(|line| dimension_line(shown, line, false)) }
            { for active.iter().map(|line| blade(line, 1.0 / closer)) }
            { for active.into_iter().map(|line| dimension_line(shown, line, true)) }
        </g>
    }
}

fn dimension_line(shown: &Shown, line: Line, is_taken: bool) -> Html {
    let [x, y] = line.at;
    let [[left, top], [width, height]] = line.hit;
    let onclick = take(&shown.send, line.field);
    html! {
        <g class={classes!("dimension", line.is_guessed.then_some("guessed"), is_taken.then_some("taken"))}
            data-field={words::field_element(line.field)} {onclick}>
            <path class="extension" d={line.extensions} />
            <path class="thin" d={line.thin} />
            <path class="end" d={line.ends} />
            <rect class="hit" x={round(left)} y={round(top)} width={round(width)} height={round(height)} />
            <text x={tenth(x)} y={tenth(y)} text-anchor={line.anchor}>{ figure(&line.text) }</text>
        </g>
    }
}

/// Shows a length with its fraction set as one.
pub fn figure(text: &str) -> Html {
    match text.rsplit_once(' ') {
        Some((whole, fraction)) if fraction.contains('/') => {
            html! { <>{ whole }{ " " }<tspan class="fr">{ fraction }</tspan></> }
        }
        None if text.contains('/') => html! { <tspan class="fr">{ text.to_owned() }</tspan> },
        _ => html! { text },
    }
}

/// Draws the tape on the piece where the active measurement is taken.
fn blade(line: &Line, unit: f64) -> Html {
    let [[x0, y0], [x1, y1]] = line.ends_on_piece;
    let (along, up) = ((x1 - x0).abs(), (y1 - y0).abs());
    let (x, y) = (x0.min(x1), y0.min(y1));
    let (broad, gap) = (16.0 * unit, 6.0 * unit);
    let (rect, marks): ([f64; 4], Vec<String>) = if along < 1.0 {
        let marks = marks(up, unit).map(|(at, is_long)| {
            format!(
                "M{:.1} {:.1}h-{:.1}",
                x + gap + broad,
                y + up - at,
                if is_long { 8.0 } else { 5.0 } * unit
            )
        });
        ([x + gap, y, broad, up], marks.collect())
    } else if up < 1.0 {
        let marks = marks(along, unit).map(|(at, is_long)| {
            format!(
                "M{:.1} {:.1}v{:.1}",
                x + at,
                y - gap - broad,
                if is_long { 8.0 } else { 5.0 } * unit
            )
        });
        ([x, y - gap - broad, along, broad], marks.collect())
    } else {
        return Html::default();
    };
    let [x, y, width, height] = rect.map(tenth);
    html! {
        <g class="blade">
            <rect {x} {y} {width} {height} />
            <path d={marks.concat()} />
        </g>
    }
}

/// Returns the marks along a blade of this length, every fifth of them long.
fn marks(length: f64, unit: f64) -> impl Iterator<Item = (f64, bool)> {
    let step = 8.0 * unit;
    let count = (length / step) as u32;
    (1..count).map(move |n| (f64::from(n) * step, n.is_multiple_of(5)))
}

fn round(of: f64) -> String {
    format!("{of:.0}")
}

fn tenth(of: f64) -> String {
    format!("{of:.1}")
}

/// Returns how far the drawing extends beyond the start of a line. Added parts may stick out.
fn beyond(picture: &Picture, line: &Dimension) -> f64 {
    if line.away[0] != 0.0 && line.away[1] != 0.0 {
        return 0.0;
    }
    let (low, high) = picture.bounds;
    let outermost = [0, 1].map(|axis| {
        if line.away[axis] > 0.0 {
            high[axis]
        } else {
            low[axis]
        }
    });
    let [from, to] = [line.from, outermost].map(|point| picture.scale.at(point));
    (to[0] - from[0]) * line.away[0] - (to[1] - from[1]) * line.away[1]
}

fn stroke(p: Point2, q: Point2) -> String {
    format!("M{:.1} {:.1}L{:.1} {:.1}", p[0], p[1], q[0], q[1])
}

/// Returns a 45-degree stroke at the end of a line, as used by joiners.
fn tick([x, y]: Point2, unit: f64) -> String {
    let by = 6.0 * unit;
    stroke([x - by, y + by], [x + by, y - by])
}

/// Returns a callback that starts the measurement of a line.
fn take(send: &Send, field: FieldId) -> Callback<MouseEvent> {
    let send = send.clone();
    Callback::from(move |_| {
        send.emit(Action::Enter(field));
        focus_measurement_soon();
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::View;
    use std::rc::Rc;
    use workshop::{Analysis, PieceId};

    #[test]
    fn no_figure_is_over_another() {
        for kind in geometry::Kind::ALL {
            let piece = Piece::new(PieceId("a".into()), kind);
            let piece = Rc::new(piece);
            let result = Analysis::default().takeoff(&piece);
            let takeoff = result.as_ref().as_ref().unwrap();
            for view in [View::Cabinet, View::Front, View::Side, View::Top] {
                let picture = Picture::of(&piece.furniture(), &takeoff.surfaces, view, None, Room::FIXED);
                let all = lines(
                    &piece,
                    &picture,
                    &Room::FIXED,
                    &|length| {
                        words::without_unit(&units::show_length(length, units::System::UsCustomary))
                            .to_owned()
                    },
                    &|_| None,
                );
                let boxes: Vec<[Point2; 2]> = all
                    .iter()
                    .map(|line| {
                        let [width, height] = extent(&line.text, &Room::FIXED);
                        let left = match line.anchor {
                            "start" => line.at[0],
                            "end" => line.at[0] - width,
                            _ => line.at[0] - width / 2.0,
                        };
                        [[left, line.at[1] - height], [left + width, line.at[1]]]
                    })
                    .collect();
                for (n, a) in boxes.iter().enumerate() {
                    for b in &boxes[n + 1..] {
                        let apart = (0..2)
                            .any(|axis| a[1][axis] <= b[0][axis] + 0.2 || b[1][axis] <= a[0][axis] + 0.2);
                        assert!(apart, "{} {view:?}: {a:?} {b:?}", kind.key());
                    }
                }
            }
        }
    }

    #[test]
    fn a_line_breaks_for_its_figure() {
        let line = broken(([0.0, 0.0], [100.0, 0.0]), [50.0, 0.0], Some([20.0, 10.0]));
        assert_eq!(line, "M0.0 0.0L35.0 0.0M65.0 0.0L100.0 0.0");
    }
}
