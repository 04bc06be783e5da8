//! How the page is looked at: on how large a screen and in which light, and what cannot be seen of it.

use anyhow::Result;
use serde_json::json;

use crate::page::Page;

/// What text or what a thing hides, so that it cannot be read to its end.
const CUT_OFF: &str = include_str!("../scripts/cut_off.js");

/// What still moves when the maker asked for less motion.
const MOVING: &str = include_str!("../scripts/moving.js");

/// A screen that makers have, in CSS pixels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// A word for it.
    pub name: &'static str,
    /// How wide and how high it is.
    pub pixels: (u32, u32),
    /// Whether it is worked with a finger.
    pub is_touched: bool,
}

impl Size {
    /// Those in which every screen of the page is looked at.
    pub const ALL: [Size; 4] = [
        Size {
            name: "tablet",
            pixels: (1180, 820),
            is_touched: true,
        },
        Size {
            name: "upright",
            pixels: (820, 1180),
            is_touched: true,
        },
        Size {
            name: "phone",
            pixels: (390, 844),
            is_touched: true,
        },
        Size {
            name: "desktop",
            pixels: (1440, 900),
            is_touched: false,
        },
    ];
}

/// The light that the page is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Light {
    /// The device is light.
    Light,
    /// The device is dark.
    Dark,
    /// The maker chose high contrast.
    Contrast,
}

impl Light {
    /// All three.
    pub const ALL: [Light; 3] = [Light::Light, Light::Dark, Light::Contrast];

    /// A word for it.
    pub fn name(self) -> &'static str {
        match self {
            Light::Light => "light",
            Light::Dark => "dark",
            Light::Contrast => "contrast",
        }
    }
}

impl Page {
    /// Gives the page another screen. It is no mobile one to the browser: there a page that was too wide for its screen
    /// once stays drawn at another scale, and a finger misses everything.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn resize(&self, size: (u32, u32), is_touched: bool) -> Result<()> {
        self.devtools("Emulation.setScrollbarsHidden", json!({"hidden": is_touched}))
            .await?;
        self.take_screen(size, is_touched, false).await
    }

    /// Gives the page a screen, perhaps one that is touched, perhaps a mobile one, whose pages have a scale.
    pub(crate) async fn take_screen(
        &self,
        (width, height): (u32, u32),
        is_touched: bool,
        is_mobile: bool,
    ) -> Result<()> {
        self.devtools(
            "Emulation.setDeviceMetricsOverride",
            json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": is_mobile}),
        )
        .await?;
        let fingers = if is_touched {
            json!({"enabled": true, "maxTouchPoints": 5})
        } else {
            json!({"enabled": false})
        };
        self.devtools("Emulation.setTouchEmulationEnabled", fingers)
            .await?;
        Ok(())
    }

    /// Looks at the page in another light. High contrast is set where the settings set it, since a page that is walked to
    /// the settings is no longer at the screen that is looked at.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn shine(&self, light: Light) -> Result<()> {
        let scheme = if light == Light::Dark { "dark" } else { "light" };
        self.devtools(
            "Emulation.setEmulatedMedia",
            json!({"features": [{"name": "prefers-color-scheme", "value": scheme}]}),
        )
        .await?;
        let word = if light == Light::Contrast { "contrast" } else { "" };
        self.ask(&format!("document.documentElement.dataset.light = '{word}'"))
            .await?;
        Ok(())
    }

    /// Asks the page for less motion, as a person does in the settings of the device, and tells what still moves.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn moving(&self) -> Result<Vec<String>> {
        self.devtools(
            "Emulation.setEmulatedMedia",
            json!({"features": [{"name": "prefers-reduced-motion", "value": "reduce"}]}),
        )
        .await?;
        Ok(serde_json::from_value(self.ask(MOVING).await?)?)
    }

    /// Every text that cannot be read to its end, and where it is cut off.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub async fn cut_off(&self) -> Result<Vec<String>> {
        Ok(serde_json::from_value(self.ask(CUT_OFF).await?)?)
    }

    /// Waits until the page is drawn as it now is.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub async fn settled(&self) -> Result<()> {
        let frames = "const done = arguments[0]; \
                      requestAnimationFrame(() => requestAnimationFrame(() => done(true)));";
        self.driver().execute_async(frames, vec![]).await?;
        Ok(())
    }
}
