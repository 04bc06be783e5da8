//! What chalk-type paint is made of: latex paint by its sheen, calcium carbonate, and how much binder they need.

use crate::sourced_range::{Provenance, SourcedRange};
use crate::unit::{GramsPerHundredGrams, KilogramsPerLitre};

/// Density of water near 20 degrees, kg/L (from memory).
pub const WATER_DENSITY: SourcedRange<KilogramsPerLitre> = SourcedRange::memory(0.998, 0.998);

/// Density of the linseed oil that oil absorption is measured with, kg/L.
pub(crate) const OIL_DENSITY: SourcedRange<KilogramsPerLitre> =
    SourcedRange::read(0.935, 0.935, "linseed oil, pigment-dispersion reference");

/// The pigment volume concentration at which the binder of a latex just fills the voids. Latex particles pack worse
/// than oil wets, so it lies below what oil absorption gives (from memory).
pub const LATEX_CPVC: SourcedRange = SourcedRange::memory(0.45, 0.60);

/// What to watch out for with the powder. 29 CFR 1910.1000, Table Z-1, limits its dust at work to 15 mg/m3 (from memory).
pub const DUST: &str = "Fine dust. Pour slowly, wear a dust mask and wipe up wet.";

/// A latex paint as it comes from the can.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Latex {
    /// Density, kg/L.
    pub density: SourcedRange<KilogramsPerLitre>,
    /// Volume solids, a fraction.
    pub volume_solids: SourcedRange,
    /// Pigment volume concentration: the share of pigment in the dry film.
    pub pvc: SourcedRange,
}

impl Latex {
    /// The density of usual latex paint, kg/L.
    pub const DENSITY: SourcedRange<KilogramsPerLitre> = SourcedRange::memory(1.2, 1.4);

    /// A latex of this sheen. Density and volume solids are from memory; a label takes precedence.
    pub const fn usual(sheen: &Sheen) -> Self {
        Latex {
            density: Latex::DENSITY,
            volume_solids: SourcedRange::memory(0.32, 0.45),
            pvc: sheen.pvc,
        }
    }
}

/// A sheen and its pigment content.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sheen {
    /// Its key in saved files.
    pub key: &'static str,
    /// Its name in the trade.
    pub label: &'static str,
    /// Pigment volume concentration.
    pub pvc: SourcedRange,
}

const fn sheen(key: &'static str, label: &'static str, low: f64, high: f64) -> Sheen {
    Sheen {
        key,
        label,
        pvc: SourcedRange::read(
            low,
            high,
            "pigment volume concentration by sheen, paint-trade teaching note",
        ),
    }
}

/// Sheens, the glossiest first.
pub static SHEENS: [Sheen; 5] = [
    sheen("gloss", "gloss", 0.0, 0.15),
    sheen("semi-gloss", "semi-gloss", 0.15, 0.25),
    sheen("satin", "satin", 0.30, 0.40),
    sheen("eggshell", "eggshell", 0.35, 0.45),
    sheen("flat", "flat", 0.40, 0.80),
];

impl Sheen {
    /// How a film with this share of pigment dries: the glossiest sheen that has so much.
    ///
    /// # Example
    /// ```
    /// use coatings::mix::Sheen;
    /// assert_eq!([0.10, 0.17, 0.25, 0.41].map(|pvc| Sheen::of(pvc).key), ["gloss", "semi-gloss", "semi-gloss", "eggshell"]);
    /// ```
    pub fn of(pvc: f64) -> &'static Sheen {
        let [.., flattest] = &SHEENS;
        SHEENS
            .iter()
            .find(|sheen| pvc <= sheen.pvc.high)
            .unwrap_or(flattest)
    }
}

/// A powder that flattens paint.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Powder {
    /// Its name in the trade.
    pub name: &'static str,
    /// True density of its grains, kg/L.
    pub density: SourcedRange<KilogramsPerLitre>,
    /// Oil absorption, grams of linseed oil to 100 g.
    pub oil_absorption: SourcedRange<GramsPerHundredGrams>,
    /// Density as it lies in a spoon, kg/L, loose to tapped.
    pub bulk: SourcedRange<KilogramsPerLitre>,
    /// The same if the grade is not known.
    pub bulk_any_grade: SourcedRange<KilogramsPerLitre>,
}

