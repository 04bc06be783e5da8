//! The account of a piece: its costs, from its takeoff and the maker's entries, and the prices that cover
//! them.

use super::costs::EstimatedCosts;
use super::costs::TRIALS;
use super::costs::estimate_costs;
use super::costs::minutes;
use super::costs::rate;
use super::costs::whole_minutes;

use coatings::{Job, Stage};
use units::Day;

use super::guess::{Guess, currency_of_guesses};
use super::{Costs, Outcome, Plan, added, chance, highest_buying_price, lowest_price, result, wanted_price};
use crate::art::{Art, art, cost_and_minutes};
use crate::book::Facts;
use crate::document::{Currency, Piece, Workshop};
use crate::market::{self, Row, Side, Told};
use crate::takeoff::Takeoff;
use crate::work::Work;

/// The costs and prices of a piece or a set. All money is in hundredths.
#[derive(Clone, Debug, PartialEq)]
pub struct Account {
    /// The number of pieces that all prices here cover together.
    pub count: u32,
    /// True if it was sold, so that there is nothing left to decide.
    pub is_sold: bool,
    /// The costs. Materials include what stays on the piece and what is wasted.
    pub costs: Costs,
    /// The range of the working time and its effect, if the time is estimated because the maker entered none.
    pub reckoned: Option<Reckoning>,
    /// Materials without a price. They count as zero.
    pub unpriced: Vec<String>,
    /// The inputs that were guessed, because the maker has not entered them. All are in US dollars.
    pub guesses: Vec<Guess>,
    /// The currency to show all of it in: the one the maker chose, or that of the guesses. `None` if there is
    /// neither.
    pub currency: Option<Currency>,
    /// True if an hourly wage was entered or guessed.
    pub has_wage: bool,
    /// True if some material has a price that was entered or guessed, or if none is needed.
    pub has_prices: bool,
    /// The lowest price, with nothing for the work.
    pub lowest: Option<u64>,
    /// The price that pays the wanted hourly rate and profit.
    pub wanted: Option<u64>,
    /// The expected price of the whole set: the sale price, or else the asking price, or else the usual local
    /// price.
    pub brings: Option<u64>,
    /// The outcome at the expected price.
    pub outcome: Option<Outcome>,
    /// The most to pay for the piece so that the expected price still covers the hours and the other goals.
    pub most: Option<u64>,
    /// The chance of reaching the wanted rate and profit at local prices, after buying at the entered price.
    pub chance: Option<f64>,
    /// The statistics of the price notes for this kind of piece.
    pub nearby: Row,
    /// The increase in the wanted price for one more coat of each material.
    pub more_coats: Vec<(String, i64)>,
    /// The increase in the wanted price for each item of art. The name is its place, or else its kind.
    pub of_art: Vec<(String, i64)>,
}

/// The range of an estimated working time, and its effect on the buying price.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reckoning {
    /// The minimum and maximum working time, in minutes.
    pub minutes: (u32, u32),
    /// The most to pay for the piece at the minimum and at the maximum time.
    pub most: (Option<u64>, Option<u64>),
}

impl Account {
    /// Returns true if the prices rest on neither a wage nor the materials, so that the most to pay is no
    /// answer yet.
    pub fn rests_on_nothing(&self) -> bool {
        !self.has_wage && !self.has_prices
    }
}

impl Reckoning {
    /// Returns the lowest and highest hourly pay, in hundredths, when `left` remains for the work.
    pub fn per_hour(&self, left: i64) -> (i64, i64) {
        let an_hour = |minutes: u32| left.saturating_mul(60) / i64::from(minutes.max(1));
        let (quick, slow) = (an_hour(self.minutes.0), an_hour(self.minutes.1));
        (slow.min(quick), slow.max(quick))
    }
}

