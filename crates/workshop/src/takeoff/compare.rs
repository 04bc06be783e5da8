//! The same piece done with a brush, a roller or a sprayer.

use coatings::can::ChoiceError;
use coatings::{
    Demand, DryFilm, Estimate, Job, Layer, Place, Stage, Tool, ToolKind, Verdict, Way, demands, minutes, tool,
};
use geometry::Edges;
use units::{Area, Length, Volume};

use super::buy::{Buy, cans_for, reserve};
use super::{Takeoff, cut_in};
use crate::book::Habits;
use crate::document::{Confidence, Piece, Workshop};
use crate::stock::{Stock, alike, known_contents, stock};

/// Fewer trials than for the main answer, because eight jobs are calculated at once. Good to about 2%.
const TRIALS: usize = 2_000;

/// The whole finish with one tool.
#[derive(Clone, Debug, PartialEq)]
pub struct WayColumn {
    /// Its key on the page.
    pub key: &'static str,
    /// Its label.
    pub label: &'static str,
    /// The tool on broad surfaces.
    pub broad: &'static Tool,
    /// The tool on narrow parts.
    pub narrow: &'static Tool,
    /// The coating that the choice of a tool is about, at the planned coats.
    pub coat: WayCoat,
    /// The amount of each material, in the order of the takeoff.
    pub figures: Vec<WayFigure>,
    /// All materials together, at the planned coats.
    pub planned: WayWhole,
    /// All materials together, with enough coats to match the thickest film.
    pub equal: WayWhole,
    /// What its coats look like, and what can go wrong.
    pub remarks: Vec<&'static str>,
    /// True if the maker has the tool. Everyone has a brush and a roller. A sprayer counts if the maker has
    /// one or plans one.
    pub is_at_hand: bool,
}

/// The coating that the choice of a tool is about, in all its colors.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WayCoat {
    /// The likely amount.
    pub volume: Volume,
    /// Minutes of work, with edges and cleaning.
    pub minutes: Estimate<f64>,
}

/// All materials together with one tool.
#[derive(Clone, Debug, PartialEq)]
pub struct WayWhole {
    /// What stays on the piece.
    pub on_piece: Volume,
    /// What is lost: in drips, in the air and in the tools.
    pub lost: Vec<(Place, Volume)>,
    /// The cost of all the cans in hundredths of the currency, if every price is known.
    pub price: Option<u64>,
    /// Minutes of work, with edges and cleaning.
    pub minutes: Estimate<f64>,
}

impl WayWhole {
    fn of(job: &Job, needs: &[Demand], price: Option<u64>) -> Self {
        WayWhole {
            on_piece: needs
                .iter()
                .filter_map(|need| need.shares.first())
                .map(|share| share.volume)
                .sum(),
            lost: lost(needs),
            price,
            minutes: minutes(job),
        }
    }

    /// Returns the total: what stays on the piece and what is lost.
    pub fn all(&self) -> Volume {
        self.on_piece + self.lost.iter().map(|(_, volume)| *volume).sum()
    }
}

/// One material with one tool.
#[derive(Clone, Debug, PartialEq)]
pub struct WayFigure {
    /// The name of the material in the takeoff.
    pub id: String,
    /// The amount at the planned coats.
    pub likely: Volume,
    /// The verdict on the cans on hand, if any.
    pub verdict: Option<Verdict>,
    /// Minutes of work at the planned coats, with edges and cleaning.
    pub minutes: Estimate<f64>,
    /// The cans to buy at the planned coats with an empty shelf, and their cost.
    pub buy: Result<Buy, ChoiceError>,
    /// The dry film in the zone with the most, if the material builds a film.
    pub film: Option<Estimate<Length>>,
    /// The coats that match the dry film of the thickest way, at most.
    pub coats_for_equal_film: u32,
    /// The amount at those coats.
    pub likely_at_equal_film: Volume,
    /// The cans to buy for those coats.
    pub buy_at_equal_film: Result<Buy, ChoiceError>,
}

/// What is equal in a comparison.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ComparedAt {
    /// The dry film, that of the thickest way.
    EqualFilm,
    /// The planned coats.
    Planned,
}

