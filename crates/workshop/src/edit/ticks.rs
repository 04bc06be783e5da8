//! Checked-off coats belong to the material. A replaced material has none of its coats yet.

use std::rc::Rc;

use coatings::Stage;

use crate::document::{OwnMaterial, Piece, generic, material_of};

/// Returns what is applied in coats, in the order of the schemes, by stage and by the built-in material it
/// was copied from. Entering the label of the same paint therefore keeps its coats checked off.
pub(super) fn coated_with(piece: &Piece, own: &[Rc<OwnMaterial>]) -> Vec<(Stage, String)> {
    let layers = piece.schemes().flat_map(|scheme| &scheme.layers);
    let mut all: Vec<(Stage, String)> = Vec::new();
    for layer in layers.filter(|layer| layer.coats > 0) {
        let stage = material_of(own, &layer.material).map(|material| material.stage);
        let Some(stage) = stage.filter(|stage| *stage != Stage::Clean) else {
            continue;
        };
        let of = (stage, generic(own, &layer.material).to_owned());
        if !all.contains(&of) {
            all.push(of);
        }
    }
    all
}

impl Piece {
    /// Clears the checked-off coats of each stage whose material was replaced.
    pub(super) fn strike_ticks(&mut self, before: &[(Stage, String)], own: &[Rc<OwnMaterial>]) {
        let now = coated_with(self, own);
        let mut stages: Vec<Stage> = Vec::new();
        for (stage, _) in before {
            let of = |all: &[(Stage, String)]| -> Vec<String> {
                let all = all.iter().filter(|(of, _)| of == stage);
                all.map(|(_, material)| material.clone()).collect()
            };
            if !of(&now).starts_with(&of(before)) && !stages.contains(stage) {
                stages.push(*stage);
            }
        }
        for stage in stages {
            let begins = format!("coat-{}-", stage.key());
            self.books.strike_all("done", |id| id.starts_with(&begins));
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::{BookEdit, Edit, PieceEdit, SchemeEdit, Workshop, invented_workshop};

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
}
