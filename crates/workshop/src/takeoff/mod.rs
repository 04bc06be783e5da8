//! The takeoff of a piece: its surfaces, what is painted of them, and what that takes.

mod areas;
mod buy;
mod compare;
mod finish;
mod notice;
mod shopping;
mod zones;

use std::rc::Rc;

use coatings::{Demand, DemandWorking, Estimate, Job, Material, OwnRate, TRIALS, Trials, by_tools, workings};
use geometry::{Edges, FieldId, LengthField, Overlap, Problem, SurfaceId};
use units::{Area, Length, Volume};

use crate::document::{Confidence, OwnMaterial, Piece, Workshop};
use crate::learning::{Lesson, lessons};
use crate::stock::{OnHand, Stock, alike, known_contents, stock};
use areas::{Division, measured};
use finish::job;

pub(crate) use buy::cans_for;
pub use buy::{Buy, cans_to_buy};
pub use compare::{ComparedAt, WayColumn, WayFigure, WayWhole, about_as_soon, compare, soonest_and_least};
pub use notice::Notice;
pub use shopping::{Shopping, bought_for, coated, shopping, takeoffs};
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

/// The takeoff of a piece of a workshop: by its materials, by what its weighed jobs taught, with the confidence that the
/// maker wants.
///
/// # Errors
/// As for [`takeoff`].
pub fn takeoff_in(workshop: &Workshop, piece: &Piece) -> Result<Takeoff, Vec<Problem>> {
    takeoff_with(workshop, piece, &lessons(workshop))
}

/// The same by lessons that are worked out already.
///
/// # Errors
/// As for [`takeoff`].
pub(crate) fn takeoff_with(
    workshop: &Workshop,
    piece: &Piece,
    lessons: &[Lesson],
) -> Result<Takeoff, Vec<Problem>> {
    let shelf = stock(workshop);
    let stores = Stores {
        materials: &workshop.materials,
        lessons,
        shelf: &shelf,
    };
    of_stores(piece, stores, workshop.settings.confidence)
}

/// What a takeoff reckons with besides the piece.
#[derive(Clone, Copy)]
struct Stores<'a> {
    /// Materials of the maker's own.
    materials: &'a [Rc<OwnMaterial>],
    /// What weighed jobs taught.
    lessons: &'a [Lesson],
    /// What is on the shelf.
    shelf: &'a [Stock],
}

/// The takeoff of a piece by labels and usual films alone, with nothing on hand; `own` are the materials of the maker's own, and `confidence` is
/// how sure a can must be before it is enough.
///
/// # Errors
/// Every measurement that is out of its limits or does not fit beside the others.
pub fn takeoff(
    piece: &Piece,
    own: &[Rc<OwnMaterial>],
    confidence: Confidence,
) -> Result<Takeoff, Vec<Problem>> {
    let stores = Stores {
        materials: own,
        lessons: &[],
        shelf: &[],
    };
    of_stores(piece, stores, confidence)
}

