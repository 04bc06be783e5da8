//! Base64.

/// Base64 as in RFC 4648, section 4, which the integrity of a file is written in.
pub fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::new();
    for three in bytes.chunks(3) {
        let group = (0..3).fold(0, |group, place| {
            group << 8 | usize::from(three.get(place).copied().unwrap_or(0))
        });
        for place in 0..4 {
            let letter = LETTERS[group >> (18 - 6 * place) & 63];
            text.push(if place <= three.len() { letter.into() } else { '=' });
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 4648, section 10.
    #[test]
    fn it_is_that_of_the_standard() {
        let texts = ["", "f", "fo", "foo", "foob", "fooba", "foobar"].map(|text| base64(text.as_bytes()));
        assert_eq!(
            texts,
            ["", "Zg==", "Zm8=", "Zm9v", "Zm9vYg==", "Zm9vYmE=", "Zm9vYmFy"]
        );
    }
}
