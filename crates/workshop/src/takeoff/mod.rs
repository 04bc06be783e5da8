//! The takeoff of a piece: its surfaces, which of them are painted, and the materials they need.

mod areas;
mod buy;
mod coat;
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
pub(crate) use buy::{cans_for, cans_to_buy, reserve};
pub(crate) use coat::{CoatedWith, coated_with};
pub use compare::{ComparedAt, WayCoat, WayColumn, WayFigure, WayWhole, about_as_soon, compare, main_ways};
pub use notice::Notice;
pub use shopping::{Shopping, basket_key};
pub(crate) use shopping::{bought_for, coated, shopping};
pub use zones::{SurfaceLine, ZoneLine, are_finished, side_faces, switched, touched_faces};

/// One material in one color for a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialLine {
    /// The id within the piece: the key of the stage, with a number if another line has it.
    pub id: String,
    /// The amount.
    pub need: Demand,
    /// The most coats on any zone.
    pub coats: u32,
    /// The tools that apply it.
    pub tools: Vec<&'static str>,
    /// The number of the maker's weighed jobs behind the rate.
    pub jobs: u32,
    /// The volume at the usual film of the tools, if the amount is from a label the maker entered.
    pub by_tools: Option<Volume>,
    /// The cans on hand and the verdict on them, if any.
    pub on_hand: Option<OnHand>,
}

impl MaterialLine {
    /// Returns the key of the step that applies one of its coats, counted from 1. Checked-off coats are saved
    /// under it.
    pub fn coat_key(&self, coat: u32) -> String {
        coat::key(&self.id, coat)
    }
}

/// The takeoff of a piece, or of a set of identical pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Takeoff {
    /// Every surface of one piece.
    pub surfaces: Vec<SurfaceLine>,
    /// The zones of one piece that have a surface.
    pub zones: Vec<ZoneLine>,
    /// Parts that overlap. Each area is too large by the part of it inside the other part.
    pub overlaps: Vec<Overlap>,
    /// Entries that do not count, or only in part.
    pub notices: Vec<Notice>,
    /// The painted area of one piece.
    pub painted_each: Area,
    /// The painted area of the whole set with its uncertainty.
    pub painted: Estimate<Area>,
    /// The share of each measurement in the uncertainty of that area, the largest first.
    pub unsure_by: Vec<(FieldId, f64)>,
    /// The finish of the whole set.
    pub job: Job,
    /// The materials of the whole set.
    pub materials: Vec<MaterialLine>,
}

impl Takeoff {
    /// Returns the name of a material for a list without colors. If another line has the same name, its zones
    /// are added.
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

    /// Returns the label of a zone, by its index in the job.
    pub fn zone_label(&self, zone: usize) -> &str {
        let key = self.job.zones.get(zone).map(|zone| &zone.key);
        let line = self.zones.iter().find(|line| Some(&line.key) == key);
        line.map_or("", |line| &line.label)
    }

    /// Returns the math behind the amount of a material.
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
    let surfaces = zones::surface_lines(piece, surfaces);
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

/// Returns every surface of one piece, without amounts.
///
/// # Errors
/// As for [`takeoff`].
pub fn surfaces(piece: &Piece) -> Result<Vec<SurfaceLine>, Vec<Problem>> {
    let assembly = piece.furniture().assembly()?;
    Ok(zones::surface_lines(piece, assembly.surfaces()))
}

fn material_lines(job: &Job, shelf: &[Stock], confidence: Confidence) -> Vec<MaterialLine> {
    let mut lines: Vec<MaterialLine> = Vec::new();
    let trials = Trials::of(job, TRIALS);
    let by_tools = by_tools(job);
    let mut all = trials.demands();
    // Sort by stage, whatever the order of the zones.
    units::sort_few(&mut all, |one, other| one.material.stage < other.material.stage);
    for need in all {
        let cans = alike(shelf, &need);
        let on_hand = (!cans.is_empty()).then(|| OnHand {
            enough: trials.judge(&need, &known_contents(&cans), confidence.probability()),
            cans,
        });
        let stage = need.material.stage;
        let before = lines.iter().filter(|line| line.need.material.stage == stage);
        let id = coat::line_id(stage, before.count());
        let (coats, tools) = how(job, &need);
        let jobs = jobs_behind(job, &need);
        let is_it = |material: &Material, colour| material.key == need.material.key && colour == need.colour;
        let by_tools = by_tools
            .iter()
            .find(|(material, colour, _)| is_it(material, *colour));
        lines.push(MaterialLine {
            jobs,
            // A weighed rate takes precedence over label and tool.
            by_tools: by_tools.filter(|_| jobs == 0).map(|(.., volume)| *volume),
            id,
            coats,
            tools,
            on_hand,
            need,
        });
    }
    lines
}

/// Returns the most coats of a material in any zone, and the tools that apply it.
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

/// Returns the number of weighed jobs behind the rates of a material.
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

/// Returns the edge lengths of one piece, by zone key. Edges are sanded with care, cut in or masked.
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

/// Adds the edges of one piece to its job. They affect the minutes but not the amounts.
pub(crate) fn cut_in(job: &mut Job, piece: &Piece, edges: &[(String, Edges)]) {
    for zone in &mut job.zones {
        let of_zone = edges.iter().find(|(key, _)| *key == zone.key);
        let length = of_zone.map_or(Length::ZERO, |(_, edges)| {
            edges.arrises + edges.corners + edges.borders
        });
        zone.edges = length * f64::from(piece.count);
    }
}

/// Returns the guesses, in measuring order.
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
