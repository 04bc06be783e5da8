//! Every screen of the page and the way to it. It stands here once: the pictures and the checks of what may be in a
//! person's way go through the same list.

use anyhow::{Context, Result};

use crate::page::Page;

/// A screen of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Scene {
    /// A word for it, in the names of files.
    pub name: &'static str,
    /// What is pressed to come there, beginning where the page opens. The invented workshop is there in all but the
    /// first.
    pub way: &'static [&'static str],
    /// What is seen there and nowhere before.
    pub shows: &'static str,
}

const fn scene(name: &'static str, way: &'static [&'static str], shows: &'static str) -> Scene {
    Scene { name, way, shows }
}

/// All of them, in the order in which a maker meets them. The first is that of a workshop with nothing in it.
pub const SCENES: [Scene; 36] = [
    scene("start", &[], "#look-around"),
    scene("more", &["#stage-more"], "#more-settings"),
    scene("pieces", &["#new-piece"], "#new-dresser"),
    scene("measure", &["#stage-measure"], "#field-width"),
    scene(
        "measure-row",
        &["#stage-measure", "#pick-row-1"],
        "#columns-1-more",
    ),
    scene(
        "more-sizes",
        &["#stage-measure", "#fold-more-sizes"],
        "#field-board",
    ),
    scene("built", &["#stage-measure", "#fold-built"], "[id^=fronts-]"),
    scene("tape-keys", &["#stage-measure", ".dimension"], "#tape-keys"),
    scene(
        "tape-keyboard",
        &["#stage-measure", ".dimension", "#tape-keyboard"],
        "#tape-keys",
    ),
    scene(
        "tape-fault",
        &["#stage-measure", ".dimension", "#key-point", "#key-point"],
        "#tape-reading-error",
    ),
    scene("parts", &["#stage-measure", "#change-parts"], ".alter"),
    scene("condition", &["#stage-condition"], "#ground"),
    scene("finish", &["#stage-finish"], "#add-layer"),
    scene(
        "finish-group",
        &["#stage-finish", "#finish-of-top"],
        "#on-its-own",
    ),
    scene("finish-why", &["#stage-finish", "#fold-asks"], ".asks"),
    scene(
        "finish-label",
        &["#stage-finish", "#fold-label-paint"],
        "#label-own-1-rate",
    ),
    scene(
        "finish-more",
        &[
            "#stage-finish",
            "#fold-label-paint",
            "#fold-more-paint",
            "#fold-typical-paint",
        ],
        "#label-own-1-solids",
    ),
    scene(
        "finish-art",
        &["#stage-finish", "#fold-art-fold", "#add-art"],
        "[id^=art-][id$=-kind]",
    ),
    scene(
        "surfaces",
        &["#stage-finish", "#choose-surfaces"],
        "[id^=fold-zone-]",
    ),
    scene(
        "surfaces-zone",
        &["#stage-finish", "#choose-surfaces", "[id^=fold-zone-]"],
        ".zone",
    ),
    scene("tools", &["#stage-finish", "#which-tool-link"], "#which-tool"),
    scene("shop", &["#stage-shop"], "#goods"),
    scene("work", &["#stage-work"], "#done-clean"),
    scene("work-how", &["#stage-work", "#fold-why-clean"], ".how"),
    scene(
        "weighed",
        &["#stage-work", "#fold-weighing", "#weigh-paint"],
        "[id^=observed-]",
    ),
    scene("card", &["#stage-work", "#job-card"], ".job-card"),
    scene("amounts", &["#stage-finish", "#strip"], "#can-paint"),
    scene(
        "amounts-math",
        &["#stage-finish", "#strip", "#fold-how-paint"],
        "#buy-paint",
    ),
    scene("verdict", &["#stage-more", "#more-verdict"], "#buy-or-leave"),
    scene("money", &["#stage-more", "#more-money"], "#wanted"),
    scene(
        "prices",
        &["#stage-more", "#more-prices", "#add-prices"],
        "[id^=strike-prices]",
    ),
    scene(
        "schedule",
        &["#stage-more", "#more-schedule", "#fold-hours", "#fold-air-now"],
        "#air",
    ),
    scene(
        "mixing",
        &[
            "#stage-more",
            "#more-mixing",
            "#add-recipes",
            "#add-chalk",
            "#add-thinning",
        ],
        "[id^=thinning-][id$=-paint]",
    ),
    scene(
        "shelf",
        &["#stage-more", "#more-shelf", "#add-shelf"],
        "[id^=shelf-][id$=-material]",
    ),
    scene(
        "export",
        &["#stage-more", "#more-export", "#make-link"],
        "#copy-link",
    ),
    scene("settings", &["#stage-more", "#more-settings"], "#open-file"),
];

impl Scene {
    /// Whether the workshop must be empty for it.
    pub fn is_empty(&self) -> bool {
        self.name == SCENES[0].name
    }
}

/// What is pressed to come to a screen, from any other.
const WAYS: [(&str, &[&str]); 17] = [
    ("measure", &["#stage-measure"]),
    ("parts", &["#stage-measure", "#change-parts"]),
    ("condition", &["#stage-condition"]),
    ("finish", &["#stage-finish"]),
    ("surfaces", &["#stage-finish", "#choose-surfaces"]),
    ("tools", &["#stage-finish", "#which-tool-link"]),
    ("shop", &["#stage-shop"]),
    ("work", &["#stage-work"]),
    ("card", &["#stage-work", "#job-card"]),
    ("verdict", &["#stage-more", "#more-verdict"]),
    ("money", &["#stage-more", "#more-money"]),
    ("prices", &["#stage-more", "#more-prices"]),
    ("schedule", &["#stage-more", "#more-schedule"]),
    ("mixing", &["#stage-more", "#more-mixing"]),
    ("shelf", &["#stage-more", "#more-shelf"]),
    ("export", &["#stage-more", "#more-export"]),
    ("settings", &["#stage-more", "#more-settings"]),
];

impl Page {
    /// Goes to a screen from any other.
    ///
    /// # Errors
    /// If there is no such screen, or no way to it.
    pub async fn to(&self, screen: &str) -> Result<()> {
        let way = WAYS.iter().find(|(name, _)| *name == screen);
        let (_, way) = way.with_context(|| format!("there is no screen {screen}"))?;
        for step in *way {
            self.press(step).await?;
        }
        self.element(&format!("[data-screen='{screen}']")).await?;
        Ok(())
    }

    /// Opens the amounts in full, with the cans on hand.
    ///
    /// # Errors
    /// If the strip is not there.
    pub async fn amounts(&self) -> Result<()> {
        self.press("#strip[aria-expanded=false]").await?;
        self.element("[data-screen=amounts]").await?;
        Ok(())
    }

    /// Opens a part of a screen that is folded.
    ///
    /// # Errors
    /// If it is not there.
    pub async fn unfold(&self, name: &str) -> Result<()> {
        let summary = format!("#fold-{name}");
        self.element(&summary).await?;
        let is_open = self
            .ask(&format!(
                "return document.querySelector('{summary}').closest('details')?.open ?? false"
            ))
            .await?;
        if is_open != true {
            self.press(&summary).await?;
        }
        Ok(())
    }

    /// Fills the workshop with what is invented.
    ///
    /// # Errors
    /// If there is no way to it.
    pub async fn look_around(&self) -> Result<()> {
        self.press("#look-around").await?;
        self.element("#stage-measure:enabled").await?;
        self.kept().await
    }

    /// Loads the page anew and walks to a screen.
    ///
    /// # Errors
    /// If something on the way is not there.
    pub async fn walk_to(&self, scene: &Scene) -> Result<()> {
        let walk = async {
            self.reload().await?;
            for step in scene.way {
                self.press(step).await?;
            }
            self.element(scene.shows).await?;
            // What comes a moment after the press, such as the cursor, has come too.
            self.settled().await
        };
        walk.await
            .with_context(|| format!("there is no way to the screen {}", scene.name))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_screen_has_its_own_name() {
        for scene in &SCENES {
            let same = SCENES.iter().filter(|other| other.name == scene.name);
            assert_eq!(same.count(), 1, "{}", scene.name);
        }
        assert!(SCENES[0].is_empty() && !SCENES[1].is_empty());
    }
}
