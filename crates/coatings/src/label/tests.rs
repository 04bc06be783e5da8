//! Tests of labels: what cannot be, what is doubtful, what is taken over.

use super::field::shown_range;
use super::*;
use crate::material::{material, materials};

type Range = Option<(f64, f64)>;

fn enamel() -> &'static Material {
    material("trim-enamel").unwrap()
}

fn one(value: f64) -> Range {
    Some((value, value))
}

/// A label with one field filled, for each field.
fn with(field: Field, range: Range) -> Label {
    let mut label = Label::default();
    match field {
        Field::Rate => label.rate = range,
        Field::VolumeSolids => label.volume_solids = range,
        Field::Density => label.density = range,
        Field::Recoat => label.recoat_hours = range,
        Field::Cure => label.cure_hours = range,
        Field::Thinning => label.thinning = range,
        Field::Coldest => label.coldest = range,
    }
    label
}

const FIELDS: [Field; 7] = [
    Field::Rate,
    Field::VolumeSolids,
    Field::Density,
    Field::Recoat,
    Field::Cure,
    Field::Thinning,
    Field::Coldest,
];

fn fault(field: Field, range: Range) -> Fault {
    let label = with(field, range);
    let faults = label.check(enamel()).unwrap_err();
    assert_eq!(faults.len(), 1);
    assert_eq!(
        label.applied(enamel(), "own".into(), "Own".into()).unwrap_err(),
        faults
    );
    let text = faults[0].to_string();
    assert!(text.starts_with(field.label()) && text.ends_with('.'), "{text}");
    assert_eq!(faults[0].field(), field);
    faults[0]
}

fn doubts(field: Field, range: Range) -> Vec<Doubt> {
    let doubts = with(field, range).check(enamel()).unwrap();
    for doubt in &doubts {
        let text = doubt.to_string();
        assert!(
            text.starts_with(field.label()) && text.ends_with(['?', '.']),
            "{text}"
        );
        assert_eq!(doubt.field(), field);
    }
    doubts
}

#[test]
fn an_empty_label_changes_nothing_but_the_name() {
    for material in materials() {
        assert_eq!(Label::default().check(material), Ok(vec![]));
        let mut own = Label::default()
            .applied(material, "own".into(), "Own".into())
            .unwrap();
        assert_eq!((own.key.as_ref(), own.name.as_ref()), ("own", "Own"));
        own.key.clone_from(&material.key);
        own.name.clone_from(&material.name);
        assert_eq!(&own, material);
    }
}

/// What the catalogue itself says raises no doubt.
#[test]
fn usual_figures_are_not_doubted() {
    for material in materials() {
        let label = Label {
            rate: Some(material.label_rate.range()),
            volume_solids: Some(material.volume_solids.range()).filter(|solids| solids.0 > 0.0),
            density: Some(material.density.range()),
            recoat_hours: Some(material.recoat.range()),
            cure_hours: Some(material.cure.range()),
            thinning: Some(material.thinning.range()),
            coldest: material.coldest.map(SourcedRange::range),
        };
        assert_eq!(label.check(material), Ok(vec![]), "{}", material.key);
    }
}

#[test]
fn no_numbers_are_faults() {
    for field in FIELDS {
        for bad in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert_eq!(fault(field, one(bad)), Fault::NotANumber { field });
            assert_eq!(fault(field, Some((0.5, bad))), Fault::NotANumber { field });
        }
    }
}

#[test]
fn nothing_and_less_are_faults() {
    for field in [Field::Rate, Field::Density, Field::Recoat, Field::Cure] {
        for bad in [0.0, -0.0, -3.0] {
            assert_eq!(fault(field, one(bad)), Fault::NotPositive { field });
            assert_eq!(fault(field, Some((bad, 10.0))), Fault::NotPositive { field });
        }
    }
    assert_eq!(fault(Field::Thinning, one(-0.1)), Fault::Thinning);
    assert_eq!(doubts(Field::Thinning, one(0.0)), []);
}

#[test]
fn what_nothing_can_be_worked_out_with_is_a_fault() {
    for field in [Field::Rate, Field::Density, Field::Recoat, Field::Cure] {
        for bad in [1e-300, 1e-7, 1e7, 1e308] {
            assert_eq!(fault(field, one(bad)), Fault::Extreme { field });
        }
    }
    assert_eq!(
        fault(Field::VolumeSolids, one(1e-300)),
        Fault::Extreme {
            field: Field::VolumeSolids
        }
    );
}

