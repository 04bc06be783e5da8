//! Writing a document as records of format 3.

use std::rc::Rc;

use geometry::styles;

use super::{
    BayRecord, BookRecords, ChangeRecord, EditionNumber, LayerRecord, LineRecord, MaterialRecord,
    MemberRecord, PieceRecord, PointRecord, ReadingRecord, Readings, RowRecord, SchemeRecord, SurfaceRecord,
    WorkshopRecord, ZoneRecord,
};
use crate::book::Books;
use crate::document::{
    Bay, ChangeKind, LabelReading, LayerPlan, OwnMaterial, Piece, PieceChange, Price, Reading, Row, Scheme,
    Workshop,
};
use crate::edit::Sign;
use crate::format::record::{Named, Readable};
use crate::format::words::Word;
use crate::format::{KIND, VERSION};

impl<P> WorkshopRecord<P> {
    /// Returns the record of a workshop. `piece` converts its pieces.
    pub fn of(workshop: &Workshop, piece: impl Fn(&Rc<Piece>) -> P) -> Self {
        let settings = &workshop.settings;
        WorkshopRecord {
            kind: KIND.into(),
            version: VERSION,
            title: workshop.title.clone(),
            note: workshop.note.clone(),
            units: workshop.units.word().into(),
            confidence: Some(Readable(Some(u64::from(settings.confidence.percent())))),
            inches: Some(Readable(Some(settings.inches.word().into()))),
            currency: settings
                .currency
                .map(|currency| Readable(Some(currency.code().into()))),
            finish: settings
                .finish
                .as_ref()
                .map(|finish| Readable(Some(finish.into()))),
            materials: workshop
                .materials
                .iter()
                .map(|own| Readable(Some(own.as_ref().into())))
                .collect(),
            books: (&workshop.books).into(),
            pieces: workshop.pieces.iter().map(piece).collect(),
            beyond: workshop.beyond.clone(),
        }
    }
}