impl WayColumn {
    /// Returns the totals at these coats.
    pub fn whole(&self, at: ComparedAt) -> &WayWhole {
        match at {
            ComparedAt::EqualFilm => &self.equal,
            ComparedAt::Planned => &self.planned,
        }
    }
}

impl Takeoff {
    /// Returns the stage that the choice of a tool is about: the paint, or else what goes on last.
    pub fn stage_of_tool(&self) -> Option<Stage> {
        let has = |stage: &Stage| {
            let mut lines = self.materials.iter();
            lines.any(|line| line.need.material.stage == *stage)
        };
        [Stage::Paint, Stage::Topcoat, Stage::Primer, Stage::Stain]
            .into_iter()
            .find(has)
    }

    fn has_narrow_parts(&self) -> bool {
        let mut patches = self.job.zones.iter().flat_map(|zone| &zone.patches);
        patches.any(|patch| patch.narrow && patch.area > Area::ZERO)
    }
}

/// Returns the ways between which a maker chooses, out of those at hand. No roller reaches narrow parts.
pub fn main_ways<'a>(columns: &'a [WayColumn], takeoff: &Takeoff) -> Vec<&'a WayColumn> {
    let other_roller = match takeoff.has_narrow_parts() {
        true => "foam-roller",
        false => "rolled",
    };
    let main = columns.iter().filter(|column| column.key != other_roller);
    main.collect()
}

/// Returns true if two times are about the same: their difference is within the uncertainty of either.
pub fn about_as_soon(one: Estimate<f64>, other: Estimate<f64>) -> bool {
    let unsure = one.standard_uncertainty.min(other.standard_uncertainty);
    (one.value - other.value).abs() < unsure
}

