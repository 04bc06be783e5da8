//! What a workshop means, line by line: what was entered, and what stands in for the rest. It names no entry of any
//! format, so it stays as it is when the format changes.

use std::fmt::Write;
use std::rc::Rc;

use geometry::{Zone, styles};
use workshop::book::{BOOKS, Books, Line};
use workshop::shelf::{Stock, stock};
use workshop::{Bay, ChangeKind, LABEL_FIELDS, Piece, Reading, Scheme, Sign, Workshop};

use crate::defaults::{fill, plan, row_of};
use crate::mm;

/// The lines of a workshop.
pub(crate) fn of(workshop: &Workshop) -> String {
    let mut text = String::new();
    let settings = &workshop.settings;
    let currency = settings
        .currency
        .as_ref()
        .map_or("none", |currency| currency.code());
    writeln!(
        text,
        "workshop \"{}\", \"{}\", {:?}, sure {} %, {:?}, currency {currency}",
        workshop.title,
        workshop.note,
        workshop.units,
        settings.confidence.percent(),
        settings.inches
    )
    .unwrap();
    if let Some(finish) = &settings.finish {
        scheme(&mut text, "finish of new pieces", finish, (None, &[]));
    }
    for own in &workshop.materials {
        writeln!(text, "material {} of {}, \"{}\"", own.key, own.of, own.name).unwrap();
        for field in &LABEL_FIELDS {
            if let Some(reading) = own.label.get(field.key) {
                writeln!(text, "  {} {} {}", field.key, reading.typed(), reading.unit()).unwrap();
            }
        }
        for (can, price) in own.prices.iter() {
            writeln!(text, "  {can} costs {}", price.typed()).unwrap();
        }
    }
    books(&mut text, &workshop.books);
    let shelf = stock(workshop);
    for piece in &workshop.pieces {
        of_piece(&mut text, piece, &shelf);
    }
    text
}

fn of_piece(text: &mut String, piece: &Piece, shelf: &[Stock]) {
    let edition = piece.edition.number();
    let kind = piece.kind.key();
    writeln!(
        text,
        "piece \"{}\", {} of {kind}, edition {edition}",
        piece.name, piece.count
    )
    .unwrap();
    let furniture = piece.furniture();
    for field in furniture.fields() {
        let length = mm(furniture.length(field));
        writeln!(
            text,
            "  {} {length}, {}",
            field.key,
            source(piece.readings.get(field.key))
        )
        .unwrap();
    }
    let matter = furniture.style_fields();
    for field in styles::ALL.into_iter().filter(|field| matter.contains(field)) {
        writeln!(text, "  {} {}", field.key, field.of(&piece.styles).key).unwrap();
    }
    for field in furniture.count_fields() {
        let counted = if piece.counts.get(field).is_some() {
            "counted"
        } else {
            "guess"
        };
        writeln!(text, "  {} {}, {counted}", field.key, furniture.count(field)).unwrap();
    }
    for (upper, bays) in [(false, &piece.bays), (true, &piece.upper)] {
        for (at, bay) in bays.iter().enumerate() {
            of_bay(text, piece, upper, at + 1, bay);
        }
    }
    for change in &piece.changes {
        writeln!(text, "  change: {}", altered(&change.kind)).unwrap();
        for (item, field, _) in change.fields() {
            let length = mm(change.length(item, field));
            let source = source(change.reading(item, field.key));
            writeln!(text, "    {item} {} {length}, {source}", field.key).unwrap();
        }
    }
    for zone in Zone::ALL.into_iter().map(Zone::key) {
        let painted = piece.zones.get(zone).and_then(|zone| zone.painted);
        let by = if painted.is_some() { "chosen" } else { "usual" };
        let painted = painted.unwrap_or_else(|| piece.usually_paints(zone));
        writeln!(text, "  zone {zone} painted {painted}, {by}").unwrap();
    }
    for (zone, choice) in piece.zones.iter() {
        writeln!(text, "  zone {zone} \"{}\" {:?}", choice.name, choice.painted).unwrap();
        if let Some(own) = &choice.scheme {
            scheme(text, zone, own, (Some(&piece.id.0), shelf));
        }
    }
    for (surface, choice) in piece.choices.iter() {
        writeln!(text, "  surface {surface} {:?} {:?}", choice.zone, choice.painted).unwrap();
    }
    scheme(text, "piece", &piece.scheme, (Some(&piece.id.0), shelf));
    books(text, &piece.books);
}

