//! Records of format 2 from the document.

use std::collections::BTreeMap;

use coatings::Stage;
use geometry::styles;

use super::{
    BayRecord, ChangeKindRecord, ChangeRecord, MemberRecord, PieceRecord, PointRecord, Readable,
    ReadingRecord, Readings, RowRecord, SchemeRecord, SurfaceRecord, WorkshopRecord, ZoneRecord,
};
use crate::document::{Bay, ChangeKind, Piece, PieceChange, Reading, Row, Scheme, StageCoats, Workshop};
use crate::format::v1::StageRecord;
use crate::format::words::Word;
use crate::format::{KIND, VERSION, map_of};

impl<P> WorkshopRecord<P> {
    /// What is saved of this workshop, with its pieces as `piece` gives them.
    pub fn of(workshop: &Workshop, piece: impl Fn(&Piece) -> P) -> Self {
        WorkshopRecord {
            kind: KIND.into(),
            version: VERSION,
            title: workshop.title.clone(),
            note: workshop.note.clone(),
            units: workshop.units.word().into(),
            pieces: workshop.pieces.iter().map(|p| piece(p)).collect(),
            beyond: workshop.beyond.clone(),
        }
    }
}

impl PieceRecord {
    /// What is saved of this piece.
    pub fn of(piece: &Piece) -> Self {
        let readings = piece.readings.iter();
        let counts = piece.counts.iter();
        let zones = piece.zones.iter().map(|(key, zone)| {
            let name = zone.name.clone();
            let painted = zone.painted;
            (key.clone(), ZoneRecord { name, painted })
        });
        let surfaces = piece.choices.iter().map(|(name, choice)| {
            let zone = choice.zone.clone();
            let painted = choice.painted;
            (name.clone(), SurfaceRecord { zone, painted })
        });
        PieceRecord {
            id: piece.id.0.as_ref().into(),
            name: piece.name.clone(),
            count: u64::from(piece.count),
            furniture: piece.kind.key().into(),
            readings: map_of(readings.map(|(key, reading)| ((*key).into(), reading.into()))),
            styles: styles_of(piece),
            counts: map_of(counts.map(|(field, count)| (field.key.into(), u64::from(count)))),
            bays: Some(piece.bays.iter().map(Into::into).collect()),
            upper: piece.upper.iter().map(Into::into).collect(),
            changes: piece
                .changes
                .iter()
                .map(|change| Readable::Yes(change.into()))
                .collect(),
            zones: map_of(zones),
            surfaces: map_of(surfaces),
            scheme: (&piece.scheme).into(),
            beyond: piece.beyond.clone(),
        }
    }
}

/// The choices that matter for the piece, and those that would not come back by themselves.
fn styles_of(piece: &Piece) -> BTreeMap<String, String> {
    let matter = piece.furniture().style_fields();
    let usual = piece.kind.usual_styles();
    let written = styles::ALL
        .into_iter()
        .filter(|field| matter.contains(field) || field.of(&piece.styles) != field.of(&usual));
    map_of(written.map(|field| (field.key.into(), field.of(&piece.styles).key.into())))
}

impl From<&Reading> for ReadingRecord {
    fn from(reading: &Reading) -> Self {
        ReadingRecord {
            typed: reading.typed().into(),
            unit: reading.unit().word().into(),
        }
    }
}

impl From<&Bay> for BayRecord {
    fn from(bay: &Bay) -> Self {
        BayRecord {
            width: bay.width.as_ref().map(Into::into),
            rows: bay.rows.iter().map(Into::into).collect(),
        }
    }
}

impl From<&Row> for RowRecord {
    fn from(row: &Row) -> Self {
        RowRecord {
            fill: Some(row.fill.word().into()),
            columns: row.columns as u64,
            shelves: row.shelves as u64,
            height: row.height.as_ref().map(Into::into),
        }
    }
}

impl From<&PieceChange> for ChangeRecord {
    fn from(change: &PieceChange) -> Self {
        ChangeRecord {
            kind: kind_of(change),
            readings: readings_of(change, 0),
        }
    }
}

/// What was measured of a change, a member or a point.
fn readings_of(change: &PieceChange, item: usize) -> Readings {
    let of_item = change.readings.iter().filter(|((i, _), _)| *i == item);
    map_of(of_item.map(|((_, key), reading)| ((*key).into(), reading.into())))
}

fn kind_of(change: &PieceChange) -> ChangeKindRecord {
    match &change.kind {
        ChangeKind::Remove { part } => ChangeKindRecord::Remove { part: part.clone() },
        ChangeKind::Resize { part, along } => ChangeKindRecord::Resize {
            part: part.clone(),
            along: along.word().into(),
        },
        ChangeKind::Move { part, towards } => ChangeKindRecord::Move {
            part: part.clone(),
            towards: towards.word().into(),
        },
        ChangeKind::Repeat { part, times, towards } => ChangeKindRecord::Repeat {
            part: part.clone(),
            times: *times as u64,
            towards: towards.word().into(),
        },
        ChangeKind::Hole { surface } => ChangeKindRecord::Hole {
            surface: surface.clone(),
        },
        ChangeKind::Add {
            number,
            shape,
            placed,
            flutes,
            members,
            points,
        } => ChangeKindRecord::Add {
            number: *number as u64,
            shape: shape.key().into(),
            placed: *placed,
            flutes: u64::from(*flutes),
            members: (1..)
                .zip(members)
                .map(|(item, shape)| MemberRecord {
                    shape: shape.key().into(),
                    readings: readings_of(change, item),
                })
                .collect(),
            points: (1..=*points)
                .map(|item| PointRecord {
                    readings: readings_of(change, item),
                })
                .collect(),
        },
    }
}

impl From<&Scheme> for SchemeRecord {
    fn from(scheme: &Scheme) -> Self {
        let stage = |stage| Some(scheme.of(stage).into());
        SchemeRecord {
            colour: Some(scheme.colour.write()),
            ground: Some(scheme.ground.word().into()),
            basis: Some(scheme.basis.word().into()),
            primer: stage(Stage::Primer),
            paint: stage(Stage::Paint),
            topcoat: stage(Stage::Topcoat),
        }
    }
}

impl From<&StageCoats> for StageRecord {
    fn from(stage: &StageCoats) -> Self {
        StageRecord {
            material: stage.material.into(),
            coats: u64::from(stage.coats),
            tool: stage.tool.into(),
            can: stage.can.into(),
        }
    }
}
