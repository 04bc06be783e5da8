//! Clean first, always: grease, the glue of stickers, smell.

use coatings::{Figure, Reason, Stage};
use geometry::Sense;
use units::{Area, Volume};

use super::cautions::{ALCOHOL, CLEANER, RAGS, SOLVENT, SUN_AND_VINEGAR};
use super::time::{self, A_DAY, WASHED};
use super::{Much, Of, PrepareStep, one_for};
use crate::document::generic;

/// How far a litre of soap solution goes, square metres: as far as a degreaser does.
const SOLUTION: Figure = Figure::practice(10.0, 20.0);
/// How far a litre goes that is sprayed inside, square metres.
const SPRAYED: Figure = Figure::practice(15.0, 30.0);

/// What the glue of stickers takes of alcohol, litres.
const ALCOHOL_TAKEN: Figure = Figure::practice(0.03, 0.1);
/// How far a litre of mineral spirits goes on wax, square metres.
const SPIRITS: Figure = Figure::practice(8.0, 16.0);

const CLEAN: Reason = Reason::practice(
    "Clean before anything is sanded, or the grease is rubbed in. Wipe, wait as the label says, wipe off, then with clean \
     water, and let it dry.",
);
const GLOSS: Reason = Reason::practice(
    "Wipe the deglosser on and off as its label says, on what is clean. It does not take the place of scuffing unless its \
     label says so.",
);
const STICKERS: Reason = Reason::practice(
    "Alcohol on a cloth takes off the glue of stickers. No oil: it leaves a film that paint slides off.",
);
const WAX: Reason = Reason::practice(
    "Wax and silicone polish come off with mineral spirits on cloths that are turned often.",
);
const SMELL: Reason = Reason::practice(
    "Spray the inside with vinegar and water, one to one, let it dry in the sun for a full day, and air it. Shellac over \
     the bare inside holds back what stays.",
);

/// What is planned of deglosser, or of all other cleaners, from and to; nothing where none is.
fn cleaners(of: &Of<'_>, deglosser: bool) -> Option<(Volume, Volume)> {
    let own = &of.workshop.materials;
    let needs = of.takeoff.materials.iter().map(|line| &line.need);
    let planned = needs.filter(|need| {
        let is_deglosser = generic(own, &need.material.key) == "deglosser";
        need.material.stage == Stage::Clean && is_deglosser == deglosser
    });
    planned.fold(None, |sum: Option<(Volume, Volume)>, need| {
        let (low, high) = sum.unwrap_or_default();
        Some((low + need.low(), high + need.high()))
    })
}

/// Gloss dulled with what is planned for it, once all is clean and mended.
pub(super) fn degloss(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let Some((low, high)) = cleaners(of, true) else {
        return;
    };
    let area = of.takeoff.painted.value;
    let step = PrepareStep::new("degloss", "Dull the gloss")
        .how([GLOSS])
        .takes(
            "Deglosser",
            Much::Volume(low, high),
            "the deglosser of the finish",
        )
        .cloths(area)
        .lasts(time::on(area, time::CLEAN))
        .waits(WASHED)
        .mind([CLEANER]);
    steps.push(step);
}

/// Grease off, with the degreaser that is planned or with soap; then glue and wax.
pub(super) fn clean(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let ready = cleaners(of, false);
    let area = of.takeoff.painted.value.as_square_metres();
    // A cleaner that is planned stands on the list as a material.
    let (what, (low, high), from) = match ready {
        Some(ready) => ("Cleaner, ready to use", ready, "the cleaners of the finish"),
        None => (
            "Soap solution",
            (
                Volume::litres(area / SOLUTION.high),
                Volume::litres(area / SOLUTION.low),
            ),
            "area / what a litre washes, 10 to 20 m² (110 to 215 ft²)",
        ),
    };
    let mut step = PrepareStep::new("clean", "Clean it all").how([CLEAN]);
    let much = Much::Volume(low, high);
    step = match ready {
        Some(_) => step.takes(what, much, from),
        None => step.buys("soap", what, much, from),
    };
    let habits = of.workshop.books.only("habits");
    if let Some(water) = habits.count("dilution").filter(|water| *water > 0) {
        let share = 1.0 / f64::from(water + 1);
        let from = "solution / (1 + parts of water)";
        step = step.takes(
            format!("Of that concentrate, 1 : {water}"),
            Much::Volume(low * share, high * share),
            from,
        );
    }
    step = step
        .takes(
            "Clean water",
            Much::Volume(low, high),
            "as much as of the solution",
        )
        .cloths(of.takeoff.painted.value)
        .lasts(time::on(of.takeoff.painted.value, time::CLEAN))
        .waits(WASHED)
        .mind([CLEANER]);
    steps.push(step);
    if of.piece.books.only("facts").is("stickers") {
        steps.push(
            PrepareStep::new("stickers", "Take off stickers and their glue")
                .how([STICKERS])
                .buys(
                    "alcohol",
                    "Alcohol",
                    Much::Volume(
                        Volume::litres(ALCOHOL_TAKEN.low),
                        Volume::litres(ALCOHOL_TAKEN.high),
                    ),
                    "30 to 100 mL for a piece (1 to 3 fl oz)",
                )
                .lasts((10.0, 20.0))
                .mind([ALCOHOL]),
        );
    }
    if of.piece.schemes().any(|scheme| scheme.condition.waxed) {
        steps.push(
            PrepareStep::new("wax", "Take off wax and polish")
                .how([WAX])
                .buys(
                    "spirits",
                    "Mineral spirits",
                    Much::Volume(
                        Volume::litres(area / SPIRITS.high),
                        Volume::litres(area / SPIRITS.low),
                    ),
                    "area / what a litre does, 8 to 16 m² (86 to 170 ft²)",
                )
                .cloths(of.takeoff.painted.value)
                .lasts(time::on(of.takeoff.painted.value, time::WAX))
                .waits(WASHED)
                .mind([SOLVENT, RAGS]),
        );
    }
}

impl PrepareStep {
    /// Cloths to wipe an area with.
    fn cloths(self, area: Area) -> Self {
        self.buys(
            "cloths",
            "Cloths",
            one_for(area, (1.0, 2.0)),
            "one for 1 to 2 m² (11 to 22 ft²)",
        )
    }
}

/// What the inside is sprayed with, if the piece smells.
pub(super) fn smell(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    if !of.piece.schemes().any(|scheme| scheme.condition.odour) {
        return;
    }
    let inside = of
        .takeoff
        .surfaces
        .iter()
        .filter(|line| line.surface.id.sense == Sense::Inside);
    let one: Area = inside.map(|line| line.surface.net).sum();
    let area = one * f64::from(of.piece.count);
    let half = |rate: f64| Volume::litres(area.as_square_metres() / rate / 2.0);
    let much = Much::Volume(half(SPRAYED.high), half(SPRAYED.low));
    let from = "half of: inside / what a litre wets, 15 to 30 m² (160 to 320 ft²)";
    let step = PrepareStep::new("smell", "Drive out the smell")
        .how([SMELL])
        .takes("Inside", Much::Area(area), "surfaces that look inside")
        .buys("vinegar", "Vinegar", much, from)
        .takes("Water", much, from)
        .lasts((10.0, 20.0))
        .waits(A_DAY)
        .mind([SUN_AND_VINEGAR]);
    steps.push(step);
}