#[test]
fn low_above_high_is_a_fault() {
    for field in FIELDS {
        let expected = Fault::Reversed {
            field,
            low: 0.4,
            high: 0.3,
        };
        assert_eq!(fault(field, Some((0.4, 0.3))), expected);
    }
    let text = fault(Field::VolumeSolids, Some((0.4, 0.3))).to_string();
    assert!(text.contains("40%") && text.contains("30%"), "{text}");
}

#[test]
fn volume_solids_are_above_nothing_and_at_most_all() {
    for bad in [0.0, -0.1, 1.01, 35.0] {
        assert_eq!(fault(Field::VolumeSolids, one(bad)), Fault::Solids);
    }
    assert!(Fault::Solids.to_string().contains("100%"));
    // All of it can be, as in an oil, but hardly is in an enamel: no fault, but a question.
    assert_eq!(doubts(Field::VolumeSolids, one(1.0)).len(), 1);
    assert_eq!(fault(Field::Thinning, one(10.0)), Fault::Thinning);
}

#[test]
fn every_faulty_field_is_named() {
    let label = Label {
        rate: one(0.0),
        volume_solids: one(35.0),
        density: one(f64::NAN),
        recoat_hours: Some((4.0, 2.0)),
        cure_hours: one(-1.0),
        thinning: one(2.0),
        coldest: one(50.0),
    };
    let fields: Vec<Field> = label
        .check(enamel())
        .unwrap_err()
        .into_iter()
        .map(Fault::field)
        .collect();
    assert_eq!(fields, FIELDS);
}

/// 400 ft2/gal are 9.816955 m2/L, from the exact definitions.
#[test]
fn a_rate_in_the_wrong_unit_is_asked_about() {
    let too_high = doubts(Field::Rate, one(400.0));
    let [Doubt::SquareFeetPerGallon { meant, .. }] = too_high[..] else {
        panic!("{too_high:?}")
    };
    assert!((meant.0 - 9.816_955).abs() < 1e-5 && meant.0 == meant.1);
    assert_eq!(
        too_high[0].to_string(),
        "Coverage: 400 m²/L is far above the typical 9.2 to 11.8 m²/L. Did you mean 400 ft²/gal (9.82 m²/L)? It isn't used yet."
    );

    let too_low = doubts(Field::Rate, one(film::from_square_feet_per_gallon(10.0)));
    let [Doubt::SquareMetresPerLitre { meant, .. }] = too_low[..] else {
        panic!("{too_low:?}")
    };
    assert!((meant.0 - 10.0).abs() < 1e-9);
    assert!(too_low[0].to_string().contains("10 ft²/gal"), "{}", too_low[0]);
}

#[test]
fn a_rate_that_no_unit_explains_is_asked_about() {
    assert!(matches!(doubts(Field::Rate, one(1e5))[..], [Doubt::Rate { .. }]));
    assert!(matches!(
        doubts(Field::Rate, Some((9.0, 400.0)))[..],
        [Doubt::Rate { .. }]
    ));
}

/// Five times off is the edge: 9.2 to 11.8 m2/L is usual.
#[test]
fn a_rate_is_doubted_from_five_times_off() {
    for fine in [1.85, 4.0, 16.0, 58.9] {
        assert_eq!(doubts(Field::Rate, one(fine)), [], "{fine}");
    }
    for far in [1.83, 59.1] {
        assert_eq!(doubts(Field::Rate, one(far)).len(), 1, "{far}");
    }
}

/// 10.8 lb/gal are 1.294 kg/L (0.119 826 4 kg/L for each lb/gal).
#[test]
fn a_density_that_is_off_is_asked_about() {
    let pounds = doubts(Field::Density, one(10.8));
    let [
        Doubt::Density {
            as_pounds: Some(meant),
            ..
        },
    ] = pounds[..]
    else {
        panic!("{pounds:?}")
    };
    assert!((meant.0 - 10.8 * 0.119_826_4).abs() < 1e-5);
    assert!(matches!(
        doubts(Field::Density, one(0.7))[..],
        [Doubt::Density { as_pounds: None, .. }]
    ));
    assert_eq!(doubts(Field::Density, one(1.6)), []);
}

/// The usual solids of the enamel are 35 to 45 %; 4 % is 40 % with a slip of the point.
#[test]
fn shares_that_are_off_are_asked_about() {
    let said = |field, share| doubts(field, one(share)).first().map(ToString::to_string);
    assert_eq!(
        said(Field::VolumeSolids, 0.04).as_deref(),
        Some("Volume solids: 4% is far from the typical 35 to 45%. Check the label; use percent by volume.")
    );
    assert_eq!(said(Field::VolumeSolids, 0.6), None);
    assert_eq!(said(Field::Thinning, 0.1), None);
    assert!(said(Field::Thinning, 0.6).is_some());
}

