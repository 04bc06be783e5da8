//! Touches on the drawing. A tap selects a face, and a drag turns the piece.

use std::cell::RefCell;
use std::rc::Rc;

use web_sys::Element;
use workshop::{PieceEdit, touched_faces};
use yew::prelude::*;

use super::super::Shown;
use crate::state::{Action, Look};

/// Horizontal movements shorter than this are taps, in pixels.
const TAP: f64 = 12.0;
/// The drag distance for one turning step, in pixels.
const STEP: f64 = 44.0;

/// Returns the action of the current brush on a face and the faces that belong to it. All faces of one
/// gesture are undone together. The action is computed when the brush reaches the face.
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

/// The state of a touch. It changes many times a second and is not needed after the touch, so it is not part
/// of the app state.
#[derive(Clone, Default, PartialEq)]
pub struct Hand(Rc<RefCell<Down>>);

#[derive(Default, PartialEq)]
struct Down {
    /// The start position, and the view at that time.
    at: Option<(f64, Look)>,
    /// True if the touch has become a drag.
    dragged: bool,
}

impl Hand {
    /// Returns true during a touch.
    fn is_down(&self) -> bool {
        self.0.borrow().at.is_some()
    }

    /// Returns true if the last touch was a drag.
    pub fn dragged(&self) -> bool {
        self.0.borrow().dragged
    }

    /// Starts a touch.
    pub fn down(&self, shown: &Shown) -> Callback<PointerEvent> {
        let (hand, look) = (self.clone(), shown.app.look);
        Callback::from(move |event: PointerEvent| {
            *hand.0.borrow_mut() = Down {
                at: Some((f64::from(event.client_x()), look)),
                dragged: false,
            };
        })
    }

    /// Turns the piece during a drag, step by step. With a brush, the piece does not turn.
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

    /// Ends the touch, also if the browser uses it for scrolling.
    pub fn up(&self, shown: &Shown) -> Callback<PointerEvent> {
        let (hand, send) = (self.clone(), shown.send.clone());
        Callback::from(move |_: PointerEvent| {
            hand.0.borrow_mut().at = None;
            send.emit(Action::Rest);
        })
    }

    /// Starts brushing on a face.
    pub fn brush_down(&self, shown: &Shown, face: &str) -> Option<Callback<PointerEvent>> {
        let (act, send) = (stroke(shown, face)?, shown.send.clone());
        Some(Callback::from(move |event: PointerEvent| {
            // Release the pointer, or all events would go to the first face. If that fails, only this face is
            // brushed.
            let face: Element = event.target_unchecked_into();
            let _ = face.release_pointer_capture(event.pointer_id());
            send.emit(act());
        }))
    }

    /// Brushes over a face.
    pub fn brush_over(&self, shown: &Shown, face: &str) -> Option<Callback<PointerEvent>> {
        let (act, send, hand) = (stroke(shown, face)?, shown.send.clone(), self.clone());
        Some(Callback::from(move |_: PointerEvent| {
            if hand.is_down() {
                send.emit(act());
            }
        }))
    }
}
