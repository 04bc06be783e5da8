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
pub(super) const CLEAN: Reason =
    practice("Grease, polish and dust keep every coat from holding: clean first.");
/// How bare wood is cleaned.
pub const WIPE_BARE: Reason = practice(
    "Bare wood: brush and vacuum it, then wipe off grease with mineral spirits. No degreaser: it is caustic and darkens wood.",
);
pub(super) const WAX_CLEAN: Reason = practice(
    "Wax and silicone polish make craters: wipe with mineral spirits too, turning to clean cloths, before anything is sanded.",
);
pub(super) const DEGLOSS: Reason = practice("Little holds on a gloss: dull it, then scuff-sand it.");
pub(super) const SCUFF: Reason =
    practice("Scuff-sand what is painted over with P180 and P220, and between coats lightly with P320.");
pub(super) const SOUND_PAINT: Reason = read(
    "Coats that peel from each other mostly lie on old paint that was poorly prepared: take off what is loose and clean the rest.",
    "Wood Handbook FPL-GTR-190 fig. 16-23 (p. 382)",
);

// Primers.
pub(super) const PRIME_OLD: Reason = practice("A primer gives the paint its hold on an old finish.");
pub(super) const PRIME_GLOSSY: Reason = practice("A bonding primer holds on a dulled gloss.");
pub(super) const PRIME_LAMINATE: Reason =
    practice("Nothing soaks into laminate: only a bonding primer holds.");
pub(super) const LAMINATE_HIDES: Reason =
    practice("Laminate hides the wood: its colour, pores and resin do not matter under it.");
pub(super) const SHELLAC_HOLDS: Reason =
    memory("Shellac holds on a dulled gloss, so it is the bonding primer too.");
pub(super) const BARE_SPOTS: Reason = practice(
    "Bare spots drink more and show through: prime them once on their own before the primer goes over all.",
);
pub(super) const NO_BLEED: &str =
    "This wood does not bleed as a rule, but it wants a good primer all the same.";
pub(super) const DRINKS: &str =
    "Open wood drinks the first coat: let it be the primer, and count on more of it.";
pub(super) const HARD_CLASS: &str =
    "This wood is of the hardest class for latex paint: an alkyd or shellac primer holds better on it.";

// Stain blockers.
pub(super) const BLEEDS: &str = "The colour of this wood comes through all but a dark paint: block it.";
pub(super) const EXTRACTIVES: Reason = read(
    "Water-soluble extractives want a primer that is labelled to block them, mostly an oil-alkyd one.",
    "Wood Handbook FPL-GTR-190 p. 378, of redwood and western redcedar",
);
pub(super) const OLD_RED: Reason = practice(
    "Old red stain comes through all but a dark paint, worse than anything: block it, with two coats.",
);
pub(super) const OIL_SOLUBLE: Reason = read(
    "Shellac as a coat between stops oil-soluble colours.",
    "TM 43-0139 s. 2-23",
);
pub(super) const ODOUR: Reason = practice("Shellac holds smells back.");
pub(super) const ODOUR_INSIDE: Reason = practice(
    "Smells sit in the unfinished wood. This plan is for what is finished; for the inside and the drawers, which want shellac \
     too, choose their surfaces on Surfaces, in a zone of their own.",
);
pub(super) const WAX_BARRIER: Reason = practice("Shellac parts the new coats from what is left of the wax.");
pub(super) const LATEX_WAIT: Reason = read(
    "If you take a latex stain blocker instead, wait 24 to 48 h before the first topcoat, or the bleed passes through it.",
    "Wood Handbook FPL-GTR-190 p. 378",
);
pub(super) const TEST_BLEED: Reason = practice(
    "Rub a damp white cloth on a hidden spot: what colours it will bleed. Try the blocker there first.",
);
pub(super) const DARK_BLEED: Reason =
    practice("A bleed hardly shows under a dark paint. Under any other, block it.");

// Knots and pores.
pub(super) const KNOTS: Reason = read(
    "Knots: shellac or knot sealer over the knots only, and only then the next coat. Nothing is certain to hold them.",
    "Wood Handbook FPL-GTR-190 p. 363",
);
pub(super) const FILL: Reason = read(
    "The pores of this wood show through: for a smooth paint, fill and sand before the primer.",
    "Wood Handbook FPL-GTR-190 p. 388",
);
pub(super) const FILLER_DRIES: Reason = read(
    "Paste wood filler is wiped after 5 to 10 minutes and dries 24 h before the next coat.",
    "NAVEDTRA 14044 p. 8-8",
);
pub(super) const PORES_CLEAR: Reason = practice(
    "The pores of this wood stay open under a clear finish. Fill them if it is to be as smooth as glass.",
);

// Clear finishes.
pub(super) const STAIN: Reason =
    practice("One coat, wiped off before it dries; a second only if it is too pale.");
pub(super) const STAIN_NEEDS_WOOD: Reason =
    practice("Stain colours bare wood only: strip the old finish and sand first.");
pub(super) const CLEAR_SHOWS: Reason =
    practice("A clear finish shows what is under it: to see the wood, strip the old paint first.");
/// What asks for the old finish to be taken off.
pub(super) const STRIPPED: [Reason; 2] = [CLEAR_SHOWS, STAIN_NEEDS_WOOD];
pub(super) const CLEAR_LAMINATE: Reason =
    practice("Clear coats hold badly on laminate: try them on a hidden spot first.");
pub(super) const SEAL_WOOD: Reason =
    practice("A sealer fills the wood, so that the clear coats stand on it.");
pub(super) const SEAL_STAIN: Reason =
    practice("Shellac over the stain keeps the clear coat from pulling it up.");
pub(super) const SEAL_OLD: Reason =
    practice("Dewaxed shellac holds on most old finishes, and clear coats hold on it.");

// Paint and clear coats.
pub(super) const TWO_PAINT: Reason = practice("Two coats of paint are usual for an even colour.");
pub(super) const TWO_CLEAR: Reason = practice("Two clear coats are usual where it is touched.");
pub(super) const NO_YELLOW: Reason =
    memory("Water-based clear coats do not yellow the colour under them, oil-based ones do.");
