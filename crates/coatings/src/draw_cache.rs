//! A cache of draws. The same input always has the same draws, and most inputs do not change between key
//! presses. The cache saves a quarter of the work.

use std::cell::RefCell;
use std::rc::Rc;

use crate::propagate::{Input, draw};

/// The most cached columns: enough for a few pieces and for tools compared side by side. A column of 10,000
/// trials takes 80 kB.
const MOST: usize = 96;

/// The values of an input.
pub(crate) type Column = Rc<Vec<f64>>;

thread_local! {
    static CACHE: RefCell<Vec<(Input, Column)>> = const { RefCell::new(Vec::new()) };
}

/// At least this many values of an input, equal to those of [`draw`]. A longer column begins with the
/// shorter one.
pub(crate) fn cached_draws(input: &Input, trials: usize) -> Column {
    CACHE.with_borrow_mut(|cache| {
        let position = cache.iter().position(|(other, _)| other == input);
        if let Some((_, column)) = position
            .and_then(|place| cache.get(place))
            .filter(|(_, column)| column.len() >= trials)
        {
            return Rc::clone(column);
        }
        let column = Rc::new(draw(input, trials));
        if position.is_some() || cache.len() == MOST {
            // Evicts the shorter column or the oldest. Use does not renew a column, because drawing it again
            // is cheap.
            cache.remove(position.unwrap_or(0));
        }
        cache.push((input.clone(), Rc::clone(&column)));
        column
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::distribution::Distribution;

    fn input(name: usize, high: f64) -> Input {
        Input {
            name: format!("input {name}"),
            distribution: Distribution::between(1.0, high),
        }
    }

    #[test]
    fn what_is_kept_is_what_would_be_drawn() {
        // More inputs than are kept, some of one name, each asked for twice and in two numbers of trials.
        for _ in 0..2 {
            for (name, high) in (0..MOST).flat_map(|name| [(name, 2.0), (name, 3.0)]) {
                let input = input(name, high);
                for trials in [10, 11, 10] {
                    assert_eq!(
                        cached_draws(&input, trials)[..trials],
                        draw(&input, trials),
                        "{input:?}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_column_is_drawn_once() {
        let first = cached_draws(&input(0, 2.0), 10);
        assert!(Rc::ptr_eq(&first, &cached_draws(&input(0, 2.0), 10)));
        assert!(Rc::ptr_eq(&first, &cached_draws(&input(0, 2.0), 9)));
    }
}
