//! A maker takes the tables and the drawing of a piece away as files, and other programs read them.
//!
//! Outside sources: the area by the CAD kernel (`tests/cad/dresser-plinth.json`), a reader of CSV (`csv`), and the browser's
//! readers of SVG and PNG.

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, Shown, journey, outside_area, worked_out};
use serde::Deserialize;
use serde_json::json;
use workshop::{Takeoff, out::to_base64url};

/// A line of a table, each cell with its heading.
type Line = Vec<(String, String)>;

/// Square feet to square metres, and US fluid ounces to litres: both exact.
const SQUARE_FOOT: f64 = 0.3048 * 0.3048;
const FLUID_OUNCE: f64 = 231.0 * 25.4 * 25.4 * 25.4 * 1e-6 / 128.0;

/// Half of the last digit of an area in the table, in square feet.
const HALF_DIGIT: f64 = 0.5e-4;

/// How a drawing of lines is read: no part of the page has a hand in it.
const READ_DRAWING: &str = "
    const drawing = new DOMParser().parseFromString(arguments[0], 'image/svg+xml');
    const all = name => [...drawing.getElementsByTagNameNS('http://www.w3.org/2000/svg', name)];
    return {
        root: drawing.documentElement.localName,
        faults: drawing.getElementsByTagName('parsererror').length,
        texts: all('text').map(text => text.textContent.trim()),
        titles: all('title').map(title => title.textContent.trim()),
        size: ['width', 'height'].map(name => Number.parseFloat(drawing.documentElement.getAttribute(name))),
    };
";

#[derive(Debug, Deserialize)]
struct Drawing {
    root: String,
    faults: usize,
    texts: Vec<String>,
    titles: Vec<String>,
    size: [f64; 2],
}

#[tokio::test]
async fn files_out() -> Result<()> {
    let area = outside_area("dresser-plinth")?;
    journey("files_out", Screen::Desktop, async |page| {
        page.look_around().await?;
        let document = page.records().await?.document()?;
        let piece = document.pieces.first().context("there is no piece")?;
        let taken = worked_out(&document, &piece.id)?;
        let shown = Shown::read(&page.text("#painted-area").await?)?;
        let written = page
            .ask("return [...document.querySelectorAll('svg.drawing text')].map(text => text.textContent.trim())")
            .await?;
        let written: Vec<String> = serde_json::from_value(written)?;
        ensure!(written.len() >= 3, "the page shows only {written:?}");
        page.to("export").await?;

        let sum = surfaces(page, &taken).await?;
        shown.is("the painted surfaces of the table", sum, 1e-4)?;
        let rounded = HALF_DIGIT * SQUARE_FOOT * taken.surfaces.len() as f64;
        ensure!((sum - area).abs() <= rounded, "{sum} m2 are painted by the table, {area} by the kernel");
        amounts(page, &taken).await?;
        let svg = page.save("#save-drawing-svg", "drawing.svg").await?;
        let png = page.save("#save-drawing-png", "drawing.png").await?;
        // The page has a policy against what a drawing for other programs may hold; an empty page has none.
        page.driver().goto("about:blank").await?;
        let drawing = lines(page, svg, &written, &piece.name).await?;
        dots(page, &png, &drawing).await
    })
    .await
}

/// The painted square metres of the table of surfaces.
async fn surfaces(page: &Page, taken: &Takeoff) -> Result<f64> {
    let table = table(&page.save("#save-surfaces-csv", "surfaces.csv").await?)?;
    ensure!(
        table.len() == taken.surfaces.len(),
        "{} lines for {} surfaces",
        table.len(),
        taken.surfaces.len()
    );
    let mut sum = 0.0;
    for (line, surface) in table.iter().zip(&taken.surfaces) {
        let net = number(line, "Net (ft2)")?;
        let expected = surface.surface.net.as_square_metres() / SQUARE_FOOT;
        ensure!(
            (net - expected).abs() <= 1.001 * HALF_DIGIT,
            "{line:?}: expected is {expected}"
        );
        let is_painted = cell(line, "Painted")? == "yes";
        ensure!(is_painted == surface.painted, "{line:?}");
        sum += if is_painted { net * SQUARE_FOOT } else { 0.0 };
    }
    Ok(sum)
}

