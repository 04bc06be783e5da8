//! Pictures as their dots. The browser reads them: it knows the format, and nothing of what the page meant.

use anyhow::{Context, Result, ensure};
use serde::Deserialize;
use serde_json::{Value, json};

use crate::page::Page;

const READ: &str = "
    const [text, done] = arguments;
    const bytes = Uint8Array.from(atob(text), sign => sign.charCodeAt(0));
    createImageBitmap(new Blob([bytes], {type: 'image/png'})).then(image => {
        const canvas = new OffscreenCanvas(image.width, image.height);
        const pen = canvas.getContext('2d');
        pen.drawImage(image, 0, 0);
        const {data} = pen.getImageData(0, 0, image.width, image.height);
        const grey = Array.from({length: data.length / 4}, (_, i) => Math.round((data[4 * i] + data[4 * i + 1] + data[4 * i + 2]) / 3));
        done({width: image.width, height: image.height, grey});
    }, error => done({fault: String(error)}));
";

/// A picture without its colours.
#[derive(Clone, Debug, Deserialize)]
pub struct Pixels {
    /// Dots across.
    pub width: usize,
    /// Dots down.
    pub height: usize,
    /// How light each dot is, 0 for black and 255 for white, line by line.
    pub grey: Vec<u8>,
}

impl Page {
    /// The dots of a PNG file, given in base64.
    ///
    /// # Errors
    /// If the browser cannot read it.
    pub async fn pixels(&self, png: &str) -> Result<Pixels> {
        let found = self.driver().execute_async(READ, vec![json!(png)]).await?;
        let pixels: Pixels =
            serde_json::from_value(found.json().clone()).context("the picture cannot be read")?;
        ensure!(
            pixels.grey.len() == pixels.width * pixels.height,
            "the picture is cut off"
        );
        Ok(pixels)
    }

    /// What is to be seen on the screen where an element is.
    ///
    /// # Errors
    /// If it is not there.
    pub async fn photograph(&self, selector: &str) -> Result<Pixels> {
        let element = self.element(selector).await?;
        element.scroll_into_view().await?;
        let place = format!(
            "const box = document.querySelector('{selector}').getBoundingClientRect();
             return {{x: box.x + scrollX, y: box.y + scrollY, width: box.width, height: box.height, scale: 2}};"
        );
        let clip = self.ask(&place).await?;
        let picture = self
            .devtools("Page.captureScreenshot", json!({"format": "png", "clip": clip}))
            .await?;
        let data = picture.get("data").and_then(Value::as_str);
        self.pixels(data.context("the browser took no picture")?).await
    }
}
