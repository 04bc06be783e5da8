//! Merging two changes of one record: a change from one page is applied again on top of what another page
//! saved in the meantime.

use serde_json::{Map, Value};

/// Merges `ours` and `theirs`, two changes of the same `base`. If both changed the same value, ours wins
/// because it is later. `None` means that a value is absent.
pub(super) fn merged(base: Option<Value>, ours: Option<Value>, theirs: Option<Value>) -> Option<Value> {
    if ours == base || ours == theirs {
        return theirs;
    }
    if theirs == base {
        return ours;
    }
    match (base, ours, theirs) {
        (base, Some(Value::Object(ours)), Some(Value::Object(theirs))) if may_mix(&ours, &theirs) => {
            let base = match base {
                Some(Value::Object(base)) => base,
                _ => Map::new(),
            };
            Some(Value::Object(objects(base, ours, theirs)))
        }
        (Some(Value::Array(base)), Some(Value::Array(ours)), Some(Value::Array(theirs))) => {
            Some(Value::Array(lists(base, ours, theirs)))
        }
        (None, Some(Value::Array(ours)), Some(Value::Array(theirs))) => {
            Some(Value::Array(lists(vec![], ours, theirs)))
        }
        // Ours wins, so a change survives if the other page deleted the record.
        (_, ours, _) => ours,
    }
}

/// Entries that determine the meaning of the other entries of an object. If these differ, the objects are not
/// mixed. For example, half of each of two readings would be a size that nobody typed.
const MEANING: [&str; 5] = ["change", "part", "shape", "surface", "typed"];

fn may_mix(ours: &Map<String, Value>, theirs: &Map<String, Value>) -> bool {
    MEANING.iter().all(|entry| ours.get(*entry) == theirs.get(*entry))
        && !(ours.contains_key("typed") && ours != theirs)
}

/// The entry for the numbers that belong to the texts beside it.
const MEANT: &str = "values";
/// The entry of a material for the texts of its prices.
const PRICES: &str = "prices";

fn objects(
    mut base: Map<String, Value>,
    mut ours: Map<String, Value>,
    mut theirs: Map<String, Value>,
) -> Map<String, Value> {
    let meant = meant(&mut base, &mut ours, &mut theirs);
    let mut both = Map::new();
    for (entry, theirs) in theirs {
        let value = merged(base.remove(&entry), ours.remove(&entry), Some(theirs));
        both.extend(value.map(|value| (entry, value)));
    }
    for (entry, ours) in ours {
        let value = merged(base.remove(&entry), Some(ours), None);
        both.extend(value.map(|value| (entry, value)));
    }
    both.extend(meant.map(|meant| (MEANT.to_owned(), meant)));
    both
}

/// Merges the numbers that belong to texts, and removes them from all three records. Each number follows its
/// text. With another text, it would be an amount that nobody entered.
fn meant(
    base: &mut Map<String, Value>,
    ours: &mut Map<String, Value>,
    theirs: &mut Map<String, Value>,
) -> Option<Value> {
    let text = |of: &Map<String, Value>, key: &str| -> Option<Value> {
        let of_price = || of.get(PRICES)?.get(key);
        of.get(key).or_else(of_price).cloned()
    };
    let numbers = [&*base, &*ours, &*theirs].map(|of| of.get(MEANT).and_then(Value::as_object).cloned());
    let [_, our_numbers, their_numbers] = numbers.map(Option::unwrap_or_default);
    let mut meant = Map::new();
    for key in our_numbers.keys().chain(their_numbers.keys()) {
        let [before, here, there] = [&*base, &*ours, &*theirs].map(|of| text(of, key));
        let is_theirs = merged(before, here.clone(), there.clone()) == there && here != there;
        let from = if is_theirs { &their_numbers } else { &our_numbers };
        meant.extend(from.get(key).map(|number| (key.clone(), number.clone())));
    }
    for of in [base, ours, theirs] {
        of.remove(MEANT);
    }
    (!meant.is_empty()).then_some(Value::Object(meant))
}

