//! Testing, removing hardware, repairing and blocking stains.

use coatings::suggest::blocks;
use coatings::{Pores, Reason, SourcedRange, Wish};
use units::{Area, Mass, Volume};

use super::cautions::{ALCOHOL, HOT_VINEGAR, LEAD_FOUND, LEAD_TEST};
use super::filler::{OVERFILL, dents, holes};
use super::found::{OldFinish, Pits};
use super::time::{self, A_DAY, FILLED, GLUED};
use super::{Held, Much, Of, PrepareStep, When};
use crate::book::Facts;
use crate::document::generic;

const TEST: Reason = Reason::memory(
    "Test every old coat down to the wood, in hidden spots. Use a recognized test kit, or have a lab test a chip.",
);
const HARDWARE: Reason = Reason::practice(
    "Remove it before anything else. Bag each part with its screws and label where it goes.",
);
const HARDWARE_BACK: Reason = Reason::practice(
    "Wait until a fingernail leaves no mark. Turn the screws by hand, or the coat tears around them.",
);
const RUST: Reason = Reason::practice(
    "Boil rusty iron in vinegar and water for 20 minutes. Rinse, dry at once, then rub with 0000 steel wool.",
);
const FILLER: Reason = Reason::practice(
    "Small holes under paint: water-based filler. Damaged edges and corners: two-part filler, which is hard and doesn't shrink. Filler shows under stain: match it or skip it.",
);
const GLUE: Reason = Reason::practice(
    "Scrape out the old glue, reglue with white or yellow wood glue, and clamp. Hide glue suits antiques and can be opened again. Use epoxy only where wood is missing.",
);
const GRAIN: Reason = Reason::read(
    "This wood's pores show through paint. Brush on paste filler, wipe it off across the grain after 5 to 10 minutes, and let it dry for 24 hours.",
    "NAVEDTRA 14044 p. 8-8",
);
/// How many knobs or pulls one pad of steel wool cleans (common practice, no source).
const RUBBED: u32 = 12;
/// The volume of the bath for rusty iron, in liters.
const BATH: SourcedRange = SourcedRange::practice(0.5, 1.0);
/// The glue for the loose joints of a piece, in liters.
const JOINTS: SourcedRange = SourcedRange::practice(0.02, 0.06);
/// Grain filler paste, in kilograms per square meter: 10 lb for about 400 ft² ("Data on Painting", Building
/// Construction vol. 4).
const PASTE: f64 = 10.0 * units::exact::POUND / (400.0 * units::exact::SQUARE_FOOT);
const BLOCK: Reason = Reason::practice("Let the primer dry. Spot-prime again where stains come through.");

/// The key of the lead test step.
pub(crate) const LEAD_KEY: &str = "lead";

/// Adds the lead test, or the consequence of its result.
pub(super) fn lead(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    match OldFinish::of(of.piece) {
        OldFinish::Clear => {}
        OldFinish::Untested => {
            steps.push(
                PrepareStep::new(LEAD_KEY, "Test for lead")
                    .how([TEST])
                    .buys("test-kit", "Lead test kit", Much::Count(1, 1), "one per piece")
                    .lasts((10.0, 20.0))
                    .mind([LEAD_TEST]),
            );
        }
        OldFinish::Lead => {
            steps.push(
                // It has its own key so that checking off the test does not check this off too.
                PrepareStep::new("lead-found", "Leave the old finish alone: it has lead").mind([LEAD_FOUND]),
            );
        }
    }
}

/// Adds the steps for knobs, pulls and hinges.
pub(super) fn hardware(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let facts: Facts = of.piece.books.one();
    let Some(count) = facts.hardware.filter(|count| *count > 0) else {
        return;
    };
    let mut step = PrepareStep::new("hardware", "Remove the hardware")
        .how([HARDWARE])
        .takes("Knobs, pulls, hinges", Much::Count(count, count), "as counted")
        .lasts(time::each(count, (1.0, 2.0)));
    if facts.rust {
        let pads = count.div_ceil(RUBBED);
        step = step
            .how([RUST])
            .buys(
                "vinegar",
                "Vinegar",
                one_bath(),
                "half of a 0.5 to 1 L bath (1 to 2 pt)",
            )
            .buys(
                "steel-wool",
                "0000 steel wool, pads",
                Much::Count(1, pads),
                "one per 12 pieces",
            )
            .lasts((30.0, 45.0))
            .mind([HOT_VINEGAR]);
    }
    steps.push(step);
}

/// Adds the step that puts the hardware back.
pub(super) fn hardware_back(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let count = of.piece.books.one::<Facts>().hardware;
    if let Some(count) = count.filter(|count| *count > 0) {
        let step = PrepareStep::new("hardware-back", "Put the hardware back")
            .how([HARDWARE_BACK])
            .when(When::After)
            .lasts(time::each(count, (1.0, 2.0)));
        steps.push(step);
    }
}

