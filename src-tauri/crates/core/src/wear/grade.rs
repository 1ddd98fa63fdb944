//! How bad: four steps that hand and eye can check.

use serde::{Deserialize, Serialize};

/// The grade of a tag. For scratches: 1 seen, not felt; 2 felt with a fingernail; 3 catches a fingernail; 4 metal gone
/// or moved. Every tag has its own four sentences ([`super::TagRow::grades`]).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[cfg_attr(feature = "schema", ts(type = "1 | 2 | 3 | 4"))]
#[serde(try_from = "u8", into = "u8")]
pub struct Grade(#[cfg_attr(feature = "schema", schemars(range(min = 1, max = 4)))] u8);

impl Grade {
    /// The mildest.
    pub const ONE: Self = Self(1);
    /// Felt, not caught.
    pub const TWO: Self = Self(2);
    /// Catches a fingernail, or its like.
    pub const THREE: Self = Self(3);
    /// The severest.
    pub const FOUR: Self = Self(4);
    /// All four, mildest first.
    pub const ALL: [Self; 4] = [Self::ONE, Self::TWO, Self::THREE, Self::FOUR];

    /// As a number from 1 to 4.
    pub fn number(self) -> u8 {
        self.0
    }
}

impl TryFrom<u8> for Grade {
    type Error = String;

    fn try_from(number: u8) -> Result<Self, String> {
        if (1..=4).contains(&number) {
            return Ok(Self(number));
        }
        Err(format!("Grade {number}: grades go from 1 to 4."))
    }
}

impl From<Grade> for u8 {
    fn from(grade: Grade) -> Self {
        grade.0
    }
}
