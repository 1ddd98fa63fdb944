//! What papers are printed on.

use serde::{Deserialize, Serialize};

/// A size of paper.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum PaperSize {
    /// 210 mm × 297 mm (ISO 216).
    #[default]
    A4,
    /// 8.5 in × 11 in.
    Letter,
}

impl PaperSize {
    /// Its written form.
    pub fn name(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }

    /// The one of this written form; A4 if there is none.
    pub fn named(name: &str) -> Self {
        if name == Self::Letter.name() { Self::Letter } else { Self::A4 }
    }
}
