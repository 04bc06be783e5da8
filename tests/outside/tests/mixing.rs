//! Mixing, thinning, weighing and measuring against published and hand-worked values.
//!
//! Outside sources, with how sure each is:
//! - "Calculation DFT-WFT" (table of films): the formula for thinned paint, read; its printed example is garbled, so
//!   the numbers are worked out by hand.
//! - Critical pigment volume concentration from oil absorption: formula in a pigment-dispersion reference, read.
//! - UK SI 1988/120 (measures for serving) and UK SI 1987/51 (measuring cylinders), read.
//! - Handbook of Pharmaceutical Excipients, "Calcium Carbonate", s. 10: bulk and tapped density, read.
//! - Recipes of hobby pages, read; what they come to is worked out by hand from densities and volume solids.
//! - JCGM 100:2008, 4.3.7, 5.1.2 and F.2.2.1; from memory, standard mathematics.

#![allow(clippy::unwrap_used, reason = "a test may stop where its input is broken")]

use coatings::SourcedRange;
use coatings::can::{Contents, Weighing};
use coatings::mix::{
    Bench, Binder, By, CALCIUM_CARBONATE, ChalkBatch, ChalkMix, Component, Jug, LATEX_CPVC, Latex, Order,
    Paint, Recipe, SHEENS, Scale, Tare, Thinning, Wanted, chalk_recipe, cpvc, jug_limits, measure, pour,
    powder_limits, thinner,
};
use units::{Density, Length, Mass, Volume, VolumeUnit};

#[track_caller]
fn near(ours: f64, published: f64, tolerance: f64) {
    assert!(
        (ours - published).abs() <= tolerance,
        "{ours} is not {published} to {tolerance}"
    );
}

fn known<U: coatings::unit::Unit>(value: f64) -> SourcedRange<U> {
    SourcedRange::own(value, value)
}

/// Volume solids of 36 %, as the facts assume.
fn latex(pvc: f64) -> Latex {
    Latex {
        density: known(1.3),
        volume_solids: known(0.36),
        pvc: known(pvc),
    }
}

/// A cup of paint by the recipe, the powder at its loose bulk density of 0.8.
fn cup_of(recipe: &str, pvc: f64) -> ChalkMix {
    let bulk = Density::kilograms_per_litre(0.8);
    chalk_recipe(recipe)
        .unwrap()
        .batch(VolumeUnit::UsCup.of(1.0), bulk)
        .mix(&latex(pvc), &CALCIUM_CARBONATE)
        .unwrap()
}

/// Calculated: a third of a US cup at 0.8 g/mL is 63.1 g; at 2.71 g/mL the grains take 23.3 mL.
#[test]
fn powder_adds_its_true_volume() {
    let third = VolumeUnit::UsCup.of(1.0) / 3.0;
    near((third * Density::kilograms_per_litre(0.8)).as_grams(), 63.1, 0.05);
    let batch = |powder: f64| ChalkBatch {
        paint: Paint::Volume(Volume::litres(1.0)),
        powder: Mass::grams(powder),
        water: Volume::ZERO,
    };
    let mix = |powder| {
        batch(powder)
            .mix(&latex(0.35), &CALCIUM_CARBONATE)
            .unwrap()
            .volume
            .value
    };
    near((mix(63.1) - mix(0.0)).as_millilitres(), 23.3, 0.05);
}

/// Recipe A (hobby pages, read): 236.6 mL of paint, 47.3 g of powder are 17.5 mL, 29.6 mL of water. Calculated:
/// 283.6 mL and not 325; volume solids (85.17 + 17.46) / 283.6; pigment (29.81 + 17.46) / 102.63.
#[test]
fn recipe_a() {
    let mix = cup_of("chalk-quarter", 0.35);
    near(mix.volume.value.as_millilitres(), 283.6, 0.1);
    near(mix.volume_solids.value, 0.362, 5e-4);
    near(mix.pvc.value, 0.461, 5e-4);
}

