//! What a part can be: its key in saved files, what a maker calls it, and the zone it belongs to.

use crate::zone::Zone;

/// Defines the kinds in one table: name, key, label, zone. In a label `{row}` and `{column}` are the numbers of the
/// part, and the other words in braces the place that its number means.
macro_rules! part_kinds {
    ($($name:ident $key:literal $label:literal $zone:ident;)*) => {
        /// What a part of the piece is.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum PartKind {
            $(#[doc = $label] $name,)*
        }

        impl PartKind {
            /// Every kind.
            pub const ALL: &[PartKind] = &[$(PartKind::$name),*];

            /// Its name in saved files; it never changes.
            pub fn key(self) -> &'static str {
                match self { $(PartKind::$name => $key,)* }
            }

            /// The zone that its surfaces usually belong to.
            pub fn zone(self) -> Zone {
                match self { $(PartKind::$name => Zone::$zone,)* }
            }

            fn label(self) -> &'static str {
                match self { $(PartKind::$name => $label,)* }
            }
        }
    };
}

part_kinds! {
    Top "top" "Top" Top;
    Lid "lid" "Lid" Top;
    LeftSide "left-side" "Left side" Body;
    RightSide "right-side" "Right side" Body;
    Bottom "bottom" "Bottom board" Body;
    Back "back" "Back panel" Body;
    Front "front" "Front board" Body;
    BackBoard "back-board" "Back board" Body;
    TopRail "top-rail" "Top rail, {front or back}" Body;
    Rail "rail" "Board under row {row}" Body;
    Divider "divider" "Divider {column}, row {row}" Body;
    Partition "partition" "Partition right of column {row}" Body;
    Shelf "shelf" "Shelf {column}, row {row}" Body;
    FrameStile "frame-stile" "Frame, {left or right} stile" Body;
    FrameMidStile "frame-mid-stile" "Frame, stile right of column {row}" Body;
    FrameTop "frame-top" "Frame, top rail" Body;
    FrameBottom "frame-bottom" "Frame, bottom rail" Body;
    FrameRail "frame-rail" "Frame, rail under row {row}" Body;
    FrameDivider "frame-divider" "Frame, stile {column}, row {row}" Body;
    Column "column" "Corner column, {left or right}" Body;
    Crown "crown" "Crown, {run}" Body;
    Modesty "modesty" "Modesty panel" Body;
    DrawerFront "drawer-front" "Drawer {row}.{column}" Fronts;
    Tongue "tongue" "Drawer {row}.{column}, behind the lip" Fronts;
    Door "door" "Door {row}.{column}" Fronts;
    DoorTongue "door-tongue" "Door {row}.{column}, behind the lip" Fronts;
    DoorStileLeft "door-stile-left" "Door {row}.{column}, left stile" Fronts;
    DoorStileRight "door-stile-right" "Door {row}.{column}, right stile" Fronts;
    DoorRailTop "door-rail-top" "Door {row}.{column}, top rail" Fronts;
    DoorRailBottom "door-rail-bottom" "Door {row}.{column}, bottom rail" Fronts;
    DoorPanel "door-panel" "Door {row}.{column}, panel" Fronts;
    DoorGlass "door-glass" "Door {row}.{column}, glass" Fronts;
    StickingLeft "sticking-left" "Door {row}.{column}, left sticking" Fronts;
    StickingRight "sticking-right" "Door {row}.{column}, right sticking" Fronts;
    StickingTop "sticking-top" "Door {row}.{column}, top sticking" Fronts;
    StickingBottom "sticking-bottom" "Door {row}.{column}, bottom sticking" Fronts;
    AppliedLeft "applied-left" "Molding on {row}.{column}, left" Fronts;
    AppliedRight "applied-right" "Molding on {row}.{column}, right" Fronts;
    AppliedTop "applied-top" "Molding on {row}.{column}, top" Fronts;
    AppliedBottom "applied-bottom" "Molding on {row}.{column}, bottom" Fronts;
    BoxLeft "box-left" "Drawer box {row}.{column}, left" Inside;
    BoxRight "box-right" "Drawer box {row}.{column}, right" Inside;
    BoxBack "box-back" "Drawer box {row}.{column}, back" Inside;
    BoxBottom "box-bottom" "Drawer box {row}.{column}, bottom" Inside;
    PlinthFront "plinth-front" "Plinth front" Base;
    PlinthSide "plinth-side" "Plinth, {left or right} side" Base;
    PlinthBack "plinth-back" "Plinth back" Base;
    FootFront "foot-front" "Bracket foot, front {left or right}" Base;
    FootSide "foot-side" "Bracket foot, side, {corner}" Base;
    Leg "leg" "Leg, {corner}" Base;
    LegHead "leg-head" "Leg block, {corner}" Base;
    ApronFront "apron-front" "Apron, front" Base;
    ApronBack "apron-back" "Apron, back" Base;
    ApronLeft "apron-left" "Apron, left" Base;
    ApronRight "apron-right" "Apron, right" Base;
    StretcherFront "stretcher-front" "Stretcher, front" Base;
    StretcherBack "stretcher-back" "Stretcher, back" Base;
    StretcherLeft "stretcher-left" "Stretcher, left" Base;
    StretcherRight "stretcher-right" "Stretcher, right" Base;
    StretcherMiddle "stretcher-middle" "Stretcher, middle" Base;
    LowerShelf "lower-shelf" "Lower shelf" Base;
    Post "post" "Post, {left or right}" Body;
    HeadboardTop "headboard-top" "Top rail" Body;
    HeadboardBottom "headboard-bottom" "Bottom rail" Body;
    HeadboardPanel "headboard-panel" "Panel" Body;
    Slat "slat" "Slat {row}" Body;
    MemberLeft "member-left" "Frame member, left" Body;
    MemberRight "member-right" "Frame member, right" Body;
    MemberTop "member-top" "Frame member, top" Body;
    MemberBottom "member-bottom" "Frame member, bottom" Body;
    Board "board" "Board {row}" Body;
    Added "added" "Added part {row}" Body;
    Hole "hole" "Hole {row}" Body;
}

