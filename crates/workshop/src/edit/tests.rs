//! Edits: what each changes, and what is refused.

use super::*;
use crate::document::{Colour, Piece, Price, Scheme};
use coatings::{Substrate, Wish};
use geometry::fields;
use units::LengthUnit;

fn id(name: &str) -> PieceId {
    PieceId(name.into())
}

fn one() -> Workshop {
    Workshop::default()
        .apply(Edit::Add {
            id: id("a"),
            kind: Kind::Dresser,
        })
        .unwrap()
}

const PLACE: BayPlace = BayPlace { upper: false, bay: 1 };

fn edited(edit: PieceEdit) -> Result<Piece, EditError> {
    one()
        .apply(Edit::Piece(id("a"), edit))
        .map(|workshop| (*workshop.pieces[0]).clone())
}

#[test]
fn a_measurement_is_kept_as_typed_and_can_be_taken_back() {
    let reading = Reading::new("33 7/8", LengthUnit::Inch).unwrap();
    let piece = edited(PieceEdit::Measure(fields::HEIGHT.id(), Some(reading.clone()))).unwrap();
    assert_eq!(piece.reading(fields::HEIGHT.id()), Some(&reading));
    let second = FieldId::RowHeight(PLACE, 2);
    let piece = edited(PieceEdit::Measure(second, Some(reading.clone()))).unwrap();
    assert_eq!(piece.reading(second), Some(&reading));
    let piece = edited(PieceEdit::Measure(fields::HEIGHT.id(), None)).unwrap();
    assert_eq!(piece.reading(fields::HEIGHT.id()), None);
}

#[test]
fn a_new_row_is_like_the_last_one() {
    let piece = edited(PieceEdit::Rows { bay: PLACE, count: 4 }).unwrap();
    let columns: Vec<usize> = piece.bays[0].rows.iter().map(|row| row.columns).collect();
    assert_eq!(columns, [2, 2, 2, 2]);
    assert_eq!(
        edited(PieceEdit::Rows { bay: PLACE, count: 0 }).unwrap().bays[0]
            .rows
            .len(),
        1
    );
    assert_eq!(
        edited(PieceEdit::RepeatRow { bay: PLACE, row: 2 }).unwrap().bays[0]
            .rows
            .len(),
        4
    );
    assert_eq!(
        edited(PieceEdit::Bays {
            case: Case::Lower,
            count: 3
        })
        .unwrap()
        .bays
        .len(),
        3
    );
}

#[test]
fn a_row_that_goes_lets_those_below_it_move_up() {
    let piece = edited(PieceEdit::Columns {
        bay: PLACE,
        row: 3,
        columns: 1,
    })
    .unwrap();
    let columns = |piece: &Piece| -> Vec<usize> {
        let rows = piece.bays[0].rows.iter();
        rows.map(|row| row.columns).collect()
    };
    assert_eq!(columns(&piece), [2, 2, 1]);
    let workshop = Workshop {
        pieces: vec![piece.into()],
        ..Workshop::default()
    };
    let remove = |workshop: &Workshop, row| {
        let edit = Edit::Piece(
            workshop.pieces[0].id.clone(),
            PieceEdit::RemoveRow { bay: PLACE, row },
        );
        workshop.apply(edit)
    };
    let two = remove(&workshop, 1).unwrap();
    assert_eq!(columns(&two.pieces[0]), [2, 1]);
    let one = remove(&two, 2).unwrap();
    assert_eq!(columns(&one.pieces[0]), [2]);
    assert_eq!(
        remove(&one, 1),
        Err(EditError::Unknown("row")),
        "the last one stays"
    );
    assert_eq!(remove(&two, 3), Err(EditError::Unknown("row")));
}

