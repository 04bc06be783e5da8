//! How long a maker waits: `cargo xtask pace`. It prints one line for each row of the table, its cells parted by tabs. It
//! measures and judges nothing: a busy machine is slow.

use std::fs;
use std::rc::Rc;
use std::time::Duration;

use anyhow::{Context, Result, ensure};
use journeys::{Page, Screen, Sent, Session, Site, Text};
use serde::Deserialize;
use serde_json::{Value, json};
use thirtyfour::By;

/// What notes the times in the page.
const PACE: &str = include_str!("../scripts/pace.js");

/// Presses of a digit that are timed.
const PRESSES: usize = 30;

/// How many times slower than this machine the processor of a cheap tablet is taken to be.
const SLOW: f64 = 4.0;

/// A slow mobile line, as the browsers' own tools have it: bytes per second down and up, milliseconds there and back.
const LINE: (f64, f64, f64) = (1.6e6 / 8.0, 750e3 / 8.0, 150.0);

/// A large workshop.
const PIECES: usize = 1000;

#[derive(Deserialize)]
struct Noted {
    usable: Option<f64>,
    presses: Vec<f64>,
    events: Vec<(u64, String, f64)>,
    kept: Vec<(String, f64)>,
}

#[tokio::main(flavor = "current_thread")]
async fn main() -> Result<()> {
    println!("what\tmedian or once\tworst\thow");
    loading().await.context("The loading could not be timed")?;
    typing().await.context("The typing could not be timed")?;
    many_pieces().await.context("A large workshop could not be timed")
}

fn row(what: &str, times: &[f64], how: &str) {
    let mut sorted = times.to_vec();
    sorted.sort_by(f64::total_cmp);
    let shown = |time: Option<&f64>| time.map_or("none".into(), |time| format!("{time:.1} ms"));
    let worst = if sorted.len() > 1 {
        shown(sorted.last())
    } else {
        String::new()
    };
    println!("{what}\t{}\t{worst}\t{how}", shown(sorted.get(sorted.len() / 2)));
}

/// A browser that notes times from the first moment on.
async fn start() -> Result<Session> {
    let session = Session::start(Screen::Tablet, Text::Usual).await?;
    session
        .page()
        .devtools("Page.addScriptToEvaluateOnNewDocument", json!({"source": PACE}))
        .await?;
    Ok(session)
}

async fn noted(page: &Page) -> Result<Noted> {
    Ok(serde_json::from_value(page.ask("return window.pace").await?)?)
}

async fn throttle(page: &Page, rate: f64) -> Result<()> {
    page.devtools("Emulation.setCPUThrottlingRate", json!({"rate": rate}))
        .await?;
    Ok(())
}

async fn slow_line(page: &Page, (down, up, latency): (f64, f64, f64)) -> Result<()> {
    page.devtools("Network.enable", json!({})).await?;
    let line =
        json!({"offline": false, "latency": latency, "downloadThroughput": down, "uploadThroughput": up});
    page.devtools("Network.emulateNetworkConditions", line).await?;
    Ok(())
}

/// When the page that was just loaded could be used.
async fn usable(page: &Page) -> Result<f64> {
    page.eventually(async || {
        let usable = noted(page).await?.usable.filter(|time| *time > 0.0);
        usable.context("the page cannot be used yet")
    })
    .await
}

