//! A maker with a telephone in a dark shed: a dresser is measured with a finger, and no sheet is wider than the screen.
//!
//! Outside sources: the area by the CAD kernel (`tests/cad/dresser-plinth.json`), the volumes by a Monte Carlo with NumPy
//! (`tests/outside/fixtures/quantiles.json`); 48 pixels are the touch targets of the mobile design guides.

use anyhow::{Context, Result, ensure};
use journeys::{DRESSER_DETAILS, Light, Page, Screen, Shown, Size, dresser_amounts, journey, outside_area};

/// What the keys at the foot of the screen write for the first three measurements; the maker says the others.
const BY_KEYS: [(&str, &[&str], &str); 3] = [
    ("#field-width", &["5", "8", "1-2"], "58 1/2"),
    ("#field-depth", &["1", "7", "1-2"], "17 1/2"),
    ("#field-height", &["3", "3", "7-8"], "33 7/8"),
];

#[tokio::test]
async fn a_phone_in_the_dark() -> Result<()> {
    let area = outside_area("dresser-plinth")?;
    let amounts = dresser_amounts()?;
    journey("a_phone_in_the_dark", Screen::Tablet, async |page| {
        let phone = Size::ALL[2];
        page.resize(phone.pixels, true).await?;
        page.shine(Light::Dark).await?;
        ensure!(brightness(page).await? < 0.2, "the page is bright in the dark");
        fits(page, "the start").await?;
        page.press("#new-dresser").await?;
        page.element("#tape-keys").await?;
        for (field, keys, reading) in BY_KEYS {
            page.element(&format!(
                ".dimension.taken[data-field={}]",
                field.trim_start_matches('#')
            ))
            .await?;
            for key in keys {
                page.press(&format!("#key-{key}")).await?;
            }
            page.has_value("#tape-reading", reading).await?;
            fits(page, reading).await?;
            page.press("#tape-next").await?;
        }
        // After the three sizes the keypad is done; the list takes the rest.
        page.gone("#tape-keys").await?;
        for (field, reading) in DRESSER_DETAILS {
            page.measure(field, reading).await?;
        }
        page.press("#tape-away").await?;
        let read = BY_KEYS.map(|(field, _, reading)| (field, reading));
        for (field, reading) in read.into_iter().chain(DRESSER_DETAILS) {
            page.show_field(field).await?;
            page.has_value(field, reading).await?;
        }
        page.to("finish").await?;
        page.choose("#material-primer", "shellac-primer").await?;
        page.choose("#tool-paint", "foam-roller").await?;
        page.reads("#painted-area", |text| {
            Shown::read(text)?.is("the painted area", area, 0.0)
        })
        .await?;
        for likely in &amounts {
            let amount = format!("#amount-{}", likely.stage);
            page.reads(&amount, |text| likely.is(text)).await?;
        }
        for screen in [
            "finish",
            "parts",
            "surfaces",
            "tools",
            "condition",
            "shop",
            "work",
            "card",
            "settings",
            "measure",
        ] {
            page.to(screen).await?;
            fits(page, screen).await?;
        }
        ensure!(
            brightness(page).await? < 0.2,
            "the page became bright in the dark"
        );
        Ok(())
    })
    .await
}

async fn fits(page: &Page, place: &str) -> Result<()> {
    page.settled().await?;
    page.fits_a_finger().await.with_context(|| place.to_owned())
}

/// How bright the ground of the page is, between 0 and 1.
async fn brightness(page: &Page) -> Result<f64> {
    let colour = page
        .ask(
            "return getComputedStyle(document.documentElement).backgroundColor.match(/[\\d.]+/g).map(Number)",
        )
        .await?;
    let parts: Vec<f64> = serde_json::from_value(colour)?;
    ensure!(parts.len() == 3, "the page has no solid ground: {parts:?}");
    Ok(parts.iter().sum::<f64>() / (3.0 * 255.0))
}
