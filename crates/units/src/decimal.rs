//! Decimal numbers from text.
//!
//! The parser of the standard library carries ten kilobytes of tables. Typed numbers have few digits, so
//! long division is enough.

/// How many digits are read exactly, as a power of ten.
const MOST: u64 = 10_u64.pow(18);

/// Digits with at most one point among them, as the nearest float.
///
/// After the eighteenth digit, digits behind the point are dropped and those before it count as zeros.
pub(crate) fn read_decimal(text: &str) -> Option<f64> {
    let (mut above, mut below, mut beyond) = (0, 1, 1.0);
    let (mut has_digit, mut has_point) = (false, false);
    for byte in text.bytes() {
        match byte {
            b'.' if !has_point => has_point = true,
            b'0'..=b'9' => {
                has_digit = true;
                if above < MOST && below < MOST {
                    above = above * 10 + u64::from(byte - b'0');
                    below *= if has_point { 10 } else { 1 };
                } else if !has_point {
                    beyond *= 10.0;
                }
            }
            _ => return None,
        }
    }
    has_digit.then(|| nearest(above, below) * beyond)
}

/// The float that is nearest to the quotient of two whole numbers, of which the second is not 0.
fn nearest(above: u64, below: u64) -> f64 {
    if above == 0 {
        return 0.0;
    }
    // As many binary digits as there is room for, more than a float keeps; that there is a rest counts as one more
    // digit, so that what lies just beside the middle of two floats is rounded to the right one.
    let places = u128::from(above).leading_zeros();
    let (above, below) = (u128::from(above) << places, u128::from(below));
    let quotient = above / below;
    let rest = u128::from(quotient * below < above);
    let scale = f64::from_bits(u64::from(1023 - places) << 52);
    (quotient | rest) as f64 * scale
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        /// To eighteen digits it is the number that the standard library reads.
        #[test]
        fn a_decimal_is_the_nearest_float(text in "[0-9]{0,9}\\.?[0-9]{0,9}") {
            prop_assert_eq!(read_decimal(&text), text.parse().ok());
        }

        #[test]
        fn a_float_that_is_written_comes_back(value in 1.0..1e9) {
            prop_assert_eq!(read_decimal(&format!("{value}")), Some(value));
        }

        #[test]
        fn long_numbers_are_near(text in "[0-9]{1,40}\\.[0-9]{0,40}") {
            let theirs: f64 = text.parse().unwrap();
            let ours = read_decimal(&text).unwrap();
            prop_assert!((ours - theirs).abs() <= 1e-15 * theirs + 1e-17, "{} {}", ours, theirs);
        }
    }

    #[test]
    fn what_is_no_decimal_is_none() {
        for text in ["", ".", "1.2.3", "1e5", "-1", "+1", " 1", "inf", "٣"] {
            assert_eq!(read_decimal(text), None, "{text}");
        }
        assert_eq!(read_decimal("0.000000000000000000000"), Some(0.0));
        // A number of four hundred digits is beyond every float, and still no error.
        assert_eq!(read_decimal(&"9".repeat(400)), Some(f64::INFINITY));
    }
}
