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
pub const SCENES: [Scene; 29] = [
    scene("start", &[], "#look-around"),
    scene("new-piece", &["#new-piece"], "#new-dresser"),
    scene("measure", &["#sheet-measure"], "#field-width"),
    scene("tape-keys", &[".dimension"], "#tape-keys"),
    scene("tape-keyboard", &[".dimension", "#tape-keyboard"], "#tape-keys"),
    scene(
        "tape-fault",
        &[".dimension", "#key-point", "#key-point"],
        "#tape-reading-error",
    ),
    scene("parts", &["#sheet-parts"], ".questions section"),
    scene("surfaces", &["#sheet-surfaces"], "[id^=fold-zone-]"),
    scene(
        "surfaces-zone",
        &["#sheet-surfaces", "[id^=fold-zone-]"],
        "details[open]",
    ),
    scene("finish", &["#sheet-finish"], "#add-layer"),
    scene("finish-asks", &["#sheet-finish", "#fold-asks"], "#wish-clear"),
    scene(
        "finish-label",
        &["#sheet-finish", "#fold-label-paint"],
        "#own-label-1",
    ),
    scene(
        "finish-own",
        &["#sheet-finish", "#fold-label-paint", "#own-label-1"],
        "#label-own-1-rate",
    ),
    scene(
        "finish-art",
        &["#sheet-finish", "#add-art"],
        "[id^=art-][id$=-kind]",
    ),
    scene(
        "mixing",
        &["#sheet-finish", "#mixing", "#add-recipes"],
        "[id^=recipes-][id$=-name]",
    ),
    scene(
        "chalk",
        &[
            "#sheet-finish",
            "#mixing",
            "#add-chalk",
            "#fold-why-not",
            "#add-thinning",
        ],
        "[id^=thinning-][id$=-paint]",
    ),
    scene("tools", &["#sheet-tools"], "#which-tool"),
    scene("prepare", &["#sheet-prepare"], "#done-clean"),
    scene("weighed", &["#sheet-prepare", "#weigh-paint"], "[id^=observed-]"),
    scene("money", &["#sheet-money"], "#buy-or-leave"),
    scene(
        "prices",
        &["#sheet-money", "#price-notes", "#add-prices"],
        "[id^=strike-prices]",
    ),
    scene(
        "days",
        &["#sheet-prepare", "#all-days", "#fold-hours", "#fold-air-now"],
        "#air",
    ),
    scene(
        "days-ticked",
        &[
            "#sheet-prepare",
            "#all-days",
            "[id^=tick-]",
            "[id^=lead-negative-]",
            "[id^=tick-]",
            "#fold-ticked-off",
        ],
        "[id^=ticked-]",
    ),
    scene("card", &["#sheet-card"], ".job-card"),
    scene("card-link", &["#sheet-card", "#make-link"], "#copy-link"),
    scene("amounts", &["#fold-how-paint"], "#buy-paint"),
    scene("together", &["#together"], "main.room"),
    scene(
        "shelf",
        &["#together", "#room-shelf", "#add-shelf"],
        "[id^=shelf-][id$=-material]",
    ),
    scene("settings", &["#settings"], "#open-file"),
];

impl Scene {
    /// Whether the workshop must be empty for it.
    pub fn is_empty(&self) -> bool {
        self.name == SCENES[0].name
    }
}

impl Page {
    /// Fills the workshop with what is invented.
    ///
    /// # Errors
    /// If there is no way to it.
    pub async fn look_around(&self) -> Result<()> {
        self.press("#look-around").await?;
        self.element("#sheet-measure").await?;
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