/// Recipe B (hobby pages, read), with two and a half tablespoons of water, calculated: volume solids
/// (85.17 + 23.29) / 296.85, pigment (29.81 + 23.29) / 108.46; from a flat paint (38.33 + 23.29) / 108.46.
#[test]
fn recipe_b() {
    let mix = cup_of("chalk-third", 0.35);
    near(mix.volume_solids.value, 0.365, 5e-4);
    near(mix.pvc.value, 0.49, 5e-4);
    let flat = cup_of("chalk-third", 0.45);
    near(flat.pvc.value, 0.57, 5e-3);
    assert_eq!(flat.binder, Binder::Near);
}

/// Formula read, numbers calculated: oil absorption 15, 6 and 24 with calcite of 2.71 in linseed oil of 0.935.
#[test]
fn critical_concentration_from_oil_absorption() {
    near(cpvc(15.0, 2.71), 0.6970, 1e-4);
    near(cpvc(6.0, 2.71), 0.85, 5e-3);
    near(cpvc(24.0, 2.71), 0.59, 5e-3);
    near(cup_of("chalk-quarter", 0.35).cpvc_of_powder.value, 0.6970, 1e-4);
}

/// Calculated from bulk densities of 0.4 to 1.2 g/mL: a tablespoon is 5.9 to 17.7 g of powder.
#[test]
fn a_tablespoon_of_powder() {
    let spoon = measure("us-tablespoon").unwrap().volume();
    near(spoon.as_millilitres(), 14.786_764_781_25, 1e-9);
    let (least, most) = powder_limits(spoon, CALCIUM_CARBONATE.bulk_any_grade);
    near(least.as_grams(), 5.9, 0.05);
    near(most.as_grams(), 17.7, 0.05);
}

/// Calculated from the US gallon of 231 in3: cup, tablespoon, teaspoon. From memory: 240, 15 and 5 mL of US labels
/// (21 CFR 101.9(b)(5)), the metric cup of 250 mL and the Australian tablespoon of 20 mL.
#[test]
fn spoons_and_cups() {
    for (key, millilitres) in [
        ("us-cup", 236.588_236_5),
        ("us-tablespoon", 14.786_764_781_25),
        ("us-teaspoon", 4.928_921_593_75),
        ("label-cup", 240.0),
        ("label-tablespoon", 15.0),
        ("label-teaspoon", 5.0),
        ("metric-cup", 250.0),
        ("au-tablespoon", 20.0),
    ] {
        near(measure(key).unwrap().volume().as_millilitres(), millilitres, 1e-9);
    }
}

/// Recipes of hobby pages, read as cups and spoons: 4 and 2 tablespoons to a cup, a third of a cup and 2 to 3
/// tablespoons to a cup, half a cup and a quarter cup to a quart, one part to two.
#[test]
fn recipes_in_cups_and_spoons() {
    let volume = |key| measure(key).unwrap().volume();
    let (cup, spoon) = (volume("us-cup"), volume("us-tablespoon"));
    let quart = VolumeUnit::UsQuart.of(1.0);
    for (key, powder, least_water, most_water) in [
        (
            "chalk-quarter",
            spoon * 4.0 / cup,
            spoon * 2.0 / cup,
            spoon * 2.0 / cup,
        ),
        ("chalk-third", 1.0 / 3.0, spoon * 2.0 / cup, spoon * 3.0 / cup),
        (
            "chalk-eighth",
            cup * 0.5 / quart,
            cup * 0.25 / quart,
            cup * 0.25 / quart,
        ),
        ("chalk-half", 0.5, 0.0, 0.0),
    ] {
        let recipe = chalk_recipe(key).unwrap();
        near(recipe.powder.low, powder, 1e-12);
        near(recipe.powder.high, powder, 1e-12);
        near(recipe.water.low, least_water, 1e-12);
        near(recipe.water.high, most_water, 1e-12);
    }
}

