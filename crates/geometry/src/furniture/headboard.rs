//! Headboards: two posts, two rails, and a panel or slats between them.

use super::Furniture;
use super::counts::SLATS;
use super::fields::{
    HEADBOARD_RAIL, HEIGHT, LEG_WIDTH, PANEL_FOOT, PANEL_THICKNESS, RAIL_THICKNESS, SLAT_WIDTH, WIDTH,
};
use super::layout::{Span, length_of};
use super::styles::HeadboardStyle;
use super::unit::block;
use crate::assembly::Assembly;
use crate::exposure::Setting;
use crate::part::{Part, PartId};
use crate::part_kind::PartKind;

/// The main coordinates of a headboard, meters.
pub(super) struct HeadboardLayout {
    pub(super) post: f64,
    pub(super) between: Span,
    /// The lower and the upper rail.
    pub(super) rails: [Span; 2],
}

impl HeadboardLayout {
    pub(super) fn of(furniture: &Furniture) -> Self {
        let metres = |field| furniture.length(field).as_metres();
        let (post, rail) = (metres(&LEG_WIDTH), metres(&HEADBOARD_RAIL));
        let (foot, height) = (metres(&PANEL_FOOT), metres(&HEIGHT));
        HeadboardLayout {
            post,
            between: [post, metres(&WIDTH) - post],
            rails: [[foot, foot + rail], [height - rail, height]],
        }
    }

    /// Between the rails.
    pub(super) fn field(&self) -> Span {
        [self.rails[0][1], self.rails[1][0]]
    }
}

/// Builds a headboard. The measurements must have passed the check.
pub(super) fn build(furniture: &Furniture) -> Assembly {
    let metres = |field| furniture.length(field).as_metres();
    let at = HeadboardLayout::of(furniture);
    let (wide, height) = (metres(&WIDTH), metres(&HEIGHT));
    let post = [0.0, at.post];
    let middle = |thick: f64| [(at.post - thick) / 2.0, (at.post + thick) / 2.0];
    let rail = middle(metres(&RAIL_THICKNESS));
    let mut parts = vec![
        block(PartId::nth(PartKind::Post, 1), post, post, [0.0, height]),
        block(
            PartId::nth(PartKind::Post, 2),
            [wide - at.post, wide],
            post,
            [0.0, height],
        ),
        block(
            PartId::only(PartKind::HeadboardTop),
            at.between,
            rail,
            at.rails[1],
        ),
        block(
            PartId::only(PartKind::HeadboardBottom),
            at.between,
            rail,
            at.rails[0],
        ),
    ];
    let thin = middle(metres(&PANEL_THICKNESS));
    match furniture.styles.headboard {
        HeadboardStyle::Panel => {
            parts.push(block(
                PartId::only(PartKind::HeadboardPanel),
                at.between,
                thin,
                at.field(),
            ));
        }
        HeadboardStyle::Slats => parts.extend(slats(furniture, &at, thin)),
    }
    Assembly::of_parts(parts, Setting::against_wall())
}

fn slats(furniture: &Furniture, at: &HeadboardLayout, y: Span) -> Vec<Part> {
    let count = furniture.count(&SLATS) as usize;
    let width = furniture.length(&SLAT_WIDTH).as_metres();
    let clear = clear_between_slats(furniture, at);
    (0..count)
        .map(|i| {
            let left = at.between[0] + clear * (i + 1) as f64 + width * i as f64;
            block(
                PartId::nth(PartKind::Slat, i + 1),
                [left, left + width],
                y,
                at.field(),
            )
        })
        .collect()
}

/// The clear space between two slats.
pub(super) fn clear_between_slats(furniture: &Furniture, at: &HeadboardLayout) -> f64 {
    let count = f64::from(furniture.count(&SLATS));
    let width = furniture.length(&SLAT_WIDTH).as_metres();
    (length_of(at.between) - count * width) / (count + 1.0)
}
