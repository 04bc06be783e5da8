//! The job card: what goes on each group of a piece, what is not painted, and the warnings.

use std::borrow::Cow;
use std::rc::Rc;

use coatings::{Layer, Rgb, Stage, ZoneWork, in_sentence};
use units::Area;

use crate::document::{OwnMaterial, Piece, Scheme};
use crate::preparing::{OldFinish, of_lead};
use crate::takeoff::Takeoff;

/// Warnings for all work with coatings (common practice; the labels have the details).
const ALWAYS: &str = "Ventilate the room. Wear gloves, eye protection and the right mask. Keep flames and sparks away from solvents. Dry oily rags flat outdoors or soak them in water; in a pile they can catch fire on their own.";

/// The job card of a piece, in parts.
#[derive(Clone, Debug, PartialEq)]
pub struct JobCard {
    /// One part for each group of zones with the same finish.
    pub parts: Vec<CardPart>,
    /// The names of surfaces that the maker excluded from the finish of their zone.
    pub left_out: Vec<String>,
    /// Warnings, general ones first, then those of the materials.
    pub cautions: Vec<Cow<'static, str>>,
}

/// Zones with the same finish.
#[derive(Clone, Debug, PartialEq)]
pub struct CardPart {
    /// The names of the zones.
    pub zones: Vec<String>,
    /// The area of the zones, for the whole set.
    pub area: Area,
    /// The color, if a coat comes in colors.
    pub colour: Option<Rgb>,
    /// Objections to the plan.
    pub against: Vec<&'static str>,
    /// Advice for before the first coat.
    pub before: Vec<&'static str>,
    /// The coats, in order.
    pub steps: Vec<CardStep>,
}

/// Coats of one material.
#[derive(Clone, Debug, PartialEq)]
pub struct CardStep {
    /// The stage of the material.
    pub stage: Stage,
    /// The name of the material.
    pub material: String,
    /// The number of coats.
    pub coats: u32,
    /// The tools: `brush`, or `mini foam roller, narrow parts with brush`.
    pub with: String,
    /// The thinner to add before spraying, in percent of the volume. `None` if it is not thinned.
    pub thinned: Option<u32>,
}

/// Returns the job card of a piece. `own` are the maker's own materials.
pub fn job_card(piece: &Piece, own: &[Rc<OwnMaterial>], takeoff: &Takeoff) -> JobCard {
    let mut parts: Vec<CardPart> = Vec::new();
    let mut cautions: Vec<Cow<'static, str>> = vec![of_lead(piece).into(), ALWAYS.into()];
    for zone in &takeoff.job.zones {
        let area = zone.patches.iter().map(|patch| patch.area).sum();
        let label = piece.zone_label(&zone.key);
        let steps = steps(zone);
        let (against, notes) = advice(piece.scheme_of(&zone.key), own);
        // An old finish that contains lead must not be scuffed, sanded or removed.
        let before = match OldFinish::of(piece) {
            OldFinish::Lead => Vec::new(),
            _ => notes,
        };
        let colour = zone
            .layers
            .iter()
            .filter(|layer| layer.coats > 0)
            .find_map(|layer| layer.colour);
        let alike = |part: &&mut CardPart| {
            part.steps == steps && part.against == against && part.before == before && part.colour == colour
        };
        match parts.iter_mut().find(alike) {
            Some(part) => {
                part.zones.push(label);
                part.area += area;
            }
            None => parts.push(CardPart {
                zones: vec![label],
                area,
                colour,
                against,
                before,
                steps,
            }),
        }
        for layer in planned(zone) {
            let caution = Cow::Borrowed(layer.material.caution);
            if !caution.is_empty() && !cautions.contains(&caution) {
                cautions.push(caution);
            }
        }
    }
    let left_out = takeoff
        .surfaces
        .iter()
        .filter(|line| line.painted_with_zone && !line.painted);
    let left_out = left_out
        .map(|line| format!("{}, {}", line.surface.id.part.label(), line.surface.side_label()))
        .collect();
    JobCard {
        parts,
        left_out,
        cautions,
    }
}

/// Returns the objections to the plan, and the advice for the surface other than coats.
fn advice(scheme: &Scheme, own: &[Rc<OwnMaterial>]) -> (Vec<&'static str>, Vec<&'static str>) {
    let suggestion = scheme.suggestion(own);
    let texts = |of: &[coatings::Reason]| of.iter().map(|reason| reason.text).collect();
    (texts(&suggestion.against), texts(&suggestion.notes))
}

fn planned(zone: &ZoneWork) -> impl Iterator<Item = &Layer> {
    zone.layers.iter().filter(|layer| layer.coats > 0)
}