/// Read: bulk 0.8 and tapped 1.2 g/cm3 (Handbook of Pharmaceutical Excipients), oil absorption of natural grades 6 to
/// 24 (extender-pigment note), pigment by sheen (paint-trade teaching note). From memory: calcite 2.71 g/cm3, the
/// critical concentration of latex 0.45 to 0.60.
#[test]
fn figures_of_powder_and_sheen() {
    assert_eq!(CALCIUM_CARBONATE.bulk.range(), (0.8, 1.2));
    assert_eq!(CALCIUM_CARBONATE.oil_absorption.range(), (6.0, 24.0));
    assert_eq!(CALCIUM_CARBONATE.density.range(), (2.71, 2.71));
    assert_eq!(LATEX_CPVC.range(), (0.45, 0.60));
    let sheens = SHEENS.map(|sheen| (sheen.key, sheen.pvc.range()));
    assert_eq!(
        sheens,
        [
            ("gloss", (0.0, 0.15)),
            ("semi-gloss", (0.15, 0.25)),
            ("satin", (0.30, 0.40)),
            ("eggshell", (0.35, 0.45)),
            ("flat", (0.40, 0.80)),
        ]
    );
}

/// JCGM 100, 5.2.2: ten spoons of one filling are wrong together, so their doubt is ten times that of one, not 3.2
/// times.
#[test]
fn ten_spoons_share_their_error() {
    let spoon = measure("us-tablespoon").unwrap();
    near(
        spoon.of(10.0).standard_uncertainty / spoon.of(1.0).standard_uncertainty,
        10.0,
        1e-9,
    );
}

/// UK SI 1988/120, Schedule, Tables 2 and 1, and UK SI 1987/51, Schedule, read: every row.
#[test]
fn jugs_and_cylinders() {
    for (jug, rows) in [
        (
            Jug::Line,
            &[
                (100.0, 5.0, 5.0),
                (250.0, 10.0, 10.0),
                (500.0, 15.0, 15.0),
                (1000.0, 30.0, 30.0),
            ][..],
        ),
        (
            Jug::Brim,
            &[(250.0, 0.0, 20.0), (500.0, 0.0, 30.0), (1000.0, 0.0, 60.0)],
        ),
        (
            Jug::Cylinder,
            &[
                (100.0, 0.8, 0.8),
                (250.0, 1.5, 1.5),
                (500.0, 2.0, 2.0),
                (1000.0, 4.0, 4.0),
            ],
        ),
    ] {
        for &(mark, under, over) in rows {
            let limits = jug_limits(jug, Volume::millilitres(mark)).unwrap();
            near(limits.low * 1000.0, mark - under, 1e-9);
            near(limits.high * 1000.0, mark + over, 1e-9);
        }
    }
}

/// Formula read, numbers calculated: 8 mil wet at 35 % dry to 2.80 mil, thinned by a tenth to 2.55 mil.
#[test]
fn thinned_film() {
    let dry = |share| {
        let thinning = Thinning {
            paint: Volume::litres(1.0),
            volume_solids: known(0.35),
            share,
            most: None,
            thinner: thinner("water").unwrap(),
        };
        thinning.dry_film(Length::inches(0.008)).value.as_inches() * 1000.0
    };
    near(dry(0.0), 2.80, 0.005);
    near(dry(0.1), 2.55, 0.005);
}

/// Calculated: thinned by a tenth, 2 L at 35 % are 2.2 L at 31.82 %, and the solids, 0.7 L, stay what they were.
#[test]
fn thinner_adds_no_solids() {
    let thinning = Thinning {
        paint: Volume::litres(2.0),
        volume_solids: known(0.35),
        share: 0.1,
        most: None,
        thinner: thinner("water").unwrap(),
    };
    let thinned = thinning.thinned().unwrap();
    near(thinned.liquid.as_litres(), 2.2, 1e-12);
    near(thinned.volume_solids.value, 0.318_2, 5e-5);
    near(
        thinned.liquid.as_litres() * thinned.volume_solids.value,
        0.7,
        1e-12,
    );
}