/// First and later load.
async fn loading() -> Result<()> {
    let site = Site::built(Sent::Compressed)?;
    let session = start().await?;
    let page = session.page();
    throttle(page, SLOW).await?;
    slow_line(page, LINE).await?;
    session.go(site.address()).await?;
    row(
        "first load until the start can be used",
        &[usable(page).await?],
        "slow line, 4 times slower processor, brotli",
    );
    slow_line(page, (-1.0, -1.0, 0.0)).await?;
    let worker = "const done = arguments[0]; navigator.serviceWorker.getRegistration().then(found => done(Boolean(found)));";
    let has_worker = page.driver().execute_async(worker, vec![]).await?.json() == &Value::Bool(true);
    if has_worker {
        let ready = "const done = arguments[0]; navigator.serviceWorker.ready.then(() => done(true));";
        page.driver().execute_async(ready, vec![]).await?;
        // The worker answers for the pages that are loaded after it was ready.
        page.reload().await?;
        // A browser that is only told to be offline lets a service worker reach the network still.
        drop(site);
    }
    let with = if has_worker {
        "no network, service worker"
    } else {
        "no service worker; warm cache"
    };
    for (rate, processor) in [(SLOW, "4 times slower processor"), (1.0, "this processor")] {
        throttle(page, rate).await?;
        let mut times = Vec::new();
        for _ in 0..5 {
            page.driver().refresh().await?;
            times.push(usable(page).await?);
        }
        row(
            "later load until the start can be used",
            &times,
            &format!("{with}, {processor}"),
        );
    }
    session.end().await
}

/// From the press of a key to the new numbers.
async fn typing() -> Result<()> {
    let site = Site::built(Sent::Plain)?;
    let session = start().await?;
    session.open(site.address()).await?;
    let page = session.page();
    page.look_around().await?;
    for (rate, processor) in [(1.0, "this processor"), (SLOW, "4 times slower processor")] {
        page.reload().await?;
        page.to("measure").await?;
        page.enter("#field-width").await?;
        throttle(page, rate).await?;
        type_digits(page).await?;
        tokio::time::sleep(Duration::from_secs(1)).await;
        let noted = noted(page).await?;
        throttle(page, 1.0).await?;
        row(
            "key press to new numbers, next frame",
            &digits(&noted.presses),
            processor,
        );
        let (times, quick) = interactions(&noted.events);
        row(
            "key press to paint, Event Timing",
            &times,
            &format!("{processor}; {quick} of {} presses under 16 ms", 2 * PRESSES),
        );
    }
    session.end().await
}

/// Writes a width that always fits, then a tenth of an inch more or less at a time: a digit, and away with it again.
async fn type_digits(page: &Page) -> Result<()> {
    page.ask("document.activeElement.select()").await?;
    page.keys("58.").await?;
    tokio::time::sleep(Duration::from_millis(500)).await;
    page.ask("pace.presses.length = 0; pace.events.length = 0;")
        .await?;
    for press in 0..PRESSES {
        // Far enough from nothing that the numbers change with every press.
        let digit = char::from(b'3' + (press % 7) as u8);
        let before = noted(page).await?.presses.len();
        press_key(page, &digit.to_string(), Some(digit)).await?;
        new_numbers(page, before + 1).await?;
        press_key(page, "Backspace", None).await?;
        new_numbers(page, before + 2).await?;
    }
    Ok(())
}

async fn press_key(page: &Page, key: &str, text: Option<char>) -> Result<()> {
    let code = text.map_or(8, |digit| digit as u32);
    let mut down = json!({"type": "keyDown", "key": key, "windowsVirtualKeyCode": code});
    if let Some(digit) = text {
        down["text"] = digit.to_string().into();
    }
    page.devtools("Input.dispatchKeyEvent", down).await?;
    let up = json!({"type": "keyUp", "key": key, "windowsVirtualKeyCode": code});
    page.devtools("Input.dispatchKeyEvent", up).await?;
    Ok(())
}

async fn new_numbers(page: &Page, presses: usize) -> Result<()> {
    page.eventually(async || {
        let now = noted(page).await?.presses.len();
        ensure!(
            now >= presses,
            "the numbers did not change: {now} times of {presses}"
        );
        Ok(())
    })
    .await
}

/// The presses of digits, without those that took them back.
fn digits(presses: &[f64]) -> Vec<f64> {
    presses.iter().step_by(2).copied().collect()
}

/// How long each press took, of those that the browser reports, and how many were too quick for that.
fn interactions(events: &[(u64, String, f64)]) -> (Vec<f64>, usize) {
    let mut longest: Vec<(u64, f64)> = Vec::new();
    for (id, _, duration) in events.iter().filter(|(_, name, _)| name.starts_with("key")) {
        match longest.iter_mut().find(|(of, _)| of == id) {
            Some((_, time)) => *time = time.max(*duration),
            None => longest.push((*id, *duration)),
        }
    }
    let quick = (2 * PRESSES).saturating_sub(longest.len());
    (longest.into_iter().map(|(_, time)| time).collect(), quick)
}