#[test]
fn what_does_not_fit_changes_nothing_and_says_why() {
    let too_many = edited(PieceEdit::Rows {
        bay: PLACE,
        count: 10_000,
    })
    .unwrap_err();
    assert_eq!(too_many.to_string(), "Use at most 12 rows.");
    let elsewhere = BayPlace { upper: true, bay: 1 };
    assert_eq!(
        edited(PieceEdit::Rows {
            bay: elsewhere,
            count: 2
        }),
        Err(EditError::Unknown("bay"))
    );
    assert_eq!(
        edited(PieceEdit::Columns {
            bay: PLACE,
            row: 9,
            columns: 2
        }),
        Err(EditError::Unknown("row"))
    );
    assert_eq!(
        edited(PieceEdit::Columns {
            bay: PLACE,
            row: 0,
            columns: 2
        }),
        Err(EditError::Unknown("row"))
    );
    assert_eq!(
        edited(PieceEdit::Style {
            choice: "base",
            answer: "stilts"
        }),
        Err(EditError::Unknown("answer"))
    );
    assert_eq!(
        edited(PieceEdit::RemoveChange(0)),
        Err(EditError::Unknown("change"))
    );
    assert_eq!(
        edited(PieceEdit::Finish(None, SchemeEdit::Add("glitter".into()))),
        Err(EditError::Unknown("material"))
    );
    assert_eq!(one().apply(Edit::Remove(id("b"))), Err(EditError::NoSuchPiece));
    assert_eq!(
        one().apply(Edit::Add {
            id: id("a"),
            kind: Kind::Dresser
        }),
        Err(EditError::IdTaken)
    );
}

#[test]
fn gathering_keeps_every_piece_under_its_own_name() {
    let twice = one()
        .apply(Edit::Gather(one()))
        .unwrap()
        .apply(Edit::Gather(one()))
        .unwrap();
    let names: Vec<&str> = twice.pieces.iter().map(|piece| &*piece.id.0).collect();
    assert_eq!(names, ["a", "a-2", "a-3"]);
}

#[test]
fn the_invented_workshop_goes_without_taking_a_real_piece() {
    let mixed = crate::invented_workshop().apply(Edit::Gather(one())).unwrap();
    let cleared = mixed.apply(Edit::ClearInvented).unwrap();
    assert_eq!(cleared.pieces, one().pieces);
    assert!(cleared.note.is_empty());
}

#[test]
fn a_copy_stands_beside_its_original_and_has_all_of_it() {
    let two = one()
        .apply(Edit::Copy {
            of: id("a"),
            id: id("b"),
        })
        .unwrap();
    assert_eq!(two.pieces[1].name, "Dresser, copy");
    assert_eq!(
        Piece {
            id: id("a"),
            name: "Dresser".into(),
            ..(*two.pieces[1]).clone()
        },
        *two.pieces[0]
    );
    assert_eq!(two.apply(Edit::Remove(id("a"))).unwrap().pieces.len(), 1);
}

#[test]
fn parts_of_ones_own_have_numbers_that_stay() {
    let add = |piece: &mut Piece, shape| {
        piece
            .apply(PieceEdit::AddPart(shape), &[], System::default())
            .unwrap()
    };
    let mut piece = (*one().pieces[0]).clone();
    add(&mut piece, AddedShape::Board);
    add(&mut piece, AddedShape::Moulding);
    piece
        .apply(PieceEdit::RemoveChange(0), &[], System::default())
        .unwrap();
    add(&mut piece, AddedShape::Column);
    let numbers: Vec<usize> = piece
        .changes
        .iter()
        .map(|change| match change.kind {
            ChangeKind::Add { number, .. } => number,
            _ => 0,
        })
        .collect();
    assert_eq!(numbers, [2, 3]);
    let length = FieldId::Alteration {
        change: 0,
        item: 0,
        key: fields::PART_LENGTH.key,
    };
    let reading = Reading::new("48", LengthUnit::Inch).unwrap();
    piece
        .apply(
            PieceEdit::Measure(length, Some(reading.clone())),
            &[],
            System::default(),
        )
        .unwrap();
    assert_eq!(piece.reading(length), Some(&reading));
    assert!(crate::samples::takeoff(&piece).is_ok());
}

