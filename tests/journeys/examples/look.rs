//! A picture of every screen of the page in every size, light and dark, and the printed job card: `cargo xtask look`.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use journeys::{Light, Page, SCENES, Scene, Screen, Sent, Session, Site, Size, Text};
use serde_json::json;

const LIGHTS: [Light; 2] = [Light::Light, Light::Dark];

/// What a screen is about comes into view, if it is not.
const INTO_VIEW: &str = "
    scrollTo(0, 0);
    const box = document.querySelector(arguments[0]).getBoundingClientRect();
    if (box.top < 0 || Math.min(box.bottom, box.top + innerHeight / 2) > innerHeight) {
        document.querySelector(arguments[0]).scrollIntoView({block: 'start', behavior: 'instant'});
    }
";

#[tokio::main(flavor = "current_thread")]
async fn main() -> Result<()> {
    let folder = std::env::args_os()
        .nth(1)
        .context("Name a folder for the pictures.")?;
    let folder = PathBuf::from(folder);
    fs::create_dir_all(&folder)?;
    let site = Site::built(Sent::Plain)?;
    let session = Session::start(Screen::Tablet, Text::Usual).await?;
    let taken = take_all(&session, site.address(), &folder).await;
    session.end().await?;
    println!("{} pictures and the card are in {}.", taken?, folder.display());
    Ok(())
}

async fn take_all(session: &Session, address: &str, folder: &Path) -> Result<usize> {
    session.open(address).await?;
    let page = session.page();
    let mut taken = 0;
    for (place, scene) in SCENES.iter().enumerate() {
        page.resize(Screen::Tablet.size(), true).await?;
        page.walk_to(scene).await?;
        taken += take(
            page,
            scene,
            &folder.join(format!("{:02}-{}", place + 1, scene.name)),
        )
        .await?;
        if scene.is_empty() {
            page.look_around().await?;
        }
    }
    Ok(taken)
}

/// Takes a screen in every size and light, and prints it if it is the card. The names of the files begin with `path`.
async fn take(page: &Page, scene: &Scene, path: &Path) -> Result<usize> {
    let mut taken = 0;
    for size in Size::ALL {
        page.resize(size.pixels, size.is_touched).await?;
        for light in LIGHTS {
            page.shine(light).await?;
            page.settled().await?;
            page.driver().execute(INTO_VIEW, vec![scene.shows.into()]).await?;
            page.settled().await?;
            let file = format!("{}-{}-{}.png", path.display(), size.name, light.name());
            page.driver().screenshot(Path::new(&file)).await?;
            taken += 1;
        }
    }
    if scene.name == "card" {
        page.shine(Light::Light).await?;
        let printed = page
            .devtools(
                "Page.printToPDF",
                json!({"preferCSSPageSize": true, "printBackground": true}),
            )
            .await?;
        let text = printed["data"].as_str().context("the browser printed nothing")?;
        fs::write(path.with_extension("pdf"), decoded(text)?)?;
    }
    Ok(taken)
}

/// Bytes that came as text of the base 64.
fn decoded(text: &str) -> Result<Vec<u8>> {
    let mut bytes = Vec::with_capacity(text.len() / 4 * 3);
    let (mut held, mut bits) = (0_u32, 0);
    for letter in text.bytes().filter(|letter| *letter != b'=') {
        let value = match letter {
            b'A'..=b'Z' => letter - b'A',
            b'a'..=b'z' => letter - b'a' + 26,
            b'0'..=b'9' => letter - b'0' + 52,
            b'+' => 62,
            b'/' => 63,
            _ => anyhow::bail!("the browser sent a letter that is none of the base 64"),
        };
        held = held << 6 | u32::from(value);
        bits += 6;
        if bits >= 8 {
            bits -= 8;
            bytes.push((held >> bits) as u8);
        }
    }
    Ok(bytes)
}
