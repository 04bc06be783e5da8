//! Tests of flat regions.

use super::*;
use proptest::prelude::*;

fn square(x: f64, y: f64, size: f64) -> Region {
    Region::rectangle(size, size).mapped(|p| [p[0] + x, p[1] + y])
}

fn ell() -> Region {
    Region::polygon(vec![
        [0.0, 0.0],
        [2.0, 0.0],
        [2.0, 1.0],
        [1.0, 1.0],
        [1.0, 2.0],
        [0.0, 2.0],
    ])
}

#[test]
fn overlapping_squares() {
    let (a, b) = (square(0.0, 0.0, 2.0), square(1.0, 1.0, 2.0));
    assert!((a.intersection(&b).area() - 1.0).abs() < 1e-12);
    assert!((a.difference(&b).area() - 3.0).abs() < 1e-8);
    assert!((Region::union_of_all([&a, &b].into_iter()).area() - 7.0).abs() < 1e-8);
}

#[test]
fn a_hole_counts_against_the_area() {
    let ring = square(0.0, 0.0, 3.0).difference(&square(1.0, 1.0, 1.0));
    assert!((ring.area() - 8.0).abs() < 1e-8);
    assert_eq!(ring.contours().count(), 2);
    let mirrored = ring.mapped(|p| [-p[0], p[1]]);
    assert!((mirrored.area() - 8.0).abs() < 1e-8);
}

/// A member of a frame, the same nine times a little aside as a maker repeated it, and another member, as seen from
/// a corner: with its usual precision `i_overlay` 9.1 does not come to an end with this.
#[test]
fn lines_that_all_but_run_along_each_other_are_cut_in_time() {
    let seen: [[[i32; 2]; 4]; 11] = [
        [
            [54_695_064, 63_722_591],
            [40_898_050, 50_930_597],
            [356_368_293, 0],
            [342_571_279, 17_246_869],
        ],
        [
            [301_673_229, 23_849_590],
            [315_470_243, 6_602_722],
            [315_470_243, 292_231_483],
            [301_673_229, 279_439_489],
        ],
        [
            [13_797_014, 70_325_312],
            [0, 57_533_318],
            [315_470_243, 6_602_722],
            [301_673_229, 23_849_590],
        ],
        [
            [18_341_242, 69_591_676],
            [4_544_228, 56_799_682],
            [320_014_470, 5_869_086],
            [306_217_457, 23_115_954],
        ],
        [
            [22_885_470, 68_858_040],
            [9_088_456, 56_066_047],
            [324_558_698, 5_135_450],
            [310_761_684, 22_382_318],
        ],
        [
            [27_429_697, 68_124_405],
            [13_632_684, 55_332_411],
            [329_102_926, 4_401_815],
            [315_305_912, 21_648_683],
        ],
        [
            [31_973_925, 67_390_769],
            [18_176_911, 54_598_775],
            [333_647_154, 3_668_179],
            [319_850_140, 20_915_047],
        ],
        [
            [36_518_153, 66_657_133],
            [22_721_139, 53_865_139],
            [338_191_382, 2_934_543],
            [324_394_368, 20_181_411],
        ],
        [
            [41_062_381, 65_923_498],
            [27_265_367, 53_131_504],
            [342_735_609, 2_200_907],
            [328_938_596, 19_447_776],
        ],
        [
            [45_606_609, 65_189_862],
            [31_809_595, 52_397_868],
            [347_279_837, 1_467_272],
            [333_482_823, 18_714_140],
        ],
        [
            [50_150_836, 64_456_226],
            [36_353_823, 51_664_232],
            [351_824_065, 733_636],
            [338_027_051, 17_980_504],
        ],
    ];
    let regions = seen.map(|corners| {
        Region::polygon(
            corners
                .map(|corner| corner.map(|at| f64::from(at) * 4e-9))
                .to_vec(),
        )
    });
    let rest = regions[0].difference_of_all(regions[1..].iter());
    let all = Region::union_of_all(regions.iter()).area();
    let others = Region::union_of_all(regions[1..].iter()).area();
    assert!((rest.area() - (all - others)).abs() < 1e-6);
}

#[test]
fn a_rectangle_less_another_is_what_the_general_boolean_leaves() {
    let whole = square(0.0, 0.0, 4.0);
    // From before, at, within, at the end of, and beyond the square, each way.
    let places = [-1.0, 0.0, 1.0, 3.0, 4.0, 5.0];
    let spans = || (0..6).flat_map(|i| (i + 1..6).map(move |j| [places[i], places[j]]));
    for x in spans() {
        for y in spans() {
            let cut = Region::between([x[0], y[0]], [x[1], y[1]]);
            let (rest, general) = (
                whole.difference(&cut),
                boolean(&[&whole], &[&cut], Rule::Difference),
            );
            assert!((rest.area() - general.area()).abs() < 1e-7, "{x:?} {y:?}");
            assert_eq!(rest.contours().count(), general.contours().count(), "{x:?} {y:?}");
            let less = |a: &Region, b: &Region| boolean(&[a], &[b], Rule::Difference).area();
            let same = less(&rest, &general) + less(&general, &rest);
            assert!(same < 1e-7, "{x:?} {y:?}: {rest:?} against {general:?}");
            let corners = |region: &Region| region.contours().flatten().count();
            assert_eq!(corners(&rest), corners(&general), "{x:?} {y:?}");
        }
    }
}

#[test]
fn a_reentrant_region_goes_through_the_general_boolean() {
    assert!((ell().intersection(&square(0.5, 0.5, 2.0)).area() - 1.25).abs() < 1e-8);
}

#[test]
fn regions_that_only_touch_share_nothing() {
    assert!(
        square(0.0, 0.0, 1.0)
            .intersection(&square(1.0, 0.0, 1.0))
            .area()
            .abs()
            < 1e-12
    );
    assert!(
        square(0.0, 0.0, 1.0)
            .intersection(&square(5.0, 0.0, 1.0))
            .area()
            .abs()
            < 1e-12
    );
    assert_eq!(Region::EMPTY.area(), 0.0);
    assert_eq!(square(0.0, 0.0, 1.0).intersection(&Region::EMPTY).area(), 0.0);
}

proptest! {
    /// The quick way for convex regions and the general boolean are two witnesses of one area.
    #[test]
    fn clipping_agrees_with_the_general_boolean(
        x in -1.0f64..1.0, y in -1.0f64..1.0, size in 0.1f64..2.0, turn in 0.0f64..6.3,
    ) {
        let (sin, cos) = libm::sincos(turn);
        let a = square(0.0, 0.0, 1.0);
        let b = square(x, y, size).mapped(|p| [cos * p[0] - sin * p[1], sin * p[0] + cos * p[1]]);
        let clipped = a.intersection(&b).area();
        let general = boolean(&[&a], &[&b], Rule::Intersection).area();
        prop_assert!((clipped - general).abs() < 1e-7, "{clipped} against {general}");
        prop_assert!((a.difference(&b).area() + clipped - 1.0).abs() < 1e-7);
        let ring = square(-0.5, -0.5, 2.0).difference(&square(0.2, 0.3, 0.4));
        for region in [ell(), ring] {
            let general = boolean(&[&region], &[&b], Rule::Intersection).area();
            prop_assert!((region.intersection_area(&b) - general).abs() < 1e-7);
            prop_assert!((b.intersection_area(&region) - general).abs() < 1e-7);
        }
    }
}