#[test]
fn surfaces_go_into_zones_and_come_back() {
    let mut piece = (*one().pieces[0]).clone();
    let mut apply = |edit| piece.apply(edit, &[], System::default());
    assert_eq!(
        apply(PieceEdit::Zone("top/top".into(), Some("accent".into()))),
        Err(EditError::Unknown("group"))
    );
    apply(PieceEdit::NameZone {
        zone: "accent".into(),
        name: "Second colour".into(),
    })
    .unwrap();
    apply(PieceEdit::Zone("top/top".into(), Some("accent".into()))).unwrap();
    apply(PieceEdit::ZonePainted {
        zone: "top".into(),
        painted: Some(false),
    })
    .unwrap();
    let takeoff = crate::samples::takeoff(&piece).unwrap();
    let zone = |key: &str| takeoff.zones.iter().find(|zone| zone.key == key).unwrap();
    assert_eq!(zone("accent").label, "Second colour");
    assert!(zone("accent").areas[0] > units::Area::square_metres(0.5));
    assert!(!zone("top").painted && zone("top").areas[0] == units::Area::ZERO);
    let mut apply = |edit| piece.apply(edit, &[], System::default()).unwrap();
    apply(PieceEdit::RemoveZone("accent".into()));
    apply(PieceEdit::ZonePainted {
        zone: "top".into(),
        painted: None,
    });
    assert!(piece.choices.is_empty() && piece.zones.is_empty());
}

fn finish(edit: SchemeEdit) -> PieceEdit {
    PieceEdit::Finish(None, edit)
}

fn with(edits: impl IntoIterator<Item = PieceEdit>) -> Piece {
    let edits = edits.into_iter().map(|edit| Edit::Piece(id("a"), edit));
    let workshop = edits.fold(one(), |workshop, edit| workshop.apply(edit).unwrap());
    (*workshop.pieces[0]).clone()
}

fn planned(scheme: &Scheme) -> Vec<(&str, u32, &str)> {
    let layers = scheme.layers.iter();
    layers
        .map(|layer| (&*layer.material, layer.coats, layer.tool))
        .collect()
}

#[test]
fn layers_come_in_at_their_stage_and_take_a_tool_that_can_do_it() {
    let piece = with([
        finish(SchemeEdit::Add("deglosser".into())),
        finish(SchemeEdit::Add("clear-wax".into())),
        finish(SchemeEdit::Tool(3, "foam-roller")),
        finish(SchemeEdit::Remove(4)),
    ]);
    let layers = planned(&piece.scheme);
    assert_eq!(
        layers.iter().map(|layer| layer.0).collect::<Vec<_>>(),
        [
            "degreaser",
            "deglosser",
            "bonding-primer",
            "trim-enamel",
            "clear-wax"
        ]
    );
    assert_eq!(layers[3].2, "foam-roller");
    let error = edited(finish(SchemeEdit::Add("clear-wax".into()))).and_then(|_| {
        one()
            .apply(Edit::Piece(id("a"), finish(SchemeEdit::Tool(10, "hvlp"))))
            .map(|_| ())
    });
    assert_eq!(error, Err(EditError::Unknown("layer")));
    let waxed = with([finish(SchemeEdit::Material(2, "clear-wax".into()))]);
    let tool = coatings::tool(waxed.scheme.layers[2].tool).unwrap();
    assert!(tool.film(coatings::FilmClass::Paste).is_some());
    let mut piece = waxed;
    let sprayed = piece.apply(finish(SchemeEdit::Tool(2, "hvlp")), &[], System::default());
    assert!(matches!(sprayed, Err(EditError::WrongTool { .. })), "{sprayed:?}");
}

#[test]
fn a_zone_set_apart_begins_as_the_piece_and_goes_its_own_way() {
    let of_top = |edit| PieceEdit::Finish(Some("top".into()), edit);
    assert_eq!(
        edited(of_top(SchemeEdit::Remove(1))),
        Err(EditError::Unknown("group"))
    );
    let piece = with([
        PieceEdit::Apart {
            zone: "top".into(),
            apart: true,
        },
        of_top(SchemeEdit::Remove(2)),
        finish(SchemeEdit::Coats(2, 3)),
    ]);
    assert_eq!(planned(piece.scheme_of("top")).len(), 3);
    assert_eq!(planned(piece.scheme_of("body"))[2].1, 3);
    let piece = with([
        PieceEdit::Apart {
            zone: "top".into(),
            apart: true,
        },
        PieceEdit::Apart {
            zone: "top".into(),
            apart: false,
        },
    ]);
    assert!(piece.zones.is_empty());
}

