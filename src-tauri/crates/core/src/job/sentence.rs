//! An edit in a sentence, for the history that a person can read and undo from.

use super::{Answer, Change, Edit, Job, Marking, RecordedChange};
use crate::engine::{Arrangement, Part};
use crate::wear::Zone;

impl Edit {
    /// What was done, in words. Positions are named by the job's arrangement.
    pub fn sentence(&self, job: &Job) -> String {
        let RecordedChange::Known(change) = &self.change else {
            return "Something that a newer version of this program recorded".into();
        };
        let named = |part: &Part| match &job.arrangement {
            Some(arrangement) => part.label(arrangement),
            None => part.label(&Arrangement::inline(1)),
        };
        match change {
            Change::Fill { field, text } if text.trim().is_empty() => format!("{} cleared", field.label()),
            Change::Fill { field, text } => format!("{}: {}", field.label(), first_words(text)),
            Change::Recall { fact, answer } => {
                let answer = match answer {
                    Answer::Yes => "yes",
                    Answer::No => "no",
                    Answer::Unknown => "not known",
                };
                format!("{} {answer}", fact.question())
            }
            Change::Arrange { arrangement } => format!("Arrangement: {}", arrangement.summary()),
            Change::NoteMark { place, mark } => {
                let how = if mark.marking == Marking::Found { "marked" } else { "marked by hand" };
                format!("{} is {how} “{}”", place.label(), mark.text.trim())
            }
            Change::AddPhoto { part, .. } => format!("{}: photo added", named(part)),
            Change::RemovePhoto { part, .. } => format!("{}: photo taken off", named(part)),
            Change::Tag { part, tag, grade, zones } => {
                let places: Vec<&str> = zones.iter().copied().map(Zone::label).collect();
                let places = if places.is_empty() { String::new() } else { format!(" ({})", places.join("; ")) };
                format!("{}: {}, grade {}{places}", named(part), tag.row().name, grade.number())
            }
            Change::Untag { part, tag } => format!("{}: {} taken off", named(part), tag.row().name),
            Change::Clean { part } => format!("{}: looked at and clean", named(part)),
            Change::Remark { part, text } if text.trim().is_empty() => format!("{}: remark cleared", named(part)),
            Change::Remark { part, text } => format!("{}: {}", named(part), first_words(text)),
            Change::Overrule { part, outcome, .. } => {
                format!("{}: decided “{}” against the rules", named(part), outcome.words())
            }
            Change::FollowRules { part } => format!("{}: back to the rules’ view", named(part)),
            Change::Undo { .. } => "Undid an entry".into(),
        }
    }
}

fn first_words(text: &str) -> String {
    const SHOWN: usize = 60;
    let text = text.trim();
    if text.chars().count() <= SHOWN {
        return text.to_owned();
    }
    let cut: String = text.chars().take(SHOWN).collect();
    format!("{}…", cut.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{DeviceId, EditId};

    #[track_caller]
    fn says(json: serde_json::Value, sentence: &str) {
        let edit = Edit { id: EditId::next(None, 1, DeviceId(1)), change: serde_json::from_value(json).unwrap() };
        let job = Job { arrangement: Some(Arrangement::inline(4)), ..Job::default() };
        assert_eq!(edit.sentence(&job), sentence);
    }

    #[test]
    fn edits_read_as_sentences() {
        use serde_json::json;
        says(
            json!({"do": "tag", "part": "main-shell.3.lower", "tag": "scoring", "grade": 3, "zones": ["front-crown"]}),
            "Main 3, lower shell: scoring, grade 3 (front edge, crown)",
        );
        says(json!({"do": "clean", "part": "piston.1"}), "Piston 1: looked at and clean");
        says(json!({"do": "weigh"}), "Something that a newer version of this program recorded");
    }
}
