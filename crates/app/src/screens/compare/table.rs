//! A table of all figures for every way.

use units::Volume;
use workshop::{MaterialLine, WayColumn, WayFigure};
use yew::prelude::*;

use super::super::{Shown, money};
use crate::words;

/// A function that returns a table cell.
type Cell<'a> = dyn Fn(&Shown, &WayColumn, &WayFigure) -> Html + 'a;

/// Shows the ways as columns and the materials as rows.
pub fn table(shown: &Shown, lines: &[MaterialLine], columns: &[WayColumn], in_hours: bool) -> Html {
    html! {
        <div class="wide-table" tabindex="0" role="region" aria-label="All the figures">
            <table id="compare">
                <thead><tr>
                    <th scope="col"><span class="unseen">{ "Figure" }</span></th>
                    { for columns.iter().map(|column| html! { <th scope="col">{ column.label }</th> }) }
                </tr></thead>
                <tbody>
                    { for lines.iter().filter(|line| is_put_on(line, columns)).map(|line| rows(shown, line, columns, in_hours)) }
                    <tr>
                        <th scope="row">{ "Lost, all coats together" }</th>
                        { for columns.iter().map(|column| lost(shown, column)) }
                    </tr>
                    <tr>
                        <th scope="row">{ "Time, all coats together" }</th>
                        { for columns.iter().map(|column| html! {
                            <td data-way={column.label} id={format!("compare-{}-minutes", column.key)}>{ words::minutes_as(column.planned.minutes, in_hours) }</td>
                        }) }
                    </tr>
                </tbody>
            </table>
        </div>
    }
}

/// Returns true if any way applies this material. Cleaners are not included.
fn is_put_on(line: &MaterialLine, columns: &[WayColumn]) -> bool {
    columns
        .iter()
        .any(|column| column.figures.iter().any(|figure| figure.id == line.id))
}

fn rows(shown: &Shown, line: &MaterialLine, columns: &[WayColumn], in_hours: bool) -> Html {
    let cells = |cell: &Cell<'_>| -> Html {
        let cells = columns.iter().map(|column| {
            let figure = column.figures.iter().find(|figure| figure.id == line.id);
            figure.map_or_else(
                || html! { <td data-way={column.label}></td> },
                |figure| cell(shown, column, figure),
            )
        });
        cells.collect()
    };
    let time = |_: &Shown, column: &WayColumn, figure: &WayFigure| {
        html! { <td data-way={column.label} id={format!("compare-{}-minutes-{}", column.key, figure.id)}>{ words::minutes_as(figure.minutes, in_hours) }</td> }
    };
    let of_line = |column: &WayColumn| {
        let mut figures = column.figures.iter();
        figures.any(|figure| figure.id == line.id && figure.film.is_some())
    };
    html! {
        <>
            <tr><th scope="row">{ &*line.need.material.name }</th>{ cells(&volume) }</tr>
            <tr class="film"><th scope="row">{ "Time" }</th>{ cells(&time) }</tr>
            <tr class="film"><th scope="row">{ "In whole cans" }</th>{ cells(&cans) }</tr>
            if columns.iter().any(of_line) {
                <tr class="film"><th scope="row">{ "Dry thickness" }</th>{ cells(&film) }</tr>
                <tr class="film"><th scope="row">{ "For the same thickness" }</th>{ cells(&equal) }</tr>
            }
        </>
    }
}

fn volume(shown: &Shown, column: &WayColumn, figure: &WayFigure) -> Html {
    html! {
        <td data-way={column.label}>
            <b id={format!("compare-{}-{}", column.key, figure.id)}>
                { words::volume(figure.likely, shown.app.workshop.units) }
            </b>
            <span class="label">{ figure.verdict.map(words::verdict) }</span>
        </td>
    }
}

fn cans(shown: &Shown, column: &WayColumn, figure: &WayFigure) -> Html {
    html! { <td data-way={column.label} id={format!("compare-{}-cans-{}", column.key, figure.id)}>{ words::cans(&figure.buy, &money(&shown.app)) }</td> }
}

fn film(shown: &Shown, column: &WayColumn, figure: &WayFigure) -> Html {
    let film = figure
        .film
        .map(|film| words::film(film, shown.app.workshop.units));
    html! { <td data-way={column.label} id={format!("compare-{}-film-{}", column.key, figure.id)}>{ film.unwrap_or_default() }</td> }
}

fn equal(shown: &Shown, column: &WayColumn, figure: &WayFigure) -> Html {
    let volume = words::volume(figure.likely_at_equal_film, shown.app.workshop.units);
    let coats = words::coats(figure.coats_for_equal_film);
    html! { <td data-way={column.label} id={format!("compare-{}-coats-{}", column.key, figure.id)}>{ format!("{coats}, {volume}") }</td> }
}

fn lost(shown: &Shown, column: &WayColumn) -> Html {
    let all: Volume = column.planned.lost.iter().map(|(_, volume)| *volume).sum();
    let places: Vec<String> = column
        .planned
        .lost
        .iter()
        .map(|(place, _)| words::place(*place))
        .collect();
    let places: Vec<&str> = places.iter().map(String::as_str).collect();
    html! {
        <td data-way={column.label}>
            <span id={format!("compare-{}-lost", column.key)}>{ words::volume(all, shown.app.workshop.units) }</span>
            <span class="label">{ words::and(&places) }</span>
        </td>
    }
}
