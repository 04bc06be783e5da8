//! The kinds of furniture, with what each is asked for when it is made as usual.

use geometry::{CountField, Furniture, Kind, LengthField, StyleField};
use serde::Serialize;

/// A kind of furniture.
#[derive(Serialize)]
pub(crate) struct KindReport {
    key: &'static str,
    label: &'static str,
    measurements: Vec<Measurement>,
    styles: Vec<Style>,
    counts: Vec<Count>,
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct Measurement {
    key: &'static str,
    label: &'static str,
    hint: &'static str,
    usual_metres: f64,
    least_metres: f64,
    most_metres: f64,
}

#[derive(Serialize)]
struct Style {
    key: &'static str,
    label: &'static str,
    usual: &'static str,
    answers: Vec<Answer>,
}

#[derive(Serialize)]
struct Answer {
    key: &'static str,
    label: &'static str,
}

#[derive(Serialize)]
struct Count {
    key: &'static str,
    label: &'static str,
    usual: u32,
    least: u32,
    most: u32,
}

/// Every kind, in the order in which they are offered.
pub(crate) fn all() -> Vec<KindReport> {
    Kind::ALL.into_iter().map(KindReport::of).collect()
}

impl KindReport {
    fn of(kind: Kind) -> Self {
        let usual = Furniture::usual(kind);
        let measurements = usual.fields().into_iter();
        let styles = usual.style_fields().into_iter();
        let counts = usual.count_fields().into_iter();
        KindReport {
            key: kind.key(),
            label: kind.label(),
            measurements: measurements.map(|field| Measurement::of(&usual, field)).collect(),
            styles: styles.map(|field| Style::of(&usual, field)).collect(),
            counts: counts.map(|field| Count::of(&usual, field)).collect(),
        }
    }
}

impl Measurement {
    fn of(usual: &Furniture, field: &LengthField) -> Self {
        Measurement {
            key: field.key,
            label: field.label,
            hint: field.hint,
            usual_metres: usual.length(field).as_metres(),
            least_metres: field.min.as_metres(),
            most_metres: field.max.as_metres(),
        }
    }
}

impl Style {
    fn of(usual: &Furniture, field: &StyleField) -> Self {
        let answers = field.options.iter().map(|answer| Answer {
            key: answer.key,
            label: answer.label,
        });
        Style {
            key: field.key,
            label: field.label,
            usual: field.of(&usual.styles).key,
            answers: answers.collect(),
        }
    }
}

impl Count {
    fn of(usual: &Furniture, field: &CountField) -> Self {
        Count {
            key: field.key,
            label: field.label,
            usual: usual.count(field),
            least: field.min,
            most: field.max,
        }
    }
}
