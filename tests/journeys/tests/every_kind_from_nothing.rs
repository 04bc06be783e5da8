//! A maker begins a piece of every kind and gives every measurement of it with the keyboard.
//!
//! Outside source: the area of each piece by the CAD kernel (`tests/cad/*.json`).

use anyhow::{Context, Result, anyhow, ensure};
use geometry::Kind;
use journeys::{Hand, Page, Screen, Shown, cad_piece, journey, readings, way_to};
use serde_json::{Value, json};
use workshop::{Piece, Takeoff, Workshop, takeoff};

/// A fixture of each kind, between them with every unit of a tape. They are measured in two browsers side by side, so they
/// are shared out by how much there is to do.
const FIXTURES: [[&str; 9]; 2] = [
    [
        "dresser-inset-plinth",
        "nightstand-chamfer",
        "sideboard-beaded",
        "wardrobe-reversed-ogee",
        "pedestal-desk-framed",
        "vanity-turned",
        "console-shelf",
        "blanket-box-cut-out",
        "frame-ogee",
    ],
    [
        "chest-floor-flush",
        "hutch-plain",
        "glazed-overlay",
        "bookcase-two-bays",
        "open-shelf-low",
        "desk-tapered",
        "side-table-two-tapers",
        "bench-stretchers",
        "headboard-slats",
    ],
];

/// How far the sum of the areas of the faces may be from that of the kernel, as a share.
const SHARE: f64 = 1e-6;

/// Tells which measurement the tape is at, once that is another one than before; nothing once the tape was put away.
const GONE_ON: &str = "
    const [before, done] = arguments;
    const look = () => {
        const now = document.querySelector('label[for=tape-reading]')?.textContent ?? '';
        return now === before ? setTimeout(look, 1) : done(now);
    };
    look();
";

#[tokio::test]
async fn every_kind_from_nothing() -> Result<()> {
    let [one, other] = [half(0), half(1)];
    tokio::try_join!(one, other)?;
    let mut kinds = Vec::new();
    for name in FIXTURES.as_flattened() {
        kinds.push(cad_piece(name)?.0.kind);
    }
    for kind in Kind::ALL {
        ensure!(kinds.contains(&kind), "no {} was measured", kind.key());
    }
    Ok(())
}

async fn half(number: usize) -> Result<()> {
    let name = format!("every_kind_from_nothing_{}", number + 1);
    journey(&name, Screen::Desktop, async |page| {
        let offered = page
            .ask("return [...document.querySelectorAll('.kind')].map(kind => kind.id)")
            .await?;
        let offered: Vec<String> = serde_json::from_value(offered)?;
        ensure!(offered.len() == Kind::ALL.len(), "the page offers {offered:?}");
        let mut measured = Vec::new();
        for name in FIXTURES[number] {
            let (wanted, outside) = cad_piece(name)?;
            if !measured.is_empty() {
                page.press("#new-piece").await?;
            }
            page.press(&format!("#new-{}", wanted.kind.key())).await?;
            make(page, &wanted).await.context(name)?;
            measured.push(answer(page, &wanted, outside).await.context(name)?);
        }
        page.keeps(|document| {
            ensure!(document.pieces.len() == measured.len(), "a piece is not kept");
            for (kept, expected) in document.pieces.iter().zip(&measured) {
                is_measured(kept, expected).context(kept.name.clone())?;
            }
            Ok(())
        })
        .await
    })
    .await
}

/// Answers what the page asks, from a usual piece to the wanted one.
async fn make(page: &Page, wanted: &Piece) -> Result<()> {
    // First how it is made, and the tape lies over some of that.
    page.press("#tape-away").await?;
    for hand in way_to(wanted)? {
        match hand {
            Hand::Press(selector) => page.press(&selector).await?,
            Hand::Choose(selector, key) => page.choose(&selector, key).await?,
        }
    }
    let fields = page
        .ask("return [...document.querySelectorAll('.questions [id^=field-]:is(input)')].map(field => field.id)")
        .await?;
    let fields: Vec<String> = serde_json::from_value(fields)?;
    let readings = readings(wanted);
    for (field, text) in &readings {
        ensure!(fields.contains(field), "{field}, {text}, is not asked for");
    }
    page.press(&format!("#{}", fields.first().context("nothing is asked for")?))
        .await?;
    page.enter("#tape-reading").await?;
    let mut at = gone_on(page, json!(null)).await?;
    for field in &fields {
        let reading = readings.iter().find(|(of, _)| of == field);
        let text = reading.map_or("", |(_, text)| text);
        page.put(text).await?;
        page.enter_key().await?;
        at = gone_on(page, at).await?;
    }
    page.gone("#tape-keys").await
}

async fn gone_on(page: &Page, before: Value) -> Result<Value> {
    Ok(page
        .driver()
        .execute_async(GONE_ON, vec![before])
        .await?
        .json()
        .clone())
}

/// The page shows the area of the piece that the kernel measured. Gives back what it comes to by the crate.
async fn answer(page: &Page, wanted: &Piece, outside: f64) -> Result<Takeoff> {
    let expected = takeoff(&Workshop::default(), wanted, &[]).map_err(|faults| anyhow!("{faults:?}"))?;
    let area = expected.painted.value.as_square_metres();
    ensure!(
        (area - outside).abs() <= SHARE * outside,
        "{area} m2 are painted, and {outside} look at the room by the kernel"
    );
    page.reads("#painted-area", |text| {
        Shown::read(text)?.is("the painted area", area, 0.0)
    })
    .await?;
    Ok(expected)
}

/// Every face of a piece that is kept is as large as it must be.
fn is_measured(kept: &Piece, expected: &Takeoff) -> Result<()> {
    let found = takeoff(&Workshop::default(), kept, &[]).map_err(|faults| anyhow!("{faults:?}"))?;
    ensure!(
        found.surfaces.len() == expected.surfaces.len(),
        "faces are missing"
    );
    for (found, expected) in found.surfaces.iter().zip(&expected.surfaces) {
        let (one, other) = (&found.surface, &expected.surface);
        let off = (one.net.as_square_metres() - other.net.as_square_metres()).abs();
        ensure!(
            one.id == other.id && off < 1e-9 && found.painted == expected.painted,
            "{one:?} is kept instead of {other:?}"
        );
    }
    Ok(())
}
