//! The name of a shot.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

/// The name of a photo that the camera was asked for, before its content names it: 128 random bits, written as 32
/// hexadecimal digits. Its file is named so too; a page can name no other file by it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "string"))]
#[serde(try_from = "String", into = "String")]
pub struct ShotId(String);

impl ShotId {
    /// The name of its file.
    pub(crate) fn file_name(&self) -> String {
        format!("{}.jpg", self.0)
    }

    /// The shot whose file is named so.
    pub(crate) fn of_file(name: &str) -> Option<Self> {
        name.strip_suffix(".jpg")?.parse().ok()
    }
}

impl fmt::Display for ShotId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl FromStr for ShotId {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        if text.len() == 32 && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f')) {
            return Ok(Self(text.into()));
        }
        let shown: String = text.chars().take(60).collect();
        Err(format!("“{shown}” names no shot: it should be 32 hexadecimal digits in lower case."))
    }
}

impl TryFrom<String> for ShotId {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        text.parse()
    }
}

impl From<ShotId> for String {
    fn from(id: ShotId) -> Self {
        id.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(name: &str, expected: Option<&str>) {
        let found = ShotId::of_file(name);
        assert_eq!(found.as_ref().map(|id| id.0.as_str()), expected, "{name}");
        if let Some(id) = found {
            assert_eq!(id.file_name(), name);
        }
    }

    #[test]
    fn a_shot_names_one_file_and_no_path() {
        check("0123456789abcdef0123456789abcdef.jpg", Some("0123456789abcdef0123456789abcdef"));
        check("0123456789abcdef0123456789abcdef.JPG", None);
        check("0123456789ABCDEF0123456789abcdef.jpg", None);
        check("../456789abcdef0123456789abcdef0.jpg", None);
        check(".jpg", None);
    }
}
