//! Stripping, scuffing and sanding: the grits and the amounts of abrasive.

use crate::book::{DoneStep, Facts, Habits};
use coatings::{Reason, SourcedRange, Stage, Wish};
use units::{Area, Length, Volume};

use super::abrasive::{BETWEEN_CLEAR, BETWEEN_PAINT, Ladder, USUAL_YIELD, grit_name, sheets};
use super::cautions::{DUST, LEAD_TEST, STRIPPER};
use super::found::OldFinish;
use super::repairs::LEAD_KEY;
use super::time::{self, A_DAY};
use super::{Held, Much, Of, PrepareStep, When, one_for};

/// The area that a liter of stripper covers in one application, in square meters.
const STRIPPER_RATE: SourcedRange = SourcedRange::practice(2.5, 5.0);
/// The number of applications of stripper.
const STRIPPED_TIMES: SourcedRange = SourcedRange::practice(1.0, 2.0);

/// Between coats only nibs are sanded off, so a sheet lasts twice as long (common practice, no source).
const BETWEEN_LASTS: f64 = 2.0;

const STRIP: Reason = Reason::practice(
    "Take the old finish down to the wood with a stripper or a scraper. Wash off the residue.",
);
const LOOSE: Reason =
    Reason::practice("Wet it, scrape it off, and feather the edge. New coats peel off with it.");
const EDGES: Reason = Reason::practice(
    "Sand outer edges lightly, by hand. The finish is thin there, and you can sand through it.",
);
const DUST_OFF: Reason = Reason::practice(
    "Brush and vacuum, then wipe lightly with a tack rag. Pressing leaves resin on the wood.",
);
const TEST_FIRST: Held = Held::Until("Do the lead test first.");
const RESULT_FIRST: Held = Held::Until("Enter the lead test result first.");
const NEVER: Held = Held::ForGood("Lead was found. Don't sand or scrape this yourself.");

/// Zones that are sanded with the same grits.
struct Alike {
    ladder: Ladder,
    strip: bool,
    is_old: bool,
    zones: Vec<String>,
    plane: Area,
    profiled: Area,
    edges: Length,
}

/// Returns why an old finish, or wood that once had one, must not be sanded or scraped. Where lead was found,
/// residue stays in the pores of bare wood.
fn held(of: &Of<'_>, is_old: bool) -> Option<Held> {
    match OldFinish::of(of.piece) {
        OldFinish::Untested if is_old => {
            let is_tested = of.piece.books.has::<DoneStep>(LEAD_KEY);
            Some(if is_tested { RESULT_FIRST } else { TEST_FIRST })
        }
        OldFinish::Clear | OldFinish::Untested => None,
        OldFinish::Lead => Some(NEVER),
    }
}

/// Returns the groups of zones that are sanded with the same grits. Each has a suffix for the keys of its
/// steps and one for their titles.
fn alike_named(of: &Of<'_>) -> Vec<(Alike, String, String)> {
    let all = alike(of);
    let is_one = all.len() == 1;
    let named = all.into_iter().enumerate().map(|(number, alike)| {
        let behind = match number {
            0 => String::new(),
            number => format!("-{}", number + 1),
        };
        let names: Vec<&str> = alike.zones.iter().map(String::as_str).collect();
        let on = match is_one {
            true => String::new(),
            false => format!(": {}", names.join(", ")),
        };
        (alike, behind, on)
    });
    named.collect()
}

/// Adds the steps that remove old finish before filling.
pub(super) fn strip(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    if of.piece.books.one::<Facts>().loose {
        let step = PrepareStep::new("loose", "Scrape off loose finish")
            .how([LOOSE])
            .lasts(time::on(of.takeoff.painted.value, time::LOOSE))
            .dusty()
            .held(held(of, true))
            .mind([LEAD_TEST]);
        steps.push(step);
    }
    for (alike, behind, on) in alike_named(of).into_iter().filter(|(alike, ..)| alike.strip) {
        let area = alike.plane + alike.profiled;
        let step = PrepareStep::new(format!("strip{behind}"), format!("Strip the old finish{on}"))
            .how([STRIP])
            .lasts(time::on(area, time::STRIP))
            .dusty()
            .waits(A_DAY)
            .takes("Area", Much::Area(area), "area to coat")
            .buys(
                "stripper",
                "Stripper, unless you scrape",
                stripper(area),
                "area x 1 to 2 times / coverage of a liter, 2.5 to 5 m² (27 to 54 ft²)",
            )
            .held(held(of, alike.is_old))
            .mind([STRIPPER, LEAD_TEST]);
        steps.push(step);
    }
}

