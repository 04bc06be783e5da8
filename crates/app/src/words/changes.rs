//! The names of a maker's own changes.

use geometry::{AddedShape, Along, Problem, Towards};
use units::SortedMap;
use workshop::{ChangeKind, Piece, Takeoff};

/// The labels of parts and surfaces, by name. Parts that a change removed are included.
pub struct Names(SortedMap<String, String>);

impl Names {
    /// Returns the labels for a piece, both before any change and now.
    pub fn of(piece: &Piece, takeoff: Option<&Takeoff>) -> Self {
        let mut names = SortedMap::new();
        let mut furniture = piece.furniture();
        furniture.changes.clear();
        for part in furniture
            .assembly()
            .into_iter()
            .flat_map(|assembly| assembly.parts)
        {
            names.insert(part.id.to_string(), part.id.label());
        }
        for line in takeoff.into_iter().flat_map(|takeoff| &takeoff.surfaces) {
            let (id, part) = (line.surface.id, line.surface.id.part);
            let label = format!("{}, {}", part.label(), line.surface.side_label());
            names.insert(id.to_string(), label);
            names.insert(part.to_string(), part.label());
        }
        Names(names)
    }

    /// Returns the label. If the part no longer exists, the label is made from its name in saved files.
    pub fn label(&self, name: &str) -> String {
        let plain = || name.replace(['-', '/', '~'], " ");
        self.0.get(name).cloned().unwrap_or_else(plain)
    }
}

/// Returns the title of a change.
pub fn change_title(kind: &ChangeKind, names: &Names) -> String {
    match kind {
        ChangeKind::Remove { part } => format!("{}: removed", names.label(part)),
        ChangeKind::Resize { part, along } => format!("{}: new {}", names.label(part), size(*along)),
        ChangeKind::Move { part, .. } => format!("{}: moved", names.label(part)),
        ChangeKind::Repeat { part, .. } => format!("{}: repeated", names.label(part)),
        ChangeKind::Hole { surface } => format!("{}: hole", names.label(surface)),
        ChangeKind::Add { number, shape, .. } => format!("Added part {number}: {}", added(*shape)),
    }
}

fn added(shape: AddedShape) -> String {
    shape.label().to_ascii_lowercase()
}

fn size(along: Along) -> &'static str {
    match along {
        Along::Width => "width",
        Along::Depth => "depth",
        Along::Height => "height",
    }
}

/// Returns the directions, each with its element suffix and its label.
pub fn towards() -> [(Towards, &'static str, &'static str); 6] {
    [
        (Towards::Left, "left", "To the left"),
        (Towards::Right, "right", "To the right"),
        (Towards::Front, "front", "To the front"),
        (Towards::Back, "back", "To the back"),
        (Towards::Up, "up", "Up"),
        (Towards::Down, "down", "Down"),
    ]
}

/// Returns the index of the change that a problem is about, if it concerns the change as a whole.
pub fn change_of(problem: &Problem) -> Option<usize> {
    match problem {
        Problem::NoSuchPart { change, .. }
        | Problem::NotABoard { change, .. }
        | Problem::TurningOutOfOrder { change } => Some(*change),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::Kind;
    use workshop::{PieceChange, PieceId, Workshop, takeoff};

    #[test]
    fn a_part_that_was_left_out_keeps_its_name() {
        let mut piece = Piece::new(PieceId("a".into()), Kind::Nightstand);
        let left_out = ChangeKind::Remove {
            part: "drawer-front-1-1".into(),
        };
        piece.changes.push(PieceChange::new(left_out.clone()));
        let names = Names::of(&piece, takeoff(&Workshop::default(), &piece, &[]).ok().as_ref());
        assert_eq!(change_title(&left_out, &names), "Drawer 1.1: removed");
        assert_eq!(names.label("top/front"), "Top, front edge");
        assert_eq!(names.label("shelf-9-1~2"), "shelf 9 1 2");
    }
}
