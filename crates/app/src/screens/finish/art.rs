//! Decorative art on the piece: leaf, stencils, transfers and paper, each with its takeoff.

use std::rc::Rc;

use units::Area;
use workshop::art::{Art, OTHER_LEAF, art};
use workshop::preparing::Much;
use yew::prelude::*;

use super::super::book::{Form, add};
use super::super::refused;
use super::Shown;
use crate::words;

/// Shows the art on the piece, one line for each place.
pub fn of_piece(shown: &Shown) -> Html {
    let Shown { app, send, piece, .. } = shown;
    let known = art(piece);
    let entry = |line: &Rc<workshop::book::Line>| {
        let form = Form::of(app, send, "art", Rc::clone(&line.id))?;
        let known = known.iter().find(|art| art.id == line.id);
        let name = known.map_or("Art", |art| art.kind.label());
        Some(html! {
            <li key={&*line.id} class="entry">
                <h4>{ name }</h4>
                { form.fields(&["kind", "place", "width", "height", "count", "cover"]) }
                { form.fields(&["sheet-width", "sheet-height", "volume", "price", "hours"]) }
                { refused::answer(app, |id| id.is_of_line("art", &line.id), || {
                    known.map_or_else(|| html! { <p role="status">{ "Choose what it is." }</p> }, |art| takes(shown, art))
                }) }
                { form.strike(name) }
            </li>
        })
    };
    html! {
        <>
            <h3>{ "Leaf, stencils, transfers, paper" }</h3>
            <ul class="entries">{ for piece.books.lines("art").iter().filter_map(entry) }</ul>
            { add(send, "art", "Add art", || vec![("count", "1".into())]) }
        </>
    }
}

fn takes(shown: &Shown, art: &Art) -> Html {
    let system = shown.app.workshop.units;
    let takes = match &art.takes {
        Ok(takes) => takes,
        Err(fault) => return html! { <p role="status">{ fault.to_string() }</p> },
    };
    let is_too_much = shown.takeoff().is_some_and(|takeoff| takes.is_too_much(takeoff));
    let sheets = words::sheets(art).map(|sheets| ("Sheets".to_owned(), sheets));
    let area = (takes.area > Area::ZERO).then(|| ("Covered".to_owned(), words::area(takes.area, system)));
    let liquids = takes.liquids.iter().map(|(name, low, high)| {
        let much = Much::Volume(*low, *high);
        ((*name).to_owned(), words::much(much, system))
    });
    let time = words::much(
        Much::Hours(takes.minutes.0 / 60.0, takes.minutes.1 / 60.0),
        system,
    );
    let time = [("Time".to_owned(), time)];
    let leaf = takes
        .usual_leaf
        .map(|leaf| ("One leaf (guess)".to_owned(), shown.app.length(leaf)));
    let all = area
        .into_iter()
        .chain(leaf)
        .chain(sheets)
        .chain(liquids)
        .chain(time);
    html! {
        <>
            <dl class="amounts-of">
                { for all.map(|(what, much)| html! { <div><dt>{ what }</dt><dd>{ much }</dd></div> }) }
            </dl>
            <p class="against">{ is_too_much.then_some("That\u{2019}s more than the area to coat. Check the size and the count.") }</p>
            if takes.usual_leaf.is_some() { <p class="with">{ OTHER_LEAF.text }{ format!(" ({})", words::source(OTHER_LEAF.source, OTHER_LEAF.certainty)) }</p> }
            <p class="mind">{ art.kind.mind().text }</p>
            <p class="with">{ "Common practice for leaf, size and time, no source. Your own time counts first." }</p>
        </>
    }
}
