//! Quantiles of the standard normal distribution.

/// Where the middle of the distribution ends and its tails begin.
const MIDDLE: f64 = 0.425;

/// For each share, the value below which it lies in a standard normal distribution; shares from 1e-10 to 1 - 1e-10.
///
/// Rational approximations by M. J. Wichura, algorithm AS 241 (PPND16), Applied Statistics 37 (1988); relative error
/// about 1e-16. Its third branch, for rarer values than these, is left out: no draw of 32 random bits reaches it.
/// The coefficients are from memory; a test holds the result against another implementation.
pub(crate) fn quantiles(shares: &mut [f64]) {
    // Each branch runs over many values in a row. That takes a third of the time.
    let mut middle = [0.0; 64];
    let mut tails = [0usize; 64];
    for shares in shares.chunks_mut(middle.len()) {
        for (middle, share) in middle.iter_mut().zip(&*shares) {
            let from_middle = share - 0.5;
            let r = MIDDLE * MIDDLE - from_middle * from_middle;
            *middle = from_middle * ratio(r, &MIDDLE_ABOVE, &MIDDLE_BELOW);
        }
        let mut count = 0;
        for (place, share) in shares.iter().enumerate() {
            tails[count] = place;
            count += usize::from((share - 0.5).abs() > MIDDLE);
        }
        for place in &tails[..count] {
            middle[*place] = tail(shares[*place]);
        }
        shares.copy_from_slice(&middle[..shares.len()]);
    }
}

fn tail(share: f64) -> f64 {
    let from_middle = share - 0.5;
    let rare = if from_middle < 0.0 { share } else { 1.0 - share };
    let r = (-libm::log(rare)).sqrt() - 1.6;
    ratio(r, &TAIL_ABOVE, &TAIL_BELOW).copysign(from_middle)
}

fn ratio(x: f64, above: &[f64; 8], below: &[f64; 8]) -> f64 {
    let polynomial = |c: &[f64; 8]| c.iter().rev().fold(0.0, |sum, c| sum * x + c);
    polynomial(above) / polynomial(below)
}

const MIDDLE_ABOVE: [f64; 8] = [
    3.387_132_872_796_366_5,
    133.141_667_891_784_38,
    1_971.590_950_306_551_3,
    13_731.693_765_509_46,
    45_921.953_931_549_87,
    67_265.770_927_008_7,
    33_430.575_583_588_13,
    2_509.080_928_730_122_7,
];
const MIDDLE_BELOW: [f64; 8] = [
    1.0,
    42.313_330_701_600_91,
    687.187_007_492_057_9,
    5_394.196_021_424_751,
    21_213.794_301_586_597,
    39_307.895_800_092_71,
    28_729.085_735_721_943,
    5_226.495_278_852_854,
];
const TAIL_ABOVE: [f64; 8] = [
    1.423_437_110_749_683_5,
    4.630_337_846_156_546,
    5.769_497_221_460_691,
    3.647_848_324_763_204_5,
    1.270_458_252_452_368_4,
    0.241_780_725_177_450_6,
    0.022_723_844_989_269_184,
    0.000_774_545_014_278_341_4,
];
const TAIL_BELOW: [f64; 8] = [
    1.0,
    2.053_191_626_637_759,
    1.676_384_830_183_803_8,
    0.689_767_334_985_1,
    0.148_103_976_427_480_08,
    0.015_198_666_563_616_457,
    0.000_547_593_808_499_534_5,
    1.050_750_071_644_416_9e-9,
];

#[cfg(test)]
mod tests {
    use super::*;

    /// Against `statistics.NormalDist().inv_cdf` of Python 3.11.
    fn quantile(share: f64) -> f64 {
        let mut shares = [share];
        quantiles(&mut shares);
        shares[0]
    }

    #[test]
    fn quantiles_agree_with_another_implementation() {
        let known = [
            (0.5, 0.0),
            (0.75, 0.674_489_750_196_081_7),
            (0.925, 1.439_531_470_938_456),
            (0.95, 1.644_853_626_951_472_2),
            (0.975, 1.959_963_984_540_054),
            (0.999, 3.090_232_306_167_813_5),
            (1e-6, -4.753_424_308_822_899),
            (1e-10, -6.361_340_902_404_056),
        ];
        for (share, value) in known {
            assert!(
                (quantile(share) - value).abs() <= 1e-12,
                "{share}: {}",
                quantile(share)
            );
            if share > 1e-9 {
                assert!((quantile(1.0 - share) + value).abs() <= 1e-9, "{share}");
            }
        }
    }
}
