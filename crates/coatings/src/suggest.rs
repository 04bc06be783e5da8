//! Recommended layers for a piece in a condition, with reasons.
//!
//! Suggestions are data. The maker may take or skip each one.

mod hiding;
mod reason;
mod reasons;
#[cfg(test)]
mod tests;

pub use hiding::hides_badly;
pub use reason::Reason;
pub use reasons::WIPE_BARE;

use crate::material::Stage;
use crate::sourced_range::Provenance;
use crate::species::{Bleed, LatexClass, Pores, Species};
use crate::substrate::Substrate;

/// The condition of a piece before it is finished.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Condition {
    /// What the first coat goes onto.
    pub substrate: Substrate,
    /// The wood, where it is known.
    pub species: Option<&'static Species>,
    /// An old red stain, as on mahogany of a century ago.
    pub old_red_stain: bool,
    /// Knots are to be seen.
    pub knots: bool,
    /// It smells: smoke, must.
    pub odour: bool,
    /// It was waxed or polished.
    pub waxed: bool,
    /// The old finish is gone in places.
    pub bare_spots: bool,
}

/// The finish that the maker wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wish {
    /// Paint.
    Painted {
        /// Whether a bleed shows through the color, as it does through all but dark ones.
        light: bool,
    },
    /// The wood as it is.
    Clear,
    /// The wood, in another color.
    StainedClear,
}

/// A material that is suggested.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SuggestedLayer {
    /// What it does in the finish.
    pub stage: Stage,
    /// The key of a generic material.
    pub material: &'static str,
    /// How many coats.
    pub coats: u32,
    /// Why; never empty.
    pub reasons: Vec<Reason>,
}

/// What is suggested.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Suggestion {
    /// What goes on, in its order. A stage may have two layers.
    pub layers: Vec<SuggestedLayer>,
    /// Problems that rule out this finish.
    pub against: Vec<Reason>,
    /// Other cautions.
    pub notes: Vec<Reason>,
}

impl SuggestedLayer {
    /// Whether the number of coats is free: for paint and topcoats it is, not for cleaners, stains or
    /// blockers.
    pub fn is_free_in_coats(&self) -> bool {
        matches!(self.stage, Stage::Paint | Stage::Topcoat)
    }
}

impl Suggestion {
    /// Whether the old finish has to come off first, for what is wanted is the wood.
    pub fn wants_bare_wood(&self) -> bool {
        self.against
            .iter()
            .any(|reason| reasons::STRIPPED.contains(reason))
    }
}

/// The recommended layers for a piece in this condition.
///
/// # Example
/// ```
/// use coatings::{Condition, Wish, suggest};
/// let condition = Condition { odour: true, ..Condition::default() };
/// let suggestion = suggest(&condition, Wish::Painted { light: true });
/// let materials: Vec<_> = suggestion.layers.iter().map(|layer| layer.material).collect();
/// assert_eq!(materials, ["degreaser", "shellac-primer", "trim-enamel", "water-polyurethane"]);
/// ```
pub fn suggest(condition: &Condition, wish: Wish) -> Suggestion {
    let against = against(condition, wish);
    // After stripping, the next layer goes onto bare wood. Laminate has no wood below.
    let found = condition;
    let stripped = Condition {
        substrate: Substrate::Bare,
        ..*condition
    };
    let comes_off = against.iter().any(|reason| reasons::STRIPPED.contains(reason));
    let condition = match comes_off && condition.substrate != Substrate::Laminate {
        true => &stripped,
        false => condition,
    };
    let mut layers = cleaners(condition, found.substrate);
    let mut topcoat_reasons = vec![reasons::TWO_CLEAR];
    match wish {
        Wish::Painted { light } => {
            layers.extend(primers(condition, light));
            layers.push(layer(Stage::Paint, "trim-enamel", 2, vec![reasons::TWO_PAINT]));
            if light {
                topcoat_reasons.push(reasons::NO_YELLOW);
            }
        }
        Wish::Clear => layers.push(sealer(condition, false)),
        Wish::StainedClear => {
            layers.push(layer(Stage::Stain, "wipe-on-stain", 1, vec![reasons::STAIN]));
            layers.push(sealer(condition, true));
        }
    }
    layers.push(layer(Stage::Topcoat, "water-polyurethane", 2, topcoat_reasons));
    let mut suggestion = Suggestion {
        layers,
        against,
        notes: notes(found, wish),
    };
    // A finish that is stripped needs no deglosser.
    if suggestion.wants_bare_wood() {
        let of_old = [reasons::SCUFF, reasons::SOUND_PAINT];
        suggestion.notes.retain(|note| !of_old.contains(note));
    }
    suggestion
}

