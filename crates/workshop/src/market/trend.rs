//! Whether prices change over time, and how fast.

/// The 0.975 quantile of the normal distribution.
const Z: f64 = 1.959_963_984_540_054;
/// Up to this many values without ties, all permutations are counted. Beyond it, the normal approximation is
/// accurate enough.
const COUNTED: usize = 33;

/// The change per unit of `x`, with a 95% confidence interval.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slope {
    /// The median of the slopes of all pairs.
    pub slope: f64,
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
}

/// Kendall's tau and its test.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tau {
    /// Tau-b, from -1 to 1.
    pub tau: f64,
    /// The two-sided p-value.
    pub p: f64,
}

/// Sums over ties: the pairs, and the two terms of the variance.
#[derive(Clone, Copy)]
struct Ties {
    pairs: f64,
    third: f64,
    weighted: f64,
}

fn ties(values: &[f64]) -> Ties {
    let mut sorted = values.to_vec();
    units::sort_numbers(&mut sorted);
    let mut sums = Ties {
        pairs: 0.0,
        third: 0.0,
        weighted: 0.0,
    };
    for same in sorted.chunk_by(|a, b| a == b) {
        let k = same.len() as f64;
        sums.pairs += k * (k - 1.0) / 2.0;
        sums.third += k * (k - 1.0) * (k - 2.0);
        sums.weighted += k * (k - 1.0) * (2.0 * k + 5.0);
    }
    sums
}

/// Returns the slope of Theil (1950) with the interval of Sen, J. Am. Stat. Assoc. 63 (1968) 1379. Returns
/// `None` unless there are two different `x`. Extra values in the longer list are ignored.
pub fn theil_sen(x: &[f64], y: &[f64]) -> Option<Slope> {
    let n = x.len().min(y.len());
    let (x, y) = (&x[..n], &y[..n]);
    let mut slopes = Vec::new();
    for i in 0..n {
        for j in 0..i {
            let run = x[i] - x[j];
            if run != 0.0 {
                slopes.push((y[i] - y[j]) / run);
            }
        }
    }
    units::sort_numbers(&mut slopes);
    let slope = super::quantile(&slopes, 0.5)?;
    let (count, pairs) = (n as f64, slopes.len() as f64);
    let all = count * (count - 1.0) * (2.0 * count + 5.0);
    let sigma = libm::sqrt((all - ties(x).weighted - ties(y).weighted).max(0.0) / 18.0);
    let low = libm::fmax(libm::rint((pairs - Z * sigma) / 2.0) - 1.0, 0.0) as usize;
    let high = libm::fmin(libm::rint((pairs + Z * sigma) / 2.0), pairs - 1.0) as usize;
    Some(Slope {
        slope,
        low: slopes[low.min(high)],
        high: slopes[high],
    })
}

/// Returns Kendall's tau-b and its test (Kendall, Rank Correlation Methods). The test counts permutations for
/// few values without ties and uses the normal approximation otherwise. Returns `None` if all `x` or all `y`
/// are the same.
pub fn kendall(x: &[f64], y: &[f64]) -> Option<Tau> {
    let n = x.len().min(y.len());
    let (x, y) = (&x[..n], &y[..n]);
    let (mut score, mut against) = (0.0, 0usize);
    for i in 0..n {
        for j in 0..i {
            let turn = (x[i] - x[j]) * (y[i] - y[j]);
            if turn > 0.0 {
                score += 1.0;
            } else if turn < 0.0 {
                score -= 1.0;
                against += 1;
            }
        }
    }
    let (tx, ty, count) = (ties(x), ties(y), n as f64);
    let m = count * (count - 1.0);
    let free = (m / 2.0 - tx.pairs) * (m / 2.0 - ty.pairs);
    if free <= 0.0 {
        return None;
    }
    let p = if tx.pairs == 0.0 && ty.pairs == 0.0 && n <= COUNTED {
        by_counting(n, against)
    } else {
        let ties_of_three = if n > 2 {
            tx.third * ty.third / (9.0 * m * (count - 2.0))
        } else {
            0.0
        };
        let variance = (m * (2.0 * count + 5.0) - tx.weighted - ty.weighted) / 18.0
            + 2.0 * tx.pairs * ty.pairs / m
            + ties_of_three;
        libm::erfc(libm::fabs(score) / libm::sqrt(2.0 * variance))
    };
    Some(Tau {
        tau: score / libm::sqrt(free),
        p,
    })
}

/// Returns the two-sided p-value: twice the share of permutations of `n` with at most as many inversions,
/// counted from the nearer end.
fn by_counting(n: usize, inversions: usize) -> f64 {
    let all = n * (n - 1) / 2;
    let fewer = inversions.min(all - inversions);
    let mut shares = vec![0.0; fewer + 1];
    shares[0] = 1.0;
    for i in 2..=n {
        let before = shares.clone();
        for (j, share) in shares.iter_mut().enumerate() {
            let from = j.saturating_sub(i - 1);
            *share = before[from..=j].iter().sum::<f64>() / i as f64;
        }
    }
    (2.0 * shares.iter().sum::<f64>()).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Five in order: 2 of the 120 permutations are this extreme.
    #[test]
    fn five_in_order() {
        let x = [0.0, 1.0, 2.0, 3.0, 4.0];
        let found = kendall(&x, &x).unwrap();
        assert_eq!(found.tau, 1.0);
        assert!((found.p - 2.0 / 120.0).abs() < 1e-12);
        assert_eq!(theil_sen(&x, &x).map(|s| s.slope), Some(1.0));
        assert_eq!(kendall(&x, &[1.0; 5]), None);
        assert_eq!(theil_sen(&[1.0; 5], &x), None);
    }
}
