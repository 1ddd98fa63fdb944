//! What opening an engine costs, and what it costs to give it back where the customer then refuses the work.
//!
//! What is told before an engine is opened follows 16 CCR 3353(c): the cost of taking it apart, of putting it together again
//! if the work is refused, of gaskets and seals that opening destroys, and the longest time until it is put together.

use serde::{Deserialize, Serialize};

use super::{Currency, Money, Tax};

/// How an engine goes back to a customer who refuses the work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum GoesBack {
    /// Put back together.
    PutTogether,
    /// In boxes, as it was taken apart.
    InBoxes,
}

impl GoesBack {
    /// Both.
    pub const ALL: [Self; 2] = [Self::PutTogether, Self::InBoxes];

    /// In words, lower case.
    pub fn words(self) -> &'static str {
        match self {
            Self::PutTogether => "put back together",
            Self::InBoxes => "returned in boxes",
        }
    }

    /// What it is on a bill.
    fn line(self) -> &'static str {
        match self {
            Self::PutTogether => "Putting it back together",
            Self::InBoxes => "Returning it in boxes",
        }
    }
}

/// What a shop asks for opening an engine, without tax. What is not known has no price yet: none is made up.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StripDownTerms {
    /// Taking it apart and looking at it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub strip_down: Option<Money>,
    /// Putting it back together if the work is refused.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub put_together: Option<Money>,
    /// Returning it in boxes if the work is refused.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub in_boxes: Option<Money>,
    /// Gaskets and seals that are destroyed by opening; may be empty.
    #[serde(default)]
    pub destroyed: String,
    /// The most days until it is put back together or returned, 1 to 365; not said if none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub most_days: Option<u16>,
}

/// Longest sentence on what is destroyed, in characters.
const MOST_DESTROYED: usize = 1_000;

impl StripDownTerms {
    /// What it costs to give the engine back; none without a price.
    pub fn back(&self, how: GoesBack) -> Option<Money> {
        match how {
            GoesBack::PutTogether => self.put_together,
            GoesBack::InBoxes => self.in_boxes,
        }
    }

    /// Whether anything has a price.
    pub fn is_priced(&self) -> bool {
        [self.strip_down, self.put_together, self.in_boxes].iter().any(Option::is_some)
    }

    /// Refuses terms that can't be.
    ///
    /// # Errors
    /// A sentence.
    pub fn check(&self) -> Result<(), String> {
        let amounts = [self.strip_down, self.put_together, self.in_boxes];
        if amounts.into_iter().flatten().any(|amount| !amount.is_price()) {
            return Err("Strip-down: an amount must be zero or more, and no more than any rebuild costs.".into());
        }
        if self.most_days.is_some_and(|days| days == 0 || days > 365) {
            return Err("Strip-down: the longest time is from 1 to 365 days.".into());
        }
        let length = self.destroyed.chars().count();
        if length > MOST_DESTROYED {
            return Err(format!("What is destroyed has {length} characters: {MOST_DESTROYED} at most."));
        }
        Ok(())
    }
}

/// What the customer agrees to before anything is opened.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct StripDownOrder {
    /// The currency of all amounts.
    pub currency: Currency,
    /// The tax on them.
    #[serde(default)]
    pub tax: Tax,
    /// What is asked for it.
    pub terms: StripDownTerms,
    /// Whether the customer wants old parts back; none if that was not asked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub old_parts: Option<bool>,
    /// The first estimate of the whole rebuild, with tax; none if none was given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub estimate: Option<Money>,
    /// What came with the engine.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<String>>"))]
    pub received: Vec<String>,
    /// Whatever else was agreed; may be empty.
    #[serde(default)]
    pub remark: String,
}

/// A line of a strip-down order or of its bill.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct StripDownLine {
    /// What it is for.
    pub what: String,
    /// What it costs; none without a price.
    pub sum: Option<TaxedSum>,
}

/// An amount, the tax on it, and both together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct TaxedSum {
    /// Without tax.
    pub net: Money,
    /// The tax.
    pub tax: Money,
    /// With tax.
    pub gross: Money,
}

