//! Every default of each edition, against the list that is committed.

use std::collections::BTreeMap;
use std::fmt::Write;

use geometry::{
    AddedShape, Along, Bay, BayPlace, Counts, Edition, FieldId, Fill, Furniture, Kind, LengthField, PartKind,
    Shape, Towards, Zone, counts, fields, styles,
};
use units::Length;
use workshop::format::VERSION;
use workshop::shelf::Stock;
use workshop::{ChangeKind, LayerPlan, PieceChange, Scheme, Sign};

use crate::{holds, mm};

/// The committed lists, in the order of the editions.
const LISTS: [&str; 1] = [include_str!("editions/1.txt")];

const ADVICE: &str = "If you only added something, run write_the_lists and look at the difference. \
    Saved pieces rest on this. A line that is there never changes: give what is new an edition of \
    its own, see DEVELOPERS.md, \"A usual size, style or scheme\". Lines may be added for what came in.";

#[test]
fn an_edition_that_was_published_never_changes() {
    assert_eq!(Edition::ALL.len(), LISTS.len(), "each edition has its list");
    for (edition, list) in Edition::ALL.into_iter().zip(LISTS) {
        let what = format!("Edition {} changed.", edition.number());
        holds(&what, &written(edition), list, ADVICE);
    }
}

/// A page that does not know an edition would take its pieces for others, so it must refuse the whole file.
#[test]
fn each_edition_came_with_a_version_of_its_own() {
    const SINCE: [u64; 1] = [3];
    assert_eq!(
        Edition::ALL.len(),
        SINCE.len(),
        "which version was the first to write it?"
    );
    assert!(SINCE.is_sorted_by(|before, after| before < after));
    assert!(SINCE.iter().all(|since| *since <= VERSION));
}

#[test]
#[ignore = "writes the lists"]
fn write_the_lists() {
    for edition in Edition::ALL {
        let file = format!("tests/frozen/editions/{}.txt", edition.number());
        std::fs::write(file, written(edition)).unwrap();
    }
}

/// A kind as the edition has it.
fn untouched(kind: Kind, edition: Edition) -> Furniture {
    Furniture::of_edition(kind, edition)
}

fn written(edition: Edition) -> String {
    let mut text = String::new();
    for kind in Kind::ALL {
        kind_of(&mut text, &untouched(kind, edition));
    }
    sizes(&mut text, edition);
    changes(&mut text);
    for zone in Zone::ALL {
        let painted = if edition.paints(zone) { "painted" } else { "left" };
        writeln!(text, "zone {}: {painted}", zone.key()).unwrap();
    }
    for part in PartKind::ALL {
        writeln!(text, "zone of {}: {}", part.key(), part.zone().key()).unwrap();
    }
    scheme(&mut text, edition);
    text
}

fn kind_of(text: &mut String, usual: &Furniture) {
    let key = usual.kind.key();
    let answers = styles::ALL.into_iter();
    let answers = answers.map(|field| format!("{} {}", field.key, field.of(&usual.styles).key));
    writeln!(text, "{key}, styles: {}", answers.collect::<Vec<_>>().join(", ")).unwrap();
    assert_eq!(usual.counts, Counts::default());
    let counted = counts::ALL.into_iter();
    let counted = counted.map(|field| format!("{} {}", field.key, usual.count(field)));
    writeln!(text, "{key}, counts: {}", counted.collect::<Vec<_>>().join(", ")).unwrap();
    for (name, bays) in [("bays", &usual.bays), ("upper bays", &usual.upper)] {
        let bays = bays.iter().map(bay);
        writeln!(text, "{key}, {name}: {}", bays.collect::<Vec<_>>().join(" | ")).unwrap();
    }
}

fn bay(bay: &Bay) -> String {
    let rows = bay.rows.iter().map(|row| {
        let fill = fill(row.fill);
        let height = row.height.map_or_else(|| "shared".to_owned(), mm);
        format!("{} {fill}, {} shelves, {height}", row.columns, row.shelves)
    });
    assert_eq!(bay.width, None);
    rows.collect::<Vec<_>>().join("; ")
}

pub(crate) fn fill(fill: Fill) -> &'static str {
    match fill {
        Fill::Drawers => "drawers",
        Fill::Doors => "doors",
        Fill::Open => "open",
    }
}

/// The sizes of each kind as it is made, and what other choices and measurements make of them.
fn sizes(text: &mut String, edition: Edition) {
    for field in fields::ALL {
        let of = |kind| mm(untouched(kind, edition).length(field));
        line(
            text,
            &format!("size {}", field.key),
            Kind::ALL.map(|kind| (kind, of(kind))),
        );
    }
    for style in styles::ALL {
        for answer in style.options {
            let chosen = |usual: &Furniture| {
                let mut piece = usual.clone();
                style.choose(&mut piece.styles, answer.key);
                piece
            };
            let with = format!("with {} {}", style.key, answer.key);
            moved(text, edition, &with, &chosen, &[]);
        }
    }
    for measured in fields::ALL {
        let taken = |usual: &Furniture| {
            let mut piece = usual.clone();
            piece.measures.set(measured, Length::millimetres(987.0));
            piece
        };
        moved(
            text,
            edition,
            &format!("with {} of 987", measured.key),
            &taken,
            &[measured],
        );
    }
}

