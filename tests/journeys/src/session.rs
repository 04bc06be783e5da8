//! A fresh browser with the server of the page beside it.

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

/// How the server sends the files.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sent {
    /// As they are; the server starts at once.
    Plain,
    /// Compressed, as a good host sends them; compressing takes some seconds.
    Compressed,
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

/// A browser, its driver and a server of the page. They end with it.
pub struct Session {
    page: Page,
    address: String,
    server: Option<Running>,
    _driver: Running,
    _folder: TempDir,
}

impl Session {
    /// Starts all three. The page is not opened yet.
    ///
    /// # Errors
    /// If one of them does not start.
    pub async fn start(screen: Screen, text: Text, sent: Sent) -> Result<Self> {
        let places = Places::find()?;
        let folder = tempfile::tempdir()?;
        let compressed = (sent == Sent::Compressed).then_some("--brotli");
        let (server, address) = Running::start(
            Command::new(&places.xtask)
                .arg("serve-dist")
                .arg(&places.dist)
                .args(compressed),
            |line| line.starts_with("http://").then(|| line.to_owned()),
        )?;
        let (driving, port) = Running::start(Command::new(&places.chromedriver).arg("--port=0"), |line| {
            let (_, port) = line.split_once("started successfully on port ")?;
            port.trim_end_matches('.').parse::<u16>().ok()
        })?;
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
            address,
            server: Some(server),
            _driver: driving,
            _folder: folder,
        })
    }

    /// The page in its browser.
    pub fn page(&self) -> &Page {
        &self.page
    }

    /// Goes to the page, without waiting for it to be of use.
    ///
    /// # Errors
    /// If the browser cannot load it.
    pub async fn go(&self) -> Result<()> {
        Ok(self.page.driver().goto(&self.address).await?)
    }

    /// Opens the page and waits until it has read the database.
    ///
    /// # Errors
    /// If it does not come.
    pub async fn open(&self) -> Result<()> {
        self.go().await?;
        self.page.kept().await
    }

    /// Ends the server. A browser that is only told to be offline lets a service worker reach the network still.
    pub fn without_network(&mut self) {
        self.server = None;
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
