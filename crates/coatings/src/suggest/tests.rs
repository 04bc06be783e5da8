//! Tests of the suggestions.

use super::*;
use crate::material::material;
use crate::species::{SPECIES, species};

const WISHES: [Wish; 4] = [
    Wish::Painted { light: true },
    Wish::Painted { light: false },
    Wish::Clear,
    Wish::StainedClear,
];
const LIGHT: Wish = Wish::Painted { light: true };

fn on(substrate: Substrate) -> Condition {
    Condition {
        substrate,
        ..Condition::default()
    }
}

fn keys(suggestion: &Suggestion) -> Vec<&'static str> {
    suggestion.layers.iter().map(|layer| layer.material).collect()
}

fn every_reason(suggestion: &Suggestion) -> Vec<Reason> {
    suggestion
        .layers
        .iter()
        .flat_map(|layer| layer.reasons.clone())
        .chain(suggestion.notes.clone())
        .collect()
}

/// Every condition there is: surfaces, woods and the five flags.
fn every_condition() -> impl Iterator<Item = Condition> {
    Substrate::ALL.into_iter().flat_map(|substrate| {
        let woods = SPECIES.iter().map(Some).chain([None]);
        woods.flat_map(move |species| {
            (0..32u32).map(move |flags| Condition {
                substrate,
                species,
                old_red_stain: flags & 1 != 0,
                knots: flags & 2 != 0,
                odour: flags & 4 != 0,
                waxed: flags & 8 != 0,
                bare_spots: flags & 16 != 0,
            })
        })
    })
}

#[test]
fn every_suggestion_is_whole() {
    for condition in every_condition() {
        for wish in WISHES {
            let suggestion = suggest(&condition, wish);
            let is_degreased = suggestion.layers[0].material == "degreaser";
            assert_eq!(is_degreased, !condition.substrate.is_open(), "{condition:?}");
            assert!(suggestion.layers.is_sorted_by_key(|layer| layer.stage));
            for layer in &suggestion.layers {
                let material = material(layer.material).unwrap();
                assert_eq!(material.stage, layer.stage, "{}", layer.material);
                assert!(layer.coats > 0 && !layer.reasons.is_empty(), "{condition:?}");
            }
            let reasons = every_reason(&suggestion);
            for (place, reason) in reasons.iter().enumerate() {
                assert!(!reason.text.is_empty() && !reason.source.is_empty());
                assert!(
                    !reasons[..place].contains(reason),
                    "{condition:?}: {}",
                    reason.text
                );
            }
            let has = |stage| suggestion.layers.iter().any(|layer| layer.stage == stage);
            assert!(has(Stage::Primer) && has(Stage::Topcoat));
            assert_eq!(has(Stage::Paint), matches!(wish, Wish::Painted { .. }));
            assert_eq!(has(Stage::Stain), wish == Wish::StainedClear);
        }
    }
}

/// Each flag says something, on every surface and for every wish.
#[test]
fn every_flag_gives_a_reason() {
    let flags: [fn(&mut Condition); 5] = [
        |condition| condition.old_red_stain = true,
        |condition| condition.knots = true,
        |condition| condition.odour = true,
        |condition| condition.waxed = true,
        |condition| condition.bare_spots = true,
    ];
    for substrate in Substrate::ALL {
        for wish in WISHES {
            let plain = every_reason(&suggest(&on(substrate), wish));
            for (place, flag) in flags.iter().enumerate() {
                let mut condition = on(substrate);
                flag(&mut condition);
                let reasons = every_reason(&suggest(&condition, wish));
                assert!(
                    reasons.iter().any(|reason| !plain.contains(reason)),
                    "{substrate:?} {wish:?} {place}"
                );
            }
        }
    }
}

#[test]
fn the_usual_scheme_is_primer_two_paint_two_clear() {
    let suggestion = suggest(&Condition::default(), LIGHT);
    assert_eq!(
        keys(&suggestion),
        ["degreaser", "bonding-primer", "trim-enamel", "water-polyurethane"]
    );
    let coats: Vec<u32> = suggestion.layers.iter().map(|layer| layer.coats).collect();
    assert_eq!(coats, [1, 1, 2, 2]);
}