/// Adds the sanding before the first coat, and the dusting.
pub(super) fn sand(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    for (alike, behind, on) in alike_named(of) {
        let area = alike.plane + alike.profiled;
        let is_old = alike.is_old;
        let verb = if is_old && !alike.strip {
            "Scuff-sand"
        } else {
            "Sand"
        };
        let title = format!("{verb} with {}{on}", alike.ladder.spoken());
        let mut step = PrepareStep::new(format!("sand{behind}"), title)
            .how([alike.ladder.why, EDGES])
            .takes("Area", Much::Area(area), "area to coat")
            .takes(
                "Outer edges",
                Much::Length(alike.edges),
                "where two coated surfaces meet",
            );
        for grit in alike.ladder.grits {
            step = abrasive(of, step, grit, &alike).lasts(time::on(area, time::GRIT));
        }
        steps.push(step.held(held(of, is_old)).mind([DUST]).dusty());
    }
    let area = of.takeoff.painted.value;
    let step = PrepareStep::new("dust", "Wipe off the dust")
        .how([DUST_OFF])
        .lasts(time::on(area, time::DUST))
        .buys(
            "tack-rags",
            "Tack rags",
            one_for(area, (3.0, 6.0)),
            "one per 3 to 6 m² (32 to 65 ft²)",
        )
        .held(held(of, false))
        .mind([DUST])
        .dusty();
    steps.push(step);
}

/// Returns the stripper that an area takes.
fn stripper(area: Area) -> Much {
    let litres = |rate: f64, times: f64| Volume::litres(area.as_square_metres() * times / rate);
    Much::Volume(
        litres(STRIPPER_RATE.high, STRIPPED_TIMES.low),
        litres(STRIPPER_RATE.low, STRIPPED_TIMES.high),
    )
}

/// Adds the sanding between coats: every coat of primer, paint and clear except the last.
pub(super) fn between(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    for (stages, ladder, key, title) in [
        (
            &[Stage::Primer, Stage::Paint][..],
            BETWEEN_PAINT,
            "between-paint",
            "Sand between primer and paint coats",
        ),
        (
            &[Stage::Topcoat][..],
            BETWEEN_CLEAR,
            "between-clear",
            "Sand between clear coats",
        ),
    ] {
        let mut sum = Alike::new(ladder, false);
        for zone in &of.takeoff.job.zones {
            let coats = |among: &[Stage]| -> u32 {
                let layers = zone
                    .layers
                    .iter()
                    .filter(|layer| among.contains(&layer.material.stage));
                layers.map(|layer| layer.coats).sum()
            };
            // The last coat of the finish is not sanded.
            let is_last = stages.contains(&Stage::Topcoat) || coats(&[Stage::Topcoat]) == 0;
            let sanded = coats(stages).saturating_sub(u32::from(is_last));
            let (plane, profiled) = areas(of, &zone.key);
            sum.plane += plane * f64::from(sanded);
            sum.profiled += profiled * f64::from(sanded);
        }
        let area = sum.plane + sum.profiled;
        if area > Area::ZERO {
            let mut step = PrepareStep::new(key, title)
                .how([ladder.why])
                .lasts(time::on(area, time::BETWEEN))
                .takes(
                    "Area, counting each coat",
                    Much::Area(area),
                    "area x coats, except the last",
                );
            // By hand only, because a machine quickly cuts through a coat.
            for grit in ladder.grits {
                step = by_hand(of, step, grit, &sum, BETWEEN_LASTS);
            }
            steps.push(
                step.when(When::Between)
                    .held(held(of, false))
                    .mind([DUST])
                    .dusty(),
            );
        }
    }
}

