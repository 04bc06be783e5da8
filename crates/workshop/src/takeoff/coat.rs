//! Single coats of a takeoff: their keys, what goes on with each, and how much.

use std::rc::Rc;

use coatings::{Rgb, Stage, best_estimates};
use units::Volume;

use super::areas::{self, Division};
use super::finish::job;
use super::zones::surface_lines;
use super::{MaterialLine, Takeoff};
use crate::document::{OwnMaterial, Piece};

/// Returns the id of a line, from its stage and the number of lines of that stage before it.
pub(super) fn line_id(stage: Stage, before: usize) -> String {
    match before {
        0 => stage.key().into(),
        before => format!("{}-{}", stage.key(), before + 1),
    }
}

/// Returns the key of a coat, counted from 1, of the line with this id.
pub(super) fn key(line: &str, coat: u32) -> String {
    format!("coat-{line}-{coat}")
}

/// What a line of the takeoff is coated with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct CoatedWith {
    /// The id of the line.
    pub(crate) line: String,
    /// The key of the material.
    pub(crate) material: Rc<str>,
    /// Its color, if the material comes in colors.
    pub(crate) colour: Option<Rgb>,
}

/// Returns what each line of the takeoff of a piece is coated with, without working out the amounts. Returns `None` if the
/// measurements do not fit.
pub(crate) fn coated_with(piece: &Piece, own: &[Rc<OwnMaterial>]) -> Option<Vec<CoatedWith>> {
    let assembly = piece.furniture().assembly().ok()?;
    let surfaces = surface_lines(piece, assembly.surfaces());
    let division = Division::of(&assembly, &surfaces);
    let job = job(piece, own, &[], areas::plain(piece, &surfaces, &division));
    let mut all = best_estimates(&job);
    units::sort_few(&mut all, |(one, ..), (other, ..)| one.stage < other.stage);
    let mut stages: Vec<Stage> = Vec::new();
    let line = |(material, colour, _): (Rc<coatings::Material>, Option<Rgb>, Volume)| {
        let before = stages.iter().filter(|stage| **stage == material.stage).count();
        stages.push(material.stage);
        CoatedWith {
            line: line_id(material.stage, before),
            material: material.key.as_ref().into(),
            colour,
        }
    };
    Some(all.into_iter().map(line).collect())
}

impl Takeoff {
    /// Returns the likely volume that a step takes for the whole set, by the key of a coat. Returns `None` if
    /// no coat has this key.
    pub fn likely_of_step(&self, key: &str) -> Option<Volume> {
        self.materials.iter().find_map(|line| {
            let coat = (1..=line.coats).find(|coat| line.coat_key(*coat) == key)?;
            Some(self.likely_of_coat(line, coat))
        })
    }

