//! Tests of the catalogue of materials.

use super::*;
use crate::film;
use crate::sourced_range::Provenance;
use crate::tool::TOOLS;
use units::Length;

/// The can sizes of each trade, the smallest first.
const US_CANS: [&str; 6] = [
    "us-4-fl-oz",
    "us-8-fl-oz",
    "us-pint",
    "us-quart",
    "us-gallon",
    "us-5-gallon",
];
const METRIC_CANS: [&str; 9] = [
    "metric-125-ml",
    "metric-250-ml",
    "metric-375-ml",
    "metric-500-ml",
    "metric-750-ml",
    "metric-1-l",
    "metric-2500-ml",
    "metric-5-l",
    "metric-10-l",
];

#[test]
fn every_figure_has_a_range_and_a_source() {
    for material in materials() {
        let positive = [
            material.label_rate.as_numbers(),
            material.density.as_numbers(),
            material.recoat.as_numbers(),
            material.cure.as_numbers(),
        ];
        for figure in positive {
            assert!(0.0 < figure.low, "{}", material.key);
        }
        let washes = material.body == FilmClass::Wash;
        assert_eq!(washes, material.volume_solids.high == 0.0, "{}", material.key);
        assert!(material.volume_solids.high <= 1.0 && material.thinning.high <= 1.0);
        for figure in [material.volume_solids, material.thinning]
            .iter()
            .chain(&positive)
        {
            assert!(
                0.0 <= figure.low && figure.low <= figure.high && figure.high.is_finite(),
                "{}",
                material.key
            );
            assert!(!figure.source.is_empty());
        }
        assert!(material.recoat.high <= material.cure.high, "{}", material.key);
    }
}

/// Wood Handbook FPL-GTR-190 p. 378: 50 F for latex and for a day after, 40 F for oil-alkyd paint. Varnish and shellac 10 C by
/// TB 43-0209.
#[test]
fn every_coat_has_its_least_temperature() {
    for material in materials() {
        let coldest = material.coldest.map(|figure| figure.low);
        let expected = match (material.stage, material.thinner, material.body) {
            (Stage::Clean, ..) => None,
            (_, Thinner::MineralSpirits, FilmClass::Paint) => Some((40.0 - 32.0) / 1.8),
            _ => Some(10.0),
        };
        assert_eq!(coldest, expected, "{}", material.key);
        let day_after = material.thinner == Thinner::Water && material.stage != Stage::Clean;
        assert_eq!(material.warm_after() == 24, day_after, "{}", material.key);
    }
}

#[test]
fn keys_are_unique_and_kebab_case() {
    let keys: Vec<&str> = materials().map(|material| material.key.as_ref()).collect();
    for (place, key) in keys.iter().enumerate() {
        assert!(!keys[..place].contains(key), "{key}");
        assert!(
            key.split('-')
                .all(|word| !word.is_empty()
                    && word.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit())),
            "{key}"
        );
        assert_eq!(material(key).map(|material| material.key.as_ref()), Some(*key));
    }
}

/// Saved files hold these keys.
#[test]
fn old_keys_stay() {
    for key in [
        "bonding-primer",
        "shellac-primer",
        "wall-latex",
        "trim-enamel",
        "alkyd-enamel",
        "water-polyurethane",
        "oil-polyurethane",
    ] {
        assert!(material(key).is_some(), "{key}");
    }
}

#[test]
fn materials_come_stage_after_stage_and_no_stage_is_empty() {
    let stages: Vec<Stage> = materials().map(|material| material.stage).collect();
    assert!(stages.is_sorted());
    assert!(Stage::ALL.is_sorted());
    for stage in Stage::ALL {
        assert!(stages.contains(&stage), "{stage:?}");
    }
}

