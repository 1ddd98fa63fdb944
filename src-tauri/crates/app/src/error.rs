//! Errors at the border: a code for programs, a sentence for people.

use serde::Serialize;
use wearbook_store::StoreError;

/// Why an action was refused. As JSON it is exactly these two fields.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, thiserror::Error)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[error("{message}")]
pub struct Error {
    /// What kind: lower case words joined by hyphens. The page acts on it and never on the sentence.
    pub code: &'static str,
    /// What is wrong and what would be right.
    pub message: String,
}

impl Error {
    /// A refusal.
    pub fn new(code: &'static str, message: impl Into<String>) -> Self {
        Self { code, message: message.into() }
    }

    /// A change that does not fit its job.
    pub(crate) fn change(message: impl Into<String>) -> Self {
        Self::new("change-refused", message)
    }
}

impl From<StoreError> for Error {
    fn from(error: StoreError) -> Self {
        Self::new(error.code(), error.to_string())
    }
}

impl From<wearbook_report::NotSet> for Error {
    fn from(error: wearbook_report::NotSet) -> Self {
        let code = if matches!(error, wearbook_report::NotSet::Stopped(_)) { "stopped" } else { "report" };
        Self::new(code, error.to_string())
    }
}

impl From<wearbook_core::job::Refused> for Error {
    fn from(refused: wearbook_core::job::Refused) -> Self {
        Self::change(refused.0)
    }
}

impl From<wearbook_photo::Refusal> for Error {
    fn from(refusal: wearbook_photo::Refusal) -> Self {
        Self::new(refusal.code(), refusal.message())
    }
}
