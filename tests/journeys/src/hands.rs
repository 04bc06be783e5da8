//! A maker's hands on the page: a finger, a mouse, keys.

use std::time::{Duration, Instant};

use anyhow::{Context, Result, ensure};
use serde_json::{Value, json};
use thirtyfour::prelude::*;

use crate::page::Page;
use crate::session::Screen;

/// Two taps within less than this time and less than this way, in pixels, can be a double tap, which selects a word instead
/// of going into a field.
const DOUBLE_TAP: (Duration, f64) = (Duration::from_millis(400), 100.0);

/// More measurements than this has no piece.
const MOST_FIELDS: usize = 80;

/// How far below the middle of the screen an element is brought whose middle was just tapped, in pixels.
const BESIDE: f64 = 120.0;

/// Where the middle of an element is, after it came into view, and whether a finger would meet it there. It is brought this
/// far below the middle of the screen.
const MIDDLE: &str = "
    const [element, below] = arguments;
    element.scrollIntoView({block: 'center', inline: 'center', behavior: 'instant'});
    if (below) scrollBy({top: -below, behavior: 'instant'});
    const box = element.getBoundingClientRect();
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const met = document.elementFromPoint(x, y);
    const own = met && (element.contains(met) || met.contains(element) || met.closest('label')?.control === element);
    return {x, y, own: Boolean(own), met: met ? met.outerHTML.slice(0, 120) : 'nothing'};
";

impl Page {
    /// Taps or clicks, as the screen has it.
    ///
    /// # Errors
    /// If there is no such element, or another one lies over it.
    pub async fn press(&self, selector: &str) -> Result<()> {
        let element = self.element(selector).await?;
        match self.screen() {
            Screen::Tablet => self.tap(&element).await,
            Screen::Desktop => self.click(&element).await,
        }
        .with_context(|| format!("{selector} cannot be pressed"))
    }

    /// The middle of an element, if nothing lies over it. It is brought near the middle of the screen: at the edges lie
    /// the drawing and the tape.
    async fn middle(&self, element: &WebElement, below: f64) -> Result<(f64, f64)> {
        let middle = self
            .driver()
            .execute(MIDDLE, vec![element.to_json()?, json!(below)])
            .await?;
        let middle = middle.json();
        ensure!(middle["own"] == true, "{} lies over it", middle["met"]);
        let at = |axis: &str| middle[axis].as_f64().context("it is nowhere");
        Ok((at("x")?, at("y")?))
    }

    async fn click(&self, element: &WebElement) -> Result<()> {
        let (x, y) = self.middle(element, 0.0).await?;
        for kind in ["mouseMoved", "mousePressed", "mouseReleased"] {
            self.mouse(kind, (x, y)).await?;
        }
        Ok(())
    }

    /// What the left button of the mouse does at a place.
    async fn mouse(&self, kind: &str, (x, y): (f64, f64)) -> Result<()> {
        let clicks = u32::from(kind != "mouseMoved");
        let event = json!({"type": kind, "x": x, "y": y, "button": "left", "clickCount": clicks});
        self.devtools("Input.dispatchMouseEvent", event).await?;
        Ok(())
    }