/// Signs found on the piece also apply to a top with its own finish, until the top gets signs of its own.
#[test]
fn what_is_found_on_the_piece_is_found_on_its_zones() {
    let found = |ground| finish(SchemeEdit::Substrate(ground));
    let piece = with([
        PieceEdit::Apart {
            zone: "top".into(),
            apart: true,
        },
        found(Substrate::Glossy),
    ]);
    assert_eq!(piece.scheme_of("top").condition.substrate, Substrate::Glossy);
    let otherwise = PieceEdit::Finish(Some("top".into()), SchemeEdit::Substrate(Substrate::Bare));
    let piece = with([
        PieceEdit::Apart {
            zone: "top".into(),
            apart: true,
        },
        otherwise,
        found(Substrate::Glossy),
    ]);
    assert_eq!(piece.scheme_of("top").condition.substrate, Substrate::Bare);
    assert_eq!(piece.scheme.condition.substrate, Substrate::Glossy);
}

/// A degreaser is caustic, so it is planned on an old finish and not on bare wood.
#[test]
fn the_degreaser_goes_with_the_ground() {
    let degreased = |grounds: &[Substrate]| {
        let piece = with(
            grounds
                .iter()
                .map(|ground| finish(SchemeEdit::Substrate(*ground))),
        );
        let layer = piece
            .scheme
            .layers
            .iter()
            .find(|layer| &*layer.material == "degreaser");
        layer.unwrap().coats
    };
    assert_eq!(degreased(&[Substrate::Glossy]), 1);
    assert_eq!(degreased(&[Substrate::Bare]), 0);
    assert_eq!(
        degreased(&[Substrate::Bare, Substrate::Porous, Substrate::PaintedSound]),
        1
    );
    let bare = with([finish(SchemeEdit::Substrate(Substrate::Bare))]).scheme;
    assert!(bare.is_as_suggested(&[], &bare.suggestion(&[])));
}

#[test]
fn a_stain_begins_with_the_colour_of_one() {
    let red = Colour([200, 0, 0]);
    let painted = || Wish::Painted { light: false };
    let piece = |wishes: &[Wish]| {
        let wishes = wishes.iter().map(|wish| finish(SchemeEdit::Suggested(*wish)));
        with([finish(SchemeEdit::Colour(red))].into_iter().chain(wishes))
            .scheme
            .colour
    };
    assert_eq!(piece(&[painted()]), red);
    assert_eq!(piece(&[Wish::Clear, painted()]), red);
    let stained = piece(&[Wish::StainedClear]);
    assert_ne!(stained, red);
    assert_eq!(piece(&[Wish::StainedClear, Wish::StainedClear]), stained);
    assert_eq!(piece(&[Wish::StainedClear, painted()]), Scheme::usual().colour);
}

/// A label belongs to one can, which also serves a top with its own finish.
#[test]
fn a_label_is_of_every_zone_that_takes_the_material() {
    let mut workshop = Workshop::default();
    let id = PieceId("a".into());
    let on_piece = |edit| Edit::Piece(id.clone(), edit);
    for edit in [
        Edit::Add {
            id: id.clone(),
            kind: Kind::Nightstand,
        },
        on_piece(PieceEdit::Apart {
            zone: "top".into(),
            apart: true,
        }),
        Edit::AddMaterial("own-1".into(), "trim-enamel".into()),
        on_piece(PieceEdit::Exchange {
            from: "trim-enamel".into(),
            to: "own-1".into(),
        }),
    ] {
        workshop = workshop.apply(edit).unwrap();
    }
    for scheme in workshop.pieces[0].schemes() {
        let of = |key: &str| {
            scheme
                .layers
                .iter()
                .filter(|layer| &*layer.material == key)
                .count()
        };
        assert_eq!((of("own-1"), of("trim-enamel")), (1, 0));
    }
    let unknown = workshop.apply(on_piece(PieceEdit::Exchange {
        from: "own-1".into(),
        to: "cement".into(),
    }));
    assert_eq!(unknown, Err(EditError::Unknown("material")));
}

