//! How strongly a piece of evidence speaks.

use serde::Serialize;

/// A step of strength: those of Jeffreys' scale for the factor by which evidence changes the odds (1 to 3.2, to 10, to
/// 100, above), from memory; the words are ours.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Strength {
    /// Up to 3.2 times.
    Slight,
    /// Up to 10 times.
    Clear,
    /// Up to 100 times.
    Strong,
    /// More than that.
    VeryStrong,
}

impl Strength {
    /// All, the weakest first.
    pub const ALL: [Self; 4] = [Self::Slight, Self::Clear, Self::Strong, Self::VeryStrong];

    /// Of a weight: the doublings of the odds, positive for a cause and negative against it.
    pub fn of(weight: f64) -> Self {
        let reached = Self::ALL.into_iter().rev().find(|strength| weight.abs() > strength.above());
        reached.unwrap_or(Self::Slight)
    }

    /// The weight above which evidence is so strong, in doublings of the odds.
    pub fn above(self) -> f64 {
        match self {
            Self::Slight => 0.0,
            Self::Clear => 1.7,
            Self::Strong => 3.3,
            Self::VeryStrong => 6.6,
        }
    }

    /// How it speaks, in words: "clearly".
    pub fn words(self) -> &'static str {
        match self {
            Self::Slight => "slightly",
            Self::Clear => "clearly",
            Self::Strong => "strongly",
            Self::VeryStrong => "very strongly",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stronger_evidence_has_a_stronger_word() {
        let words: Vec<&str> = [0.0, 0.3, 1.7, 1.8, -3.4, 7.0].map(|weight| Strength::of(weight).words()).into();
        assert_eq!(words, ["slightly", "slightly", "slightly", "clearly", "strongly", "very strongly"]);
        assert!(Strength::ALL.is_sorted_by(|a, b| a < b && a.above() < b.above()));
    }
}
