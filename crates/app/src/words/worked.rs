//! Numbers in a calculation: in the units of the formula, in the maker's units, and summarized in one line.

use coatings::{LayerWorking, Measure, Quantity};
use units::{Area, System, Volume, show_area, show_number, show_volume_beside};

use super::{coats, number, to_two_digits};

/// Formats a number of a formula in the maker's units, with its standard uncertainty: `3.9 ± 0.55 mil`.
pub fn told(quantity: &Quantity, system: System) -> String {
    let value = Volume::litres(quantity.value);
    let figure = |of: f64| match quantity.measure {
        Measure::SquareMetres => show_area(Area::square_metres(of), system),
        Measure::Litres => show_volume_beside(Volume::litres(of), value, system),
        Measure::Share | Measure::Count => (show_number((of * 100.0).round() / 100.0), ""),
        measure => {
            let (size, unit) = size_of(measure, system);
            (to_two_digits(of / size), unit)
        }
    };
    let (shown, unit) = figure(quantity.value);
    let (either_way, _) = figure(quantity.standard_uncertainty);
    let either_way = match either_way.contains(|digit| matches!(digit, '1'..='9')) {
        true => format!(" \u{b1} {}", number(&either_way)),
        false => String::new(),
    };
    let all = format!("{}{either_way} {unit}", number(&shown));
    all.trim_end().replace(' ', "\u{a0}")
}

/// Returns the size and the symbol of the unit that films and spreading rates are told in.
fn size_of(measure: Measure, system: System) -> (f64, &'static str) {
    use units::exact::{MIL, SQUARE_FOOT_PER_GALLON};
    match (measure, system) {
        (Measure::Film, System::UsCustomary) => (MIL, "mil"),
        (Measure::Film, System::Metric) => (MICROMETRE, "\u{b5}m"),
        (Measure::Rate, System::UsCustomary) => (SQUARE_FOOT_PER_GALLON, "ft\u{b2}/gal"),
        (Measure::Spread, System::UsCustomary) => (SQUARE_FOOT_PER_GALLON * MIL, "ft\u{b2} mil/gal"),
        (Measure::Spread, System::Metric) => (MICROMETRE, "m\u{b2} \u{b5}m/L"),
        _ => (1.0, measure.sign()),
    }
}

/// In meters.
const MICROMETRE: f64 = 1e-6;

/// Summarizes what one layer takes for one area: `2 coats on 9.2 ft², each 2.8 mil wet: 4.1 fl oz`.
pub fn in_brief(layer: &LayerWorking, system: System) -> String {
    let told = |quantity: &Quantity| {
        let sure = Quantity {
            standard_uncertainty: 0.0,
            ..quantity.clone()
        };
        told(&sure, system)
    };
    let term = |symbol| layer.litres.terms.iter().find(|term| term.symbol == symbol);
    let on = term("area").map(told).unwrap_or_default();
    let of = term("coats").map(|term| coats(term.value as u32));
    let wet = term("film").map(|film| format!(", each {} wet", told(film)));
    let rate = term("rate").map(|rate| format!(" at {}", told(rate)));
    format!(
        "{} on {on}{}: {}",
        of.unwrap_or_default(),
        wet.or(rate).unwrap_or_default(),
        told(&layer.litres.result)
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::Kind;
    use workshop::{Edit, Piece, PieceEdit, PieceId, SchemeEdit, Workshop, takeoff};

    #[test]
    fn numbers_of_formulas_are_told_in_the_units_of_the_maker() {
        let told_of = |value, uncertainty, measure, system| {
            let quantity = Quantity {
                symbol: "x",
                meaning: "x".into(),
                value,
                standard_uncertainty: uncertainty,
                measure,
                source: None,
            };
            told(&quantity, system).replace('\u{a0}', " ")
        };
        let us = |value, uncertainty, measure| told_of(value, uncertainty, measure, System::UsCustomary);
        assert_eq!(us(0.24, 0.0, Measure::Litres), "8.1 fl oz");
        assert_eq!(us(1e-4, 1.443e-5, Measure::Film), "3.9 \u{b1} 0.57 mil");
        // 10 m²/L is 107.64 ft² per 0.26417 US gallons.
        assert_eq!(us(10.0, 0.0, Measure::Rate), "407 ft\u{b2}/gal");
        assert_eq!(us(0.892, 0.02, Measure::SquareMetres), "9.6 \u{b1} 0.22 ft\u{b2}");
        assert_eq!(us(1.15, 0.0866, Measure::Share), "1.15 \u{b1} 0.09");
        assert_eq!(us(0.98, 1e-4, Measure::Share), "0.98");
        assert_eq!(us(3.0, 0.0, Measure::Count), "3");
        // A gallon is 231 in³, so it covers 231,000 in², or 1,604 ft², at 1 mil.
        assert_eq!(us(0.001, 0.0, Measure::Spread), "1604 ft\u{b2} mil/gal");
        let metric = |value, measure| told_of(value, 0.0, measure, System::Metric);
        assert_eq!(metric(1e-4, Measure::Film), "100 \u{b5}m");
        assert_eq!(metric(1.5, Measure::SquareMetres), "1.50 m\u{b2}");
        assert_eq!(metric(0.001, Measure::Spread), "1000 m\u{b2} \u{b5}m/L");
    }

    #[test]
    fn a_layer_is_told_in_one_line() {
        let say = |piece: &Piece, system| {
            let takeoff = takeoff(&Workshop::default(), piece, &[]).unwrap();
            let line = takeoff.materials.iter().find(|line| line.id == "paint").unwrap();
            in_brief(&takeoff.working_of(line).unwrap().layers[0], system).replace('\u{a0}', " ")
        };
        let by_film = Piece::new(PieceId("a".into()), Kind::Dresser);
        // 0.892 m² twice at 100 µm is 0.178 L. 98% of that stays on the piece, so it takes 182 mL, or 6.2 fl
        // oz.
        assert_eq!(
            say(&by_film, System::UsCustomary),
            "2 coats on 9.6 ft\u{b2}, each 3.9 mil wet: 6.2 fl oz"
        );
        assert_eq!(
            say(&by_film, System::Metric),
            "2 coats on 0.89 m\u{b2}, each 100 \u{b5}m wet: 182 mL"
        );
        let workshop = Workshop {
            pieces: vec![by_film.into()],
            ..Workshop::default()
        };
        let label = PieceEdit::Finish(None, SchemeEdit::Basis(coatings::Basis::LabelRate));
        let by_label = workshop.apply(Edit::Piece(PieceId("a".into()), label)).unwrap();
        // 19.2 ft² at 428 ft²/gal: 0.0449 gal.
        assert_eq!(
            say(&by_label.pieces[0], System::UsCustomary),
            "2 coats on 9.6 ft\u{b2} at 428 ft\u{b2}/gal: 5.7 fl oz"
        );
    }
}
