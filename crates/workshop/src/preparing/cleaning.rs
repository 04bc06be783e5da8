//! Cleaning, which always comes first: grease, sticker glue and odor.

use coatings::suggest::{WIPE_BARE, may_degrease};
use coatings::{Reason, SourcedRange, Stage};
use geometry::Exposure;
use units::{Area, Volume};

use super::cautions::{ALCOHOL, CLEANER, RAGS, SOLVENT, VINEGAR_AND_SUN};
use super::time::{self, A_DAY, WASHED};
use super::{Much, Of, PrepareStep, one_for};
use crate::book::{Facts, Habits};
use crate::document::generic;

/// The area that a liter of soap solution covers, in square meters. It equals that of a degreaser.
const SOLUTION: SourcedRange = SourcedRange::practice(10.0, 20.0);
/// The area that a liter of spray covers inside the piece, in square meters.
const SPRAYED: SourcedRange = SourcedRange::practice(15.0, 30.0);

/// The alcohol needed to remove sticker glue, in liters.
const ALCOHOL_TAKEN: SourcedRange = SourcedRange::practice(0.03, 0.1);
/// The area of wax or bare wood that a liter of mineral spirits covers, in square meters.
const SPIRITS: SourcedRange = SourcedRange::practice(8.0, 16.0);

const CLEAN: Reason = Reason::practice(
    "Clean before you sand, or you rub the grease in. Wipe on, wait as the label says, wipe off, rinse and let dry.",
);
const GLOSS: Reason = Reason::practice(
    "Use it on a clean surface, as the label says. It doesn't replace scuff-sanding unless the label says so.",
);
const STICKERS: Reason = Reason::practice(
    "Remove sticker glue with alcohol on a cloth. Don't use oil: paint won't stick to the film it leaves.",
);
const WAX: Reason =
    Reason::practice("Remove wax and silicone polish with mineral spirits. Turn the cloth often.");
const SMELL: Reason = Reason::practice(
    "Scrub the bare inside with detergent, or spray it with half vinegar, half water. Let it dry for a full day in moving air. If it still smells, seal the inside with shellac.",
);
const SHADE: Reason = Reason::read(
    "Air it out in the shade, not in the sun.",
    "M. Varese, restorer, Chicago Tribune, 12 May 1991",
);

/// Returns the planned volume of deglosser, or of all other cleaners, as a low and a high. Returns `None` if
/// none is planned. Cleaners planned for bare wood do not count, because bare wood is wiped instead.
fn cleaners(of: &Of<'_>, deglosser: bool) -> Option<(Volume, Volume)> {
    let own = &of.workshop.materials;
    let needs = of.takeoff.materials.iter().map(|line| &line.need);
    let planned = needs.filter(|need| {
        let is_deglosser = generic(own, &need.material.key) == "deglosser";
        need.material.stage == Stage::Clean && is_deglosser == deglosser
    });
    let is_washed = |zone: &usize| {
        let zone = of.takeoff.job.zones.get(*zone);
        zone.is_some_and(|zone| may_degrease(of.piece.scheme_of(&zone.key).condition.substrate))
    };
    planned.fold(None, |sum: Option<(Volume, Volume)>, need| {
        let all: Volume = need.by_zone.iter().map(|(_, volume)| *volume).sum();
        let washed = need.by_zone.iter().filter(|(zone, _)| is_washed(zone));
        let share = washed.map(|(_, volume)| *volume).sum::<Volume>() / all;
        let (low, high) = sum.unwrap_or_default();
        Some((low + need.low() * share, high + need.high() * share))
    })
}

/// Adds the step that dulls the gloss with the planned deglosser, after cleaning and repairs.
pub(super) fn degloss(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let Some((low, high)) = cleaners(of, true) else {
        return;
    };
    let area = of.takeoff.painted.value;
    let step = PrepareStep::new("degloss", "Degloss the shiny finish")
        .how([GLOSS])
        .takes("Deglosser", Much::Volume(low, high), "the deglosser on the plan")
        .cloths(area)
        .lasts(time::on(area, time::CLEAN))
        .waits(WASHED)
        .mind([CLEANER]);
    steps.push(step);
}

/// Returns the area that may be degreased and the area of bare wood, for the whole set.
fn by_ground(of: &Of<'_>) -> (Area, Area) {
    let zones = of.takeoff.job.zones.iter();
    zones.fold((Area::ZERO, Area::ZERO), |(washed, bare), zone| {
        let area: Area = zone.patches.iter().map(|patch| patch.area).sum();
        match may_degrease(of.piece.scheme_of(&zone.key).condition.substrate) {
            true => (washed + area, bare),
            false => (washed, bare + area),
        }
    })
}