/// Returns the vinegar for one bath of rusty iron. The bath is half water.
fn one_bath() -> Much {
    Much::Volume(Volume::litres(BATH.low / 2.0), Volume::litres(BATH.high / 2.0))
}

/// Adds the repair of holes, dents, joints and open grain.
pub(super) fn fill(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let facts: Facts = of.piece.books.one();
    if facts.loose_joints {
        steps.push(
            PrepareStep::new("glue", "Glue loose joints")
                .how([GLUE])
                .buys(
                    "glue",
                    "Wood glue",
                    Much::Volume(Volume::litres(JOINTS.low), Volume::litres(JOINTS.high)),
                    "20 to 60 mL per piece (0.7 to 2 fl oz)",
                )
                .lasts((20.0, 40.0))
                .waits(GLUED),
        );
    }
    let pits = [
        (Pits::holes(&facts), holes as fn(_, _, _) -> Volume),
        (Pits::dents(&facts), dents),
    ];
    let found = pits.iter().filter_map(|(pits, volume)| Some(((*pits)?, volume)));
    let (sum, count, is_usual) =
        found.fold((Volume::ZERO, 0, false), |(sum, count, usual), (pits, volume)| {
            let all = volume(pits.count, pits.width, pits.depth);
            (sum + all, count + pits.count, usual || pits.is_usual)
        });
    if count > 0 {
        let much = Much::Volume(sum * OVERFILL.low, sum * OVERFILL.high);
        let from = match is_usual {
            true => "volume at guessed sizes, times 1.1 to 1.4 for shrinkage",
            false => "volume of the holes and dents, times 1.1 to 1.4 for shrinkage",
        };
        let step = PrepareStep::new("fill", to_fill(&facts))
            .how([FILLER])
            .buys("filler", "Filler", much, from)
            .lasts(time::each(count, (0.5, 1.5)))
            .waits(FILLED);
        steps.push(step);
    }
    let own = &of.workshop.materials;
    let open = of.takeoff.job.zones.iter().filter(|zone| {
        let scheme = of.piece.scheme_of(&zone.key);
        let is_ring = |species: &coatings::Species| species.pores.value == Pores::Ring;
        let is_painted = matches!(scheme.wish(own), Wish::Painted { .. });
        zone.substrate.is_open() && is_painted && scheme.condition.species.is_some_and(is_ring)
    });
    let area: Area = open.flat_map(|zone| &zone.patches).map(|patch| patch.area).sum();
    if area > Area::ZERO {
        let paste = Mass::kilograms(area.as_square_metres() * PASTE);
        let from = "10 lb for 400 ft², \"Data on Painting\", Building Construction vol. 4";
        let step = PrepareStep::new("grain", "Fill the grain")
            .how([GRAIN])
            .lasts(time::on(area, time::GRAIN))
            .waits(A_DAY)
            .buys("paste-filler", "Paste filler", Much::Mass(paste, paste), from);
        steps.push(step);
    }
}

/// The title of the step that fills them, with their numbers.
fn to_fill(facts: &Facts) -> String {
    let counted = |count: Option<u32>, one: &str, many: &str| {
        let count = count.filter(|count| *count > 0)?;
        Some(format!("{count} {}", if count == 1 { one } else { many }))
    };
    let both = [
        counted(facts.holes, "hole", "holes"),
        counted(facts.dents, "dent", "dents"),
    ];
    let named: Vec<String> = both.into_iter().flatten().collect();
    format!("Fill {}", named.join(" and "))
}

/// Adds the blocking primer where stains could bleed through.
pub(super) fn block(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let own = &of.workshop.materials;
    let mut why: Vec<Reason> = Vec::new();
    let mut is_missing = false;
    for zone in &of.takeoff.job.zones {
        let scheme = of.piece.scheme_of(&zone.key);
        let suggestion = scheme.suggestion(own);
        let planned: Vec<&str> = zone
            .layers
            .iter()
            .filter(|layer| layer.coats > 0)
            .map(|layer| generic(own, &layer.material.key))
            .collect();
        for layer in suggestion
            .layers
            .into_iter()
            .filter(|layer| blocks(layer.material))
        {
            is_missing |= !planned.contains(&layer.material);
            for reason in layer.reasons {
                if !why.contains(&reason) {
                    why.push(reason);
                }
            }
        }
    }
    if why.is_empty() {
        return;
    }
    let missing = Held::Until("The plan has no stain blocker yet. Add the recommended one under Finish.");
    let step = PrepareStep::new("block", "Block stains")
        .how(why)
        .how([BLOCK])
        .when(When::Between)
        .held(is_missing.then_some(missing))
        .mind([ALCOHOL]);
    steps.push(step);
}