impl PieceRecord {
    /// Returns the record of a piece.
    pub fn of(piece: &Piece) -> Self {
        let readings = piece.readings.iter();
        let counts = piece.counts.iter();
        let zones = piece.zones.iter().map(|(key, zone)| {
            let name = zone.name.clone();
            let painted = zone.painted;
            let scheme = zone.scheme.as_ref().map(Into::into);
            (
                key.clone(),
                ZoneRecord {
                    name,
                    painted,
                    scheme,
                },
            )
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
            ids: piece.last_id.0,
            edition: EditionNumber(piece.edition),
            shown: Some(Readable(Some(piece.shown))),
            readings: readings
                .map(|(key, reading)| ((*key).into(), reading.into()))
                .collect(),
            styles: styles_of(piece),
            counts: counts
                .map(|(field, count)| (field.key.into(), u64::from(count)))
                .collect(),
            bays: Some(piece.bays.iter().map(Into::into).collect()),
            upper: piece.upper.iter().map(Into::into).collect(),
            changes: piece
                .changes
                .iter()
                .map(|change| Readable(Some(change.into())))
                .collect(),
            zones: zones.collect(),
            surfaces: surfaces.collect(),
            scheme: (&piece.scheme).into(),
            books: (&piece.books).into(),
            beyond: piece.beyond.clone(),
        }
    }
}

/// Returns the choices that apply to the piece, and the others that differ from their defaults.
fn styles_of(piece: &Piece) -> Named<String> {
    let matter = piece.furniture().style_fields();
    let usual = piece.edition.styles(piece.kind);
    let all = styles::ALL.into_iter().chain(styles::BESIDE);
    let written = all
        .into_iter()
        .filter(|field| matter.contains(field) || field.of(&piece.styles) != field.of(&usual));
    written
        .map(|field| (field.key.into(), field.of(&piece.styles).key.into()))
        .collect()
}

impl From<&Reading> for ReadingRecord {
    fn from(reading: &Reading) -> Self {
        ReadingRecord {
            typed: reading.typed().into(),
            unit: reading.unit().word().into(),
            value: reading.beside().map(Into::into),
        }
    }
}

impl From<&Bay> for BayRecord {
    fn from(bay: &Bay) -> Self {
        BayRecord {
            id: bay.id.0,
            width: bay.width.as_ref().map(Into::into),
            rows: bay.rows.iter().map(Into::into).collect(),
        }
    }
}

impl From<&Row> for RowRecord {
    fn from(row: &Row) -> Self {
        RowRecord {
            id: row.id.0,
            fill: Some(row.fill.word().into()),
            columns: row.columns as u64,
            shelves: row.shelves as u64,
            height: row.height.as_ref().map(Into::into),
        }
    }
}

impl ChangeRecord {
    /// Returns a change with its kind and nothing else.
    fn only(change: &str) -> Self {
        ChangeRecord {
            id: 0,
            change: change.into(),
            part: None,
            along: None,
            times: None,
            towards: None,
            surface: None,
            number: None,
            shape: None,
            placed: None,
            flutes: 0,
            members: vec![],
            points: vec![],
            readings: Named::default(),
        }
    }
}

impl From<&PieceChange> for ChangeRecord {
    fn from(change: &PieceChange) -> Self {
        let of = match &change.kind {
            ChangeKind::Remove { part } => ChangeRecord {
                part: Some(part.clone()),
                ..ChangeRecord::only("remove")
            },
            ChangeKind::Resize { part, along } => ChangeRecord {
                part: Some(part.clone()),
                along: Some(along.word().into()),
                ..ChangeRecord::only("resize")
            },
            ChangeKind::Move { part, towards } => ChangeRecord {
                part: Some(part.clone()),
                towards: Some(towards.word().into()),
                ..ChangeRecord::only("move")
            },
            ChangeKind::Repeat { part, times, towards } => ChangeRecord {
                part: Some(part.clone()),
                times: Some(*times as u64),
                towards: Some(towards.word().into()),
                ..ChangeRecord::only("repeat")
            },
            ChangeKind::Hole { surface } => ChangeRecord {
                surface: Some(surface.clone()),
                ..ChangeRecord::only("hole")
            },
            ChangeKind::Add {
                number,
                shape,
                placed,
                flutes,
                members,
                points,
            } => {
                let members = (1..).zip(members).map(|(item, shape)| MemberRecord {
                    shape: shape.key().into(),
                    readings: readings_of(change, item),
                });
                let points = (1..=*points).map(|item| PointRecord {
                    readings: readings_of(change, item),
                });
                ChangeRecord {
                    number: Some(*number as u64),
                    shape: Some(shape.key().into()),
                    placed: Some(*placed),
                    flutes: u64::from(*flutes),
                    members: members.collect(),
                    points: points.collect(),
                    ..ChangeRecord::only("add")
                }
            }
        };
        ChangeRecord {
            id: change.id.0,
            readings: readings_of(change, 0),
            ..of
        }
    }
}

/// Returns the readings of a change, a member or a point.
fn readings_of(change: &PieceChange, item: usize) -> Readings {
    let of_item = change.readings.iter().filter(|((i, _), _)| *i == item);
    of_item
        .map(|((_, key), reading)| ((*key).into(), reading.into()))
        .collect()
}

impl From<&Scheme> for SchemeRecord {
    fn from(scheme: &Scheme) -> Self {
        let condition = &scheme.condition;
        let signs = Sign::ALL.into_iter().filter(|sign| sign.of(condition));
        SchemeRecord {
            colour: Some(scheme.colour.write()),
            ground: Some(condition.substrate.key().into()),
            wood: condition.species.map(|species| species.key.into()),
            signs: signs.map(|sign| sign.key().into()).collect(),
            basis: Some(scheme.basis.word().into()),
            layers: Some(
                scheme
                    .layers
                    .iter()
                    .map(|layer| Readable(Some(layer.into())))
                    .collect(),
            ),
        }
    }
}

impl From<&LayerPlan> for LayerRecord {
    fn from(layer: &LayerPlan) -> Self {
        LayerRecord {
            id: layer.id.0,
            material: layer.material.to_string(),
            coats: u64::from(layer.coats),
            tool: layer.tool.into(),
            narrow: layer.narrow_tool.map(Into::into),
            thinned: u64::from(layer.thinned),
            can: None,
            level: None,
        }
    }
}

impl From<&OwnMaterial> for MaterialRecord {
    fn from(own: &OwnMaterial) -> Self {
        let label = own.label.iter().map(|(key, reading): &(&str, LabelReading)| {
            let record = ReadingRecord {
                typed: reading.typed().into(),
                unit: reading.unit().into(),
                value: reading.beside().map(|(low, high)| match low == high {
                    true => low.into(),
                    false => vec![low, high].into(),
                }),
            };
            ((*key).into(), record)
        });
        let prices = own.prices.iter();
        let meant = prices
            .clone()
            .filter_map(|(key, price)| Some(((*key).into(), price.beside()?)));
        let meant = meant.collect();
        let prices = prices.map(|(key, price): &(&str, Price)| ((*key).into(), price.typed().into()));
        MaterialRecord {
            id: own.key.to_string(),
            of: own.of.into(),
            name: own.name.clone(),
            label: label.collect(),
            prices: prices.collect(),
            values: meant,
        }
    }
}

impl From<&Books> for BookRecords {
    fn from(books: &Books) -> Self {
        let books = books.0.iter().map(|(key, lines)| {
            let lines = lines.iter().map(|line| {
                let values = line.values.iter();
                let values = values.map(|(key, text)| (key.clone(), Readable(Some(text.clone()))));
                let meant = line.meant.iter();
                let meant = meant.map(|(key, number)| (key.clone(), Readable(Some(*number))));
                Readable(Some(LineRecord {
                    id: line.id.to_string(),
                    meant: meant.collect(),
                    values: values.collect(),
                }))
            });
            (key.clone(), lines.collect())
        });
        books.collect()
    }
}
