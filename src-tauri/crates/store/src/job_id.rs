//! The name of a job.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};
use wearbook_core::label::JobStart;

/// The name of a job: 128 random bits, written as 32 hexadecimal digits, so that jobs of two shops never share one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "string"))]
#[serde(try_from = "String", into = "String")]
pub struct JobId(u128);

impl JobId {
    /// From its bits.
    pub fn from_bits(bits: u128) -> Self {
        Self(bits)
    }

    /// How it begins, as much of it as a label holds.
    pub fn start(self) -> JobStart {
        JobStart::of(self.0)
    }
}

impl fmt::Display for JobId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:032x}", self.0)
    }
}

impl FromStr for JobId {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let canonical = text.len() == 32 && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
        let bits = if canonical { u128::from_str_radix(text, 16).ok() } else { None };
        bits.map(Self).ok_or_else(|| {
            let shown: String = text.chars().take(60).collect();
            format!("“{shown}” names no job: it should be 32 hexadecimal digits in lower case.")
        })
    }
}

impl TryFrom<String> for JobId {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        text.parse()
    }
}

impl From<JobId> for String {
    fn from(id: JobId) -> Self {
        id.to_string()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for JobId {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "JobId".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "pattern": "^[0-9a-f]{32}$",
            "description": "The name of a job: 128 random bits.",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(text: &str, accepted: bool) {
        let read = text.parse::<JobId>();
        assert_eq!(read.is_ok(), accepted, "{text}");
        if let Ok(id) = read {
            assert_eq!(id.to_string(), text);
        }
    }

    #[test]
    fn only_the_one_form_is_read() {
        check("00000000000000000000000000000001", true);
        check("0123456789abcdef0123456789abcdef", true);
        check("0123456789ABCDEF0123456789abcdef", false);
        check("0123456789abcdef", false);
        check("+123456789abcdef0123456789abcdef", false);
        check("", false);
    }
}
