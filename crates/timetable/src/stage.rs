//! How far a coat has dried.

/// A stage of drying.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Fit for another coat.
    Recoat,
    /// Ready to use with care, and so to sell.
    Sell,
    /// Fully cured.
    Cured,
}

impl Stage {
    /// All stages in order.
    pub const ALL: [Stage; 3] = [Stage::Recoat, Stage::Sell, Stage::Cured];

    /// Its label.
    pub fn label(self) -> &'static str {
        match self {
            Stage::Recoat => "ready to recoat",
            Stage::Sell => "ready to sell",
            Stage::Cured => "fully cured",
        }
    }
}
