//! Spoons, cups and jugs: volumes and tolerances.

use units::{Density, Mass, Volume};

use crate::estimate::Estimate;
use crate::sourced_range::SourcedRange;
use crate::unit::{KilogramsPerLitre, Litres};

/// A spoon or a cup.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// Its key in saved files.
    pub key: &'static str,
    /// Its label on screen.
    pub label: &'static str,
    /// What it holds by its definition, and where that stands; in liters.
    pub holds: SourcedRange<Litres>,
    /// What is in it when a maker calls it full, as a fraction of that.
    pub filled: SourcedRange,
}

const GALLON: &str =
    "part of the US gallon of 231 cubic inches, NIST Handbook 44 App. C (gallon from memory)";

/// Tolerances: a twentieth for a filled cup, a tenth for a spoon. No standard for either was found.
const CUP: SourcedRange = SourcedRange::practice(0.95, 1.05);
const SPOON: SourcedRange = SourcedRange::practice(0.9, 1.1);

const fn exact(key: &'static str, label: &'static str, litres: f64, filled: SourcedRange) -> Measure {
    Measure {
        key,
        label,
        holds: SourcedRange::calculated(litres, litres, GALLON),
        filled,
    }
}

const fn remembered(key: &'static str, label: &'static str, litres: f64, filled: SourcedRange) -> Measure {
    Measure {
        key,
        label,
        holds: SourcedRange::memory(litres, litres),
        filled,
    }
}

/// Spoons and cups. The sizes of US labeling are those of 21 CFR 101.9(b)(5), from memory.
pub static MEASURES: [Measure; 8] = [
    exact("us-cup", "US cup", 0.236_588_236_5, CUP),
    exact("us-tablespoon", "US tablespoon", 0.014_786_764_781_25, SPOON),
    exact("us-teaspoon", "US teaspoon", 0.004_928_921_593_75, SPOON),
    remembered("label-cup", "cup of US food labels, 240 mL", 0.240, CUP),
    remembered("label-tablespoon", "tablespoon, 15 mL", 0.015, SPOON),
    remembered("label-teaspoon", "teaspoon, 5 mL", 0.005, SPOON),
    remembered("metric-cup", "metric cup, 250 mL", 0.250, CUP),
    remembered("au-tablespoon", "Australian tablespoon, 20 mL", 0.020, SPOON),
];

/// The measure with this key in saved files.
pub fn measure(key: &str) -> Option<&'static Measure> {
    MEASURES.iter().find(|measure| measure.key == key)
}

impl Measure {
    /// What it holds by its definition.
    pub fn volume(&self) -> Volume {
        Volume::litres(self.holds.middle())
    }

    /// The volume of several. The same spoon is filled the same way each time, so its error does not average
    /// out: `u = count x u(one)` (JCGM 100, 5.2.2).
    pub fn of(&self, count: f64) -> Estimate<Volume> {
        let all = self.volume() * count;
        let filled = self.filled.distribution();
        Estimate {
            value: all * filled.mean(),
            standard_uncertainty: all * filled.standard_uncertainty(),
        }
    }
}

/// A kind of jug, by how it is marked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Jug {
    /// Filled to a line, as most jugs are.
    Line,
    /// Filled to the brim.
    Brim,
    /// A measuring cylinder of a laboratory.
    Cylinder,
}

const LINE: &str = "line measures for serving, UK SI 1988/120, Schedule, Table 2";
const BRIM: &str = "brim measures, UK SI 1988/120, Schedule, Table 1";
const CYLINDER: &str = "measuring cylinders, UK SI 1987/51, Schedule";

/// Nominal volume, what may lack, what may be over; in milliliters.
type Row = (f64, f64, f64);

static LINES: [Row; 4] = [
    (100.0, 5.0, 5.0),
    (250.0, 10.0, 10.0),
    (500.0, 15.0, 15.0),
    (1000.0, 30.0, 30.0),
];
static BRIMS: [Row; 3] = [(250.0, 0.0, 20.0), (500.0, 0.0, 30.0), (1000.0, 0.0, 60.0)];
static CYLINDERS: [Row; 4] = [
    (100.0, 0.8, 0.8),
    (250.0, 1.5, 1.5),
    (500.0, 2.0, 2.0),
    (1000.0, 4.0, 4.0),
];

