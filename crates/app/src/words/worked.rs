//! Numbers in a calculation: in the units of the formula, in the maker's units, and summarized in one line.

use coatings::{LayerWorking, Measure, Quantity};
use units::{Area, System, Volume, show_number};

use super::{area, coats, number, to_two_digits, volume};

/// Formats an uncertainty with two significant digits (JCGM 100, 7.2.6): ` ± 0.000014`. Empty if it is zero.
pub fn either_way(uncertainty: f64) -> String {
    if uncertainty <= 0.0 {
        return String::new();
    }
    let mut unit = 1.0;
    while uncertainty / unit >= 99.5 {
        unit *= 10.0;
    }
    while uncertainty / unit < 9.95 && unit > 1e-12 {
        unit /= 10.0;
    }
    format!(
        " \u{b1} {}",
        number(&show_number((uncertainty / unit).round() * unit))
    )
}

/// Formats a number of a formula in the maker's units: `8.1 fl oz`. Returns `None` if the formula already
/// uses them.
pub fn here(quantity: &Quantity, system: System) -> Option<String> {
    let value = quantity.value;
    match (quantity.measure, system) {
        (Measure::Litres, _) => Some(volume(Volume::litres(value), system)),
        (Measure::SquareMetres, System::UsCustomary) => Some(area(Area::square_metres(value), system)),
        (Measure::Film, System::UsCustomary) => {
            Some(format!("{} mil", to_two_digits(value / units::exact::MIL)))
        }
        (Measure::Film, System::Metric) => Some(format!("{} \u{b5}m", to_two_digits(value / 1e-6))),
        (Measure::Rate, System::UsCustomary) => Some(format!(
            "{} ft\u{b2}/gal",
            to_two_digits(value / units::exact::SQUARE_FOOT_PER_GALLON)
        )),
        _ => None,
    }
}

/// Summarizes what one layer takes for one area: `2 coats on 9.2 ft², each 2.8 mil wet: 4.1 fl oz`.
pub fn in_brief(layer: &LayerWorking, system: System) -> String {
    let told = |quantity: &Quantity| {
        here(quantity, system).unwrap_or_else(|| {
            let sign = quantity.measure.sign();
            format!("{} {sign}", to_two_digits(quantity.value))
        })
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
        let quantity = |value, measure| Quantity {
            symbol: "x",
            meaning: "x".into(),
            value,
            standard_uncertainty: 0.0,
            measure,
            source: None,
        };
        let us = |value, measure| here(&quantity(value, measure), System::UsCustomary);
        assert_eq!(us(0.24, Measure::Litres).unwrap(), "8.1\u{a0}fl\u{a0}oz");
        assert_eq!(us(1e-4, Measure::Film).unwrap(), "3.9 mil");
        // 10 m²/L is 107.64 ft² per 0.26417 US gallons.
        assert_eq!(us(10.0, Measure::Rate).unwrap(), "407 ft\u{b2}/gal");
        assert_eq!(us(3.0, Measure::Count), None);
        let metric = |value, measure| here(&quantity(value, measure), System::Metric);
        assert_eq!(metric(1e-4, Measure::Film).unwrap(), "100 \u{b5}m");
        assert_eq!(metric(1.5, Measure::SquareMetres), None);
    }

    #[test]
    fn an_uncertainty_has_two_digits() {
        let say = |value| either_way(value);
        assert_eq!(say(1.443e-5), " \u{b1} 0.000014");
        assert_eq!(say(0.0996), " \u{b1} 0.1");
        assert_eq!(
            (say(14.43), say(144.3)),
            (" \u{b1} 14".into(), " \u{b1} 140".into())
        );
        assert_eq!(say(0.0), "");
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
