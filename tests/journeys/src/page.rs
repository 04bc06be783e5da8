//! The page, as a maker's eyes have it.

use std::cell::Cell;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use thirtyfour::prelude::*;

use crate::session::Screen;

const PATIENCE: Duration = Duration::from_secs(15);
const BETWEEN_LOOKS: Duration = Duration::from_millis(15);

/// The first element that a selector names, if it can be seen.
const SEEN: &str = "
    const element = document.querySelector(arguments[0]);
    if (!element) return null;
    const has_size = ({width, height}) => width > 0 && height > 0;
    const seen = element.checkVisibility({visibilityProperty: true, opacityProperty: true});
    return seen && [...element.getClientRects()].some(has_size) ? element : false;
";

/// Everything that a finger must be able to meet, and is smaller than 48 by 48.
const SMALL: &str = "
    const seen = element => element.checkVisibility({visibilityProperty: true, opacityProperty: true});
    const size = element => {
        const labelled = ['checkbox', 'radio', 'file'].includes(element.type) && element.labels?.length;
        const boxes = [element, ...(labelled ? element.labels : [])].map(e => e.getBoundingClientRect());
        return [Math.max(...boxes.map(b => b.width)), Math.max(...boxes.map(b => b.height))];
    };
    return [...document.querySelectorAll('button, input, select, summary')]
        .filter(element => seen(element) && !element.disabled && element.type !== 'hidden')
        .map(element => [element, ...size(element)])
        .filter(([, width, height]) => width < 47.99 || height < 47.99)
        .map(([element, width, height]) => {
            const name = element.id ? '#' + element.id : element.outerHTML.slice(0, 80);
            return `${name} is ${width.toFixed(1)} by ${height.toFixed(1)}`;
        });
";

/// The page in its browser.
pub struct Page {
    driver: WebDriver,
    screen: Screen,
    files: PathBuf,
    pub(crate) last_tap: Cell<Option<(Instant, f64, f64)>>,
}

impl Page {
    pub(crate) fn new(driver: WebDriver, screen: Screen, files: PathBuf) -> Self {
        Page {
            driver,
            screen,
            files,
            last_tap: Cell::new(None),
        }
    }

    /// The browser.
    pub fn driver(&self) -> &WebDriver {
        &self.driver
    }

    /// What the maker has in front of them.
    pub fn screen(&self) -> Screen {
        self.screen
    }

    /// A folder for this journey alone; the browser saves into it.
    pub fn files(&self) -> &Path {
        &self.files
    }

    /// Looks again and again until it is as wanted.
    ///
    /// # Errors
    /// What was last wrong, when patience is at its end.
    pub async fn eventually<T>(&self, look: impl AsyncFn() -> Result<T>) -> Result<T> {
        let end = Instant::now() + PATIENCE;
        loop {
            match look().await {
                Err(_) if Instant::now() < end => tokio::time::sleep(BETWEEN_LOOKS).await,
                result => return result,
            }
        }
    }

    /// The element that a selector names, once it can be seen.
    ///
    /// # Errors
    /// If it does not appear.
    pub async fn element(&self, selector: &str) -> Result<WebElement> {
        self.eventually(async || {
            let found = self.driver.execute(SEEN, vec![json!(selector)]).await?;
            match found.json() {
                Value::Null => anyhow::bail!("{selector} is not on the page"),
                Value::Bool(_) => anyhow::bail!("{selector} cannot be seen"),
                _ => Ok(found.element()?),
            }
        })
        .await
    }

    /// Waits until a field has this text.
    ///
    /// # Errors
    /// If it keeps another one.
    pub async fn has_value(&self, selector: &str, expected: &str) -> Result<()> {
        self.eventually(async || {
            let found = self.element(selector).await?.value().await?.unwrap_or_default();
            ensure!(
                found == expected,
                "{selector} holds `{found}` instead of `{expected}`"
            );
            Ok(())
        })
        .await
    }

    /// What can be read in an element.
    ///
    /// # Errors
    /// If it is not there.
    pub async fn text(&self, selector: &str) -> Result<String> {
        Ok(self.element(selector).await?.text().await?.trim().to_owned())
    }

    /// Waits until what can be read in an element is as wanted.
    ///
    /// # Errors
    /// What was last wrong with it.
    pub async fn reads(&self, selector: &str, wanted: impl Fn(&str) -> Result<()>) -> Result<()> {
        self.eventually(async || {
            let text = self.text(selector).await?;
            wanted(&text).with_context(|| format!("{selector} reads `{text}`"))
        })
        .await
    }

    /// Waits until what can be read in an element begins so.
    ///
    /// # Errors
    /// What it reads instead.
    pub async fn begins(&self, selector: &str, words: &str) -> Result<()> {
        self.reads(selector, |text| {
            ensure!(text.starts_with(words), "it does not begin with `{words}`");
            Ok(())
        })
        .await
    }

