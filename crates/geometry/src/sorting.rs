//! Sorting with one routine for every kind of list.
//!
//! Each type of list that the standard library sorts adds about ten kilobytes of machine code to the page, and there
//! are many types. Here only pairs of keys and indices are sorted, always of the same type, and the list is then put in
//! that order.
//!
//! `units::sort_numbers` and `units::sort_few` cannot replace it, and it is not in `units` with them: this crate alone
//! is built for speed, and these entries are three times as wide as the integers that `sort_numbers` shares with the
//! trials of `coatings`.

use crate::corner::Corner;

/// A sort key: compared as integers, the first before the second.
pub(crate) trait Key {
    fn numbers(self) -> [i64; 2];
}

impl Key for f64 {
    fn numbers(self) -> [i64; 2] {
        [units::in_order(self.to_bits() as i64), 0]
    }
}

impl Key for usize {
    fn numbers(self) -> [i64; 2] {
        [self as i64, 0]
    }
}

impl Key for (usize, usize) {
    fn numbers(self) -> [i64; 2] {
        [self.0 as i64, self.1 as i64]
    }
}

impl Key for [u64; 2] {
    fn numbers(self) -> [i64; 2] {
        // Subtracting half the range keeps the order among signed integers.
        self.map(|number| (number ^ (1 << 63)) as i64)
    }
}

impl Key for [i64; 2] {
    fn numbers(self) -> [i64; 2] {
        self
    }
}

/// A corner packed into one integer that sorts by x, then by y.
pub(crate) fn packed(corner: Corner) -> i64 {
    (i64::from(corner.x) << 32) | i64::from(corner.y.cast_unsigned() ^ (1 << 31))
}

/// The corner that was packed.
pub(crate) fn unpacked(number: i64) -> Corner {
    let y = number as u32 ^ (1 << 31);
    Corner::new((number >> 32) as i32, y.cast_signed())
}

/// A key, and the index of its item.
pub(crate) type Entry = ([i64; 2], usize);

/// Sorts a list by a key; the sort is stable.
pub(crate) fn sort_by<T, K: Key>(list: &mut [T], key: impl Fn(&T) -> K) {
    let keys = list.iter().enumerate();
    let mut places = ordered(keys.map(|(i, item)| (key(item).numbers(), i)).collect());
    // Apply the permutation along its cycles.
    for start in 0..places.len() {
        let mut at = start;
        while let Some(place) = places.get_mut(at) {
            let from = std::mem::replace(place, at);
            if from == start || from == at {
                break;
            }
            list.swap(at, from);
            at = from;
        }
    }
}

pub(crate) fn sort(list: &mut [f64]) {
    sort_by(list, |value| *value);
}

fn ordered(mut keys: Vec<Entry>) -> Vec<usize> {
    sort_entries(&mut keys);
    keys.into_iter().map(|(_, place)| place).collect()
}

/// Sorts entries by their keys, those with the same key by their numbers.
#[inline(never)]
pub(crate) fn sort_entries(entries: &mut [Entry]) {
    entries.sort_unstable();
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_sorts_as_the_standard_library_does(list in prop::collection::vec((0usize..9, 0usize..9), 0..40)) {
            let (mut ours, mut theirs) = (list.clone(), list);
            sort_by(&mut ours, |pair| pair.0);
            theirs.sort_by_key(|pair| pair.0);
            prop_assert_eq!(ours, theirs);
        }

        #[test]
        fn numbers_are_sorted_on_both_sides_of_zero(list in prop::collection::vec(-9.0f64..9.0, 0..40)) {
            let (mut ours, mut theirs) = (list.clone(), list);
            sort(&mut ours);
            theirs.sort_by(f64::total_cmp);
            prop_assert_eq!(ours, theirs);
        }
    }
}
