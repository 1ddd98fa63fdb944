//! Money: currencies, prices, tax, and the lines of a quote, in whole minor units.

mod charge;
mod compare;
mod currency;
mod estimate_rules;
mod other_engine;
mod price;
mod proposed_job;
mod quote;
mod standing;
mod strip_down;
mod supply;
mod tax;

pub use charge::{Charge, OwnCharge, StandingCharge};
pub use compare::{Difference, EstimateLine, compare};
pub use currency::{Currency, Money, NotMoney};
pub use estimate_rules::{Allowance, EstimateRules};
pub use other_engine::OtherEngine;
pub use price::{Price, PriceKey, PriceList};
pub use proposed_job::{JobScope, Need, ProposedJob};
pub use quote::{Quote, QuoteLine};
pub use standing::{Applies, Standing, StandingPrice};
pub use strip_down::{GoesBack, StripDownLine, StripDownOrder, StripDownTerms, TaxedSum};
pub use supply::{OldPart, PartState, Supply};
pub use tax::{Tax, TaxRounding};
