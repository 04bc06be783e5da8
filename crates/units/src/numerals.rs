//! How numbers are written where somebody reads them: which sign stands before decimals, and which between thousands.

use crate::Decimals;

/// The signs of numbers. The usual ones are a point, and nothing between thousands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Numerals {
    decimal: char,
    /// Between thousands, if anything stands there.
    thousands: Option<char>,
    /// The least number of digits with separated thousands.
    from: usize,
}

impl Default for Numerals {
    fn default() -> Self {
        Numerals {
            decimal: '.',
            thousands: None,
            from: usize::MAX,
        }
    }
}

impl Numerals {
    /// The signs in three numbers with `|` between them, as they are written somewhere: one and a half, a thousand, and ten
    /// thousand. Some people part only the latter.
    ///
    /// # Example
    /// ```
    /// use units::Numerals;
    /// assert_eq!(Numerals::of("1.5|1,000|10,000").write("1234.5"), "1,234.5");
    /// assert_eq!(Numerals::of("1,5|1000|10 000").write("1234.5"), "1234,5");
    /// ```
    pub fn of(written: &str) -> Self {
        let sign = |text: Option<&str>| text?.chars().find(|c| !c.is_ascii_digit());
        let mut texts = written.split('|');
        let decimal = sign(texts.next()).unwrap_or('.');
        let of_thousand = sign(texts.next());
        let thousands = sign(texts.next());
        Numerals {
            decimal,
            thousands,
            from: match (of_thousand, thousands) {
                (_, None) => usize::MAX,
                (Some(_), _) => 4,
                (None, _) => 5,
            },
        }
    }

    /// Which sign stands before decimals in what is typed.
    pub fn decimals(&self) -> Decimals {
        match self.decimal {
            ',' => Decimals::Comma,
            _ => Decimals::Point,
        }
    }

    /// A number with these signs; it is given with a point before its decimals and nothing between its thousands.
    pub fn write(&self, plain: &str) -> String {
        let (whole, behind) = plain.split_once('.').map_or((plain, None), |(w, b)| (w, Some(b)));
        let digits = whole.chars().filter(char::is_ascii_digit).count();
        let mut written = String::with_capacity(plain.len() + 4);
        let mut left = digits;
        for c in whole.chars() {
            let parts = c.is_ascii_digit() && left < digits && left.is_multiple_of(3) && digits >= self.from;
            written.extend(self.thousands.filter(|_| parts));
            written.push(c);
            left -= usize::from(c.is_ascii_digit());
        }
        if let Some(behind) = behind {
            written.push(self.decimal);
            written.push_str(behind);
        }
        written
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{plain_number, read_range_with};

    #[test]
    fn each_place_writes_its_own_signs() {
        let written = |place: &str| {
            let numerals = Numerals::of(place);
            ["0.5", "999", "1234.50", "12345", "1234567.8", "-1234"].map(|number| numerals.write(number))
        };
        assert_eq!(
            written("1.5|1,000|10,000"),
            ["0.5", "999", "1,234.50", "12,345", "1,234,567.8", "-1,234"]
        );
        assert_eq!(
            written("1,5|1.000|10.000"),
            ["0,5", "999", "1.234,50", "12.345", "1.234.567,8", "-1.234"]
        );
        assert_eq!(written("1,5|1000|10\u{a0}000")[2..4], ["1234,50", "12\u{a0}345"]);
        assert_eq!(written("1.5|1\u{2019}000|10\u{2019}000")[2], "1\u{2019}234.50");
        assert_eq!(Numerals::default().write("1234.5"), "1234.5");
    }

    /// Shown numbers can be read back.
    #[test]
    fn what_is_written_is_read_as_it_was_meant() {
        for place in [
            "1.5|1,000|10,000",
            "1,5|1.000|10.000",
            "1,5|1000|10\u{202f}000",
            "1.5|1\u{2019}000|10\u{2019}000",
        ] {
            let numerals = Numerals::of(place);
            for plain in ["1234.5", "1250", "1.25", "1.250", "12345678", "0.125"] {
                let written = numerals.write(plain);
                let value: f64 = plain.parse().unwrap();
                assert_eq!(
                    read_range_with(&written, numerals.decimals()),
                    Ok((value, value)),
                    "{written}"
                );
                assert_eq!(
                    plain_number(&written, numerals.decimals()).as_deref(),
                    Some(plain)
                );
            }
        }
    }
}
