//! Brush against roller on this piece, side by side.

use coatings::Stage;
use units::Volume;
use workshop::{Takeoff, ToolColumn, ToolFigure};
use yew::prelude::*;

use super::Shown;
use crate::words;

/// The comparison of the tools.
pub fn compare(shown: &Shown) -> Html {
    let Some(takeoff) = shown.takeoff() else {
        return Html::default();
    };
    if takeoff.tools.iter().all(|column| column.figures.is_empty()) {
        return Html::default();
    }
    html! {
        <section class="compare" aria-labelledby="compare-name">
            <h2 id="compare-name">{ "Brush or roller, all coats" }</h2>
            { table(shown, takeoff) }
            { for takeoff.tools.iter().map(|column| html! {
                <p class="range"><b>{ column.tool.name }</b>{ ". " }{ column.tool.texture }</p>
            }) }
        </section>
    }
}

fn table(shown: &Shown, takeoff: &Takeoff) -> Html {
    let stages = Stage::ALL.into_iter().filter(|stage| {
        takeoff
            .tools
            .iter()
            .any(|column| column.figures.iter().any(|figure| figure.stage == *stage))
    });
    html! {
        <table id="compare">
            <thead><tr>
                <th scope="col"><span class="unseen">{ "What" }</span></th>
                { for takeoff.tools.iter().map(|column| html! { <th scope="col">{ column.tool.name }</th> }) }
            </tr></thead>
            <tbody>
                { for stages.map(|stage| rows(shown, takeoff, stage)) }
                <tr>
                    <th scope="row">{ "Left in the tool" }</th>
                    { for takeoff.tools.iter().map(|column| lost(shown, column)) }
                </tr>
            </tbody>
        </table>
    }
}

fn rows(shown: &Shown, takeoff: &Takeoff, stage: Stage) -> Html {
    let cells = |cell: fn(&Shown, &ToolColumn, &ToolFigure) -> Html| {
        takeoff.tools.iter().map(move |column| {
            let figure = column.figures.iter().find(|figure| figure.stage == stage);
            figure.map_or_else(|| html! { <td></td> }, |figure| cell(shown, column, figure))
        })
    };
    html! {
        <>
            <tr><th scope="row">{ stage.label() }</th>{ for cells(volume) }</tr>
            <tr class="film"><th scope="row">{ "Dry film" }</th>{ for cells(film) }</tr>
        </>
    }
}

fn volume(shown: &Shown, column: &ToolColumn, figure: &ToolFigure) -> Html {
    let system = shown.app.workshop.units;
    let id = format!("compare-{}-{}", column.tool.key, words::stage_key(figure.stage));
    html! {
        <td>
            <b {id}>{ words::volume(figure.amount.likely(), system) }</b>
            <span class="label">{ words::verdict(figure.enough.verdict) }</span>
        </td>
    }
}

fn film(shown: &Shown, column: &ToolColumn, figure: &ToolFigure) -> Html {
    let key = words::stage_key(figure.stage);
    let film = &figure.amount.dry_film;
    let more = (figure.coats_for_equal_film > figure.coats).then(|| {
        format!(
            "{} coats for the film of the thicker tool",
            figure.coats_for_equal_film
        )
    });
    html! {
        <td>
            <span id={format!("compare-{}-film-{key}", column.tool.key)}>
                { words::film(film.thickness, film.standard_uncertainty, shown.app.workshop.units) }
            </span>
            <span class="label" id={format!("compare-{}-coats-{key}", column.tool.key)}>{ more }</span>
        </td>
    }
}

fn lost(shown: &Shown, column: &ToolColumn) -> Html {
    let lost: Volume = column
        .figures
        .iter()
        .map(|figure| figure.amount.kept_by_tool())
        .sum();
    let places: Vec<&str> = column
        .figures
        .first()
        .map(|f| f.amount.shares.iter().skip(1).map(|s| s.place).collect())
        .unwrap_or_default();
    html! {
        <td>
            <span id={format!("compare-{}-lost", column.tool.key)}>{ words::volume(lost, shown.app.workshop.units) }</span>
            <span class="label">{ format!("in {}", places.join(" and ")) }</span>
        </td>
    }
}
