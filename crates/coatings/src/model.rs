//! The volume formula, for every material of a job at once.
//!
//! By the film of the tool: `liters = area x (first coat + other coats) x film x 1000 / (transfer x narrow x
//! (1 + thinner))`, with the film in meters.
//!
//! By the label: `liters = area x (first coat + other coats) / rate`. The rate already contains the ordinary
//! loss of brush and roller, so only the extra loss of a sprayer is added. A rate from the maker's own
//! weighed jobs with a tool replaces both; it contains all loss of that tool. The material that stays in the
//! tools is added once for each material, color and tool.
//!
//! Materials, zones and jobs with the same cause share its draws, because the inputs have the same name.

use std::rc::Rc;

use crate::area::{Patch, loadings};
use crate::basis::Basis;
use crate::cause::UncertainInput;
use crate::job::{Job, Layer, Rgb};
use crate::material::Material;
use crate::tool::{Tool, ToolKind};

/// A job as a formula over its inputs.
pub(crate) struct Model {
    pub(crate) inputs: Vec<UncertainInput>,
    pub(crate) patches: Vec<PatchModel>,
    pub(crate) lots: Vec<Lot>,
}

/// An area as a linear function of the measuring errors.
pub(crate) struct PatchModel {
    pub(crate) area: f64,
    pub(crate) narrow: bool,
    /// The coefficients of the first inputs, square meters.
    loadings: Vec<f64>,
}

/// One material in one color.
pub(crate) struct Lot {
    pub(crate) material: Rc<Material>,
    pub(crate) colour: Option<Rgb>,
    pub(crate) terms: Vec<Term>,
    /// Inputs that are kept by tools.
    pub(crate) kept: Vec<usize>,
}

/// One layer on one patch. Inputs are given by their index.
pub(crate) struct Term {
    pub(crate) zone: usize,
    pub(crate) layer: usize,
    pub(crate) patch: usize,
    pub(crate) coats: u32,
    pub(crate) tool: &'static Tool,
    pub(crate) first_coat: Option<usize>,
    pub(crate) consumption: Consumption,
    /// Factors that the consumption is divided by.
    pub(crate) losses: Vec<usize>,
    /// A factor that the consumption is multiplied by.
    pub(crate) gain: Option<usize>,
    pub(crate) thinned: f64,
    /// Inputs that its tool keeps.
    pub(crate) kept: Vec<usize>,
}

/// What one coat takes of a square meter before any loss.
#[derive(Clone, Copy, PartialEq)]
pub(crate) enum Consumption {
    /// A film, meters.
    Film(usize),
    /// A rate, m2/L.
    Rate(usize),
}

/// What one layer takes of one zone.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Part {
    pub(crate) zone: usize,
    pub(crate) coats: u32,
    /// Liters of each coat on a surface that takes no more than another coat does.
    pub(crate) coat: Vec<f64>,
    /// Extra liters that the first coat takes on an absorbent surface.
    pub(crate) absorbed: Option<Vec<f64>>,
}

impl Model {
    pub(crate) fn of(job: &Job) -> Self {
        Model::with_basis(job, |material, planned| material.basis(planned))
    }

    /// The model of a job, where `basis` gives the basis of each material from the planned one.
    pub(crate) fn with_basis(job: &Job, basis: impl Fn(&Material, Basis) -> Basis) -> Self {
        let all: Vec<(usize, &Patch)> = job
            .zones
            .iter()
            .enumerate()
            .flat_map(|(zone, work)| work.patches.iter().map(move |patch| (zone, patch)))
            .collect();
        let only: Vec<&Patch> = all.iter().map(|(_, patch)| *patch).collect();
        let mut model = Model {
            inputs: (0..all.len())
                .map(|n| UncertainInput::measuring(&job.name, n))
                .collect(),
            patches: Vec::new(),
            lots: Vec::new(),
        };
        for ((zone, patch), loadings) in all.iter().zip(loadings(&only)) {
            model.patches.push(PatchModel {
                area: patch.area.as_square_metres(),
                narrow: patch.narrow,
                loadings,
            });
            let work = &job.zones[*zone];
            let place = model.patches.len() - 1;
            for (layer, on) in work.layers.iter().enumerate() {
                let basis = basis(&on.material, work.basis);
                model.add(job, (*zone, layer, place), basis, patch.narrow);
            }
        }
        model
    }