/// Returns the minimum and maximum area that a sheet covers, in square meters: the maker's own figure or the
/// default. `longer` multiplies it where a sheet lasts longer.
fn yields(of: &Of<'_>, longer: f64) -> (f64, f64) {
    let own = of.workshop.books.one::<Habits>().sheet_yield;
    let (low, high) = own
        .map(Area::as_square_metres)
        .filter(|own| *own > 0.0)
        .map_or((USUAL_YIELD.low, USUAL_YIELD.high), |own| (own, own));
    (low * longer, high * longer)
}

/// Adds sheets of one grit, with everything sanded by hand.
fn by_hand(of: &Of<'_>, step: PrepareStep, grit: &'static str, alike: &Alike, longer: f64) -> PrepareStep {
    let (likely, most) = sheets(alike.plane, alike.profiled, yields(of, longer)).all_by_hand;
    step.buys(
        format!("sheets-{grit}"),
        format!("{}, by hand", grit_name(grit)),
        Much::Sheets(grit, likely, most),
        "area / area per sheet",
    )
}

/// Adds sheets of one grit, or discs and sheets.
fn abrasive(of: &Of<'_>, step: PrepareStep, grit: &'static str, alike: &Alike) -> PrepareStep {
    let step = by_hand(of, step, grit, alike, 1.0);
    let taken = sheets(alike.plane, alike.profiled, yields(of, 1.0));
    if taken.discs.1 <= 0.0 {
        return step;
    }
    step.takes(
        format!("{}, or with 5 in discs", grit_name(grit)),
        Much::Discs {
            discs: taken.discs,
            sheets: taken.beside_discs,
        },
        "flat faces by machine (a disc lasts a fifth as long as a sheet); edges and profiles by hand",
    )
}

/// Returns the flat and the profiled area of a zone, for the whole set.
fn areas(of: &Of<'_>, zone: &str) -> (Area, Area) {
    let lines = of
        .takeoff
        .surfaces
        .iter()
        .filter(|line| line.painted && line.zone == zone);
    let (plane, profiled) = lines.fold((Area::ZERO, Area::ZERO), |(plane, profiled), line| {
        let surface = &line.surface;
        match surface.multiplier > 1.0 || surface.is_edge {
            true => (plane, profiled + surface.net),
            false => (plane + surface.net, profiled),
        }
    });
    let count = f64::from(of.piece.count);
    (plane * count, profiled * count)
}

/// Groups the zones by the grits that they are sanded with.
fn alike(of: &Of<'_>) -> Vec<Alike> {
    let own = &of.workshop.materials;
    let mut all: Vec<Alike> = Vec::new();
    for zone in &of.takeoff.job.zones {
        let scheme = of.piece.scheme_of(&zone.key);
        let strip = scheme.suggestion(own).wants_bare_wood();
        let shows_wood = !matches!(scheme.wish(own), Wish::Painted { .. });
        // The substrate as found. The takeoff of a stripped zone uses the substrate underneath instead.
        let found = scheme.condition.substrate;
        let ladder = Ladder::of(found, shows_wood, strip);
        let place = all
            .iter()
            .position(|alike| alike.ladder == ladder && alike.strip == strip);
        let place = place.unwrap_or_else(|| {
            all.push(Alike::new(ladder, strip));
            all.len() - 1
        });
        let Some(alike) = all.get_mut(place) else { continue };
        alike.is_old |= found.is_old_finish();
        let (plane, profiled) = areas(of, &zone.key);
        let edges = of.edges.iter().find(|(key, _)| *key == zone.key);
        alike.plane += plane;
        alike.profiled += profiled;
        alike.edges += edges.map_or(Length::ZERO, |(_, edges)| {
            edges.arrises * f64::from(of.piece.count)
        });
        alike.zones.push(of.piece.zone_label(&zone.key));
    }
    all
}

impl Alike {
    fn new(ladder: Ladder, strip: bool) -> Self {
        Alike {
            ladder,
            strip,
            is_old: false,
            zones: Vec::new(),
            plane: Area::ZERO,
            profiled: Area::ZERO,
            edges: Length::ZERO,
        }
    }
}
