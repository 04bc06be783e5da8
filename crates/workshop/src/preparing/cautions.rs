//! Safety warnings for preparing a piece, with their sources. Labels, local rules and licensed practice take
//! precedence.

use coatings::Reason;

use super::found::OldFinish;
use crate::book::{Facts, LeadTest};
use crate::document::Piece;

/// The lead warning for any old finish. 1978 is the cutoff in the United States. Other countries use other
/// years.
pub const LEAD: &str = "Old paint, above all from before 1978, may hold lead. Test before any sanding; until it is \
                        clear, no dry sanding and no heat. Labels, local rules and licensed practice come first.";

/// The warning after a test found no lead.
pub const NO_LEAD: &str = "The test found no lead at the spots that were tested. Wear a mask for fine dust all the same, and test again where \
                           other paint comes to light. Labels, local rules and licensed practice come first.";

/// Returns the lead warning that fits what is known about the old finish of a piece.
pub fn of_lead(piece: &Piece) -> &'static str {
    match (OldFinish::of(piece), piece.books.one::<Facts>().lead) {
        (OldFinish::Lead, _) => LEAD_FOUND.text,
        (_, Some(LeadTest::Negative)) => NO_LEAD,
        _ => LEAD,
    }
}

/// The source of [`LEAD`].
pub(super) const LEAD_TEST: Reason = Reason::read(
    LEAD,
    "16 CFR 1303.1 (furniture made after 27 February 1978); that one tests first is guidance of EPA and HUD, from memory",
);
/// The warning after a test found lead.
pub(super) const LEAD_FOUND: Reason = Reason::memory(
    "Lead was found: do not sand, scrape or heat this finish or the wood under it. Ask a certified contractor or the health office what may be \
     done; keep children and food away from it, and wipe up chips wet. Labels, local rules and licensed practice come first.",
);
/// Sanding dust.
pub(super) const DUST: Reason = Reason::memory(
    "Draw the dust off at the tool, and wear a mask for fine dust (N95, FFP2 or better) and eye protection.",
);
/// Alcohol, and shellac dissolved in it.
pub(super) const ALCOHOL: Reason = Reason::memory(
    "The vapour of alcohol burns already at the warmth of a room: no flame, pilot light or spark near it, and open the \
     windows.",
);
/// Mineral spirits.
pub(super) const SOLVENT: Reason = Reason::memory(
    "Mineral spirits burn, and their vapour harms: open the windows, wear gloves, keep flames and sparks away.",
);
/// Oily rags.
pub(super) const RAGS: Reason = Reason::read(
    "Rags with drying oil, oil stain or oil varnish can catch fire by themselves within hours: lay them flat outdoors, or \
     drown them in water in a closed metal can.",
    "Harvard GSD Fabrication Lab, pointing to NFPA; 29 CFR 1926.252(e) as cited by an insurer",
);
/// Cleaners.
pub(super) const CLEANER: Reason = Reason::memory(
    "Gloves and eye protection, as the label of the cleaner says. Never mix cleaners with bleach.",
);
/// Hot vinegar.
pub(super) const HOT_VINEGAR: Reason = Reason::memory(
    "Boil vinegar with the window open and an old pot, never together with bleach, which gives off a poisonous gas. Plated \
     or lacquered hardware may lose its skin: try one piece.",
);
/// Vinegar and sun on a finish that stays.
pub(super) const VINEGAR_AND_SUN: Reason = Reason::practice(
    "Keep vinegar off a finish that stays: it dulls it. Keep the piece out of the sun, which cracks and bleaches a finish.",
);
/// Paint strippers.
pub(super) const STRIPPER: Reason = Reason::read(
    "Take no stripper with methylene chloride: it has killed people, and is banned for consumers in the United States. Use \
     any other as its label says, with gloves and much air.",
    "84 FR 11420 (40 CFR 751)",
);
/// Pieces for children or in contact with food.
pub(super) const CHILD: Reason = Reason::read(
    "For a child, and where food lies: only what its label allows for that, cured in full. No paint on furniture that is \
     sold may hold more lead than 90 parts in a million.",
    "16 CFR 1303.1",
);
/// Room temperature after coating.
pub(super) const WARM: Reason = Reason::read(
    "Keep the room at 50 °F (10 °C) or more for 24 hours after each water-based coat.",
    "Wood Handbook FPL-GTR-190 p. 378, of latex",
);
/// Ventilation.
pub(super) const AIR: Reason = Reason::read(
    "Air the room: it is needed for you, and for the coat to cure.",
    "MIL-HDBK-1110 9.6.8.2",
);
