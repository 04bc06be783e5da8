//! Sizes of a whole piece that may be mistakes.

use units::Length;

use super::edition::Edition;
use super::fields::LengthField;
use super::kind::Kind;

/// A size of the whole piece larger or smaller than the usual one by this factor is questioned (common practice, no
/// source): pieces of one kind differ by less, and centimeters taken for inches by more.
const FAR: f64 = 2.5;

impl Kind {
    /// The usual size, if this width, depth or height is so far from it that a mistake is likelier.
    pub fn doubts(self, edition: Edition, field: &LengthField, length: Length) -> Option<Length> {
        let usual = edition.size(self, field);
        let times = length / usual;
        let is_far = !(1.0 / FAR..=FAR).contains(&times);
        (is_far && field.is_of_whole()).then_some(usual)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fields;

    #[test]
    fn a_size_far_from_the_usual_one_is_asked_about() {
        let doubts = |field, inches| Kind::Dresser.doubts(Edition::First, field, Length::inches(inches));
        assert_eq!(doubts(&fields::WIDTH, 10.0), Some(Length::inches(60.0)));
        assert_eq!(doubts(&fields::WIDTH, 33.875), None);
        // 18 in taken as 45.7 of something is 2.54 times as much.
        assert_eq!(doubts(&fields::DEPTH, 45.72), Some(Length::inches(18.0)));
        assert_eq!(doubts(&fields::GAP, 1.0), None);
    }
}
