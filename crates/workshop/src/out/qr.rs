//! QR codes (ISO/IEC 18004).

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// The light border that readers need, in modules (ISO/IEC 18004, 6.3.8: four).
const QUIET: i32 = 4;

/// A QR code to draw.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct QrPicture {
    /// The width and height with the light border, in modules. The `viewBox` of the drawing goes from 0 to
    /// this.
    pub side: u32,
    /// The dark modules as the `d` of one SVG path, with a rectangle for each run in a row.
    pub d: String,
}

/// Returns the smallest QR code of a text, or `None` if the text is longer than 2953 bytes.
///
/// The bytes are encoded in byte mode. The size is that of the lowest error correction level. A higher level
/// is used if it fits in the same size, because it costs nothing and tolerates stains.
///
/// # Example
/// ```
/// use workshop::out::qr;
/// assert_eq!(qr("a link").unwrap().side, 21 + 2 * 4);
/// assert_eq!(qr(&"x".repeat(2954)), None);
/// ```
pub fn qr(text: &str) -> Option<QrPicture> {
    let segment = QrSegment::make_bytes(text.as_bytes());
    let code =
        QrCode::encode_segments_advanced(&[segment], QrCodeEcc::Low, Version::MIN, Version::MAX, None, true);
    let code = code.ok()?;
    let size = code.size();
    let mut d = String::new();
    for y in 0..size {
        let mut x = 0;
        while x < size {
            let dark = (x..size).take_while(|x| code.get_module(*x, y)).count() as i32;
            if dark > 0 {
                let (left, top) = (x + QUIET, y + QUIET);
                d.push_str(&format!("M{left} {top}h{dark}v1h-{dark}z"));
            }
            x += dark + 1;
        }
    }
    Some(QrPicture {
        side: (size + 2 * QUIET) as u32,
        d,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Pixels per module. The reader must find the code as in a camera image.
    const DOTS: usize = 4;

    /// Decodes the drawn picture with an independent library.
    fn read(picture: &QrPicture) -> String {
        let side = picture.side as usize;
        let mut dark = vec![false; side * side];
        for run in picture.d.split('M').skip(1) {
            let numbers: Vec<usize> = run
                .split(|sign: char| !sign.is_ascii_digit())
                .filter_map(|number| number.parse().ok())
                .collect();
            let [x, y, width, 1, back] = numbers[..] else {
                panic!("{run}")
            };
            assert_eq!(width, back);
            let quiet = QUIET as usize;
            assert!(x >= quiet && y >= quiet && x + width <= side - quiet && y < side - quiet);
            dark[y * side + x..][..width].fill(true);
        }
        let mut image = rqrr::PreparedImage::prepare_from_greyscale(side * DOTS, side * DOTS, |x, y| {
            if dark[y / DOTS * side + x / DOTS] { 0 } else { 255 }
        });
        let grids = image.detect_grids();
        assert_eq!(grids.len(), 1);
        grids[0].decode().unwrap().1
    }

    /// Returns a text like that of a link, without repetition.
    fn text(length: usize) -> String {
        let bytes: Vec<u8> = (0..length).map(|n| (n * n + n / 7) as u8).collect();
        let mut text = format!("https://example.org/#p={}", crate::out::to_base64url(&bytes));
        text.truncate(length);
        text
    }

    #[test]
    fn an_independent_library_reads_it() {
        for length in [1, 17, 18, 200, 1_000, 2_500, 2_953] {
            let text = text(length);
            assert_eq!(read(&qr(&text).unwrap()), text);
        }
        assert_eq!(read(&qr("\u{e9} \u{4e16}").unwrap()), "\u{e9} \u{4e16}");
    }

    /// ISO/IEC 18004, table 7: level L holds 17 bytes in version 1, 32 in 2, 858 in 20 and 2953 in 40.
    #[test]
    fn the_smallest_version_is_taken_and_too_long_a_text_refused() {
        let version = |length: usize| qr(&text(length)).map(|picture| (picture.side - 8 - 17) / 4);
        assert_eq!([17, 18, 32, 33].map(version), [1, 2, 2, 3].map(Some));
        assert_eq!(
            [858, 859, 2_953, 2_954].map(version),
            [Some(20), Some(21), Some(40), None]
        );
    }
}
