//! Checks the workshop air against the planned coats.

use crate::book::{Celsius, Habits, Share};
use crate::document::{Scheme, Workshop, material_of};
use coatings::Material;
use std::rc::Rc;
use timetable::{
    Air, AirCaution, AirLimits, DewCheck, LabelAir, air_cautions, dew_check, drying_percent, forbidden,
};

/// The result of checking the air, with the dew point first.
pub struct AirToday {
    /// Whether moisture could settle on the piece.
    pub dew: Option<DewCheck>,
    /// True if the surface temperature was measured. Otherwise the surface is assumed to be as warm as the
    /// air.
    pub is_surface_measured: bool,
    /// The planned coats, grouped by the lowest temperature that they allow. Never empty.
    pub coats: Vec<CoatsInAir>,
    /// Other cautions, the most serious first.
    pub cautions: Vec<AirCaution>,
    /// The drying time, in percent of the time on the label.
    pub drying_percent: u32,
}

/// Coats with the same temperature limit.
pub struct CoatsInAir {
    /// The names of the materials.
    pub names: Vec<String>,
    /// The lowest allowed temperature, in degrees Celsius.
    pub coldest: f64,
    /// How long it must stay that warm after a coat, in hours.
    pub warm_after: u32,
    /// Why these coats must not go on now, or `None` if they may.
    pub stopped: Option<AirCaution>,
}

impl AirToday {
    /// Returns true if no coat should go on in this air.
    pub fn forbids(&self) -> bool {
        self.coats.iter().all(|coats| coats.stopped.is_some())
    }

    /// Returns true if at least one coat should not go on in this air.
    pub fn forbids_some(&self) -> bool {
        self.coats.iter().any(|coats| coats.stopped.is_some())
    }
}

/// The measured air, and the surface temperature of the pieces in degrees Celsius.
pub(super) struct Measured {
    pub(super) air: Air,
    pub(super) surface: f64,
    pub(super) is_surface_measured: bool,
}

/// Returns `None` without a temperature and a humidity. A surface that was not measured is assumed to be as
/// warm as the air.
pub(super) fn measured(workshop: &Workshop) -> Option<Measured> {
    let habits: Habits = workshop.books.one();
    let (Celsius(celsius), Share(humidity)) = habits.temperature.zip(habits.humidity)?;
    let air = Air {
        celsius,
        humidity: humidity * 100.0,
    };
    let surface = habits.surface.map(|Celsius(surface)| surface);
    Some(Measured {
        air,
        surface: surface.unwrap_or(air.celsius),
        is_surface_measured: surface.is_some(),
    })
}

/// Checks the measured air against the planned coats, or against the default coats if none are planned.
/// Returns `None` without a temperature and a humidity.
pub fn air(workshop: &Workshop) -> Option<AirToday> {
    let Measured {
        air,
        surface,
        is_surface_measured,
    } = measured(workshop)?;
    let mut coats: Vec<CoatsInAir> = Vec::new();
    for material in planned(workshop) {
        let Some(coldest) = material.coldest.map(|coldest| coldest.low) else {
            continue;
        };
        let warm_after = material.warm_after();
        let alike = |of: &&mut CoatsInAir| (of.coldest, of.warm_after) == (coldest, warm_after);
        match coats.iter_mut().find(alike) {
            Some(of) => of.names.push(material.name.to_string()),
            None => coats.push(CoatsInAir {
                names: vec![material.name.to_string()],
                coldest,
                warm_after,
                stopped: forbidden(air, surface, limits(&material)),
            }),
        }
    }
    Some(AirToday {
        dew: dew_check(air, surface),
        is_surface_measured,
        coats,
        cautions: air_cautions(air, AirLimits::default(), LabelAir::USUAL),
        drying_percent: drying_percent(air, LabelAir::USUAL),
    })
}

/// Returns the air limits of a material.
pub(super) fn limits(material: &Material) -> AirLimits {
    AirLimits {
        coldest: material.coldest.map(|coldest| coldest.low),
        ..AirLimits::default()
    }
}

/// Returns every material planned for pieces with work ahead, or the default materials if there are none.
pub(super) fn planned(workshop: &Workshop) -> Vec<Rc<Material>> {
    let usual = Scheme::usual();
    let ahead = workshop.pieces.iter().filter(|piece| piece.status().is_ahead());
    let mut schemes: Vec<&Scheme> = ahead.flat_map(|piece| piece.schemes()).collect();
    let coats = |schemes: &[&Scheme]| {
        let mut all: Vec<Rc<Material>> = Vec::new();
        let layers = schemes.iter().flat_map(|scheme| &scheme.layers);
        for layer in layers.filter(|layer| layer.coats > 0) {
            let known = material_of(&workshop.materials, &layer.material);
            let is_new = |of: &Rc<Material>| all.iter().all(|other| other.key != of.key);
            all.extend(known.filter(|of| of.coldest.is_some()).filter(is_new));
        }
        all
    };
    let found = coats(&schemes);
    if !found.is_empty() {
        return found;
    }
    schemes = vec![&usual];
    coats(&schemes)
}