/// A workshop of a thousand dressers: opened, loaded again, changed.
async fn many_pieces() -> Result<()> {
    let site = Site::built(Sent::Plain)?;
    let session = start().await?;
    session.open(site.address()).await?;
    let page = session.page();
    let path = page.files().join("many.json");
    fs::write(&path, many()?)?;
    page.to("settings").await?;
    let field = page.driver().find(By::Css("#open-file")).await?;
    field
        .send_keys(path.to_str().context("the path is not text")?)
        .await?;
    // An empty workshop takes the file at once, or asks.
    page.eventually(async || {
        let open = page.ask("return Boolean(document.querySelector('#replace-file, #pieces button'))");
        ensure!(open.await? == true, "the file is not open yet");
        Ok(())
    })
    .await?;
    if page
        .ask("return Boolean(document.querySelector('#replace-file'))")
        .await?
        == true
    {
        page.press("#replace-file").await?;
    }
    all_kept(page).await?;
    let mut times = Vec::new();
    for _ in 0..3 {
        page.driver().refresh().await?;
        times.push(patiently(async || usable(page).await).await?);
        all_kept(page).await?;
    }
    row(
        &format!("{PIECES} pieces, opened on reload"),
        &times,
        "this processor",
    );

    page.to("measure").await?;
    page.enter("#field-width").await?;
    page.ask("document.activeElement.select()").await?;
    page.keys("58.").await?;
    all_kept(page).await?;
    let (mut kept, mut shown) = (Vec::new(), Vec::new());
    for press in 0..5 {
        page.ask("pace.kept.length = 0; pace.presses.length = 0; addEventListener('keydown', e => { window.paceKey = e.timeStamp }, {once: true, capture: true})")
            .await?;
        let digit = char::from(b'3' + press);
        press_key(page, &digit.to_string(), Some(digit)).await?;
        let time = patiently(async || {
            let noted = noted(page).await?;
            let at = page
                .ask("return window.paceKey")
                .await?
                .as_f64()
                .context("no key was pressed")?;
            let last = noted.kept.last().filter(|(state, _)| state == "kept");
            let last = last.context("the change is not kept yet")?;
            Ok((last.1 - at, noted.presses.first().copied()))
        })
        .await?;
        kept.push(time.0);
        shown.extend(time.1);
        press_key(page, "Backspace", None).await?;
        tokio::time::sleep(Duration::from_millis(300)).await;
        all_kept(page).await?;
    }
    row(
        &format!("{PIECES} pieces, key press to new numbers"),
        &shown,
        "this processor",
    );
    row(
        &format!("{PIECES} pieces, key press until kept"),
        &kept,
        "this processor",
    );
    session.end().await
}

/// As often as a thousand pieces may need.
async fn patiently<T>(look: impl AsyncFn() -> Result<T>) -> Result<T> {
    let mut last = look().await;
    for _ in 0..8 {
        if last.is_ok() {
            break;
        }
        tokio::time::sleep(Duration::from_secs(2)).await;
        last = look().await;
    }
    last
}

async fn all_kept(page: &Page) -> Result<()> {
    patiently(async || page.kept().await).await
}

/// A save file of a thousand copies of the invented dresser.
fn many() -> Result<String> {
    let mut workshop = workshop::invented_workshop();
    let dresser = workshop
        .pieces
        .first()
        .context("the invented workshop is empty")?;
    workshop.pieces = (0..PIECES)
        .map(|place| {
            let mut piece = workshop::Piece::clone(dresser);
            piece.id = workshop::PieceId(format!("copy-{place}").into());
            piece.name = format!("Dresser {}", place + 1);
            Rc::new(piece)
        })
        .collect();
    Ok(workshop::format::save(&workshop))
}
