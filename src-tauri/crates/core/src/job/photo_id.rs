//! Photos are named by their content.

use serde::{Deserialize, Serialize};

/// The name of a photo's content: its SHA-256 as 64 hexadecimal digits.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(try_from = "String", into = "String")]
pub struct PhotoId(#[cfg_attr(feature = "schema", schemars(regex(pattern = "^[0-9a-f]{64}$")))] String);

impl PhotoId {
    /// As text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for PhotoId {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        if text.len() == 64 && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f')) {
            return Ok(Self(text));
        }
        Err("A photo is named by 64 hexadecimal digits.".into())
    }
}

impl From<PhotoId> for String {
    fn from(id: PhotoId) -> Self {
        id.0
    }
}
