//! Short sorted lists that replace the maps and sets of the standard library.
//!
//! A document has tens of entries. A B-tree is several times as much code for each type of entry, and every
//! visitor of the page downloads it.

use std::borrow::Borrow;
use std::ops::Index;

/// A map as a sorted list with binary search, fast enough for some hundreds of entries.
#[derive(Clone, Debug, PartialEq)]
pub struct SortedMap<K, V>(Vec<(K, V)>);

impl<K, V> Default for SortedMap<K, V> {
    fn default() -> Self {
        Self::new()
    }
}

impl<K, V> SortedMap<K, V> {
    /// A map without entries.
    pub const fn new() -> Self {
        SortedMap(Vec::new())
    }

    /// How many entries it has.
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether it has no entry.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Removes all entries.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// The entries in the order of their keys.
    pub fn iter(&self) -> std::slice::Iter<'_, (K, V)> {
        self.0.iter()
    }

    /// The keys in order.
    pub fn keys(&self) -> impl Iterator<Item = &K> {
        self.0.iter().map(|(key, _)| key)
    }

    /// The values in the order of their keys.
    pub fn values(&self) -> impl Iterator<Item = &V> {
        self.0.iter().map(|(_, value)| value)
    }

    /// The values in the order of their keys, to change.
    pub fn values_mut(&mut self) -> impl Iterator<Item = &mut V> {
        self.0.iter_mut().map(|(_, value)| value)
    }

    /// Keeps the entries that satisfy a condition.
    pub fn retain(&mut self, mut stays: impl FnMut(&K, &V) -> bool) {
        self.0.retain(|(key, value)| stays(key, value));
    }
}

impl<K: Ord, V> SortedMap<K, V> {
    /// The position of a key, or where to insert it.
    fn place<Q: Ord + ?Sized>(&self, key: &Q) -> Result<usize, usize>
    where
        K: Borrow<Q>,
    {
        self.0.binary_search_by(|(other, _)| other.borrow().cmp(key))
    }

    /// The value of a key.
    pub fn get<Q: Ord + ?Sized>(&self, key: &Q) -> Option<&V>
    where
        K: Borrow<Q>,
    {
        let place = self.place(key).ok()?;
        self.0.get(place).map(|(_, value)| value)
    }

    /// The value of a key, to change.
    pub fn get_mut<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<&mut V>
    where
        K: Borrow<Q>,
    {
        let place = self.place(key).ok()?;
        self.0.get_mut(place).map(|(_, value)| value)
    }

    /// Whether there is such a key.
    pub fn contains_key<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.place(key).is_ok()
    }

    /// Gives a key its value. Returns the value that it had.
    pub fn insert(&mut self, key: K, value: V) -> Option<V> {
        match self.place(&key) {
            Ok(place) => Some(std::mem::replace(&mut self.0[place].1, value)),
            Err(place) => {
                self.0.insert(place, (key, value));
                None
            }
        }
    }

    /// Takes a key away. Returns the value that it had.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> Option<V>
    where
        K: Borrow<Q>,
    {
        let place = self.place(key).ok()?;
        Some(self.0.remove(place).1)
    }
}

/// The value of a key that is there.
///
/// # Panics
/// If it is not there.
impl<K: Ord + Borrow<Q>, V, Q: Ord + ?Sized> Index<&Q> for SortedMap<K, V> {
    type Output = V;

    fn index(&self, key: &Q) -> &V {
        // A place behind the last entry fails as that of a list does.
        &self.0[self.place(key).unwrap_or(usize::MAX)].1
    }
}

/// Of entries with one key, the last counts.
impl<K: Ord, V> Extend<(K, V)> for SortedMap<K, V> {
    fn extend<I: IntoIterator<Item = (K, V)>>(&mut self, entries: I) {
        for (key, value) in entries {
            self.insert(key, value);
        }
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for SortedMap<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(entries: I) -> Self {
        let mut map = SortedMap::new();
        map.extend(entries);
        map
    }
}

impl<K: Ord, V, const N: usize> From<[(K, V); N]> for SortedMap<K, V> {
    fn from(entries: [(K, V); N]) -> Self {
        entries.into_iter().collect()
    }
}

impl<K, V> IntoIterator for SortedMap<K, V> {
    type Item = (K, V);
    type IntoIter = std::vec::IntoIter<(K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a, K, V> IntoIterator for &'a SortedMap<K, V> {
    type Item = &'a (K, V);
    type IntoIter = std::slice::Iter<'a, (K, V)>;

    fn into_iter(self) -> Self::IntoIter {
        self.iter()
    }
}

/// A set that is a list in order.
#[derive(Clone, Debug, PartialEq)]
pub struct SortedSet<K>(SortedMap<K, ()>);

impl<K> Default for SortedSet<K> {
    fn default() -> Self {
        SortedSet(SortedMap::new())
    }
}

impl<K: Ord> SortedSet<K> {
    /// Whether it has no member.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Takes every member away.
    pub fn clear(&mut self) {
        self.0.clear();
    }

