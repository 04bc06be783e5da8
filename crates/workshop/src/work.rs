//! The work on a piece: its takeoff, edges and preparation steps, each computed once.

use std::rc::Rc;

use coatings::Job;
use geometry::Edges;

use crate::document::Piece;
use crate::preparing::PrepareStep;
use crate::takeoff::{Takeoff, cut_in};

/// The takeoff of a piece, and the parts that take longer to compute.
#[derive(Clone, Debug)]
pub(crate) struct Work {
    /// The takeoff.
    pub(crate) takeoff: Rc<Takeoff>,
    /// The edge lengths of one piece, by zone.
    pub(crate) edges: Rc<Vec<(String, Edges)>>,
    /// The preparation steps.
    pub(crate) steps: Rc<Vec<PrepareStep>>,
}

impl Work {
    /// Returns the job with its edges, which affect the time but not the amounts.
    pub(crate) fn timed_job(&self, piece: &Piece) -> Job {
        let mut job = self.takeoff.job.clone();
        cut_in(&mut job, piece, &self.edges);
        job
    }
}