/// Returns the name of a line in a list: its id, or the line itself in a list of names.
fn name(line: &Value) -> Option<String> {
    let name = |value: &Value| Some(value.as_str()?.to_owned());
    let number = |value: &Value| Some(value.as_u64()?.to_string());
    name(line).or_else(|| line.get(ID).and_then(|id| name(id).or_else(|| number(id))))
}

/// The entry for the id of a line.
const ID: &str = "id";

fn lists(base: Vec<Value>, ours: Vec<Value>, theirs: Vec<Value>) -> Vec<Value> {
    let all = || base.iter().chain(&ours).chain(&theirs);
    if all().all(|line| name(line).is_some()) {
        named(base, ours, theirs)
    } else {
        placed(&base, ours, theirs)
    }
}

/// Merges lists whose lines have names. The order is theirs, or ours if only ours changed it. A line added on
/// the other side keeps its place after the line it was inserted after.
fn named(base: Vec<Value>, ours: Vec<Value>, theirs: Vec<Value>) -> Vec<Value> {
    let ours = with_names_apart(&base, ours, &theirs);
    let names = |lines: &[Value]| lines.iter().filter_map(name).collect::<Vec<String>>();
    let [before, here, there] = [&base, &ours, &theirs].map(|lines| names(lines));
    let common = |of: &[String], with: &[String]| -> Vec<String> {
        of.iter().filter(|name| with.contains(name)).cloned().collect()
    };
    let is_moved_there = common(&before, &there) != common(&there, &before);
    let order = match is_moved_there {
        true => with_more(there, &here),
        false => with_more(here, &there),
    };
    let by_name = |lines: Vec<Value>| -> Map<String, Value> {
        lines
            .into_iter()
            .filter_map(|line| Some((name(&line)?, line)))
            .collect()
    };
    let [mut base, mut ours, mut theirs] = [base, ours, theirs].map(by_name);
    let lines = order.iter().filter_map(|name| {
        let of = (base.remove(name), ours.remove(name), theirs.remove(name));
        let mut line = merged(of.0, of.1, of.2)?;
        if name.starts_with(OURS) {
            line.as_object_mut()?.remove(ID);
        }
        Some(line)
    });
    lines.collect()
}

/// The prefix of temporary names for our lines.
const OURS: &str = "ours ";

/// Two pages can assign the same number to new lines. Our lines lose numbers that their lines use, and get
/// new ones when they are read.
fn with_names_apart(base: &[Value], mut ours: Vec<Value>, theirs: &[Value]) -> Vec<Value> {
    for line in &mut ours {
        let same = |other: &&Value| other.get(ID) == line.get(ID);
        let is_number = line.get(ID).is_some_and(Value::is_u64);
        let is_new = is_number && !base.iter().any(|other| same(&other));
        let id = line.get(ID).map(|id| format!("{OURS}{id}"));
        if is_new && theirs.iter().find(same).is_some_and(|theirs| theirs != line) {
            line[ID] = id.into();
        }
    }
    ours
}

/// Returns `names` with the missing names of another list inserted. Each follows the name that precedes it
/// there.
fn with_more(mut names: Vec<String>, others: &[String]) -> Vec<String> {
    let mut place = 0;
    for other in others {
        match names.iter().position(|name| name == other) {
            Some(known) => place = known + 1,
            None => {
                names.insert(place, other.clone());
                place += 1;
            }
        }
    }
    names
}

/// Returns how many lines are the same before and after the difference between two lists.
fn same_around(base: &[Value], changed: &[Value]) -> (usize, usize) {
    let pairs = base.iter().zip(changed);
    let before = pairs.take_while(|(a, b)| a == b).count();
    let most = base.len().min(changed.len()) - before;
    let pairs = base.iter().rev().zip(changed.iter().rev()).take(most);
    (before, pairs.take_while(|(a, b)| a == b).count())
}