/// JCGM 100, F.2.2.1: a step of 1 is a standard uncertainty of 0.29; 4.3.7: limits of 1 % are one of 0.577 %.
/// Calculated: at 50 g, 0.2887 and 0.2887 g are 0.4082 g together.
#[test]
fn a_reading_of_a_kitchen_scale() {
    near(Scale::KITCHEN.weighing(Mass::ZERO).as_grams(), 0.29, 0.005);
    near(
        Scale::KITCHEN.weighing(Mass::grams(50.0)).as_grams(),
        0.4082,
        1e-4,
    );
}

/// By hand: 1,420 g with its contents, 130 g empty, at 1.29 kg/L exactly is one litre. A scale off by 1 % at most is
/// off by 0.577 % of what lies between the readings: 5.774 mL; with two roundings of 1 g, 0.316 mL, 5.782 mL.
#[test]
fn a_can_on_a_scale() {
    let weighed = |grams| Weighing {
        mass: Mass::grams(grams),
        scale: Scale::KITCHEN,
    };
    let contents = Contents::weighed(weighed(1420.0), weighed(130.0), known(1.29), None).unwrap();
    near(contents.likely().as_millilitres(), 1000.0, 1e-9);
    near(contents.standard_uncertainty().as_millilitres(), 5.782, 0.001);
}

/// By hand: 10 parts white, 3 ochre, 1 black of 280 g.
#[test]
fn a_batch_by_weight() {
    let part = |name: &str, share| Component {
        name: name.into(),
        share,
    };
    let parts = vec![part("white", 10.0), part("ochre", 3.0), part("black", 1.0)];
    let grey = Recipe::new(parts, By::Weight).unwrap();
    let batch = grey.batch_by_mass(Mass::grams(280.0)).unwrap();
    for (mass, grams) in batch.iter().zip([200.0, 60.0, 20.0]) {
        near(mass.as_grams(), grams, 1e-9);
    }
}

/// By hand: 10 : 3 : 1 by weight at 1.3, 1.2 and 1.1 kg/L are 14 kg in 7.69231 + 2.5 + 0.90909 = 11.10140 L, so 1.26110
/// kg/L; 400 mL are 504.441 g: 360.315, 108.095 and 36.032 g. In whole grams 360, 108 and 36 of 504.
#[test]
fn a_volume_of_a_colour_is_poured() {
    let part = |name: &str, share| Component {
        name: name.into(),
        share,
    };
    let parts = vec![part("white", 10.0), part("ochre", 3.0), part("black", 1.0)];
    let grey = Recipe::new(parts, By::Weight).unwrap();
    let densities = [1.3, 1.2, 1.1].map(|density| Some(known(density)));
    let batch = grey
        .batch(Wanted::Volume(Volume::millilitres(400.0)), &densities)
        .unwrap();
    near(
        batch.density.unwrap().value.as_kilograms_per_litre(),
        1.2611,
        5e-5,
    );
    for (dose, grams) in batch.masses().iter().zip([360.315, 108.095, 36.032]) {
        near(dose.as_grams(), grams, 5e-3);
    }
    let bench = Bench {
        scale: Scale::KITCHEN,
        tare: Tare::Once,
        order: Order::AsWritten,
        wanted: Scale::WANTED,
    };
    let steps = pour(&batch.masses(), &bench).unwrap();
    for (step, display) in steps.iter().zip([360.0, 468.0, 504.0]) {
        near(step.display.as_grams(), display, 1e-9);
    }
    // The black alone is below the 50 g that two readings of such a scale take.
    let told: Vec<bool> = steps.iter().map(|step| step.warning.is_some()).collect();
    assert_eq!(told, [false, false, true]);
}
