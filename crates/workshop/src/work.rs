//! The work on a piece: its takeoff, edges and preparation steps, each computed once.

use std::rc::Rc;

use coatings::Job;
use geometry::{Edges, Problem};

use crate::document::{Piece, Workshop};
use crate::preparing::{PrepareStep, prepare};
use crate::takeoff::{Takeoff, cut_in, edges_by_zone, takeoff_in};

/// The takeoff of a piece, and the parts that take longer to compute.
#[derive(Clone, Debug)]
pub struct Work {
    /// The takeoff.
    pub takeoff: Rc<Takeoff>,
    /// The edge lengths of one piece, by zone.
    pub edges: Rc<Vec<(String, Edges)>>,
    /// The preparation steps.
    pub steps: Rc<Vec<PrepareStep>>,
}

impl Work {
    /// Computes the work on a piece.
    ///
    /// # Errors
    /// Every measurement that is out of range or does not fit the others.
    pub fn of(workshop: &Workshop, piece: &Piece) -> Result<Self, Vec<Problem>> {
        let takeoff = takeoff_in(workshop, piece)?;
        let edges = edges_by_zone(piece)?;
        Ok(Work {
            steps: Rc::new(prepare(workshop, piece, &takeoff, &edges)),
            takeoff: Rc::new(takeoff),
            edges: Rc::new(edges),
        })
    }

    /// Returns the job with its edges, which affect the time but not the amounts.
    pub fn timed_job(&self, piece: &Piece) -> Job {
        let mut job = self.takeoff.job.clone();
        cut_in(&mut job, piece, &self.edges);
        job
    }
}

/// Returns the work on every piece, in order, with `None` for pieces whose measurements do not fit.
pub fn works(workshop: &Workshop) -> Vec<Option<Work>> {
    let of = |piece: &Rc<Piece>| Work::of(workshop, piece).ok();
    workshop.pieces.iter().map(of).collect()
}
