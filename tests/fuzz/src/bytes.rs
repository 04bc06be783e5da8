//! Choices made by bytes; when they are used up, every choice is the first.

/// A reader of bytes.
pub(crate) struct Bytes<'a>(std::slice::Iter<'a, u8>);

impl<'a> Bytes<'a> {
    pub(crate) fn of(data: &'a [u8]) -> Self {
        Bytes(data.iter())
    }

    pub(crate) fn next(&mut self) -> u8 {
        self.0.next().copied().unwrap_or(0)
    }

    /// A number below `most`.
    pub(crate) fn below(&mut self, most: usize) -> usize {
        let wide = usize::from(self.next()) << 8 | usize::from(self.next());
        wide % most.max(1)
    }

    pub(crate) fn one_of<T: Copy>(&mut self, list: &[T]) -> T {
        list[self.below(list.len())]
    }

    pub(crate) fn yes(&mut self) -> bool {
        self.next() & 1 == 1
    }

    /// Millimetres: mostly sensible, sometimes absurd, sometimes no number at all.
    pub(crate) fn millimetres(&mut self, low: f64, high: f64) -> f64 {
        let share = self.below(10_001) as f64 / 10_000.0;
        match self.next() {
            0..=239 => low + (high - low) * share,
            240 => f64::NAN,
            241 => f64::INFINITY,
            242 => -1.0,
            243 => 0.0,
            244 => 100_000.0,
            245 => 1e300,
            246 => f64::MIN_POSITIVE,
            _ => (high + 1.0) * (share + 0.5),
        }
    }
}
