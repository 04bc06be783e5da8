//! A maker's own copy of a material: values from its label replace the generic ones.

mod doubt;
mod fault;
mod field;
#[cfg(test)]
mod tests;

use std::borrow::Cow;

use units::Length;

use crate::film;
use crate::material::{COAT_ON_WOOD, Material};
use crate::sourced_range::{Provenance, SourcedRange};
use crate::unit::{SquareMetresPerLitre, Unit};

pub use doubt::{Doubt, TimeUnit};
pub use fault::Fault;
pub use field::Field;
pub(crate) use field::shown;

/// A single spreading rate on a label is a claim for smooth sealed surface; it is taken as a tenth either way
/// (common practice: labels that do give a range give about that, such as 350 to 450 ft2/gal).
const RATE_CLAIM: f64 = 0.10;
/// A single figure of volume solids is taken as two points either way, as data sheets print it (common practice).
const SOLIDS_CLAIM: f64 = 0.02;

const RATE_SOURCE: &str = "a single rate on the label, taken as 10% either way";
const SOLIDS_SOURCE: &str = "a single figure on the label, taken as 2 points either way";

/// The values on a label, as ranges. Both ends are the same for a single number, and `None` keeps the
/// generic value.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Label {
    /// The spreading rate, m2/L.
    pub rate: Option<(f64, f64)>,
    /// Volume solids, a fraction.
    pub volume_solids: Option<(f64, f64)>,
    /// Density, kg/L.
    pub density: Option<(f64, f64)>,
    /// Hours until the next coat may go on.
    pub recoat_hours: Option<(f64, f64)>,
    /// Hours until it is as hard as it gets.
    pub cure_hours: Option<(f64, f64)>,
    /// How much thinner may be added, as a fraction of its volume.
    pub thinning: Option<(f64, f64)>,
    /// The least temperature of the air, degrees Celsius; of a range the lower one.
    pub coldest: Option<(f64, f64)>,
}

impl Label {
    /// Questions about values that are implausible for this kind of material. The maker may confirm them.
    ///
    /// # Errors
    /// Every figure that cannot be, one [`Fault`] for each field.
    ///
    /// # Example
    /// ```
    /// use coatings::{label::Doubt, Label, material};
    /// let typed_in_the_wrong_unit = Label { rate: Some((400.0, 400.0)), ..Label::default() };
    /// let doubts = typed_in_the_wrong_unit.check(material("trim-enamel").unwrap()).unwrap();
    /// assert!(matches!(doubts[..], [Doubt::SquareFeetPerGallon { .. }]));
    /// ```
    pub fn check(&self, of: &Material) -> Result<Vec<Doubt>, Vec<Fault>> {
        let faults = self.faults();
        if faults.is_empty() {
            Ok(self.doubts(of))
        } else {
            Err(faults)
        }
    }

    /// A copy of a material with the figures of this label in place of its own. Doubts do not keep it from being
    /// made; whether key and name are free and fit is for the caller to see.
    ///
    /// A spreading rate that was worked out from the volume solids is worked out again if the label states only
    /// those.
    ///
    /// # Errors
    /// Every figure that cannot be, one [`Fault`] for each field.
    ///
    /// # Example
    /// ```
    /// use coatings::{Label, material};
    /// let label = Label { density: Some((1.31, 1.31)), ..Label::default() };
    /// let own = label.applied(material("trim-enamel").unwrap(), "own-1".into(), "Grey enamel".into()).unwrap();
    /// assert_eq!((own.density.low, own.density.high), (1.31, 1.31));
    /// ```
    pub fn applied(&self, of: &Material, key: String, name: String) -> Result<Material, Vec<Fault>> {
        let faults = self.faults();
        if !faults.is_empty() {
            return Err(faults);
        }
        let mut own = of.clone();
        own.key = Cow::Owned(key);
        own.name = Cow::Owned(name);
        if let Some(solids) = self.volume_solids {
            own.volume_solids = solids_figure(solids);
            if of.label_rate.certainty == Provenance::Calculated {
                own.label_rate = rate_of_solids(own.volume_solids, of.label_rate.source);
            }
        }
        if let Some(rate) = self.rate {
            own.label_rate = rate_figure(rate);
        }
        stated(self.density, &mut own.density);
        stated(self.recoat_hours, &mut own.recoat);
        stated(self.cure_hours, &mut own.cure);
        stated(self.thinning, &mut own.thinning);
        if let Some((low, high)) = self.coldest {
            own.coldest = Some(SourcedRange::own(low, high));
        }
        Ok(own)
    }

    fn faults(&self) -> Vec<Fault> {
        [
            (Field::Rate, self.rate),
            (Field::VolumeSolids, self.volume_solids),
            (Field::Density, self.density),
            (Field::Recoat, self.recoat_hours),
            (Field::Cure, self.cure_hours),
            (Field::Thinning, self.thinning),
            (Field::Coldest, self.coldest),
        ]
        .into_iter()
        .filter_map(|(field, range)| Fault::of(field, range?))
        .collect()
    }

    fn doubts(&self, of: &Material) -> Vec<Doubt> {
        [
            self.rate
                .and_then(|rate| Doubt::of_rate(rate, of.label_rate.range())),
            self.volume_solids
                .and_then(|solids| Doubt::of_solids(solids, of.volume_solids.range())),
            self.thinning
                .and_then(|share| Doubt::of_thinning(share, of.thinning.range())),
            self.density
                .and_then(|density| Doubt::of_density(density, of.density.range())),
            self.recoat_hours
                .and_then(|hours| Doubt::of_time(Field::Recoat, hours, of.recoat.range())),
            self.cure_hours
                .and_then(|hours| Doubt::of_time(Field::Cure, hours, of.cure.range())),
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}

/// Replaces a value with that of a label.
fn stated<U: Unit>(range: Option<(f64, f64)>, figure: &mut SourcedRange<U>) {
    if let Some((low, high)) = range {
        *figure = SourcedRange::own(low, high);
    }
}

const fn claim<U: Unit>(low: f64, high: f64, source: &'static str) -> SourcedRange<U> {
    SourcedRange::new(low, high, source, Provenance::Maker)
}

fn rate_figure((low, high): (f64, f64)) -> SourcedRange<SquareMetresPerLitre> {
    if low == high {
        claim(low * (1.0 - RATE_CLAIM), high * (1.0 + RATE_CLAIM), RATE_SOURCE)
    } else {
        SourcedRange::own(low, high)
    }
}

/// Clamps to a fraction above 0 and at most 1.
fn solids_figure((low, high): (f64, f64)) -> SourcedRange {
    if low == high {
        claim(
            (low - SOLIDS_CLAIM).max(low / 2.0),
            (high + SOLIDS_CLAIM).min(1.0),
            SOLIDS_SOURCE,
        )
    } else {
        SourcedRange::own(low, high)
    }
}

fn rate_of_solids(solids: SourcedRange, source: &'static str) -> SourcedRange<SquareMetresPerLitre> {
    let film = Length::inches(COAT_ON_WOOD);
    SourcedRange::calculated(
        film::theoretical_rate(solids.low, film),
        film::theoretical_rate(solids.high, film),
        source,
    )
}
