//! Quantities as types, so that an area is never used as a volume.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Sub};

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $from:ident, $get:ident, $unit:literal) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd)]
        pub struct $name(f64);

        impl $name {
            #[doc = concat!("Nothing: 0 ", $unit, ".")]
            pub const ZERO: Self = Self(0.0);

            #[doc = concat!("The quantity of `value` ", $unit, ".")]
            pub const fn $from(value: f64) -> Self {
                Self(value)
            }

            #[doc = concat!("The size in ", $unit, ".")]
            pub const fn $get(self) -> f64 {
                self.0
            }

            /// The larger of the two.
            pub fn max(self, other: Self) -> Self {
                Self(self.0.max(other.0))
            }

            /// The smaller of the two.
            pub fn min(self, other: Self) -> Self {
                Self(self.0.min(other.0))
            }
        }

        impl Add for $name {
            type Output = Self;
            fn add(self, other: Self) -> Self {
                Self(self.0 + other.0)
            }
        }

        impl AddAssign for $name {
            fn add_assign(&mut self, other: Self) {
                self.0 += other.0;
            }
        }

        impl Sub for $name {
            type Output = Self;
            fn sub(self, other: Self) -> Self {
                Self(self.0 - other.0)
            }
        }

        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, factor: f64) -> Self {
                Self(self.0 * factor)
            }
        }

        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, divisor: f64) -> Self {
                Self(self.0 / divisor)
            }
        }

        impl Div for $name {
            type Output = f64;
            fn div(self, other: Self) -> f64 {
                self.0 / other.0
            }
        }

        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(items: I) -> Self {
                items.fold(Self::ZERO, Add::add)
            }
        }
    };
}

quantity!(
    /// A length, held in meters.
    Length, metres, as_metres, "metres"
);
quantity!(
    /// An area, held in square meters.
    Area, square_metres, as_square_metres, "square metres"
);
quantity!(
    /// A volume of liquid, held in liters.
    Volume, litres, as_litres, "litres"
);
quantity!(
    /// A mass, held in kilograms.
    Mass, kilograms, as_kilograms, "kilograms"
);

quantity!(
    /// A density, held in kilograms per liter, which is also grams per milliliter.
    Density, kilograms_per_litre, as_kilograms_per_litre, "kilograms per litre"
);

impl Length {
    /// The length of `value` inches; an inch is 25.4 mm exactly (16 CFR 500.19).
    pub const fn inches(value: f64) -> Self {
        // Dividing by the exact decimal keeps 33 7/8 in as near to 860.425 mm as an `f64` can be.
        Self(value * 25.4 / 1000.0)
    }

    /// The length of `value` millimeters.
    pub const fn millimetres(value: f64) -> Self {
        Self(value / 1000.0)
    }

    /// The size in millimeters.
    pub const fn as_millimetres(self) -> f64 {
        self.0 * 1000.0
    }

    /// The size in inches of 25.4 mm.
    pub const fn as_inches(self) -> f64 {
        self.0 * 1000.0 / 25.4
    }
}

impl Mul for Length {
    type Output = Area;
    fn mul(self, other: Self) -> Area {
        Area(self.0 * other.0)
    }
}

impl Area {
    /// The size in square feet of 929.0304 cm2 (16 CFR 500.19, exact).
    pub const fn as_square_feet(self) -> f64 {
        self.0 / crate::exact::SQUARE_FOOT
    }

    /// The area of `value` square feet.
    pub const fn square_feet(value: f64) -> Self {
        Self(value * crate::exact::SQUARE_FOOT)
    }
}

impl Volume {
    /// The volume of `value` milliliters.
    pub const fn millilitres(value: f64) -> Self {
        Self(value / 1000.0)
    }

    /// The size in milliliters.
    pub const fn as_millilitres(self) -> f64 {
        self.0 * 1000.0
    }
}

impl Mass {
    /// The mass of `value` grams.
    pub const fn grams(value: f64) -> Self {
        Self(value / 1000.0)
    }

    /// The size in grams.
    pub const fn as_grams(self) -> f64 {
        self.0 * 1000.0
    }
}

impl Mul<Density> for Volume {
    type Output = Mass;
    fn mul(self, density: Density) -> Mass {
        Mass(self.0 * density.0)
    }
}

impl Div<Density> for Mass {
    type Output = Volume;
    fn div(self, density: Density) -> Volume {
        Volume(self.0 / density.0)
    }
}

impl Div<Volume> for Mass {
    type Output = Density;
    fn div(self, volume: Volume) -> Density {
        Density(self.0 / volume.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_square_foot_is_a_foot_by_a_foot() {
        let foot = Length::inches(12.0);
        assert!(((foot * foot).as_square_feet() - 1.0).abs() < 1e-15);
        assert!((Area::square_feet(1.0).as_square_metres() - crate::exact::SQUARE_FOOT).abs() < 1e-18);
    }

    #[test]
    fn sums_and_ratios_keep_their_unit() {
        let total: Volume = [0.25, 0.5].into_iter().map(Volume::litres).sum();
        assert_eq!(total, Volume::millilitres(750.0));
        assert!((Length::metres(1.0) / Length::millimetres(250.0) - 4.0).abs() < 1e-12);
        assert_eq!(Mass::kilograms(2.0) * 0.5, Mass::kilograms(1.0));
    }

    #[test]
    fn density_leads_from_volume_to_mass_and_back() {
        let paint = Density::kilograms_per_litre(1.25);
        assert_eq!(Volume::litres(2.0) * paint, Mass::grams(2500.0));
        assert_eq!(Mass::kilograms(2.5) / paint, Volume::litres(2.0));
        assert_eq!(Mass::kilograms(2.5) / Volume::litres(2.0), paint);
        assert_eq!(Mass::kilograms(0.5).as_grams(), 500.0);
    }
}