#[test]
fn the_body_fits_the_stage_and_a_tool_puts_it_on() {
    for material in materials() {
        let fits = match material.stage {
            Stage::Clean => material.body == FilmClass::Wash,
            Stage::Stain => material.body == FilmClass::Penetrating,
            Stage::Primer => matches!(material.body, FilmClass::Paint | FilmClass::Varnish),
            Stage::Paint => material.body == FilmClass::Paint,
            Stage::Topcoat => matches!(
                material.body,
                FilmClass::Varnish | FilmClass::Penetrating | FilmClass::Paste
            ),
        };
        assert!(fits, "{}", material.key);
        assert!(
            TOOLS.iter().any(|tool| tool.film(material.body).is_some()),
            "{}",
            material.key
        );
    }
}

#[test]
fn cans_are_known_and_sorted_in_both_trades() {
    let trade: Vec<&str> = US_CANS.iter().chain(&METRIC_CANS).copied().collect();
    for material in materials() {
        let places: Vec<_> = material
            .cans
            .iter()
            .map(|can| {
                trade
                    .iter()
                    .position(|known| known == can)
                    .unwrap_or_else(|| panic!("{}: {can}", material.key))
            })
            .collect();
        assert!(places.is_sorted_by(|a, b| a < b), "{}", material.key);
        for prefix in ["us-", "metric-"] {
            assert!(
                material.cans.iter().any(|can| can.starts_with(prefix)),
                "{}",
                material.key
            );
        }
    }
}

/// The rates that are said to follow from 38 um of dry film do follow from it.
#[test]
fn calculated_rates_follow_from_film_and_solids() {
    let film = Length::inches(shared::COAT_ON_WOOD);
    let calculated = materials().filter(|m| m.label_rate.certainty == Provenance::Calculated);
    let mut count = 0;
    for material in calculated {
        count += 1;
        let (rates, solids) = (material.label_rate, material.volume_solids);
        for (rate, solids) in [(rates.low, solids.low), (rates.high, solids.high)] {
            let follows = film::theoretical_rate(solids, film);
            assert!((follows - rate).abs() < 0.06, "{}: {follows}", material.key);
        }
    }
    assert_eq!(count, 10);
}

/// 350 to 550 ft2/gal for varnish, "Data on Painting", Building Construction vol. 4.
#[test]
fn the_varnish_rate_is_the_printed_one() {
    let rate = shared::varnish_rate();
    assert!((film::from_square_feet_per_gallon(350.0) - rate.low).abs() < 0.05);
    assert!((film::from_square_feet_per_gallon(550.0) - rate.high).abs() < 0.05);
}

/// A cut is pounds of flakes in a US gallon of alcohol; flakes at 1.1 g/mL (both of the trade, from memory).
#[test]
fn shellac_follows_from_its_cut() {
    let gallon = units::VolumeUnit::UsGallon.of(1.0).as_millilitres();
    let flakes = 2.0 * 453.592_37 / 1.1;
    let solids = flakes / (gallon + flakes);
    let shellac = material("clear-shellac").unwrap();
    assert!((solids - shellac.volume_solids.low).abs() < 5e-4, "{solids}");
    let density = 0.79 * (1.0 - solids) + 1.1 * solids;
    assert!(
        shellac.density.low <= density && density <= shellac.density.high,
        "{density}"
    );
}

#[test]
fn cautions_defer_to_the_label() {
    for material in materials() {
        assert!(
            material.caution.ends_with("Follow the label."),
            "{}",
            material.key
        );
        assert!(!material.purpose.is_empty());
    }
    for key in [
        "oil-polyurethane",
        "tung-oil",
        "linseed-oil",
        "wipe-on-stain",
        "brush-on-stain",
        "clear-wax",
    ] {
        assert!(
            material(key).unwrap().caution.to_lowercase().contains("rags"),
            "{key}"
        );
    }
}

/// TM 43-0139 s. 2-23 names shellac varnish, not the pigmented stain blocker.
#[test]
fn times_that_are_lent_are_not_read() {
    let of = |key: &str| material(key).unwrap().recoat.certainty;
    assert_eq!(of("clear-shellac"), Provenance::Read);
    assert_eq!(of("shellac-primer"), Provenance::Memory);
}
