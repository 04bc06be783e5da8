//! Every key that a saved file may hold is known for ever. `keys.txt` lists them; new ones are added by
//! `cargo test -p workshop --test frozen -- --ignored write_the_lists`.

use std::fs;

use coatings::mix::{CHALK_RECIPES, SHEENS, THINNERS};
use coatings::{SPECIES, Stage, Substrate};
use geometry::{AddedShape, Kind, PartKind, Shape, Zone, counts, fields, styles};
use units::System;
use workshop::LABEL_FIELDS;
use workshop::book::{BOOKS, FieldKind};

const LIST: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/frozen/keys.txt");

/// Every key with what it names, one a line, in order.
fn keys() -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    let mut add = |what: &str, key: &str| all.push(format!("{what} {key}"));
    Kind::ALL.iter().for_each(|of| add("furniture", of.key()));
    PartKind::ALL.iter().for_each(|of| add("part", of.key()));
    Zone::ALL.iter().for_each(|of| add("zone", of.key()));
    AddedShape::ALL.iter().for_each(|of| add("shape", of.key()));
    Shape::ALL.iter().for_each(|of| add("profile", of.key()));
    fields::ALL.iter().for_each(|of| add("measurement", of.key));
    counts::ALL.iter().for_each(|of| add("count", of.key));
    for field in styles::ALL.into_iter().chain(styles::BESIDE) {
        add("style", field.key);
        let options = field.options.iter();
        options.for_each(|option| add(&format!("style {}", field.key), option.key));
    }
    coatings::materials().for_each(|of| add("material", &of.key));
    coatings::TOOLS.iter().for_each(|of| add("tool", of.key));
    for system in [System::UsCustomary, System::Metric] {
        coatings::can_sizes(system)
            .iter()
            .for_each(|of| add("can", of.key));
    }
    coatings::can::LEVELS.iter().for_each(|of| add("level", of.key));
    Substrate::ALL.iter().for_each(|of| add("ground", of.key()));
    Stage::ALL.iter().for_each(|of| add("stage", of.key()));
    SPECIES.iter().for_each(|of| add("wood", of.key));
    CHALK_RECIPES.iter().for_each(|of| add("chalk recipe", of.key));
    SHEENS.iter().for_each(|of| add("sheen", of.key));
    THINNERS.iter().for_each(|of| add("thinner", of.key));
    for field in &LABEL_FIELDS {
        add("label", field.key);
        let units = field.units.iter();
        units.for_each(|(key, ..)| add(&format!("label {}", field.key), key));
    }
    for book in BOOKS {
        for field in book.fields {
            let name = format!("{} {}", book.key, field.key);
            add("field", &name);
            if let FieldKind::Choice(answers) = field.kind {
                answers
                    .iter()
                    .for_each(|(key, _)| add(&format!("answer {name}"), key));
            }
        }
    }
    all
}

/// A key that is gone, or has another name, would leave something out of a file that was saved with it.
#[test]
fn every_key_that_was_ever_saved_is_known() {
    let known = keys();
    let listed = fs::read_to_string(LIST).unwrap();
    for key in listed.lines() {
        assert!(known.iter().any(|known| known == key), "{key} is gone");
    }
    for key in &known {
        assert!(
            listed.lines().any(|listed| listed == key),
            "{key} is not in the list yet"
        );
    }
    assert!(known.len() > 400, "{}", known.len());
}

#[test]
#[ignore = "writes the list"]
fn write_the_lists() {
    fs::write(LIST, keys().join("\n") + "\n").unwrap();
}
