//! Money: what the shop charges, what the rebuild costs, in whole minor units.

mod compare;
mod currency;
mod price;
mod quote;
mod tax;
mod ways;

pub use compare::{Difference, EstimateLine, compare};
pub use currency::{Currency, Money, NotMoney};
pub use price::{Price, PriceKey, PriceList, Work};
pub use quote::{Quote, QuoteLine, quote, total};
pub use tax::{Tax, TaxRounding};
pub use ways::{Way, Ways, ways};