    /// Whether this is a member.
    pub fn contains<Q: Ord + ?Sized>(&self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.0.contains_key(key)
    }

    /// Makes this a member. Returns whether it was none before.
    pub fn insert(&mut self, key: K) -> bool {
        self.0.insert(key, ()).is_none()
    }

    /// Takes a member away. Returns whether it was one.
    pub fn remove<Q: Ord + ?Sized>(&mut self, key: &Q) -> bool
    where
        K: Borrow<Q>,
    {
        self.0.remove(key).is_some()
    }
}

/// Converts the bits of a float to an integer that sorts like the float, and back (IEEE 754 total order).
#[inline]
pub fn in_order(bits: i64) -> i64 {
    bits ^ (((bits >> 63) as u64) >> 1) as i64
}

/// Sorts any number of floats in the total order of IEEE 754. It sorts integers, because the page already has that
/// routine.
///
/// # Example
/// ```
/// let mut values = [2.5, -1.0, 0.0, -3.0];
/// units::sort_numbers(&mut values);
/// assert_eq!(values, [-3.0, -1.0, 0.0, 2.5]);
/// ```
pub fn sort_numbers(values: &mut [f64]) {
    let mut bits: Vec<i64> = values
        .iter()
        .map(|value| in_order(value.to_bits() as i64))
        .collect();
    bits.sort_unstable();
    for (value, bits) in values.iter_mut().zip(bits) {
        *value = f64::from_bits(in_order(bits) as u64);
    }
}

/// Sorts a list of up to a few dozen items. The sort is stable. It takes quadratic time, but little code for each type.
///
/// # Example
/// ```
/// let mut list = [(2, 'a'), (1, 'b'), (2, 'c')];
/// units::sort_few(&mut list, |one, other| one.0 > other.0);
/// assert_eq!(list, [(2, 'a'), (2, 'c'), (1, 'b')]);
/// ```
pub fn sort_few<T>(list: &mut [T], is_before: impl Fn(&T, &T) -> bool) {
    for end in 1..list.len() {
        let mut at = end;
        while at > 0 && is_before(&list[at], &list[at - 1]) {
            list.swap(at, at - 1);
            at -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::collections::{BTreeMap, BTreeSet};

    proptest! {
        /// Whatever is done to it, it is as the map of the standard library.
        #[test]
        fn a_sorted_map_is_a_map(steps in prop::collection::vec((0..3, 0..12_u8, any::<u8>()), 0..60)) {
            let (mut ours, mut theirs) = (SortedMap::new(), BTreeMap::new());
            for (what, key, value) in steps {
                match what {
                    0 => prop_assert_eq!(ours.remove(&key), theirs.remove(&key)),
                    1 => prop_assert_eq!(ours.get_mut(&key), theirs.get_mut(&key)),
                    _ => prop_assert_eq!(ours.insert(key, value), theirs.insert(key, value)),
                }
                prop_assert_eq!(ours.get(&key), theirs.get(&key));
                prop_assert_eq!(ours.contains_key(&key), theirs.contains_key(&key));
                prop_assert_eq!(ours.len(), theirs.len());
            }
            ours.retain(|key, value| key < value);
            theirs.retain(|key, value| *key < *value);
            prop_assert!(ours.keys().eq(theirs.keys()) && ours.values().eq(theirs.values()));
            prop_assert!(ours.into_iter().eq(theirs));
        }

        #[test]
        fn a_sorted_set_is_a_set(steps in prop::collection::vec((any::<bool>(), 0..12_u8), 0..60)) {
            let (mut ours, mut theirs) = (SortedSet::default(), BTreeSet::new());
            for (is_new, key) in steps {
                if is_new {
                    prop_assert_eq!(ours.insert(key), theirs.insert(key));
                } else {
                    prop_assert_eq!(ours.remove(&key), theirs.remove(&key));
                }
                prop_assert_eq!(ours.contains(&key), theirs.contains(&key));
                prop_assert_eq!(ours.is_empty(), theirs.is_empty());
            }
        }
    }

    proptest! {
        #[test]
        fn a_few_are_sorted_as_many_are(mut list in prop::collection::vec((0..6_u8, any::<u8>()), 0..30)) {
            let mut theirs = list.clone();
            theirs.sort_by_key(|item| item.0);
            sort_few(&mut list, |one, other| one.0 < other.0);
            prop_assert_eq!(list, theirs);
        }
    }

    #[test]
    fn a_key_is_found_by_what_it_borrows() {
        let map = SortedMap::from([("b".to_owned(), 2), ("a".to_owned(), 1), ("b".to_owned(), 3)]);
        assert_eq!((map["a"], map["b"], map.get("c")), (1, 3, None));
    }
}