/// The limits, in liters, of what a jug holds at a mark. Between two sizes of the table the errors of the larger
/// one are allowed, as for a mark half way up it. Nothing above a liter, or at no volume.
///
/// # Example
/// ```
/// use coatings::mix::{Jug, jug_limits};
/// use units::Volume;
/// let limits = jug_limits(Jug::Line, Volume::millilitres(250.0)).unwrap();
/// assert!((limits.low - 0.240).abs() < 1e-12 && (limits.high - 0.260).abs() < 1e-12);
/// ```
pub fn jug_limits(jug: Jug, mark: Volume) -> Option<SourcedRange<Litres>> {
    let (rows, source): (&[Row], _) = match jug {
        Jug::Line => (&LINES, LINE),
        Jug::Brim => (&BRIMS, BRIM),
        Jug::Cylinder => (&CYLINDERS, CYLINDER),
    };
    let volume = mark.as_millilitres();
    // The tolerance absorbs rounding noise: 250 mL may be given as a quarter of a liter.
    let &(_, under, over) = rows.iter().find(|row| volume <= row.0 + 1e-9)?;
    let limit = |millilitres: f64| Volume::millilitres(millilitres.max(0.0)).as_litres();
    (volume > 0.0).then(|| SourcedRange::read(limit(volume - under), limit(volume + over), source))
}

/// The least and the most that a volume of loose powder can weigh, by its bulk density in kg/L.
pub fn powder_limits(volume: Volume, bulk: SourcedRange<KilogramsPerLitre>) -> (Mass, Mass) {
    let at = |density: f64| volume * Density::kilograms_per_litre(density);
    (at(bulk.low), at(bulk.high))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mix::CALCIUM_CARBONATE;

    #[test]
    fn names_are_found_and_cups_hold_sixteen_tablespoons() {
        for one in &MEASURES {
            assert_eq!(measure(one.key), Some(one));
        }
        let volume = |key| measure(key).unwrap().volume();
        assert!((volume("us-cup") / volume("us-tablespoon") - 16.0).abs() < 1e-12);
        assert!((volume("us-tablespoon") / volume("us-teaspoon") - 3.0).abs() < 1e-12);
        assert!((volume("us-cup").as_litres() - units::VolumeUnit::UsCup.of(1.0).as_litres()).abs() < 1e-15);
    }

    #[test]
    fn the_error_of_one_spoon_is_that_of_all() {
        let spoon = measure("label-tablespoon").unwrap();
        let (one, four) = (spoon.of(1.0), spoon.of(4.0));
        assert!((four.value.as_millilitres() - 60.0).abs() < 1e-9);
        assert!((four.standard_uncertainty / one.standard_uncertainty - 4.0).abs() < 1e-9);
        // A tenth either way is 5.77 %.
        assert!((one.standard_uncertainty / one.value - 0.057_735).abs() < 1e-5);
    }

    /// UK SI 1988/120 and 1987/51, rows as read.
    #[test]
    fn jugs_by_their_tables() {
        let limits = |jug, ml: f64| {
            let figure = jug_limits(jug, Volume::millilitres(ml)).unwrap();
            [figure.low, figure.high].map(|litres| (litres * 1e6).round() / 1e3)
        };
        assert_eq!(limits(Jug::Line, 100.0), [95.0, 105.0]);
        assert_eq!(limits(Jug::Line, 1000.0), [970.0, 1030.0]);
        assert_eq!(limits(Jug::Brim, 500.0), [500.0, 530.0]);
        assert_eq!(limits(Jug::Cylinder, 100.0), [99.2, 100.8]);
        // Between two sizes, the errors of the larger.
        assert_eq!(limits(Jug::Line, 300.0), [285.0, 315.0]);
        assert_eq!(limits(Jug::Line, 2.0), [0.0, 7.0]);
        assert_eq!(jug_limits(Jug::Line, Volume::litres(1.1)), None);
        assert_eq!(jug_limits(Jug::Line, Volume::ZERO), None);
        assert_eq!(jug_limits(Jug::Line, Volume::litres(f64::NAN)), None);
    }

    /// Calculated from bulk densities of 0.4 to 1.2: a tablespoon of powder is 5.9 to 17.7 g.
    #[test]
    fn a_tablespoon_of_powder_is_a_guess() {
        let spoon = measure("us-tablespoon").unwrap();
        let (least, most) = powder_limits(spoon.volume(), CALCIUM_CARBONATE.bulk_any_grade);
        assert!((least.as_grams() - 5.9).abs() < 0.05 && (most.as_grams() - 17.7).abs() < 0.05);
    }
}