/// A degreaser is caustic: bare wood is wiped, and is told how.
#[test]
fn bare_wood_gets_no_degreaser() {
    for substrate in [Substrate::Bare, Substrate::Porous] {
        let suggestion = suggest(&on(substrate), LIGHT);
        assert!(!keys(&suggestion).contains(&"degreaser"));
        assert!(suggestion.notes.contains(&WIPE_BARE));
    }
    assert!(!suggest(&on(Substrate::Sealed), LIGHT).notes.contains(&WIPE_BARE));
}

#[test]
fn gloss_is_dulled_and_bonded() {
    let suggestion = suggest(&on(Substrate::Glossy), LIGHT);
    assert_eq!(
        keys(&suggestion)[..3],
        ["degreaser", "deglosser", "bonding-primer"]
    );
}

/// What is stripped needs no deglosser, and its sealer is that of wood.
#[test]
fn what_goes_onto_stripped_wood_is_for_wood() {
    let stained = suggest(&on(Substrate::Glossy), Wish::StainedClear);
    assert!(stained.wants_bare_wood());
    // It is cleaned before it is stripped, and then it has its old finish.
    let stained = keys(&stained);
    assert_eq!(stained[0], "degreaser");
    assert_eq!(
        stained[1..],
        keys(&suggest(&on(Substrate::Bare), Wish::StainedClear))
    );
    let clear = suggest(&on(Substrate::PaintedSound), Wish::Clear);
    assert_eq!(
        keys(&clear),
        ["degreaser", "sanding-sealer", "water-polyurethane"]
    );
    let laminate = suggest(&on(Substrate::Laminate), Wish::StainedClear);
    assert!(keys(&laminate).contains(&"clear-shellac"));
}

#[test]
fn laminate_always_has_its_bonding_primer() {
    for condition in every_condition().filter(|condition| condition.substrate == Substrate::Laminate) {
        assert!(keys(&suggest(&condition, LIGHT)).contains(&"bonding-primer"));
    }
    let smelly = Condition {
        odour: true,
        ..on(Substrate::Laminate)
    };
    assert_eq!(
        keys(&suggest(&smelly, LIGHT))[1..3],
        ["bonding-primer", "shellac-primer"]
    );
}

#[test]
fn laminate_hides_the_wood() {
    let on_oak = Condition {
        species: species("red-oak"),
        ..on(Substrate::Laminate)
    };
    let mut plain = suggest(&on(Substrate::Laminate), LIGHT);
    let suggestion = suggest(&on_oak, LIGHT);
    assert!(suggestion.notes.contains(&reasons::LAMINATE_HIDES));
    plain.notes.push(reasons::LAMINATE_HIDES);
    assert_eq!(suggestion, plain);
}

/// Every wood says something of itself, unless it is sound, easy and bleeds nothing.
#[test]
fn every_trait_of_a_wood_gives_a_reason() {
    let plain = every_reason(&suggest(&on(Substrate::Bare), LIGHT));
    for wood in &SPECIES {
        let condition = Condition {
            species: Some(wood),
            ..on(Substrate::Bare)
        };
        let says = every_reason(&suggest(&condition, LIGHT))
            .iter()
            .any(|reason| !plain.contains(reason));
        let has_trait = wood.bleed.value != Bleed::None
            || wood.resin.is_some()
            || wood.pores.value == Pores::Ring
            || wood
                .latex_class
                .is_some_and(|class| class.value == LatexClass::III);
        assert_eq!(says, has_trait, "{}", wood.key);
    }
}

#[test]
fn what_bleeds_is_blocked_under_light_paint_only() {
    for wood in SPECIES.iter().filter(|wood| wood.bleed.value != Bleed::None) {
        for substrate in Substrate::ALL
            .into_iter()
            .filter(|substrate| *substrate != Substrate::Laminate)
        {
            let condition = Condition {
                species: Some(wood),
                ..on(substrate)
            };
            let blocked = keys(&suggest(&condition, LIGHT))
                .iter()
                .any(|key| ["shellac-primer", "alkyd-stain-blocker"].contains(key));
            assert!(blocked, "{} {substrate:?}", wood.key);
            let notes = suggest(&condition, LIGHT).notes;
            assert!(notes.contains(&reasons::LATEX_WAIT));
        }
        let dark = suggest(
            &Condition {
                species: Some(wood),
                ..Condition::default()
            },
            Wish::Painted { light: false },
        );
        assert!(keys(&dark).contains(&"bonding-primer"), "{}", wood.key);
        assert!(dark.notes.contains(&reasons::DARK_BLEED));
    }
}