impl PartKind {
    /// Whether it can be finished at all; glass cannot.
    pub fn takes_finish(self) -> bool {
        self != PartKind::DoorGlass
    }

    /// Whether it is a board of a case. Whatever such a board turns toward the floor is the underside of the case.
    pub(crate) fn is_carcass(self) -> bool {
        matches!(
            self,
            PartKind::LeftSide
                | PartKind::RightSide
                | PartKind::Bottom
                | PartKind::Back
                | PartKind::Front
                | PartKind::BackBoard
                | PartKind::TopRail
                | PartKind::Rail
                | PartKind::Divider
                | PartKind::Partition
                | PartKind::Shelf
                | PartKind::FrameStile
                | PartKind::FrameMidStile
                | PartKind::FrameTop
                | PartKind::FrameBottom
                | PartKind::FrameRail
                | PartKind::FrameDivider
        )
    }

    /// Writes what a maker calls the part with these numbers.
    pub(crate) fn write_label(self, row: u16, column: u16, into: &mut String) {
        let mut rest = self.label();
        while let Some((before, after)) = rest.split_once('{') {
            into.push_str(before);
            let (word, after) = after.split_once('}').unwrap_or((after, ""));
            match word {
                "row" => into.push_str(&row.to_string()),
                "column" => into.push_str(&column.to_string()),
                "left or right" => into.push_str(if row == 1 { "left" } else { "right" }),
                "front or back" => into.push_str(if row == 1 { "front" } else { "back" }),
                "run" => into.push_str(match row {
                    ..=1 => "left",
                    2 => "front",
                    3.. => "right",
                }),
                _ => into.push_str(match row {
                    ..=1 => "front left",
                    2 => "front right",
                    3 => "back left",
                    4.. => "back right",
                }),
            }
            rest = after;
        }
        into.push_str(rest);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::part::PartId;

    #[test]
    fn every_kind_has_its_own_key() {
        let mut keys: Vec<_> = PartKind::ALL.iter().map(|kind| kind.key()).collect();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), PartKind::ALL.len());
    }

    #[test]
    fn labels_are_filled_in() {
        assert_eq!(PartId::nth(PartKind::Leg, 3).label(), "Leg, back left");
        assert_eq!(PartId::nth(PartKind::PlinthSide, 2).label(), "Plinth, right side");
        let front = PartId::in_row(PartKind::DrawerFront, 2, 1)
            .in_bay(3)
            .in_upper(true);
        assert_eq!(front.label(), "Upper case: Column 3: Drawer 2.1");
        assert_eq!(front.repeated(2).to_string(), "upper-b3-drawer-front-2-1~2");
        for kind in PartKind::ALL {
            assert!(!PartId::nth(*kind, 1).label().contains(['{', '}']), "{kind:?}");
        }
    }
}
