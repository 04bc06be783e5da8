//! A maker makes chalk-type paint, by the cup and then by weight, thins paint for the sprayer, and finds both again.
//!
//! Outside source: by hand, from the formulas that `tests/outside/tests/mixing.rs` holds against the facts of the trade.
//!
//! - A cup of 236.59 mL at 1.3 kg/L, 36 % of it solids, and 35 % of these pigment, as satin paint has; 4 tablespoons of
//!   powder, 59.15 mL, at 189.27 g to the cup are 47.32 g, or 17.46 mL without the air; 2 tablespoons of water are 29.57
//!   mL, 29.51 g. Together 283.62 mL, 9.59 fl oz; a jug of 250 mL is off by 10 mL at most, so twice 5.79 mL or 0.39 fl oz.
//!   Solids (85.17 + 17.46) / 283.62 = 36.2 %; pigment (29.81 + 17.46) / 102.63 = 46.1 %, and twice
//!   0.10 / sqrt(12) x 85.17 / 102.63 are 4.8 points. Of 384.4 g the whole grams are 47, 29 and 307; the one that is left
//!   goes to the paint, which has the largest rest.
//! - 650 g at 1.3 kg/L are half a litre; with 100 g of powder and 60 g of water that is 597.0 mL, 20 fl oz, give or take
//!   6.9 mL by a scale that is 1 % off at most.
//! - A tenth of a quart is 94.64 mL, 3.2 fl oz; of water 94 g, of mineral spirits at 0.78 kg/L 74 g. 1.1 quarts are 35 fl oz.
//!   Solids of 0.40 / 1.1 = 36.4 %, twice 0.10 / sqrt(12) / 1.1 are 5.2 points; 75 um wet dry to 27.3 um, 1.1 mil.

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey};

const BY_THE_CUP: [&str; 3] = [
    "Calcium carbonate: 47 g",
    "Water: 29 g",
    "Paint: 8.0 fl oz by volume, about 308 g",
];
const BY_WEIGHT: [&str; 3] = ["Calcium carbonate: 100 g", "Water: 60 g", "Paint: 650 g"];

