//! A workshop with one piece, from what a maker types.

use geometry::{Furniture, Kind, LengthField, styles};
use serde_json::Value;
use units::{Decimals, System};
use workshop::format::{PieceRecord, WorkshopRecord, system_of};
use workshop::{Edit, PieceEdit, PieceId, Reading, Workshop};

use crate::given::{Given, whole};

/// What the function takes.
pub(crate) const USAGE: &str =
    "piece takes an object with: kind, units, measurements, styles, counts, name, count.";

const KNOWN: [&str; 7] = [
    "kind",
    "units",
    "measurements",
    "styles",
    "counts",
    "name",
    "count",
];

/// The name of the piece in the workshop.
const ID: &str = "p1";

/// The workshop that a script asks for, as a save file holds it.
pub(crate) fn of(wanted: Value) -> Result<WorkshopRecord<PieceRecord>, String> {
    let mut given = Given::to("piece", &KNOWN, wanted)?;
    let mut made = Making::start(kind(&mut given)?, units(&mut given)?)?;
    if let Some(name) = given.text("name")? {
        made.apply(PieceEdit::Name(name))?;
    }
    if let Some(count) = given.number("count")? {
        made.apply(PieceEdit::Count(count))?;
    }
    let styles = given.named("styles")?;
    for (key, answer) in &styles {
        made.style(key, answer)?;
    }
    // One choice may do away with another.
    for key in styles.keys() {
        made.has_style(key)?;
    }
    for (key, count) in given.named("counts")? {
        made.count(&key, &count)?;
    }
    // Which measurements there are hangs on the styles.
    for (key, typed) in given.named("measurements")? {
        made.measure(&key, &typed)?;
    }
    Ok(WorkshopRecord::of(&made.workshop, |piece| PieceRecord::of(piece)))
}

fn kind(given: &mut Given) -> Result<Kind, String> {
    let offered = || keys(Kind::ALL.into_iter().map(Kind::key));
    match given.text("kind")? {
        None => Err(format!("piece needs a kind. Use one of: {}.", offered())),
        Some(key) => Kind::by_key(&key)
            .ok_or_else(|| format!("Unknown kind \u{201c}{key}\u{201d}. Use one of: {}.", offered())),
    }
}

fn units(given: &mut Given) -> Result<System, String> {
    let units = given.text("units")?;
    units
        .and_then(|word| system_of(&word))
        .ok_or_else(|| "piece needs units. Use us for inches or metric for millimeters.".into())
}

fn keys(keys: impl Iterator<Item = &'static str>) -> String {
    keys.collect::<Vec<_>>().join(", ")
}

/// The workshop as far as it is made.
struct Making {
    workshop: Workshop,
    kind: Kind,
}

impl Making {
    fn start(kind: Kind, units: System) -> Result<Self, String> {
        let add = Edit::Add {
            id: PieceId(ID.into()),
            kind,
        };
        let workshop = [Edit::Units(units), add]
            .into_iter()
            .try_fold(Workshop::default(), |workshop, edit| workshop.apply(edit));
        let workshop = workshop.map_err(|error| error.to_string())?;
        Ok(Making { workshop, kind })
    }

    fn apply(&mut self, edit: PieceEdit) -> Result<(), String> {
        let edit = Edit::Piece(PieceId(ID.into()), edit);
        self.workshop = self.workshop.apply(edit).map_err(|error| error.to_string())?;
        Ok(())
    }

    fn furniture(&self) -> Furniture {
        let piece = self.workshop.pieces.first();
        piece.map_or_else(|| Furniture::usual(self.kind), |piece| piece.furniture())
    }

    /// That the piece has nothing of this name, and what it has.
    fn unknown(&self, what: &str, key: &str, has: impl Iterator<Item = &'static str>) -> String {
        let kind = self.kind.label();
        match keys(has).as_str() {
            "" => format!("{kind}: this build has no {what} \u{201c}{key}\u{201d}, and no others."),
            has => format!("{kind}: this build has no {what} \u{201c}{key}\u{201d}. It has: {has}."),
        }
    }

    fn style(&mut self, key: &str, answer: &Value) -> Result<(), String> {
        let Some(field) = styles::by_key(key) else {
            return self.has_style(key);
        };
        let known = answer
            .as_str()
            .and_then(|answer| field.options.iter().find(|known| known.key == answer));
        let known = known.ok_or_else(|| {
            let answers = keys(field.options.iter().map(|known| known.key));
            format!("\u{201c}{key}\u{201d} can't be {answer}. Use one of: {answers}.")
        })?;
        self.apply(PieceEdit::Style {
            choice: field.key,
            answer: known.key,
        })
    }

