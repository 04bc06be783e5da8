//! The values of a material: what the maker's own label says, and typical ones with their sources.

use std::rc::Rc;

use coatings::label::Field;
use coatings::{Material, SourcedRange, can_sizes};
use workshop::{Edit, LABEL_FIELDS, LabelField, LayerPlan, OwnMaterial};
use yew::prelude::*;

use super::super::figure::{Asked, Remark, figure_field, price_field};
use super::super::{Send, folded};
use super::Planned;
use crate::parts::{button, fold};
use crate::state::{Action, FigureId};
use crate::words;

/// A material whose label can be entered.
struct Labelled<'a> {
    planned: &'a Planned<'a>,
    material: &'a Material,
    own: Option<&'a Rc<OwnMaterial>>,
    /// The key of the maker's material, or the one that it gets with the first value.
    key: Rc<str>,
    send: Send,
}

/// Shows the fields of a layer's label, collapsed.
pub fn label(planned: &Planned<'_>, place: usize, plan: &LayerPlan, material: &Material, name: &str) -> Html {
    let app = &planned.shown.app;
    let own = app.workshop.materials.iter();
    let own = own.into_iter().find(|own| *own.key == *plan.material);
    let fold_name = format!("label-{name}");
    let is_open = app.unfolded.contains(&fold_name);
    let figure = match own {
        Some(_) => "yours",
        None => "typical; check your can",
    };
    let title = ("Label: name, coverage".into(), figure.into());
    let toggle = planned.shown.send.reform(Action::Fold);
    let zone = planned.zone.clone();
    let send = &planned.shown.send;
    let labelled = || Labelled {
        planned,
        material,
        own,
        key: own.map_or_else(|| app.free_material(), |own| Rc::clone(&own.key)),
        send: match own {
            Some(_) => send.clone(),
            None => send.reform(move |action| match action {
                Action::Figure(id, text, unit) if !matches!(id, FigureId::Price(..)) => {
                    Action::OwnLabel(zone.clone(), place, id, text, unit)
                }
                action => action,
            }),
        },
    };
    fold(&fold_name, title, is_open, toggle, &|| {
        labelled.clone()().form(plan, name)
    })
}

impl Labelled<'_> {
    /// Shows the name, the coverage and the prices, then the rest of the label, then typical values.
    fn form(&self, plan: &LayerPlan, name: &str) -> Html {
        let Labelled {
            planned, material, ..
        } = self;
        let shown = planned.shown;
        let generic = coatings::material(self.own.map_or(&plan.material, |own| own.of));
        let asked = Asked {
            id: FigureId::Name(Rc::clone(&self.key)),
            label: "Name".into(),
            unit: "",
            units: &[],
            usual: generic.map(|of| of.name.to_string()).unwrap_or_default(),
            remark: None,
        };
        let cans = can_sizes(shown.app.workshop.units).iter();
        let cans = cans.filter(|can| material.cans.contains(&can.key));
        let price = |can| price_field(&shown.app, &self.send, Rc::clone(&plan.material), can);
        // Only coats have a minimum temperature.
        let is_asked = |field: &&LabelField| field.field != Field::Coldest || material.coldest.is_some();
        let (first, rest): (Vec<_>, Vec<_>) = LABEL_FIELDS
            .iter()
            .filter(is_asked)
            .partition(|field| field.field == Field::Rate);
        let fields = |fields: &[&'static LabelField]| -> Html {
            fields.iter().map(|field| self.field(field)).collect()
        };
        let usual = self.own.map(|own| {
            let gone = Rc::clone(&own.key);
            let remove = move |_: MouseEvent| Action::Edit(Edit::RemoveMaterial(Rc::clone(&gone)));
            button(
                format!("usual-{}", own.key),
                "Use typical values",
                shown.send.reform(remove),
            )
        });
        html! {
            <>
                <div class="fields">
                    { figure_field(&shown.app, &self.send, &asked) }
                    { fields(&first) }
                    { for cans.map(price) }
                </div>
                { folded(shown, &format!("more-{name}"), "More from the label", &|| html! { <div class="fields">{ fields(&rest) }</div> }) }
                { folded(shown, &format!("typical-{name}"), "Typical values", &|| self.typical(plan, generic.unwrap_or(material))) }
                { usual.unwrap_or_default() }
            </>
        }
    }

    fn field(&self, field: &'static LabelField) -> Html {
        let app = &self.planned.shown.app;
        let reading = self.own.and_then(|own| own.label.get(field.key));
        let usual_unit = field.usual_unit(app.workshop.units);
        let unit = reading.map_or(usual_unit, |reading| reading.unit());
        let of = self
            .own
            .map_or(Some(self.material), |own| coatings::material(own.of));
        let usual = of.and_then(|of| field.figure(of, unit));
        let usual = usual.map(|figure| words::figure(figure, 1.0));
        let asked = Asked {
            id: FigureId::Label(Rc::clone(&self.key), field.key),
            label: field.field.label().into(),
            unit,
            units: field.units,
            usual: usual.unwrap_or_default(),
            remark: self.own.and_then(|own| remark(own, field)),
        };
        figure_field(app, &self.send, &asked)
    }

    /// Shows the typical values of a built-in material with their sources.
    fn typical(&self, plan: &LayerPlan, of: &Material) -> Html {
        let system = self.planned.shown.app.workshop.units;
        let of_label = LABEL_FIELDS.iter().filter_map(|field| {
            let unit = field.usual_unit(system);
            let figure = field.figure(of, unit)?;
            let space = if unit == "%" { "" } else { " " };
            let text = format!("{}{space}{}", words::figure(figure, 1.0), sign(field, unit));
            Some(line(field.field.label(), text, figure))
        });
        let film = coatings::tool(plan.tool).and_then(|tool| tool.film(of.body));
        let film = film.map(|film| line("Wet film by tool", words::wet_film(film, system), film));
        html! { <dl class="shares">{ for of_label.chain(film) }</dl> }
    }
}

fn line<U: coatings::unit::Unit>(label: &'static str, text: String, figure: SourcedRange<U>) -> Html {
    html! {
        <div>
            <dt>
                { label }{ " " }
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
