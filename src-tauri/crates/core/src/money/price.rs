//! What the shop charges: a list of prices by kind of part and work.

use serde::{Deserialize, Serialize};

use super::{Currency, EstimateRules, Money, StandingPrice, StripDownTerms, Tax};
use crate::engine::PartKind;
use crate::words::Terms;
use crate::work::{Hands, Work};

/// What a price is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PriceKey {
    /// The kind of part. Shells are priced by the pair, thrust faces by the set.
    pub kind: PartKind,
    /// The work.
    pub work: Work,
}

impl PriceKey {
    /// Whether it may cost more than the engine is worth: a new crankshaft or block (our judgement).
    pub fn may_outweigh_engine(self) -> bool {
        self.work == Work::Replace && matches!(self.kind, PartKind::Crankshaft | PartKind::Block)
    }
}

/// The price of one piece; at least one of its three parts is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Price {
    /// What it is for.
    pub of: PriceKey,
    /// What the part costs, without tax.
    #[serde(default)]
    pub part: Money,
    /// What the machine shop charges, without tax.
    #[serde(default)]
    pub machining: Money,
    /// The shop's own time in minutes.
    #[serde(default)]
    pub minutes: u32,
    /// Who usually does it for this shop; the trade's usual way if not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub hands: Option<Hands>,
}

/// The shop's prices, all without tax, in one currency.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct PriceList {
    /// The currency.
    pub currency: Currency,
    /// What an hour of the shop's own time costs.
    #[serde(default)]
    pub hour: Money,
    /// The tax.
    #[serde(default)]
    pub tax: Tax,
    /// The prices.
    #[serde(default)]
    pub prices: Vec<Price>,
    /// What stands on every bill, one line of each kind at most.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<StandingPrice>>"))]
    pub standing: Vec<StandingPrice>,
    /// What the law of the place asks of an estimate.
    #[serde(default, skip_serializing_if = "EstimateRules::is_silent")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<EstimateRules>"))]
    pub estimate_rules: EstimateRules,
    /// For how many days a proposal holds, 1 to 365; not said if none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub valid_days: Option<u16>,
    /// What the shop usually asks for opening an engine; not said if none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub strip_down: Option<StripDownTerms>,
}

impl PriceList {
    /// Most prices of one list: each work of each kind of part, and room beside (our judgement).
    pub(crate) const MOST: usize = 2_000;

    /// The price of something, if the shop has entered one: prices are never made up.
    pub fn price(&self, of: PriceKey) -> Option<&Price> {
        self.prices.iter().find(|price| price.of == of)
    }

    /// Enters a price in place of the one for the same, or as a further one.
    pub fn enter(&mut self, price: Price) {
        match self.prices.iter_mut().find(|old| old.of == price.of) {
            Some(old) => *old = price,
            None => self.prices.push(price),
        }
    }

    /// What so many pieces cost, without tax; the shop's time is rounded once, on all of them. Work that is done here has no
    /// machining, and where the machine shop does it, its price must be known. None where nothing is entered for the hands
    /// that do it.
    pub fn cost(&self, price: &Price, hands: Hands, pieces: u32) -> Option<Money> {
        let count = i64::from(pieces);
        let time = self.hour.share(i64::from(price.minutes) * count, 60);
        // A new part has its price whoever fits it.
        let of_machine_shop = hands == Hands::MachineShop || price.of.work == Work::Replace;
        let each = if of_machine_shop { price.part + price.machining } else { price.part };
        let is_entered = match hands {
            _ if price.of.work == Work::Replace => true,
            Hands::MachineShop => each != Money::default(),
            Hands::Here => each != Money::default() || price.minutes > 0,
        };
        let cost = each.times(count) + time;
        is_entered.then_some(cost)
    }

    /// Refuses prices that can't be.
    ///
    /// # Errors
    /// A sentence: which figure, what is wrong with it, what would be right.
    pub fn check(&self, terms: Terms) -> Result<(), String> {
        if self.prices.len() > Self::MOST {
            return Err(format!("{} prices: {} at most.", self.prices.len(), Self::MOST));
        }
        if self.tax.rate > 10_000 {
            return Err("A tax above 100 per cent can’t be right: give the rate in per cent.".into());
        }
        if !self.hour.is_price() {
            return Err("The price of an hour must be zero or more.".into());
        }
        let is_twice = |(at, line): (usize, &StandingPrice)| self.standing.iter().take(at).any(|own| own.of == line.of);
        if self.standing.iter().enumerate().any(is_twice) {
            return Err("A standing line is entered twice: enter each once.".into());
        }
        if self.valid_days.is_some_and(|days| days == 0 || days > 365) {
            return Err("A proposal holds from 1 to 365 days: enter how many.".into());
        }
        self.estimate_rules.check()?;
        self.strip_down.as_ref().map_or(Ok(()), StripDownTerms::check)?;
        self.standing.iter().try_for_each(StandingPrice::check)?;
        self.prices.iter().try_for_each(|price| price.check(terms))
    }
}

impl Price {
    /// Refuses a price that can't be.
    ///
    /// # Errors
    /// A sentence.
    pub fn check(&self, terms: Terms) -> Result<(), String> {
        let name = format!("{}, {}", self.of.kind.row().name.said(terms), self.of.kind.work_words(self.of.work));
        if !self.part.is_price() || !self.machining.is_price() {
            return Err(format!("{name}: a price must be zero or more, and no more than any rebuild costs."));
        }
        const MOST_MINUTES: u32 = 100 * 60;
        if self.minutes > MOST_MINUTES {
            return Err(format!(
                "{name}: {} minutes for one piece: give the minutes of one, at most 100 hours.",
                self.minutes
            ));
        }
        Ok(())
    }
}