    fn add(&mut self, job: &Job, place: (usize, usize, usize), basis: Basis, narrow: bool) {
        let (zone, layer, patch) = place;
        let work = &job.zones[zone];
        let on = &work.layers[layer];
        let tool = on.tool_on(narrow);
        if on.coats == 0 || self.patches[patch].area <= 0.0 {
            return;
        }
        let Some((consumption, losses, gain)) = self.consumption(basis, on, tool, narrow) else {
            return;
        };
        let substrate = work.substrate_under(layer);
        let mut term = Term {
            zone,
            layer,
            patch,
            coats: on.coats,
            tool,
            first_coat: (substrate.first_coat().high > 1.0)
                .then(|| self.input(UncertainInput::first_coat(substrate))),
            consumption,
            losses,
            gain,
            thinned: on.thinned_for(tool),
            kept: Vec::new(),
        };
        let lot = self.lot(on);
        let wash = self.wash(job, lot);
        term.kept = tool
            .keeps
            .iter()
            .map(|keeps| self.input(UncertainInput::kept(&wash, tool, keeps)))
            .collect();
        let lot = &mut self.lots[lot];
        for place in &term.kept {
            if !lot.kept.contains(place) {
                lot.kept.push(*place);
            }
        }
        lot.terms.push(term);
    }

    /// The consumption before losses, the losses, and the factor that undoes the loss of a label rate;
    /// `None` if the tool cannot apply the material.
    fn consumption(
        &mut self,
        basis: Basis,
        on: &Layer,
        tool: &'static Tool,
        narrow: bool,
    ) -> Option<(Consumption, Vec<usize>, Option<usize>)> {
        let film = tool.film(on.material.body)?;
        if let Some(own) = on.own_rate(tool) {
            let rate = self.input(UncertainInput::own_rate(&on.material, tool, own.rate));
            return Some((Consumption::Rate(rate), Vec::new(), None));
        }
        let sprayed = tool.kind == ToolKind::Sprayer;
        let consumption = match basis {
            Basis::WetFilm => Consumption::Film(self.input(UncertainInput::film(&on.material, tool, film))),
            Basis::LabelRate => Consumption::Rate(self.input(UncertainInput::label_rate(&on.material))),
        };
        let mut losses = Vec::new();
        if basis == Basis::WetFilm || sprayed {
            losses.push(self.input(UncertainInput::transfer(tool)));
            if narrow && tool.narrow_transfer.low < 1.0 {
                losses.push(self.input(UncertainInput::narrow(tool)));
            }
        }
        let gain =
            (basis == Basis::LabelRate && sprayed).then(|| self.input(UncertainInput::ordinary_loss()));
        Some((consumption, losses, gain))
    }

    fn input(&mut self, uncertain: UncertainInput) -> usize {
        let position = self
            .inputs
            .iter()
            .position(|input| input.input.name == uncertain.input.name);
        position.unwrap_or_else(|| {
            self.inputs.push(uncertain);
            self.inputs.len() - 1
        })
    }

    fn lot(&mut self, layer: &Layer) -> usize {
        let colour = layer.can_colour();
        let position = self
            .lots
            .iter()
            .position(|lot| lot.material.key == layer.material.key && lot.colour == colour);
        position.unwrap_or_else(|| {
            self.lots.push(Lot {
                material: Rc::clone(&layer.material),
                colour,
                terms: Vec::new(),
                kept: Vec::new(),
            });
            self.lots.len() - 1
        })
    }

    fn wash(&self, job: &Job, lot: usize) -> String {
        let Lot { material, colour, .. } = &self.lots[lot];
        match colour {
            Some([red, green, blue]) => {
                format!("{}/{}/{red:02x}{green:02x}{blue:02x}", job.name, material.key)
            }
            None => format!("{}/{}", job.name, material.key),
        }
    }

    /// Whether an input has any effect. A measuring error has none if no area depends on it.
    pub(crate) fn uses(&self, input: usize) -> bool {
        let takes = |patch: &PatchModel| patch.loadings.get(input).is_some_and(|loading| *loading != 0.0);
        input >= self.patches.len() || self.patches.iter().any(takes)
    }

    /// The area of each patch, in square meters, from columns of inputs.
    /// Columns of inputs without effect may be empty.
    pub(crate) fn areas(&self, columns: &[&[f64]]) -> Vec<Vec<f64>> {
        let rows = rows(columns);
        let area = |patch: &PatchModel| {
            let mut area = vec![patch.area; rows];
            for (loading, cause) in patch.loadings.iter().zip(columns) {
                if *loading != 0.0 {
                    for (area, cause) in area.iter_mut().zip(*cause) {
                        *area += loading * cause;
                    }
                }
            }
            // A measuring error cannot make an area negative.
            for area in &mut area {
                *area = area.max(0.0);
            }
            area
        };
        self.patches.iter().map(area).collect()
    }
}

impl PatchModel {
    /// The standard uncertainty of the area, square meters.
    pub(crate) fn standard_uncertainty(&self) -> f64 {
        self.loadings.iter().map(|a| a * a).sum::<f64>().sqrt()
    }
}

