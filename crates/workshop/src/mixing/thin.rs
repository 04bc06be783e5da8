//! Paint thinned for the sprayer, as the maker wrote it down. The rules are those of [`coatings::mix`].

use std::fmt;
use std::rc::Rc;

use coatings::mix::{ThinError, Thinned, Thinner, Thinning, thinner};
use coatings::{Estimate, Material};
use units::{Length, Volume};

use crate::book::Line;
use crate::document::{Workshop, material_of};

/// The tool that paint is thinned for.
const SPRAYER: &str = "hvlp";

/// What comes of thinning.
#[derive(Clone, Debug, PartialEq)]
pub struct ThinnedPaint {
    /// What is thinned.
    pub material: Rc<Material>,
    /// What it is thinned with.
    pub thinner: &'static Thinner,
    /// How much of it there is to spray, and what it became.
    pub thinned: Thinned,
    /// The dry film of one sprayed coat, where the sprayer puts this on.
    pub dry_film: Option<Estimate<Length>>,
    /// How many thinned coats leave the film of so many that are not: both numbers.
    pub coats: (u32, u32),
}

/// Why nothing can be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThinFault {
    /// The material is not chosen.
    Material,
    /// The material is not thinned at all.
    NotThinned,
    /// How much paint there is, or how much thinner, is not written down.
    Amount,
    /// A figure cannot be so.
    Thin(ThinError),
}

impl fmt::Display for ThinFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ThinFault::Material => f.write_str("Choose what is to be sprayed."),
            ThinFault::NotThinned => {
                f.write_str("This is used as it is. Look at its label before you thin it.")
            }
            ThinFault::Amount => {
                f.write_str("Write down how much paint there is, and how much thinner of that.")
            }
            ThinFault::Thin(error) => error.fmt(f),
        }
    }
}

/// What thinning comes to; with what the material is thinned with where nothing else is said, and its usual most where its
/// label says none.
///
/// # Errors
/// What is lacking, or cannot be so.
pub fn thinned(workshop: &Workshop, line: &Line) -> Result<ThinnedPaint, ThinFault> {
    let material = material_of(&workshop.materials, line.text("material")).ok_or(ThinFault::Material)?;
    let usual = match material.thinner {
        coatings::Thinner::Water => Some("water"),
        coatings::Thinner::MineralSpirits => Some("mineral-spirits"),
        coatings::Thinner::Alcohol => Some("alcohol"),
        coatings::Thinner::None => None,
    };
    let chosen = Some(line.text("thinner")).filter(|key| !key.is_empty());
    let with = chosen.or(usual).and_then(thinner).ok_or(ThinFault::NotThinned)?;
    let number = |key: &str| line.number("thinning", key);
    let (Some(litres), Some(share)) = (number("paint"), number("share")) else {
        return Err(ThinFault::Amount);
    };
    let thinning = Thinning {
        paint: Volume::litres(litres),
        volume_solids: material.volume_solids,
        share,
        most: number("most").or(Some(material.thinning.high)),
        thinner: with,
    };
    let thinned = thinning.thinned().map_err(ThinFault::Thin)?;
    let film = coatings::tool(SPRAYER).and_then(|tool| tool.film(material.body));
    let coats = line.count("coats").unwrap_or(2);
    Ok(ThinnedPaint {
        dry_film: film.map(|film| thinning.dry_film(Length::metres(film.middle()))),
        coats: (coats, thinning.coats(coats)),
        thinner: with,
        thinned,
        material,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit};

    fn of(values: &[(&'static str, &str)]) -> Result<ThinnedPaint, ThinFault> {
        let values = values
            .iter()
            .map(|(key, text)| (*key, (*text).to_owned()))
            .collect();
        let add = BookEdit::Add("thinning", "t".into(), values);
        let workshop = Workshop::default().apply(Edit::Book(add)).unwrap();
        thinned(&workshop, &workshop.books.lines("thinning")[0])
    }

    /// By hand: a quart is 946.35 mL; a tenth of it is 94.64 mL of water, 94.45 g at 0.998 kg/L; 1.041 L to spray. Two coats
    /// become three, as 2 times 1.1 is more than two.
    #[test]
    fn a_quart_with_a_tenth_of_water() {
        let quart = [("material", "trim-enamel"), ("paint", "1 qt"), ("share", "10 %")];
        let found = of(&quart).unwrap();
        assert_eq!((found.thinner.key, found.coats), ("water", (2, 3)));
        assert!((found.thinned.thinner.as_millilitres() - 94.635).abs() < 1e-3);
        assert!((found.thinned.thinner_mass.value.as_grams() - 94.446).abs() < 1e-2);
        assert!((found.thinned.liquid.as_litres() - 1.040_988).abs() < 1e-6);
        let film = |share| {
            of(&[quart[0], quart[1], ("share", share)])
                .unwrap()
                .dry_film
                .unwrap()
                .value
        };
        assert!((film("0 %") / film("10 %") - 1.1).abs() < 1e-9);
    }

    #[test]
    fn more_than_the_label_allows_is_said() {
        let with = |most| {
            let values = [
                ("material", "trim-enamel"),
                ("paint", "1 l"),
                ("share", "15 %"),
                ("most", most),
            ];
            of(&values).unwrap().thinned.warning
        };
        assert!(with("10 %").is_some() && with("20 %").is_none());
    }

    #[test]
    fn what_is_lacking_is_asked_for() {
        assert_eq!(of(&[("paint", "1 l")]), Err(ThinFault::Material));
        assert_eq!(
            of(&[("material", "trim-enamel"), ("paint", "1 l")]),
            Err(ThinFault::Amount)
        );
        let own = of(&[
            ("material", "oil-polyurethane"),
            ("paint", "1 l"),
            ("share", "5 %"),
        ])
        .unwrap();
        assert_eq!(own.thinner.key, "mineral-spirits");
        assert_eq!(
            of(&[
                ("material", "trim-enamel"),
                ("paint", "1 l"),
                ("share", "100 %"),
                ("thinner", "alcohol")
            ])
            .unwrap()
            .thinner
            .key,
            "alcohol"
        );
    }
}
