//! What the air in the workshop says of the coats that are planned.

use super::is_sold;
use crate::book::{Celsius, Habits, Share};
use crate::document::{Scheme, Workshop, material_of};
use coatings::Material;
use std::rc::Rc;
use timetable::{
    Air, AirCaution, AirLimits, DewCheck, LabelAir, air_cautions, dew_check, drying_percent, forbidden,
};

/// What the air says of coating, the dew point first.
pub struct AirToday {
    /// Whether moisture could settle on the piece.
    pub dew: Option<DewCheck>,
    /// Whether the surface was measured; otherwise it is taken to be as warm as the air.
    pub is_surface_measured: bool,
    /// The planned coats by the least air that they need; never empty.
    pub coats: Vec<CoatsInAir>,
    /// What else there is to mind, the gravest first.
    pub cautions: Vec<AirCaution>,
    /// How long coats take to dry, in hundredths of what their labels say.
    pub drying_percent: u32,
}

/// Coats that need the same air.
pub struct CoatsInAir {
    /// The materials, by name.
    pub names: Vec<String>,
    /// The least temperature, degrees Celsius.
    pub coldest: f64,
    /// For how many hours after a coat it has to stay as warm.
    pub warm_after: u32,
    /// Why none of them goes on now; nothing where they may.
    pub stopped: Option<AirCaution>,
}

impl AirToday {
    /// Whether no coat should go on in it.
    pub fn forbids(&self) -> bool {
        self.coats.iter().all(|coats| coats.stopped.is_some())
    }

    /// Whether some coat should not go on in it.
    pub fn forbids_some(&self) -> bool {
        self.coats.iter().any(|coats| coats.stopped.is_some())
    }
}

/// The air that the maker measured, and how warm the pieces are, degrees Celsius.
pub(super) struct Measured {
    pub(super) air: Air,
    pub(super) surface: f64,
    pub(super) is_surface_measured: bool,
}

/// Nothing without temperature and humidity. A piece of which the surface was not measured is as warm as the air.
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

/// What the air that the maker measured says of the coats that are planned, or of the usual ones where none is; nothing
/// without temperature and humidity.
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

/// The air that a material may be put on in.
pub(super) fn limits(material: &Material) -> AirLimits {
    AirLimits {
        coldest: material.coldest.map(|coldest| coldest.low),
        ..AirLimits::default()
    }
}

/// Every material that goes onto a piece that is still to be finished; the usual ones where there is none.
pub(super) fn planned(workshop: &Workshop) -> Vec<Rc<Material>> {
    let usual = Scheme::usual();
    let ahead = workshop.pieces.iter().filter(|piece| !is_sold(piece));
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
