//! What to buy for all pieces together.

use super::buy::Buy;
use super::buy::{cans_for, reserve};
use super::{MaterialLine, Takeoff};
use crate::book::DoneStep;
use crate::document::{Piece, PieceId, Workshop, generic};
use crate::stock::{Stock, alike, known_contents, stock};
use coatings::can::ChoiceError;
use coatings::{
    CanSize, Contents, Demand, Material, Rgb, Stage, ZoneWork, enough_with, extra_needed_to_keep,
};
use std::rc::Rc;
use units::{Area, Volume};

/// One material in one color for all pieces.
#[derive(Clone, Debug, PartialEq)]
pub struct Shopping {
    /// The material.
    pub material: Rc<Material>,
    /// The color, if the material comes in colors.
    pub colour: Option<Rgb>,
    /// The names of the pieces that use it, each with its zones if it is not on all of them.
    pub pieces: Vec<String>,
    /// The likely amount for all of them. The cans to buy hold more, to reach the wanted confidence.
    pub likely: Volume,
    /// The cans on the shelf.
    pub on_shelf: Vec<Stock>,
    /// The cans to buy for all of them, on top of the shelf.
    pub buy: Result<Buy, ChoiceError>,
    /// The smallest of these cans and the chance that it is enough without it, if that is likely at all.
    pub one_less: Option<(&'static CanSize, f64)>,
}

impl Shopping {
    /// Returns the key of its line in the shopping list.
    pub fn basket_key(&self) -> String {
        basket_key(&self.material.key, self.colour)
    }
}

/// Returns the key of a material in a color in the shopping list.
pub fn basket_key(material: &str, colour: Option<Rgb>) -> String {
    let colour = colour.map(|[red, green, blue]| format!("-{red:02x}{green:02x}{blue:02x}"));
    format!("{material}{}", colour.unwrap_or_default())
}

/// The minimum chance at which the list mentions that one can less may be enough.
pub(super) const MAY_DO: f64 = 0.6;

/// Returns true if a material is used up on a piece: the cleaning step, or every coat of anything else, is
/// checked off. Until then the whole amount counts, because the cans are entered as they were before the
/// first coat.
pub(super) fn is_used_up(workshop: &Workshop, piece: &Piece, line: &MaterialLine) -> bool {
    let material = &line.need.material;
    let is_done = |step: &str| piece.books.has::<DoneStep>(step);
    match (&material.stage, generic(&workshop.materials, &material.key)) {
        (Stage::Clean, "deglosser") => is_done("degloss"),
        (Stage::Clean, _) => is_done("clean"),
        _ => line.coats > 0 && (1..=line.coats).all(|coat| is_done(&line.coat_key(coat))),
    }
}

/// Returns the names of materials that have all their coats checked off and are no longer bought, each with
/// the name of the piece.
pub(crate) fn coated(workshop: &Workshop, takeoffs: &[Option<Rc<Takeoff>>]) -> Vec<(String, String)> {
    let pieces = workshop.pieces.iter().zip(takeoffs);
    let of_piece = |(piece, takeoff): (&Rc<Piece>, &Option<Rc<Takeoff>>)| -> Vec<(String, String)> {
        let lines = takeoff.iter().flat_map(|takeoff| &takeoff.materials);
        let coats = lines.filter(|line| line.need.material.stage != Stage::Clean);
        let done = coats.filter(|line| is_used_up(workshop, piece, line));
        done.map(|line| (line.need.material.name.to_string(), piece.name.clone()))
            .collect()
    };
    pieces.flat_map(of_piece).collect()
}

/// Returns the takeoffs of the pieces to buy for, in order, with `None` for those left out.
pub(crate) fn bought_for(
    workshop: &Workshop,
    takeoffs: Vec<Option<Rc<Takeoff>>>,
    left_out: &[PieceId],
) -> Vec<Option<Rc<Takeoff>>> {
    let pieces = workshop.pieces.iter().zip(takeoffs);
    pieces
        .map(|(piece, takeoff)| takeoff.filter(|_| !left_out.contains(&piece.id)))
        .collect()
}

/// Returns `Old dresser`, or `Old dresser: top` if the material is not on all of it.
pub(super) fn where_on(piece: &str, takeoff: &Takeoff, line: &MaterialLine) -> String {
    let is_finished = |zone: &&ZoneWork| zone.patches.iter().any(|patch| patch.area > Area::ZERO);
    if line.need.by_zone.len() >= takeoff.job.zones.iter().filter(is_finished).count() {
        return piece.to_owned();
    }
    let zones: Vec<String> = (line.need.by_zone.iter())
        .map(|(zone, _)| takeoff.zone_label(*zone).to_ascii_lowercase())
        .collect();
    format!("{piece}: {}", zones.join(", "))
}

/// Returns what to buy for all pieces together, by stage. `takeoffs` has one entry for each piece, with
/// `None` for those left out.
pub(crate) fn shopping(workshop: &Workshop, takeoffs: &[Option<Rc<Takeoff>>]) -> Vec<Shopping> {
    let shelf = stock(workshop);
    let confidence = workshop.settings.confidence;
    let mut lots: Vec<(Vec<String>, Vec<&MaterialLine>)> = Vec::new();
    for (piece, takeoff) in workshop.pieces.iter().zip(takeoffs) {
        let lines = takeoff.iter().flat_map(|takeoff| &takeoff.materials);
        for line in lines.filter(|line| !is_used_up(workshop, piece, line)) {
            let same = |(_, lines): &&mut (_, Vec<&MaterialLine>)| {
                let mut lines = lines.iter();
                lines.any(|other| other.need.is_alike(&line.need))
            };
            let name = takeoff
                .as_ref()
                .map_or_else(String::new, |of| where_on(&piece.name, of, line));
            match lots.iter_mut().find(same) {
                Some((pieces, lines)) => {
                    pieces.push(name);
                    lines.push(line);
                }
                None => lots.push((vec![name], vec![line])),
            }
        }
    }
    let mut all: Vec<Shopping> = lots
        .into_iter()
        .filter_map(|(pieces, lines)| {
            let needs: Vec<&Demand> = lines.iter().map(|line| &line.need).collect();
            let first = needs.first()?;
            let on_shelf = alike(&shelf, first);
            let contents = known_contents(&on_shelf);
            let reserve = reserve(workshop, &needs);
            let besides = extra_needed_to_keep(&needs, &contents, reserve, confidence.probability());
            let had: Vec<&CanSize> = on_shelf.iter().filter_map(|stock| stock.can).collect();
            let buy = cans_for(workshop, &first.material, besides, &had)
                .map(|buy| buy.leaving(&needs, &contents, confidence.probability()))
                .map(|buy| Buy { reserve, ..buy });
            Some(Shopping {
                one_less: buy.as_ref().ok().and_then(|buy| one_less(buy, &needs, &contents)),
                material: Rc::clone(&first.material),
                colour: first.colour,
                pieces,
                likely: needs.iter().map(|need| need.likely()).sum(),
                buy,
                on_shelf,
            })
        })
        .collect();
    units::sort_few(&mut all, |one, other| one.material.stage < other.material.stage);
    all
}

/// Returns the smallest can of a purchase, and the chance that it is enough without it, for the
/// reserve too.
pub(super) fn one_less(
    buy: &Buy,
    needs: &[&Demand],
    contents: &[Contents],
) -> Option<(&'static CanSize, f64)> {
    let cans = buy.cans.iter().map(|(can, _)| *can);
    let can = cans.reduce(|one, other| if other.volume() < one.volume() { other } else { one })?;
    let likely = enough_with(needs, contents, buy.volume() - can.volume() - buy.reserve);
    (likely >= MAY_DO).then_some((can, likely))
}
