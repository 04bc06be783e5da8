//! The Monte Carlo trials of a job. Every input is drawn once and used for all questions.

use std::borrow::Borrow;
use std::ops::Range;

use crate::cause::UncertainInput;
use crate::draw_cache::{Column, cached_draws};
use crate::job::Job;
use crate::model::{Lot, Model, Part};

/// The number of trials per block, so that the columns stay in the cache of the processor.
const BLOCK: usize = 2_048;

/// A job with the draws of its inputs. The demand and the check of cans use the same draws.
///
/// # Example
/// ```
/// use coatings::{Job, TRIALS, Trials, demands};
/// let job = Job { name: "box".into(), zones: vec![] };
/// assert_eq!(Trials::of(&job, TRIALS).demands(), demands(&job, TRIALS));
/// ```
pub struct Trials {
    pub(crate) model: Model,
    /// How many there are.
    count: usize,
    /// A column with at least this many draws for each input; empty where nothing depends on it.
    columns: Vec<Column>,
    /// The area of each patch in each trial, square meters.
    areas: Vec<Vec<f64>>,
}

impl Trials {
    /// The trials of a job. Inputs with the same name have the same draws in every job.
    pub fn of(job: &Job, count: usize) -> Self {
        let model = Model::of(job);
        let column = |(place, uncertain): (usize, &UncertainInput)| match model.uses(place) {
            true => cached_draws(&uncertain.input, count),
            false => Column::default(),
        };
        let columns: Vec<Column> = model.inputs.iter().enumerate().map(column).collect();
        let areas = model.areas(&block(&columns, &(0..count)));
        Trials {
            model,
            count,
            columns,
            areas,
        }
    }

    /// Liters of each lot in each trial.
    pub(crate) fn litres(&self) -> Vec<Vec<f64>> {
        let empty = |_: &Lot| Vec::with_capacity(self.count);
        let mut all: Vec<Vec<f64>> = self.model.lots.iter().map(empty).collect();
        for start in (0..self.count).step_by(BLOCK) {
            let rows = start..self.count.min(start + BLOCK);
            let (columns, areas) = (block(&self.columns, &rows), block(&self.areas, &rows));
            for (lot, litres) in self.model.lots.iter().zip(&mut all) {
                litres.extend(lot.litres(&columns, &areas));
            }
        }
        all
    }

    /// What each layer of a lot takes of each zone in each trial.
    pub(crate) fn parts(&self, lot: &Lot) -> Vec<Part> {
        let all = 0..self.count;
        lot.parts(&block(&self.columns, &all), &block(&self.areas, &all))
    }

    /// The draws of an input.
    pub(crate) fn column(&self, input: usize) -> &[f64] {
        self.columns[input].get(..self.count).unwrap_or_default()
    }
}

/// Some rows of every column.
fn block<'a, T: Borrow<Vec<f64>>>(columns: &'a [T], rows: &Range<usize>) -> Vec<&'a [f64]> {
    columns
        .iter()
        .map(|column| column.borrow().get(rows.clone()).unwrap_or_default())
        .collect()
}
