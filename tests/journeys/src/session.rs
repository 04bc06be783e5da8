//! A fresh browser.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result};
use serde_json::json;
use tempfile::TempDir;
use thirtyfour::common::log::LoggingPrefsLogLevel;
use thirtyfour::{ChromiumLikeCapabilities, DesiredCapabilities, WebDriver};

use crate::page::Page;
use crate::programs::{Places, Running};

/// What the maker has in front of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Screen {
    /// A tablet, worked with a finger.
    Tablet,
    /// A desktop, worked with a mouse.
    Desktop,
}

impl Screen {
    /// Width and height in CSS pixels.
    pub fn size(self) -> (u32, u32) {
        match self {
            Screen::Tablet => (1180, 820),
            Screen::Desktop => (1440, 900),
        }
    }
}

/// How large the text is that the person asked for in the settings of the browser.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Text {
    /// As it comes.
    Usual,
    /// Twice as large: 200 % of WCAG 1.4.4. A size set on the page would leave its media queries as they are.
    Twice,
}

const TWICE: &str = "--blink-settings=defaultFontSize=32";

const FLAGS: [&str; 9] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--lang=en-US",
];

/// How often a driver is started before a journey gives up.
const STARTS: usize = 3;

/// Starts a driver; it says at which port it listens. It takes a port that is free for one kind of address and ends if that
/// is taken for the other, which happens when much runs on the machine.
fn start_driver(places: &Places) -> Result<(Running, u16)> {
    let start = || {
        Running::start(Command::new(&places.chromedriver).arg("--port=0"), |line| {
            let (_, port) = line.split_once("started successfully on port ")?;
            port.trim_end_matches('.').parse::<u16>().ok()
        })
    };
    let mut started = start();
    for _ in 1..STARTS {
        if started.is_ok() {
            break;
        }
        started = start();
    }
    started
}

/// A browser and its driver. They end with it.
pub struct Session {
    page: Page,
    _driver: Running,
    _folder: TempDir,
}

impl Session {
    /// Starts both. No page is opened yet.
    ///
    /// # Errors
    /// If one of them does not start.
    pub async fn start(screen: Screen, text: Text) -> Result<Self> {
        let places = Places::find()?;
        let folder = tempfile::tempdir()?;
        let (driving, port) = start_driver(&places)?;
        let driver = browser(&places, port, (screen, text), folder.path()).await?;
        let page = Page::new(driver, screen, folder.path().join("files"));
        let is_tablet = screen == Screen::Tablet;
        page.take_screen(screen.size(), is_tablet, is_tablet).await?;
        // No hand is here for the dialogue that asks where a file shall lie; most browsers have none and download it.
        page.devtools(
            "Page.addScriptToEvaluateOnNewDocument",
            json!({"source": "delete window.showSaveFilePicker"}),
        )
        .await?;
        std::fs::create_dir_all(page.files())?;
        page.devtools(
            "Browser.setDownloadBehavior",
            json!({"behavior": "allow", "downloadPath": page.files()}),
        )
        .await?;
        Ok(Session {
            page,
            _driver: driving,
            _folder: folder,
        })
    }

    /// The page in its browser.
    pub fn page(&self) -> &Page {
        &self.page
    }

    /// Goes to an address, without waiting for the page to be of use.
    ///
    /// # Errors
    /// If the browser cannot load it.
    pub async fn go(&self, address: &str) -> Result<()> {
        Ok(self.page.driver().goto(address).await?)
    }

    /// Opens the page at an address and waits until it has read the database.
    ///
    /// # Errors
    /// If it does not come.
    pub async fn open(&self, address: &str) -> Result<()> {
        self.go(address).await?;
        self.page.kept().await
    }

    /// Closes the browser.
    ///
    /// # Errors
    /// If it does not answer.
    pub async fn end(self) -> Result<()> {
        Ok(self.page.driver().clone().quit().await?)
    }
}

async fn browser(
    places: &Places,
    port: u16,
    (screen, text): (Screen, Text),
    folder: &Path,
) -> Result<WebDriver> {
    let mut wanted = DesiredCapabilities::chrome();
    let path = places
        .chromium
        .to_str()
        .context("the path of the browser is not text")?;
    wanted.set_binary(path)?;
    for flag in FLAGS {
        wanted.add_arg(flag)?;
    }
    if text == Text::Twice {
        wanted.add_arg(TWICE)?;
    }
    let (width, height) = screen.size();
    wanted.add_arg(&format!("--window-size={width},{height}"))?;
    wanted.add_arg(&format!("--user-data-dir={}", folder.join("profile").display()))?;
    wanted.set_browser_log_level(LoggingPrefsLogLevel::All)?;
    let driver = WebDriver::new(format!("http://127.0.0.1:{port}"), wanted)
        .await
        .context("the browser did not start")?;
    Ok(driver)
}
