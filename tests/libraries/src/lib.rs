//! What a library puts on a page: one function that makes one text of another, with one library at a time behind it.
//! `cargo xtask libraries` builds it with each and weighs it.

/// Makes a text out of a number, and gives its length.
#[unsafe(no_mangle)]
pub extern "C" fn run(number: u32) -> usize {
    work(number.to_string()).len()
}

/// Without a library.
#[cfg(feature = "none")]
fn work(text: String) -> String {
    text + "."
}

/// There and back.
#[cfg(feature = "base64")]
fn work(text: String) -> String {
    use base64::Engine;
    let engine = base64::engine::general_purpose::URL_SAFE_NO_PAD;
    let bytes = engine.decode(&text).unwrap_or_default();
    engine.encode(&text) + &String::from_utf8_lossy(&bytes)
}

/// Rows of a table.
#[cfg(feature = "csv")]
fn work(text: String) -> String {
    let mut table = csv::WriterBuilder::new().from_writer(vec![]);
    for line in text.lines() {
        let _ = table.write_record(line.split(' '));
    }
    String::from_utf8_lossy(&table.into_inner().unwrap_or_default()).into_owned()
}

/// Events of a calendar.
#[cfg(feature = "icalendar")]
fn work(text: String) -> String {
    use icalendar::{Calendar, Component, Event};
    let mut calendar = Calendar::new();
    for line in text.lines() {
        let mut event = Event::new();
        event.summary(line).description(line).uid(line);
        event.add_property("DTSTART", line);
        calendar.push(event.done());
    }
    calendar.to_string()
}

/// A day that is read, moved and written.
#[cfg(feature = "jiff")]
fn work(text: String) -> String {
    let day: Result<jiff::civil::Date, _> = text.parse();
    match day {
        Ok(day) => {
            let later = day.saturating_add(jiff::Span::new().days(i64::from(day.day())));
            format!("{later} {:?}", later.weekday())
        }
        Err(error) => error.to_string(),
    }
}

/// The same.
#[cfg(feature = "time")]
fn work(text: String) -> String {
    let form = time::macros::format_description!("[year]-[month]-[day]");
    match time::Date::parse(&text, form) {
        Ok(day) => {
            let later = day.saturating_add(time::Duration::days(i64::from(day.day())));
            format!("{} {:?}", later.format(form).unwrap_or_default(), later.weekday())
        }
        Err(error) => error.to_string(),
    }
}
