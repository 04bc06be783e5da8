//! The takeoff of a piece: its surfaces, what is painted of them, and what that takes.

mod areas;
mod buy;
mod compare;
mod finish;
mod notice;
mod shopping;
mod zones;

use coatings::{Demand, DemandWorking, Estimate, Job, Material, OwnRate, TRIALS, Trials, by_tools, workings};
use geometry::{Edges, FieldId, LengthField, Overlap, Problem, SurfaceId};
use units::{Area, Length, Volume};

use crate::document::{Confidence, Piece, Workshop};
use crate::learning::Lesson;
use crate::stock::{OnHand, Stock, alike, known_contents, stock};
use areas::{Division, measured};
use finish::job;

pub use buy::Buy;
pub(crate) use buy::{cans_for, cans_to_buy};
pub use compare::{ComparedAt, WayColumn, WayFigure, WayWhole, about_as_soon, compare, soonest_and_least};
pub use notice::Notice;
pub use shopping::Shopping;
pub(crate) use shopping::{bought_for, coated, shopping};
pub use zones::{SurfaceLine, ZoneLine, are_finished, side_faces, switched, touched_faces};

/// What a piece needs of one material, in one colour.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialLine {
    /// Its name among those of the piece: the key of its stage, with a number behind it if another has it.
    pub id: String,
    /// How much.
    pub need: Demand,
    /// The most coats on any zone.
    pub coats: u32,
    /// The tools that it is put on with.
    pub tools: Vec<&'static str>,
    /// How many weighed jobs of the maker's own it rests on.
    pub jobs: u32,
    /// What the tools would usually lay on, where the amount is by a label that the maker entered.
    pub by_tools: Option<Volume>,
    /// What is on hand of it, and what that is good for; nothing where there is none.
    pub on_hand: Option<OnHand>,
}

impl MaterialLine {
    /// The name of the step that puts on one of its coats, counted from 1: what is ticked off bears it.
    pub fn coat_key(&self, coat: u32) -> String {
        format!("coat-{}-{coat}", self.id)
    }
}

/// The takeoff of a piece, or of a set of pieces that are alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Takeoff {
    /// Every surface of one piece.
    pub surfaces: Vec<SurfaceLine>,
    /// The zones of one piece that have any surface.
    pub zones: Vec<ZoneLine>,
    /// Parts that run into each other: the areas of both are too large by what is within the other.
    pub overlaps: Vec<Overlap>,
    /// What was entered and does not count, or not wholly.
    pub notices: Vec<Notice>,
    /// The painted area of one piece.
    pub painted_each: Area,
    /// The painted area of the whole set with its uncertainty.
    pub painted: Estimate<Area>,
    /// The share of each measurement in what makes that area unsure, the largest first.
    pub unsure_by: Vec<(FieldId, f64)>,
    /// What is finished and how, for the whole set.
    pub job: Job,
    /// What that needs of each material.
    pub materials: Vec<MaterialLine>,
}

impl Takeoff {
    /// What a material of this takeoff is called where it stands in a list without its colour: with its zones, where another
    /// has the same name.
    pub fn name_of(&self, line: &MaterialLine) -> String {
        let name = line.need.material.name.to_string();
        let alike = self.materials.iter();
        if alike.filter(|other| *other.need.material.name == *name).count() < 2 {
            return name;
        }
        let zones = line.need.by_zone.iter();
        let zones: Vec<String> = zones
            .map(|(zone, _)| self.zone_label(*zone).to_ascii_lowercase())
            .collect();
        format!("{name} ({})", zones.join(", "))
    }

    /// What the maker calls a zone, by its number in the job.
    pub fn zone_label(&self, zone: usize) -> &str {
        let key = self.job.zones.get(zone).map(|zone| &zone.key);
        let line = self.zones.iter().find(|line| Some(&line.key) == key);
        line.map_or("", |line| &line.label)
    }

    /// How the amount of a material comes about.
    pub fn working_of(&self, line: &MaterialLine) -> Option<DemandWorking> {
        workings(&self.job).into_iter().find(|working| {
            let first = working.layers.first();
            let layer = first.and_then(|first| self.job.zones.get(first.zone)?.layers.get(first.layer));
            layer.is_some_and(|layer| line.need.is_of(layer))
        })
    }
}

/// Returns the takeoff of a piece with the materials, the shelf and the confidence of a workshop. `lessons`
/// are the rates learned from the maker's weighed jobs ([`crate::learning::lessons`]). Without them, amounts
/// rest on labels and the usual film of each tool.
///
/// # Errors
/// Every measurement that is out of range or does not fit the others.
pub fn takeoff(workshop: &Workshop, piece: &Piece, lessons: &[Lesson]) -> Result<Takeoff, Vec<Problem>> {
    let furniture = piece.furniture();
    let checked = furniture.checked()?;
    let assembly = checked.assembly()?;
    let surfaces = assembly.surfaces();
    let notices = checked.notices(&assembly, &surfaces);
    let surfaces: Vec<SurfaceLine> = surfaces
        .into_iter()
        .map(|surface| zones::surface_line(piece, surface))
        .collect();
    let division = Division::of(&assembly, &surfaces);
    let areas = measured(piece, &furniture, &surfaces, &division, areas::MOST_STEPS);
    let painted = areas.together();
    let unsure_by = areas.unsure_by();
    let job = job(piece, &workshop.materials, lessons, areas);
    let materials = material_lines(&job, &stock(workshop), workshop.settings.confidence);
    Ok(Takeoff {
        zones: zones::zones(piece, &surfaces),
        overlaps: assembly.overlaps(),
        notices: notices
            .into_iter()
            .map(Notice::Piece)
            .chain(zones::idle_choices(piece, &surfaces))
            .collect(),
        painted_each: painted.value / f64::from(piece.count),
        surfaces,
        painted,
        unsure_by,
        job,
        materials,
    })
}

