//! Adding pieces of another workshop: what comes with them and what does not.

use std::rc::Rc;

use super::EditError;
use super::materials::Renamed;
use crate::book::{AIR, BOOKS, CanPrice, FieldKind, Line, OF_MONEY, ONLY, Record, WEEK, book};
use crate::document::{Confidence, Piece, PieceId, Workshop};

// The maker's money settings come with the pieces if this workshop has none. All other habits belong to the
// other place: its hours, air and scale.

/// The field with the id of the piece that a line belongs to.
const OF_PIECE: &str = "of";

/// The book of settings.
const HABITS: &str = "habits";

/// What happens to the settings of another workshop when its pieces are added, by their labels.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Along {
    /// Settings that are copied, because this workshop has none.
    pub comes: Vec<String>,
    /// Settings that differ here and are not copied.
    pub stays: Vec<String>,
}

impl Workshop {
    /// Returns what happens to the settings of another workshop when its pieces are added
    /// ([`crate::Edit::Gather`]).
    pub fn along(&self, other: &Workshop) -> Along {
        let mut along = Along::default();
        let [ours, theirs] = [self, other].map(|workshop| workshop.books.only(HABITS));
        for field in book(HABITS).map_or(&[][..], |book| book.fields) {
            let [here, there] = [&ours, &theirs].map(|line| line.text(field.key));
            if there.is_empty() || here == there {
                continue;
            }
            let list = match OF_MONEY.contains(&field.key) && here.is_empty() {
                true => &mut along.comes,
                false => &mut along.stays,
            };
            let label = called(field.key).unwrap_or(field.label).to_owned();
            if !list.contains(&label) {
                list.push(label);
            }
        }
        match (self.settings.currency, other.settings.currency) {
            (None, Some(_)) => along.comes.push("Currency".into()),
            (Some(here), Some(there)) if here != there => along.stays.push("Currency".into()),
            _ => {}
        }
        let sure = other.settings.confidence;
        if sure != self.settings.confidence && sure != Confidence::default() {
            along.stays.push("How sure a can must be".into());
        }
        let prices = other.books.lines(CanPrice::BOOK).iter();
        let others = prices.filter(|line| {
            let here = self.books.line(CanPrice::BOOK, &line.id);
            here.is_some_and(|here| here.text("price") != line.text("price"))
        });
        match others.count() {
            0 => {}
            1 => along.stays.push("1 can price".into()),
            many => along.stays.push(format!("{many} can prices")),
        }
        along
    }

    /// Adds pieces. A piece whose id is taken gets a new one.
    pub(super) fn gather(&mut self, mut other: Workshop) -> Result<(), EditError> {
        let materials = self.gather_materials(&mut other);
        self.gather_money(&other);
        let mut pieces = Renamed::new();
        for piece in std::mem::take(&mut other.pieces) {
            let base = piece.id.0.clone();
            let names = std::iter::once(base.clone()).chain((2..).map(|n| format!("{base}-{n}").into()));
            let id = names
                .map(PieceId)
                .find(|id| self.piece(id).is_none())
                .ok_or(EditError::IdTaken)?;
            if id.0 != base {
                pieces.push((base, Rc::clone(&id.0)));
            }
            self.insert(
                self.pieces.len(),
                Piece {
                    id,
                    ..(*piece).clone()
                },
            )?;
        }
        self.books.gather(&other.books, &materials, &pieces)
    }

    fn gather_money(&mut self, other: &Workshop) {
        let theirs = other.books.only(HABITS);
        let mut line = self.books.only(HABITS);
        for key in OF_MONEY {
            let text = theirs.text(key);
            if line.text(key).is_empty() && !text.is_empty() {
                line.values.insert(key.into(), text.into());
                // The number that the text means, if it could also be read as another one.
                let meant = theirs.meant.get(key).map(|number| (key.to_owned(), *number));
                line.meant.extend(meant);
            }
        }
        if line != Line::new(ONLY.into()) {
            self.books.0.insert(HABITS.into(), vec![Rc::new(line)]);
        }
        self.settings.currency = self.settings.currency.or(other.settings.currency);
    }
}

/// The common labels of fields that are side by side.
fn called(key: &str) -> Option<&'static str> {
    match () {
        () if WEEK.contains(&key) => Some("Working hours"),
        () if AIR.contains(&key) => Some("Temperature and humidity"),
        () => None,
    }
}

