//! One layer of a scheme: its material, coats, tools and thinning.

use std::borrow::Cow;
use std::rc::Rc;

use coatings::{Material, Stage, TOOLS, ToolKind};
use units::Area;
use workshop::{LayerPlan, OwnMaterial, SchemeEdit, material_of};
use yew::prelude::*;

use super::{Planned, label};
use crate::parts::{button, button_for, select, stepper};
use crate::state::{Action, Screen};
use crate::words;

/// The selectable shares of thinner, in percent.
const THINNED: [u32; 6] = [0, 5, 10, 15, 20, 30];

/// Returns the element names of the layers: the key of the stage, plus a number if another layer has the same
/// stage.
pub fn names(planned: &Planned<'_>) -> Vec<String> {
    let own = &planned.shown.app.workshop.materials;
    let mut names: Vec<String> = Vec::with_capacity(planned.scheme.layers.len());
    for layer in &planned.scheme.layers {
        let stage = material_of(own, &layer.material).map_or("layer", |material| material.stage.key());
        let is_free = |name: &String| !names.contains(name);
        let name = Some(stage.to_owned()).filter(is_free);
        let numbered = || (2..).map(|n| format!("{stage}-{n}")).find(is_free);
        let name = name.or_else(numbered).unwrap_or_default();
        names.push(name);
    }
    names
}

/// Returns the key and name of each material of a stage, the maker's own first. Names must differ in a list.
pub fn choices(own: &[Rc<OwnMaterial>], stage: Stage) -> Vec<(&str, Cow<'_, str>)> {
    let of_maker = own.iter().filter(|own| {
        let of = coatings::material(own.of);
        of.is_some_and(|of| of.stage == stage)
    });
    let known = coatings::materials().filter(|material| material.stage == stage);
    of_maker
        .map(|own| match own.is_named() {
            true => (&*own.key, own.name.as_str().into()),
            false => (&*own.key, format!("{}, your label", own.name).into()),
        })
        .chain(known.map(|material| (&*material.key, material.name.as_ref().into())))
        .collect()
}

/// Shows a layer as bands of the core, one for each coat, with its material, amount and tool.
pub fn layer(planned: &Planned<'_>, place: usize, plan: &LayerPlan, name: &str) -> Html {
    let own = &planned.shown.app.workshop.materials;
    let Some(material) = material_of(own, &plan.material) else {
        return Html::default();
    };
    let choices = choices(own, material.stage);
    let options = choices.iter().map(|(key, name)| (*key, &**name));
    let choose = planned.change(move |key: String| Some(SchemeEdit::Material(place, key.into())));
    let coats = planned.change(move |coats| Some(SchemeEdit::Coats(place, coats)));
    let remove = planned.change(move |_: MouseEvent| Some(SchemeEdit::Remove(place)));
    let send = &planned.shown.send;
    let which = send.reform(|_: MouseEvent| Action::Screen(Screen::Tools));
    let fill = match material.stage {
        Stage::Clean => None,
        _ if material.coloured => Some(planned.scheme.colour.write()),
        stage => Some(super::super::strip::fill_of(stage).to_owned()),
    };
    let band = |n: u32| html! { <svg viewBox="0 0 10 10" preserveAspectRatio="none" key={n}><rect width="10" height="10" fill={fill.clone().unwrap_or("none".into())} /></svg> };
    html! {
        <fieldset class={classes!("layer", material.stage.key())} key={name.to_owned()}>
            <legend class="unseen">{ material.stage.label() }</legend>
            <div class="core" aria-hidden="true">{ for (0..plan.coats.max(1)).map(band) }</div>
            <div class="lb">
                <div class="what">
                    { select(material.stage.label(), format!("material-{name}"), options, &plan.material, choose) }
                    { amount(planned, &material) }
                </div>
                <div class="row">
                    { stepper(("Coats", &format!(" of {}", material.name)), &format!("coats-{name}"), plan.coats, (0, 9), coats) }
                    { tools(planned, place, plan, &material, name) }
                    if material.stage == Stage::Paint { { button(format!("which-tool-{name}"), "Brush or roller?", which) } }
                </div>
                <p class="caution">{ material.purpose }{ " " }{ material.caution }</p>
                { label::label(planned, place, plan, &material, name) }
                { button_for(format!("remove-{name}"), "Delete coat", format!("Delete coat: {}", material.name), remove) }
            </div>
        </fieldset>
    }
}

