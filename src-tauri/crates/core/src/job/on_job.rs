//! What was done to the whole job.

use serde::{Deserialize, Serialize};

use super::known::Job;
use super::{EditId, Refusal, Refused};
use crate::date::Date;
use crate::money::GoesBack;

/// What was done to the whole job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum OnJob {
    /// Closed the job, or opened it again.
    Close {
        /// Closed.
        closed: bool,
    },
    /// The customer refused the work: the engine goes back.
    Refuse {
        /// In which way.
        goes_back: GoesBack,
        /// The day, where the shop is.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "schema", ts(optional))]
        made: Option<Date>,
    },
    /// Undid an edit; undoing an undo does the edit again.
    Undo {
        /// The edit.
        edit: EditId,
    },
}

impl OnJob {
    /// What stands in `do` of each form.
    pub(super) const DOES: &[&str] = &["close", "refuse", "undo"];

    /// Whether it fits the job: see [`Job::check`].
    pub(super) fn check(&self, _job: &Job) -> Result<(), Refused> {
        Ok(())
    }

    /// Whether it has an effect: see [`Job::fits`].
    pub(super) fn fits(&self, _job: &Job) -> Result<(), Refused> {
        Ok(())
    }

    /// What it does to the job: see [`Job::apply`].
    pub(super) fn apply(&self, id: EditId, job: &mut Job) {
        match self {
            // A job that is closed once more has been closed since the first time.
            Self::Close { closed } => job.closed = closed.then(|| job.closed.unwrap_or(id)),
            Self::Refuse { goes_back, made } => {
                job.refusal = Some(Refusal { edit: id, goes_back: *goes_back, made: *made });
            }
            // Settled before the fold begins.
            Self::Undo { .. } => {}
        }
    }

    /// What was done, in words: see [`Edit::sentence`](super::Edit::sentence).
    pub(super) fn sentence(&self, _job: &Job) -> String {
        match self {
            Self::Close { closed: true } => "Job closed".into(),
            Self::Close { closed: false } => "Job opened again".into(),
            Self::Refuse { goes_back, .. } => format!("The customer refused the work: {}", goes_back.words()),
            Self::Undo { .. } => "Undid an entry".into(),
        }
    }
}