fn books(text: &mut String, books: &Books) {
    for book in BOOKS {
        // Cans for a piece are told with its layers.
        let is_for_piece = |line: &&Rc<Line>| book.key == "shelf" && !line.text("of").is_empty();
        for line in books.lines(book.key).iter().filter(|line| !is_for_piece(line)) {
            let values = line.values.iter().map(|(key, value)| format!("{key} {value}"));
            let values: Vec<_> = values.collect();
            writeln!(text, "  {} {}: {}", book.key, line.id, values.join(", ")).unwrap();
        }
    }
}

fn of_bay(text: &mut String, piece: &Piece, upper: bool, at: usize, bay: &Bay) {
    let case = if upper { "upper bay" } else { "bay" };
    writeln!(text, "  {case} {at} width {}", source(bay.width.as_ref())).unwrap();
    let built = piece.furniture();
    for (row, of) in bay.rows.iter().enumerate() {
        let height = built.bays_of(upper)[at - 1].rows[row].height;
        let height = height.map_or_else(|| "shared".to_owned(), mm);
        let source = source(piece.reading(row_of(upper, at, row + 1)));
        let fill = fill(of.fill);
        writeln!(
            text,
            "    {} {fill}, {} shelves, {height}, {source}",
            of.columns, of.shelves
        )
        .unwrap();
    }
}

fn altered(kind: &ChangeKind) -> String {
    match kind {
        ChangeKind::Remove { part } => format!("remove {part}"),
        ChangeKind::Resize { part, along } => format!("resize {part} along {along:?}"),
        ChangeKind::Move { part, towards } => format!("move {part} towards {towards:?}"),
        ChangeKind::Repeat { part, times, towards } => format!("repeat {part}, {times} towards {towards:?}"),
        ChangeKind::Hole { surface } => format!("hole in {surface}"),
        ChangeKind::Add {
            number,
            shape,
            placed,
            flutes,
            members,
            points,
        } => {
            let members: Vec<&str> = members.iter().map(|member| member.key()).collect();
            let shape = shape.key();
            let of = format!("{flutes} flutes, members {members:?}, {points} points");
            format!("add {shape} {number}, placed {placed}, {of}")
        }
    }
}

/// A guess stays one: nobody typed it.
fn source(reading: Option<&Reading>) -> String {
    reading.map_or_else(
        || "guess".to_owned(),
        |reading| format!("typed {}", reading.with_unit()),
    )
}

fn scheme(text: &mut String, of: &str, scheme: &Scheme, (piece, shelf): (Option<&Rc<str>>, &[Stock])) {
    let condition = &scheme.condition;
    let wood = condition.species.map_or("no wood", |species| species.key);
    let signs = Sign::ALL.into_iter().filter(|sign| sign.of(condition));
    let signs: Vec<&str> = signs.map(Sign::key).collect();
    let colour = scheme.colour.write();
    let ground = condition.substrate.key();
    let basis = scheme.basis;
    writeln!(
        text,
        "  scheme of {of}: {colour} on {ground}, {wood}, signs {signs:?}, by {basis:?}"
    )
    .unwrap();
    for layer in &scheme.layers {
        let is_it = |stock: &&Stock| {
            let is_colour = stock.colour.is_none_or(|colour| colour == scheme.colour.0);
            *stock.material.key == *layer.material && is_colour
        };
        // Two pieces may name the same can: it is on the shelf once.
        let mut cans = shelf.iter().filter(is_it);
        let own = cans.clone().find(|stock| stock.piece.as_ref() == piece);
        writeln!(text, "    {}", plan(layer, own.or_else(|| cans.next()))).unwrap();
    }
}
