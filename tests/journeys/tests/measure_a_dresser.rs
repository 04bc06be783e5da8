//! A maker measures a dresser at the workbench, with a tablet.
//!
//! Outside sources: the painted area by the CAD kernel (`tests/cad/dresser-plinth.json`), the volumes by a Monte
//! Carlo with NumPy (`tests/outside/fixtures/quantiles.json`).

use anyhow::{Result, ensure};
use journeys::{DRESSER_DETAILS, Likely, Page, Screen, Shown, dresser_amounts, journey, outside_area};
use thirtyfour::Key;

/// What the tape says, but for the height, which is typed with the tape keys.
fn readings() -> impl Iterator<Item = (&'static str, &'static str)> {
    let whole = [("#field-width", "4' 10 1/2\""), ("#field-depth", "17 1/2")];
    whole.into_iter().chain(DRESSER_DETAILS)
}

const HEIGHT: &str = "#field-height";

/// Square metres, and what each stage takes with the tool that is chosen for it.
struct Expected {
    area: f64,
    amounts: Vec<Likely>,
}

#[tokio::test]
async fn measure_a_dresser() -> Result<()> {
    let expected = Expected {
        area: outside_area("dresser-plinth")?,
        amounts: dresser_amounts()?,
    };
    journey("measure_a_dresser", Screen::Tablet, async |page| {
        page.fits_a_finger().await?;
        page.press("#new-dresser").await?;
        measure(page).await?;
        finish(page).await?;
        figures(page, &expected).await?;
        half_typed(page).await?;
        figures(page, &expected).await?;
        page.to("surfaces").await?;
        page.fits_a_finger().await?;
        page.reload().await?;
        page.to("measure").await?;
        for (field, typed) in readings() {
            page.show_field(field).await?;
            page.has_value(field, typed).await?;
        }
        page.has_value(HEIGHT, "33 7/8").await?;
        figures(page, &expected).await
    })
    .await
}

async fn measure(page: &Page) -> Result<()> {
    page.press("#tape-away").await?;
    for (field, typed) in readings() {
        page.measure(field, typed).await?;
    }
    page.type_in(HEIGHT, "33").await?;
    page.element("#tape-keys").await?;
    page.fits_a_finger().await?;
    page.press("#key-7-8").await?;
    page.has_value(HEIGHT, "33 7/8").await
}

async fn finish(page: &Page) -> Result<()> {
    page.to("finish").await?;
    page.choose("#material-primer", "shellac-primer").await?;
    page.choose("#tool-paint", "foam-roller").await?;
    page.fits_a_finger().await
}

async fn figures(page: &Page, expected: &Expected) -> Result<()> {
    page.reads("#painted-area", |text| {
        Shown::read(text)?.is("the painted area", expected.area, 0.0)
    })
    .await?;
    for likely in &expected.amounts {
        page.reads(&format!("#amount-{}", likely.stage), |text| likely.is(text))
            .await?;
    }
    Ok(())
}

/// A text that cannot be read yet says so, and leaves the last good reading in force.
async fn half_typed(page: &Page) -> Result<()> {
    let shown = [
        "#painted-area",
        "#amount-primer",
        "#amount-paint",
        "#amount-topcoat",
    ];
    let before = page.texts(&shown).await?;
    page.to("measure").await?;
    page.enter(HEIGHT).await?;
    page.keys(Key::End + Key::Backspace).await?;
    page.has_value(HEIGHT, "33 7/").await?;
    page.reads("#field-height-error", |text| {
        ensure!(text.contains("33 7/8"), "this is another error");
        Ok(())
    })
    .await?;
    let meanwhile = page.texts(&shown).await?;
    ensure!(
        meanwhile == before,
        "{before:?} became {meanwhile:?} by a half-typed text"
    );
    page.fits_a_finger().await?;
    page.keys("8").await?;
    page.has_value(HEIGHT, "33 7/8").await?;
    page.gone("#field-height-error").await
}
