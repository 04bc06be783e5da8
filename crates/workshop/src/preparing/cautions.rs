//! Safety warnings for preparing a piece, with their sources. Labels, local rules and licensed practice take
//! precedence.

use coatings::Reason;

use super::found::OldFinish;
use crate::book::{Facts, LeadTest};
use crate::document::Piece;

/// The lead warning for any old finish. 1978 is the cutoff in the United States. Other countries use other
/// years.
pub const LEAD: &str = "Test for lead first. Paint from before 1978 often contains it. Don't sand or heat the finish until the test is clear. Labels and local rules come first. When in doubt, ask a licensed pro.";

/// The warning after a test found no lead.
pub const NO_LEAD: &str = "No lead was found at the spots you tested. Still wear a dust mask. Test again if you uncover other paint. Labels and local rules come first. When in doubt, ask a licensed pro.";

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
    "16 CFR 1303.1 (furniture made after 27 February 1978); testing first is guidance of EPA and HUD, from memory",
);
/// The warning after a test found lead.
pub(super) const LEAD_FOUND: Reason = Reason::memory(
    "Lead was found. Don't sand, scrape or heat this finish or the wood under it. Ask a certified contractor or your health department what to do. Keep children and food away, and wet-wipe any chips. Labels and local rules come first. When in doubt, ask a licensed pro.",
);
/// Sanding dust.
pub(super) const DUST: Reason =
    Reason::memory("Use dust extraction. Wear eye protection and a dust mask (N95, FFP2 or better).");
/// Alcohol, and shellac dissolved in it.
pub(super) const ALCOHOL: Reason = Reason::memory(
    "Alcohol vapor ignites at room temperature. Open the windows. No flame, pilot light or spark nearby.",
);
/// Mineral spirits.
pub(super) const SOLVENT: Reason = Reason::memory(
    "Mineral spirits burn, and the vapor is harmful. Open the windows, wear gloves, and keep flames and sparks away.",
);
/// Oily rags.
pub(super) const RAGS: Reason = Reason::read(
    "Rags with drying oil, oil stain or oil varnish can catch fire on their own within hours. Dry them flat outdoors, or soak them in water in a closed metal can.",
    "Harvard GSD Fabrication Lab, pointing to NFPA; 29 CFR 1926.252(e) as cited by an insurer",
);
/// Cleaners.
pub(super) const CLEANER: Reason = Reason::memory(
    "Wear gloves and eye protection. Follow the cleaner's label. Never mix cleaners with bleach.",
);
/// Hot vinegar.
pub(super) const HOT_VINEGAR: Reason = Reason::memory(
    "Boil vinegar in an old pot with the window open. Never mix it with bleach: that makes a poisonous gas. Plating or lacquer may come off, so try one piece first.",
);
/// Vinegar and sun on a finish that stays.
pub(super) const VINEGAR_AND_SUN: Reason = Reason::practice(
    "Vinegar dulls a finish you want to keep. Keep the piece out of the sun: it cracks and bleaches the finish.",
);
/// Paint strippers.
pub(super) const STRIPPER: Reason = Reason::read(
    "Don't use a stripper with methylene chloride. It has killed people, and is banned for consumers in the United States. Follow the label of any other. Wear gloves and get plenty of fresh air.",
    "84 FR 11420 (40 CFR 751)",
);
/// Pieces for children or in contact with food.
pub(super) const CHILD: Reason = Reason::read(
    "For children's furniture or food contact, use only products labeled for it, fully cured. Paint on furniture you sell may contain at most 90 parts per million of lead.",
    "16 CFR 1303.1",
);
/// Room temperature after coating.
pub(super) const WARM: Reason = Reason::read(
    "Keep the room at 50 °F (10 °C) or more for 24 hours after each water-based coat.",
    "Wood Handbook FPL-GTR-190 p. 378, of latex",
);
/// Ventilation.
pub(super) const AIR: Reason = Reason::read(
    "Ventilate the room, for yourself and so the coat cures.",
    "MIL-HDBK-1110 9.6.8.2",
);