impl Lot {
    /// What each layer takes of each zone.
    pub(crate) fn parts(&self, columns: &[&[f64]], areas: &[&[f64]]) -> Vec<Part> {
        // Terms with the same inputs take the same per square meter, so it is calculated once.
        let mut alike: Vec<(&Term, Vec<f64>)> = Vec::new();
        let mut parts: Vec<(usize, Part)> = Vec::new();
        for term in &self.terms {
            if !alike.iter().any(|(other, _)| term.is_done_as(other)) {
                alike.push((term, term.coat_on_a_square_metre(columns)));
            }
            let Some((_, of_square_metre)) = alike.iter().find(|(other, _)| term.is_done_as(other)) else {
                continue;
            };
            let area = areas[term.patch];
            let same = |(layer, part): &(usize, Part)| *layer == term.layer && part.zone == term.zone;
            let place = parts.iter().position(same).unwrap_or_else(|| {
                let part = Part {
                    zone: term.zone,
                    coats: term.coats,
                    coat: vec![0.0; area.len()],
                    absorbed: term.first_coat.map(|_| vec![0.0; area.len()]),
                };
                parts.push((term.layer, part));
                parts.len() - 1
            });
            let (_, part) = &mut parts[place];
            add_product(&mut part.coat, area, of_square_metre);
            if let (Some(absorbed), Some(factor)) = (&mut part.absorbed, term.first_coat) {
                for (absorbed, ((area, coat), factor)) in absorbed
                    .iter_mut()
                    .zip(area.iter().zip(of_square_metre).zip(columns[factor]))
                {
                    *absorbed += area * coat * (factor - 1.0);
                }
            }
        }
        parts.into_iter().map(|(_, part)| part).collect()
    }

    /// Liters of all coats of all layers, with what the tools keep.
    pub(crate) fn litres(&self, columns: &[&[f64]], areas: &[&[f64]]) -> Vec<f64> {
        let mut sum = self.kept(columns);
        for part in self.parts(columns, areas) {
            add_coats(&mut sum, &part, part.coats);
        }
        sum
    }

    /// What the tools keep.
    pub(crate) fn kept(&self, columns: &[&[f64]]) -> Vec<f64> {
        let mut sum = vec![0.0; rows(columns)];
        for place in &self.kept {
            for (sum, kept) in sum.iter_mut().zip(columns[*place]) {
                *sum += kept;
            }
        }
        sum
    }
}

impl Term {
    /// Whether the consumption per square meter is the same as that of another term in every trial.
    fn is_done_as(&self, other: &Term) -> bool {
        (self.consumption, &self.losses, self.gain, self.thinned)
            == (other.consumption, &other.losses, other.gain, other.thinned)
    }

    /// Liters of one coat on a square meter.
    fn coat_on_a_square_metre(&self, columns: &[&[f64]]) -> Vec<f64> {
        let mut litres: Vec<f64> = match self.consumption {
            Consumption::Film(film) => {
                let scale = 1000.0 / (1.0 + self.thinned);
                columns[film].iter().map(|film| film * scale).collect()
            }
            Consumption::Rate(rate) => columns[rate].iter().map(|rate| 1.0 / rate).collect(),
        };
        for loss in &self.losses {
            for (litres, loss) in litres.iter_mut().zip(columns[*loss]) {
                *litres /= loss;
            }
        }
        if let Some(gain) = self.gain {
            for (litres, gain) in litres.iter_mut().zip(columns[gain]) {
                *litres *= gain;
            }
        }
        litres
    }

    /// Liters of all coats without losses, for one row of inputs.
    pub(crate) fn on_piece(&self, row: impl Fn(usize) -> f64, area: f64) -> f64 {
        let coat = match self.consumption {
            Consumption::Film(film) => area * row(film) * 1000.0 / (1.0 + self.thinned),
            Consumption::Rate(rate) => area / row(rate),
        };
        // The ordinary loss in a label's rate never reached the piece. For brush and roller it is not known
        // separately.
        coat * self.gain.map_or(1.0, &row) * (self.first_coat.map_or(1.0, &row) + f64::from(self.coats - 1))
    }

    /// The factor by which losses raise the consumption.
    pub(crate) fn lost_factor(&self, row: impl Fn(usize) -> f64) -> f64 {
        let losses: f64 = self.losses.iter().map(|loss| row(*loss)).product();
        1.0 / losses
    }
}

/// The number of rows of columns, some of which may be empty.
fn rows(columns: &[&[f64]]) -> usize {
    columns.iter().map(|column| column.len()).max().unwrap_or(1)
}

/// What all coats of a part take, added to a sum.
pub(crate) fn add_coats(sum: &mut [f64], part: &Part, coats: u32) {
    if coats == 0 {
        return;
    }
    let coats = f64::from(coats);
    for (sum, coat) in sum.iter_mut().zip(&part.coat) {
        *sum += coat * coats;
    }
    if let Some(absorbed) = &part.absorbed {
        for (sum, absorbed) in sum.iter_mut().zip(absorbed) {
            *sum += absorbed;
        }
    }
}

fn add_product(sum: &mut [f64], a: &[f64], b: &[f64]) {
    for (sum, (a, b)) in sum.iter_mut().zip(a.iter().zip(b)) {
        *sum += a * b;
    }
}
