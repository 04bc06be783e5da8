//! The dimension lines of the drawing: thin lines with ticks at the ends, and a figure that links to its
//! field.

use geometry::{Dimension, FieldId, Point2};
use units::Length;
use workshop::Piece;
use yew::prelude::*;

use super::super::tape::stands_in;
use super::super::tape_focus::READING;
use super::super::{Send, Shown};
use super::margins::{DIMENSION_STEP, FIGURE};
use super::picture::Picture;
use crate::browser::focus_soon;
use crate::state::{Action, DraftId};
use crate::words;

/// Half the length of a rotated figure plus a margin, at its largest size, on a phone.
const HALF_TURNED: f64 = 72.0;

/// A dimension line placed on the sheet.
pub struct Line {
    /// The measurement.
    pub field: FieldId,
    /// The line with its extension lines.
    pub thin: String,
    /// The ticks at the ends.
    pub ends: String,
    /// The text of the figure.
    pub text: String,
    /// True if the length was not measured.
    pub is_guessed: bool,
    /// The placement of the figure.
    pub figure: Figure,
}

/// Returns all dimension lines, with figures moved apart so that they do not overlap. `written` formats a
/// length. `draft` returns the text being typed for a measurement, which is shown in its place at once.
pub fn lines(
    piece: &Piece,
    picture: &Picture,
    written: &dyn Fn(Length) -> String,
    draft: &dyn Fn(FieldId) -> Option<String>,
) -> Vec<Line> {
    let mut taken = Vec::new();
    let line = |line: &Dimension| {
        let measured = piece.reading(line.field).map(words::reading);
        let is_guessed = measured.is_none();
        let text = draft(line.field).or(measured).unwrap_or_else(|| {
            let stand_in = stands_in(&picture.furniture, &picture.shared, line.field);
            stand_in.map_or(String::new(), |(length, _)| written(length))
        });
        placed(picture, line, text, is_guessed, &mut taken)
    };
    picture.dimensions.iter().map(line).collect()
}

/// Places one dimension line. `taken` holds the positions of earlier figures.
fn placed(
    picture: &Picture,
    line: &Dimension,
    text: String,
    is_guessed: bool,
    taken: &mut Vec<Point2>,
) -> Line {
    let off = DIMENSION_STEP * f64::from(line.row) + beyond(picture, line);
    let moved = |point: Point2, by: f64| {
        let [x, y] = picture.scale.at(point);
        [x + line.away[0] * by, y - line.away[1] * by]
    };
    let (a, b) = (moved(line.from, off), moved(line.to, off));
    let (a0, b0) = (moved(line.from, 8.0), moved(line.to, 8.0));
    let (a1, b1) = (moved(line.from, off + 8.0), moved(line.to, off + 8.0));
    // The extension lines of outer dimensions pass this one. On the left side, its figure would cross them.
    let further = picture.dimensions.iter();
    let further = further.filter(|other| other.away == line.away && other.row > line.row);
    let passing: Vec<f64> = further
        .flat_map(|other| [other.from, other.to])
        .map(|point| picture.scale.at(point)[1])
        .collect();
    Line {
        field: line.field,
        thin: [stroke(a0, a1), stroke(b0, b1), stroke(a, b)].concat(),
        ends: [tick(a), tick(b)].concat(),
        text,
        is_guessed,
        figure: figure(line, (a, b), &passing, taken),
    }
}

/// Shows the dimension lines on the page. Each links to its measurement.
pub fn dimension_lines(shown: &Shown, picture: &Picture) -> Html {
    let app = &shown.app;
    // A refused text is only shown in its field, because the drawing does not use it.
    let draft = |field| {
        let draft = app.draft(&DraftId::Field(field)).map(|draft| draft.text.clone());
        draft.filter(|text| !text.is_empty() && app.fault(&DraftId::Field(field)).is_none())
    };
    let all = lines(&shown.piece, picture, &|length| shown.app.length(length), &draft);
    all.into_iter().map(|line| dimension_line(shown, line)).collect()
}

