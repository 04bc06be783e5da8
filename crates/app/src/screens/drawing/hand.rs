//! The hand on the drawing: it taps a face, or drags to turn the piece.

use std::cell::RefCell;
use std::rc::Rc;

use web_sys::Element;
use workshop::{PieceEdit, touched_faces};
use yew::prelude::*;

use super::super::Shown;
use crate::state::{Action, Look};

/// A movement to the side shorter than this is a tap, in pixels.
const TAP: f64 = 12.0;
/// How far to drag for one step of turning, in pixels.
const STEP: f64 = 44.0;

/// What the brush does to a face and to what goes with it, if it is in the hand; all faces of one movement are taken back
/// together. What that is shows when the brush comes there.
fn stroke(shown: &Shown, face: &str) -> Option<impl Fn() -> Action + 'static> {
    let to = shown.app.brush.clone()?;
    let (shown, face) = (shown.clone(), face.to_owned());
    Some(move || {
        let lines = shown.takeoff().map_or(&[][..], |takeoff| &takeoff.surfaces);
        let faces = touched_faces(&shown.piece, lines, &face);
        let names = faces.iter().map(|line| line.surface.id.to_string()).collect();
        Action::Stroke(PieceEdit::Brush(names, to.clone()), "brush")
    })
}

/// Where the hand is. It changes many times a second and means nothing once it is lifted, so it is no part of the state.
#[derive(Clone, Default, PartialEq)]
pub struct Hand(Rc<RefCell<Down>>);

#[derive(Default, PartialEq)]
struct Down {
    /// Where it came down, and what the drawing showed then.
    at: Option<(f64, Look)>,
    /// Whether it has dragged since.
    dragged: bool,
}

impl Hand {
    /// Whether the hand is down.
    fn is_down(&self) -> bool {
        self.0.borrow().at.is_some()
    }

    /// Whether the last movement was a drag and no tap.
    pub fn dragged(&self) -> bool {
        self.0.borrow().dragged
    }

    /// The hand comes down.
    pub fn down(&self, shown: &Shown) -> Callback<PointerEvent> {
        let (hand, look) = (self.clone(), shown.app.look);
        Callback::from(move |event: PointerEvent| {
            *hand.0.borrow_mut() = Down {
                at: Some((f64::from(event.client_x()), look)),
                dragged: false,
            };
        })
    }

    /// The hand moves: the piece turns with it, step by step. With a brush in it the piece stays as it is.
    pub fn moved(&self, shown: &Shown) -> Callback<PointerEvent> {
        let (hand, send, look) = (self.clone(), shown.send.clone(), shown.app.look);
        let has_brush = shown.app.brush.is_some();
        Callback::from(move |event: PointerEvent| {
            if has_brush {
                return;
            }
            let mut down = hand.0.borrow_mut();
            let Some((from, first)) = down.at else { return };
            let way = f64::from(event.client_x()) - from;
            if way.abs() < TAP {
                return;
            }
            down.dragged = true;
            let next = first.turned((way / STEP).round() as i8);
            if (way / STEP).round() != 0.0 && next != look {
                send.emit(Action::Look(next));
            }
        })
    }

    /// The hand is lifted, or the browser takes the movement for a scroll.
    pub fn up(&self, shown: &Shown) -> Callback<PointerEvent> {
        let (hand, send) = (self.clone(), shown.send.clone());
        Callback::from(move |_: PointerEvent| {
            hand.0.borrow_mut().at = None;
            send.emit(Action::Rest);
        })
    }

    /// The brush comes down on a face.
    pub fn brush_down(&self, shown: &Shown, face: &str) -> Option<Callback<PointerEvent>> {
        let (act, send) = (stroke(shown, face)?, shown.send.clone());
        Some(Callback::from(move |event: PointerEvent| {
            // A finger would otherwise stay with the face that it touched first. Where it cannot be let go, that face
            // alone is brushed.
            let face: Element = event.target_unchecked_into();
            let _ = face.release_pointer_capture(event.pointer_id());
            send.emit(act());
        }))
    }

    /// The brush goes over a face.
    pub fn brush_over(&self, shown: &Shown, face: &str) -> Option<Callback<PointerEvent>> {
        let (act, send, hand) = (stroke(shown, face)?, shown.send.clone(), self.clone());
        Some(Callback::from(move |_: PointerEvent| {
            if hand.is_down() {
                send.emit(act());
            }
        }))
    }
}
