//! A maker writes the list of what to buy for one piece only; the other stays in the workshop.

use std::rc::Rc;

use anyhow::{Result, ensure};
use journeys::{Page, Screen, journey};

#[tokio::test]
async fn a_list_for_one_piece() -> Result<()> {
    journey("a_list_for_one_piece", Screen::Tablet, async |page| {
        page.look_around().await?;
        page.to("shop").await?;
        let both = materials(page).await?;
        page.press("#for input").await?;
        ensure!(
            both.iter().any(|line| line.contains("Six-drawer dresser")),
            "{both:?}"
        );
        // With one piece on the list, its name is left out, and the supplies are those of that piece alone.
        let document = page.records().await?.document()?;
        let others = document
            .pieces
            .iter()
            .filter(|piece| piece.name == "Six-drawer dresser");
        let others: Vec<_> = others.map(|piece| piece.id.clone()).collect();
        ensure!(others.len() == 1, "{others:?}");
        let goods = workshop::Analysis::of(Rc::new(document.clone())).goods(&others);
        let expected: Vec<&str> = goods
            .iter()
            .filter(|good| good.to_buy().is_some())
            .map(|good| good.name.as_str())
            .collect();
        page.eventually(async || {
            let now = materials(page).await?;
            let is_it = now.len() == expected.len()
                && now
                    .iter()
                    .zip(&expected)
                    .all(|(line, name)| line.contains(name) && !line.contains("dresser"));
            ensure!(is_it && now != both, "{now:?}, and not {expected:?}");
            Ok(())
        })
        .await?;
        page.press("#for input").await?;
        page.eventually(async || {
            ensure!(materials(page).await? == both, "the list is another one");
            Ok(())
        })
        .await
    })
    .await
}

/// The lines of the list.
async fn materials(page: &Page) -> Result<Vec<String>> {
    let lines = page
        .ask("return [...document.querySelectorAll('#goods > li')].map(line => line.innerText)")
        .await?;
    Ok(serde_json::from_value(lines)?)
}
