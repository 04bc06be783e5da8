//! How long to wait before a piece is used or sold.

use coatings::{Material, Reason, Stage, Thinner};

use super::cautions::{AIR, CHILD, RAGS, WARM};
use super::{Much, Of, PrepareStep, When};

const CURE: Reason = Reason::practice(
    "Dry to the touch isn't cured. Until then, put nothing on it and don't wet-wipe it. Warm, dry air speeds it up. The last coat's label has the time.",
);

/// Adds the curing step. The slowest coat decides how long it takes.
pub(super) fn cure(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let layers = of.takeoff.job.zones.iter().flat_map(|zone| &zone.layers);
    let planned = layers.filter(|layer| layer.coats > 0 && layer.material.stage != Stage::Clean);
    let cures = planned.map(|layer| layer.material.cure);
    let longest = cures.fold(None, |longest: Option<(f64, f64)>, cure| {
        let (low, high) = longest.unwrap_or_default();
        Some((low.max(cure.low), high.max(cure.high)))
    });
    if let Some((low, high)) = longest {
        let step = PrepareStep::new("cure", "Let it cure")
            .how([CURE])
            .when(When::After)
            .takes(
                "Before use",
                Much::Hours(low, high),
                "the longest cure time of all coats",
            )
            .mind([AIR, CHILD]);
        let has = |is_so: fn(&Material) -> bool| {
            let mut layers = of.takeoff.job.zones.iter().flat_map(|zone| &zone.layers);
            layers.any(|layer| layer.coats > 0 && is_so(&layer.material))
        };
        let has_oil = has(|material| material.thinner == Thinner::MineralSpirits);
        let must_stay_warm = has(|material| material.warm_after() > 0);
        steps.push(
            step.mind(must_stay_warm.then_some(WARM))
                .mind(has_oil.then_some(RAGS)),
        );
    }
}
