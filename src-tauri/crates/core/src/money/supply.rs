//! How a part is supplied, and where the old one goes.

use serde::{Deserialize, Serialize};

use super::{Currency, Money};

/// In what state a part is bought. What is not new is named so on every bill (16 CCR 3353(a)).
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum PartState {
    /// New.
    #[default]
    New,
    /// Rebuilt, against the old one and mostly a deposit.
    Exchange,
    /// Used.
    Used,
}

impl PartState {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::New, Self::Exchange, Self::Used];

    /// In words, lower case.
    pub fn words(self) -> &'static str {
        match self {
            Self::New => "new",
            Self::Exchange => "exchange",
            Self::Used => "used",
        }
    }
}

/// Where a part goes that is renewed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OldPart {
    /// To the customer, whose it is.
    Customer,
    /// Back to the supplier.
    Exchange,
    /// To the scrap.
    Scrap,
    /// It is kept: it shows why the engine failed.
    Evidence,
}

impl OldPart {
    /// Every one.
    pub const ALL: [Self; 4] = [Self::Customer, Self::Exchange, Self::Scrap, Self::Evidence];

    /// In words, lower case.
    pub fn words(self) -> &'static str {
        match self {
            Self::Customer => "to the customer",
            Self::Exchange => "back in exchange",
            Self::Scrap => "to scrap",
            Self::Evidence => "kept as evidence",
        }
    }
}

/// How the parts of a kind are supplied; by default new, and nothing said of the old ones.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Supply {
    /// New or not.
    pub state: PartState,
    /// What is laid down for each old part until it is returned, without tax; zero of what is no exchange.
    #[serde(default)]
    pub deposit: Money,
    /// Where the old parts go; none where it is not said.
    #[serde(default)]
    pub old: Option<OldPart>,
}

impl Supply {
    /// Refuses what can't be.
    ///
    /// # Errors
    /// A sentence.
    pub fn check(&self) -> Result<(), String> {
        let is_exchange = self.state == PartState::Exchange;
        if !self.deposit.is_price() {
            return Err("A deposit must be zero or more.".into());
        }
        if !is_exchange && (self.deposit != Money::default() || self.old == Some(OldPart::Exchange)) {
            return Err("Only for an exchange part is a deposit paid and the old part sent back.".into());
        }
        if is_exchange && self.old.is_some_and(|old| old != OldPart::Exchange) {
            return Err("An exchange part wants the old one back: it can’t go elsewhere.".into());
        }
        Ok(())
    }

    /// What is not new in words: "exchange, deposit 120.00 each until the old part is returned"; empty for new parts.
    pub fn state_words(&self, currency: Currency) -> String {
        match self.state {
            PartState::New => String::new(),
            PartState::Used => "used".into(),
            PartState::Exchange if self.deposit == Money::default() => "exchange".into(),
            PartState::Exchange => {
                format!("exchange, deposit {} each until the old part is returned", currency.show(self.deposit))
            }
        }
    }

    /// Where the old part goes, in words; empty where it is not said.
    pub fn old_words(&self) -> &'static str {
        match (self.state, self.old) {
            (PartState::Exchange, _) => OldPart::Exchange.words(),
            (_, old) => old.map_or("", OldPart::words),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_exchange_part_wants_the_old_one_back() {
        let supply = |state, deposit, old| Supply { state, deposit: Money::from_minor(deposit), old };
        assert_eq!(supply(PartState::Exchange, 12_000, None).check(), Ok(()));
        assert_eq!(supply(PartState::Exchange, 0, None).old_words(), "back in exchange");
        assert!(supply(PartState::Exchange, 0, Some(OldPart::Customer)).check().is_err());
        assert!(supply(PartState::Used, 100, None).check().is_err());
        assert!(supply(PartState::New, 0, Some(OldPart::Exchange)).check().is_err());
        assert_eq!(supply(PartState::New, 0, Some(OldPart::Evidence)).check(), Ok(()));
    }
}