/// The sizes that are others on a piece that was altered so.
fn moved(
    text: &mut String,
    edition: Edition,
    with: &str,
    alter: &dyn Fn(&Furniture) -> Furniture,
    without: &[&LengthField],
) {
    for field in fields::ALL.into_iter().filter(|field| !without.contains(field)) {
        let kinds = Kind::ALL.into_iter().filter_map(|kind| {
            let usual = untouched(kind, edition);
            let altered = alter(&usual).length(field);
            (altered != usual.length(field)).then(|| (kind, mm(altered)))
        });
        line(text, &format!("size {} {with}", field.key), kinds);
    }
}

/// A line for each value, with the kinds that have it.
fn line(text: &mut String, what: &str, values: impl IntoIterator<Item = (Kind, String)>) {
    let mut by_value: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    for (kind, value) in values {
        by_value.entry(value).or_default().push(kind.key());
    }
    for (value, kinds) in by_value {
        let kinds = if kinds.len() == Kind::ALL.len() {
            "every kind".to_owned()
        } else {
            kinds.join(", ")
        };
        writeln!(text, "{what}: {value} for {kinds}").unwrap();
    }
}

/// The sizes of what a maker alters.
fn changes(text: &mut String) {
    let part = || "part".to_owned();
    let along = [Along::Width, Along::Depth, Along::Height];
    let resized = along.map(|along| ChangeKind::Resize { part: part(), along });
    let others = [
        ChangeKind::Move {
            part: part(),
            towards: Towards::Up,
        },
        ChangeKind::Repeat {
            part: part(),
            times: 2,
            towards: Towards::Up,
        },
        ChangeKind::Hole { surface: part() },
    ];
    let added = |(shape, points)| ChangeKind::Add {
        number: 1,
        shape,
        placed: true,
        flutes: 1,
        members: vec![Shape::Ogee; if shape == AddedShape::Moulding { 2 } else { 0 }],
        points,
    };
    let shapes = AddedShape::ALL.into_iter().map(|shape| (shape, 0));
    let shapes = shapes.chain([(AddedShape::Turned, 3)]).map(added);
    for kind in resized.into_iter().chain(others).chain(shapes) {
        let name = match &kind {
            ChangeKind::Remove { .. } => "remove".to_owned(),
            ChangeKind::Resize { .. } => "resize".to_owned(),
            ChangeKind::Move { .. } => "move".to_owned(),
            ChangeKind::Repeat { .. } => "repeat".to_owned(),
            ChangeKind::Hole { .. } => "hole".to_owned(),
            ChangeKind::Add { shape, points, .. } => format!("add {} of {points} points", shape.key()),
        };
        for (item, field, usual) in PieceChange::new(kind).fields() {
            writeln!(text, "{name}, {item} {}: {}", field.key, mm(usual)).unwrap();
        }
    }
}

fn scheme(text: &mut String, edition: Edition) {
    let scheme = Scheme::of_edition(edition);
    let condition = &scheme.condition;
    let wood = condition.species.map_or("no wood", |species| species.key);
    let signs = Sign::ALL.into_iter().filter(|sign| sign.of(condition));
    let signs: Vec<&str> = signs.map(Sign::key).collect();
    let ground = condition.substrate.key();
    let colour = scheme.colour.write();
    writeln!(
        text,
        "scheme: {colour} on {ground}, {wood}, signs {signs:?}, by {:?}",
        scheme.basis
    )
    .unwrap();
    for layer in &scheme.layers {
        writeln!(text, "layer: {}", plan(layer, None)).unwrap();
    }
    for material in coatings::materials() {
        let layer = LayerPlan::of_edition(material, edition);
        writeln!(text, "layer of {}", plan(&layer, None)).unwrap();
    }
}

/// A layer, with the can of it that the maker has.
pub(crate) fn plan(layer: &LayerPlan, can: Option<&Stock>) -> String {
    let narrow = layer.narrow_tool.unwrap_or("the same");
    let level = can.and_then(|can| can.level).map_or("full", |level| level.key);
    let can = can.and_then(|can| can.can).map_or("none", |can| can.key);
    format!(
        "{}, {} coats, {}, narrow {narrow}, thinned {}, in hand {can}, {level}",
        layer.material, layer.coats, layer.tool, layer.thinned
    )
}

/// The place of a row, as it stands in names.
pub(crate) fn row_of(upper: bool, bay: usize, row: usize) -> FieldId {
    FieldId::RowHeight(BayPlace { upper, bay }, row)
}