#[test]
fn a_time_in_the_wrong_unit_is_asked_about() {
    let minutes = doubts(Field::Recoat, one(120.0));
    let [
        Doubt::Time {
            meant: Some((unit, hours)),
            ..
        },
    ] = minutes[..]
    else {
        panic!("{minutes:?}")
    };
    assert_eq!((unit, hours), (TimeUnit::Minutes, (2.0, 2.0)));
    assert_eq!(
        minutes[0].to_string(),
        "Recoat time: 120 h is far from the typical 2 to 4 h. Did you mean 120 minutes (2 h)?"
    );
    let days = doubts(Field::Cure, Some((14.0, 30.0)));
    let [
        Doubt::Time {
            meant: Some((unit, hours)),
            ..
        },
    ] = days[..]
    else {
        panic!("{days:?}")
    };
    assert_eq!((unit, hours), (TimeUnit::Days, (336.0, 720.0)));
    assert!(matches!(
        doubts(Field::Cure, one(1e6))[..],
        [Doubt::Time { meant: None, .. }]
    ));
    assert_eq!(doubts(Field::Recoat, one(16.0)), []);
}

#[test]
fn single_claims_are_widened_and_ranges_are_kept() {
    let apply = |label: Label| label.applied(enamel(), "own".into(), "Own".into()).unwrap();
    let single = apply(Label {
        rate: one(10.0),
        volume_solids: one(0.40),
        density: one(1.3),
        recoat_hours: one(3.0),
        cure_hours: one(500.0),
        thinning: one(0.05),
        coldest: one(2.0),
    });
    assert!((single.label_rate.low - 9.0).abs() < 1e-12 && (single.label_rate.high - 11.0).abs() < 1e-12);
    assert!(
        (single.volume_solids.low - 0.38).abs() < 1e-12 && (single.volume_solids.high - 0.42).abs() < 1e-12
    );
    for (range, value) in [
        (single.density.range(), 1.3),
        (single.recoat.range(), 3.0),
        (single.cure.range(), 500.0),
        (single.thinning.range(), 0.05),
        (single.coldest.unwrap().range(), 2.0),
    ] {
        assert_eq!(range, (value, value));
    }
    let ranges = apply(Label {
        rate: Some((9.0, 12.0)),
        volume_solids: Some((0.36, 0.38)),
        ..Label::default()
    });
    assert_eq!((ranges.label_rate.low, ranges.label_rate.high), (9.0, 12.0));
    assert_eq!(
        (ranges.volume_solids.low, ranges.volume_solids.high),
        (0.36, 0.38)
    );
    for figure in [
        single.label_rate.as_numbers(),
        single.volume_solids,
        single.density.as_numbers(),
        ranges.label_rate.as_numbers(),
        ranges.volume_solids,
    ] {
        assert_eq!(figure.certainty, Provenance::Maker);
    }
}

#[test]
fn widened_solids_stay_between_nothing_and_all() {
    for value in [1e-6, 0.01, 0.99, 1.0] {
        let figure = solids_figure((value, value));
        assert!(
            0.0 < figure.low && figure.low <= value && value <= figure.high && figure.high <= 1.0,
            "{value}"
        );
    }
}

/// 40 % at 38.1 um is 10.5 m2/L: the rate of the copy follows from its own solids, and a read rate stays.
#[test]
fn a_calculated_rate_follows_the_solids_of_the_label() {
    let label = with(Field::VolumeSolids, Some((0.40, 0.45)));
    let own = label.applied(enamel(), "own".into(), "Own".into()).unwrap();
    assert!((own.label_rate.low - 10.5).abs() < 0.01);
    assert!((own.label_rate.high - 11.8).abs() < 0.02);
    assert_eq!(own.label_rate.certainty, Provenance::Calculated);
    let varnish = material("oil-polyurethane").unwrap();
    let own = label.applied(varnish, "own".into(), "Own".into()).unwrap();
    assert_eq!(own.label_rate, varnish.label_rate);
}

#[test]
fn numbers_are_shown_short() {
    let of = [0.0, 0.245_424, 9.2, 9.816_955, 11.8, 400.0, 720.0].map(shown);
    assert_eq!(of, ["0", "0.245", "9.2", "9.82", "11.8", "400", "720"]);
    assert_eq!(shown(2.5e-7), "0.00000025");
    assert_eq!(shown_range((2.0, 2.0)), "2");
    assert_eq!(shown_range((2.0, 4.0)), "2 to 4");
}
