//! The analysis of a workshop: takeoffs, cans to buy, ways of doing it, preparing, days and money.
//!
//! [`Analysis`] is the one place that works them out. Each is worked out when it is first asked for, from the slice of the
//! document that it reads, and is kept as long as that slice is the same. Screens, the command line and scripts only ask.

mod kept;
mod slice;
#[cfg(test)]
mod tests;

use std::cell::RefCell;
use std::fmt;
use std::rc::Rc;

use coatings::can::ChoiceError;
use geometry::{Edges, Problem};
use timetable::Moment;
use units::{Day, SortedMap};

use crate::book::{ArtLine, CanPrice, DoneStep, Facts, Habits, PriceNote, ShelfCan, Supply, Weighing};
use crate::days::{Days, WEEK, days};
use crate::document::{Piece, PieceId, Workshop};
use crate::goods::{Good, goods};
use crate::learning::{Lesson, lessons};
use crate::money::{Account, Earnings, account, earnings};
use crate::preparing::{LEAD_KEY, PrepareStep, prepare};
use crate::stores::{Store, stores};
use crate::takeoff::{
    Buy, Shopping, Takeoff, WayColumn, bought_for, cans_to_buy, coated, compare, edges_by_zone, shopping,
    takeoff_with,
};
use crate::work::Work;
use kept::{Asked, Kept};
use slice::{OfPiece, OfWorkshop};

/// What a result of a piece is read from.
type Slice = (Workshop, Piece);

/// The results of one piece.
#[derive(Default)]
struct PieceResults {
    takeoff: Kept<Slice, (), Result<Rc<Takeoff>, Vec<Problem>>>,
    edges: Kept<Slice, (), Vec<(String, Edges)>>,
    cans: Kept<Slice, (), Vec<Result<Buy, ChoiceError>>>,
    ways: Kept<Slice, (), Vec<WayColumn>>,
    preparing: Kept<Slice, (), Vec<PrepareStep>>,
    account: Kept<Slice, Day, Option<Account>>,
}

/// The results of all pieces together.
#[derive(Default)]
struct AllResults {
    lessons: Kept<Workshop, (), Vec<Lesson>>,
    shopping: Kept<Workshop, Vec<PieceId>, Vec<Shopping>>,
    goods: Kept<Workshop, Vec<PieceId>, Vec<Good>>,
    coated: Kept<Workshop, Vec<PieceId>, Vec<(String, String)>>,
    stores: Kept<Workshop, (), Vec<Store>>,
    earnings: Kept<Workshop, (), Earnings>,
    days: Kept<Workshop, Moment, Days>,
}

#[derive(Default)]
struct Results {
    pieces: RefCell<SortedMap<PieceId, Rc<PieceResults>>>,
    all: AllResults,
}

/// All that follows from a workshop.
#[derive(Clone, Default)]
pub struct Analysis {
    workshop: Rc<Workshop>,
    results: Rc<Results>,
}

impl PartialEq for Analysis {
    /// Whether both are of the same document; what was worked out so far makes no difference.
    fn eq(&self, other: &Self) -> bool {
        self.workshop == other.workshop
    }
}

impl fmt::Debug for Analysis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Analysis").finish_non_exhaustive()
    }
}

impl Analysis {
    /// The analysis of a workshop, of which nothing is worked out yet.
    pub fn of(workshop: Rc<Workshop>) -> Self {
        Analysis {
            workshop,
            results: Rc::default(),
        }
    }

    /// The analysis of the workshop after a change. What the change does not touch is not worked out again.
    #[must_use]
    pub fn after(&self, workshop: Rc<Workshop>) -> Self {
        let mut pieces = self.results.pieces.borrow_mut();
        if pieces.len() > workshop.pieces.len() {
            pieces.retain(|id, _| workshop.piece(id).is_some());
        }
        Analysis {
            workshop,
            results: Rc::clone(&self.results),
        }
    }

    /// The workshop that it is of.
    pub fn workshop(&self) -> &Rc<Workshop> {
        &self.workshop
    }