#[test]
fn a_suggestion_takes_the_place_of_the_layers_and_keeps_their_tools() {
    let piece = with([
        finish(SchemeEdit::Tool(2, "foam-roller")),
        finish(SchemeEdit::Substrate(Substrate::Bare)),
        finish(SchemeEdit::Sign(Sign::OldRedStain, true)),
        finish(SchemeEdit::Suggested(Wish::Painted { light: true })),
    ]);
    let layers = planned(&piece.scheme);
    assert!(
        layers.iter().any(|layer| layer.0 == "shellac-primer"),
        "{layers:?}"
    );
    assert!(layers.contains(&("trim-enamel", 2, "foam-roller")), "{layers:?}");
    assert!(crate::samples::takeoff(&piece).is_ok());
}

/// The maker's label of the paint and the single clear coat are still there.
#[test]
fn a_suggestion_keeps_labels_and_numbers_of_coats() {
    let workshop = [
        Edit::AddMaterial("own-1".into(), "trim-enamel".into()),
        Edit::Piece(id("a"), finish(SchemeEdit::Material(2, "own-1".into()))),
        Edit::Piece(id("a"), finish(SchemeEdit::Coats(3, 1))),
        Edit::Piece(id("a"), finish(SchemeEdit::Sign(Sign::Odour, true))),
        Edit::Piece(
            id("a"),
            finish(SchemeEdit::Suggested(Wish::Painted { light: false })),
        ),
    ]
    .into_iter()
    .fold(one(), |workshop, edit| workshop.apply(edit).unwrap());
    let layers = &workshop.pieces[0].scheme.layers;
    let layers: Vec<_> = layers
        .iter()
        .map(|layer| (&*layer.material, layer.coats))
        .collect();
    assert_eq!(
        layers[1..],
        [("shellac-primer", 1), ("own-1", 2), ("water-polyurethane", 1)]
    );
}

#[test]
fn materials_that_come_in_with_keys_of_the_same_row_stay_apart() {
    let workshop = |name: &str, keys: &[&str]| {
        let edits = keys.iter().enumerate().flat_map(|(layer, key)| {
            let key: Rc<str> = (*key).into();
            let plan = finish(SchemeEdit::Material(layer, key.clone()));
            [
                Edit::AddMaterial(key.clone(), "trim-enamel".into()),
                Edit::Material(key.clone(), MaterialEdit::Name(format!("{name} {key}"))),
                Edit::Piece(id("a"), plan),
            ]
        });
        edits.fold(one(), |workshop, edit| workshop.apply(edit).unwrap())
    };
    let ours = workshop("ours", &["own-1"]);
    let both = ours
        .apply(Edit::Gather(workshop("theirs", &["own-1", "own-1-2"])))
        .unwrap();
    let names: Vec<String> = both.pieces[1].scheme.layers[..2]
        .iter()
        .map(|layer| {
            let own = both.materials.iter().find(|own| own.key == layer.material);
            own.unwrap().name.clone()
        })
        .collect();
    assert_eq!(names, ["theirs own-1", "theirs own-1-2"]);
}

