//! A maker begins a piece of every kind and gives every measurement of it with the keyboard.
//!
//! Outside source: the area of each piece by the CAD kernel (`tests/cad/*.json`).

use anyhow::{Context, Result, anyhow, ensure};
use geometry::Kind;
use journeys::{Hand, Page, Screen, Shown, cad_piece, journey, readings, way_to};
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
    page.unfold("built").await?;
    for hand in way_to(wanted)? {
        match hand {
            Hand::Press(selector) => page.press(&selector).await?,
            Hand::Choose(selector, key) => page.choose(&selector, key).await?,
        }
    }
    let mut left = readings(wanted);
    page.measure_all(|field| {
        let place = left.iter().position(|(of, _)| of == field);
        place.map_or_else(String::new, |place| left.remove(place).1)
    })
    .await?;
    ensure!(left.is_empty(), "these were not asked for: {left:?}");
    Ok(())
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