    /// The takeoff of a piece, or what does not fit about its measurements.
    pub fn takeoff(&self, piece: &Rc<Piece>) -> Rc<Result<Rc<Takeoff>, Vec<Problem>>> {
        let lessons = self.lessons();
        self.of_piece(piece).takeoff.get(
            self.asked(piece),
            |of| {
                (
                    for_takeoff(&of.workshop).done(),
                    OfPiece::shape(piece).finish().done(),
                )
            },
            |(workshop, piece), ()| takeoff_with(workshop, piece, &lessons).map(Rc::new),
        )
    }

    /// What weighed jobs teach.
    pub fn lessons(&self) -> Rc<Vec<Lesson>> {
        let work_out = |of: &Workshop, (): &()| lessons(of);
        let kept = &self.results.all.lessons;
        kept.get(
            self.asked_of_all(()),
            |of| for_takeoff(&of.workshop).done(),
            work_out,
        )
    }

    /// The lengths of edges of one piece, by zone; none if its measurements do not fit.
    pub fn edges(&self, piece: &Rc<Piece>) -> Rc<Vec<(String, Edges)>> {
        self.of_piece(piece).edges.get(
            self.asked(piece),
            |_| (Workshop::default(), OfPiece::shape(piece).done()),
            |(_, piece), ()| edges_by_zone(piece).unwrap_or_default(),
        )
    }

    /// Which cans to buy of each material of the takeoff of a piece, in its order.
    pub fn cans(&self, piece: &Rc<Piece>) -> Rc<Vec<Result<Buy, ChoiceError>>> {
        let takeoff = self.takeoff(piece);
        self.of_piece(piece).cans.get(
            self.asked(piece),
            |of| {
                let workshop = for_cans(for_takeoff(&of.workshop)).done();
                (workshop, OfPiece::shape(piece).finish().done())
            },
            |(workshop, _), ()| {
                let lines = takeoff.iter().flat_map(|takeoff| &takeoff.materials);
                lines.map(|line| cans_to_buy(workshop, line)).collect()
            },
        )
    }

    /// The piece done with a brush, a roller or a sprayer.
    pub fn ways(&self, piece: &Rc<Piece>) -> Rc<Vec<WayColumn>> {
        let (takeoff, edges) = (self.takeoff(piece), self.edges(piece));
        self.of_piece(piece).ways.get(
            self.asked(piece),
            |of| {
                let of = for_cans(for_takeoff(&of.workshop)).fields::<Habits>(&["sprayer"]);
                (of.done(), OfPiece::shape(piece).finish().done())
            },
            |(workshop, piece), ()| match &*takeoff {
                Ok(takeoff) => compare(workshop, piece, takeoff, &edges),
                Err(_) => Vec::new(),
            },
        )
    }

    /// The steps of preparing a piece.
    pub fn preparing(&self, piece: &Rc<Piece>) -> Rc<Vec<PrepareStep>> {
        let (takeoff, edges) = (self.takeoff(piece), self.edges(piece));
        self.of_piece(piece).preparing.get(
            self.asked(piece),
            |of| {
                let of = for_takeoff(&of.workshop).fields::<Habits>(&PREPARING);
                let of_piece = OfPiece::shape(piece).finish().fields::<Facts>(&FOUND);
                (of.done(), of_piece.line::<DoneStep>(LEAD_KEY).done())
            },
            |(workshop, piece), ()| match &*takeoff {
                Ok(takeoff) => prepare(workshop, piece, takeoff, &edges),
                Err(_) => Vec::new(),
            },
        )
    }

    /// The account of a piece; nothing while its measurements do not fit. `today` says how long pieces have been for sale that
    /// are not gone.
    pub fn account(&self, piece: &Rc<Piece>, today: Day) -> Rc<Option<Account>> {
        let work = self.work(piece);
        let asked = Asked {
            workshop: Rc::clone(&self.workshop),
            piece: Some(Rc::clone(piece)),
            besides: today,
        };
        self.of_piece(piece).account.get(
            asked,
            |of| {
                let of = for_cans(for_takeoff(&of.workshop)).book::<PriceNote>();
                let of = of.fields::<Habits>(&PREPARING).fields::<Habits>(&MONEY);
                let of_piece = OfPiece::shape(piece).finish().fields::<Facts>(&FOUND);
                let of_piece = of_piece.fields::<Facts>(&EARNED).book::<ArtLine>();
                (of.done(), of_piece.line::<DoneStep>(LEAD_KEY).done())
            },
            |(workshop, piece), today| {
                let work = work.as_ref()?;
                Some(account(workshop, piece, work, *today))
            },
        )
    }

