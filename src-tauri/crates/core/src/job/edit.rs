//! An edit: one thing that a person did, with when and where they did it.

use serde::{Deserialize, Deserializer, Serialize};

use super::known::Job;
use super::{Change, EditId, OnJob};

/// A change as it stands in a log: known, or from a newer version and kept as it came.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(untagged)]
pub enum RecordedChange {
    /// One of the forms of this version.
    Known(Change),
    /// Something else.
    #[cfg_attr(feature = "schema", ts(type = "{ do: string }"))]
    Unknown(#[cfg_attr(feature = "schema", schemars(schema_with = "unknown_change"))] serde_json::Value),
}

impl<'de> Deserialize<'de> for RecordedChange {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let value = serde_json::Value::deserialize(deserializer)?;
        Ok(Change::read(&value).map_or(Self::Unknown(value), Self::Known))
    }
}

impl RecordedChange {
    /// The edit that it takes back, if that is what it does.
    pub fn undoes(&self) -> Option<EditId> {
        match self {
            Self::Known(Change::OnJob(OnJob::Undo { edit })) => Some(*edit),
            _ => None,
        }
    }
}

#[cfg(feature = "schema")]
fn unknown_change(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
    schemars::json_schema!({
        "type": "object",
        "required": ["do"],
        "properties": { "do": { "type": "string" } },
        "description": "What a newer version recorded.",
    })
}

/// One entry of the log.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Edit {
    /// When and on which device; unique.
    pub id: EditId,
    /// What was done.
    pub change: RecordedChange,
}

impl Edit {
    /// What was done, in a sentence, for the history that a person can read and undo from. Positions are named by the
    /// job's arrangement.
    pub fn sentence(&self, job: &Job) -> String {
        match &self.change {
            RecordedChange::Known(change) => change.sentence(job),
            RecordedChange::Unknown(_) => "Something that a newer version of this program recorded".into(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;
    use crate::job::OnPart;
    use crate::job::testing::{arranged, edit};

    #[track_caller]
    fn reads_back(json: &str) -> RecordedChange {
        let change: RecordedChange = serde_json::from_str(json).unwrap();
        let again: serde_json::Value = serde_json::to_value(&change).unwrap();
        assert_eq!(again, serde_json::from_str::<serde_json::Value>(json).unwrap());
        change
    }

    #[test]
    fn known_changes_have_the_published_form() {
        let change =
            reads_back(r#"{"do":"tag","part":"main-shell.3.lower","tag":"scoring","grade":3,"zones":["front-crown"]}"#);
        assert!(matches!(change, RecordedChange::Known(Change::OnPart(OnPart::Tag { .. }))));
        assert!(matches!(reads_back(r#"{"do":"clean","part":"piston.1"}"#), RecordedChange::Known(_)));
    }

    #[test]
    fn a_change_of_a_newer_version_is_kept_as_it_came() {
        for json in [
            r#"{"do":"weigh","part":"piston.1","grams":512}"#,
            r#"{"do":"tag","part":"gearbox.1","tag":"scoring","grade":1}"#,
            "17",
        ] {
            assert!(matches!(reads_back(json), RecordedChange::Unknown(_)), "{json}");
        }
    }

    #[track_caller]
    fn says(json: serde_json::Value, sentence: &str) {
        let edit = Edit { id: edit(1), change: serde_json::from_value(json).unwrap() };
        let job = arranged(Arrangement::inline(4));
        assert_eq!(edit.sentence(&job), sentence);
    }

    #[test]
    fn edits_read_as_sentences() {
        use serde_json::json;
        says(
            json!({"do": "tag", "part": "main-shell.3.lower", "tag": "scoring", "grade": 3, "zones": ["front-crown"]}),
            "Main 3, lower shell: scoring, grade 3 (front edge, crown)",
        );
        says(
            json!({"do": "mark-up", "part": "piston.1", "photo": "a".repeat(64),
                "markup": {"shape": "note", "at": [1, 2], "note": "crack"}}),
            "Piston 1: note drawn on a photo: crack",
        );
        says(json!({"do": "clean", "part": "piston.1"}), "Piston 1: looked at and clean");
        says(
            json!({"do": "measure", "reading": {"part": "crankpin.2", "quantity": "diameter",
                "spot": {"station": "front", "direction": "a"}, "phase": "machined", "value": "2.2383 in"}}),
            "Crankpin 2: diameter (front, A; as machined) 2.2383 in",
        );
        says(
            json!({"do": "choose-way", "kind": "bore", "way": "sleeve", "reason": "Only one."}),
            "Way for the cylinder bores: sleeve those that need it, and keep the pistons that are sound",
        );
        let tick = |item: serde_json::Value, done: u32| json!({"do": "tick", "item": item, "tick": {"done": done}});
        let shells = json!({"key": {"of": "order", "kind": "main-shell"}, "words": "Main bearing shells, 0.010 in undersize",
            "size": 254_000, "quantity": 5});
        says(tick(shells, 4), "To order: Main bearing shells, 0.010 in undersize, 4 of 5 done");
        says(
            tick(json!("machine crankpin 0.010 in undersize"), 1),
            "For the machine shop: Crankpins, 0.010 in undersize, done",
        );
        says(tick(json!("look crankpin.2"), 0), "Look at or measure: Crankpin 2, not done");
        says(json!({"do": "weigh"}), "Something that a newer version of this program recorded");
    }
}
