//! A job taken through its trials: every input drawn once, for all that is asked of them.

use std::rc::Rc;

use crate::job::Job;
use crate::model::{Lot, Model, Part};
use crate::propagate::{Input, draw};

/// So many trials are worked out at a time: their columns stay in the processor's cache.
const BLOCK: usize = 2_048;

/// A job with the draws of its inputs. What it needs and whether cans are enough are found from the same draws, so
/// they are drawn once for all of these questions.
///
/// # Example
/// ```
/// use coatings::{Job, TRIALS, Trials, needs};
/// let job = Job { name: "box".into(), zones: vec![] };
/// assert_eq!(Trials::of(&job, TRIALS).needs(), needs(&job, TRIALS));
/// ```
pub struct Trials {
    pub(crate) model: Model,
    /// How many there are.
    count: usize,
    /// A column of draws for each input; empty where nothing hangs on it.
    columns: Vec<Rc<Vec<f64>>>,
}

impl Trials {
    /// A job taken through so many trials.
    pub fn of(job: &Job, count: usize) -> Self {
        let model = Model::of(job);
        let columns = drawn(&model, count, &mut Vec::new());
        Trials {
            model,
            count,
            columns,
        }
    }

    /// Several jobs taken through so many trials, in their order. Inputs of one name have the same draws in all of them, so
    /// that each is drawn once.
    pub fn of_all<'a>(jobs: impl Iterator<Item = &'a Job>, count: usize) -> Vec<Self> {
        let mut known = Vec::new();
        let of = |job| {
            let model = Model::of(job);
            let columns = drawn(&model, count, &mut known);
            Trials {
                model,
                count,
                columns,
            }
        };
        jobs.map(of).collect()
    }

    /// Litres of each lot in each trial.
    pub(crate) fn litres(&self) -> Vec<Vec<f64>> {
        let empty = |_: &Lot| Vec::with_capacity(self.count);
        let mut all: Vec<Vec<f64>> = self.model.lots.iter().map(empty).collect();
        for start in (0..self.count).step_by(BLOCK) {
            let columns = self.block(start);
            let areas = self.model.areas(&columns);
            for (lot, litres) in self.model.lots.iter().zip(&mut all) {
                litres.extend(lot.litres(&columns, &areas));
            }
        }
        all
    }

    /// What each layer of a lot takes of each zone in each trial.
    pub(crate) fn parts(&self, lot: &Lot) -> Vec<Part> {
        let mut all: Vec<Part> = Vec::new();
        for start in (0..self.count).step_by(BLOCK) {
            let columns = self.block(start);
            let parts = lot.parts(&columns, &self.model.areas(&columns));
            if all.is_empty() {
                all = parts;
                continue;
            }
            for (part, next) in all.iter_mut().zip(parts) {
                part.coat.extend(next.coat);
                if let (Some(drunk), Some(next)) = (&mut part.drunk, next.drunk) {
                    drunk.extend(next);
                }
            }
        }
        all
    }

    /// The draws of an input.
    pub(crate) fn column(&self, input: usize) -> &[f64] {
        &self.columns[input]
    }

    /// The columns of the trials from one on.
    fn block(&self, start: usize) -> Vec<&[f64]> {
        let end = self.count.min(start + BLOCK);
        let columns = self.columns.iter();
        columns
            .map(|column| column.get(start..end).unwrap_or_default())
            .collect()
    }
}

/// A column for each input of a model; what was not known before is drawn and added to `known`.
fn drawn(model: &Model, count: usize, known: &mut Vec<(Input, Rc<Vec<f64>>)>) -> Vec<Rc<Vec<f64>>> {
    let column = |(place, of): (usize, &crate::cause::Known)| {
        if !model.uses(place) {
            return Rc::default();
        }
        if let Some((_, column)) = known.iter().find(|(input, _)| *input == of.input) {
            return Rc::clone(column);
        }
        let column = Rc::new(draw(&of.input, count));
        known.push((of.input.clone(), Rc::clone(&column)));
        column
    };
    model.inputs.iter().enumerate().map(column).collect()
}
