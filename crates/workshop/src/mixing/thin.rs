//! Paint thinned for the sprayer: reading the maker's entries and calculating the result. The rules are in
//! [`coatings::mix`].

use std::fmt;
use std::rc::Rc;

use coatings::mix::{ThinError, Thinned, Thinner, Thinning, thinner};
use coatings::{Estimate, Material, Provenance, SourcedRange};
use units::Length;

use crate::book::{Line, Record, Share, ThinLine};
use crate::document::{Workshop, material_of};

/// The tool that paint is thinned for.
const SPRAYER: &str = "hvlp";

/// The result of thinning.
#[derive(Clone, Debug, PartialEq)]
pub struct ThinnedPaint {
    /// The material.
    pub material: Rc<Material>,
    /// The thinner in use.
    pub thinner: &'static Thinner,
    /// The usual thinner of the material, if it differs.
    pub usual: Option<&'static Thinner>,
    /// The volume to spray and the properties of the thinned paint.
    pub thinned: Thinned,
    /// The usual maximum, if the maker did not enter the limit on the label.
    pub usual_most: Option<f64>,
    /// The dry film of one sprayed coat, if the sprayer can apply this material.
    pub dry_film: Option<Estimate<Length>>,
    /// The number of coats without thinner, and the number of thinned coats for the same film.
    pub coats: (u32, u32),
}

/// Why there is no result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ThinFault {
    /// No material was chosen.
    Material,
    /// The material is never thinned.
    NotThinned,
    /// The volume of paint or the share of thinner is missing.
    Amount,
    /// A value is out of range.
    Thin(ThinError),
}

impl fmt::Display for ThinFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ThinFault::Material => f.write_str("Choose what you're spraying."),
            ThinFault::NotThinned => f.write_str("This isn't normally thinned. Check its label first."),
            ThinFault::Amount => f.write_str("Enter the amount of paint and the percent of thinner."),
            ThinFault::Thin(error) => error.fmt(f),
        }
    }
}