    /// Draws the mouse over the page with its button down, from place to place.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn stroke(&self, places: &[(f64, f64)]) -> Result<()> {
        let [first, .., last] = places else {
            anyhow::bail!("a stroke goes from one place to another");
        };
        self.mouse("mouseMoved", *first).await?;
        self.mouse("mousePressed", *first).await?;
        for (x, y) in places {
            let event = json!({"type": "mouseMoved", "x": x, "y": y, "button": "left", "buttons": 1});
            self.devtools("Input.dispatchMouseEvent", event).await?;
        }
        self.mouse("mouseReleased", *last).await
    }

    async fn tap(&self, element: &WebElement) -> Result<()> {
        let mut place = self.middle(element, 0.0).await?;
        // Every element is tapped in the middle of the screen, so the spot is often the same.
        if self.would_be_double(place) {
            match self.middle(element, BESIDE).await {
                Ok(beside) if !self.would_be_double(beside) => place = beside,
                _ => {
                    if let Some((last, ..)) = self.last_tap.get() {
                        tokio::time::sleep_until((last + DOUBLE_TAP.0).into()).await;
                    }
                    place = self.middle(element, 0.0).await?;
                }
            }
        }
        let (x, y) = place;
        let finger = json!([{"x": x, "y": y}]);
        for (kind, points) in [("touchStart", finger), ("touchEnd", json!([]))] {
            self.devtools(
                "Input.dispatchTouchEvent",
                json!({"type": kind, "touchPoints": points}),
            )
            .await?;
        }
        self.last_tap.set(Some((Instant::now(), x, y)));
        Ok(())
    }

    /// Whether a tap at a place now would be the second half of a double tap.
    fn would_be_double(&self, (x, y): (f64, f64)) -> bool {
        let (time, way) = DOUBLE_TAP;
        let last = self.last_tap.get();
        last.is_some_and(|(last, from_x, from_y)| {
            last.elapsed() < time && (x - from_x).abs().max((y - from_y).abs()) < way
        })
    }

    /// Goes into a field.
    ///
    /// # Errors
    /// If it does not get the focus.
    pub async fn enter(&self, selector: &str) -> Result<()> {
        self.press(selector).await?;
        self.eventually(async || {
            let focused = self
                .ask(&format!("return document.activeElement?.matches('{selector}')"))
                .await?;
            ensure!(focused == true, "{selector} did not get the focus");
            Ok(())
        })
        .await
    }

    /// Types where the focus is.
    ///
    /// # Errors
    /// If there is no focus.
    pub async fn keys(&self, keys: impl Into<TypingData>) -> Result<()> {
        Ok(self.driver().active_element().await?.send_keys(keys).await?)
    }

    /// Presses the Enter key of a hardware keyboard. It is quicker than [`Page::keys`], which looks at the element first.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn enter_key(&self) -> Result<()> {
        self.hardware_key(json!({"key": "Enter", "code": "Enter", "windowsVirtualKeyCode": 13, "text": "\r"}))
            .await
    }

    /// Presses the Tab key of a hardware keyboard.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn tab_key(&self) -> Result<()> {
        self.hardware_key(json!({"key": "Tab", "code": "Tab", "windowsVirtualKeyCode": 9}))
            .await
    }

    async fn hardware_key(&self, mut key: Value) -> Result<()> {
        for kind in ["keyDown", "keyUp"] {
            key["type"] = json!(kind);
            self.devtools("Input.dispatchKeyEvent", key.clone()).await?;
        }
        Ok(())
    }

    /// Puts a whole text where the focus is, as dictation does, or a tape that is read by the device.
    ///
    /// # Errors
    /// If the browser refuses.
    pub async fn put(&self, text: &str) -> Result<()> {
        self.devtools("Input.insertText", json!({"text": text})).await?;
        Ok(())
    }

    /// Opens what holds the field of a measurement in the list of sizes.
    ///
    /// # Errors
    /// If there is no such field.
    pub async fn show_field(&self, selector: &str) -> Result<()> {
        let is_there = self
            .ask(&format!("return Boolean(document.querySelector('{selector}'))"))
            .await?;
        if is_there == true {
            return Ok(());
        }
        let name = selector.trim_start_matches("#field-");
        if name.starts_with("row-") || name.contains("-row-") {
            return self.press(&format!("#pick-{name}")).await;
        }
        self.unfold("more-sizes").await
    }

    /// Opens what holds the field of a measurement, and types into it.
    ///
    /// # Errors
    /// If there is no such field.
    pub async fn measure(&self, selector: &str, text: &str) -> Result<()> {
        self.show_field(selector).await?;
        self.type_in(selector, text).await
    }

    /// Goes through every measurement with the Enter key, from the first one on, and types what `reading` gives for each
    /// by the name of its field; an empty text leaves a guess.
    ///
    /// # Errors
    /// If Enter does not lead on, or not to an end.
    pub async fn measure_all(&self, mut reading: impl FnMut(&str) -> String) -> Result<()> {
        self.enter("#field-width, #field-top-width").await?;
        for _ in 0..MOST_FIELDS {
            let field = self.ask("return document.activeElement.id").await?;
            let field = field.as_str().unwrap_or_default().to_owned();
            if !field.starts_with("field-") {
                return Ok(());
            }
            let text = reading(&field);
            if !text.is_empty() {
                self.put(&text).await?;
                self.has_value(&format!("#{field}"), &text).await?;
            }
            self.enter_key().await?;
            self.eventually(async || {
                let now = self.ask("return document.activeElement.id").await?;
                ensure!(
                    now != field.as_str() && now != "",
                    "Enter does not go on from {field}"
                );
                Ok(())
            })
            .await?;
        }
        anyhow::bail!("there are more than {MOST_FIELDS} measurements")
    }

    /// Goes into a field and types; then the text stands there.
    ///
    /// # Errors
    /// If it does not.
    pub async fn type_in(&self, selector: &str, text: &str) -> Result<()> {
        self.enter(selector).await?;
        self.keys(text).await?;
        self.has_value(selector, text).await
    }

    /// Chooses from a list by the value of the option.
    ///
    /// # Errors
    /// If there is no such option.
    pub async fn choose(&self, selector: &str, value: &str) -> Result<()> {
        self.element(selector).await?;
        let option = format!("{selector} option[value='{value}']");
        let option = self
            .driver()
            .find(By::Css(option.as_str()))
            .await
            .context(option)?;
        option.click().await?;
        self.has_value(selector, value).await
    }
}
