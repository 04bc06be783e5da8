//! Content lines of a calendar file: escaping and folding (RFC 5545, 3.1 and 3.3.11).

/// The most octets of a line, without its end (RFC 5545, 3.1).
const MOST_OCTETS: usize = 75;

/// Text as a value: special characters are escaped, and control characters are dropped.
pub(crate) fn escaped(text: &str) -> String {
    let mut escaped = String::new();
    let mut letters = text.chars().peekable();
    while let Some(letter) = letters.next() {
        match letter {
            '\\' | ';' | ',' => escaped.extend(['\\', letter]),
            '\r' if letters.peek() == Some(&'\n') => {}
            '\r' | '\n' => escaped.push_str("\\n"),
            '\t' => escaped.push('\t'),
            letter if letter.is_ascii_control() => {}
            letter => escaped.push(letter),
        }
    }
    escaped
}

/// Adds a line with its end, folded into pieces of at most 75 octets. Each continuation begins with a space,
/// and no character is split.
pub(crate) fn add_line(file: &mut String, line: &str) {
    let mut octets = 0;
    for letter in line.chars() {
        if octets + letter.len_utf8() > MOST_OCTETS {
            file.push_str("\r\n ");
            octets = 1;
        }
        file.push(letter);
        octets += letter.len_utf8();
    }
    file.push_str("\r\n");
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn what_has_a_meaning_is_escaped() {
        assert_eq!(
            escaped("a,b;c\\d\ne\r\nf\rg\u{7}h: \"i\""),
            "a\\,b\\;c\\\\d\\ne\\nf\\ngh: \"i\""
        );
    }

    proptest! {
        #[test]
        fn folded_lines_are_short_and_come_back(text in "(\\PC|🪑|é){0,300}") {
            let mut file = String::new();
            add_line(&mut file, &text);
            prop_assert!(file.ends_with("\r\n"));
            prop_assert!(file.split("\r\n").all(|line| line.len() <= MOST_OCTETS));
            prop_assert_eq!(file.replace("\r\n ", "").replace("\r\n", ""), text);
        }
    }
}