#[tokio::test]
#[expect(clippy::too_many_lines, reason = "one journey")]
async fn chalk_and_thinner() -> Result<()> {
    journey("chalk_and_thinner", Screen::Tablet, async |page| {
        page.look_around().await?;
        to_the_bench(page).await?;
        page.press("#add-chalk").await?;
        page.has_value("[id^=chalk-][id$=-volume]", "8 fl oz").await?;
        says(
            page,
            "chalk",
            &["Choose the sheen", "the powder weighs 24 g to 71 g"],
        )
        .await?;
        page.type_in("[id^=chalk-][id$=-density]", "1.3 kg/l").await?;
        page.type_in("[id^=chalk-][id$=-solids]", "36").await?;
        page.type_in("[id^=chalk-][id$=-cup]", "189.27").await?;
        page.choose("[id^=chalk-][id$=-sheen]", "satin").await?;
        pours(page, &BY_THE_CUP).await?;
        let comes_to = [
            "Makes: 9.2 to 10 fl oz",
            "Volume solids: 36.2%",
            "Pigment in the dry paint (PVC): 41.3% to 50.8%",
        ];
        comes(page, "chalk", &comes_to).await?;
        says(page, "chalk", &["There's barely enough binder"]).await?;

        // Weighed, and with powder and water of one's own.
        for (field, grams) in [
            ("paint", "650"),
            ("powder", "100"),
            ("water", "60"),
            ("name", "Linen"),
        ] {
            page.type_in(&format!("[id^=chalk-][id$=-{field}]"), grams)
                .await?;
        }
        pours(page, &BY_WEIGHT).await?;
        let comes_to = [
            "Makes: 20 fl oz",
            "Volume solids: 36.3%",
            "Pigment in the dry paint (PVC): 41.3% to 50.8%",
        ];
        comes(page, "chalk", &comes_to).await?;
        page.begins(".label-of-jar", "Linen").await?;
        // 100 g of powder, 60 g of water and 650 g of paint.
        page.press("[id^=made-]").await?;
        page.press("[id^=fold-batch-]").await?;
        page.has_value("[id^=batches-][id$=-made]", "810 g").await?;
        page.press("#fold-why-not").await?;
        says(
            page,
            "mixing-title",
            &["baking soda", "hydrated lime", "caustic", "wear a dust mask"],
        )
        .await?;

        page.press("#add-thinning").await?;
        let thinned = [
            "Add: 3.2 fl oz of water, 94 g",
            "Makes: 35 fl oz",
            "Volume solids: 31.1% to 41.6%",
            "Dry thickness of a coat, HVLP: 0.9 to 1.2 mil",
            "Coats: 3 coats, for the film of 2 coats without thinner",
        ];
        comes(page, "thinning", &thinned).await?;
        says(page, "thinning", &["10% at most is usual"]).await?;
        page.type_in("[id^=thinning-][id$=-most]", "5 %").await?;
        says(page, "thinning", &["10% is more than the label's 5%"]).await?;
        page.choose("[id^=thinning-][id$=-thinner]", "mineral-spirits")
            .await?;
        let other = [
            "3.2 fl oz of mineral spirits, 74 g",
            "usually thinned with water",
            "Flammable",
        ];
        says(page, "thinning", &other).await?;

        page.keeps(|document| {
            let line = |book: &str| document.books.lines(book).first().cloned();
            let chalk = line("chalk").map(|line| line.text("paint").to_owned());
            let most = line("thinning").map(|line| line.text("most").to_owned());
            ensure!(
                (chalk.as_deref(), most.as_deref()) == (Some("650 g"), Some("5 %")),
                "{chalk:?} and {most:?} are kept"
            );
            Ok(())
        })
        .await?;
        page.reload().await?;
        to_the_bench(page).await?;
        pours(page, &BY_WEIGHT).await?;
        comes(page, "chalk", &comes_to).await?;
        says(page, "thinning", &other).await
    })
    .await
}

async fn to_the_bench(page: &Page) -> Result<()> {
    page.to("finish").await?;
    page.to("mixing").await
}

/// Waits until these doses are to be poured, in this order.
async fn pours(page: &Page, expected: &[&str]) -> Result<()> {
    reads(
        page,
        "return [...document.querySelectorAll('.pour b')].map(dose => dose.textContent)",
        expected,
    )
    .await
}

/// Waits until the entry of this book says what it comes to so.
async fn comes(page: &Page, book: &str, expected: &[&str]) -> Result<()> {
    let script = format!(
        "const entry = document.querySelector('[id^={book}-]').closest('.entry');
        return [...entry.querySelectorAll('dl > div')]
            .map(row => [...row.children].map(cell => cell.textContent).join(': '))"
    );
    reads(page, &script, expected).await
}

async fn reads(page: &Page, script: &str, expected: &[&str]) -> Result<()> {
    page.eventually(async || {
        let shown: Vec<String> = serde_json::from_value(page.ask(script).await?)?;
        ensure!(shown == expected, "{shown:?}, and not {expected:?}");
        Ok(())
    })
    .await
}

/// Waits until all of this stands with the first element whose name begins so: in its entry, or in its section.
async fn says(page: &Page, name: &str, expected: &[&str]) -> Result<()> {
    let script = format!(
        "const element = document.querySelector('[id^={name}]'); return element && \
         (element.closest('.entry') || element.closest('section')).textContent"
    );
    page.eventually(async || {
        let text = page.ask(&script).await?;
        let text = text.as_str().unwrap_or_default();
        for part in expected {
            ensure!(text.contains(part), "{part} is not in {text}");
        }
        Ok(())
    })
    .await
}
