//! Checked-off coats belong to a material in a color. They are saved under the key of a line of the takeoff, so they follow
//! the material to its new line, and go when it is no longer planned.

use std::rc::Rc;

use super::{Edit, PieceEdit};
use crate::book::{DoneStep, Line, Record};
use crate::document::{OwnMaterial, Piece, Workshop, as_far_as_it_fits, generic};
use crate::takeoff::{CoatedWith, coated_with};

/// What an edit does to the keys of coats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Keys {
    /// It leaves them as they are.
    Same,
    /// It may change what they mean.
    Changed,
    /// The same, but while a size is being typed: a part that is gone for a moment keeps its ticks.
    Typed,
}

impl Keys {
    pub(super) fn after(edit: &Edit) -> Self {
        match edit {
            Edit::Piece(_, PieceEdit::Measure(..)) => Keys::Typed,
            Edit::Piece(_, edit) if !may_change_keys(edit) => Keys::Same,
            Edit::Piece(..) | Edit::CopyFinish { .. } | Edit::RemoveMaterial(_) => Keys::Changed,
            _ => Keys::Same,
        }
    }
}

fn may_change_keys(edit: &PieceEdit) -> bool {
    !matches!(
        edit,
        PieceEdit::Book(_) | PieceEdit::Name(_) | PieceEdit::Count(_) | PieceEdit::NameZone { .. }
    )
}

impl Workshop {
    /// Moves the checked-off coats of every piece that changed since `before`, or clears them.
    pub(super) fn move_ticks(&mut self, before: &Workshop, keys: Keys) {
        if keys == Keys::Same {
            return;
        }
        // These edits leave the pieces in their order.
        for (piece, old) in self.pieces.iter_mut().zip(&before.pieces) {
            if Rc::ptr_eq(piece, old) || !piece.has_coats_done() {
                continue;
            }
            let lines = lines(old, &before.materials).zip(lines(piece, &self.materials));
            let Some((old, new)) = lines else { continue };
            // A label that the edit deleted still says which material it was copied from.
            let moved = |line: &str| moved(line, &old, &new, &before.materials, keys);
            let mut changed = (**piece).clone();
            changed.move_coats(&moved);
            *piece = Rc::new(changed);
        }
    }
}

/// Returns the lines of a piece. A piece that does not fit has those of its drawing.
fn lines(piece: &Piece, own: &[Rc<OwnMaterial>]) -> Option<Vec<CoatedWith>> {
    coated_with(piece, own).or_else(|| coated_with(&as_far_as_it_fits(piece)?, own))
}

/// Returns the id that a line has after a change, or `None` if its ticks go. Entering the label of the same
/// paint keeps its coats checked off.
fn moved(
    line: &str,
    old: &[CoatedWith],
    new: &[CoatedWith],
    own: &[Rc<OwnMaterial>],
    keys: Keys,
) -> Option<String> {
    let is_free = new.iter().all(|new| new.line != line);
    let Some(of) = old.iter().find(|old| old.line == line) else {
        // Nothing says what these ticks were for. They stay until another material has their key.
        return (is_free || keys == Keys::Typed).then(|| line.to_owned());
    };
    let in_color = || new.iter().filter(|new| new.colour == of.colour);
    let same = in_color().find(|new| new.material == of.material);
    let kind = generic(own, &of.material);
    let alike = || in_color().find(|new| generic(own, &new.material) == kind);
    match same.or_else(alike) {
        Some(new) => Some(new.line.clone()),
        None => (is_free && keys == Keys::Typed).then(|| line.to_owned()),
    }
}

/// Returns the line and the number in the key of a coat.
fn line_and_number(key: &str) -> Option<(&str, &str)> {
    key.strip_prefix("coat-")?.rsplit_once('-')
}

impl Piece {
    fn has_coats_done(&self) -> bool {
        let mut lines = self.books.lines(DoneStep::BOOK).iter();
        lines.any(|line| line_and_number(&line.id).is_some())
    }

    /// Gives each checked-off coat the key of its line after a change.
    fn move_coats(&mut self, moved: &dyn Fn(&str) -> Option<String>) {
        let mut kept: Vec<Rc<Line>> = Vec::new();
        for line in self.books.lines(DoneStep::BOOK) {
            let id: Rc<str> = match line_and_number(&line.id) {
                None => Rc::clone(&line.id),
                Some((of, number)) => match moved(of) {
                    None => continue,
                    Some(of) => format!("coat-{of}-{number}").into(),
                },
            };
            if kept.iter().all(|kept| kept.id != id) {
                kept.push(match id == line.id {
                    true => Rc::clone(line),
                    false => Rc::new(Line {
                        id,
                        ..(**line).clone()
                    }),
                });
            }
        }
        self.books.set_lines(DoneStep::BOOK, kept);
    }
}

#[cfg(test)]
mod tests {
    use crate::{BookEdit, BrushTo, Colour, Edit, PieceEdit, SchemeEdit, Workshop, invented_workshop};

