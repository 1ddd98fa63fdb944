//! What a change is about, as a person looks for it in the history.

use serde::Serialize;

use super::{Change, OnMoney, OnPart, OnReading};

/// What a change is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Topic {
    /// The engine as it came in.
    TakeIn,
    /// Tags, photos, remarks.
    Findings,
    /// Readings, and the instruments they were taken with.
    Readings,
    /// What the engine's own manual says.
    Sheet,
    /// What a person decided: outcomes, sizes, ways.
    Decisions,
    /// Items of the lists.
    Lists,
    /// Prices and estimates.
    Money,
    /// What was put to the customer and answered, and the end of the job.
    Papers,
}

impl Change {
    /// What it is about.
    pub fn topic(&self) -> Topic {
        match self {
            Self::OnIntake(_) => Topic::TakeIn,
            Self::OnPart(OnPart::Overrule { .. } | OnPart::FollowRules { .. } | OnPart::RenewCap { .. })
            | Self::OnSize(_) => Topic::Decisions,
            Self::OnPart(_) => Topic::Findings,
            Self::OnReading(OnReading::Measure { .. } | OnReading::NoteInstrument { .. }) => Topic::Readings,
            Self::OnSheet(_) => Topic::Sheet,
            Self::OnMoney(
                OnMoney::Propose { .. }
                | OnMoney::AnswerProposal { .. }
                | OnMoney::OrderStripDown { .. }
                | OnMoney::AnswerStripDown { .. },
            )
            | Self::OnJob(_) => Topic::Papers,
            Self::OnMoney(_) => Topic::Money,
            Self::OnList(_) => Topic::Lists,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_decision_on_a_part_is_none_of_its_findings() {
        let topic = |json: &str| serde_json::from_str::<Change>(json).unwrap().topic();
        assert_eq!(topic(r#"{"do":"clean","part":"piston.1"}"#), Topic::Findings);
        assert_eq!(topic(r#"{"do":"follow-rules","part":"piston.1"}"#), Topic::Decisions);
    }
}
