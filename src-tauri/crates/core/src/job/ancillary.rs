//! What came with the engine: starter, brackets, carburettor. It goes back with it.

use serde::{Deserialize, Serialize};

use super::{EditId, PhotoId};

/// Something that came with the engine, as it is noted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct NotedAncillary {
    /// What.
    pub what: String,
    /// In which state, or anything else worth knowing; may be empty.
    #[serde(default)]
    pub remark: String,
}

/// Something that came with the engine.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Ancillary {
    /// The edit that noted it.
    pub edit: EditId,
    /// What.
    pub what: String,
    /// In which state; may be empty.
    pub remark: String,
    /// What it looked like.
    pub photo: Option<PhotoId>,
    /// Whether it was given back.
    pub given_back: bool,
}

impl Ancillary {
    /// In words: "Starter: cracked flange".
    pub fn words(&self) -> String {
        match self.remark.trim() {
            "" => self.what.trim().to_owned(),
            remark => format!("{}: {}", self.what.trim(), remark.trim_end_matches('.')),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::job::testing::{edit, then};
    use crate::job::{Change, Edit, Job};
    use serde_json::{Value, json};

    fn starter() -> Value {
        json!({ "do": "add-ancillary", "item": { "what": "Starter", "remark": "Cracked flange." } })
    }

    fn open(job: &Job) -> Vec<String> {
        assess(job).still_open.into_iter().map(|open| open.words).collect()
    }

    #[test]
    fn what_was_not_given_back_is_still_open() {
        let mut job = Job::default();
        let item = then(&mut job, 1, &starter());
        assert_eq!(job.ancillary(item).map(Ancillary::words).as_deref(), Some("Starter: Cracked flange"));
        assert_eq!(open(&job), ["Came with the engine, not given back: Starter: Cracked flange."]);
        then(&mut job, 2, &json!({ "do": "give-back", "item": item, "given": true }));
        assert!(open(&job).is_empty());
        then(&mut job, 3, &json!({ "do": "give-back", "item": item, "given": false }));
        assert_eq!(open(&job).len(), 1);
        then(&mut job, 4, &json!({ "do": "remove-ancillary", "item": item }));
        assert!(open(&job).is_empty() && job.ancillaries.is_empty());
    }

    #[test]
    fn it_has_a_photo_at_most_which_is_kept_with_the_job() {
        let mut job = Job::default();
        let item = then(&mut job, 1, &starter());
        let photo = |photo: Value| json!({ "do": "photograph-ancillary", "item": item, "photo": photo });
        let [one, other] = ["a", "b"].map(|digit| digit.repeat(64));
        for digits in [&one, &other] {
            let change: Change = serde_json::from_value(photo(json!(digits))).unwrap();
            assert_eq!(change.photo().map(PhotoId::as_str), Some(digits.as_str()));
            then(&mut job, 2, &photo(json!(digits)));
        }
        assert_eq!(job.ancillaries[0].photo.as_ref().map(PhotoId::as_str), Some(other.as_str()));
        then(&mut job, 3, &photo(Value::Null));
        assert_eq!(job.ancillaries[0].photo, None);
    }

    #[test]
    fn what_is_not_there_is_refused() {
        let refused = |change: Value, because: &str| {
            let change: Change = serde_json::from_value(change).unwrap();
            let why = Job::default().check(&change).unwrap_err().to_string();
            assert!(why.starts_with(because), "{why}");
        };
        refused(json!({ "do": "add-ancillary", "item": { "what": " " } }), "Say what came with the engine");
        refused(json!({ "do": "add-ancillary", "item": { "what": "x".repeat(201) } }), "The name has 201 characters");
        for (change, more) in [
            ("remove-ancillary", json!({})),
            ("give-back", json!({ "given": true })),
            ("photograph-ancillary", json!({})),
        ] {
            let mut all = json!({ "do": change, "item": edit(9) });
            all.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
            refused(all, "Nothing of that kind");
        }
    }

    #[test]
    fn it_reads_as_a_sentence() {
        let job = Job { ancillaries: vec![], ..Job::default() };
        let says = |change: Value| Edit { id: edit(1), change: serde_json::from_value(change).unwrap() }.sentence(&job);
        assert_eq!(says(starter()), "Came with the engine: Starter");
        let gone = json!({ "do": "give-back", "item": edit(9), "given": true });
        assert_eq!(says(gone), "Given back: something that was removed");
    }
}
