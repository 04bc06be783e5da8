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
        let fields = page
            .ask("return [...document.querySelectorAll('.questions [id^=field-]:is(input)')].map(field => '#' + field.id)")
            .await?;
        let fields: Vec<String> = serde_json::from_value(fields)?;
        let (by_keys, said) = fields.split_at(BY_KEYS.len());
        for field in by_keys {
            measure(page, field).await?;
            page.press("#tape-next").await?;
        }
        // With the keyboard of the device, whose Enter key leads on.
        page.press("#tape-keyboard").await?;
        for field in said {
            page.element("#tape-reading:placeholder-shown").await?;
            measure(page, field).await?;
            page.enter_key().await?;
        }
        page.gone("#tape-keys").await?;
        let read = BY_KEYS.map(|(field, _, reading)| (field, reading));
        for (field, reading) in read.into_iter().chain(DRESSER_DETAILS) {
            page.has_value(field, reading).await?;
        }
        page.press("#sheet-finish").await?;
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
        for sheet in ["finish", "parts", "surfaces", "tools", "card", "measure"] {
            page.press(&format!("#sheet-{sheet}")).await?;
            fits(page, sheet).await?;
        }
        for room in ["together", "settings"] {
            page.press(&format!("#{room}")).await?;
            fits(page, room).await?;
        }
        ensure!(brightness(page).await? < 0.2, "the page became bright in the dark");
        Ok(())
    })
    .await
}

/// Takes a measurement with the tape at the foot of the screen; what is neither in the one list nor in the other stays as
/// it usually is.
async fn measure(page: &Page, field: &str) -> Result<()> {
    if let Some((_, keys, reading)) = BY_KEYS.iter().find(|(of, ..)| *of == field) {
        for key in *keys {
            page.press(&format!("#key-{key}")).await?;
        }
        page.has_value("#tape-reading", reading).await?;
        return fits(page, reading).await;
    }
    if let Some((_, reading)) = DRESSER_DETAILS.iter().find(|(of, _)| *of == field) {
        page.eventually(async || {
            ensure!(page.is_on("#tape-reading").await?, "the tape lost the focus");
            Ok(())
        })
        .await?;
        page.put(reading).await?;
        page.has_value("#tape-reading", reading).await?;
    }
    Ok(())
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
