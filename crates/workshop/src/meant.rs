//! Numbers such as `1,250` whose value depends on the decimal sign. A save file stores the intended number
//! beside such a text.

use units::{Decimals, in_other_signs};

/// Reads a saved text so that it gives the number beside it. If there is no such number, or the text cannot
/// mean it, either decimal sign is accepted.
///
/// # Errors
/// If the text cannot be read.
pub(crate) fn read_meant<T, E>(
    read: impl Fn(Decimals) -> Result<T, E>,
    is_meant: impl Fn(&T) -> bool,
) -> Result<T, E> {
    let both = [Decimals::Point, Decimals::Comma];
    let meant = both
        .into_iter()
        .find_map(|decimals| read(decimals).ok().filter(&is_meant));
    meant.map_or_else(|| read(Decimals::Either), Ok)
}

/// Rewrites a text for a locale, so that typing it there gives the same number.
pub(crate) fn written_here(
    typed: &str,
    decimals: Decimals,
    is_meant: impl Fn(&str, Decimals) -> bool,
) -> String {
    if is_meant(typed, decimals) {
        return typed.to_owned();
    }
    let other = in_other_signs(typed);
    match is_meant(&other, decimals) {
        true => other,
        false => typed.to_owned(),
    }
}

/// Returns true if two numbers are equal, apart from rounding when they were saved.
pub(crate) fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * one.abs().max(other.abs())
}

#[cfg(test)]
mod tests {
    use crate::book::Facts;
    use serde_json::{Value, json};
    use units::{Decimals, Length, LengthUnit};

    use crate::book::Entered;
    use crate::format::{Loaded, PieceRecord, load, piece_record, save};
    use crate::out::{link_text, read_link};
    use crate::{
        BookEdit, Edit, LabelReading, MaterialEdit, PieceEdit, PieceId, Price, Reading, SchemeEdit, Workshop,
        label_field,
    };
    use geometry::{Kind, fields};

    /// A piece and a can with every number typed in a locale with decimal points, where the commas mean
    /// thousands.
    fn typed() -> Workshop {
        let id = PieceId("a".into());
        let on_piece = |edit| Edit::Piece(id.clone(), edit);
        let here = |text: &str| Entered {
            text: text.into(),
            decimals: Decimals::Point,
        };
        let width = Reading::typed_with("1,250", LengthUnit::Millimetre, Decimals::Point).unwrap();
        let rate = label_field("rate").unwrap();
        let rate = LabelReading::typed_with(rate, "1,250-1,300", "ft2/gal", Decimals::Point).unwrap();
        let price = Price::typed_with("1,250", Decimals::Point).unwrap();
        let fact = |key: &str, text: &str| {
            PieceEdit::Book(BookEdit::Write("facts", "only".into(), key.into(), here(text)))
        };
        [
            Edit::Add {
                id: id.clone(),
                kind: Kind::Dresser,
            },
            Edit::AddMaterial("own-1".into(), "trim-enamel".into()),
            Edit::Material("own-1".into(), MaterialEdit::Label("rate", Some(rate))),
            Edit::Material(
                "own-1".into(),
                MaterialEdit::Price("us-quart", Some(price.clone())),
            ),
            Edit::Material(
                "shellac-primer".into(),
                MaterialEdit::Price("us-quart", Some(price)),
            ),
            on_piece(PieceEdit::Finish(None, SchemeEdit::Material(2, "own-1".into()))),
            on_piece(PieceEdit::Measure(fields::WIDTH.id(), Some(width))),
            on_piece(fact("asking", "1,250")),
            on_piece(fact("hours", "1,250")),
        ]
        .into_iter()
        .fold(Workshop::default(), |workshop, edit| {
            workshop.apply(edit).unwrap()
        })
    }

    #[test]
    fn a_saved_number_means_what_it_meant_in_file_link_and_database() {
        let workshop = typed();
        let piece = &workshop.pieces[0];
        assert_eq!(piece.readings["width"].length(), Length::millimetres(1250.0));
        let Loaded {
            workshop: again,
            notices,
        } = load(&save(&workshop)).unwrap();
        assert!(notices.is_empty(), "{notices:?}");
        assert_eq!(again, workshop);
        assert_eq!(again.materials[0].prices["us-quart"].minor(), 125_000);
        assert_eq!(again.offers("shellac-primer")[0].1.price, 125_000);
        assert_eq!(again.pieces[0].books.one::<Facts>().asking, Some(125_000));

        let record = serde_json::to_value(PieceRecord::of(piece)).unwrap();
        let mut notices = vec![];
        let kept = piece_record(record)
            .unwrap()
            .into_piece(&workshop.materials, &mut notices)
            .piece;
        assert_eq!((&kept, notices.len()), (&**piece, 0));

        let link = link_text(piece, &workshop.materials).unwrap();
        let sent = read_link(&link, PieceId("sent".into())).unwrap();
        assert!(sent.notices.is_empty(), "{:?}", sent.notices);
        assert_eq!(sent.workshop.pieces[0].readings, piece.readings);
        assert_eq!(sent.workshop.materials[0].label, workshop.materials[0].label);
    }

    /// Without numbers beside them, the same texts are read as in old files: the comma is a decimal sign.
    /// Texts that read the same everywhere have no number beside them.
    #[test]
    fn an_old_file_keeps_its_comma() {
        let mut file: Value = serde_json::from_str(&save(&typed())).unwrap();
        let piece = &mut file["pieces"][0];
        assert_eq!(piece["readings"]["width"]["value"], json!(1.25));
        let width = json!({"typed": "85,1 cm", "unit": "mm"});
        piece["readings"] = json!({ "width": width.clone() });
        piece["books"]["facts"][0]
            .as_object_mut()
            .unwrap()
            .remove("values");
        piece["books"]["facts"][0]["asking"] = json!("12,5");
        let label = &mut file["materials"][0]["label"]["rate"];
        assert_eq!(label["value"], json!([1250.0, 1300.0]));
        *label = json!({"typed": "1,250", "unit": "ft2/gal"});
        let old = load(&file.to_string()).unwrap().workshop;
        assert_eq!(
            old.pieces[0].readings["width"].length(),
            Length::millimetres(851.0)
        );
        let facts: Facts = old.pieces[0].books.one();
        assert_eq!(
            (facts.asking, facts.hours.map(|time| time.hours)),
            (Some(1250), Some(1.25))
        );
        let figure = label_field("rate")
            .unwrap()
            .figure(&old.materials[0].material().unwrap(), "ft2/gal")
            .unwrap();
        assert!((figure.middle() - 1.25).abs() < 1e-9);
        let written: Value = serde_json::from_str(&save(&old)).unwrap();
        assert_eq!(written["pieces"][0]["readings"]["width"], width);
    }
}