    /// What can be read in several elements.
    ///
    /// # Errors
    /// If one is not there.
    pub async fn texts(&self, selectors: &[&str]) -> Result<Vec<String>> {
        let mut texts = Vec::new();
        for selector in selectors {
            texts.push(self.text(selector).await?);
        }
        Ok(texts)
    }

    /// Waits until nothing that a selector names can be seen.
    ///
    /// # Errors
    /// If it stays.
    pub async fn gone(&self, selector: &str) -> Result<()> {
        self.eventually(async || {
            for element in self.driver.find_all(By::Css(selector)).await? {
                ensure!(!element.is_displayed().await?, "{selector} is still there");
            }
            Ok(())
        })
        .await
    }

    /// The names of the pieces, as their list has them.
    ///
    /// # Errors
    /// If there is no list.
    pub async fn pieces(&self) -> Result<Vec<String>> {
        self.list_pieces().await?;
        let names = self
            .ask("return [...document.querySelectorAll('#pieces .piece > span')].map(name => name.firstChild.data.trim())")
            .await?;
        self.press("#pieces [aria-current]").await?;
        Ok(serde_json::from_value(names)?)
    }

    /// Opens the list of pieces.
    ///
    /// # Errors
    /// If there is no piece.
    pub async fn list_pieces(&self) -> Result<()> {
        self.press("#piece").await?;
        self.element("#pieces").await?;
        Ok(())
    }

    /// Opens a piece by its place in the list, from 1.
    ///
    /// # Errors
    /// If there is no such piece.
    pub async fn open_piece(&self, place: usize) -> Result<()> {
        self.list_pieces().await?;
        self.press(&format!("#pieces li:nth-child({place}) button")).await
    }

    /// Waits until the browser has kept everything.
    ///
    /// # Errors
    /// If it does not.
    pub async fn kept(&self) -> Result<()> {
        self.eventually(async || {
            let state = self
                .driver
                .find(By::Css("#keeping"))
                .await?
                .attr("data-state")
                .await?;
            ensure!(
                state.as_deref() == Some("kept"),
                "the state of keeping is {state:?}"
            );
            Ok(())
        })
        .await
    }

    /// Waits until the page works without a network, and a service worker answers for it.
    ///
    /// # Errors
    /// If it does not come to that.
    pub async fn works_offline(&self) -> Result<()> {
        self.element("#offline[data-state='ready']").await?;
        self.eventually(async || {
            let looked_after = self
                .ask("return Boolean(navigator.serviceWorker.controller)")
                .await?;
            ensure!(looked_after == true, "no service worker answers for the page");
            Ok(())
        })
        .await
    }

    /// Loads the page anew, once everything is kept.
    ///
    /// # Errors
    /// If it does not come back.
    pub async fn reload(&self) -> Result<()> {
        self.kept().await?;
        self.driver.refresh().await?;
        self.kept().await
    }

    /// Fails if a finger would miss something, or the page is wider than the screen.
    ///
    /// # Errors
    /// Everything that is too small.
    pub async fn fits_a_finger(&self) -> Result<()> {
        self.eventually(async || {
            let small = self.too_small().await?;
            ensure!(small.is_empty(), "too small for a finger: {}", small.join("; "));
            let wide = self.too_wide().await?;
            ensure!(wide == 0, "the page is {wide} pixels wider than the screen");
            Ok(())
        })
        .await
    }

    /// Everything that is smaller than a finger needs, with its size.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub async fn too_small(&self) -> Result<Vec<String>> {
        Ok(serde_json::from_value(self.ask(SMALL).await?)?)
    }

    /// By how many pixels the page is wider than the screen.
    ///
    /// # Errors
    /// If the browser does not answer.
    pub async fn too_wide(&self) -> Result<i64> {
        let wide = self
            .ask("return document.documentElement.scrollWidth - document.documentElement.clientWidth")
            .await?;
        Ok(serde_json::from_value(wide)?)
    }

    /// What a script gives back.
    ///
    /// # Errors
    /// If it fails.
    pub async fn ask(&self, script: &str) -> Result<Value> {
        Ok(as_seen(self.driver.execute(script, vec![]).await?.json().clone()))
    }

    /// Tells the browser something that only its own tools can, by the name that the DevTools protocol has for it.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn devtools(&self, command: &str, parameters: Value) -> Result<Value> {
        let answer = self.driver.cdp().send_raw(command, parameters).await;
        answer.with_context(|| format!("the browser refused {command}"))
    }
}

/// Texts as a person sees them: a space at which no line breaks looks like any other.
fn as_seen(value: Value) -> Value {
    match value {
        Value::String(text) => Value::String(text.replace('\u{a0}', " ")),
        Value::Array(all) => Value::Array(all.into_iter().map(as_seen).collect()),
        Value::Object(all) => Value::Object(all.into_iter().map(|(key, of)| (key, as_seen(of))).collect()),
        other => other,
    }
}
