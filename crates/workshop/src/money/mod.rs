//! What a piece costs, what it must bring, and what it may be bought for.
//!
//! All money is in whole hundredths of the currency unit. What is too large to be held is nothing, never wrong.

mod account;
mod buy;
mod costs;
mod earnings;
mod piece;

pub use account::{Account, Reckoning, account};
pub use buy::{Materials, Plan, chance, highest_buying_price};
pub use earnings::{Earning, Earnings, earnings};
pub use piece::{Costs, Fees, Line, Outcome, Part, added, earned, lowest_price, result, sum, wanted_price};