/// Wood Handbook FPL-GTR-190 p. 378: for redwood and western redcedar usually an oil-alkyd primer.
#[test]
fn redwood_gets_alkyd_and_walnut_shellac() {
    let of = |key| Condition {
        species: species(key),
        ..on(Substrate::Bare)
    };
    assert_eq!(
        keys(&suggest(&of("redwood"), LIGHT))[..1],
        ["alkyd-stain-blocker"]
    );
    assert_eq!(keys(&suggest(&of("walnut"), LIGHT))[..1], ["shellac-primer"]);
}

#[test]
fn old_red_mahogany_gets_two_coats() {
    let condition = Condition {
        species: species("mahogany"),
        old_red_stain: true,
        ..Condition::default()
    };
    let suggestion = suggest(&condition, LIGHT);
    let primer = &suggestion.layers[1];
    assert_eq!((primer.material, primer.coats), ("shellac-primer", 2));
    assert!(primer.reasons.len() >= 3);
}

#[test]
fn knots_are_sealed_alone_and_the_primer_stays() {
    let condition = Condition {
        species: species("southern-pine"),
        knots: true,
        ..Condition::default()
    };
    let suggestion = suggest(&condition, LIGHT);
    assert!(keys(&suggestion).contains(&"bonding-primer"));
    assert!(suggestion.notes.contains(&reasons::KNOTS));
    assert!(suggestion.notes.iter().any(|note| note.source.contains("14044")));
}

#[test]
fn ring_porous_wood_is_filled_for_paint() {
    let condition = Condition {
        species: species("ash"),
        ..on(Substrate::Bare)
    };
    assert!(suggest(&condition, LIGHT).notes.contains(&reasons::FILL));
    assert!(!suggest(&condition, Wish::Clear).notes.contains(&reasons::FILL));
}

/// Ash does not bleed, but is of the hardest class: bare, it gets more than the usual primer.
#[test]
fn the_hardest_class_gets_a_better_primer_where_paint_reaches_it() {
    let ash = |substrate, bare_spots| Condition {
        species: species("ash"),
        bare_spots,
        ..on(substrate)
    };
    for condition in [ash(Substrate::Bare, false), ash(Substrate::Sealed, true)] {
        assert!(keys(&suggest(&condition, LIGHT)).contains(&"alkyd-stain-blocker"));
    }
    let sealed = suggest(&ash(Substrate::Sealed, false), LIGHT);
    assert!(keys(&sealed).contains(&"bonding-primer"));
    assert!(sealed.notes.iter().any(|note| note.text == reasons::HARD_CLASS));
}

#[test]
fn wax_is_cleaned_off_and_kept_back() {
    let condition = Condition {
        waxed: true,
        ..Condition::default()
    };
    let suggestion = suggest(&condition, Wish::Painted { light: false });
    assert!(suggestion.layers[0].reasons.contains(&reasons::WAX_CLEAN));
    assert_eq!(suggestion.layers[1].material, "shellac-primer");
    assert_eq!(keys(&suggest(&condition, Wish::Clear))[1], "clear-shellac");
}

#[test]
fn clear_wishes_have_a_sealer_and_nothing_that_hides_the_wood() {
    for condition in every_condition() {
        for wish in [Wish::Clear, Wish::StainedClear] {
            for key in keys(&suggest(&condition, wish)) {
                assert_ne!(
                    material(key).unwrap().body,
                    crate::material::FilmClass::Paint,
                    "{condition:?}"
                );
            }
        }
    }
    assert_eq!(
        keys(&suggest(&on(Substrate::Bare), Wish::Clear)),
        ["sanding-sealer", "water-polyurethane"]
    );
    assert_eq!(
        keys(&suggest(&on(Substrate::Bare), Wish::StainedClear)),
        ["wipe-on-stain", "clear-shellac", "water-polyurethane"]
    );
}
