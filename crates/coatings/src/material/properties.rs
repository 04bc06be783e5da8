//! The properties of a material.

use std::borrow::Cow;

use crate::basis::Basis;
use crate::sourced_range::{Provenance, SourcedRange};
use crate::unit::{Celsius, Hours, KilogramsPerLitre, SquareMetresPerLitre};

/// What a material does in a finish, in the order in which they go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// Before everything: it takes off grease, wax and gloss.
    Clean,
    /// Color within the wood.
    Stain,
    /// Under the paint or the clear coat: it binds, seals and blocks.
    Primer,
    /// The color on the wood.
    Paint,
    /// What protects it: clear coats, waxes, oils.
    Topcoat,
}

impl Stage {
    /// Every stage in the order in which they go on.
    pub const ALL: [Stage; 5] = [
        Stage::Clean,
        Stage::Stain,
        Stage::Primer,
        Stage::Paint,
        Stage::Topcoat,
    ];

    /// Its key in saved files.
    pub fn key(self) -> &'static str {
        match self {
            Stage::Clean => "clean",
            Stage::Stain => "stain",
            Stage::Primer => "primer",
            Stage::Paint => "paint",
            Stage::Topcoat => "topcoat",
        }
    }

    /// Its label on screen.
    pub fn label(self) -> &'static str {
        match self {
            Stage::Clean => "Cleaner",
            Stage::Stain => "Stain",
            Stage::Primer => "Primer or sealer",
            Stage::Paint => "Paint",
            Stage::Topcoat => "Clear topcoat",
        }
    }
}

/// The film class of a material. Tools leave a different wet film of each class.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FilmClass {
    /// Thin as water; it is wiped or brushed on and comes off again with the dirt.
    Wash,
    /// It goes into the wood; what stays on top is wiped off.
    Penetrating,
    /// It flows out into a thin film: varnish, clear coats, sealers, shellac.
    Varnish,
    /// It stands in a film: paints and primers.
    Paint,
    /// A paste that is rubbed out and buffed: wax.
    Paste,
}

/// What thins a material and cleans its tools.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Thinner {
    /// Water, with soap for the tools.
    Water,
    /// Mineral spirits (white spirit).
    MineralSpirits,
    /// Denatured alcohol.
    Alcohol,
    /// Nothing: it is used as it is, and cleaned with soap and water or as its label says.
    None,
}

impl Thinner {
    /// Its label on screen.
    pub fn label(self) -> &'static str {
        match self {
            Thinner::Water => "Water",
            Thinner::MineralSpirits => "Mineral spirits",
            Thinner::Alcohol => "Denatured alcohol",
            Thinner::None => "Not thinned",
        }
    }
}

/// A generic coating material, or a maker's own copy of one.
#[derive(Clone, Debug, PartialEq)]
pub struct Material {
    /// Its key in saved files.
    pub key: Cow<'static, str>,
    /// Its name in the trade.
    pub name: Cow<'static, str>,
    /// What it does in a finish.
    pub stage: Stage,
    /// Its film class.
    pub body: FilmClass,
    /// Whether it comes in colors, so that two colors of it are two cans.
    pub coloured: bool,
    /// The spreading rate that a label states, m2/L. It contains ordinary brush and roller loss.
    pub label_rate: SourcedRange<SquareMetresPerLitre>,
    /// Volume solids (non-volatile matter by volume), a fraction; 0 for what leaves no film.
    pub volume_solids: SourcedRange,
    /// Density, kg/L.
    pub density: SourcedRange<KilogramsPerLitre>,
    /// Hours until the next coat may go on.
    pub recoat: SourcedRange<Hours>,
    /// Hours until it is as hard as it gets.
    pub cure: SourcedRange<Hours>,
    /// The least temperature of the air that it may be put on in, degrees Celsius; `None` for what is no coat.
    pub coldest: Option<SourcedRange<Celsius>>,
    /// What thins it and cleans its tools.
    pub thinner: Thinner,
    /// How much thinner may be added for a sprayer, as a fraction of its volume, where a label says nothing.
    pub thinning: SourcedRange,
    /// The can sizes that it is sold in, by key, of both trades, the smallest of each first.
    pub cans: &'static [&'static str],
    /// What it is for, in one line.
    pub purpose: &'static str,
    /// What to watch out for when using it; short, and second to the label.
    pub caution: &'static str,
}

impl Material {
    /// Whether the maker entered the rate from the label of the can.
    pub fn states_rate(&self) -> bool {
        self.label_rate.certainty == Provenance::Maker
    }

    /// The basis of its volume where this one is planned. A rate that the maker entered takes precedence.
    pub fn basis(&self, planned: Basis) -> Basis {
        match self.states_rate() {
            true => Basis::LabelRate,
            false => planned,
        }
    }

    /// For how many hours after a coat the air has to stay as warm: a day for what water thins (Wood Handbook FPL-GTR-190
    /// p. 378).
    pub fn warm_after(&self) -> u32 {
        match self.thinner {
            Thinner::Water if self.coldest.is_some() => 24,
            _ => 0,
        }
    }
}
