//! Durations in whole minutes.

/// The most minutes that a step, a wait or a cure may have: a year of 366 days.
pub const MOST_MINUTES: u32 = 366 * 24 * 60;

/// Minutes at `percent` of themselves, rounded up, up to [`MOST_MINUTES`].
pub(crate) fn scaled(minutes: u32, percent: u32) -> u32 {
    let longer = (u64::from(minutes) * u64::from(percent)).div_ceil(100);
    longer.min(u64::from(MOST_MINUTES)) as u32
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_are_rounded_up_and_capped() {
        assert_eq!(scaled(125, 150), 188);
        assert_eq!(scaled(MOST_MINUTES, 200), MOST_MINUTES);
    }
}