    /// Returns the likely volume of one coat, counted from 1, of a material of the whole set. The first coat
    /// includes what the surface absorbs. What a tool keeps is in the first coat that it applies. A zone with
    /// fewer coats takes none of the later ones.
    fn likely_of_coat(&self, line: &MaterialLine, coat: u32) -> Volume {
        let up_to = |coats: u32| {
            let mut job = self.job.clone();
            for zone in &mut job.zones {
                zone.patches.iter_mut().for_each(|patch| patch.steps.clear());
                let mut left = coats;
                for layer in zone.layers.iter_mut().filter(|layer| line.need.is_of(layer)) {
                    layer.coats = layer.coats.min(left);
                    left -= layer.coats;
                }
            }
            let mut all = best_estimates(&job).into_iter();
            let of_line = all.find(|(material, colour, _)| {
                material.key == line.need.material.key && *colour == line.need.colour
            });
            of_line.map_or(Volume::ZERO, |(.., volume)| volume)
        };
        up_to(coat) - up_to(coat.saturating_sub(1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::samples::takeoff_in;
    use crate::{Edit, PieceEdit, SchemeEdit, Workshop, invented_workshop};
    use coatings::Substrate;

    fn edited(workshop: &Workshop, edit: PieceEdit) -> Workshop {
        let piece = workshop.pieces[0].id.clone();
        workshop.apply(Edit::Piece(piece, edit)).unwrap()
    }

    fn paint(workshop: &Workshop) -> (Takeoff, MaterialLine) {
        let takeoff = takeoff_in(workshop, &workshop.pieces[0]).unwrap();
        let mut lines = takeoff.materials.iter();
        let line = lines.find(|line| line.id == "paint").unwrap().clone();
        (takeoff, line)
    }

    fn place(workshop: &Workshop, material: &str) -> usize {
        let mut layers = workshop.pieces[0].scheme.layers.iter();
        layers.position(|layer| &*layer.material == material).unwrap()
    }

    /// The first zone has one coat of paint less than the others.
    fn with_fewer_coats() -> (Workshop, String) {
        let workshop = invented_workshop();
        let zone = paint(&workshop).0.job.zones[0].key.clone();
        let apart = PieceEdit::Apart {
            zone: zone.clone(),
            apart: true,
        };
        let fewer = SchemeEdit::Coats(place(&workshop, "trim-enamel"), 1);
        let apart = edited(&workshop, apart);
        (edited(&apart, PieceEdit::Finish(Some(zone.clone()), fewer)), zone)
    }

    #[test]
    fn the_coats_of_a_material_are_what_it_needs() {
        let invented = invented_workshop();
        let porous = edited(
            &invented,
            PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Porous)),
        );
        for workshop in [&invented, &porous, &with_fewer_coats().0] {
            for piece in &workshop.pieces {
                let takeoff = takeoff_in(workshop, piece).unwrap();
                for line in &takeoff.materials {
                    let coats = (1..=line.coats).map(|coat| takeoff.likely_of_coat(line, coat));
                    let sum = coats.sum::<Volume>();
                    assert!((sum / line.need.linear().value - 1.0).abs() < 1e-9, "{}", line.id);
                    assert!((sum / line.need.likely() - 1.0).abs() < 0.1, "{}", line.id);
                }
            }
        }
    }

    #[test]
    fn a_zone_without_a_coat_takes_none_of_it() {
        let (workshop, zone) = with_fewer_coats();
        let unpainted = edited(
            &workshop,
            PieceEdit::ZonePainted {
                zone,
                painted: Some(false),
            },
        );
        let second = |workshop: &Workshop| {
            let (takeoff, line) = paint(workshop);
            takeoff.likely_of_coat(&line, 2)
        };
        assert!((second(&workshop) / second(&unpainted) - 1.0).abs() < 1e-9);
        assert!(second(&workshop) < second(&invented_workshop()));
    }

    #[test]
    fn the_first_coat_takes_what_the_surface_absorbs() {
        let workshop = edited(
            &invented_workshop(),
            PieceEdit::Finish(None, SchemeEdit::Substrate(Substrate::Porous)),
        );
        let layers = &workshop.pieces[0].scheme.layers;
        let primers = layers.iter().enumerate().filter(|(_, layer)| {
            coatings::material(&layer.material).is_some_and(|material| material.stage == Stage::Primer)
        });
        let primers: Vec<usize> = primers.map(|(place, _)| place).collect();
        let bare = primers.into_iter().fold(workshop.clone(), |workshop, place| {
            edited(&workshop, PieceEdit::Finish(None, SchemeEdit::Coats(place, 0)))
        });
        let coats = |workshop: &Workshop| {
            let (takeoff, line) = paint(workshop);
            [1, 2].map(|coat| takeoff.likely_of_coat(&line, coat))
        };
        let (primed, bare) = (coats(&workshop), coats(&bare));
        assert!((bare[1] / primed[1] - 1.0).abs() < 1e-9);
        assert!(bare[0] > primed[0] * 1.1);
    }
}
