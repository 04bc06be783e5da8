//! What has the focus, as a screen reader is told.

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};

use crate::page::Page;

/// More presses of the Tab key than this to come anywhere are a way that nobody goes.
const MOST_TABS: usize = 150;

/// The name and the role of a control, by the browser's own tree of accessibility.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Spoken {
    /// What it is called.
    pub name: String,
    /// What it is.
    pub role: String,
}

impl Page {
    /// What a screen reader says of the element that has the focus.
    ///
    /// # Errors
    /// If it has no name, or no role with which something can be done.
    pub async fn spoken(&self) -> Result<Spoken> {
        let evaluated = self
            .devtools(
                "Runtime.evaluate",
                json!({"expression": "document.activeElement"}),
            )
            .await?;
        let object = &evaluated["result"]["objectId"];
        let tree = self
            .devtools(
                "Accessibility.getPartialAXTree",
                json!({"objectId": object, "fetchRelatives": false}),
            )
            .await?;
        let node = tree["nodes"].get(0).context("the focus is on nothing")?;
        let text = |of: &Value| of["value"].as_str().unwrap_or_default().trim().to_owned();
        let spoken = Spoken {
            name: text(&node["name"]),
            role: text(&node["role"]),
        };
        let element = &evaluated["result"]["description"];
        ensure!(!spoken.name.is_empty(), "{element} has the focus and no name");
        ensure!(
            !["", "generic", "none", "RootWebArea"].contains(&spoken.role.as_str()),
            "{element}, `{}`, has the role `{}`",
            spoken.name,
            spoken.role
        );
        Ok(spoken)
    }

    /// Whether the focus is on what a selector names.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub async fn is_on(&self, selector: &str) -> Result<bool> {
        let on = format!("return document.activeElement?.matches('{selector}') ?? false");
        Ok(self.ask(&on).await? == true)
    }

    /// Presses the Tab key until the focus is there. Everything on the way has a name and a role.
    ///
    /// # Errors
    /// If something has none, or the way does not lead there.
    pub async fn tab_to(&self, selector: &str) -> Result<Spoken> {
        for _ in 0..MOST_TABS {
            self.tab_key().await?;
            let spoken = self.spoken().await?;
            if self.is_on(selector).await? {
                return Ok(spoken);
            }
        }
        anyhow::bail!("{MOST_TABS} times Tab do not lead to {selector}")
    }
}