/// Shows the amount of a material for the whole piece.
fn amount(planned: &Planned<'_>, material: &Material) -> Html {
    let system = planned.shown.app.workshop.units;
    let colour = material.coloured.then_some(planned.scheme.colour.0);
    let mut lines = planned.shown.lines().map(|(line, _)| line);
    let line = lines.find(|line| {
        line.need.material.key == material.key && (line.need.colour == colour || !material.coloured)
    });
    let Some(line) = line else { return Html::default() };
    html! {
        <p class="amt">
            <b>{ words::volume(line.need.likely(), system) }</b>
            <small>{ words::range(&line.need, system) }</small>
        </p>
    }
}

/// Shows the tools that can apply a material, for broad and for narrow parts.
fn tools(planned: &Planned<'_>, place: usize, plan: &LayerPlan, material: &Material, name: &str) -> Html {
    let fit = || {
        let fit = TOOLS.iter().filter(|tool| tool.film(material.body).is_some());
        fit.map(|tool| (tool.key, tool.name))
    };
    let tool = planned.change(move |key: String| Some(SchemeEdit::Tool(place, coatings::tool(&key)?.key)));
    let narrow = planned.change(move |key: String| {
        let tool = coatings::tool(&key).map(|tool| tool.key);
        Some(SchemeEdit::NarrowTool(place, tool))
    });
    let others = fit().filter(|(key, _)| *key != plan.tool);
    let same = std::iter::once(("", "Same"));
    let is_sprayer = |key: &str| coatings::tool(key).is_some_and(|tool| tool.kind == ToolKind::Sprayer);
    let is_sprayed = is_sprayer(plan.tool) || plan.narrow_tool.is_some_and(is_sprayer);
    html! {
        <>
            { select("Tool", format!("tool-{name}"), fit(), plan.tool, tool) }
            if has_narrow(planned) {
                { select("Tool for legs and rails", format!("narrow-tool-{name}"), same.chain(others),
                    plan.narrow_tool.unwrap_or_default(), narrow) }
            }
            if is_sprayed { { thinner(planned, place, plan, material, name) } }
        </>
    }
}

/// Returns true if any narrow part gets this scheme.
fn has_narrow(planned: &Planned<'_>) -> bool {
    let Some(takeoff) = planned.shown.takeoff() else {
        return true;
    };
    let piece = &planned.shown.piece;
    let is_its = |key: &str| match &planned.zone {
        Some(zone) => zone == key,
        None => piece.zones.get(key).is_none_or(|zone| zone.scheme.is_none()),
    };
    let mut zones = takeoff.job.zones.iter().filter(|zone| is_its(&zone.key));
    zones.any(|zone| {
        zone.patches
            .iter()
            .any(|patch| patch.narrow && patch.area > Area::ZERO)
    })
}

/// Shows how much thinner to add before spraying.
fn thinner(planned: &Planned<'_>, place: usize, plan: &LayerPlan, material: &Material, name: &str) -> Html {
    let mut shares = THINNED.to_vec();
    if !shares.contains(&plan.thinned) {
        shares.push(plan.thinned);
    }
    let texts: Vec<(String, String)> = shares
        .iter()
        .map(|share| match share {
            0 => ("0".into(), "No".into()),
            share => (
                share.to_string(),
                format!("{share}% {}", material.thinner.label()),
            ),
        })
        .collect();
    let options = texts.iter().map(|(key, text)| (&**key, &**text));
    let thin = planned.change(move |share: String| Some(SchemeEdit::Thinned(place, share.parse().ok()?)));
    select(
        "Thin with",
        format!("thinned-{name}"),
        options,
        &plan.thinned.to_string(),
        thin,
    )
}