    fn edited(workshop: &Workshop, edit: PieceEdit) -> Workshop {
        let piece = workshop.pieces[0].id.clone();
        workshop.apply(Edit::Piece(piece, edit)).unwrap()
    }

    fn ticked() -> Workshop {
        let keys = ["clean", "coat-primer-1", "coat-paint-1", "coat-paint-2"];
        keys.iter().fold(invented_workshop(), |workshop, key| {
            let day = crate::samples::values(&[("day", "2026-05-03")]);
            edited(
                &workshop,
                PieceEdit::Book(BookEdit::Add("done", (*key).into(), day)),
            )
        })
    }

    fn ticks(workshop: &Workshop) -> Vec<&str> {
        let lines = workshop.pieces[0].books.lines("done").iter();
        lines.map(|line| &*line.id).collect()
    }

    #[test]
    fn another_paint_has_none_of_its_coats() {
        let workshop = ticked();
        let place = |key: &str| {
            let mut layers = workshop.pieces[0].scheme.layers.iter();
            layers.position(|layer| &*layer.material == key).unwrap()
        };
        let paint = place("trim-enamel");
        let other = SchemeEdit::Material(paint, "alkyd-enamel".into());
        let repainted = edited(&workshop, PieceEdit::Finish(None, other));
        assert_eq!(ticks(&repainted), ["clean", "coat-primer-1"]);
        let gone = edited(&workshop, PieceEdit::Finish(None, SchemeEdit::Remove(paint)));
        assert_eq!(ticks(&gone), ["clean", "coat-primer-1"]);
    }

    #[test]
    fn what_leaves_the_material_leaves_its_ticks() {
        let workshop = ticked();
        let more = edited(&workshop, PieceEdit::Finish(None, SchemeEdit::Coats(1, 3)));
        let labelled = workshop
            .apply(Edit::AddMaterial("own-1".into(), "trim-enamel".into()))
            .unwrap();
        let exchange = PieceEdit::Exchange {
            from: "trim-enamel".into(),
            to: "own-1".into(),
        };
        for left in [more, edited(&labelled, exchange)] {
            assert_eq!(ticks(&left), ticks(&workshop));
        }
    }

    const RED: Colour = Colour([200, 0, 0]);

    fn apart(workshop: &Workshop, zone: &str, apart: bool) -> Workshop {
        let zone = zone.into();
        edited(workshop, PieceEdit::Apart { zone, apart })
    }

    fn red(workshop: &Workshop, zone: Option<&str>) -> Workshop {
        let colour = SchemeEdit::Colour(RED);
        edited(workshop, PieceEdit::Finish(zone.map(Into::into), colour))
    }

    /// Returns the colors of the paint lines of the first piece, by id.
    fn paints(workshop: &Workshop) -> Vec<(String, Option<[u8; 3]>)> {
        let takeoff = crate::takeoff(workshop, &workshop.pieces[0], &[]).unwrap();
        let lines = takeoff.materials.into_iter();
        let paints = lines.filter(|line| line.need.material.stage == coatings::Stage::Paint);
        paints.map(|line| (line.id, line.need.colour)).collect()
    }

    /// Returns the zone that is coated first and one that is coated later.
    fn zones(workshop: &Workshop) -> [String; 2] {
        let takeoff = crate::takeoff(workshop, &workshop.pieces[0], &[]).unwrap();
        let zones = &takeoff.job.zones;
        [zones[0].key.clone(), zones.last().unwrap().key.clone()]
    }

    #[test]
    fn another_color_has_none_of_its_coats() {
        let workshop = ticked();
        assert_eq!(ticks(&red(&workshop, None)), ["clean", "coat-primer-1"]);
    }

    /// The first zone gets its own color, so its paint becomes the first line and the old paint the second.
    #[test]
    fn ticks_move_with_their_paint() {
        let workshop = ticked();
        let [first, last] = zones(&workshop);
        let own = apart(&workshop, &first, true);
        assert_eq!(ticks(&own), ticks(&workshop));
        let two = red(&own, Some(&first));
        let old = workshop.pieces[0].scheme.colour.0;
        let of = |id: &str, colour| (id.to_owned(), Some(colour));
        assert_eq!(paints(&two), [of("paint", RED.0), of("paint-2", old)]);
        let moved = ["clean", "coat-primer-1", "coat-paint-2-1", "coat-paint-2-2"];
        assert_eq!(ticks(&two), moved);
        // The days stay with the ticks.
        let lines = two.pieces[0].books.lines("done").iter();
        assert!(lines.map(|line| line.text("day")).all(|day| day == "2026-05-03"));
        let together = apart(&two, &first, false);
        assert_eq!(ticks(&together), ticks(&workshop));
        // A zone that is coated later leaves the keys as they are.
        let later = red(&apart(&workshop, &last, true), Some(&last));
        assert_eq!(paints(&later), [of("paint", old), of("paint-2", RED.0)]);
        assert_eq!(ticks(&later), ticks(&workshop));
    }

