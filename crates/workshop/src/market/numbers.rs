//! Quartiles, and a confidence interval for the median that makes no assumption about the distribution.

/// The minimum, quartiles and maximum. Quantiles are type 7 of Hyndman & Fan, The American Statistician 50
/// (1996) 361.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Quartiles {
    /// The minimum.
    pub lowest: f64,
    /// The first quartile.
    pub lower: f64,
    /// The median.
    pub median: f64,
    /// The third quartile.
    pub upper: f64,
    /// The maximum.
    pub highest: f64,
}

/// A confidence interval for the median, between two of the values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MedianInterval {
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
    /// The probability that such an interval contains the median. At least 0.95 if there are enough values.
    pub coverage: f64,
}

/// Returns the type 7 quantile at a share from 0 to 1. `sorted` is in ascending order. Returns `None` without
/// values.
pub fn quantile(sorted: &[f64], share: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let at = last as f64 * share.clamp(0.0, 1.0);
    let below = (libm::floor(at) as usize).min(last);
    let above = (below + 1).min(last);
    Some(sorted[below] + (at - below as f64) * (sorted[above] - sorted[below]))
}

/// Returns the quartiles of values in ascending order, or `None` without values.
pub fn quartiles(sorted: &[f64]) -> Option<Quartiles> {
    Some(Quartiles {
        lowest: *sorted.first()?,
        lower: quantile(sorted, 0.25)?,
        median: quantile(sorted, 0.5)?,
        upper: quantile(sorted, 0.75)?,
        highest: *sorted.last()?,
    })
}

/// Returns the narrowest interval between the k-th values from each end that contains the median with a
/// probability of at least 0.95, or the full range if none does (Conover, Practical Nonparametric Statistics:
/// order statistics and the binomial). `sorted` is in ascending order. Returns `None` without values.
pub fn median_interval(sorted: &[f64]) -> Option<MedianInterval> {
    let n = sorted.len();
    let mut found = MedianInterval {
        low: *sorted.first()?,
        high: *sorted.last()?,
        coverage: 0.0,
    };
    // Use logarithms because 0.5 raised to a few thousand underflows to zero.
    let log_two = core::f64::consts::LN_2;
    let mut log_term = -(n as f64) * log_two;
    let mut tail = 0.0;
    for k in 0..n / 2 {
        tail += libm::exp(log_term);
        let coverage = 1.0 - 2.0 * tail;
        if k > 0 && coverage < 0.95 {
            break;
        }
        found = MedianInterval {
            low: sorted[k],
            high: sorted[n - 1 - k],
            coverage,
        };
        log_term += libm::log((n - k) as f64 / (k + 1) as f64);
    }
    Some(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Ten values: from the second to the ninth, 1 - 2 (1 + 10) / 1024 = 0.978515625.
    #[test]
    fn the_interval_of_ten() {
        let sorted: Vec<f64> = (1..=10).map(f64::from).collect();
        let found = median_interval(&sorted).unwrap();
        assert_eq!((found.low, found.high), (2.0, 9.0));
        assert!((found.coverage - 0.978_515_625).abs() < 1e-12);
    }

    /// Five values only reach 1 - 2 / 32 = 0.9375, and the result says so.
    #[test]
    fn five_values_fall_short_and_say_so() {
        let found = median_interval(&[1.0, 2.0, 3.0, 4.0, 5.0]).unwrap();
        assert_eq!((found.low, found.high), (1.0, 5.0));
        assert!((found.coverage - 0.9375).abs() < 1e-12);
    }
}
