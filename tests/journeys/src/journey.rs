//! The frame of a journey: a fresh browser before it, and a look at what went wrong after it.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, ensure};
use serde_json::json;
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

/// Walks one journey in a fresh browser.
///
/// # Errors
/// If the journey fails, which leaves a screenshot in `target/journeys`, or if the browser logged an error.
pub async fn journey(name: &str, screen: Screen, walk: impl AsyncFnOnce(&Page) -> Result<()>) -> Result<()> {
    let places = Places::find()?;
    let folder = tempfile::tempdir()?;
    let (_server, address) = Running::start(
        Command::new(&places.xtask).arg("serve-dist").arg(&places.dist),
        |line| line.starts_with("http://").then(|| line.to_owned()),
    )?;
    let (_driver, port) = Running::start(Command::new(&places.chromedriver).arg("--port=0"), |line| {
        let (_, port) = line.split_once("started successfully on port ")?;
        port.trim_end_matches('.').parse::<u16>().ok()
    })?;
    let driver = browser(&places, port, screen, folder.path()).await?;
    let page = Page::new(driver.clone(), screen, folder.path().join("files"));
    let mut result = open(&page, &address).await;
    if result.is_ok() {
        result = walk(&page).await;
    }
    if result.is_ok() {
        result = no_errors(&driver).await;
    }
    if result.is_err() {
        let path = places.screenshots.join(format!("{name}.png"));
        std::fs::create_dir_all(&places.screenshots)?;
        let picture = driver.screenshot(&path).await;
        result = result.with_context(|| match picture {
            Ok(()) => format!("{name} failed; a screenshot is in {}", path.display()),
            Err(error) => format!("{name} failed, and no screenshot could be taken: {error}"),
        });
        // What the browser said may be the reason.
        if let Err(error) = no_errors(&driver).await {
            result = result.with_context(|| error.to_string());
        }
    }
    driver.quit().await?;
    result
}

async fn browser(places: &Places, port: u16, screen: Screen, folder: &Path) -> Result<WebDriver> {
    let mut wanted = DesiredCapabilities::chrome();
    let path = places
        .chromium
        .to_str()
        .context("the path of the browser is not text")?;
    wanted.set_binary(path)?;
    for flag in FLAGS {
        wanted.add_arg(flag)?;
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

async fn open(page: &Page, address: &str) -> Result<()> {
    let cdp = page.driver().cdp();
    let (width, height) = page.screen().size();
    let touch = page.screen() == Screen::Tablet;
    cdp.send_raw(
        "Emulation.setDeviceMetricsOverride",
        json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": touch}),
    )
    .await?;
    if touch {
        cdp.send_raw(
            "Emulation.setTouchEmulationEnabled",
            json!({"enabled": true, "maxTouchPoints": 5}),
        )
        .await?;
    }
    // No hand is here for the dialogue that asks where a file shall lie; most browsers have none and download it.
    cdp.send_raw(
        "Page.addScriptToEvaluateOnNewDocument",
        json!({"source": "delete window.showSaveFilePicker"}),
    )
    .await?;
    std::fs::create_dir_all(page.files())?;
    cdp.send_raw(
        "Browser.setDownloadBehavior",
        json!({"behavior": "allow", "downloadPath": page.files()}),
    )
    .await?;
    page.driver().goto(address).await?;
    page.kept().await
}

async fn no_errors(driver: &WebDriver) -> Result<()> {
    let log = driver.browser_log().await?;
    let severe: Vec<&str> = log
        .iter()
        .filter(|entry| entry.level == "SEVERE")
        .map(|entry| entry.message.as_str())
        .collect();
    ensure!(
        severe.is_empty(),
        "the browser logged errors:\n{}",
        severe.join("\n")
    );
    Ok(())
}
