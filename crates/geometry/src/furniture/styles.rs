//! Styles: the choices of how a piece is made, with their labels.
//!
//! Every choice is defined here once; the page, the save file and the builders read this table.

use crate::profile::Shape;

/// One answer to a choice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StyleOption {
    /// Its word in saved files; it never changes.
    pub key: &'static str,
    /// What the trade calls it.
    pub label: &'static str,
}

/// A choice that says how a piece is made.
pub struct StyleField {
    /// Its name in saved files; it never changes.
    pub key: &'static str,
    /// What a maker calls it.
    pub label: &'static str,
    /// The answers.
    pub options: &'static [StyleOption],
    get: fn(&Styles) -> StyleOption,
    set: fn(&mut Styles, usize),
}

impl StyleField {
    /// The chosen answer.
    pub fn of(&self, styles: &Styles) -> StyleOption {
        (self.get)(styles)
    }

    /// Chooses an answer by its word; `false` if there is no such answer.
    pub fn choose(&self, styles: &mut Styles, key: &str) -> bool {
        let place = self.options.iter().position(|option| option.key == key);
        place.inspect(|&place| (self.set)(styles, place)).is_some()
    }
}

impl PartialEq for StyleField {
    fn eq(&self, other: &Self) -> bool {
        self.key == other.key
    }
}

impl std::fmt::Debug for StyleField {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.key)
    }
}

/// How an edge is shaped, or whether there is a molding.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Edge {
    /// Square, or no molding.
    #[default]
    Plain,
    /// Worked to a shape.
    Shaped(Shape),
    /// Of unknown shape: only the girth was measured, with a strip of paper pressed around it.
    Measured,
}

impl Edge {
    /// The shape, if it has a known one.
    pub fn shape(self) -> Option<Shape> {
        match self {
            Edge::Shaped(shape) => Some(shape),
            Edge::Plain | Edge::Measured => None,
        }
    }
}