/// Whether a degreaser may go onto a surface: it is caustic, so not onto bare wood (common practice, no source).
pub fn may_degrease(substrate: Substrate) -> bool {
    !substrate.is_open()
}

/// Whether a primer blocks stains.
pub fn blocks(material: &str) -> bool {
    matches!(material, "shellac-primer" | "alkyd-stain-blocker")
}

fn layer(stage: Stage, material: &'static str, coats: u32, reasons: Vec<Reason>) -> SuggestedLayer {
    SuggestedLayer {
        stage,
        material,
        coats,
        reasons,
    }
}

/// The cleaners; `found` is the surface before anything is stripped.
fn cleaners(condition: &Condition, found: Substrate) -> Vec<SuggestedLayer> {
    let mut layers = Vec::new();
    if may_degrease(found) {
        let mut why = vec![reasons::CLEAN];
        if condition.waxed {
            why.push(reasons::WAX_CLEAN);
        }
        layers.push(layer(Stage::Clean, "degreaser", 1, why));
    }
    if condition.substrate == Substrate::Glossy {
        layers.push(layer(Stage::Clean, "deglosser", 1, vec![reasons::DEGLOSS]));
    }
    layers
}

/// The wood, if a coat can come near it: laminate hides it.
fn wood(condition: &Condition) -> Option<&'static Species> {
    condition
        .species
        .filter(|_| condition.substrate != Substrate::Laminate)
}

/// The wood, if its color may come through a paint that is not dark.
fn bleeding(condition: &Condition) -> Option<&'static Species> {
    wood(condition).filter(|species| species.bleed.value != Bleed::None)
}

/// The statement that the wood is of the hardest class, if it is.
fn hard_class(condition: &Condition) -> Option<Reason> {
    let class = wood(condition)?.latex_class?;
    (class.value == LatexClass::III).then_some(Reason {
        text: reasons::HARD_CLASS,
        source: class.source,
        // The class was read; that III is the hardest is from memory.
        certainty: Provenance::Memory,
    })
}

/// Whether paint reaches the wood itself.
fn reaches_wood(condition: &Condition) -> bool {
    condition.substrate.is_open() || condition.bare_spots
}

/// Shellac blocks everything, so one reason for it decides. Alkyd is for woods whose extractives water dissolves
/// and for those that latex finds hard; on gloss and laminate shellac takes its place, because it holds there.
fn primers(condition: &Condition, light: bool) -> Vec<SuggestedLayer> {
    let slick = matches!(condition.substrate, Substrate::Glossy | Substrate::Laminate);
    let mut shellac = Vec::new();
    let mut alkyd = Vec::new();
    let red = light && condition.old_red_stain;
    if red {
        shellac.extend([reasons::OLD_RED, reasons::OIL_SOLUBLE]);
    }
    if condition.odour {
        shellac.push(reasons::ODOUR);
    }
    if condition.waxed {
        shellac.push(reasons::WAX_BARRIER);
    }
    if let Some(species) = bleeding(condition).filter(|_| light) {
        let bleeds = Reason {
            text: reasons::BLEEDS,
            source: species.bleed.source,
            certainty: species.bleed.certainty,
        };
        if species.pores.value == Pores::None && !slick {
            alkyd.extend([bleeds, reasons::EXTRACTIVES]);
        } else {
            shellac.push(bleeds);
        }
    }
    if reaches_wood(condition) && !slick {
        alkyd.extend(hard_class(condition));
    }

    let coats = if red { 2 } else { 1 };
    let substrate = ground_reason(condition);
    let (material, coats, mut why) = match (shellac.is_empty(), alkyd.is_empty()) {
        // The bonding primer of laminate is a layer of its own, under the shellac.
        (false, _) if condition.substrate == Substrate::Laminate => {
            return vec![
                layer(Stage::Primer, "bonding-primer", 1, vec![substrate]),
                layer(Stage::Primer, "shellac-primer", coats, shellac),
            ];
        }
        (false, _) => {
            shellac.append(&mut alkyd);
            if condition.substrate == Substrate::Glossy {
                shellac.push(reasons::SHELLAC_HOLDS);
            }
            ("shellac-primer", coats, shellac)
        }
        (true, false) => ("alkyd-stain-blocker", 1, alkyd),
        (true, true) => ("bonding-primer", 1, Vec::new()),
    };
    // On a glossy surface the shellac also replaces the bonding primer.
    if condition.substrate != Substrate::Glossy || material == "bonding-primer" {
        why.push(substrate);
    }
    vec![layer(Stage::Primer, material, coats, why)]
}

