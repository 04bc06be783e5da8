//! The dry film that coats leave.

use units::Length;

use crate::basis::Basis;
use crate::cause::UncertainInput;
use crate::estimate::Estimate;
use crate::film;
use crate::job::Layer;
use crate::material::FilmClass;
use crate::propagate::{Input, Linear, linear};
use crate::tool::ToolKind;

/// The most coats of a sensible plan.
const MOST_COATS: f64 = 20.0;

/// The dry film of the coats of a layer, as a formula: `film x solids x coats / (1 + thinner)`. What a porous surface
/// absorbs builds no film.
#[derive(Clone, Debug, PartialEq)]
pub struct DryFilm {
    inputs: [Input; 2],
    by_rate: bool,
    thinned: f64,
    coats: u32,
}

impl DryFilm {
    /// The film of a layer on broad or on narrow parts; `None` if the tool cannot put it on, or if it stays within
    /// the wood or comes off again.
    pub fn of(layer: &Layer, basis: Basis, narrow: bool) -> Option<Self> {
        let material = &layer.material;
        // An oil is a topcoat, but the excess is wiped off.
        if matches!(material.body, FilmClass::Wash | FilmClass::Penetrating) {
            return None;
        }
        let tool = layer.tool_on(narrow);
        let film = tool.film(material.body)?;
        // A sprayer's own rate includes overspray, which leaves no film.
        let own = layer.own_rate(tool).filter(|_| tool.kind != ToolKind::Sprayer);
        let by_rate = own.is_some() || material.basis(basis) == Basis::LabelRate;
        // The same input as for the volume, so that both share their draws.
        let wet = match own {
            Some(own) => UncertainInput::own_rate(material, tool, own.rate),
            None if by_rate => UncertainInput::label_rate(material),
            None => UncertainInput::film(material, tool, film),
        };
        let solids = Input {
            name: format!("solids/{}", material.key),
            distribution: material.volume_solids.distribution(),
        };
        Some(DryFilm {
            inputs: [wet.input, solids],
            by_rate,
            // A label's rate is for unthinned material.
            thinned: if by_rate { 0.0 } else { layer.thinned_for(tool) },
            coats: layer.coats,
        })
    }

    /// Meters of dry film of one coat.
    fn one_coat(&self, x: &[Vec<f64>]) -> Vec<f64> {
        let dry = |(film_or_rate, solids): (&f64, &f64)| {
            let wet = if self.by_rate {
                film::wet_film_of_rate(*film_or_rate)
            } else {
                Length::metres(*film_or_rate)
            };
            film::dry_film_thinned(wet, *solids, self.thinned).as_metres()
        };
        x[0].iter().zip(&x[1]).map(dry).collect()
    }

    fn linear(&self) -> Linear {
        linear(&self.inputs, |x| self.one_coat(x))
    }

    /// The film of all coats with its standard uncertainty, by the linear law (JCGM 100, 5.1.2): every coat of a hand is
    /// as thick or as thin as the others.
    pub fn thickness(&self) -> Estimate<Length> {
        let coats = f64::from(self.coats);
        let one = self.linear().estimate();
        Estimate {
            value: Length::metres(one.value * coats),
            standard_uncertainty: Length::metres(one.standard_uncertainty * coats),
        }
    }
}

/// How many coats of one thickness reach another; `None` if no sensible number does.
pub(crate) fn coats_for(wanted: Length, one: Length) -> Option<u32> {
    // The tolerance absorbs rounding noise of the division.
    let coats = (wanted / one - 1e-9).ceil().max(1.0);
    (coats <= MOST_COATS).then_some(coats as u32)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::examples::layer;

    fn film(coats: u32, tool: &str) -> DryFilm {
        DryFilm::of(&layer("trim-enamel", coats, tool), Basis::WetFilm, false).unwrap()
    }

    #[test]
    fn the_dry_film_is_wet_film_times_solids() {
        let film = film(2, "foam-roller");
        assert!((film.thickness().value.as_millimetres() * 1000.0 - 2.0 * 70.0 * 0.4).abs() < 1e-9);
        assert!(film.thickness().standard_uncertainty > Length::ZERO);
    }

    /// By the label, 38 um at the solids of the label come out again, whatever the tool (MIL-HDBK-1110, s. 4.4.1).
    #[test]
    fn a_label_rate_is_that_of_its_dry_film() {
        let film = DryFilm::of(&layer("bonding-primer", 1, "brush"), Basis::LabelRate, false).unwrap();
        assert!(
            (film.thickness().value.as_millimetres() * 1000.0 - 38.1).abs() < 0.5,
            "{film:?}"
        );
    }

    #[test]
    fn what_is_wiped_off_builds_no_film() {
        assert_eq!(
            DryFilm::of(&layer("degreaser", 1, "pad"), Basis::WetFilm, false),
            None
        );
    }

    #[test]
    fn what_goes_into_the_wood_builds_no_film() {
        for material in crate::materials() {
            let able = crate::TOOLS
                .iter()
                .find(|tool| tool.film(material.body).is_some());
            let layer = layer(&material.key, 1, able.unwrap().key);
            let film = DryFilm::of(&layer, Basis::WetFilm, false);
            let builds = ![
                "degreaser",
                "deglosser",
                "wipe-on-stain",
                "brush-on-stain",
                "tung-oil",
                "linseed-oil",
            ]
            .contains(&&*material.key);
            assert_eq!(film.is_some(), builds, "{}", material.key);
        }
    }
}