#[test]
fn a_material_of_ones_own_is_copied_priced_planned_and_removed() {
    let own: Rc<str> = "own-1".into();
    let plan = Edit::Piece(id("a"), finish(SchemeEdit::Material(2, own.clone())));
    assert_eq!(one().apply(plan.clone()), Err(EditError::Unknown("material")));
    let price = Price::new("19.90").unwrap();
    let edits = [
        Edit::AddMaterial(own.clone(), "trim-enamel".into()),
        Edit::Material(own.clone(), MaterialEdit::Name("Green".into())),
        Edit::Material(own.clone(), MaterialEdit::Price("us-quart", Some(price))),
        plan,
    ];
    let workshop = edits
        .into_iter()
        .fold(one(), |workshop, edit| workshop.apply(edit).unwrap());
    assert_eq!(&*workshop.pieces[0].scheme.layers[2].material, "own-1");
    assert_eq!(workshop.materials[0].offers().len(), 1);
    let again = workshop.apply(Edit::AddMaterial(own.clone(), "trim-enamel".into()));
    assert_eq!(again, Err(EditError::IdTaken));
    // Another workshop's material with the same key is a different material.
    let other = workshop
        .apply(Edit::Material(own.clone(), MaterialEdit::Name("Red".into())))
        .unwrap();
    let both = workshop.apply(Edit::Gather(other)).unwrap();
    assert_eq!(both.materials.len(), 2);
    assert_eq!(&*both.pieces[1].scheme.layers[2].material, "own-1-2");
    let without = both.apply(Edit::RemoveMaterial("own-1-2".into())).unwrap();
    assert_eq!(&*without.pieces[1].scheme.layers[2].material, "trim-enamel");
    assert_eq!(&*without.pieces[0].scheme.layers[2].material, "own-1");
}

/// The dresser is painted black. White takes a third coat, in the plan and in what is recommended.
#[test]
fn an_old_color_that_shows_through_takes_one_more_coat() {
    let mut workshop = crate::samples::written_down(&[("old-color", "#141414")], &[]);
    let id = workshop.pieces[0].id.clone();
    let mut edit = |edit: SchemeEdit| {
        workshop = workshop
            .apply(Edit::Piece(id.clone(), PieceEdit::Finish(None, edit)))
            .unwrap();
        let piece = &workshop.pieces[0];
        let suggestion = piece.suggestion(&piece.scheme, &[]);
        let mut paint = piece.scheme.layers.iter();
        let coats = paint
            .find(|layer| &*layer.material == "trim-enamel")
            .unwrap()
            .coats;
        (coats, piece.scheme.is_as_suggested(&[], &suggestion))
    };
    edit(SchemeEdit::Substrate(coatings::Substrate::PaintedSound));
    edit(SchemeEdit::Colour(crate::Colour([20, 30, 40])));
    let light = coatings::Wish::Painted { light: true };
    assert_eq!(edit(SchemeEdit::Suggested(light)), (2, true));
    assert_eq!(
        edit(SchemeEdit::Colour(crate::Colour([250, 250, 250]))),
        (2, false)
    );
    assert_eq!(edit(SchemeEdit::Suggested(light)), (3, true));
    // On a clear finish the color of a paint says nothing.
    assert_eq!(
        edit(SchemeEdit::Substrate(coatings::Substrate::Sealed)),
        (3, true)
    );
}

#[test]
fn only_light_paint_over_paint_lacks_the_old_color() {
    let lacks = |facts: &[(&'static str, &str)], ground, colour: [u8; 3]| {
        let workshop = crate::samples::written_down(facts, &[]);
        let id = workshop.pieces[0].id.clone();
        let finish = |edit| Edit::Piece(id.clone(), PieceEdit::Finish(None, edit));
        let edits = [
            SchemeEdit::Substrate(ground),
            SchemeEdit::Colour(crate::Colour(colour)),
        ];
        let workshop = edits
            .into_iter()
            .map(finish)
            .fold(workshop, |workshop, edit| workshop.apply(edit).unwrap());
        let piece = &workshop.pieces[0];
        piece.lacks_old_color(&piece.scheme, &[])
    };
    use coatings::Substrate::{Bare, PaintedSound};
    let (white, black) = ([250, 250, 250], [20, 20, 20]);
    assert!(lacks(&[], PaintedSound, white));
    assert!(!lacks(&[], PaintedSound, black) && !lacks(&[], Bare, white));
    assert!(!lacks(&[("old-color", "#141414")], PaintedSound, white));
}