/// Why this surface wants a primer.
fn ground_reason(condition: &Condition) -> Reason {
    match condition.substrate {
        Substrate::Sealed | Substrate::PaintedSound => reasons::PRIME_OLD,
        Substrate::Glossy => reasons::PRIME_GLOSSY,
        Substrate::Laminate => reasons::PRIME_LAMINATE,
        Substrate::Bare | Substrate::Porous => {
            let first = condition.substrate.first_coat();
            Reason {
                text: reasons::DRINKS,
                source: first.source,
                certainty: first.certainty,
            }
        }
    }
}

/// Under clear coats: shellac where something is to be kept back or an old finish lies under it, a sanding sealer
/// on wood that is open.
fn sealer(condition: &Condition, stained: bool) -> SuggestedLayer {
    let mut why = Vec::new();
    if stained {
        why.push(reasons::SEAL_STAIN);
    }
    if condition.old_red_stain {
        why.push(reasons::OIL_SOLUBLE);
    }
    if condition.odour {
        why.push(reasons::ODOUR);
    }
    if condition.waxed {
        why.push(reasons::WAX_BARRIER);
    }
    if !condition.substrate.is_open() {
        why.push(reasons::SEAL_OLD);
    }
    if why.is_empty() {
        layer(Stage::Primer, "sanding-sealer", 1, vec![reasons::SEAL_WOOD])
    } else {
        layer(Stage::Primer, "clear-shellac", 1, why)
    }
}

fn notes(condition: &Condition, wish: Wish) -> Vec<Reason> {
    let mut notes = Vec::new();
    if !condition.substrate.is_open() {
        notes.push(reasons::SCUFF);
    }
    if !may_degrease(condition.substrate) {
        notes.push(reasons::WIPE_BARE);
        if condition.waxed {
            notes.push(reasons::WAX_CLEAN);
        }
    }
    if condition.substrate == Substrate::PaintedSound {
        notes.push(reasons::SOUND_PAINT);
    }
    if condition.substrate == Substrate::Laminate && condition.species.is_some() {
        notes.push(reasons::LAMINATE_HIDES);
    }
    if condition.bare_spots {
        notes.push(reasons::BARE_SPOTS);
    }
    if condition.odour {
        notes.push(reasons::ODOUR_INSIDE);
    }
    if condition.knots {
        notes.push(reasons::KNOTS);
    }
    if let Some(resin) = wood(condition).and_then(|species| species.resin)
        && (condition.knots || reaches_wood(condition))
    {
        notes.push(Reason {
            text: resin.value,
            source: resin.source,
            certainty: resin.certainty,
        });
    }
    match wish {
        Wish::Painted { light } => notes.extend(paint_notes(condition, light)),
        Wish::Clear | Wish::StainedClear => {
            if ring_porous(condition) {
                notes.push(reasons::PORES_CLEAR);
            }
        }
    }
    notes
}

/// Problems of the surface.
fn against(condition: &Condition, wish: Wish) -> Vec<Reason> {
    if let Wish::Painted { .. } = wish {
        return Vec::new();
    }
    let mut against = match condition.substrate {
        Substrate::PaintedSound => vec![reasons::CLEAR_SHOWS],
        Substrate::Laminate => vec![reasons::CLEAR_LAMINATE],
        _ => vec![],
    };
    if wish == Wish::StainedClear && !condition.substrate.is_open() {
        against.push(reasons::STAIN_NEEDS_WOOD);
    }
    against
}

fn ring_porous(condition: &Condition) -> bool {
    wood(condition).is_some_and(|species| species.pores.value == Pores::Ring)
}

fn paint_notes(condition: &Condition, light: bool) -> Vec<Reason> {
    let mut notes = Vec::new();
    let bleeds = condition.old_red_stain || bleeding(condition).is_some();
    match (bleeds, light) {
        (true, true) => notes.extend([reasons::TEST_BLEED, reasons::LATEX_WAIT]),
        (true, false) => notes.push(reasons::DARK_BLEED),
        (false, _) => {}
    }
    if let Some(species) = wood(condition) {
        // Only of some woods was it read that they do not bleed.
        if species.bleed.value == Bleed::None && species.bleed.certainty == Provenance::Read {
            notes.push(Reason {
                text: reasons::NO_BLEED,
                source: species.bleed.source,
                certainty: species.bleed.certainty,
            });
        }
    }
    if !reaches_wood(condition) {
        notes.extend(hard_class(condition));
    }
    if ring_porous(condition) {
        notes.extend([reasons::FILL, reasons::FILLER_DRIES]);
    }
    notes
}