    fn work(&self, piece: &Rc<Piece>) -> Option<Work> {
        let takeoff = self.takeoff(piece);
        Some(Work {
            takeoff: Rc::clone(takeoff.as_ref().as_ref().ok()?),
            edges: self.edges(piece),
            steps: self.preparing(piece),
        })
    }

    /// The work on every piece but those left out, in their order; nothing for one whose measurements do not fit.
    fn works(&self, left_out: &[PieceId]) -> Vec<Option<Work>> {
        let of = |piece: &Rc<Piece>| match left_out.contains(&piece.id) {
            true => None,
            false => self.work(piece),
        };
        self.workshop.pieces.iter().map(of).collect()
    }

    /// The takeoff of every piece, in their order; nothing for one whose measurements do not fit.
    pub fn takeoffs(&self) -> Vec<Option<Rc<Takeoff>>> {
        let of = |piece: &Rc<Piece>| self.takeoff(piece).as_ref().as_ref().ok().cloned();
        self.workshop.pieces.iter().map(of).collect()
    }

    /// What to buy for all pieces together but those left out.
    pub fn shopping(&self, left_out: &[PieceId]) -> Rc<Vec<Shopping>> {
        let work_out = |of: &Workshop, left_out: &Vec<PieceId>| shopping(of, &self.wanted(left_out));
        let kept = &self.results.all.shopping;
        kept.get(self.asked_of_all(left_out.to_vec()), for_shopping, work_out)
    }

    /// What preparing and art take besides cans, of all pieces but those left out.
    pub fn goods(&self, left_out: &[PieceId]) -> Rc<Vec<Good>> {
        let work_out = |of: &Workshop, left_out: &Vec<PieceId>| goods(of, &self.works(left_out));
        let kept = &self.results.all.goods;
        kept.get(self.asked_of_all(left_out.to_vec()), for_goods, work_out)
    }

    /// The materials that have all their coats, with the names of their pieces; without the pieces left out.
    pub fn coated(&self, left_out: &[PieceId]) -> Rc<Vec<(String, String)>> {
        let work_out = |of: &Workshop, left_out: &Vec<PieceId>| coated(of, &self.wanted(left_out));
        let kept = &self.results.all.coated;
        kept.get(self.asked_of_all(left_out.to_vec()), for_coated, work_out)
    }

    /// The supplies besides cans, and what all pieces take of them.
    pub fn stores(&self) -> Rc<Vec<Store>> {
        let work_out = |of: &Workshop, (): &()| stores(of, &self.works(&[]));
        self.results
            .all
            .stores
            .get(self.asked_of_all(()), for_goods, work_out)
    }

    /// What every piece with a price earns, and all that were sold.
    pub fn earnings(&self) -> Rc<Earnings> {
        let work_out = |of: &Workshop, (): &()| earnings(of, &self.works(&[]));
        let kept = &self.results.all.earnings;
        kept.get(self.asked_of_all(()), for_earnings, work_out)
    }

    /// The work on all pieces from this moment on.
    pub fn days(&self, from: Moment) -> Rc<Days> {
        let work_out = |of: &Workshop, from: &Moment| days(of, &self.works(&[]), *from);
        self.results
            .all
            .days
            .get(self.asked_of_all(from), for_days, work_out)
    }

    fn wanted(&self, left_out: &[PieceId]) -> Vec<Option<Rc<Takeoff>>> {
        bought_for(&self.workshop, self.takeoffs(), left_out)
    }