/// Calcium carbonate, the natural ground kind.
pub static CALCIUM_CARBONATE: Powder = Powder {
    name: "calcium carbonate",
    density: SourcedRange::new(2.71, 2.71, "calcite, mineral data", Provenance::Memory),
    // Millilitres in the source, taken for grams as the formula has them: 7 % too many, well within the limits.
    oil_absorption: SourcedRange::read(
        6.0,
        24.0,
        "natural grades 6 to 24 to 100 g, extender-pigment technical note",
    ),
    bulk: SourcedRange::read(
        0.8,
        1.2,
        "bulk 0.8, tapped 1.2 g/cm3, Handbook of Pharmaceutical Excipients, Calcium Carbonate, s. 10",
    ),
    bulk_any_grade: SourcedRange::read(
        0.4,
        1.2,
        "0.40 for a precipitated grade (supplier's specification) to 1.2 tapped (Handbook of Pharmaceutical Excipients)",
    ),
};

/// The critical pigment volume concentration by oil absorption `OA` (g to 100 g) and density of a powder (kg/L):
/// `CPVC = 1 / (1 + OA rho_p / (100 rho_b))`, with linseed oil of 0.935 kg/L (pigment-dispersion reference,
/// read). In a latex it is lower, see [`LATEX_CPVC`].
///
/// # Example
/// ```
/// assert!((coatings::mix::cpvc(15.0, 2.71) - 0.6970).abs() < 1e-4);
/// ```
pub fn cpvc(oil_absorption: f64, density: f64) -> f64 {
    1.0 / (1.0 + oil_absorption * density / (100.0 * OIL_DENSITY.middle()))
}

/// Whether the binder still covers the pigment.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Binder {
    /// Below the range in which a latex becomes short of binder.
    Covers,
    /// Within that range.
    Near,
    /// Above it.
    Over,
}

impl Binder {
    /// The state of the binder at a pigment volume concentration, by [`LATEX_CPVC`].
    pub fn judge(pvc: f64) -> Self {
        if pvc < LATEX_CPVC.low {
            Binder::Covers
        } else if pvc <= LATEX_CPVC.high {
            Binder::Near
        } else {
            Binder::Over
        }
    }

    /// What it means for the maker.
    pub fn words(self) -> &'static str {
        match self {
            Binder::Covers => "There's enough binder for the powder. You can wipe the film clean.",
            Binder::Near => {
                "There's barely enough binder for the powder. The film is chalky: topcoat or wax it."
            }
            Binder::Over => {
                "There's too little binder for the powder. The film rubs off: use less powder or seal it well."
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Natural grades by oil absorption, calculated: 6 g give 0.85, 24 g give 0.59.
    #[test]
    fn critical_concentrations() {
        assert!((cpvc(6.0, 2.71) - 0.85).abs() < 0.005 && (cpvc(24.0, 2.71) - 0.59).abs() < 0.005);
        assert_eq!(cpvc(0.0, 2.71), 1.0);
    }

    #[test]
    fn verdicts_turn_at_the_limits() {
        for (pvc, binder) in [
            (0.0, Binder::Covers),
            (0.449, Binder::Covers),
            (0.45, Binder::Near),
            (0.60, Binder::Near),
            (0.601, Binder::Over),
        ] {
            assert_eq!(Binder::judge(pvc), binder, "{pvc}");
        }
    }

    /// A PVC of 17 or 25 % is no matt film.
    #[test]
    fn a_film_dries_as_its_pigment_has_it() {
        for (pvc, key) in [
            (0.0, "gloss"),
            (0.15, "gloss"),
            (0.17, "semi-gloss"),
            (0.25, "semi-gloss"),
            (0.27, "satin"),
            (0.46, "flat"),
            (0.95, "flat"),
        ] {
            assert_eq!(Sheen::of(pvc).key, key, "{pvc}");
        }
        assert!(!Binder::judge(0.25).words().contains("matt"));
    }

    #[test]
    fn less_shine_is_more_pigment() {
        let rises = |pair: &[Sheen]| pair[0].pvc.low < pair[1].pvc.low && pair[0].pvc.high < pair[1].pvc.high;
        assert!(SHEENS.windows(2).all(rises));
        assert_eq!(Latex::usual(&SHEENS[0]).pvc, SHEENS[0].pvc);
    }
}
