//! What was proposed to the customer as it was shown, and the answer with the signature under it.

use serde::{Deserialize, Serialize};

use super::{EditId, FromAfar, ProposedPage, SaidBy, Stroke};
use crate::date::Date;
use crate::money::{Charge, JobScope, Quote};

/// The answer to one line of a proposal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Consent {
    /// Do it.
    Yes,
    /// Do not do it.
    No,
    /// Not now; ask again.
    Later,
}

impl Consent {
    /// Every answer.
    pub const ALL: [Self; 3] = [Self::Yes, Self::No, Self::Later];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::No => "no",
            Self::Later => "later",
        }
    }
}

/// The answer to one job of a proposal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct JobAnswer {
    /// The job.
    pub of: JobScope,
    /// The answer.
    pub answer: Consent,
}

/// One line's answer, where a proposal was made before there were jobs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct LineAnswer {
    /// The line of the proposal.
    pub of: Charge,
    /// The answer.
    pub answer: Consent,
}

/// What the customer answered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct CustomerAnswer {
    /// The edit in which the proposal was made.
    pub proposal: EditId,
    /// An answer for each line, where the proposal had no jobs.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<LineAnswer>>"))]
    pub lines: Vec<LineAnswer>,
    /// An answer for each job.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Vec<JobAnswer>>"))]
    pub jobs: Vec<JobAnswer>,
    /// Who answered.
    pub name: String,
    /// How: "signed on the screen", "by telephone".
    #[serde(default)]
    pub way: String,
    /// When and whence, if it came by telephone or message.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub afar: Option<FromAfar>,
    /// The day on which it was noted, where the shop is. Unknown of what was answered before days were noted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub said: Option<Date>,
    /// The signature, if it was drawn.
    #[serde(default)]
    pub signature: Vec<Stroke>,
}

impl CustomerAnswer {
    /// Who answered and how.
    pub fn said_by(&self) -> SaidBy<'_> {
        let Self { name, way, afar, said, signature, .. } = self;
        SaidBy { name, way, afar: afar.as_ref(), said: *said, signature }
    }

    /// What was said to a line of what was shown.
    pub fn to(&self, shown: &Quote, of: &Charge) -> Option<Consent> {
        match shown.job_of(of) {
            Some(job) => self.jobs.iter().find(|own| own.of == job.of).map(|own| own.answer),
            None => self.lines.iter().find(|own| own.of == *of).map(|own| own.answer),
        }
    }

    /// Every answer that was given.
    pub fn given(&self) -> impl Iterator<Item = Consent> {
        let jobs = self.jobs.iter().map(|own| own.answer);
        self.lines.iter().map(|own| own.answer).chain(jobs)
    }
}

/// A proposal as it was shown, with its answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Proposed {
    /// The edit that made it.
    pub edit: EditId,
    /// Exactly what was shown.
    pub quote: Quote,
    /// The day on which it was made; none where it was not noted.
    pub made: Option<Date>,
    /// What the customer read beside the jobs; none where it was not kept.
    pub page: Option<ProposedPage>,
    /// The last answer to it.
    pub answer: Option<CustomerAnswer>,
}
