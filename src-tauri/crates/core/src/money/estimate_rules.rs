//! What the law of a place asks of an estimate, as the shop enters it: none of it holds unless it is entered.

use serde::{Deserialize, Serialize};

use super::Money;

/// How far a total may go beyond what the customer agreed to before they must be asked: the greater of an amount and a
/// share, but no more than a bound. All at zero allows nothing.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Allowance {
    /// An amount that may be exceeded by in any case, with tax.
    #[serde(default)]
    pub least: Money,
    /// A share of what was agreed to, in hundredths of a per cent: 1000 is 10 %.
    #[serde(default)]
    pub share: u16,
    /// Never more than this; none where there is no such bound.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub most: Option<Money>,
}

/// What the law of a place asks of an estimate.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct EstimateRules {
    /// Beyond which excess the customer must be asked; none where nothing of the kind holds.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub allowance: Option<Allowance>,
    /// Whether old parts go back to the customer who asks for them.
    #[serde(default)]
    pub old_parts: bool,
}

impl Allowance {
    /// By how much a sum that was agreed to may be exceeded; the share is rounded to the minor unit.
    pub fn on(self, agreed: Money) -> Money {
        let greater = self.least.max(agreed.share(i64::from(self.share), 10_000));
        self.most.map_or(greater, |most| greater.min(most))
    }
}

impl EstimateRules {
    /// Whether the customer must be asked before a sum that was agreed to becomes this total.
    pub fn must_ask(self, agreed: Money, total: Money) -> bool {
        self.allowance.is_some_and(|allowance| total > agreed + allowance.on(agreed))
    }

    /// Whether nothing was entered.
    pub fn is_silent(&self) -> bool {
        *self == Self::default()
    }

    /// Refuses rules that can't be.
    ///
    /// # Errors
    /// A sentence.
    pub fn check(self) -> Result<(), String> {
        let Some(Allowance { least, share, most }) = self.allowance else { return Ok(()) };
        if !least.is_price() || !most.is_none_or(Money::is_price) {
            return Err("What a total may exceed the estimate by must be zero or more.".into());
        }
        if share > 10_000 {
            return Err("A share above 100 per cent of the estimate can’t be right.".into());
        }
        if most.is_some_and(|most| most < least) {
            return Err("The most that may be exceeded is less than the least: exchange them.".into());
        }
        Ok(())
    }
}
