//! How fast pieces sell, when some are still for sale.

/// How long a piece was for sale.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// Days until it was gone, or days for sale so far.
    pub days: u32,
    /// True if it is gone.
    pub is_gone: bool,
}

/// Returns the first day by which half are gone, by the product-limit estimate of Kaplan & Meier, J. Am.
/// Stat. Assoc. 53 (1958) 457. Returns `None` if the estimate never falls to one half. Sorts the list.
pub fn median_days(standing: &mut [Standing]) -> Option<u32> {
    units::sort_few(standing, |one, other| one.days < other.days);
    let (mut at, mut left) = (0, 1.0);
    while at < standing.len() {
        let days = standing[at].days;
        let same = standing[at..].iter().take_while(|one| one.days == days).count();
        let gone = standing[at..at + same].iter().filter(|one| one.is_gone).count();
        // Pieces still for sale after exactly that many days are at risk on that day.
        let at_risk = standing.len() - at;
        left *= (at_risk - gone) as f64 / at_risk as f64;
        // Rounding may leave a product of exactly one half slightly above it.
        if gone > 0 && left <= 0.5 + 1e-12 {
            return Some(days);
        }
        at += same;
    }
    None
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Weeks of remission from Freireich et al., Blood 21 (1963) 699, the example in most textbooks: medians
    /// 23 and 8. The values are from memory.
    #[test]
    fn the_medians_of_the_textbooks() {
        let treated = [
            6, 6, 6, -6, 7, -9, 10, -10, -11, 13, 16, -17, -19, -20, 22, 23, -25, -32, -32, -34, -35,
        ];
        let others = [
            1, 1, 2, 2, 3, 4, 4, 5, 5, 8, 8, 8, 8, 11, 11, 12, 12, 15, 17, 22, 23,
        ];
        let median = |weeks: &[i32]| {
            let mut all: Vec<Standing> = weeks
                .iter()
                .map(|&w| Standing {
                    days: w.unsigned_abs(),
                    is_gone: w > 0,
                })
                .collect();
            median_days(&mut all)
        };
        assert_eq!(median(&treated), Some(23));
        assert_eq!(median(&others), Some(8));
        assert_eq!(median(&[-1, -2]), None);
    }
}
