//! The values of a material: typical ones with their sources, or those from the maker's own label.

use std::rc::Rc;

use coatings::label::Field;
use coatings::{Material, SourcedRange, can_sizes};
use web_sys::HtmlInputElement;
use workshop::{Edit, LABEL_FIELDS, LabelField, LayerPlan, MaterialEdit, OwnMaterial};
use yew::prelude::*;

use super::super::figure::{Asked, Remark, figure_field, price_field};
use super::Planned;
use crate::parts::{button, fold};
use crate::state::{Action, FigureId};
use crate::words;

/// Shows the values of a layer, collapsed.
pub fn label(planned: &Planned<'_>, place: usize, plan: &LayerPlan, material: &Material, name: &str) -> Html {
    let app = &planned.shown.app;
    let own = app
        .workshop
        .materials
        .iter()
        .find(|own| *own.key == *plan.material);
    let fold_name = format!("label-{name}");
    let is_open = app.unfolded.contains(&fold_name);
    let figure = if own.is_some() { "yours" } else { "typical" };
    let title = ("Label: name, coverage".into(), figure.into());
    let toggle = planned.shown.send.reform(Action::Fold);
    fold(&fold_name, title, is_open, toggle, &|| match own {
        Some(own) => entered(planned, own, material),
        None => usual(planned, place, plan, material),
    })
}

/// Shows the typical values of a material with their sources.
fn usual(planned: &Planned<'_>, place: usize, plan: &LayerPlan, material: &Material) -> Html {
    let system = planned.shown.app.workshop.units;
    let of_label = LABEL_FIELDS.iter().filter_map(|field| {
        let unit = field.usual_unit(system);
        let figure = field.figure(material, unit)?;
        let text = format!("{} {}", words::figure(figure, 1.0), sign(field, unit));
        Some(line(field.field.label(), text, figure))
    });
    let film = coatings::tool(plan.tool).and_then(|tool| tool.film(material.body));
    let film = film.map(|film| line("Wet film by tool", words::wet_film(film, system), film));
    let zone = planned.zone.clone();
    let own = planned
        .shown
        .send
        .reform(move |_: MouseEvent| Action::OwnLabel(zone.clone(), place));
    html! {
        <>
            <dl class="shares">{ for of_label.chain(film) }</dl>
            { button(format!("own-label-{place}"), "Enter your can\u{2019}s label", own) }
        </>
    }
}

fn line<U: coatings::unit::Unit>(label: &'static str, text: String, figure: SourcedRange<U>) -> Html {
    html! {
        <div>
            <dt>
                { label }
                <span class="label">{ words::source(figure.source, figure.certainty) }</span>
            </dt>
            <dd>{ text }</dd>
        </div>
    }
}

fn sign(field: &LabelField, unit: &str) -> &'static str {
    let known = field.units.iter().find(|(key, ..)| *key == unit);
    known.map_or("", |(_, sign, _)| sign)
}

/// Shows the values the maker entered from a label, and prices.
fn entered(planned: &Planned<'_>, own: &Rc<OwnMaterial>, material: &Material) -> Html {
    let send = &planned.shown.send;
    let (key, gone) = (Rc::clone(&own.key), Rc::clone(&own.key));
    let rename = send.reform(move |event: Event| {
        let name = event.target_unchecked_into::<HtmlInputElement>().value();
        Action::Edit(Edit::Material(Rc::clone(&key), MaterialEdit::Name(name)))
    });
    let remove = send.reform(move |_: MouseEvent| Action::Edit(Edit::RemoveMaterial(Rc::clone(&gone))));
    let cans = can_sizes(planned.shown.app.workshop.units).iter();
    let cans = cans.filter(|can| material.cans.contains(&can.key));
    let name = format!("name-{}", own.key);
    // Only coats have a minimum temperature.
    let fields = LABEL_FIELDS.iter();
    let fields = fields.filter(|field| field.field != Field::Coldest || material.coldest.is_some());
    html! {
        <>
            <div class="fields">
                <div class="field wide">
                    <label for={name.clone()}>{ "Name on the can" }</label>
                    <input id={name} type="text" value={own.name.clone()} onchange={rename} />
                </div>
                { for fields.map(|field| of_label(planned, own, field)) }
                { for cans.map(|can| price_field(&planned.shown.app, send, Rc::clone(&own.key), can)) }
            </div>
            { button(format!("usual-{}", own.key), "Use typical values", remove) }
        </>
    }
}

fn of_label(planned: &Planned<'_>, own: &Rc<OwnMaterial>, field: &'static LabelField) -> Html {
    let send = &planned.shown.send;
    let reading = own.label.get(field.key);
    let usual_unit = field.usual_unit(planned.shown.app.workshop.units);
    let unit = reading.map_or(usual_unit, |reading| reading.unit());
    let usual = coatings::material(own.of).and_then(|of| field.figure(of, unit));
    let usual = usual.map(|figure| words::figure(figure, 1.0));
    figure_field(
        &planned.shown.app,
        send,
        &Asked {
            id: FigureId::Label(Rc::clone(&own.key), field.key),
            label: field.field.label().into(),
            unit,
            units: field.units,
            usual: usual.unwrap_or_default(),
            remark: remark(own, field),
        },
    )
}

/// Returns the remark about an entered value.
fn remark(own: &OwnMaterial, field: &LabelField) -> Option<Remark> {
    match own.check() {
        Err(faults) => {
            let fault = faults.into_iter().find(|fault| fault.field() == field.field)?;
            Some(Remark::Error(fault.to_string()))
        }
        Ok(doubts) => {
            let doubt = doubts.into_iter().find(|doubt| doubt.field() == field.field)?;
            Some(Remark::Question(doubt.to_string()))
        }
    }
}