/// Merges lists whose lines are identified by position. Changes at different positions are both applied. At
/// the same position, the lines are merged one by one if none was added or removed. Otherwise ours wins.
fn placed(base: &[Value], ours: Vec<Value>, theirs: Vec<Value>) -> Vec<Value> {
    let of = |changed: &[Value]| {
        let (before, behind) = same_around(base, changed);
        (before, base.len() - behind, before..changed.len() - behind)
    };
    let (our_start, our_end, our_lines) = of(&ours);
    let (their_start, their_end, their_lines) = of(&theirs);
    let [our_new, their_new] = [&ours[our_lines], &theirs[their_lines]];
    let parts: [&[Value]; 5] = if their_end <= our_start {
        let between = &base[their_end..our_start];
        [
            &base[..their_start],
            their_new,
            between,
            our_new,
            &base[our_end..],
        ]
    } else if our_end <= their_start {
        let between = &base[our_end..their_start];
        [
            &base[..our_start],
            our_new,
            between,
            their_new,
            &base[their_end..],
        ]
    } else if ours.len() == base.len() && theirs.len() == base.len() {
        let lines = base.iter().cloned().zip(ours).zip(theirs);
        return lines
            .filter_map(|((base, ours), theirs)| merged(Some(base), Some(ours), Some(theirs)))
            .collect();
    } else {
        return ours;
    };
    parts.concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[track_caller]
    fn comes_to(base: Value, ours: Value, theirs: Value, expected: Value) {
        let of = |value: &Value| Some(value.clone()).filter(|value| !value.is_null());
        let found = merged(of(&base), of(&ours), of(&theirs)).unwrap_or_default();
        assert_eq!(found, expected, "{base} to {ours} and {theirs}");
    }

    #[test]
    fn changes_of_two_entries_are_both_made() {
        comes_to(
            json!({"a": 1, "b": 1, "c": {"d": 1}, "gone": 1}),
            json!({"a": 2, "b": 1, "c": {"d": 1, "e": 5}, "gone": 1}),
            json!({"a": 1, "b": 3, "c": {"d": 4}}),
            json!({"a": 2, "b": 3, "c": {"d": 4, "e": 5}}),
        );
        comes_to(json!({"a": 1}), json!({"a": 2}), json!({"a": 3}), json!({"a": 2}));
        comes_to(
            json!({"a": 1}),
            json!({}),
            json!({"a": 1, "b": 2}),
            json!({"b": 2}),
        );
    }

    #[test]
    fn a_reading_stays_whole() {
        let reading = |typed: &str, unit: &str| json!({"width": {"typed": typed, "unit": unit}});
        comes_to(
            reading("33", "in"),
            reading("34", "in"),
            reading("33", "mm"),
            reading("34", "in"),
        );
        // A change does not get the measurements of another change either.
        let cut = json!([{"change": "remove", "part": "back"}]);
        let moved = json!([{"change": "move", "part": "top", "towards": "up"}]);
        comes_to(
            json!([{"change": "move", "part": "top", "towards": "left"}]),
            cut.clone(),
            moved,
            cut,
        );
    }

    #[test]
    fn a_number_goes_with_its_text() {
        let line = |fee: &str, hourly: &str, values: Value| json!({"id": "only", "fee": fee, "hourly": hourly, "values": values});
        let plain = json!({"id": "only", "fee": "3", "hourly": "40"});
        // Each page changes a different text, and both have a number beside it.
        comes_to(
            plain.clone(),
            line("3", "1,250", json!({"hourly": 125_000.0})),
            line("1,100", "40", json!({"fee": 110_000.0})),
            line("1,100", "1,250", json!({"hourly": 125_000.0, "fee": 110_000.0})),
        );
        // Both change the same text, but only one of them has a number beside it.
        let ours = json!({"id": "only", "fee": "3", "hourly": "45"});
        let theirs = line("3", "1,250", json!({"hourly": 125_000.0}));
        comes_to(plain.clone(), ours.clone(), theirs.clone(), ours.clone());
        comes_to(plain.clone(), theirs.clone(), ours.clone(), theirs.clone());
        // A text that was plain before is plain again.
        comes_to(
            theirs,
            plain,
            line("4", "1,250", json!({"hourly": 125_000.0})),
            json!({"id": "only", "fee": "4", "hourly": "40"}),
        );
        let own = |price: &str, values: Value| json!({"id": "own-1", "prices": {"us-quart": price}, "values": values});
        comes_to(
            own("9", json!({})),
            own("1,250", json!({"us-quart": 125_000})),
            json!({"id": "own-1", "name": "Blue", "prices": {"us-quart": "9"}}),
            json!({"id": "own-1", "name": "Blue", "prices": {"us-quart": "1,250"}, "values": {"us-quart": 125_000}}),
        );
    }

    #[test]
    fn what_came_in_on_both_sides_is_there() {
        comes_to(json!([7]), json!([7, 8]), json!([7, 9]), json!([7, 9, 8]));
        comes_to(
            json!(["a", "b"]),
            json!(["b", "c"]),
            json!(["a", "b", "d"]),
            json!(["b", "d", "c"]),
        );
        let line = |id: &str, price: u32| json!({"id": id, "price": price});
        comes_to(
            json!([line("x", 1), line("y", 1)]),
            json!([line("x", 2), line("y", 1), line("z", 1)]),
            json!([line("y", 3)]),
            json!([line("x", 2), line("y", 3), line("z", 1)]),
        );
        comes_to(json!(null), json!([1]), json!([2]), json!([2, 1]));
    }

    #[test]
    fn rows_keep_their_places() {
        let row = |columns: u32, fill: &str| json!({"columns": columns, "fill": fill});
        // One page deletes the first row, and the other changes the second.
        comes_to(
            json!([row(1, "a"), row(1, "b"), row(1, "c")]),
            json!([row(1, "b"), row(1, "c")]),
            json!([row(1, "a"), row(2, "b"), row(1, "c")]),
            json!([row(2, "b"), row(1, "c")]),
        );
        // Both change a different entry of the same row.
        comes_to(
            json!([row(1, "a")]),
            json!([row(2, "a")]),
            json!([row(1, "b")]),
            json!([row(2, "b")]),
        );
        // Both change all rows, and one adds some, so the rows cannot be matched.
        comes_to(
            json!([row(1, "a")]),
            json!([row(2, "x"), row(3, "y")]),
            json!([row(5, "b")]),
            json!([row(2, "x"), row(3, "y")]),
        );
    }

    #[test]
    fn rows_with_ids_keep_their_order() {
        let row = |id: u32, columns: u32| json!({"id": id, "columns": columns});
        // One page inserts a row between two others, and the other page changes the second.
        comes_to(
            json!([row(1, 1), row(2, 1)]),
            json!([row(1, 1), row(3, 5), row(2, 1)]),
            json!([row(1, 1), row(2, 4)]),
            json!([row(1, 1), row(3, 5), row(2, 4)]),
        );
        // One page changes the order, and the other adds a row at the end.
        comes_to(
            json!([row(1, 1), row(2, 1)]),
            json!([row(2, 1), row(1, 1)]),
            json!([row(1, 1), row(2, 1), row(3, 7)]),
            json!([row(2, 1), row(3, 7), row(1, 1)]),
        );
        // Both add a row with the same number. Both rows are kept, and ours gets another number later.
        comes_to(
            json!([row(1, 1)]),
            json!([row(1, 1), row(2, 8)]),
            json!([row(1, 1), row(2, 9)]),
            json!([row(1, 1), row(2, 9), {"columns": 8}]),
        );
    }

    #[test]
    fn a_record_that_is_gone_comes_back_with_its_change() {
        comes_to(json!({"a": 1}), json!({"a": 2}), json!(null), json!({"a": 2}));
        comes_to(json!({"a": 1}), json!({"a": 1}), json!(null), json!(null));
        comes_to(
            json!(null),
            json!({"a": 1}),
            json!({"b": 1}),
            json!({"a": 1, "b": 1}),
        );
    }
}
