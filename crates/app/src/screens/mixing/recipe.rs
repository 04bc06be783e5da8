//! A recipe: its cans, what to pour, fixing a pour, and its label.

use std::rc::Rc;

use coatings::mix::{Scale, Step};
use units::{Mass, System};
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use workshop::book::{Line, MixRecipe, Record, system_of_amount};
use workshop::mixing::cans::{KnownCan, known_cans};
use workshop::mixing::{
    MOST_PARTS, MixFault, PARTS, Pouring, Shade, density_of, label, pouring, scale, shade,
};
use yew::prelude::*;

use super::super::Send;
use super::super::amounts::swatch;
use super::super::book::Form;
use super::{answer, batches, done, is_accepted, label_of_jar, named_today, steps};
use crate::parts::{button, fold};
use crate::state::{Action, App};
use crate::words;

/// The number of parts that every recipe shows.
const FEWEST: usize = 2;
/// The id of the list of known cans.
const CANS: &str = "known-cans";

/// Returns the cans that a part can be chosen from, each with a name that no other has.
pub fn cans(app: &App) -> Vec<(String, KnownCan)> {
    let mut cans: Vec<(String, KnownCan)> = Vec::new();
    for can in known_cans(&app.workshop) {
        let name = match can.colour {
            Some(colour) => format!("{}, {}", can.material.name, words::colour_name(colour)),
            None => can.material.name.to_string(),
        };
        if cans.iter().all(|(other, _)| *other != name) {
            cans.push((name, can));
        }
    }
    cans
}

/// Shows the list of known cans, which the names of all parts suggest from.
pub fn suggestions(cans: &[(String, KnownCan)]) -> Html {
    html! { <datalist id={CANS}>{ for cans.iter().map(|(name, _)| html! { <option value={name.clone()} /> }) }</datalist> }
}

/// What to pour, worked out from a recipe.
struct Made {
    shade: Shade,
    scale: Scale,
    planned: Pouring,
    /// The larger batch, after too much of one can.
    grown: Option<Pouring>,
}

impl Made {
    fn of(app: &App, line: &Line) -> Result<Self, MixFault> {
        let shade = shade(&app.workshop, line)?;
        let scale = scale(&app.workshop);
        let pour = |total| pouring(&shade, scale, total);
        let planned = pour(shade.wanted.value)?;
        let grown = shade.grown().map(pour).transpose()?;
        Ok(Made {
            shade,
            scale,
            planned,
            grown,
        })
    }

    fn total(&self) -> Mass {
        self.grown.as_ref().unwrap_or(&self.planned).total
    }

    fn weight(&self, mass: Mass) -> String {
        words::weight(mass, &self.scale, self.shade.system)
    }
}

/// Shows a recipe.
pub fn recipe(app: &App, send: &Send, line: &Rc<Line>, cans: &Rc<Vec<(String, KnownCan)>>) -> Html {
    let Some(form) = Form::of(app, send, "recipes", Rc::clone(&line.id)) else {
        return Html::default();
    };
    let mix = MixRecipe::read(line);
    let name = match mix.name.as_str() {
        "" => "Unnamed recipe",
        name => name,
    };
    let made = Made::of(app, line);
    let poured = || match &made {
        Ok(made) => html! { <>{ guide(made) }{ done(send, line, made.scale.show(made.total())) }</> },
        Err(fault) => html! { <p role="status">{ fault.to_string() }</p> },
    };
    let tag = || {
        let made = made.as_ref().ok().filter(|_| is_accepted(app, "recipes", line))?;
        let weight = |mass| made.weight(mass);
        let lines = label(
            &made.shade,
            &weight,
            made.total(),
            &named_today(),
            made.shade.system,
        );
        Some(label_of_jar(lines))
    };
    let folds = [
        densities(app, &form, &mix, made.as_ref().ok()),
        Some(mending(&form, &mix, line)),
        Some(colours(&form, made.as_ref().ok())),
        Some((
            "about",
            "Photo, color, note",
            String::new(),
            form.fields(&["photo", "colour", "note"]),
        )),
    ];
    let folded = |(key, title, figure, content): (&str, &str, String, Html)| {
        let key = format!("{key}-{}", line.id);
        let is_open = app.unfolded.contains(&key);
        fold(
            &key,
            (title.into(), figure),
            is_open,
            send.reform(Action::Fold),
            &|| content.clone(),
        )
    };
    html! {
        <li key={&*line.id} class="entry recipe">
            <h3>{ mix.colour.map(|colour| swatch(colour.0)) }{ name }</h3>
            { form.fields(&["name"]) }
            { parts(app, send, &form, line, cans) }
            { size(&form, line) }
            { answer(app, "recipes", line, poured) }
            { batches(app, send, line, &["day", "made"]) }
            // Always emit the same number of nodes, or the fields above would be rebuilt and lose the focus.
            <>{ for folds.into_iter().flatten().map(folded) }</>
            { tag().unwrap_or_default() }
            { form.strike(name) }
        </li>
    }
}

