//! Bytes as URL-safe text: base64url from RFC 4648, section 5, without padding.

const SIGNS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

/// Encodes bytes as text.
///
/// # Example
/// ```
/// use workshop::out::{from_base64url, to_base64url};
/// assert_eq!(to_base64url(&[0xfb, 0xff]), "-_8");
/// assert_eq!(from_base64url("-_8"), Some(vec![0xfb, 0xff]));
/// ```
pub fn to_base64url(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for group in bytes.chunks(3) {
        let byte = |place: usize| group.get(place).copied().unwrap_or(0);
        let bits = u32::from_be_bytes([0, byte(0), byte(1), byte(2)]);
        for sign in 0..=group.len() {
            let place = (bits >> (18 - 6 * sign)) & 63;
            text.push(char::from(SIGNS[place as usize]));
        }
    }
    text
}

/// Decodes a text. Returns `None` for a text that [`to_base64url`] never writes: other characters, an
/// impossible length, or nonzero bits left over at the end (RFC 4648, sections 3.3 and 3.5).
pub fn from_base64url(text: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() / 4 * 3 + 2);
    let mut bits: u32 = 0;
    let mut count = 0;
    for sign in text.bytes() {
        let place = SIGNS.iter().position(|known| *known == sign)?;
        bits = (bits << 6) | place as u32;
        count += 6;
        if count >= 8 {
            count -= 8;
            bytes.push((bits >> count) as u8);
            bits &= (1 << count) - 1;
        }
    }
    (count < 6 && bits == 0).then_some(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// The test vectors of RFC 4648, section 10, without padding.
    const VECTORS: [(&str, &str); 7] = [
        ("", ""),
        ("f", "Zg"),
        ("fo", "Zm8"),
        ("foo", "Zm9v"),
        ("foob", "Zm9vYg"),
        ("fooba", "Zm9vYmE"),
        ("foobar", "Zm9vYmFy"),
    ];

    #[test]
    fn the_vectors_of_the_standard_hold() {
        for (plain, text) in VECTORS {
            assert_eq!(to_base64url(plain.as_bytes()), text);
            assert_eq!(from_base64url(text).unwrap(), plain.as_bytes());
        }
        // The examples of section 9, with characters 62 and 63 of section 5.
        assert_eq!(to_base64url(&[0x14, 0xfb, 0x9c, 0x03, 0xd9, 0x7e]), "FPucA9l-");
        assert_eq!(to_base64url(&[0xff, 0xff, 0xff]), "____");
    }

    #[test]
    fn other_texts_are_refused() {
        for bad in [
            "Z", "Zg==", "Zh", "Zm9", "Zm9v+", "Zm9v/", "Zm 9v", "Zm9vY", "\u{e9}g",
        ] {
            assert_eq!(from_base64url(bad), None, "{bad}");
        }
    }

    proptest! {
        #[test]
        fn bytes_come_back(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
            let text = to_base64url(&bytes);
            prop_assert!(text.bytes().all(|sign| SIGNS.contains(&sign)));
            prop_assert_eq!(from_base64url(&text), Some(bytes));
        }

        #[test]
        fn only_what_is_written_is_read(text in "[A-Za-z0-9_-]{0,12}") {
            if let Some(bytes) = from_base64url(&text) {
                prop_assert_eq!(to_base64url(&bytes), text);
            }
        }
    }
}