fn steps(zone: &ZoneWork) -> Vec<CardStep> {
    let step = |layer: &Layer| {
        let (tool, narrow) = (layer.tool_on(false), layer.tool_on(true));
        let mut with = in_sentence(tool.name);
        if tool.key != narrow.key {
            with = format!("{with}; {} for narrow parts", in_sentence(narrow.name));
        }
        CardStep {
            stage: layer.material.stage,
            material: layer.material.name.to_string(),
            coats: layer.coats,
            with,
            thinned: (layer.thinned > 0.0).then_some((layer.thinned * 100.0).round() as u32),
        }
    };
    // Cleaners are part of the steps before the coats.
    let coats = planned(zone).filter(|layer| layer.material.stage != Stage::Clean);
    coats.map(step).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::preparing::{LEAD, NO_LEAD};
    use crate::samples::takeoff;
    use crate::samples::written_down;
    use crate::{SchemeEdit, SurfaceChoice, invented_workshop};
    use coatings::Wish;

    #[test]
    fn what_the_test_for_lead_found_stands_first() {
        let first = |facts: &[(&'static str, &str)]| {
            let piece = &written_down(facts, &[]).pieces[0];
            let takeoff = takeoff(piece).unwrap();
            let card = job_card(piece, &[], &takeoff);
            let sands = card.parts.iter().flat_map(|part| &part.before);
            let sands = sands.filter(|text| text.contains("sand")).count();
            assert_eq!(sands == 0, facts.contains(&("lead", "positive")), "{facts:?}");
            card.cautions[0].clone()
        };
        assert_eq!(first(&[]), LEAD);
        assert_eq!(first(&[("lead", "negative")]), NO_LEAD);
        assert!(first(&[("lead", "positive")]).starts_with("Lead was found."));
    }

    #[test]
    fn every_planned_coat_and_every_area_is_in_a_part() {
        for piece in &invented_workshop().pieces {
            let takeoff = takeoff(piece).unwrap();
            let card = job_card(piece, &[], &takeoff);
            let area: Area = card.parts.iter().map(|part| part.area).sum();
            let painted = takeoff.painted.value;
            assert!((area / painted - 1.0).abs() < 1e-12);
            let mut steps = card.parts.iter().flat_map(|part| &part.steps);
            assert!(
                steps.all(|step| step.stage != Stage::Clean),
                "it is cleaned before"
            );
            let coats = takeoff.materials.iter();
            for line in coats.filter(|line| line.need.material.stage != Stage::Clean) {
                let steps = card.parts.iter().flat_map(|part| &part.steps);
                let coats = steps.filter(|step| *step.material == *line.need.material.name);
                assert_eq!(coats.map(|step| step.coats).max(), Some(line.coats));
            }
            assert_eq!(card.cautions[0], LEAD);
            assert!(
                card.cautions.len() > 2,
                "the materials have cautions of their own"
            );
        }
    }

    #[test]
    fn what_the_maker_left_out_is_named() {
        let mut piece = invented_workshop().pieces[0].as_ref().clone();
        let left = |piece: &Piece| job_card(piece, &[], &takeoff(piece).unwrap()).left_out;
        assert_eq!(left(&piece), Vec::<String>::new());
        let choice = SurfaceChoice {
            zone: None,
            painted: Some(false),
        };
        piece.choices.insert("top/top".into(), choice);
        assert_eq!(left(&piece).len(), 1);
        assert!(
            left(&piece)[0].to_lowercase().starts_with("top, "),
            "{:?}",
            left(&piece)
        );
    }

    #[test]
    fn zones_that_are_finished_alike_stand_together() {
        let piece = &invented_workshop().pieces[0];
        let card = job_card(piece, &[], &takeoff(piece).unwrap());
        assert_eq!(card.parts.len(), 1);
        assert!(card.parts[0].zones.len() > 2);
    }

    /// Stain over old paint cannot work. The card says so first, and says to scuff the old finish.
    #[test]
    fn what_the_surface_asks_for_stands_before_the_coats() {
        let mut piece = invented_workshop().pieces[0].as_ref().clone();
        let part = |piece: &Piece| {
            let takeoff = takeoff(piece).unwrap();
            job_card(piece, &[], &takeoff).parts.remove(0)
        };
        let sound = part(&piece);
        assert!(sound.before[0].starts_with("Scuff-sand"), "{:?}", sound.before);
        piece.scheme.condition.substrate = coatings::Substrate::PaintedSound;
        piece
            .finish(None, SchemeEdit::Suggested(Wish::StainedClear), &[])
            .unwrap();
        let stained = part(&piece);
        let against = stained.against;
        assert!(
            against[1].starts_with("Stain only colors bare wood"),
            "{against:?}"
        );
        // A finish that is stripped is not scuffed.
        let before = stained.before;
        assert!(
            !before.iter().any(|text| text.starts_with("Scuff-sand")),
            "{before:?}"
        );
    }
}