async fn amounts(page: &Page, taken: &Takeoff) -> Result<()> {
    let table = table(&page.save("#save-amounts-csv", "amounts.csv").await?)?;
    ensure!(table.len() == taken.materials.len(), "{table:?}");
    for (line, material) in table.iter().zip(&taken.materials) {
        let likely = number(line, "Likely (US fl oz)")?;
        let expected = material.need.likely().as_litres() / FLUID_OUNCE;
        ensure!(
            (likely - expected).abs() <= 0.05 + 1e-9,
            "{line:?}: expected is {expected}"
        );
        // The strip leaves out what cleans.
        if material.need.material.stage == coatings::Stage::Clean {
            continue;
        }
        let text = page.text(&format!("#amount-{}", material.id)).await?;
        // The table has one digit more than the page at most, and both round the same figure.
        Shown::read(&text)?.is(&material.id, likely * FLUID_OUNCE, 0.05 / likely)?;
        ensure!(
            number(line, "Low (US fl oz)")? < likely && likely < number(line, "High (US fl oz)")?,
            "{line:?}"
        );
        ensure!(
            cell(line, "Material")? == &*material.need.material.name,
            "{line:?} is not {}",
            material.need.material.name
        );
    }
    Ok(())
}

async fn lines(page: &Page, svg: Vec<u8>, written: &[String], name: &str) -> Result<Drawing> {
    let text = String::from_utf8(svg)?;
    let read = page.driver().execute(READ_DRAWING, vec![json!(text)]).await?;
    let drawing: Drawing = serde_json::from_value(read.json().clone())?;
    ensure!(
        drawing.root == "svg" && drawing.faults == 0,
        "this is no drawing: {drawing:?}"
    );
    for dimension in written {
        ensure!(
            drawing.texts.contains(dimension),
            "{dimension} is not among {:?}",
            drawing.texts
        );
    }
    ensure!(
        drawing.titles.iter().any(|title| title == name),
        "the piece is called `{name}`, and the drawing {:?}",
        drawing.titles
    );
    Ok(drawing)
}

async fn dots(page: &Page, bytes: &[u8], drawing: &Drawing) -> Result<()> {
    // PNG, third edition, 5.2 and 11.2.1: the signature, then the header with width and height.
    ensure!(bytes.starts_with(b"\x89PNG\r\n\x1a\n"), "this is no PNG file");
    ensure!(bytes.get(12..16) == Some(b"IHDR"), "the header is missing");
    let at = |place: usize| {
        let bytes = bytes
            .get(place..place + 4)
            .and_then(|bytes| bytes.try_into().ok());
        bytes.map(u32::from_be_bytes).context("the header is cut off")
    };
    let size = [at(16)?, at(20)?];
    for (dots, units) in size.into_iter().zip(drawing.size) {
        ensure!(
            f64::from(dots) == 2.0 * units,
            "{size:?} dots for a drawing of {:?}",
            drawing.size
        );
    }
    let text = to_base64url(bytes).replace('-', "+").replace('_', "/");
    let pixels = page.pixels(&text).await?;
    let all = pixels.grey.len();
    let dark = pixels.grey.iter().filter(|grey| **grey < 96).count();
    let white = pixels.grey.iter().filter(|grey| **grey > 245).count();
    ensure!(
        dark > all / 500,
        "only {dark} of {all} dots are dark: no line was drawn"
    );
    ensure!(white > all / 10, "only {white} of {all} dots are white paper");
    Ok(())
}

fn table(bytes: &[u8]) -> Result<Vec<Line>> {
    let mut reader = csv::Reader::from_reader(bytes);
    let heading = reader.headers()?.clone();
    let lines = reader.records().map(|record| {
        let record = record?;
        let cells = heading.iter().zip(record.iter());
        Ok(cells
            .map(|(name, cell)| (name.trim_start_matches('\u{feff}').to_owned(), cell.to_owned()))
            .collect())
    });
    lines.collect()
}

fn cell<'a>(line: &'a Line, heading: &str) -> Result<&'a str> {
    let found = line.iter().find(|(name, _)| name == heading);
    Ok(&found.with_context(|| format!("no `{heading}` in {line:?}"))?.1)
}

fn number(line: &Line, heading: &str) -> Result<f64> {
    let text = cell(line, heading)?;
    text.parse()
        .with_context(|| format!("{heading}: `{text}` is no number"))
}
