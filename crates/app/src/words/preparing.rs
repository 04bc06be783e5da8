//! The amounts for a preparation step, in words.

use coatings::Reason;
use units::{Mass, System, Volume, show_number};
use workshop::book::LeadTest;
use workshop::preparing::{Much, whole_sheets};

use super::{area, number, run, volume};

/// Above this many hours, days are easier to read.
const IN_DAYS: f64 = 48.0;

/// Nobody measures less than this.
const A_LITTLE: Volume = Volume::millilitres(5.0);

/// Joins the texts of reasons.
pub fn sentences(reasons: &[Reason]) -> String {
    let texts: Vec<&str> = reasons.iter().map(|reason| reason.text).collect();
    texts.join(" ")
}

/// Says what the lead test found: `Lead test: no lead found`.
pub fn lead_test(result: LeadTest) -> &'static str {
    match result {
        LeadTest::NotDone => "Lead test: not done",
        LeadTest::Negative => "Lead test: no lead found",
        LeadTest::Positive => "Lead test: lead found",
    }
}

/// Formats an amount: `8.0 fl oz to 15 fl oz`, `2 to 8`, `7 to 30 days`.
pub fn much(much: Much, system: System) -> String {
    match much {
        Much::Area(of) => area(of, system),
        Much::Length(of) => run(of, system),
        Much::Volume(_, high) if high < A_LITTLE => "a little".into(),
        Much::Volume(low, high) => range(volume(low, system), volume(high, system)),
        Much::Mass(low, high) => range(mass(low, system), mass(high, system)),
        Much::Count(low, high) => count(low, high),
        Much::Sheets(_, likely, most) => at_most((likely, most), ("sheet", "sheets")),
        Much::Discs { discs, sheets } => {
            let discs = at_most(discs, ("disc", "discs"));
            match whole_sheets(sheets.1) {
                0 => discs,
                _ => format!("{discs}; {}", at_most(sheets, ("sheet", "sheets"))),
            }
        }
        Much::Hours(low, high) if low >= IN_DAYS => format!("{} days", span(low / 24.0, high / 24.0)),
        Much::Hours(low, high) => format!("{} h", span(low, high)),
    }
}

fn count(low: u32, high: u32) -> String {
    range(low.to_string(), high.to_string())
}

/// Formats a likely number and a maximum: `3 to 6 sheets`.
fn at_most((likely, most): (f64, f64), (one, many): (&str, &str)) -> String {
    let (likely, most) = (whole_sheets(likely), whole_sheets(most));
    let unit = if likely == 1 { one } else { many };
    match likely == most {
        true => format!("{likely} {unit}"),
        false => format!("{likely} to {most} {many}"),
    }
}

fn mass(mass: Mass, system: System) -> String {
    let (count, unit) = match system {
        System::UsCustomary => (to_a_tenth(mass.as_kilograms() / units::exact::OUNCE), "oz"),
        System::Metric => (mass.as_grams().round(), "g"),
    };
    format!("{} {unit}", number(&show_number(count)))
}

fn to_a_tenth(value: f64) -> f64 {
    (value * 10.0).round() / 10.0
}

fn span(low: f64, high: f64) -> String {
    let tenths = |value: f64| number(&show_number(to_a_tenth(value)));
    range(tenths(low), tenths(high))
}

/// Joins two amounts into a range, with a shared unit printed once.
fn range(low: String, high: String) -> String {
    if low == high {
        return low;
    }
    let of = |text: &str| {
        text.split_once([' ', '\u{a0}'])
            .map(|(a, b)| (a.to_owned(), b.to_owned()))
    };
    match (of(&low), of(&high)) {
        (Some((low, unit)), Some((high, other))) if unit == other => format!("{low} to {high}\u{a0}{unit}"),
        _ => format!("{low} to {high}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn amounts_read_as_one_says_them() {
        let us = |of| much(of, System::UsCustomary);
        assert_eq!(us(Much::Count(2, 2)), "2");
        assert_eq!(us(Much::Count(2, 8)), "2 to 8");
        assert_eq!(us(Much::Hours(1.0, 4.0)), "1 to 4 h");
        assert_eq!(us(Much::Sheets("P180", 2.2, 5.0)), "3 to 5 sheets");
        assert_eq!(us(Much::Sheets("P180", 0.3, 0.7)), "1 sheet");
        let discs = Much::Discs {
            discs: (7.6, 17.0),
            sheets: (0.2, 1.1),
        };
        assert_eq!(us(discs), "8 to 17 discs; 1 to 2 sheets");
        assert_eq!(us(Much::Hours(168.0, 720.0)), "7 to 30 days");
        let ounces = |ounces: f64| Volume::millilitres(ounces * 29.573_529_562_5);
        assert_eq!(
            us(Much::Volume(ounces(8.0), ounces(15.0))),
            "8.0 to 15\u{a0}fl\u{a0}oz"
        );
        assert_eq!(us(Much::Volume(ounces(0.02), ounces(0.04))), "a little");
        assert_eq!(us(Much::Mass(Mass::grams(283.5), Mass::grams(283.5))), "10 oz");
    }
}