/// Shows as many parts as are used, and a button for another.
fn parts(app: &App, send: &Send, form: &Form, line: &Rc<Line>, cans: &Rc<Vec<(String, KnownCan)>>) -> Html {
    let key = |place: usize| format!("can-{}-{place}", line.id);
    let is_shown = |place: &usize| {
        let is_used = |key: &&str| !line.text(key).is_empty();
        app.unfolded.contains(&key(*place)) || PARTS[*place].iter().any(is_used)
    };
    let shown = (FEWEST..MOST_PARTS)
        .rev()
        .find(is_shown)
        .map_or(FEWEST, |last| last + 1);
    let part = |(place, [name, amount, colour, material, density]): (usize, &[&'static str; 5])| {
        let label = format!("Can {}", place + 1);
        let (fill, cans) = (form.fill(), Rc::clone(cans));
        let (colour, material, density) = (*colour, *material, *density);
        // The name of a known can brings what is known of it.
        let choose = Callback::from(move |event: Event| {
            let input = event
                .target()
                .and_then(|target| target.dyn_into::<HtmlInputElement>().ok());
            let text = input.map(|input| input.value()).unwrap_or_default();
            if let Some((_, can)) = cans.iter().find(|(name, _)| *name == text) {
                let of = can.colour.map(|colour| workshop::Colour(colour).write());
                fill.emit(vec![
                    (material, can.material.key.to_string()),
                    (colour, of.unwrap_or_default()),
                    (density, can.density.clone()),
                ]);
            }
        });
        let much = html! { <>{ "How much" }<span class="unseen">{ format!(" of {}", label.to_lowercase()) }</span></> };
        html! {
            <div class="fields can" onchange={choose}>
                { form.typed(name, label.into(), None, Some(CANS)) }
                { form.typed(amount, much, Some("2 or 70 g".into()), None) }
            </div>
        }
    };
    let next = key(shown);
    let more = send.reform(move |_: MouseEvent| Action::Fold(next.clone()));
    html! {
        <>
            { for PARTS.iter().enumerate().take(shown).map(part) }
            if shown < MOST_PARTS { { button(format!("add-can-{}", line.id), "Add a can", more) } }
        </>
    }
}

/// Shows the batch size, and what the parts are of if none has a unit.
fn size(form: &Form, line: &Line) -> Html {
    let has_unit = PARTS
        .iter()
        .any(|[_, amount, ..]| system_of_amount(line.text(amount)).is_some());
    html! {
        <div class="fields can">
            { form.field("wanted") }
            if !has_unit { { form.listed("by", "Parts by", [("", "weight"), ("volume", "volume")].into_iter()) } }
        </div>
    }
}

fn guide(made: &Made) -> Html {
    let Made {
        shade,
        scale,
        planned,
        grown,
    } = made;
    let colour = |part: usize| shade.colours.get(part).copied().flatten();
    let say = |step: &Step, name: &str| {
        let lead = match step.tare {
            true => "Zero the scale (tare), then pour ",
            false => "Then pour ",
        };
        let dose = match step.tare {
            true => String::new(),
            false => format!(", {} more", made.weight(step.dose)),
        };
        (lead, format!("{name} to {}", made.weight(step.display)), dose)
    };
    let put_right = words::put_right(shade, planned, grown.as_ref(), scale);
    let doubt = words::doubt(shade, scale);
    html! {
        <>
            { steps(&shade.recipe, &planned.steps, &colour, &say) }
            if !doubt.is_empty() { <p class="hint">{ doubt }</p> }
            if !put_right.is_empty() {
                <ul class="put-right" role="status">{ for put_right.into_iter().map(|line| html! { <li>{ line }</li> }) }</ul>
            }
            if planned.colour.is_some() {
                <p class="drift">{ planned.colour.map(swatch) }{ words::drift(shade, planned) }</p>
            }
        </>
    }
}

type Folded = (&'static str, &'static str, String, Html);

/// Shows a density for each part that is converted between volume and weight.
fn densities(app: &App, form: &Form, mix: &MixRecipe, made: Option<&Made>) -> Option<Folded> {
    let shade = &made?.shade;
    let system = app.workshop.units;
    let title = match system {
        System::UsCustomary => "Weight per gallon",
        System::Metric => "Weight per liter",
    };
    let all = mix.parts();
    let field = |place: &usize| {
        let (part, [.., key]) = (all.get(*place)?, PARTS.get(*place)?);
        let name = match part.name {
            "" => format!("Can {}", place + 1),
            name => name.to_owned(),
        };
        let usual = words::density(density_of(&app.workshop, part), system);
        Some(form.typed(
            key,
            format!("{name}, {}", title.to_lowercase()).into(),
            Some(usual),
            None,
        ))
    };
    let needed = shade.places.iter().zip(&shade.densities);
    let fields: Vec<Html> = needed
        .filter(|(_, density)| density.is_some())
        .filter_map(|(place, _)| field(place))
        .collect();
    let guess = shade
        .densities
        .iter()
        .flatten()
        .find(|density| density.certainty != coatings::Provenance::Maker);
    let source = guess.map(
        |of| html! { <p class="hint">{ format!("Without your number, it\u{2019}s a guess: {}.", of.certainty.label()) }</p> },
    );
    let figure = if guess.is_some() {
        "a guess"
    } else {
        "from the label"
    };
    let content =
        html! { <><div class="fields">{ fields.iter().cloned().collect::<Html>() }</div>{ source }</> };
    (!fields.is_empty()).then(|| ("density", title, figure.into(), content))
}

/// Shows what was left from an earlier batch, and what was poured wrong.
fn mending(form: &Form, mix: &MixRecipe, line: &Line) -> Folded {
    let all = mix.parts();
    let names: Vec<(String, String)> = (1..=MOST_PARTS)
        .zip(all)
        .filter(|(_, part)| part.amount.is_some())
        .map(|(number, part)| {
            let name = match part.name {
                "" => format!("can {number}"),
                name => name.to_owned(),
            };
            (number.to_string(), name)
        })
        .collect();
    let names = names.iter().map(|(key, name)| (key.as_str(), name.as_str()));
    let figure = match line.text("rest") {
        "" => String::new(),
        rest => format!("{rest} left over"),
    };
    let content = html! {
        <>
            <p class="hint">{ "Weigh what\u{2019}s in the jar without the jar. The batch size is the new total." }</p>
            { form.fields(&["rest"]) }
            <div class="fields">
                { form.listed("over", "Which can was off", std::iter::once(("", "none")).chain(names)) }
                { form.field("poured") }
            </div>
        </>
    };
    ("mend", "Top up a jar, or fix a pour", figure, content)
}

/// Shows the dry color of each part.
fn colours(form: &Form, made: Option<&Made>) -> Folded {
    let shown = made.map_or_else(|| (0..FEWEST).collect(), |made| made.shade.places.clone());
    let keys: Vec<&str> = shown
        .iter()
        .filter_map(|place| Some(PARTS.get(*place)?[2]))
        .collect();
    let drift = made.filter(|made| made.planned.colour.is_none());
    let drift = drift.map(|made| html! { <p class="hint">{ words::drift(&made.shade, &made.planned) }</p> });
    let content = html! { <>{ form.fields(&keys) }{ drift }</> };
    (
        "colors",
        "Can colors: see how far a second batch could be off",
        String::new(),
        content,
    )
}
