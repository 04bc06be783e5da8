//! The room for the drawing on the sheet, in units of a sixteenth of the size of normal text.

use yew::prelude::*;

use crate::browser::device;

/// The size of the sheet and of its figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// The width and height.
    pub size: [f64; 2],
    /// The height of a figure.
    pub figure: f64,
}

impl Room {
    /// The sheet of files and of the printed card.
    pub const FIXED: Room = Room {
        size: [1000.0, 570.0],
        figure: 26.0,
    };

    /// Returns the room on a screen of this size, in heights of normal text, with the tape keypad open or closed.
    fn on_screen([width, height]: [f64; 2], is_taking: bool) -> Room {
        let (size, figure) = if width >= WIDE && height >= 34.0 {
            ([width - 29.5, height - 20.0], 24.0)
        } else if width >= UPRIGHT && height >= 34.0 {
            (
                [width - 4.0, (height - 23.0) * if is_taking { 0.62 } else { 0.6 }],
                24.0,
            )
        } else if width >= 40.0 {
            // A phone on its side: the keypad is beside the drawing.
            (
                [
                    width - if is_taking { 25.0 } else { 2.5 },
                    height - if is_taking { 7.5 } else { 7.0 },
                ],
                20.0,
            )
        } else {
            let below = if is_taking { height - 36.5 } else { height * 0.42 };
            // Large letters leave little room beside them.
            let figure = if width < 17.0 { 13.0 } else { 20.0 };
            ([width - 2.5, below.clamp(11.0, 26.0)], figure)
        };
        Room {
            size: size.map(|of| of.max(10.0) * UNITS),
            figure,
        }
    }
}

/// Units to the height of normal text.
const UNITS: f64 = 16.0;
/// The least width of a screen with a pane beside the drawing.
const WIDE: f64 = 64.0;
/// The least width of an upright tablet.
const UPRIGHT: f64 = 45.0;

/// Returns the room for the drawing, which follows the size of the window.
#[hook]
pub fn use_room(is_taking: bool) -> Room {
    let size = use_state(device::window_in_text);
    use_effect_with((), {
        let size = size.setter();
        move |()| device::on_resize(move || size.set(device::window_in_text()))
    });
    Room::on_screen(*size, is_taking)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_drawing_has_room_on_every_screen() {
        for size in [
            [73.75, 51.25],
            [51.25, 73.75],
            [24.4, 52.75],
            [52.75, 24.4],
            [90.0, 56.0],
            [20.0, 35.5],
            [12.2, 26.4],
        ] {
            for is_taking in [false, true] {
                let Room {
                    size: [width, height],
                    figure,
                } = Room::on_screen(size, is_taking);
                assert!(
                    width <= size[0] * UNITS && width > 6.0 * figure && height > 5.0 * figure,
                    "{size:?}: {width} {height}"
                );
            }
        }
    }
}