/// Makes the type of a choice.
macro_rules! choice {
    ($(#[$doc:meta])* $name:ident { $($variant:ident $key:literal $label:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
        pub enum $name { $(#[doc = $label] $variant,)+ }

        impl $name {
            const ALL: &[$name] = &[$($name::$variant),+];
            const OPTIONS: &[StyleOption] = &[$(StyleOption { key: $key, label: $label }),+];

            fn option(self) -> StyleOption {
                match self { $($name::$variant => StyleOption { key: $key, label: $label },)+ }
            }
        }
    };
}

choice! {
    /// How drawer fronts and doors sit on the carcass.
    FrontStyle {
        Overlay "overlay" "Overlay",
        Inset "inset" "Inset",
        Lipped "lipped" "Lipped",
    }
}
choice! {
    /// Whether a frame of stiles and rails stands before the carcass boards.
    FaceFrame {
        None "none" "None",
        Frame "frame" "Frame",
    }
}
choice! {
    /// How the back panel is fixed.
    BackStyle {
        Recessed "recessed" "Recessed",
        Flush "flush" "Flush",
        None "none" "No back",
    }
}
choice! {
    /// What the piece stands on.
    BaseStyle {
        Floor "floor" "On the floor",
        Plinth "plinth" "Plinth base",
        CutOutPlinth "cut-out-plinth" "Plinth with cutout",
        BracketFeet "bracket-feet" "Bracket feet",
        Legs "legs" "Square legs",
        TaperedLegs "tapered-legs" "Tapered legs",
        TurnedLegs "turned-legs" "Turned legs",
        BunFeet "bun-feet" "Bun feet",
        SplayedLegs "splayed-legs" "Splayed legs",
    }
}
choice! {
    /// On which sides a leg is tapered.
    Taper {
        Four "four" "Four sides",
        Two "two" "Two sides",
    }
}
choice! {
    /// What a door is made of.
    DoorStyle {
        Slab "slab" "Slab",
        FlatPanel "flat-panel" "Flat panel",
        RaisedPanel "raised-panel" "Raised panel",
        Glazed "glazed" "Glazed",
    }
}
choice! {
    /// Half columns on the stiles of a face frame.
    CornerColumns {
        None "none" "None",
        Plain "plain" "Half round",
        Fluted "fluted" "Fluted",
    }
}
choice! {
    /// Whether the boxes of the drawers count.
    DrawerBoxes {
        Hidden "hidden" "Not counted",
        Shown "shown" "Counted",
    }
}
choice! {
    /// The legs of a table.
    LegStyle {
        Tapered "tapered" "Tapered",
        Square "square" "Square",
        Turned "turned" "Turned",
        Splayed "splayed" "Splayed",
    }
}
choice! {
    /// The lower edge of an apron.
    ApronStyle {
        Straight "straight" "Straight",
        Arched "arched" "Arched",
    }
}
choice! {
    /// How the legs of a table are joined below.
    Stretchers {
        None "none" "None",
        Box "box" "All around",
        H "h" "H-shaped",
    }
}
choice! {
    /// Whether a table has a shelf below.
    LowerShelf {
        None "none" "None",
        Shelf "shelf" "Shelf",
    }
}
choice! {
    /// What fills a headboard.
    HeadboardStyle {
        Panel "panel" "Panel",
        Slats "slats" "Slats",
    }
}
choice! {
    /// What the tape went over for the width and the depth.
    TapeOver {
        Case "case" "Case only",
        Top "top" "Overall, including the top",
    }
}
choice! {
    /// Where the piece stands, and so whether its back is seen.
    Stand {
        Wall "wall" "Against a wall",
        Free "free" "Free-standing",
    }
}

/// How a piece is made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Styles {
    /// How fronts sit.
    pub fronts: FrontStyle,
    /// The edges of drawer fronts and slab doors.
    pub front_edge: Edge,
    /// Whether there is a face frame.
    pub face_frame: FaceFrame,
    /// How the back is fixed.
    pub back: BackStyle,
    /// What it stands on.
    pub base: BaseStyle,
    /// On which sides tapered legs are tapered.
    pub taper: Taper,
    /// The edge of the top.
    pub top_edge: Edge,
    /// The molding under the top.
    pub crown: Edge,
    /// What doors are made of.
    pub doors: DoorStyle,
    /// The molding between frame and panel of a door.
    pub sticking: Edge,
    /// The molding on fronts.
    pub applied: Edge,
    /// Half columns at the corners.
    pub corner_columns: CornerColumns,
    /// Whether drawer boxes count.
    pub drawer_boxes: DrawerBoxes,
    /// The legs of a table.
    pub legs: LegStyle,
    /// The lower edge of aprons.
    pub apron: ApronStyle,
    /// The stretchers of a table.
    pub stretchers: Stretchers,
    /// The shelf below a table.
    pub lower_shelf: LowerShelf,
    /// What fills a headboard.
    pub headboard: HeadboardStyle,
    /// The inner edge of a frame.
    pub frame_profile: Edge,
    /// What the tape went over for the width and the depth.
    pub tape_over: TapeOver,
    /// Where it stands.
    pub stand: Stand,
}

impl Styles {
    /// How most pieces are made.
    pub const USUAL: Styles = Styles {
        fronts: FrontStyle::Overlay,
        front_edge: Edge::Plain,
        face_frame: FaceFrame::None,
        back: BackStyle::Recessed,
        base: BaseStyle::Plinth,
        taper: Taper::Four,
        top_edge: Edge::Plain,
        crown: Edge::Plain,
        doors: DoorStyle::Slab,
        sticking: Edge::Plain,
        applied: Edge::Plain,
        corner_columns: CornerColumns::None,
        drawer_boxes: DrawerBoxes::Hidden,
        legs: LegStyle::Tapered,
        apron: ApronStyle::Straight,
        stretchers: Stretchers::None,
        lower_shelf: LowerShelf::None,
        headboard: HeadboardStyle::Panel,
        frame_profile: Edge::Shaped(Shape::Ogee),
        tape_over: TapeOver::Case,
        stand: Stand::Wall,
    };
}

impl Default for Styles {
    fn default() -> Self {
        Styles::USUAL
    }
}

/// A choice among the variants of a type.
macro_rules! style_field {
    ($(#[$doc:meta])* $name:ident $key:literal $label:literal $field:ident $type:ident) => {
        $(#[$doc])*
        pub const $name: StyleField = StyleField {
            key: $key,
            label: $label,
            options: $type::OPTIONS,
            get: |styles| styles.$field.option(),
            set: |styles, place| {
                if let Some(option) = $type::ALL.get(place) {
                    styles.$field = *option;
                }
            },
        };
    };
}

/// A choice among edges: plain, some of the shapes and, if wanted, a measured girth.
macro_rules! edge_field {
    ($(#[$doc:meta])* $name:ident $key:literal $label:literal $field:ident $plain:literal $plain_label:literal
        [$($edge:ident)*] $measured:expr) => {
        $(#[$doc])*
        pub const $name: StyleField = {
            const CHOICES: &[Edge] = {
                const SHAPED: &[Edge] = &[Edge::Plain, $(Edge::Shaped(Shape::$edge),)* Edge::Measured];
                if $measured { SHAPED } else { SHAPED.split_at(SHAPED.len() - 1).0 }
            };
            const PLAIN: StyleOption = StyleOption { key: $plain, label: $plain_label };
            const OPTIONS: &[StyleOption] = {
                const ALL: &[StyleOption] = &[
                    PLAIN,
                    $(StyleOption { key: Shape::$edge.key(), label: Shape::$edge.label() },)*
                    StyleOption { key: "measured", label: "Measured girth" },
                ];
                if $measured { ALL } else { ALL.split_at(ALL.len() - 1).0 }
            };
            StyleField {
                key: $key,
                label: $label,
                options: OPTIONS,
                get: |styles| {
                    let mut answers = CHOICES.iter().zip(OPTIONS);
                    let answer = answers.find(|(edge, _)| **edge == styles.$field);
                    answer.map_or(PLAIN, |(_, option)| *option)
                },
                set: |styles, place| {
                    if let Some(edge) = CHOICES.get(place) {
                        styles.$field = *edge;
                    }
                },
            }
        };
    };
}

style_field! {
    /// How fronts sit.
    FRONTS "fronts" "Fronts" fronts FrontStyle
}
edge_field! {
    /// The edges of drawer fronts and slab doors.
    FRONT_EDGE "front-edge" "Front edges" front_edge "square" "Square"
    [Chamfer Roundover Cove Ovolo Ogee ReversedOgee Step BeadAndCove] false
}
style_field! {
    /// Whether there is a face frame.
    FACE_FRAME "face-frame" "Face frame" face_frame FaceFrame
}
style_field! {
    /// How the back is fixed.
    BACK "back" "Back" back BackStyle
}
style_field! {
    /// What the piece stands on.
    BASE "base" "Base" base BaseStyle
}
style_field! {
    /// On which sides legs are tapered.
    TAPER "taper" "Taper" taper Taper
}
edge_field! {
    /// The edge of the top.
    TOP_EDGE "top-edge" "Top edge" top_edge "square" "Square"
    [Chamfer Roundover Cove Ovolo Ogee ReversedOgee Step BeadAndCove HalfRound] true
}
edge_field! {
    /// The molding under the top.
    CROWN "crown" "Crown molding" crown "none" "None"
    [Chamfer Roundover Cove Ovolo Ogee ReversedOgee Step] false
}
style_field! {
    /// What doors are made of.
    DOORS "doors" "Doors" doors DoorStyle
}
edge_field! {
    /// The molding between frame and panel of a door; a step would enclose nothing there.
    STICKING "sticking" "Sticking" sticking "square" "Square"
    [Chamfer Roundover Cove Ovolo Ogee ReversedOgee BeadAndCove] false
}
edge_field! {
    /// The molding on fronts; a step would be a plain strip.
    APPLIED "applied" "Molding on fronts" applied "none" "None"
    [Chamfer Roundover Cove Ovolo Ogee ReversedOgee BeadAndCove HalfRound] false
}
style_field! {
    /// Half columns at the corners.
    CORNER_COLUMNS "corner-columns" "Corner columns" corner_columns CornerColumns
}
style_field! {
    /// Whether drawer boxes count.
    DRAWER_BOXES "drawer-boxes" "Drawer boxes" drawer_boxes DrawerBoxes
}
style_field! {
    /// The legs of a table.
    LEGS "legs" "Legs" legs LegStyle
}
style_field! {
    /// The lower edge of aprons.
    APRON "apron" "Aprons" apron ApronStyle
}
style_field! {
    /// The stretchers of a table.
    STRETCHERS "stretchers" "Stretchers" stretchers Stretchers
}
style_field! {
    /// The shelf below a table.
    LOWER_SHELF "lower-shelf" "Lower shelf" lower_shelf LowerShelf
}
style_field! {
    /// What fills a headboard.
    HEADBOARD "headboard" "Headboard" headboard HeadboardStyle
}
edge_field! {
    /// The inner edge of a frame.
    FRAME_PROFILE "frame-profile" "Inner edge" frame_profile "square" "Square"
    [Chamfer Roundover Cove Ovolo Ogee ReversedOgee Step BeadAndCove] false
}

style_field! {
    /// What the tape went over for the width and the depth.
    TAPE_OVER "tape-over" "Width and depth" tape_over TapeOver
}

style_field! {
    /// Where the piece stands.
    STAND "stand" "Stands" stand Stand
}

/// The choices that do not change how a piece is made: how it was measured, and where it stands.
pub const BESIDE: [&StyleField; 2] = [&TAPE_OVER, &STAND];

/// Every choice of how a piece is made. Those of [`BESIDE`] are not among them.
pub const ALL: [&StyleField; 19] = [
    &FRONTS,
    &FRONT_EDGE,
    &FACE_FRAME,
    &BACK,
    &BASE,
    &TAPER,
    &TOP_EDGE,
    &CROWN,
    &DOORS,
    &STICKING,
    &APPLIED,
    &CORNER_COLUMNS,
    &DRAWER_BOXES,
    &LEGS,
    &APRON,
    &STRETCHERS,
    &LOWER_SHELF,
    &HEADBOARD,
    &FRAME_PROFILE,
];

/// The choice with this name in saved files.
pub fn by_key(key: &str) -> Option<&'static StyleField> {
    ALL.into_iter().chain(BESIDE).find(|field| field.key == key)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_answer_of_every_choice_is_taken_and_given_back() {
        for field in ALL.into_iter().chain(BESIDE) {
            assert_eq!(by_key(field.key), Some(field));
            let mut styles = Styles::default();
            for option in field.options {
                assert!(field.choose(&mut styles, option.key));
                assert_eq!(field.of(&styles), *option, "{}", field.key);
            }
            assert!(!field.choose(&mut styles, "no such answer"));
        }
    }
}
