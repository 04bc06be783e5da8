//! Edits of the weekly working hours.

use super::{BookEdit, EditError};
use crate::book::{Habits, ONLY, WEEK};
use crate::days::USUAL_HOURS_TEXT;
use crate::document::Workshop;

impl Workshop {
    /// Sets the working hours of several weekdays, by the keys of their habits. An empty text clears a day.
    pub(super) fn set_hours(&mut self, days: Vec<(&'static str, String)>) -> Result<(), EditError> {
        for (day, text) in days {
            self.write_habit(BookEdit::Write("habits", ONLY.into(), day.into(), text.into()))?;
        }
        Ok(())
    }

    /// Changes a book of the workshop. The first hours that a maker enters for one day leave those of the other days
    /// as the schedule had them until then.
    pub(super) fn write_habit(&mut self, edit: BookEdit) -> Result<(), EditError> {
        if let BookEdit::Write("habits", _, key, entered) = &edit {
            let are_first =
                WEEK.contains(&&**key) && !entered.text.trim().is_empty() && self.has_usual_hours();
            for day in WEEK.iter().take(5).filter(|day| are_first && ***day != **key) {
                let write = BookEdit::Write("habits", ONLY.into(), (*day).into(), USUAL_HOURS_TEXT.into());
                self.books.apply(write, false, self.units)?;
            }
        }
        self.books.apply(edit, false, self.units)
    }

    /// Returns true if the maker entered no hours.
    pub(crate) fn has_usual_hours(&self) -> bool {
        self.books.one::<Habits>().week().iter().all(Option::is_none)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Edit;
    use crate::days::{USUAL_HOURS, written_hours};

    fn with(workshop: &Workshop, day: &str, text: &str) -> Workshop {
        let write = BookEdit::Write("habits", ONLY.into(), day.into(), text.into());
        workshop.apply(Edit::Book(write)).unwrap()
    }

    #[test]
    fn the_first_day_entered_keeps_the_usual_hours_of_the_others() {
        let usual = USUAL_HOURS.to_vec();
        let saturday = with(&Workshop::default(), "sat", "9-17");
        let week = written_hours(&saturday);
        assert!(week[..5].iter().all(|hours| *hours == usual));
        assert_eq!((&week[5], &week[6]), (&vec![(540, 1020)], &vec![]));
        let off = with(&with(&saturday, "mon", ""), "tue", "18-21");
        let week = written_hours(&off);
        assert_eq!(
            (&week[0], &week[1], &week[2]),
            (&vec![], &vec![(1080, 1260)], &usual)
        );
    }

    #[test]
    fn several_days_are_one_edit() {
        let evenings = WEEK[..5]
            .iter()
            .map(|day| (*day, "6pm to 9pm".to_owned()))
            .collect();
        let workshop = Workshop::default().apply(Edit::Hours(evenings)).unwrap();
        let week = written_hours(&workshop);
        assert!(week[..5].iter().all(|hours| *hours == [(1080, 1260)]));
        assert!(week[5..].iter().all(Vec::is_empty));
    }
}
