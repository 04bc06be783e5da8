//! How much filler holes and dents take.

use coatings::SourcedRange;
use units::{Length, Volume};

/// The ratio of filler to the volume of the hole. Filler shrinks as it dries, and the excess is sanded off.
pub const OVERFILL: SourcedRange = SourcedRange::practice(1.1, 1.4);

/// Returns the total volume of round holes.
///
/// # Example
/// ```
/// use units::Length;
/// use workshop::preparing::holes;
/// let four = holes(4, Length::metres(0.005), Length::metres(0.012));
/// assert!((four.as_millilitres() - 0.942).abs() < 0.001);
/// ```
pub fn holes(count: u32, width: Length, depth: Length) -> Volume {
    let (width, depth) = (width.as_metres(), depth.as_metres());
    cubic_metres(f64::from(count) * std::f64::consts::FRAC_PI_4 * width * width * depth)
}

/// Returns the total volume of dents. Each is a spherical cap, `pi h (3 a^2 + h^2) / 6` with half-width `a`
/// and depth `h`.
pub fn dents(count: u32, width: Length, depth: Length) -> Volume {
    let (half, depth) = (width.as_metres() / 2.0, depth.as_metres());
    let each = std::f64::consts::PI * depth * (3.0 * half * half + depth * depth) / 6.0;
    cubic_metres(f64::from(count) * each)
}

fn cubic_metres(volume: f64) -> Volume {
    Volume::litres(volume * 1000.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computes the cap as a stack of thin discs, on the sphere through the rim and the bottom.
    #[test]
    fn a_dent_holds_what_its_slices_hold() {
        for (width, depth) in [(0.02, 0.002), (0.01, 0.005), (0.04, 0.001)] {
            let half = width / 2.0;
            let radius = (half * half + depth * depth) / (2.0 * depth);
            let slices = 100_000;
            let thick = depth / f64::from(slices);
            let slice = |n: i32| {
                let below = radius - (f64::from(n) + 0.5) * thick;
                std::f64::consts::PI * (radius * radius - below * below) * thick
            };
            let litres = (0..slices).map(slice).sum::<f64>() * 1000.0;
            let cap = dents(1, Length::metres(width), Length::metres(depth)).as_litres();
            assert!((cap / litres - 1.0).abs() < 1e-6, "{width} {depth}");
        }
    }

    #[test]
    fn a_hole_as_wide_as_deep_is_a_cylinder() {
        let litre = holes(1, Length::metres(0.1), Length::metres(0.4 / std::f64::consts::PI));
        assert!((litre.as_litres() - 1.0).abs() < 1e-12);
    }
}
