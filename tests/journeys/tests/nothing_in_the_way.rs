//! Nothing on any screen is in a person's way: not for a finger, for the keyboard alone, for large text, in any light, or
//! for one who wants less motion.
//!
//! Outside source: axe-core with the rules of WCAG 2.0 to 2.2 at A and AA; 200 % of text is WCAG 1.4.4, 48 pixels are the
//! touch targets of the mobile design guides, wider than the 24 of WCAG 2.5.8.

use anyhow::{Result, bail, ensure};
use journeys::{Light, Page, SCENES, Scene, Screen, Size, Text, journey, journey_in};
use serde::Deserialize;
use thirtyfour::Key;

/// Screens of phones and tablets.
const SIZES: [(u32, u32); 3] = [(390, 844), (768, 1024), (1180, 820)];

/// More presses of the Tab key than this to come anywhere are a way that nobody goes.
const MOST_TABS: usize = 150;

/// What the focus is on, and why it could not be seen there, if it could not.
const FOCUS: &str = include_str!("../scripts/focus.js");

#[derive(Debug, Deserialize)]
struct Focus {
    name: String,
    fault: Option<String>,
}

/// What is wrong, each thing once, with the places where it was found.
#[derive(Default)]
struct Faults(Vec<(String, Vec<String>)>);

impl Faults {
    fn add(&mut self, place: &str, faults: impl IntoIterator<Item = String>) {
        for fault in faults {
            let place = place.to_owned();
            match self.0.iter_mut().find(|(known, _)| *known == fault) {
                Some((_, places)) => places.push(place),
                None => self.0.push((fault, vec![place])),
            }
        }
    }

    fn none(&self) -> Result<()> {
        let lines: Vec<String> = self
            .0
            .iter()
            .map(|(fault, places)| match places.as_slice() {
                [first, second, _, ..] => {
                    let more = places.len() - 2;
                    format!("- {fault}\n    on {first}, {second} and {more} more")
                }
                few => format!("- {fault}\n    on {}", few.join(", ")),
            })
            .collect();
        ensure!(
            lines.is_empty(),
            "{} things are in the way:\n{}",
            lines.len(),
            lines.join("\n")
        );
        Ok(())
    }
}

/// Walks to every screen and looks at each.
async fn everywhere(page: &Page, mut look: impl AsyncFnMut(&Scene) -> Result<()>) -> Result<()> {
    for scene in &SCENES {
        page.resize(Screen::Tablet.size(), true).await?;
        page.walk_to(scene).await?;
        look(scene).await?;
        if scene.is_empty() {
            page.reload().await?;
            page.look_around().await?;
        }
    }
    Ok(())
}

/// Two browsers go side by side, since each waits for the one core that works its page: one with text as it comes, one with
/// text twice as large.
#[tokio::test]
async fn no_screen_is_in_the_way() -> Result<()> {
    let (one, other) = tokio::join!(text_as_it_comes(), text_twice_as_large());
    one.and(other)
}

async fn text_as_it_comes() -> Result<()> {
    journey("text_as_it_comes", Screen::Tablet, async |page| {
        let mut faults = Faults::default();
        everywhere(page, async |scene| {
            rules(page, scene, &mut faults).await?;
            page.shine(Light::Light).await?;
            fits(page, scene, &SIZES, &mut faults).await
        })
        .await?;
        faults.none()
    })
    .await
}

/// On a phone it would be a page of 195 pixels; WCAG 1.4.10 goes down to 320.
async fn text_twice_as_large() -> Result<()> {
    journey_in("text_twice_as_large", Screen::Tablet, Text::Twice, async |page| {
        let mut faults = Faults::default();
        everywhere(page, async |scene| {
            fits(page, scene, &SIZES[1..], &mut faults).await
        })
        .await?;
        faults.none()
    })
    .await
}

/// The rules of accessibility are kept on a tablet in every light, and on a phone.
async fn rules(page: &Page, scene: &Scene, faults: &mut Faults) -> Result<()> {
    let [first, others @ ..] = Light::ALL;
    for size in [Size::ALL[2], Size::ALL[0]] {
        page.resize(size.pixels, size.is_touched).await?;
        page.shine(first).await?;
        page.settled().await?;
        let found = page.findings().await?;
        let place = format!("{} ({}, {})", scene.name, size.name, first.name());
        faults.add(&place, found.iter().map(ToString::to_string));
    }
    for light in others {
        page.shine(light).await?;
        page.settled().await?;
        let found = page.findings_of_light().await?;
        let place = format!("{} ({}, {})", scene.name, Size::ALL[0].name, light.name());
        faults.add(&place, found.iter().map(ToString::to_string));
    }
    Ok(())
}

