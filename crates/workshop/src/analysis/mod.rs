//! The analysis of a workshop: takeoffs, cans to buy, tools, preparation, schedule and money.
//!
//! [`Analysis`] is the only place that calculates them. It calculates each result when it is first needed,
//! from the slice of the document that the result reads, and keeps it until that slice changes. Screens, the
//! command line and scripts only ask for results.

mod kept;
pub mod reads;
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

use crate::book::{DoneStep, Record};
use crate::days::{Days, days, step_keys};
use crate::document::{Piece, PieceId, Workshop};
use crate::goods::{Good, goods};
use crate::learning::{Lesson, lessons};
use crate::money::{Account, Earnings, account, earnings};
use crate::preparing::{LEAD_KEY, PrepareStep, prepare};
use crate::status::Status;
use crate::status::left_out;
use crate::stores::{Store, stores};
use crate::takeoff::{
    Buy, Shopping, Takeoff, WayColumn, bought_for, cans_to_buy, coated, compare, edges_by_zone, shopping,
    takeoff,
};
use crate::work::Work;
use kept::{Asked, Besides, Kept, Slice};
use reads::{CANS, COATED, DAYS, EARNINGS, GOODS, JOB, MONEY, PREPARING, SHOPPING, STORES, TOOLS};
use slice::{OfPiece, OfWorkshop};

/// The results of one piece.
#[derive(Default)]
struct PieceResults {
    takeoff: Kept<Result<Rc<Takeoff>, Vec<Problem>>>,
    edges: Kept<Vec<(String, Edges)>>,
    cans: Kept<Vec<Result<Buy, ChoiceError>>>,
    ways: Kept<Vec<WayColumn>>,
    preparing: Kept<Vec<PrepareStep>>,
    account: Kept<Option<Account>>,
}

/// The results of all pieces together.
#[derive(Default)]
struct AllResults {
    lessons: Kept<Vec<Lesson>>,
    shopping: Kept<Vec<Shopping>>,
    goods: Kept<Vec<Good>>,
    coated: Kept<Vec<(String, String)>>,
    stores: Kept<Vec<Store>>,
    earnings: Kept<Earnings>,
    days: Kept<Days>,
}

#[derive(Default)]
struct Results {
    pieces: RefCell<SortedMap<PieceId, Rc<PieceResults>>>,
    all: AllResults,
}

/// All results of a workshop.
#[derive(Clone, Default)]
pub struct Analysis {
    workshop: Rc<Workshop>,
    results: Rc<Results>,
}

impl PartialEq for Analysis {
    /// Compares the documents. Results calculated so far make no difference.
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
    /// Creates the analysis of a workshop, without results.
    pub fn of(workshop: Rc<Workshop>) -> Self {
        Analysis {
            workshop,
            results: Rc::default(),
        }
    }

    /// Returns the analysis after a change. Results that the change does not affect are kept.
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

    /// Returns the workshop.
    pub fn workshop(&self) -> &Rc<Workshop> {
        &self.workshop
    }

    /// Returns the takeoff of a piece, or the problems with its measurements.
    pub fn takeoff(&self, piece: &Rc<Piece>) -> Rc<Result<Rc<Takeoff>, Vec<Problem>>> {
        let lessons = self.lessons();
        let layers = || piece.schemes().flat_map(|scheme| &scheme.layers);
        let takes = |material: &str| layers().any(|layer| *layer.material == *material);
        let slice = |of: &Asked| {
            let workshop = for_takeoff(&of.workshop).shelf(takes);
            of_piece(workshop, OfPiece::shape(piece).finish())
        };
        let kept = self.of_piece(piece);
        kept.takeoff
            .get(self.asked(piece, Besides::Nothing), &slice, |of| {
                let piece = of.piece.as_ref().unwrap_or(piece);
                takeoff(&of.workshop, piece, &lessons).map(Rc::new)
            })
    }

    /// Returns the rates learned from weighed jobs.
    pub fn lessons(&self) -> Rc<Vec<Lesson>> {
        let slice = |of: &Asked| of_all(for_takeoff(&of.workshop).done());
        let kept = &self.results.all.lessons;
        kept.get(self.asked_of_all(Besides::Nothing), &slice, |of| {
            lessons(&of.workshop)
        })
    }

    /// Returns the edge lengths of one piece, by zone. Empty if its measurements do not fit.
    pub fn edges(&self, piece: &Rc<Piece>) -> Rc<Vec<(String, Edges)>> {
        let slice = |of: &Asked| of_piece(OfWorkshop::of(&of.workshop), OfPiece::shape(piece));
        let kept = self.of_piece(piece);
        kept.edges.get(self.asked(piece, Besides::Nothing), &slice, |of| {
            let piece = of.piece.as_ref().unwrap_or(piece);
            edges_by_zone(piece).unwrap_or_default()
        })
    }