/// Returns the account of a piece. `today` determines how long unsold pieces have been on the market.
pub(crate) fn account(workshop: &Workshop, piece: &Piece, work: &Work, today: Day) -> Account {
    let facts: Facts = piece.books.one();
    let EstimatedCosts {
        costs,
        materials,
        unpriced,
        guesses,
        has_wage,
        has_prices,
        job,
        coating,
        minutes,
    } = estimate_costs(workshop, piece, work);
    let takeoff = &work.takeoff;
    let (notes, _) = market::notes(workshop);
    let nearby = market::row(&notes, Some(piece.kind), today);
    // Each note is the price of a single piece.
    let of_all = |price: u64| price.saturating_mul(u64::from(piece.count));
    let usual = match &nearby.sold {
        Told::Known(prices) => Some(of_all(prices.quartiles.median.round() as u64)),
        Told::TooFew { .. } => None,
    };
    let sale = facts.sold;
    let brings = sale.or(facts.asking).or(usual);
    let plan = Plan { costs, materials };
    let sold: Vec<u64> = match usual {
        Some(_) => nearby
            .points
            .iter()
            .filter(|(_, _, side)| *side == Side::Sold)
            .map(|(_, price, _)| of_all(*price))
            .collect(),
        None => Vec::new(),
    };
    let at_most = |minutes: u32| {
        let costs = Costs { minutes, ..costs };
        brings.and_then(|price| highest_buying_price(&Plan { costs, ..plan }, price))
    };
    Account {
        count: piece.count,
        is_sold: sale.is_some(),
        reckoned: minutes.map(|(least, most)| Reckoning {
            minutes: (least, most),
            most: (at_most(least), at_most(most)),
        }),
        lowest: lowest_price(&costs),
        wanted: wanted_price(&costs),
        outcome: brings.and_then(|price| result(&costs, price)),
        most: brings.and_then(|price| highest_buying_price(&plan, price)),
        chance: facts.bought.and_then(|bought| chance(&plan, bought, &sold)),
        more_coats: more_coats(workshop, takeoff, (&job, coating), &costs),
        of_art: added_by_art(piece, &costs, minutes.is_some()),
        currency: match guesses.is_empty() {
            true => workshop.settings.currency,
            false => currency_of_guesses(workshop),
        },
        brings,
        costs,
        unpriced,
        guesses,
        has_wage,
        has_prices,
        nearby,
    }
}

/// Returns what one more coat of each material adds to the wanted price, wherever the material is used. The
/// time is included.
fn more_coats(
    workshop: &Workshop,
    takeoff: &Takeoff,
    (job, minutes_now): (&Job, u32),
    costs: &Costs,
) -> Vec<(String, i64)> {
    let more = |line: &crate::MaterialLine| {
        let mut job = job.clone();
        let layers = job.zones.iter_mut().flat_map(|zone| &mut zone.layers);
        for layer in layers.filter(|layer| line.need.is_of(layer) && layer.coats > 0) {
            layer.coats += 1;
        }
        let rate = rate(workshop, &line.need)?;
        let more = coatings::demands(&job, TRIALS)
            .into_iter()
            .find(|need| need.is_alike(&line.need))?;
        let used = (more.likely() - line.need.likely()).as_litres().max(0.0) * rate.for_litre;
        let with = Costs {
            materials_used: costs.materials_used + used.round() as u64,
            minutes: costs.minutes + whole_minutes(minutes(&job).value).saturating_sub(minutes_now),
            ..*costs
        };
        Some((takeoff.name_of(line), added(&with, costs)?))
    };
    let coats = takeoff
        .materials
        .iter()
        .filter(|line| line.need.material.stage != Stage::Clean);
    coats.filter_map(more).collect()
}

