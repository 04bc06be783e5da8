//! The work on a piece: its takeoff, its edges and the steps of preparing it, each worked out once.

use std::rc::Rc;

use coatings::Job;
use geometry::{Edges, Problem};

use crate::document::{Piece, Workshop};
use crate::preparing::{PrepareStep, prepare};
use crate::takeoff::{Takeoff, cut_in, edges_by_zone, takeoff_in};

/// The takeoff of a piece, with what takes longer to work out.
#[derive(Clone, Debug)]
pub struct Work {
    /// The takeoff.
    pub takeoff: Rc<Takeoff>,
    /// The lengths of edges of one piece, by zone.
    pub edges: Rc<Vec<(String, Edges)>>,
    /// The steps of preparing it.
    pub steps: Rc<Vec<PrepareStep>>,
}

impl Work {
    /// The work on a piece of a workshop.
    ///
    /// # Errors
    /// Every measurement that is out of its limits or does not fit beside the others.
    pub fn of(workshop: &Workshop, piece: &Piece) -> Result<Self, Vec<Problem>> {
        let takeoff = takeoff_in(workshop, piece)?;
        let edges = edges_by_zone(piece)?;
        Ok(Work {
            steps: Rc::new(prepare(workshop, piece, &takeoff, &edges)),
            takeoff: Rc::new(takeoff),
            edges: Rc::new(edges),
        })
    }

    /// The job of the takeoff with its edges: the minutes depend on them, the amounts do not.
    pub fn timed_job(&self, piece: &Piece) -> Job {
        let mut job = self.takeoff.job.clone();
        cut_in(&mut job, piece, &self.edges);
        job
    }
}

/// The work on every piece, in their order; nothing for one whose measurements do not fit.
pub fn works(workshop: &Workshop) -> Vec<Option<Work>> {
    let of = |piece: &Rc<Piece>| Work::of(workshop, piece).ok();
    workshop.pieces.iter().map(of).collect()
}
