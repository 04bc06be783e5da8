//! Cans: the sizes of the trade, what is left in one, and which to buy.

mod choose;
mod contents;
mod price;
mod search;
mod size;
mod typical;

pub use choose::{ChoiceError, Offer, Purchase, choose, fewest};
pub use contents::{Contents, ContentsError, Doubt, LEVELS, Level, Weighing, level};
pub use price::{LARGEST_PRICE, PriceError, check_price, read_price, read_price_with, show_price};
pub use size::{CanSize, can, can_sizes};
pub use typical::typical_price;
