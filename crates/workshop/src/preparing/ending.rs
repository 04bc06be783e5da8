//! The last steps, after the last coat: drawers that run and a price tag.

use coatings::Reason;
use geometry::{PartId, PartKind};

use super::found::OldFinish;
use super::{Much, Of, PrepareStep, When, time};

const DRAWERS: Reason = Reason::practice(
    "Rub dry soap or wax on the runners and the bottom edges of the drawers. No oil: it swells wood and collects dust.",
);
const PRICE: Reason =
    Reason::practice("Take photos in daylight. Put the price, the size and the finish on the tag.");

const DRAWERS_KEY: &str = "ease-drawers";
const PRICE_KEY: &str = "price-tag";
/// The shopping list key of what makes drawers run.
pub(crate) const RUNNER_WAX: &str = "runner-wax";

/// Returns true for a step that needs no setting up.
pub(super) fn is_quick(key: &str) -> bool {
    [DRAWERS_KEY, PRICE_KEY].contains(&key)
}

/// Adds the step that makes drawers run, for pieces that have any.
pub(super) fn drawers(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    let mut fronts: Vec<PartId> = Vec::new();
    for line in &of.takeoff.surfaces {
        let part = line.surface.id.part;
        if part.kind == PartKind::DrawerFront && !fronts.contains(&part) {
            fronts.push(part);
        }
    }
    let count = fronts.len() as u32 * of.piece.count;
    if count > 0 {
        let step = PrepareStep::new(DRAWERS_KEY, "Ease sticking drawers")
            .how([DRAWERS])
            .when(When::After)
            .takes("Drawers", Much::Count(count, count), "as drawn")
            .buys(
                RUNNER_WAX,
                "Dry soap or wax",
                Much::Count(1, 1),
                "one piece for all drawers",
            )
            .lasts(time::each(count, time::DRAWER));
        steps.push(step);
    }
}

/// Adds the step that prices the piece, unless it has lead paint.
pub(super) fn price(of: &Of<'_>, steps: &mut Vec<PrepareStep>) {
    if OldFinish::of(of.piece) != OldFinish::Lead {
        let step = PrepareStep::new(PRICE_KEY, "Tag and price it")
            .how([PRICE])
            .when(When::After)
            .lasts(time::each(of.piece.count, time::TAG));
        steps.push(step);
    }
}