    /// A zone or a surface that is no longer painted takes its paint off the list.
    #[test]
    fn ticks_follow_what_is_painted() {
        let [first, _] = zones(&ticked());
        let two = red(&apart(&ticked(), &first, true), Some(&first));
        let unpainted = |workshop: &Workshop, zone: &str| {
            let zone = zone.into();
            let painted = Some(false);
            edited(workshop, PieceEdit::ZonePainted { zone, painted })
        };
        assert_eq!(ticks(&unpainted(&two, &first)), ticks(&ticked()));
        let takeoff = crate::takeoff(&two, &two.pieces[0], &[]).unwrap();
        let faces = takeoff.surfaces.iter().filter(|line| line.zone == first);
        let faces: Vec<String> = faces.map(|line| line.surface.id.to_string()).collect();
        let brushed = edited(&two, PieceEdit::Brush(faces, BrushTo::Left));
        assert_eq!(ticks(&brushed), ticks(&ticked()));
        let nothing = takeoff
            .zones
            .iter()
            .fold(ticked(), |workshop, zone| unpainted(&workshop, &zone.key));
        assert_eq!(ticks(&nothing), ["clean"]);
    }

    #[test]
    fn an_exchanged_paint_has_none_of_its_coats() {
        let exchange = |to: &str| PieceEdit::Exchange {
            from: "trim-enamel".into(),
            to: to.into(),
        };
        let other = edited(&ticked(), exchange("alkyd-enamel"));
        assert_eq!(ticks(&other), ["clean", "coat-primer-1"]);
    }

    #[test]
    fn a_copied_finish_keeps_the_ticks_of_what_it_has() {
        let workshop = ticked();
        let copied = |change: &dyn Fn(&Workshop, PieceEdit) -> Workshop| {
            let [to, from] = [0, 1].map(|place: usize| workshop.pieces[place].id.clone());
            let like = workshop.apply(Edit::CopyFinish {
                from: to.clone(),
                to: from.clone(),
            });
            let changed = change(&like.unwrap(), PieceEdit::Finish(None, SchemeEdit::Colour(RED)));
            changed.apply(Edit::CopyFinish { from, to }).unwrap()
        };
        let same = copied(&|workshop, _| workshop.clone());
        assert_eq!(ticks(&same), ticks(&workshop));
        let other = copied(&|workshop, edit| {
            let piece = workshop.pieces[1].id.clone();
            workshop.apply(Edit::Piece(piece, edit)).unwrap()
        });
        assert_eq!(ticks(&other), ["clean", "coat-primer-1"]);
    }

    /// A tick whose line is gone must not come to mean another paint.
    #[test]
    fn a_key_that_means_nothing_is_no_coat_of_the_next_paint() {
        let day = crate::samples::values(&[("day", "2026-05-03")]);
        let tick = BookEdit::Add("done", "coat-paint-2-1".into(), day);
        let workshop = edited(&ticked(), PieceEdit::Book(tick));
        let [_, last] = zones(&workshop);
        let own = apart(&workshop, &last, true);
        assert_eq!(ticks(&own), ticks(&workshop));
        assert_eq!(ticks(&red(&own, Some(&last))), ticks(&ticked()));
    }

    /// The material that the label was copied from takes its place, in the order of the zones.
    #[test]
    fn a_deleted_label_leaves_its_ticks() {
        let apply = |workshop: &Workshop, edit| workshop.apply(edit).unwrap();
        let labelled = apply(&ticked(), Edit::AddMaterial("own-1".into(), "trim-enamel".into()));
        let [first, _] = zones(&labelled);
        let own = apart(&labelled, &first, true);
        let mut layers = own.pieces[0].scheme.layers.iter();
        let place = layers.position(|layer| &*layer.material == "trim-enamel");
        let edit = SchemeEdit::Material(place.unwrap(), "own-1".into());
        let two = edited(&own, PieceEdit::Finish(Some(first), edit));
        assert_eq!(ticks(&two)[2..], ["coat-paint-2-1", "coat-paint-2-2"]);
        let deleted = apply(&two, Edit::RemoveMaterial("own-1".into()));
        assert_eq!(ticks(&deleted), ticks(&ticked()));
    }

    /// Each key press is a measurement, so a size on its way to another must not clear anything.
    #[test]
    fn a_size_that_is_being_typed_clears_nothing() {
        let workshop = ticked();
        let size = |workshop: &Workshop, text: &str| {
            let reading = crate::Reading::new(text, units::LengthUnit::Inch).unwrap();
            edited(
                workshop,
                PieceEdit::Measure(geometry::fields::WIDTH.id(), Some(reading)),
            )
        };
        let typed = ["3", "36", "360", "36"];
        let typed = typed
            .iter()
            .fold(workshop.clone(), |workshop, text| size(&workshop, text));
        assert_eq!(ticks(&typed), ticks(&workshop));
    }
}