fn of_stores(piece: &Piece, stores: Stores<'_>, confidence: Confidence) -> Result<Takeoff, Vec<Problem>> {
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
    let job = job(piece, stores, areas);
    let materials = material_lines(&job, stores.shelf, confidence);
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
mod tests {
    use super::*;
    use crate::document::{ChangeKind, PieceChange, PieceId, Reading, SurfaceChoice};
    use crate::{BookEdit, Edit, HaveEdit, PieceEdit, SchemeEdit, Workshop};
    use coatings::{Stage, Substrate};
    use geometry::{Kind, fields};
    use units::LengthUnit;

    fn takeoff(piece: &Piece, own: &[Rc<OwnMaterial>]) -> Result<Takeoff, Vec<Problem>> {
        super::takeoff(piece, own, Confidence::default())
    }

    fn nightstand() -> Piece {
        Piece::new(PieceId("n".into()), Kind::Nightstand)
    }

    fn measured(mut piece: Piece) -> Piece {
        let furniture = piece.furniture();
        for field in furniture.fields() {
            let inches = furniture.length(field).as_inches();
            piece.readings.insert(
                field.key,
                Reading::new(&format!("{inches}"), LengthUnit::Inch).unwrap(),
            );
        }
        piece
    }

    #[test]
    fn measuring_makes_the_area_surer() {
        let guessed = takeoff(&nightstand(), &[]).unwrap().painted;
        let measured = takeoff(&measured(nightstand()), &[]).unwrap().painted;
        assert_eq!(guessed.value, measured.value);
        let share = |estimate: Estimate<Area>| estimate.standard_uncertainty / estimate.value;
        assert!(share(guessed) > 0.1, "{}", share(guessed));
        assert!(share(measured) < 0.004, "{}", share(measured));
    }

    #[test]
    fn a_pair_takes_twice_the_paint_but_dirties_the_tool_once() {
        let one = takeoff(&measured(nightstand()), &[]).unwrap();
        let pair = Piece {
            count: 2,
            ..measured(nightstand())
        };
        let two = takeoff(&pair, &[]).unwrap();
        let shares = |t: &Takeoff| t.materials[2].need.shares.clone();
        assert!((shares(&two)[0].volume / shares(&one)[0].volume - 2.0).abs() < 1e-9);
        assert_eq!(shares(&one).last(), shares(&two).last());
    }

    #[test]
    fn a_choice_wins_over_the_default() {
        let mut piece = nightstand();
        let before = takeoff(&piece, &[]).unwrap();
        let left = SurfaceChoice {
            zone: None,
            painted: Some(false),
        };
        piece.choices.insert("top/top".into(), left);
        let after = takeoff(&piece, &[]).unwrap();
        let top = before
            .surfaces
            .iter()
            .find(|line| line.surface.id.to_string() == "top/top")
            .unwrap();
        let lost = (before.painted_each - after.painted_each).as_square_metres();
        assert!((lost - top.surface.net.as_square_metres()).abs() < 1e-12);
    }

    fn edited(edits: impl IntoIterator<Item = PieceEdit>) -> Piece {
        let id = PieceId("n".into());
        let workshop = Workshop {
            pieces: vec![Rc::new(measured(nightstand()))],
            ..Workshop::default()
        };
        let edits = edits.into_iter().map(|edit| Edit::Piece(id.clone(), edit));
        let workshop = edits.fold(workshop, |workshop, edit| workshop.apply(edit).unwrap());
        (*workshop.pieces[0]).clone()
    }

    /// Of the case and its legs, a reading that makes one larger makes the other smaller: their errors cancel in part, and
    /// neither the squares of each zone alone nor their plain sum tells what is true of the whole.
    #[test]
    fn errors_of_zones_hang_together() {
        let takeoff = takeoff(&measured(nightstand()), &[]).unwrap();
        let apart = takeoff.job.zones.iter().map(|zone| {
            let own = coatings::Patch::together(zone.patches.iter()).standard_uncertainty;
            own.as_square_metres()
        });
        let squares: f64 = apart.clone().map(|u| u * u).sum::<f64>().sqrt();
        let all = takeoff.painted.standard_uncertainty.as_square_metres();
        assert!(all < 0.9 * squares && squares < apart.sum(), "{squares} {all}");
    }

    #[test]
    fn legs_are_narrow_and_sides_are_not() {
        let takeoff = takeoff(&nightstand(), &[]).unwrap();
        let of = |key: &str| takeoff.job.zones.iter().find(|zone| zone.key == key).unwrap();
        let [broad, narrow] = [0, 1].map(|place: usize| of("base").patches[place].area);
        assert!(narrow > broad, "{narrow:?} {broad:?}");
        let top = &of("top").patches;
        assert_eq!(
            (top[0].narrow, top[1].narrow, top[1].area),
            (false, true, Area::ZERO)
        );
    }

    #[test]
    fn a_zone_of_its_own_colour_needs_a_can_of_its_own() {
        let red = crate::Colour([200, 0, 0]);
        let one = takeoff(&edited([]), &[]).unwrap();
        let two = takeoff(
            &edited([
                PieceEdit::Apart {
                    zone: "fronts".into(),
                    apart: true,
                },
                PieceEdit::Finish(Some("fronts".into()), SchemeEdit::Colour(red)),
            ]),
            &[],
        )
        .unwrap();
        let ids = |takeoff: &Takeoff| -> Vec<String> {
            takeoff.materials.iter().map(|line| line.id.clone()).collect()
        };
        assert_eq!(ids(&one), ["clean", "primer", "paint", "topcoat"]);
        assert_eq!(ids(&two), ["clean", "primer", "paint", "paint-2", "topcoat"]);
        let on_piece = |takeoff: &Takeoff, places: &[usize]| -> f64 {
            let lines = places.iter().map(|place| &takeoff.materials[*place]);
            lines.map(|line| line.need.shares[0].volume.as_litres()).sum()
        };
        assert!((on_piece(&one, &[2]) - on_piece(&two, &[2, 3])).abs() < 1e-9);
        assert_eq!(two.materials[3].need.colour, Some([200, 0, 0]));
    }

    #[test]
    fn every_amount_has_a_working_that_comes_to_the_best_estimate() {
        let takeoff = takeoff(&nightstand(), &[]).unwrap();
        for line in &takeoff.materials {
            let working = takeoff.working_of(line).unwrap();
            let best = line.need.linear().value.as_litres();
            assert!(
                (working.litres / best - 1.0).abs() < 1e-9,
                "{} {best}",
                working.litres
            );
        }
    }

    #[test]
    fn what_nobody_measured_makes_an_area_unsure() {
        let unsure = |piece: &Piece| takeoff(piece, &[]).unwrap().unsure_by;
        let before = unsure(&nightstand());
        let sum: f64 = before.iter().map(|(_, share)| share).sum();
        assert!((sum - 1.0).abs() < 1e-9 && before.is_sorted_by(|a, b| a.1 >= b.1));
        // Width, depth and height make most of any area.
        let large = [fields::WIDTH, fields::DEPTH, fields::HEIGHT].map(|field| field.id());
        assert!(large.contains(&before[0].0));
        let mut piece = nightstand();
        for (key, typed) in [("width", "20"), ("depth", "16"), ("height", "26")] {
            piece
                .readings
                .insert(key, Reading::new(typed, LengthUnit::Inch).unwrap());
        }
        assert!(!large.contains(&unsure(&piece)[0].0));
    }

    #[test]
    fn a_half_empty_can_is_less_likely_enough() {
        let begun = Workshop {
            pieces: vec![Rc::new(measured(nightstand()))],
            ..Workshop::default()
        };
        let have = |workshop: Workshop, edit| {
            let piece = &workshop.pieces[0];
            let edit = Edit::Have {
                piece: piece.id.clone(),
                material: "trim-enamel".into(),
                colour: Some(piece.scheme.colour.0),
                edit,
            };
            workshop.apply(edit).unwrap()
        };
        let probability = |workshop: &Workshop| {
            let materials = takeoff_in(workshop, &workshop.pieces[0]).unwrap().materials;
            materials[2].on_hand.as_ref().unwrap().enough.probability
        };
        let full = have(begun, HaveEdit::Can(Some("us-pint")));
        let half = have(full.clone(), HaveEdit::Level(Some("half")));
        assert!(probability(&full) > probability(&half));
        // Two cans are judged together.
        let mut line = (*half.books.lines("shelf")[0]).clone();
        line.id = "second".into();
        let values = line.values.iter().map(|(key, text)| (key.clone(), text.clone()));
        let values = values.map(|(key, text)| (&*Box::leak(key.into_boxed_str()), text));
        let second = BookEdit::Add("shelf", line.id.clone(), values.collect());
        let both = half.apply(Edit::Book(second)).unwrap();
        assert!(probability(&both) > probability(&half));
    }

    #[test]
    #[expect(clippy::too_many_lines, reason = "one comparison, checked column by column")]
    fn ways_are_compared_at_equal_coats_and_at_equal_film() {
        let piece = edited([PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Bare))]);
        let takeoff = takeoff(&piece, &[]).unwrap();
        let columns = compare(
            &Workshop::default(),
            &piece,
            &takeoff,
            &edges_by_zone(&piece).unwrap(),
        );
        let figure = |key: &str, id: &str| {
            let column = columns.iter().find(|column| column.key == key).unwrap();
            column.figures.iter().find(|figure| figure.id == id).unwrap()
        };
        // Two brushed coats of paint are 200 um wet, two rolled ones 140 um: a third reaches them.
        assert_eq!(figure("brush", "paint").coats_for_equal_film, 2);
        assert_eq!(figure("foam-roller", "paint").coats_for_equal_film, 3);
        let cans = |key: &str| figure(key, "paint").buy.as_ref().unwrap().need;
        assert!(cans("hvlp") > cans("brush"));
        let rolled = figure("foam-roller", "paint");
        assert!(rolled.likely < rolled.likely_at_equal_film);
        assert_eq!(
            figure("brush", "paint").likely,
            figure("brush", "paint").likely_at_equal_film
        );
        let minutes = |key: &str| {
            columns
                .iter()
                .find(|column| column.key == key)
                .unwrap()
                .planned
                .minutes
                .value
        };
        assert!(minutes("brush") > minutes("foam-roller"));
        let in_the_air = |key: &str| {
            let column = columns.iter().find(|column| column.key == key).unwrap();
            column
                .planned
                .lost
                .iter()
                .any(|(place, _)| *place == coatings::Place::InAir)
        };
        assert!(in_the_air("hvlp") && !in_the_air("brush"));
        assert_eq!(takeoff.materials[0].need.material.stage, Stage::Primer);
        for column in &columns {
            let each = column.figures.iter().map(|figure| figure.minutes.value);
            assert!((each.sum::<f64>() - column.planned.minutes.value).abs() < 1e-9);
        }
        // More coats for the same film are more work and more paint; the brush leaves the thickest film already.
        for column in &columns {
            let (planned, equal) = (&column.planned, &column.equal);
            if column.key == "brush" {
                assert_eq!(planned, equal);
            } else if column.key == "foam-roller" {
                assert!(planned.minutes.value < equal.minutes.value && planned.all() < equal.all());
            }
        }
        let (soonest, least) = soonest_and_least(&columns, ComparedAt::EqualFilm).unwrap();
        let later = |by: f64| {
            let mut column = soonest.clone();
            column.equal.minutes.value += by * column.equal.minutes.standard_uncertainty;
            column
        };
        let alike = |one: &WayColumn, other: &WayColumn| about_as_soon(one, other, ComparedAt::EqualFilm);
        assert!(alike(soonest, &later(0.9)) && alike(&later(0.9), soonest));
        assert!(!alike(soonest, &later(1.1)) && !alike(&later(1.1), soonest));
        let (planned, _) = soonest_and_least(&columns, ComparedAt::Planned).unwrap();
        let minutes = |column: &WayColumn| column.planned.minutes.value;
        assert!(
            columns
                .iter()
                .all(|column| !column.is_at_hand || minutes(planned) <= minutes(column))
        );
        assert!(
            columns
                .iter()
                .all(|column| column.figures.len() == takeoff.materials.len())
        );
        assert!(
            columns
                .iter()
                .any(|column| column.key == "hvlp" && !column.is_at_hand)
        );
        for column in columns.iter().filter(|column| column.is_at_hand) {
            assert!(soonest.equal.minutes.value <= column.equal.minutes.value);
            assert!(least.equal.all() <= column.equal.all());
        }
    }

    /// A sprayer is only spoken of where there is one, or where it is planned.
    #[test]
    fn what_is_not_at_hand_is_not_the_soonest() {
        let at_hand = |workshop: &Workshop, piece: &Piece| {
            let takeoff = takeoff(piece, &[]).unwrap();
            let columns = compare(workshop, piece, &takeoff, &edges_by_zone(piece).unwrap());
            let sprayer = columns.iter().find(|column| column.key == "hvlp").unwrap();
            sprayer.is_at_hand
        };
        let bare = Workshop::default();
        assert!(!at_hand(&bare, &nightstand()));
        let has = crate::BookEdit::Write("habits", "only".into(), "sprayer".into(), "yes".into());
        assert!(at_hand(&bare.apply(Edit::Book(has)).unwrap(), &nightstand()));
        let planned = edited([PieceEdit::Finish(None, SchemeEdit::Tool(2, "hvlp"))]);
        assert!(at_hand(&bare, &planned));
    }

    /// 16 by 19 inches of the side, and the outer faces of two legs of 1 1/2 by 6 inches: 322 square inches.
    #[test]
    fn a_side_is_left_at_one_touch() {
        let before = takeoff(&nightstand(), &[]).unwrap();
        let faces: Vec<&SurfaceLine> = side_faces(&before.surfaces, geometry::Side::Left).collect();
        let area: Area = faces.iter().map(|line| line.surface.net).sum();
        let names: Vec<String> = faces.iter().map(|line| line.surface.id.to_string()).collect();
        assert!(
            (area.as_square_metres() / 0.000_645_16 - 322.0).abs() < 1e-6,
            "{names:?}"
        );
        let left = takeoff(&edited([PieceEdit::Brush(names, crate::BrushTo::Left)]), &[]).unwrap();
        let gone = before.painted_each - left.painted_each - area;
        assert!(gone.as_square_metres().abs() < 1e-12);
    }

    /// Nothing that was entered goes without a word.
    #[test]
    fn what_does_not_count_says_so() {
        let notices = |piece: &Piece| takeoff(piece, &[]).unwrap().notices;
        assert_eq!(notices(&nightstand()), []);
        let mut piece = nightstand();
        let left = SurfaceChoice {
            zone: None,
            painted: Some(false),
        };
        for name in ["top/top", "top/moulded-front"] {
            piece.choices.insert(name.into(), left.clone());
        }
        let mut hole = PieceChange::new(ChangeKind::Hole {
            surface: "top/moulded-left".into(),
        });
        for field in [fields::PART_WIDTH, fields::PART_HEIGHT] {
            let reading = Reading::new("2", LengthUnit::Inch).unwrap();
            hole.readings.insert((0, field.key), reading);
        }
        piece.changes = vec![hole];
        let found = notices(&piece);
        assert!(
            matches!(
                &found[..],
                [Notice::Piece(geometry::Notice::NoSurfaceForHole { surface, .. }), Notice::NoSurface { surface: choice }]
                    if surface == "top/moulded-left" && choice == "top/moulded-front"
            ),
            "{found:?}"
        );
        // The profile that both are about.
        piece.styles.top_edge = geometry::Edge::Shaped(geometry::Shape::Ogee);
        assert_eq!(notices(&piece), []);
    }

    /// A touch on the back of an open row leaves all that one sees in it, and another brings all of it back.
    #[test]
    fn an_open_cubby_is_left_and_comes_back_at_one_touch() {
        let mut open = nightstand();
        open.bays[0].rows[0].fill = geometry::Fill::Open;
        let touch = |piece: &Piece| {
            let lines = takeoff(piece, &[]).unwrap().surfaces;
            let faces = touched_faces(piece, &lines, "back/front");
            let area: Area = faces.iter().map(|line| line.surface.net).sum();
            let names = faces.iter().map(|line| line.surface.id.to_string()).collect();
            let finished = faces.iter().any(|line| line.painted);
            let edit = PieceEdit::Brush(names, switched(&faces, finished));
            let workshop = Workshop {
                pieces: vec![Rc::new(piece.clone())],
                ..Workshop::default()
            };
            let workshop = workshop.apply(Edit::Piece(piece.id.clone(), edit)).unwrap();
            ((*workshop.pieces[0]).clone(), area)
        };
        let painted = |piece: &Piece| takeoff(piece, &[]).unwrap().painted_each;
        let (left, area) = touch(&open);
        let back = takeoff(&open, &[]).unwrap();
        let back = back
            .surfaces
            .iter()
            .find(|line| line.surface.id.to_string() == "back/front");
        // Beside the back there are floor, ceiling and two sides.
        assert!(area > back.unwrap().surface.net * 2.0);
        let gone = painted(&open) - painted(&left) - area;
        assert!(gone.as_square_metres().abs() < 1e-12);
        let (again, _) = touch(&left);
        assert_eq!(again, open);
    }

    /// Without its board the side is left, though its legs still go with it.
    #[test]
    fn a_side_is_finished_if_most_of_it_is() {
        let of = |piece: &Piece| {
            let takeoff = takeoff(piece, &[]).unwrap();
            let faces: Vec<&SurfaceLine> = side_faces(&takeoff.surfaces, geometry::Side::Left).collect();
            let all = faces.len();
            let painted = faces.iter().filter(|line| line.painted).count();
            (are_finished(&faces), painted, all)
        };
        let (finished, painted, all) = of(&nightstand());
        assert!(finished && painted == all && all > 1);
        let before = takeoff(&nightstand(), &[]).unwrap();
        let mut faces: Vec<&SurfaceLine> = side_faces(&before.surfaces, geometry::Side::Left).collect();
        faces.sort_by(|one, other| {
            other
                .surface
                .net
                .as_square_metres()
                .total_cmp(&one.surface.net.as_square_metres())
        });
        let board = vec![faces[0].surface.id.to_string()];
        let left = edited([PieceEdit::Brush(board, crate::BrushTo::Left)]);
        let (finished, painted, _) = of(&left);
        assert!(!finished && painted == all - 1);
    }

    #[test]
    fn a_piece_that_cannot_be_says_which_measurement() {
        let mut piece = nightstand();
        piece
            .readings
            .insert("height", Reading::new("2", LengthUnit::Inch).unwrap());
        let problems = takeoff(&piece, &[]).unwrap_err();
        assert_eq!(problems[0].field(), Some(fields::HEIGHT.id()));
    }

    /// The same piece entered twice, or on two devices, gets the same answer: its name decides nothing.
    #[test]
    fn pieces_that_are_alike_get_the_same_amounts() {
        let of = |id: &str| {
            let mut piece = Piece::new(PieceId(id.into()), Kind::Dresser);
            piece.name = id.into();
            takeoff(&piece, &[]).unwrap().materials
        };
        let first = of("0b0f2a5e-5a0c-4bb0-9f0e-2f6f3f0f6a11");
        for other in ["b", "invented-dresser", "7"] {
            assert_eq!(of(other), first);
        }
    }
}