/// Adds the cleaning steps. The planned degreaser or soap removes grease, but neither is used on bare wood.
/// Glue and wax come next.
pub(super) fn clean(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let (washed, bare) = by_ground(of);
    if washed > Area::ZERO {
        wash(of, washed, steps);
    }
    if bare > Area::ZERO {
        steps.push(
            PrepareStep::new("clean-bare", "Wipe down the bare wood")
                .how([WIPE_BARE])
                .spirits(bare)
                .cloths(bare)
                .lasts(time::on(bare, time::CLEAN))
                .waits(WASHED)
                .mind([SOLVENT, RAGS]),
        );
    }
    stickers_and_wax(of, steps);
}

fn wash(of: &Of<'_>, washed: Area, steps: &mut Vec<PrepareStep>) {
    let ready = cleaners(of, false);
    let area = washed.as_square_metres();
    // A planned cleaner is already on the list as a material.
    let (what, (low, high), from) = match ready {
        Some(ready) => ("Cleaner, ready to use", ready, "the cleaners on the plan"),
        None => (
            "Soap solution",
            (
                Volume::litres(area / SOLUTION.high),
                Volume::litres(area / SOLUTION.low),
            ),
            "area / coverage of a liter, 10 to 20 m² (110 to 215 ft²)",
        ),
    };
    let title = match ready {
        Some(_) => "Clean with degreaser, then rinse",
        None => "Wash with soap, then rinse",
    };
    let mut step = PrepareStep::new("clean", title).how([CLEAN]);
    let much = Much::Volume(low, high);
    step = match ready {
        Some(_) => step.takes(what, much, from),
        None => step.buys("soap", what, much, from),
    };
    let habits: Habits = of.workshop.books.one();
    if let Some(water) = habits.dilution.filter(|water| *water > 0) {
        let share = 1.0 / f64::from(water + 1);
        let from = "solution / (1 + parts of water)";
        step = step.takes(
            format!("Concentrate for that, 1:{water}"),
            Much::Volume(low * share, high * share),
            from,
        );
    }
    step = step
        .takes("Rinse water", Much::Volume(low, high), "same as the solution")
        .cloths(washed)
        .lasts(time::on(washed, time::CLEAN))
        .waits(WASHED)
        .mind([CLEANER]);
    steps.push(step);
}

fn stickers_and_wax(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    if of.piece.books.one::<Facts>().stickers {
        steps.push(
            PrepareStep::new("stickers", "Remove stickers and their glue")
                .how([STICKERS])
                .buys(
                    "alcohol",
                    "Alcohol",
                    Much::Volume(
                        Volume::litres(ALCOHOL_TAKEN.low),
                        Volume::litres(ALCOHOL_TAKEN.high),
                    ),
                    "30 to 100 mL per piece (1 to 3 fl oz)",
                )
                .lasts((10.0, 20.0))
                .mind([ALCOHOL]),
        );
    }
    if of.piece.schemes().any(|scheme| scheme.condition.waxed) {
        steps.push(
            PrepareStep::new("wax", "Remove wax and polish")
                .how([WAX])
                .spirits(of.takeoff.painted.value)
                .cloths(of.takeoff.painted.value)
                .lasts(time::on(of.takeoff.painted.value, time::WAX))
                .waits(WASHED)
                .mind([SOLVENT, RAGS]),
        );
    }
}

impl PrepareStep {
    /// Adds the mineral spirits needed to wipe an area.
    fn spirits(self, area: Area) -> Self {
        let litres = |rate: f64| Volume::litres(area.as_square_metres() / rate);
        self.buys(
            "spirits",
            "Mineral spirits",
            Much::Volume(litres(SPIRITS.high), litres(SPIRITS.low)),
            "area / coverage of a liter, 8 to 16 m² (86 to 170 ft²)",
        )
    }

    /// Adds the cloths needed to wipe an area.
    fn cloths(self, area: Area) -> Self {
        self.buys(
            "cloths",
            "Cloths",
            one_for(area, (1.0, 2.0)),
            "one per 1 to 2 m² (11 to 22 ft²)",
        )
    }
}

/// Adds the step that sprays the inside of a piece with an odor.
pub(super) fn smell(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    if !of.piece.schemes().any(|scheme| scheme.condition.odour) {
        return;
    }
    let inside = of
        .takeoff
        .surfaces
        .iter()
        .filter(|line| line.surface.id.exposure == Exposure::Inside);
    let one: Area = inside.map(|line| line.surface.net).sum();
    let area = one * f64::from(of.piece.count);
    let half = |rate: f64| Volume::litres(area.as_square_metres() / rate / 2.0);
    let much = Much::Volume(half(SPRAYED.high), half(SPRAYED.low));
    let from = "half of: inside / coverage of a liter, 15 to 30 m² (160 to 320 ft²)";
    let step = PrepareStep::new("smell", "Get rid of the smell")
        .how([SMELL, SHADE])
        .takes("Inside", Much::Area(area), "all inside surfaces")
        .buys("vinegar", "Vinegar", much, from)
        .takes("Water", much, from)
        .lasts((10.0, 20.0))
        .waits(A_DAY)
        .mind([VINEGAR_AND_SUN]);
    steps.push(step);
}