/// The ways to compare: key, label, and the tools on broad and on narrow parts.
fn ways() -> Vec<(&'static str, &'static str, [&'static Tool; 2])> {
    let all = [
        ("brush", "Brush", ["brush", "brush"]),
        ("foam-roller", "Mini foam roller", ["foam-roller", "foam-roller"]),
        (
            "rolled",
            "Roller, brush for narrow parts",
            ["foam-roller", "brush"],
        ),
        ("hvlp", "HVLP sprayer", ["hvlp", "hvlp"]),
    ];
    let known = all
        .into_iter()
        .filter_map(|(key, label, [broad, narrow])| Some((key, label, [tool(broad)?, tool(narrow)?])));
    known.collect()
}

/// Compares tools for a piece, at the planned coats and at equal dry film. `edges` are those of one piece, by
/// zone.
pub fn compare(
    workshop: &Workshop,
    piece: &Piece,
    takeoff: &Takeoff,
    edges: &[(String, Edges)],
) -> Vec<WayColumn> {
    let mut job = takeoff.job.clone();
    for zone in &mut job.zones {
        // A cleaner is wiped on and off, whatever tool the coats use.
        let cleaners = zone
            .layers
            .iter_mut()
            .filter(|layer| layer.material.stage == Stage::Clean);
        cleaners.for_each(|layer| layer.coats = 0);
    }
    cut_in(&mut job, piece, edges);
    let ways = ways();
    let jobs: Vec<Job> = ways
        .iter()
        .map(|(.., [broad, narrow])| job.with_tools(Way::Split { broad, narrow }))
        .collect();
    // The way with the thickest film sets the coats.
    let at_equal_film = |done: &Job| {
        jobs.iter()
            .fold(done.clone(), |equal, other| equal.at_equal_film(other))
    };
    let equal: Vec<Job> = jobs.iter().map(at_equal_film).collect();
    let stage = takeoff.stage_of_tool();
    let sure = workshop.settings.confidence.probability();
    let shelf = stock(workshop);
    let has_sprayer = workshop.books.one::<Habits>().sprayer;
    let mut planned_layers = piece.schemes().flat_map(|scheme| &scheme.layers);
    let plans_to_spray = planned_layers.any(|layer| coatings::tool(layer.tool).is_some_and(is_sprayer));
    let buy = |need: &Demand| {
        cans_for(
            workshop,
            &need.material,
            need.at(sure) + reserve(workshop, &[need]),
            &[],
        )
    };
    let columns = ways
        .iter()
        .zip(jobs.iter().zip(&equal))
        .map(|((key, label, tools), (done, equal))| {
            let [broad, narrow] = *tools;
            let (planned, raised) = (demands(done, TRIALS), demands(equal, TRIALS));
            let figures: Vec<WayFigure> = takeoff
                .materials
                .iter()
                .filter_map(|line| {
                    let need = planned.iter().find(|need| need.is_alike(&line.need))?;
                    let at_equal_film = raised.iter().find(|need| need.is_alike(&line.need))?;
                    Some(WayFigure {
                        id: line.id.clone(),
                        likely: need.likely(),
                        minutes: minutes_of(done, need),
                        verdict: verdict(&shelf, need, workshop.settings.confidence),
                        buy: buy(need),
                        buy_at_equal_film: buy(at_equal_film),
                        film: film(done, need),
                        coats_for_equal_film: super::how(equal, at_equal_film).0,
                        likely_at_equal_film: at_equal_film.likely(),
                    })
                })
                .collect();
            let price = |buy: fn(&WayFigure) -> &Result<Buy, ChoiceError>| {
                let prices = figures.iter().map(|figure| buy(figure).as_ref().ok()?.price);
                prices.sum::<Option<u64>>()
            };
            WayColumn {
                key,
                label,
                broad,
                narrow,
                coat: coat(done, &planned, stage),
                planned: WayWhole::of(done, &planned, price(|figure| &figure.buy)),
                equal: WayWhole::of(equal, &raised, price(|figure| &figure.buy_at_equal_film)),
                figures,
                remarks: remarks(broad, narrow),
                is_at_hand: has_sprayer || plans_to_spray || !is_sprayer(broad),
            }
        });
    columns.collect()
}

fn is_sprayer(tool: &Tool) -> bool {
    tool.kind == ToolKind::Sprayer
}

fn verdict(shelf: &[Stock], need: &Demand, confidence: Confidence) -> Option<Verdict> {
    let cans = known_contents(&alike(shelf, need));
    (!cans.is_empty()).then(|| Verdict::of(need, &cans, confidence.probability()))
}

/// Returns the minutes of one material in a job.
fn minutes_of(job: &Job, need: &Demand) -> Estimate<f64> {
    minutes_with(job, |layer| need.is_of(layer))
}

/// Returns the minutes of some layers of a job.
fn minutes_with(job: &Job, is_done: impl Fn(&Layer) -> bool) -> Estimate<f64> {
    let mut job = job.clone();
    let layers = job.zones.iter_mut().flat_map(|zone| &mut zone.layers);
    layers
        .filter(|layer| !is_done(layer))
        .for_each(|layer| layer.coats = 0);
    minutes(&job)
}

/// Returns what the coating of a stage takes.
fn coat(job: &Job, needs: &[Demand], stage: Option<Stage>) -> WayCoat {
    let needs = needs.iter().filter(|need| Some(need.material.stage) == stage);
    WayCoat {
        volume: needs.map(Demand::likely).sum(),
        minutes: minutes_with(job, |layer| Some(layer.material.stage) == stage),
    }
}

/// Returns the film in the zone with the most of a material.
fn film(job: &Job, need: &Demand) -> Option<Estimate<Length>> {
    let (zone, _) = need
        .by_zone
        .iter()
        .max_by(|(_, a), (_, b)| a.as_litres().total_cmp(&b.as_litres()))?;
    let zone = job.zones.get(*zone)?;
    let layer = zone
        .layers
        .iter()
        .find(|layer| need.is_of(layer) && layer.coats > 0)?;
    Some(DryFilm::of(layer, zone.basis, false)?.thickness())
}

/// Returns what is lost of all materials, by place.
fn lost(needs: &[Demand]) -> Vec<(Place, Volume)> {
    let mut places: Vec<(Place, Volume)> = Vec::new();
    for share in needs.iter().flat_map(|need| need.shares.iter().skip(1)) {
        match places.iter_mut().find(|(place, _)| *place == share.place) {
            Some((_, sum)) => *sum += share.volume,
            None => places.push((share.place, share.volume)),
        }
    }
    places
}

fn remarks(broad: &Tool, narrow: &Tool) -> Vec<&'static str> {
    match broad == narrow {
        true => vec![broad.texture, broad.risk],
        false => vec![broad.texture, narrow.texture],
    }
}