impl crate::book::Books {
    /// Adds the lines of another workshop's books that are not here yet. Materials and pieces that got new
    /// ids here have them in these lines too.
    fn gather(
        &mut self,
        other: &crate::book::Books,
        materials: &Renamed,
        pieces: &Renamed,
    ) -> Result<(), EditError> {
        for book in BOOKS.iter().filter(|book| !book.is_single) {
            for line in other.lines(book.key) {
                if self.line(book.key, &line.id).is_some() {
                    continue;
                }
                let mut line = (**line).clone();
                for field in book.fields {
                    let renamed = match field.kind {
                        FieldKind::Material => materials,
                        FieldKind::Text if field.key == OF_PIECE => pieces,
                        _ => continue,
                    };
                    let name = line.text(field.key);
                    if let Some((_, now)) = renamed.iter().find(|(before, _)| **before == *name) {
                        line.values.insert(field.key.into(), now.to_string());
                    }
                }
                self.add(book, line)?;
            }
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::Habits;
    use crate::{BookEdit, Currency, Edit, PieceEdit, SettingEdit, money};
    use geometry::Kind;
    use units::Day;

    fn with(edits: impl IntoIterator<Item = Edit>) -> Workshop {
        let done = |workshop: Workshop, edit| workshop.apply(edit).unwrap();
        edits.into_iter().fold(Workshop::default(), done)
    }

    fn habit(key: &str, text: &str) -> Edit {
        Edit::Book(BookEdit::Write(HABITS, ONLY.into(), key.into(), text.into()))
    }

    fn theirs() -> Workshop {
        let id = PieceId("a".into());
        let fact = |key: &str, text: &str| {
            let write = BookEdit::Write("facts", ONLY.into(), key.into(), text.into());
            Edit::Piece(PieceId("a".into()), PieceEdit::Book(write))
        };
        with([
            Edit::Add {
                id,
                kind: Kind::Dresser,
            },
            fact("bought", "60"),
            fact("asking", "150"),
            fact("hours", "4 h"),
            habit("hourly", "60"),
            habit("fee", "3"),
            habit("mon", "9:00-12:00"),
            habit("tue", "9:00-12:00"),
            Edit::Settings(SettingEdit::Currency(Currency::new("EUR").ok())),
        ])
    }

    /// Returns true if the piece pays for its hours.
    fn verdict(workshop: &Workshop) -> String {
        let piece = &workshop.pieces[0];
        let work = crate::samples::work(workshop, piece).unwrap();
        let account = money::account(workshop, piece, &work, Day::since_1970(20_000));
        assert!(account.outcome.is_some());
        format!("{:?} {:?}", account.outcome, account.most)
    }

    #[test]
    fn what_decides_whether_a_piece_pays_comes_along() {
        let theirs = theirs();
        let both = with([Edit::Gather(theirs.clone())]);
        assert_eq!(both.books.one::<Habits>().hourly, Some(6000));
        assert_eq!(both.settings.currency, theirs.settings.currency);
        assert_eq!(verdict(&both), verdict(&theirs));
        assert_eq!(
            both.books.only(HABITS).text("mon"),
            "",
            "the hours are of the other place"
        );
        let along = Workshop::default().along(&theirs);
        assert_eq!(along.comes, ["Hourly rate", "Fee per sale", "Currency"]);
        assert_eq!(along.stays, ["Working hours"]);
    }

    #[test]
    fn a_rate_means_what_it_meant_in_the_other_workshop() {
        let rate = crate::book::Entered {
            text: "1,250".into(),
            decimals: units::Decimals::Point,
        };
        let write = BookEdit::Write(HABITS, ONLY.into(), "hourly".into(), rate);
        let theirs = with([Edit::Book(write)]);
        assert_eq!(theirs.books.one::<Habits>().hourly, Some(125_000));
        let both = with([Edit::Gather(theirs.clone())]);
        assert_eq!(both.books.only(HABITS), theirs.books.only(HABITS));
        assert!(both.along(&theirs).stays.is_empty());
    }

    #[test]
    fn what_this_workshop_has_of_its_own_stays_and_is_said() {
        let dollar = Currency::new("USD").ok();
        let ours = with([
            habit("hourly", "45"),
            habit("fee", "3"),
            Edit::Settings(SettingEdit::Currency(dollar)),
        ]);
        let both = ours.apply(Edit::Gather(theirs())).unwrap();
        assert_eq!(both.books.one::<Habits>().hourly, Some(4500));
        assert_eq!(both.settings.currency, dollar);
        let along = ours.along(&theirs());
        assert!(along.comes.is_empty(), "{along:?}");
        assert_eq!(along.stays, ["Hourly rate", "Working hours", "Currency"]);
    }

    #[test]
    fn a_link_has_nothing_to_leave_behind() {
        let link = with([Edit::Add {
            id: PieceId("a".into()),
            kind: Kind::Dresser,
        }]);
        assert_eq!(theirs().along(&link), Along::default());
        assert_eq!(theirs().along(&theirs()), Along::default());
    }
}