/// Calculates the result of thinning. The default thinner is the usual one of the material. The default
/// volume solids are those of the material.
///
/// # Errors
/// If a value is missing or out of range. The error says which.
pub fn thinned(workshop: &Workshop, line: &Line) -> Result<ThinnedPaint, ThinFault> {
    let mix = ThinLine::read(line);
    let material = material_of(&workshop.materials, &mix.material).ok_or(ThinFault::Material)?;
    let usual = match material.thinner {
        coatings::Thinner::Water => "water",
        coatings::Thinner::MineralSpirits => "mineral-spirits",
        coatings::Thinner::Alcohol => "alcohol",
        coatings::Thinner::None => "",
    };
    let usual = thinner(usual);
    let with = mix.thinner.or(usual).ok_or(ThinFault::NotThinned)?;
    let (paint, Share(share)) = mix.paint.zip(mix.share).ok_or(ThinFault::Amount)?;
    // Only a label that the maker entered sets a limit. A typical value does not.
    let of_label = material.thinning.certainty == Provenance::Maker;
    let most = mix
        .most
        .map(|Share(most)| most)
        .or(of_label.then_some(material.thinning.high));
    let own = mix.solids.map(|Share(own)| SourcedRange::own(own, own));
    let thinning = Thinning {
        paint,
        volume_solids: own.unwrap_or(material.volume_solids),
        share,
        most,
        thinner: with,
    };
    let thinned = thinning.thinned().map_err(ThinFault::Thin)?;
    let film = coatings::tool(SPRAYER).and_then(|tool| tool.film(material.body));
    let coats = mix.coats.unwrap_or(2);
    Ok(ThinnedPaint {
        dry_film: film.map(|film| thinning.dry_film(Length::metres(film.middle()))),
        coats: (coats, thinning.coats(coats)),
        usual: usual.filter(|usual| usual.key != with.key),
        thinner: with,
        thinned,
        usual_most: most.is_none().then_some(material.thinning.high),
        material,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{BookEdit, Edit, MaterialEdit};

    fn of(values: &[(&'static str, &str)]) -> Result<ThinnedPaint, ThinFault> {
        let values = crate::samples::values(values);
        let add = BookEdit::Add("thinning", "t".into(), values);
        let workshop = Workshop::default().apply(Edit::Book(add)).unwrap();
        thinned(&workshop, &workshop.books.lines("thinning")[0])
    }

    /// By hand: a quart is 946.35 mL. A tenth of that is 94.64 mL of water, 94.45 g at 0.998 kg/L, which
    /// makes 1.041 L to spray. Two coats become three because 2 times 1.1 is more than two. Solids of 35% to
    /// 45% become 0.40 / 1.1 = 36.36%. The sprayer leaves 50 to 100 µm wet. The middle dries to 75 x 0.3636 =
    /// 27.27 µm.
    #[test]
    fn a_quart_with_a_tenth_of_water() {
        let quart = [("material", "trim-enamel"), ("paint", "1 qt"), ("share", "10 %")];
        let found = of(&quart).unwrap();
        assert_eq!((found.thinner.key, found.coats), ("water", (2, 3)));
        assert!((found.thinned.thinner.as_millilitres() - 94.635).abs() < 1e-3);
        assert!((found.thinned.thinner_mass.value.as_grams() - 94.446).abs() < 1e-2);
        assert!((found.thinned.liquid.as_litres() - 1.040_988).abs() < 1e-6);
        assert!((found.thinned.volume_solids.value - 0.363_636).abs() < 1e-6);
        let film = |found: ThinnedPaint| found.dry_film.unwrap().value.as_millimetres() * 1000.0;
        assert!((film(found) - 27.273).abs() < 1e-3);
        // With 44% on the label, 40% is sprayed and 30 µm remains.
        let own = of(&[&quart[..], &[("solids", "44 %")]].concat()).unwrap();
        assert!((own.thinned.volume_solids.value - 0.40).abs() < 1e-9);
        assert!((film(own) - 30.0).abs() < 1e-6);
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

    /// The usual value of a material is reported as usual, never as the limit on the label.
    #[test]
    fn what_is_usual_is_not_called_a_label() {
        let values = [("material", "trim-enamel"), ("paint", "1 l"), ("share", "15 %")];
        let found = of(&values).unwrap();
        assert_eq!((found.thinned.warning, found.usual_most), (None, Some(0.10)));
        let label = of(&[&values[..], &[("most", "20 %")]].concat()).unwrap();
        assert_eq!((label.thinned.warning, label.usual_most), (None, None));

        // The label of the maker's own material counts.
        let reading = crate::LabelReading::new(crate::label_field("thinning").unwrap(), "5", "%").unwrap();
        let label = MaterialEdit::Label("thinning", Some(reading));
        let add = BookEdit::Add(
            "thinning",
            "t".into(),
            [("material", "own-1"), values[1], values[2]]
                .map(|(key, text)| (key, text.to_owned()))
                .to_vec(),
        );
        let mut workshop = Workshop::default();
        for edit in [
            Edit::AddMaterial("own-1".into(), "trim-enamel".into()),
            Edit::Material("own-1".into(), label),
            Edit::Book(add),
        ] {
            workshop = workshop.apply(edit).unwrap();
        }
        let found = thinned(&workshop, &workshop.books.lines("thinning")[0]).unwrap();
        assert_eq!(found.thinned.warning.map(|warning| warning.most), Some(0.05));
    }

    #[test]
    fn another_thinner_is_told_with_the_usual_one() {
        let with = |thinner| {
            let values = [
                ("material", "alkyd-enamel"),
                ("paint", "1 l"),
                ("share", "5 %"),
                ("thinner", thinner),
            ];
            let found = of(&values).unwrap();
            (found.thinner.key, found.usual.map(|usual| usual.key))
        };
        assert_eq!(with("water"), ("water", Some("mineral-spirits")));
        assert_eq!(with("mineral-spirits"), ("mineral-spirits", None));
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
