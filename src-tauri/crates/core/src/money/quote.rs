//! What the rebuild costs: lines and their sum.

use serde::{Deserialize, Serialize};

use super::{Charge, Currency, Money, PartState, PriceList, ProposedJob};
use crate::engine::Part;

/// A line of a quote.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct QuoteLine {
    /// What it is for.
    pub of: Charge,
    /// In words: "Main bearing shells: replace".
    pub what: String,
    /// The parts it is about.
    pub parts: Vec<Part>,
    /// How many pieces are charged: pairs of shells, else parts.
    pub quantity: u32,
    /// What one piece costs without tax; none if the shop has entered no price.
    pub each: Option<Money>,
    /// What the line costs without tax; none without a price.
    pub net: Option<Money>,
    /// Why: the reason of the decision that weighs most.
    pub because: String,
    /// In what state the part is bought; none of what is no part, and in what was proposed before it was noted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub state: Option<PartState>,
}

/// What the rebuild costs.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Quote {
    /// The currency of all amounts.
    pub currency: Currency,
    /// The lines.
    pub lines: Vec<QuoteLine>,
    /// The jobs in which they are put to the customer; none in what was proposed before there were jobs: there each line
    /// was one.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<ProposedJob>>"))]
    pub jobs: Vec<ProposedJob>,
    /// The sum of the lines that have a price, without tax.
    pub net: Money,
    /// The tax on it.
    pub tax: Money,
    /// The rate of tax, in words.
    pub tax_rate: String,
    /// Both together.
    pub gross: Money,
    /// How many lines have no price yet.
    pub without_price: u32,
    /// For how many days it holds once it is proposed; not said if none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub valid_days: Option<u16>,
}

impl Quote {
    /// Adds lines up.
    pub fn of(lines: Vec<QuoteLine>, prices: &PriceList) -> Self {
        let priced: Vec<Money> = lines.iter().filter_map(|line| line.net).collect();
        let (net, tax) = (priced.iter().copied().sum(), prices.tax.on(&priced));
        Self {
            currency: prices.currency,
            net,
            tax,
            tax_rate: prices.tax.words(),
            gross: net + tax,
            without_price: u32::try_from(lines.len() - priced.len()).unwrap_or(u32::MAX),
            lines,
            jobs: vec![],
            valid_days: prices.valid_days,
        }
    }

    /// The job to which a line belongs.
    pub fn job_of(&self, of: &Charge) -> Option<&ProposedJob> {
        self.jobs.iter().find(|job| job.lines.contains(of))
    }

    /// The lines of a job, in their order.
    pub fn lines_of<'a>(&'a self, job: &'a ProposedJob) -> impl Iterator<Item = &'a QuoteLine> {
        self.lines.iter().filter(|line| job.lines.contains(&line.of))
    }
}