    /// Returns the cans to buy of each material, in the order of the takeoff.
    pub fn cans(&self, piece: &Rc<Piece>) -> Rc<Vec<Result<Buy, ChoiceError>>> {
        let takeoff = self.takeoff(piece);
        let slice = |of: &Asked| {
            let workshop = for_cans(for_takeoff(&of.workshop));
            of_piece(workshop, OfPiece::shape(piece).finish())
        };
        let kept = self.of_piece(piece);
        kept.cans.get(self.asked(piece, Besides::Nothing), &slice, |of| {
            let lines = takeoff.iter().flat_map(|takeoff| &takeoff.materials);
            lines.map(|line| cans_to_buy(&of.workshop, line)).collect()
        })
    }

    /// Returns the piece done with a brush, a roller or a sprayer.
    pub fn ways(&self, piece: &Rc<Piece>) -> Rc<Vec<WayColumn>> {
        let (takeoff, edges) = (self.takeoff(piece), self.edges(piece));
        let slice = |of: &Asked| {
            let workshop = for_cans(for_takeoff(&of.workshop)).reads(&TOOLS);
            of_piece(workshop, OfPiece::shape(piece).finish())
        };
        let kept = self.of_piece(piece);
        kept.ways.get(
            self.asked(piece, Besides::Nothing),
            &slice,
            |of| match &*takeoff {
                Ok(takeoff) => {
                    let piece = of.piece.as_ref().unwrap_or(piece);
                    compare(&of.workshop, piece, takeoff, &edges)
                }
                Err(_) => Vec::new(),
            },
        )
    }

    /// Returns the preparation steps of a piece.
    pub fn preparing(&self, piece: &Rc<Piece>) -> Rc<Vec<PrepareStep>> {
        let (takeoff, edges) = (self.takeoff(piece), self.edges(piece));
        let slice = |of: &Asked| {
            let workshop = for_takeoff(&of.workshop).reads(&PREPARING);
            let found = OfPiece::shape(piece).finish().reads(&PREPARING);
            of_piece(workshop, found.line::<DoneStep>(LEAD_KEY))
        };
        let kept = self.of_piece(piece);
        kept.preparing.get(
            self.asked(piece, Besides::Nothing),
            &slice,
            |of| match &*takeoff {
                Ok(takeoff) => {
                    let piece = of.piece.as_ref().unwrap_or(piece);
                    prepare(&of.workshop, piece, takeoff, &edges)
                }
                Err(_) => Vec::new(),
            },
        )
    }

    /// Returns the account of a piece, or `None` if its measurements do not fit. Times on the market are
    /// counted up to `today`.
    pub fn account(&self, piece: &Rc<Piece>, today: Day) -> Rc<Option<Account>> {
        let work = self.work(piece);
        let slice = |of: &Asked| {
            let workshop = for_cans(for_takeoff(&of.workshop)).currency().reads(&MONEY);
            let found = OfPiece::shape(piece).finish().reads(&MONEY);
            of_piece(workshop, found.line::<DoneStep>(LEAD_KEY))
        };
        let kept = self.of_piece(piece);
        kept.account
            .get(self.asked(piece, Besides::Today(today)), &slice, |of| {
                let piece = of.piece.as_ref().unwrap_or(piece);
                Some(account(&of.workshop, piece, work.as_ref()?, today))
            })
    }

    fn work(&self, piece: &Rc<Piece>) -> Option<Work> {
        let takeoff = self.takeoff(piece);
        Some(Work {
            takeoff: Rc::clone(takeoff.as_ref().as_ref().ok()?),
            edges: self.edges(piece),
            steps: self.preparing(piece),
        })
    }

    /// Returns how many steps of a piece are checked off. Steps that the piece no longer has do not count,
    /// unless its measurements do not fit.
    pub fn checked_off(&self, piece: &Rc<Piece>) -> usize {
        let done = piece.books.lines(DoneStep::BOOK);
        if done.is_empty() {
            return 0;
        }
        let Some(work) = self.work(piece) else {
            return done.len();
        };
        let keys = step_keys(&work);
        keys.iter().filter(|key| piece.books.has::<DoneStep>(key)).count()
    }

    /// Returns the work on every piece, in order, with `None` for those left out or with measurements that do
    /// not fit.
    fn works(&self, left_out: &[PieceId]) -> Vec<Option<Work>> {
        let of = |piece: &Rc<Piece>| match left_out.contains(&piece.id) {
            true => None,
            false => self.work(piece),
        };
        self.workshop.pieces.iter().map(of).collect()
    }

    /// Returns the takeoff of every piece, in order, with `None` for those with measurements that do not fit.
    pub fn takeoffs(&self) -> Vec<Option<Rc<Takeoff>>> {
        let of = |piece: &Rc<Piece>| self.takeoff(piece).as_ref().as_ref().ok().cloned();
        self.workshop.pieces.iter().map(of).collect()
    }

    /// Returns the shopping list for all pieces except those left out.
    pub fn shopping(&self, left_out: &[PieceId]) -> Rc<Vec<Shopping>> {
        let kept = &self.results.all.shopping;
        kept.get(self.asked_without(left_out), &for_shopping, |of| {
            shopping(&of.workshop, &self.wanted(left_out))
        })
    }

