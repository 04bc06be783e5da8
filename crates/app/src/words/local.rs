//! Numbers with the decimal sign that people write here.

use std::cell::Cell;

thread_local! {
    // The locale of a browser does not change while a page is open, so it is set once and is no part of the state.
    static SIGN: Cell<char> = const { Cell::new('.') };
}

/// The page begins: this is the decimal sign here.
pub fn write_decimals_with(sign: char) {
    SIGN.set(sign);
}

/// A text with the decimal sign that people write here instead of the point in its numbers.
pub fn local(text: String) -> String {
    match SIGN.get() {
        '.' => text,
        sign => with_sign(&text, sign),
    }
}

fn with_sign(text: &str, sign: char) -> String {
    let mut digit_before = false;
    let mut signs = text.chars().peekable();
    let mut local = String::with_capacity(text.len());
    while let Some(c) = signs.next() {
        let is_point = c == '.' && digit_before && signs.peek().is_some_and(char::is_ascii_digit);
        local.push(if is_point { sign } else { c });
        digit_before = c.is_ascii_digit();
    }
    local
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_within_numbers_alone_become_the_sign() {
        assert_eq!(
            with_sign("Likely 1.5 L left. It lasts 9.", ','),
            "Likely 1,5 L left. It lasts 9."
        );
        assert_eq!(local("1.5".into()), "1.5");
    }
}
