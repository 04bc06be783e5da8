//! Samples of a result: equally likely values.

/// Samples of a result, sorted.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Samples {
    sorted: Vec<f64>,
}

impl Samples {
    /// The samples with these values, in any order.
    pub fn of(values: &[f64]) -> Self {
        let mut bits = shared_out(values);
        sort_nearly_sorted(&mut bits);
        let sorted = bits
            .into_iter()
            .map(|bits| f64::from_bits(units::in_order(bits) as u64))
            .collect();
        Samples { sorted }
    }

    /// The quantile of this fraction, interpolated between values.
    ///
    /// # Example
    /// ```
    /// assert_eq!(coatings::Samples::of(&[6.0, 2.0, 4.0]).quantile(0.5), 4.0);
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

    /// The fraction of the values that are at most this value.
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

/// The values as integers that sort the same, distributed over equal buckets. That leaves them nearly sorted
/// in one pass. Sorting is most of the work of an answer, and the results of trials lie close together, so
/// few share a bucket.
fn shared_out(values: &[f64]) -> Vec<i64> {
    let low = values.iter().fold(f64::INFINITY, |low, value| low.min(*value));
    let high = values
        .iter()
        .fold(f64::NEG_INFINITY, |high, value| high.max(*value));
    let last = values.len().saturating_sub(1);
    let steps = last as f64 / (high - low);
    let step = |value: f64| (((value - low) * steps) as usize).min(last);
    // The start of each bucket.
    let mut begins = vec![0_u32; values.len() + 1];
    for value in values {
        begins[step(*value) + 1] += 1;
    }
    let mut sum = 0;
    for begin in &mut begins {
        sum += *begin;
        *begin = sum;
    }
    let mut bits = vec![0; values.len()];
    for value in values {
        let place = &mut begins[step(*value)];
        bits[*place as usize] = units::in_order(value.to_bits() as i64);
        *place += 1;
    }
    bits
}

/// Insertion sort, which is fast for nearly sorted values. It falls back to a general sort if many values
/// share a bucket.
fn sort_nearly_sorted(bits: &mut [i64]) {
    let mut moves = 0;
    for next in 1..bits.len() {
        let number = bits[next];
        let mut place = next;
        while place > 0 && bits[place - 1] > number {
            bits[place] = bits[place - 1];
            place -= 1;
        }
        bits[place] = number;
        moves += next - place;
        if moves > 16 * bits.len() {
            bits.sort_unstable();
            return;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn results_are_sorted_on_both_sides_of_zero() {
        let samples = Samples::of(&[0.5, -3.0, 0.0, 7.0, -0.25]);
        assert_eq!(samples.sorted, [-3.0, -0.25, 0.0, 0.5, 7.0]);
        assert_eq!(samples.share_up_to(0.0), 0.6);
        assert_eq!((samples.share_up_to(-4.0), samples.share_up_to(7.0)), (0.0, 1.0));
        assert_eq!(samples.quantile(0.875), 3.75);
    }

    proptest! {
        /// Also where most values share a bucket, are equal, or are not numbers.
        #[test]
        fn they_are_sorted_as_the_standard_library_does(
            values in prop::collection::vec(
                prop_oneof![-1.0..1.0f64, 0.0..1e-9f64, Just(0.5), Just(-0.0), Just(1e300), Just(f64::NAN)],
                0..300,
            ),
        ) {
            let ours = Samples::of(&values).sorted;
            let mut theirs = values;
            theirs.sort_by(f64::total_cmp);
            let bits = |values: &[f64]| -> Vec<u64> { values.iter().map(|value| value.to_bits()).collect() };
            prop_assert_eq!(bits(&ours), bits(&theirs));
        }
    }

    #[test]
    fn no_results_are_nothing() {
        let none = Samples::default();
        assert_eq!(
            (none.quantile(0.5), none.share_up_to(1.0), none.mean()),
            (0.0, 0.0, 0.0)
        );
    }
}