/// Returns what each piece of art adds to the wanted price.
fn added_by_art(piece: &Piece, costs: &Costs, minutes_are_reckoned: bool) -> Vec<(String, i64)> {
    let of = |art: Art| {
        let (sheets, minutes) = cost_and_minutes(std::slice::from_ref(&art));
        let minutes = if minutes_are_reckoned {
            whole_minutes((minutes.0 + minutes.1) / 2.0)
        } else {
            0
        };
        let without = Costs {
            materials_used: costs.materials_used.saturating_sub(sheets),
            minutes: costs.minutes.saturating_sub(minutes),
            ..*costs
        };
        let name = match art.place.as_str() {
            "" => art.kind.label().to_owned(),
            place => place.to_owned(),
        };
        Some((name, added(costs, &without)?))
    };
    let known = art(piece).into_iter().filter(|art| art.takes.is_ok());
    known.filter_map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::Earnings;
    use crate::money::Fees;
    use crate::money::WAGE;
    use crate::money::earnings;
    use crate::preparing::PrepareStep;
    use std::rc::Rc;

    use crate::samples::written_down;
    use crate::{BookEdit, Edit, MaterialEdit, PieceEdit, Price, SchemeEdit, SettingEdit, takeoff};

    fn in_currency(workshop: Workshop, code: &str) -> Workshop {
        let currency = SettingEdit::Currency(Currency::new(code).ok());
        workshop.apply(Edit::Settings(currency)).unwrap()
    }

    fn written(facts: &[(&str, &str)], habits: &[(&str, &str)], notes: &[&str]) -> Workshop {
        // With another currency nothing is guessed.
        let mut workshop = in_currency(written_down(facts, habits), "EUR");
        for (n, price) in notes.iter().enumerate() {
            let values = vec![
                ("furniture", "dresser".into()),
                ("price", (*price).into()),
                ("is", "sold".into()),
                ("day", "2026-05-03".into()),
            ];
            let add = BookEdit::Add("prices", format!("note-{n}").into(), values);
            workshop = workshop.apply(Edit::Book(add)).unwrap();
        }
        workshop
    }

    fn of(workshop: &Workshop) -> Account {
        let piece = &workshop.pieces[0];
        let work = crate::samples::work(workshop, piece).unwrap();
        account(workshop, piece, &work, Day::read("2026-06-01").unwrap())
    }

    #[test]
    fn what_is_written_down_goes_into_the_sum() {
        let habits = [
            ("hourly", "15"),
            ("fee-share", "10 %"),
            ("fee", "0.50"),
            ("wear", "1.50"),
            ("delivery", "9"),
        ];
        let facts = [
            ("bought", "20"),
            ("hours", "6 h"),
            ("delivery", "5"),
            ("asking", "120"),
        ];
        let account = of(&written(&facts, &habits, &[]));
        let by_hand = Costs {
            bought: 2000,
            wear: 150,
            delivery: 500,
            minutes: 360,
            hourly: 1500,
            profit: 0,
            fees: Fees {
                share: 1000,
                fixed: 50,
            },
            materials_used: account.costs.materials_used,
            materials_to_buy: account.costs.materials_to_buy,
        };
        assert_eq!(account.costs, by_hand);
        assert_eq!(account.brings, Some(12_000));
        assert_eq!(
            account.outcome.as_ref().map(|outcome| outcome.left),
            super::super::earned(&by_hand, 12_000)
        );
        assert_eq!(account.reckoned, None);
        assert_eq!(account.chance, None, "no prices nearby");
    }

    #[test]
    fn prices_nearby_say_what_it_brings() {
        let few = of(&written(&[("bought", "20")], &[], &["90", "100", "110"]));
        assert_eq!((few.brings, few.most), (None, None));
        let notes = ["90", "100", "110", "120", "130"];
        let account = of(&written(
            &[("bought", "20"), ("hours", "2 h")],
            &[("hourly", "20"), ("profit", "10")],
            &notes,
        ));
        assert_eq!(account.brings, Some(11_000));
        // 110 minus 40 for the work, 10 for profit and the materials.
        assert_eq!(account.most, Some(6_000 - account.costs.materials_used));
        assert_eq!(account.chance, Some(1.0));
        let dear = of(&written(&[("bought", "200")], &[], &notes));
        assert_eq!(dear.chance, Some(0.0));
    }

    /// Notes are prices of single pieces. For a pair, everything covers both.
    #[test]
    fn a_pair_brings_twice_what_is_noted_of_one() {
        let notes = ["90", "100", "110", "120", "130"];
        let one = written(
            &[("bought", "150"), ("hours", "2 h"), ("materials", "10")],
            &[],
            &notes,
        );
        let id = one.pieces[0].id.clone();
        let pair = one.apply(Edit::Piece(id, PieceEdit::Count(2))).unwrap();
        let (one, pair) = (of(&one), of(&pair));
        assert_eq!((one.count, one.brings, one.chance), (1, Some(11_000), Some(0.0)));
        assert_eq!(
            (pair.count, pair.brings, pair.chance),
            (2, Some(22_000), Some(1.0))
        );
    }

    #[test]
    fn the_price_that_pays_the_hours_pays_the_profit_too() {
        let facts = [
            ("bought", "20"),
            ("hours", "2 h"),
            ("materials", "0"),
            ("asking", "70"),
        ];
        let account = of(&written(&facts, &[("hourly", "20"), ("profit", "15")], &[]));
        // 20 paid, 40 for the work, 15 profit.
        assert_eq!(account.wanted, Some(7_500));
        assert_eq!(account.most, Some(1_500), "20 is too dear, as 70 is under 75");
    }

    #[test]
    fn a_sold_piece_is_known_as_sold() {
        assert!(!of(&written(&[("asking", "100")], &[], &[])).is_sold);
        assert!(of(&written(&[("asking", "100"), ("sold", "80")], &[], &[])).is_sold);
    }

    /// Degreasing time is part of the cleaning step, which is there with or without a degreaser.
    #[test]
    fn cleaning_is_reckoned_once() {
        let workshop = written(&[], &[], &[]);
        let id = workshop.pieces[0].id.clone();
        let add = PieceEdit::Finish(None, SchemeEdit::Add("degreaser".into()));
        let cleaned = workshop.apply(Edit::Piece(id, add)).unwrap();
        let (with, without) = (of(&cleaned), of(&workshop));
        assert_eq!(with.costs.minutes, without.costs.minutes);
        assert!(with.unpriced.len() == without.unpriced.len() + 1);
    }

    /// A quart costs 20.00, so a liter costs 20.00 / 0.946 L. More coats raise the price.
    #[test]
    fn a_material_with_a_price_is_in_the_costs() {
        let workshop = written(&[], &[], &[]);
        let line = |workshop: &Workshop| {
            let takeoff = takeoff(workshop, &workshop.pieces[0], &[]).unwrap();
            let lines = takeoff.materials.into_iter();
            lines
                .filter(|line| line.need.material.stage == coatings::Stage::Paint)
                .last()
                .unwrap()
        };
        let before = of(&workshop);
        let paint = line(&workshop);
        let place = workshop.pieces[0]
            .scheme
            .layers
            .iter()
            .position(|layer| *layer.material == *paint.need.material.key);
        let id = workshop.pieces[0].id.clone();
        let edits = [
            Edit::AddMaterial("own".into(), paint.need.material.key.to_string()),
            Edit::Material(
                "own".into(),
                MaterialEdit::Price("us-quart", Some(Price::new("20").unwrap())),
            ),
            Edit::Piece(
                id,
                PieceEdit::Finish(None, SchemeEdit::Material(place.unwrap(), "own".into())),
            ),
        ];
        let priced = edits
            .into_iter()
            .fold(workshop, |workshop, edit| workshop.apply(edit).unwrap());
        let account = of(&priced);
        let likely = line(&priced).need.likely().as_litres();
        let used = likely * 2000.0 / 0.946_352_946;
        assert!(
            (account.costs.materials_used as f64 - used).abs() <= 1.0,
            "{account:?}"
        );
        assert_eq!(account.costs.materials_to_buy, 2000);
        assert_eq!(account.unpriced.len() + 1, before.unpriced.len());
        let (name, more) = &account.more_coats[0];
        assert_eq!(account.more_coats.len(), 1);
        assert!(*more > 0 && *more < 2000, "{name} {more}");
    }

    /// By hand, in hundredths: about 10 leaves at 1.00, and their minutes at 12.00 an hour. [`crate::art`]
    /// gives each part.
    #[test]
    fn art_adds_its_sheets_and_its_minutes() {
        let workshop = written(&[], &[("hourly", "12")], &[]);
        let id = workshop.pieces[0].id.clone();
        let values = [
            ("kind", "leaf"),
            ("width", "400 mm"),
            ("height", "400 mm"),
            ("price", "1"),
        ];
        let values = crate::samples::values(&values);
        let add = PieceEdit::Book(BookEdit::Add("art", "a".into(), values));
        let with = workshop.apply(Edit::Piece(id, add)).unwrap();
        let (before, after) = (of(&workshop), of(&with));
        let takes = art(&with.pieces[0]).remove(0).takes.unwrap();
        assert_eq!(
            after.costs.materials_used - before.costs.materials_used,
            takes.price.unwrap()
        );
        let minutes = f64::from(after.costs.minutes - before.costs.minutes);
        assert!((minutes - takes.likely_minutes()).abs() <= 1.0);
        let (name, added) = &after.of_art[0];
        let expected = takes.price.unwrap() as f64 + takes.likely_minutes() * 20.0;
        assert_eq!(name, "Leaf");
        assert!((*added as f64 - expected).abs() < 25.0, "{added} {expected}");
    }

    /// Sold for 100 after paying 40, with 3 hours of work and no fees. 60 minus the materials is left, which
    /// is about 20 an hour.
    #[test]
    fn what_was_earned_stands_for_all_that_were_sold() {
        let bare = written(&[("asking", "100"), ("bought", "40"), ("hours", "3 h")], &[], &[]);
        let taken = crate::samples::works(&bare);
        let Earnings {
            each: asked,
            together: none,
        } = earnings(&bare, &taken);
        assert_eq!((asked.len(), asked[0].is_sold, none), (1, false, None));
        let sold = written(&[("sold", "100"), ("bought", "40"), ("hours", "3 h")], &[], &[]);
        let Earnings { each: all, together } = earnings(&sold, &taken);
        assert_eq!(all[0].outcome.left, 6_000);
        assert_eq!(together, Some((6_000, Some(2_000))));
    }

    #[test]
    fn what_materials_cost_in_all_goes_before_their_prices() {
        let bare = of(&written(&[], &[], &[]));
        assert_eq!((bare.costs.materials_used, bare.unpriced.len()), (0, 3));
        let guessed = of(&written(&[("materials", "35")], &[], &[]));
        let costs = guessed.costs;
        assert_eq!((costs.materials_used, costs.materials_to_buy), (3_500, 3_500));
        assert!(guessed.unpriced.is_empty());
        assert_eq!(guessed.lowest, Some(3_500));
    }

    #[test]
    fn hours_are_reckoned_until_they_are_written_down() {
        let workshop = written(&[], &[("hourly", "12")], &[]);
        let account = of(&workshop);
        let work = crate::samples::work(&workshop, &workshop.pieces[0]).unwrap();
        let reckoned = account.reckoned.unwrap();
        let preparing: f64 = work.steps.iter().map(PrepareStep::likely_minutes).sum();
        // The tool comparison and the account give the same hours, edges included.
        let coating = coatings::minutes(&work.timed_job(&workshop.pieces[0])).value;
        assert!(coating > coatings::minutes(&work.takeoff.job).value * 1.1);
        let expected = coating + preparing;
        assert!(preparing > 60.0 && (f64::from(account.costs.minutes) - expected).abs() <= 1.0);
        assert_eq!(of(&written(&[("hours", "3 h")], &[], &[])).costs.minutes, 180);
        assert!(reckoned.minutes.0 < account.costs.minutes && account.costs.minutes < reckoned.minutes.1);
        assert_eq!(reckoned.most, (None, None), "no price is known");
    }

    #[test]
    fn before_anything_is_set_up_the_wage_and_the_prices_are_guessed() {
        let bare = written_down(&[("asking", "400")], &[]);
        let dollar = Currency::new("USD").ok();
        for workshop in [bare.clone(), in_currency(bare.clone(), "USD")] {
            let account = of(&workshop);
            assert_eq!(account.guesses, [Guess::Wage, Guess::Prices]);
            assert_eq!((account.currency, account.costs.hourly), (dollar, WAGE));
            assert!(account.unpriced.is_empty() && account.most.is_some());
            assert!(account.costs.materials_used > 2_000 && !account.rests_on_nothing());
            assert!(account.more_coats.iter().all(|(_, more)| *more > 0));
        }
        let euro = of(&in_currency(bare.clone(), "EUR"));
        assert_eq!(
            (euro.guesses.len(), euro.currency),
            (0, Currency::new("EUR").ok())
        );
        assert_eq!((euro.costs.hourly, euro.costs.materials_used), (0, 0));
        assert!(euro.most.is_some() && euro.rests_on_nothing());
    }

    /// Each entry takes the place of its guess, nought as well as any other.
    #[test]
    fn an_entry_goes_before_a_guess() {
        let with = |facts, habits| of(&written_down(facts, habits));
        let free = with(&[], &[("hourly", "0")]);
        assert_eq!(
            (free.guesses, free.costs.hourly, free.has_wage),
            (vec![Guess::Prices], 0, true)
        );
        let told = with(&[("materials", "35")], &[("hourly", "30")]);
        assert_eq!((told.guesses.len(), told.currency), (0, None));
        assert_eq!((told.costs.hourly, told.costs.materials_used), (3_000, 3_500));
        let mut workshop = written_down(&[("materials", "35")], &[]);
        let of_wage = of(&workshop);
        assert_eq!(of_wage.guesses, [Guess::Wage]);
        // One price of each material, and no price is a guess any more.
        let keys: Vec<_> = workshop.pieces[0]
            .schemes()
            .flat_map(|of| &of.layers)
            .map(|of| Rc::clone(&of.material))
            .collect();
        let none = BookEdit::Write("facts", "only".into(), "materials".into(), "".into());
        workshop = workshop
            .apply(Edit::Piece(workshop.pieces[0].id.clone(), PieceEdit::Book(none)))
            .unwrap();
        for key in keys {
            let price = MaterialEdit::Price("us-quart", Price::new("20").ok());
            workshop = workshop.apply(Edit::Material(key, price)).unwrap();
        }
        assert_eq!(of(&workshop).guesses, [Guess::Wage]);
    }

    /// Each additional hour lowers the most to pay by its cost.
    #[test]
    fn the_most_to_pay_falls_with_the_hours() {
        let account = of(&written(&[("asking", "500")], &[("hourly", "12")], &[]));
        let Reckoning { minutes, most } = account.reckoned.unwrap();
        let worth = u64::from(minutes.1 - minutes.0) * 1_200 / 60;
        let (quick, slow) = (most.0.unwrap(), most.1.unwrap());
        assert!((quick - slow).abs_diff(worth) <= 1, "{most:?} {minutes:?}");
        assert!(slow < account.most.unwrap() && account.most.unwrap() < quick);
    }

    /// 60.00 in three hours is 20.00 an hour, and in five hours 12.00. A loss per hour is larger when the
    /// work is faster.
    #[test]
    fn the_least_for_an_hour_stands_first() {
        let reckoning = Reckoning {
            minutes: (180, 300),
            most: (None, None),
        };
        assert_eq!(reckoning.per_hour(6_000), (1_200, 2_000));
        assert_eq!(reckoning.per_hour(-6_000), (-2_000, -1_200));
    }
}
