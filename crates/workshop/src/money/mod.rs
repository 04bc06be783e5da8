//! The costs of a piece, the prices that cover them, and the most to pay for it.
//!
//! All money is in whole hundredths of the currency unit. A value too large to represent is `None`, never
//! wrong.

mod account;
mod buy;
mod costs;
mod earnings;
mod guess;
mod piece;

pub(crate) use account::account;
pub use account::{Account, Reckoning};
pub use buy::{Materials, Plan, chance, highest_buying_price};
pub(crate) use earnings::earnings;
pub use earnings::{Earning, Earnings};
pub use guess::{Guess, WAGE};
pub use piece::{Costs, Fees, Line, Outcome, Part, added, earned, lowest_price, result, sum, wanted_price};
