//! A text as a picture that a telephone reads: QR code, ISO/IEC 18004.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};

/// The light border that every reader needs, in modules (ISO/IEC 18004, 6.3.8: four).
const QUIET: i32 = 4;

/// A QR code to be drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct QrPicture {
    /// How wide and how high it is with its light border, in modules; the `viewBox` of the drawing goes from 0 to here.
    pub side: u32,
    /// The dark modules as the `d` of one SVG path: a rectangle for each run in a row.
    pub d: String,
}

/// The QR code of a text, as small as it can be; nothing for a text that is too long, which is more than 2953 bytes.
///
/// The bytes are taken as they are (byte mode). The size is that of the lowest level of correction; where a higher one
/// needs no more room, it is taken, since it costs nothing and forgives a stain.
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

    /// How many dots of the picture a module has; a reader must find it as a camera would.
    const DOTS: usize = 4;

    /// What an independent library reads off the drawn picture.
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

    /// A text as a link has it, with no two places alike.
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
