//! What the trade says for each suggestion, with its source.

use super::reason::Reason;

const fn read(text: &'static str, source: &'static str) -> Reason {
    Reason::read(text, source)
}

const fn practice(text: &'static str) -> Reason {
    Reason::practice(text)
}

const fn memory(text: &'static str) -> Reason {
    Reason::memory(text)
}

// Cleaning and sanding.
pub(super) const CLEAN: Reason = practice("Clean first. Nothing sticks to grease, polish or dust.");
/// How bare wood is cleaned.
pub const WIPE_BARE: Reason = practice(
    "Brush and vacuum bare wood, then wipe with mineral spirits. Skip the degreaser: it's caustic and darkens wood.",
);
pub(super) const WAX_CLEAN: Reason = practice(
    "Wax and silicone polish cause craters. Wipe with mineral spirits and clean cloths before you sand.",
);
pub(super) const DEGLOSS: Reason = practice("Little sticks to gloss. Dull it, then scuff-sand it.");
pub(super) const SCUFF: Reason =
    practice("Scuff-sand with 180- and 220-grit. Sand lightly between coats with 320-grit.");
pub(super) const SOUND_PAINT: Reason = read(
    "Most peeling comes from poor prep of old paint. Scrape off loose paint and clean the rest.",
    "Wood Handbook FPL-GTR-190 fig. 16-23 (p. 382)",
);

// Primers.
pub(super) const PRIME_OLD: Reason = practice("Primer helps paint stick to an old finish.");
pub(super) const PRIME_GLOSSY: Reason = practice("Bonding primer sticks to dulled gloss.");
pub(super) const PRIME_LAMINATE: Reason =
    practice("Nothing soaks into laminate. Only bonding primer sticks.");
pub(super) const LAMINATE_HIDES: Reason =
    practice("Laminate hides the wood, so its color, pores and resin don't matter.");
pub(super) const SHELLAC_HOLDS: Reason =
    memory("Shellac sticks to dulled gloss, so it's your bonding primer too.");
pub(super) const BARE_SPOTS: Reason =
    practice("Bare spots soak up more and show through. Spot-prime them first.");
pub(super) const NO_BLEED: &str = "This wood rarely bleeds, but it still needs a good primer.";
pub(super) const DRINKS: &str =
    "Porous wood soaks up the first coat. Make that the primer, and plan for more of it.";
pub(super) const HARD_CLASS: &str =
    "Latex sticks poorly to this wood. Alkyd or shellac primer sticks better.";

// Stain blockers.
pub(super) const BLEEDS: &str = "This wood's color bleeds through all but dark paint. Block it.";
pub(super) const EXTRACTIVES: Reason = read(
    "Tannins need a primer labeled to block them, most often an oil-alkyd.",
    "Wood Handbook FPL-GTR-190 p. 378, of redwood and western redcedar",
);
pub(super) const OLD_RED: Reason = practice(
    "Stains bleed through, old red stain worst. Block them with two coats, unless the paint is dark.",
);
pub(super) const OIL_SOLUBLE: Reason = read(
    "A coat of shellac in between stops oil-soluble dyes.",
    "TM 43-0139 s. 2-23",
);
pub(super) const ODOUR: Reason = practice("Shellac seals in odors.");
pub(super) const ODOUR_INSIDE: Reason = practice(
    "Odor sits in bare wood. Shellac the inside and the drawers too: give them their own group under Surfaces.",
);
pub(super) const WAX_BARRIER: Reason = practice("Shellac seals off any leftover wax.");
pub(super) const LATEX_WAIT: Reason = read(
    "With a latex stain blocker, wait 24 to 48 hours before the first topcoat, or it bleeds through.",
    "Wood Handbook FPL-GTR-190 p. 378",
);
pub(super) const TEST_BLEED: Reason = practice(
    "Rub a hidden spot with a damp white cloth. If it picks up color, it will bleed. Try the blocker there first.",
);
pub(super) const DARK_BLEED: Reason =
    practice("Bleed hardly shows under dark paint. Under any other, block it.");

// Knots and pores.
pub(super) const KNOTS: Reason = read(
    "Seal knots with shellac or knot sealer before the next coat. Nothing is certain to hold them.",
    "Wood Handbook FPL-GTR-190 p. 363",
);
pub(super) const FILL: Reason = read(
    "This wood's pores show through. For a smooth finish, fill and sand before you prime.",
    "Wood Handbook FPL-GTR-190 p. 388",
);
pub(super) const FILLER_DRIES: Reason = read(
    "Wipe paste wood filler after 5 to 10 minutes. Let it dry 24 hours before the next coat.",
    "NAVEDTRA 14044 p. 8-8",
);
pub(super) const PORES_CLEAR: Reason =
    practice("This wood's pores stay open under a clear finish. Fill them if you want it glass-smooth.");

// Clear finishes.
pub(super) const STAIN: Reason =
    practice("Apply one coat and wipe it off before it dries. Add a second only if it's too pale.");
pub(super) const STAIN_NEEDS_WOOD: Reason =
    practice("Stain only colors bare wood. Strip the old finish and sand first.");
pub(super) const CLEAR_SHOWS: Reason =
    practice("A clear finish shows what's under it. To see the wood, strip the old paint first.");
/// What asks for the old finish to be taken off.
pub(super) const STRIPPED: [Reason; 2] = [CLEAR_SHOWS, STAIN_NEEDS_WOOD];
pub(super) const CLEAR_LAMINATE: Reason =
    practice("Clear coats stick poorly to laminate. Try a hidden spot first.");
pub(super) const SEAL_WOOD: Reason = practice("Sealer fills the wood so the clear coats don't soak in.");
pub(super) const SEAL_STAIN: Reason =
    practice("Shellac over the stain keeps the clear coat from lifting it.");
pub(super) const SEAL_OLD: Reason =
    practice("Dewaxed shellac sticks to most old finishes, and clear coats stick to it.");

// Paint and clear coats.
pub(super) const TWO_PAINT: Reason = practice("Two coats of paint give an even color.");
pub(super) const TWO_CLEAR: Reason = practice("Use two clear coats where hands touch.");
pub(super) const NO_YELLOW: Reason =
    memory("Oil-based clear coats yellow the color under them. Water-based ones don't.");