    /// Returns the supplies besides cans for all pieces except those left out.
    pub fn goods(&self, left_out: &[PieceId]) -> Rc<Vec<Good>> {
        let kept = &self.results.all.goods;
        kept.get(self.asked_without(left_out), &for_goods, |of| {
            goods(&of.workshop, &self.works(left_out))
        })
    }

    /// Returns the materials that have all their coats, with the names of their pieces, except those left
    /// out.
    pub fn coated(&self, left_out: &[PieceId]) -> Rc<Vec<(String, String)>> {
        let kept = &self.results.all.coated;
        kept.get(self.asked_without(left_out), &for_coated, |of| {
            coated(&of.workshop, &self.wanted(left_out))
        })
    }

    /// Returns the supplies on hand besides cans, and the need of all pieces with work ahead.
    pub fn stores(&self) -> Rc<Vec<Store>> {
        let kept = &self.results.all.stores;
        kept.get(self.asked_of_all(Besides::Nothing), &for_stores, |of| {
            stores(&of.workshop, &self.works(&left_out(&of.workshop, None)))
        })
    }

    /// Returns the earnings of every piece with a price, and of all sold ones.
    pub fn earnings(&self) -> Rc<Earnings> {
        let kept = &self.results.all.earnings;
        kept.get(self.asked_of_all(Besides::Nothing), &for_earnings, |of| {
            earnings(&of.workshop, &self.works(&[]))
        })
    }

    /// Returns the schedule for the pieces with work ahead and for the open one, from this moment.
    pub fn days(&self, from: Moment, open: Option<&PieceId>) -> Rc<Days> {
        let kept = &self.results.all.days;
        let asked = self.asked_of_all(Besides::Now(from, open.cloned()));
        kept.get(asked, &for_days, |of| {
            let is_sold = |id: &&PieceId| {
                let piece = of.workshop.piece(id);
                piece.is_some_and(|piece| piece.status() == Status::Sold)
            };
            let off = left_out(&of.workshop, open.filter(|id| !is_sold(id)));
            days(&of.workshop, &self.works(&off), from)
        })
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

    fn asked(&self, piece: &Rc<Piece>, besides: Besides) -> Asked {
        Asked {
            workshop: Rc::clone(&self.workshop),
            piece: Some(Rc::clone(piece)),
            besides,
        }
    }

    fn asked_of_all(&self, besides: Besides) -> Asked {
        Asked {
            workshop: Rc::clone(&self.workshop),
            piece: None,
            besides,
        }
    }

    fn asked_without(&self, left_out: &[PieceId]) -> Asked {
        self.asked_of_all(Besides::LeftOut(left_out.to_vec()))
    }
}

fn of_piece(workshop: OfWorkshop<'_>, piece: OfPiece<'_>) -> Slice {
    Slice {
        workshop: workshop.done(),
        piece: Some(piece.done()),
    }
}

fn of_all(workshop: Workshop) -> Slice {
    Slice {
        workshop,
        piece: None,
    }
}

/// The slice for the cans of all pieces.
fn for_shopping(asked: &Asked) -> Slice {
    let of = for_cans(for_takeoff(&asked.workshop));
    of_all(of.pieces(|piece| OfPiece::shape(piece).finish().name().reads(&SHOPPING)))
}

/// The slice for supplies besides cans.
fn for_goods(asked: &Asked) -> Slice {
    let of = for_takeoff(&asked.workshop).reads(&GOODS);
    of_all(of.pieces(|piece| OfPiece::shape(piece).finish().name().reads(&GOODS)))
}

/// The slice for the supplies on hand.
fn for_stores(asked: &Asked) -> Slice {
    let of = for_takeoff(&asked.workshop).reads(&STORES);
    of_all(of.pieces(|piece| OfPiece::shape(piece).finish().name().reads(&STORES)))
}

/// The slice for materials that have their coats.
fn for_coated(asked: &Asked) -> Slice {
    let of = for_takeoff(&asked.workshop);
    of_all(of.pieces(|piece| OfPiece::shape(piece).finish().name().reads(&COATED)))
}

/// The slice for the earnings of all pieces.
fn for_earnings(asked: &Asked) -> Slice {
    let of = for_cans(for_takeoff(&asked.workshop)).currency().reads(&EARNINGS);
    of_all(of.pieces(|piece| {
        let of = OfPiece::shape(piece).finish().name().reads(&EARNINGS);
        of.line::<DoneStep>(LEAD_KEY)
    }))
}

/// The slice for the schedule.
fn for_days(asked: &Asked) -> Slice {
    let of = for_takeoff(&asked.workshop).reads(&DAYS);
    of_all(of.pieces(|piece| OfPiece::shape(piece).finish().name().reads(&DAYS)))
}

/// The workshop slice for a takeoff.
fn for_takeoff(workshop: &Workshop) -> OfWorkshop<'_> {
    OfWorkshop::of(workshop).materials().confidence().reads(&JOB)
}

/// Adds the data for choosing cans.
fn for_cans(of: OfWorkshop<'_>) -> OfWorkshop<'_> {
    of.units().shelf(|_| true).reads(&CANS)
}
