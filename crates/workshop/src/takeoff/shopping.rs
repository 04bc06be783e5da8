//! What to buy for all pieces together.

use super::buy::Buy;
use super::buy::cans_for;
use super::{MaterialLine, Takeoff};
use crate::book::DoneStep;
use crate::document::{Piece, PieceId, Workshop, generic};
use crate::stock::{Stock, alike, known_contents, stock};
use coatings::can::ChoiceError;
use coatings::{CanSize, Contents, Demand, Material, Rgb, Stage, ZoneWork, enough_with, extra_needed};
use std::rc::Rc;
use units::{Area, Volume};

/// What the whole workshop needs of one material in one colour.
#[derive(Clone, Debug, PartialEq)]
pub struct Shopping {
    /// The material.
    pub material: Rc<Material>,
    /// Its colour, of a material that comes in colours.
    pub colour: Option<Rgb>,
    /// The names of the pieces that take it, each with its zones where it does not go on all of them.
    pub pieces: Vec<String>,
    /// What they likely take of it together; what is bought is more, to be enough with the wanted confidence.
    pub likely: Volume,
    /// The cans on the shelf.
    pub on_shelf: Vec<Stock>,
    /// Which cans to buy besides for all of them.
    pub buy: Result<Buy, ChoiceError>,
    /// How likely it is enough without the smallest of these cans, where that is likely at all.
    pub one_less: Option<(&'static CanSize, f64)>,
}

impl Shopping {
    /// The name of its line in the basket.
    pub fn basket_key(&self) -> String {
        let colour = self
            .colour
            .map(|[red, green, blue]| format!("-{red:02x}{green:02x}{blue:02x}"));
        format!("{}{}", self.material.key, colour.unwrap_or_default())
    }
}

/// From this probability on it is worth saying that a can less may do.
pub(super) const MAY_DO: f64 = 0.6;

/// Whether a material has done its work on a piece: the step of a cleaner, or each coat of anything else, is ticked off. As
/// long as one coat is to come the whole amount stands, as what the cans held before the first coat does.
pub(super) fn is_used_up(workshop: &Workshop, piece: &Piece, line: &MaterialLine) -> bool {
    let material = &line.need.material;
    let is_done = |step: &str| piece.books.has::<DoneStep>(step);
    match (&material.stage, generic(&workshop.materials, &material.key)) {
        (Stage::Clean, "deglosser") => is_done("degloss"),
        (Stage::Clean, _) => is_done("clean"),
        _ => line.coats > 0 && (1..=line.coats).all(|coat| is_done(&line.coat_key(coat))),
    }
}

/// The materials that have all their coats, by what is ticked off, and so are not bought any more: their names with that of
/// the piece.
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

/// The takeoffs of the pieces that something is bought for, in their order; nothing in the place of those left out.
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

/// `Old dresser`, or `Old dresser: top` for what does not go on all of it.
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

/// What to buy for all pieces together, stage after stage; `takeoffs` are those of [`takeoffs`]. Pieces that cannot be
/// measured up are left out.
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
            let besides = extra_needed(&needs, &contents, confidence.probability());
            let had: Vec<&CanSize> = on_shelf.iter().filter_map(|stock| stock.can).collect();
            let buy = cans_for(workshop, &first.material, besides, &had)
                .map(|buy| buy.leaving(&needs, &contents, confidence.probability()));
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

/// The smallest can of a purchase, and how likely it is enough without it.
pub(super) fn one_less(
    buy: &Buy,
    needs: &[&Demand],
    contents: &[Contents],
) -> Option<(&'static CanSize, f64)> {
    let cans = buy.cans.iter().map(|(can, _)| *can);
    let can = cans.reduce(|one, other| if other.volume() < one.volume() { other } else { one })?;
    let likely = enough_with(needs, contents, buy.volume() - can.volume());
    (likely >= MAY_DO).then_some((can, likely))
}