impl StripDownOrder {
    /// What each step costs, and what the customer pays in all who refuses the work afterwards.
    pub fn lines(&self) -> Vec<StripDownLine> {
        let back =
            GoesBack::ALL.map(|how| self.line(format!("{}, if you refuse", how.line()), &[self.terms.back(how)]));
        let all =
            GoesBack::ALL.map(|how| self.line(format!("If you refuse, {}: in all", how.words()), &self.refused(how)));
        [self.opening()].into_iter().chain(back).chain(all).collect()
    }

    /// The bill of an engine that goes back in such a way.
    pub fn bill(&self, how: GoesBack) -> Vec<StripDownLine> {
        vec![
            self.opening(),
            self.line(how.line().into(), &[self.terms.back(how)]),
            self.line("In all".into(), &self.refused(how)),
        ]
    }

    fn opening(&self) -> StripDownLine {
        self.line("Taking it apart and looking at it".into(), &[self.terms.strip_down])
    }

    fn refused(&self, how: GoesBack) -> [Option<Money>; 2] {
        [self.terms.strip_down, self.terms.back(how)]
    }

    /// Without a price as long as one of its amounts has none.
    fn line(&self, what: String, amounts: &[Option<Money>]) -> StripDownLine {
        let nets: Option<Vec<Money>> = amounts.iter().copied().collect();
        let sum = nets.map(|nets| {
            let (net, tax) = (nets.iter().copied().sum(), self.tax.on(&nets));
            TaxedSum { net, tax, gross: net + tax }
        });
        StripDownLine { what, sum }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::money::TaxRounding;

    fn order(rate: u32, rounding: TaxRounding, amounts: [Option<i64>; 3]) -> StripDownOrder {
        let [strip_down, put_together, in_boxes] = amounts.map(|minor| minor.map(Money::from_minor));
        let terms = StripDownTerms { strip_down, put_together, in_boxes, ..StripDownTerms::default() };
        StripDownOrder { tax: Tax { rate, rounding }, terms, ..StripDownOrder::default() }
    }

    /// What each line costs with tax; 0 for no price yet.
    #[track_caller]
    fn check(order: &StripDownOrder, expected: [i64; 5]) {
        let gross = |line: &StripDownLine| line.sum.map_or(0, |sum| sum.gross.minor());
        assert_eq!(order.lines().iter().map(gross).collect::<Vec<_>>(), expected);
    }

    // Own arithmetic.
    #[test]
    fn tax_is_rounded_on_the_total_or_on_each_line() {
        // 8.25 % of 100.02 is 8.25165, of 50.02 is 4.12665, of 150.04 is 12.3783.
        let amounts = [Some(10_002), Some(5_002), Some(0)];
        check(&order(825, TaxRounding::Total, amounts), [10_827, 5_415, 0, 16_242, 10_827]);
        // 19 % of 0.03 is 0.0057, which is 0.01; of 0.06 it is 0.0114, which is 0.01 too.
        let cents = [Some(3), Some(3), None];
        check(&order(1_900, TaxRounding::Total, cents), [4, 4, 0, 7, 0]);
        check(&order(1_900, TaxRounding::Line, cents), [4, 4, 0, 8, 0]);
    }

    #[test]
    fn what_has_no_price_makes_no_total() {
        let open = order(1_900, TaxRounding::Total, [Some(40_000), None, Some(3_000)]);
        let unpriced: Vec<bool> = open.bill(GoesBack::PutTogether).iter().map(|line| line.sum.is_none()).collect();
        assert_eq!(unpriced, [false, true, true]);
        assert!(open.bill(GoesBack::InBoxes).iter().all(|line| line.sum.is_some()));
        assert!(!StripDownTerms::default().is_priced());
        // Free of charge is a price.
        assert!(StripDownTerms { in_boxes: Some(Money::default()), ..StripDownTerms::default() }.is_priced());
    }

    #[test]
    fn terms_that_cannot_be_are_refused() {
        let days = |days| StripDownTerms { most_days: Some(days), ..StripDownTerms::default() }.check();
        assert!(days(0).is_err() && days(366).is_err() && days(1).is_ok() && days(365).is_ok());
        let below = StripDownTerms { strip_down: Some(Money::from_minor(-1)), ..StripDownTerms::default() };
        assert!(below.check().is_err());
        assert!(StripDownTerms { destroyed: "x".repeat(1_001), ..StripDownTerms::default() }.check().is_err());
    }
}
