//! The spread of a result: equally likely values.

/// The spread of a result: equally likely values, from the smallest to the largest.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Spread {
    sorted: Vec<f64>,
}

impl Spread {
    /// The spread of these values, in any order.
    pub fn of(values: &[f64]) -> Self {
        // Whole numbers sort several times faster than floats, and sorting is most of the work of an answer.
        let mut bits: Vec<i64> = values
            .iter()
            .map(|value| in_order(value.to_bits() as i64))
            .collect();
        bits.sort_unstable();
        let sorted = bits
            .into_iter()
            .map(|bits| f64::from_bits(in_order(bits) as u64))
            .collect();
        Spread { sorted }
    }

    /// The value below which this share of the results lies; between values it is interpolated.
    ///
    /// # Example
    /// ```
    /// assert_eq!(coatings::Spread::of(&[6.0, 2.0, 4.0]).quantile(0.5), 4.0);
    /// ```
    pub fn quantile(&self, share: f64) -> f64 {
        let last = self.sorted.len().saturating_sub(1);
        let place = share.clamp(0.0, 1.0) * last as f64;
        let below = place.floor() as usize;
        match (self.sorted.get(below), self.sorted.get(below + 1)) {
            (Some(low), Some(high)) => low + (high - low) * (place - below as f64),
            (Some(only), None) => *only,
            (None, _) => 0.0,
        }
    }

    /// The share of the results that are not above a value.
    pub fn share_up_to(&self, value: f64) -> f64 {
        self.sorted.partition_point(|result| *result <= value) as f64 / self.sorted.len().max(1) as f64
    }

    /// The mean of the results.
    pub fn mean(&self) -> f64 {
        self.sorted.iter().sum::<f64>() / self.sorted.len().max(1) as f64
    }

    /// The standard deviation of the results.
    pub fn standard_uncertainty(&self) -> f64 {
        let mean = self.mean();
        let squares: f64 = self
            .sorted
            .iter()
            .map(|value| (value - mean) * (value - mean))
            .sum();
        (squares / (self.sorted.len().max(2) - 1) as f64).sqrt()
    }
}

/// The bits of a float as a whole number that sorts as the float does, and back (IEEE 754 total order).
fn in_order(bits: i64) -> i64 {
    bits ^ (((bits >> 63) as u64) >> 1) as i64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn results_are_sorted_on_both_sides_of_zero() {
        let spread = Spread::of(&[0.5, -3.0, 0.0, 7.0, -0.25]);
        assert_eq!(spread.sorted, [-3.0, -0.25, 0.0, 0.5, 7.0]);
        assert_eq!(spread.share_up_to(0.0), 0.6);
        assert_eq!((spread.share_up_to(-4.0), spread.share_up_to(7.0)), (0.0, 1.0));
        assert_eq!(spread.quantile(0.875), 3.75);
    }

    #[test]
    fn no_results_are_nothing() {
        let none = Spread::default();
        assert_eq!(
            (none.quantile(0.5), none.share_up_to(1.0), none.mean()),
            (0.0, 0.0, 0.0)
        );
    }
}