fn dimension_line(shown: &Shown, line: Line) -> Html {
    let Figure {
        at: [x, y],
        turn,
        anchor,
        hit,
    } = line.figure;
    let is_taken = shown.app.field == Some(line.field);
    let onclick = take(&shown.send, line.field);
    html! {
        <g class={classes!("dimension", line.is_guessed.then_some("guessed"), is_taken.then_some("taken"))} {onclick}>
            <path class="thin" d={line.thin} />
            <path class="end" d={line.ends} />
            <rect class="hit" x={format!("{:.0}", hit[0])} y={format!("{:.0}", hit[1])} width="160" height="70" />
            <text x={format!("{x:.1}")} y={format!("{y:.1}")} transform={turn} text-anchor={anchor}>{ line.text }</text>
        </g>
    }
}

/// Returns how far the drawing extends beyond the start of a line. Added parts may stick out.
fn beyond(picture: &Picture, line: &Dimension) -> f64 {
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

/// Returns a 45-degree tick at the end of a line, as used by joiners.
fn tick([x, y]: Point2) -> String {
    stroke([x - 6.0, y + 6.0], [x + 6.0, y - 6.0])
}

/// The placement of a figure.
pub struct Figure {
    /// The anchor point.
    pub at: Point2,
    /// The rotation, as an SVG transform.
    pub turn: Option<String>,
    /// The SVG text anchor.
    pub anchor: &'static str,
    /// The upper left corner of the touch target.
    hit: Point2,
}

/// Places a figure to read from the bottom of the sheet, or from the right if it is left of the piece (ISO
/// 129).
fn figure(line: &Dimension, (a, b): (Point2, Point2), passing: &[f64], taken: &mut Vec<Point2>) -> Figure {
    let [x, y] = [(a[0] + b[0]) / 2.0, (a[1] + b[1]) / 2.0];
    let plain = |at: Point2, anchor, hit| Figure {
        at,
        turn: None,
        anchor,
        hit,
    };
    match line.away {
        [away, _] if away < 0.0 => {
            let x = x - 10.0;
            let y = beside(y, (a[1].min(b[1]), a[1].max(b[1])), passing);
            Figure {
                turn: Some(format!("rotate(-90 {x:.1} {y:.1})")),
                ..plain([x, y], "middle", [x - 40.0, y - 40.0])
            }
        }
        [away, _] if away > 0.0 => {
            let y = free([x, y], 1.0, taken);
            plain([x + 12.0, y + 8.0], "start", [x, y - 32.0])
        }
        [_, away] if away > 0.0 => {
            let y = free([x, y], -1.0, taken);
            plain([x, y - 10.0], "middle", [x - 80.0, y - 55.0])
        }
        _ => {
            let y = free([x, y], 1.0, taken);
            plain([x, y + 30.0], "middle", [x - 80.0, y - 15.0])
        }
    }
}

/// Returns the position of a rotated figure along its line: the middle, or the nearest position without a
/// passing line. If there is none, it returns the middle.
fn beside(middle: f64, (from, to): (f64, f64), passing: &[f64]) -> f64 {
    let is_free = |y: &f64| {
        let fits = from + HALF_TURNED <= *y && *y <= to - HALF_TURNED;
        fits && passing.iter().all(|other| (other - y).abs() > HALF_TURNED)
    };
    let away = (0..200).flat_map(|by| [middle - f64::from(by), middle + f64::from(by)]);
    let mut away = away.skip_while(|y| !is_free(y));
    away.next().unwrap_or(middle)
}

/// Moves a figure along until it does not overlap earlier ones, and returns its y coordinate.
fn free([x, mut y]: Point2, on: f64, taken: &mut Vec<Point2>) -> f64 {
    let [width, height] = FIGURE;
    while taken
        .iter()
        .any(|other| (other[0] - x).abs() < width && (other[1] - y).abs() < height)
    {
        y += on;
    }
    taken.push([x, y]);
    y
}

/// Returns a callback that starts the measurement of a line.
fn take(send: &Send, field: FieldId) -> Callback<MouseEvent> {
    let send = send.clone();
    Callback::from(move |_| {
        send.emit(Action::Enter(field));
        focus_soon(READING.into());
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_makes_way_for_lines_that_pass() {
        let line = (0.0, 400.0);
        assert_eq!(beside(200.0, line, &[]), 200.0);
        assert_eq!(beside(200.0, line, &[10.0, 300.0]), 200.0);
        assert_eq!(beside(200.0, line, &[190.0]), 263.0);
        assert_eq!(beside(200.0, line, &[210.0]), 137.0);
        assert_eq!(beside(200.0, line, &[180.0, 260.0]), 107.0);
        assert_eq!(beside(50.0, (0.0, 100.0), &[50.0]), 50.0, "no room");
    }
}