fn material_lines(job: &Job, shelf: &[Stock], confidence: Confidence) -> Vec<MaterialLine> {
    let mut lines: Vec<MaterialLine> = Vec::new();
    let trials = Trials::of(job, TRIALS);
    let by_tools = by_tools(job);
    let mut all = trials.demands();
    // In the order of the stages, whichever zone comes first.
    units::sort_few(&mut all, |one, other| one.material.stage < other.material.stage);
    for need in all {
        let cans = alike(shelf, &need);
        let on_hand = (!cans.is_empty()).then(|| OnHand {
            enough: trials.judge(&need, &known_contents(&cans), confidence.probability()),
            cans,
        });
        let stage = need.material.stage.key();
        let number = 1 + lines
            .iter()
            .filter(|line| line.need.material.stage.key() == stage)
            .count();
        let (coats, tools) = how(job, &need);
        let jobs = jobs_behind(job, &need);
        let is_it = |material: &Material, colour| material.key == need.material.key && colour == need.colour;
        let by_tools = by_tools
            .iter()
            .find(|(material, colour, _)| is_it(material, *colour));
        lines.push(MaterialLine {
            jobs,
            // What was weighed goes before label and tool.
            by_tools: by_tools.filter(|_| jobs == 0).map(|(.., volume)| *volume),
            id: if number == 1 {
                stage.into()
            } else {
                format!("{stage}-{number}")
            },
            coats,
            tools,
            on_hand,
            need,
        });
    }
    lines
}

/// The most coats of a material on any zone, and the tools that put it on.
fn how(job: &Job, need: &Demand) -> (u32, Vec<&'static str>) {
    let mut coats = 0;
    let mut tools: Vec<&'static str> = Vec::new();
    for zone in &job.zones {
        let mut of_zone = 0;
        for layer in zone
            .layers
            .iter()
            .filter(|layer| need.is_of(layer) && layer.coats > 0)
        {
            of_zone += layer.coats;
            for patch in &zone.patches {
                let tool = layer.tool_on(patch.narrow).name;
                if patch.area > Area::ZERO && !tools.contains(&tool) {
                    tools.push(tool);
                }
            }
        }
        coats = coats.max(of_zone);
    }
    (coats, tools)
}

/// How many weighed jobs the rates come from that a material is reckoned with.
fn jobs_behind(job: &Job, need: &Demand) -> u32 {
    let mut rates: Vec<&OwnRate> = Vec::new();
    for zone in &job.zones {
        for layer in zone
            .layers
            .iter()
            .filter(|layer| need.is_of(layer) && layer.coats > 0)
        {
            for patch in zone.patches.iter().filter(|patch| patch.area > Area::ZERO) {
                let rate = layer.own_rate(layer.tool_on(patch.narrow));
                rates.extend(rate.filter(|rate| rates.iter().all(|other| other.tool != rate.tool)));
            }
        }
    }
    rates.into_iter().map(|rate| rate.jobs).sum()
}

/// The lengths of edges of one piece, by the key of the zone: what is sanded with care, and what is cut in or masked.
///
/// # Errors
/// As for [`takeoff`].
pub fn edges_by_zone(piece: &Piece) -> Result<Vec<(String, Edges)>, Vec<Problem>> {
    let assembly = piece.furniture().assembly()?;
    let nets = assembly.net_areas().into_iter();
    let painted: Vec<(SurfaceId, &str)> = nets
        .filter_map(|(id, net)| Some((id, zones::painted_zone(piece, &id, net)?)))
        .collect();
    let place = |id: &SurfaceId| painted.iter().position(|(painted, _)| painted == id);
    let mut zones: Vec<(String, Edges)> = Vec::new();
    for (id, edges) in assembly.edges(|surface| place(surface).is_some()) {
        let Some((_, zone)) = place(&id).and_then(|place| painted.get(place)) else {
            continue;
        };
        match zones.iter_mut().find(|(key, _)| key == zone) {
            Some((_, sum)) => *sum += edges,
            None => zones.push(((*zone).to_owned(), edges)),
        }
    }
    Ok(zones)
}

/// Puts the edges of one piece, by zone, into its job: the minutes depend on them, the amounts do not.
pub(crate) fn cut_in(job: &mut Job, piece: &Piece, edges: &[(String, Edges)]) {
    for zone in &mut job.zones {
        let of_zone = edges.iter().find(|(key, _)| *key == zone.key);
        let length = of_zone.map_or(Length::ZERO, |(_, edges)| {
            edges.arrises + edges.corners + edges.borders
        });
        zone.edges = length * f64::from(piece.count);
    }
}

/// Measurements that nobody took yet, in the order in which one takes them.
pub fn unmeasured(piece: &Piece) -> Vec<FieldId> {
    let furniture = piece.furniture();
    let fields = furniture.fields().into_iter();
    fields
        .filter(|field| furniture.measures.get(field).is_none())
        .map(LengthField::id)
        .collect()
}

#[cfg(test)]
mod tests;
