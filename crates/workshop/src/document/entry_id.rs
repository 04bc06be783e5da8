//! Ids of entries.

/// The id of an entry of a piece. It is given once and stays with the entry when others come, go or change their places,
/// so that two copies of a piece can tell which entry is which.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct EntryId(pub(crate) u64);

impl EntryId {
    /// The largest one that is given: a whole number that every program reads as it is.
    pub(crate) const MOST: u64 = 1 << 52;
}