    fn of_piece(&self, piece: &Piece) -> Rc<PieceResults> {
        let mut pieces = self.results.pieces.borrow_mut();
        if let Some(known) = pieces.get(&piece.id) {
            return Rc::clone(known);
        }
        let results = Rc::new(PieceResults::default());
        pieces.insert(piece.id.clone(), Rc::clone(&results));
        results
    }

    fn asked(&self, piece: &Rc<Piece>) -> Asked<()> {
        Asked {
            workshop: Rc::clone(&self.workshop),
            piece: Some(Rc::clone(piece)),
            besides: (),
        }
    }

    fn asked_of_all<B>(&self, besides: B) -> Asked<B> {
        Asked {
            workshop: Rc::clone(&self.workshop),
            piece: None,
            besides,
        }
    }
}

/// What a list of cans for all pieces reads.
fn for_shopping<B>(asked: &Asked<B>) -> Workshop {
    let of = for_cans(for_takeoff(&asked.workshop));
    of.pieces(|piece| OfPiece::shape(piece).finish().name().book::<DoneStep>())
}

/// What the list of all else reads.
fn for_goods<B>(asked: &Asked<B>) -> Workshop {
    let of = for_takeoff(&asked.workshop)
        .fields::<Habits>(&PREPARING)
        .book::<Supply>();
    of.pieces(|piece| {
        let of = OfPiece::shape(piece).finish().name().fields::<Facts>(&FOUND);
        of.book::<ArtLine>().book::<DoneStep>()
    })
}

/// What is read of which materials have their coats.
fn for_coated<B>(asked: &Asked<B>) -> Workshop {
    let of = for_takeoff(&asked.workshop);
    of.pieces(|piece| OfPiece::shape(piece).finish().name().book::<DoneStep>())
}

/// What the earnings of all pieces read.
fn for_earnings<B>(asked: &Asked<B>) -> Workshop {
    let of = for_cans(for_takeoff(&asked.workshop)).fields::<Habits>(&PREPARING);
    of.fields::<Habits>(&MONEY).pieces(|piece| {
        let of = OfPiece::shape(piece).finish().name().fields::<Facts>(&FOUND);
        let of = of.fields::<Facts>(&EARNED).book::<ArtLine>();
        of.line::<DoneStep>(LEAD_KEY)
    })
}

/// What the days of all pieces read.
fn for_days<B>(asked: &Asked<B>) -> Workshop {
    let of = for_takeoff(&asked.workshop).fields::<Habits>(&PREPARING);
    of.fields::<Habits>(&WEEK).fields::<Habits>(&AIR).pieces(|piece| {
        let of = OfPiece::shape(piece).finish().name().fields::<Facts>(&FOUND);
        of.fields::<Facts>(&PLANNED).book::<DoneStep>()
    })
}

/// What a takeoff reads of a workshop.
fn for_takeoff(workshop: &Workshop) -> OfWorkshop<'_> {
    let of = OfWorkshop::of(workshop).materials().confidence();
    of.book::<Weighing>().fields::<Habits>(&["scale-step"])
}

/// What the choice of cans reads besides.
fn for_cans(of: OfWorkshop<'_>) -> OfWorkshop<'_> {
    of.units().book::<ShelfCan>().book::<CanPrice>()
}

/// What preparing reads of the facts of a piece.
const FOUND: [&str; 13] = [
    "age",
    "lead",
    "stickers",
    "loose",
    "loose-joints",
    "rust",
    "hardware",
    "holes",
    "hole-width",
    "hole-depth",
    "dents",
    "dent-width",
    "dent-depth",
];

/// What the account reads of the facts of a piece.
const EARNED: [&str; 6] = ["bought", "asking", "sold", "hours", "materials", "delivery"];

/// What the days read of the facts of a piece.
const PLANNED: [&str; 3] = ["begin", "due", "sold-on"];

/// The air that was measured.
const AIR: [&str; 3] = ["temperature", "surface", "humidity"];

/// What preparing reads of the habits of a maker.
const PREPARING: [&str; 2] = ["sheet-yield", "dilution"];

/// What the account reads of the habits of a maker.
const MONEY: [&str; 6] = ["hourly", "profit", "fee-share", "fee", "wear", "delivery"];