/// Everything fits the screen and the finger, no text is cut off, and nothing moves when less motion is wanted.
async fn fits(page: &Page, scene: &Scene, sizes: &[(u32, u32)], faults: &mut Faults) -> Result<()> {
    for size in sizes {
        page.resize(*size, true).await?;
        page.settled().await?;
        let place = format!("{} ({} wide)", scene.name, size.0);
        faults.add(&place, page.too_small().await?);
        faults.add(&place, page.cut_off().await?);
        if page.too_wide().await? > 0 {
            faults.add(&place, ["the page scrolls sideways".to_owned()]);
        }
    }
    let moving = page.moving().await?;
    let moving = moving
        .iter()
        .map(|name| format!("{name} moves, and less motion is wanted"));
    faults.add(scene.name, moving);
    Ok(())
}

#[tokio::test]
async fn high_contrast_is_a_choice_of_the_settings() -> Result<()> {
    journey(
        "high_contrast_is_a_choice_of_the_settings",
        Screen::Tablet,
        async |page| {
            page.to("settings").await?;
            page.press("#light-contrast").await?;
            page.element(":root[data-light=contrast]").await?;
            Ok(())
        },
    )
    .await
}

/// What moves when a measurement is taken must not move out from under the finger.
#[tokio::test]
async fn a_finger_on_a_field_takes_out_the_tape() -> Result<()> {
    journey(
        "a_finger_on_a_field_takes_out_the_tape",
        Screen::Tablet,
        async |page| {
            page.look_around().await?;
            page.to("measure").await?;
            page.enter("#field-width").await?;
            page.element("#tape-keys").await?;
            Ok(())
        },
    )
    .await
}

#[tokio::test]
async fn the_keyboard_is_enough() -> Result<()> {
    journey("the_keyboard_is_enough", Screen::Desktop, async |page| {
        let mut faults = Faults::default();
        tab_to(page, "#new-dresser", "the start", &mut faults).await?;
        page.keys(Key::Enter).await?;
        // With a keyboard and a mouse there is no keypad: the list is typed into.
        has_focus(page, "#field-width").await?;
        faults.add("the list", focus(page).await?.fault);
        page.keys("58 1/2").await?;
        page.has_value("#field-width", "58 1/2").await?;
        page.keys(Key::Enter).await?;
        has_focus(page, "#field-depth").await?;
        page.keys(Key::Escape).await?;
        page.has_value("#field-width", "58 1/2").await?;
        tab_to(page, "#strip", "the way to the amounts", &mut faults).await?;
        page.keys(Key::Enter).await?;
        page.element("[data-screen=amounts]").await?;

        tab_to_start(page).await?;
        tab_to(page, "#stage-finish", "the way to the finish", &mut faults).await?;
        page.keys(" ").await?;
        tab_to(page, "#finish-of-top", "the finish", &mut faults).await?;
        page.keys(" ").await?;
        page.element("#finish-of-top[aria-current]").await?;
        has_focus(page, "#finish-of-top").await?;
        faults.none()
    })
    .await
}

async fn focus(page: &Page) -> Result<Focus> {
    page.settled().await?;
    Ok(serde_json::from_value(page.ask(FOCUS).await?)?)
}

async fn has_focus(page: &Page, selector: &str) -> Result<()> {
    page.eventually(async || {
        let found = focus(page).await?.name;
        ensure!(
            page.is_on(selector).await?,
            "the focus is on {found} instead of {selector}"
        );
        Ok(())
    })
    .await
}

/// Begins anew at the top of the page, as a person who presses the key for the address and Tab.
async fn tab_to_start(page: &Page) -> Result<()> {
    page.ask("document.activeElement?.blur(); scrollTo(0, 0); getSelection().collapse(document.body, 0);")
        .await?;
    Ok(())
}

/// Presses Tab until the focus is there; each time it must be seen where it is.
async fn tab_to(page: &Page, selector: &str, way: &str, faults: &mut Faults) -> Result<()> {
    let mut last = String::new();
    for _ in 0..MOST_TABS {
        page.tab_key().await?;
        let focus = focus(page).await?;
        faults.add(way, focus.fault.map(|fault| format!("{}: {fault}", focus.name)));
        if page.is_on(selector).await? {
            return Ok(());
        }
        last = focus.name;
    }
    bail!("{MOST_TABS} times Tab do not lead to {selector}; the last was {last}")
}
