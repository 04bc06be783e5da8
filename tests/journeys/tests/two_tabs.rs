//! A maker has the workshop open in two tabs of one browser, and works in both in turn.
//!
//! Outside source: the edits of the `workshop` crate, made in this program; what they come to is what both tabs must show.

use anyhow::{Context, Result, ensure};
use geometry::fields;
use journeys::{Page, Screen, Sent, Site, journey_at};
use thirtyfour::{Key, WindowHandle};
use units::LengthUnit;
use workshop::{Edit, PieceEdit, PieceId, Reading, Workshop};

/// Rounds of changes, each in both tabs.
const ROUNDS: usize = 2;

#[tokio::test]
async fn two_tabs() -> Result<()> {
    let site = Site::built(Sent::Plain)?;
    journey_at("two_tabs", Screen::Desktop, site.address(), async |page| {
        page.look_around().await?;
        let mut tabs = Tabs::open(page, site.address()).await?;
        // One piece, changed in the one tab and then in the other.
        tabs.change(0, 0, WIDTH, "61").await?;
        tabs.both_show(&[0]).await?;
        tabs.change(1, 0, DEPTH, "19 1/4").await?;
        tabs.both_show(&[0]).await?;
        // A piece for each tab, without waiting until the other has heard of it.
        for round in 0..ROUNDS {
            tabs.change(0, 0, WIDTH, &format!("5{round} 1/2")).await?;
            tabs.change(1, 1, WIDTH, &format!("2{round} 3/4")).await?;
            tabs.both_show(&[0, 1])
                .await
                .with_context(|| format!("round {round}"))?;
        }
        for tab in [0, 1] {
            tabs.to(tab).await?.reload().await?;
        }
        tabs.both_show(&[0, 1]).await.context("after loading anew")?;
        tabs.in_one_moment().await.context("in one moment")
    })
    .await
}

/// A field and what it is the measurement of.
type Field = (&'static str, &'static geometry::LengthField);

/// From now on the other tab does not hear what this one saves, as it does not in the moment in which both save.
const MUTE: &str = "BroadcastChannel.prototype.postMessage = () => {}";

const WIDTH: Field = ("#field-width", &fields::WIDTH);
const DEPTH: Field = ("#field-depth", &fields::DEPTH);

struct Tabs<'a> {
    page: &'a Page,
    both: [WindowHandle; 2],
    document: Workshop,
}

impl<'a> Tabs<'a> {
    async fn open(page: &'a Page, address: &str) -> Result<Self> {
        let driver = page.driver();
        let document = page.records().await?.document()?;
        let first = driver.window().await?;
        let second = driver.new_tab().await?;
        driver.switch_to_window(second.clone()).await?;
        driver.goto(address).await?;
        page.kept().await?;
        page.element("#piece").await?;
        Ok(Tabs {
            page,
            both: [first, second],
            document,
        })
    }

    async fn to(&self, tab: usize) -> Result<&Page> {
        let window = self.both[tab].clone();
        self.page.driver().switch_to_window(window).await?;
        Ok(self.page)
    }

    fn id(&self, piece: usize) -> Result<PieceId> {
        let piece = self.document.pieces.get(piece).context("the piece is gone")?;
        Ok(piece.id.clone())
    }

    async fn open_piece(&self, tab: usize, piece: usize) -> Result<&Page> {
        let page = self.to(tab).await?;
        page.open_piece(piece + 1).await?;
        page.to("measure").await?;
        Ok(page)
    }

    /// Writes a measurement anew.
    async fn change(&mut self, tab: usize, piece: usize, (field, of): Field, text: &str) -> Result<()> {
        let page = self.open_piece(tab, piece).await?;
        page.enter(field).await?;
        page.keys(Key::Control + "a").await?;
        page.put(text).await?;
        page.has_value(field, text).await?;
        page.keys(Key::Escape).await?;
        let reading = Reading::new(text, LengthUnit::Inch)?;
        let edit = PieceEdit::Measure(of.id(), Some(reading));
        self.document = self.document.apply(Edit::Piece(self.id(piece)?, edit))?;
        Ok(())
    }

    /// Each tab changes another field of one piece before it hears of the other tab: both changes are there.
    async fn in_one_moment(&mut self) -> Result<()> {
        for tab in [0, 1] {
            self.to(tab).await?.ask(MUTE).await?;
        }
        self.change(0, 0, WIDTH, "63").await?;
        self.change(1, 0, DEPTH, "18 1/2").await?;
        self.page
            .keeps(|document| {
                ensure!(*document == self.document, "there is kept {document:?}");
                Ok(())
            })
            .await?;
        self.to(0).await?.reload().await?;
        self.both_show(&[0]).await
    }

    /// Both tabs show these pieces as all changes make them, and the database holds all of them.
    async fn both_show(&self, pieces: &[usize]) -> Result<()> {
        for tab in [0, 1] {
            for piece in pieces {
                let page = self.open_piece(tab, *piece).await?;
                let shown = page.shows(&self.document, &self.id(*piece)?).await;
                shown.with_context(|| format!("tab {tab}, piece {piece}"))?;
            }
        }
        self.page
            .keeps(|document| {
                ensure!(*document == self.document, "there is kept {document:?}");
                Ok(())
            })
            .await
    }
}