    /// Fails unless the piece, as it is made by now, is asked for this choice.
    fn has_style(&self, key: &str) -> Result<(), String> {
        let fields = self.furniture().style_fields();
        let has = fields.iter().map(|field| field.key);
        if has.clone().any(|known| known == key) {
            Ok(())
        } else {
            Err(self.unknown("choice", key, has))
        }
    }

    fn count(&mut self, key: &str, count: &Value) -> Result<(), String> {
        let fields = self.furniture().count_fields();
        let field = fields.iter().find(|field| field.key == key);
        let has = fields.iter().map(|field| field.key);
        let field = field.ok_or_else(|| self.unknown("count", key, has))?;
        self.apply(PieceEdit::Counted(field.key, Some(whole(key, count)?)))
    }

    fn measure(&mut self, key: &str, typed: &Value) -> Result<(), String> {
        let fields = self.furniture().fields();
        let field = fields.iter().find(|field| field.key == key);
        let has = fields.iter().map(|field| field.key);
        let field: &LengthField = field.ok_or_else(|| self.unknown("measurement", key, has))?;
        let typed = typed
            .as_str()
            .ok_or_else(|| format!("{}: use a string, like \"33 7/8\".", field.label))?;
        // A script has no place of its own: it writes as the tool does.
        let reading = Reading::typed_with(typed, self.workshop.units.tape_unit(), Decimals::Point);
        let reading = reading
            .map_err(|error| format!("{} \u{201c}{typed}\u{201d} can't be read. {error}", field.label))?;
        self.apply(PieceEdit::Measure(field.id(), Some(reading)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn refused(wanted: Value) -> String {
        of(wanted).unwrap_err()
    }

    #[test]
    fn what_is_made_is_a_save_file_that_is_read_whole() {
        let made = of(json!({
            "kind": "nightstand", "units": "us", "name": "Bedside", "count": 2,
            "styles": {"base": "tapered-legs"},
            "measurements": {"height": "26 1/2", "width": "510 mm", "leg-foot": "3/4"}
        }));
        let text = serde_json::to_string(&made.unwrap()).unwrap();
        let loaded = workshop::format::load(&text).unwrap();
        assert_eq!(loaded.notices, []);
        let piece = &loaded.workshop.pieces[0];
        assert_eq!((piece.name.as_str(), piece.count), ("Bedside", 2));
        assert_eq!(piece.readings.get("height").unwrap().typed(), "26 1/2");
        assert_eq!(piece.readings.get("width").unwrap().length().as_metres(), 0.51);
    }

    #[test]
    fn every_kind_takes_every_measurement_that_it_is_asked_for() {
        for kind in Kind::ALL {
            let usual = Furniture::usual(kind);
            let typed = |field: &&LengthField| {
                let metres = usual.length(field).as_metres();
                (field.key.to_owned(), json!(format!("{metres} m")))
            };
            let measurements: serde_json::Map<String, Value> = usual.fields().iter().map(typed).collect();
            let wanted = json!({"kind": kind.key(), "units": "metric", "measurements": measurements});
            assert!(of(wanted).is_ok(), "{}", kind.key());
        }
    }

    #[test]
    fn what_is_wrong_is_told_with_what_to_write() {
        assert!(refused(json!({"units": "us"})).ends_with("bench, headboard, frame."));
        assert!(
            refused(json!({"kind": "sofa", "units": "us"})).starts_with("Unknown kind \u{201c}sofa\u{201d}")
        );
        assert!(refused(json!({"kind": "bench"})).ends_with("metric for millimeters."));
        let of_bench = |key: &str, value: Value| refused(json!({"kind": "bench", "units": "us", key: value}));
        assert_eq!(
            of_bench("measurements", json!({"height": "6O"})),
            "Height \u{201c}6O\u{201d} can't be read. \u{201c}O\u{201d} is not a unit of length. Use in, ft, mm, cm or m."
        );
        let unknown = of_bench("measurements", json!({"widht": "60"}));
        assert!(
            unknown.starts_with("Bench: this build has no measurement \u{201c}widht\u{201d}. It has: "),
            "{unknown}"
        );
        assert_eq!(
            of_bench("measurements", json!({"height": 60})),
            "Height: use a string, like \"33 7/8\"."
        );
        assert_eq!(
            of_bench("styles", json!({"lower-shelf": "glass"})),
            "\u{201c}lower-shelf\u{201d} can't be \"glass\". Use one of: none, shelf."
        );
        let idle = of_bench("styles", json!({"legs": "turned", "lower-shelf": "shelf"}));
        assert!(
            idle.starts_with("Bench: this build has no choice \u{201c}lower-shelf\u{201d}."),
            "{idle}"
        );
        assert_eq!(of_bench("count", json!(100)), "Use at most 99 identical pieces.");
        assert_eq!(
            of_bench("counts", json!({"slats": 3})),
            "Bench: this build has no count \u{201c}slats\u{201d}. It has: drawers."
        );
    }
}
