//! What was found before the engine was opened and beside its parts; only what somebody looked at.

use super::chapter::chapter;
use super::found::Recorded;
use super::paper::Block;
use crate::assess::Assessment;
use crate::view::{OutsideView, Seen};

/// A line each; the pictures stand with the others.
pub(super) fn outside(assessment: &Assessment) -> Vec<Block> {
    let told = assessment.outside.iter().filter(|view| !is_bare(view));
    let clean: Vec<&str> =
        assessment.outside.iter().filter(|view| is_bare(view) && view.seen == Seen::Clean).map(label).collect();
    let clean = (!clean.is_empty()).then(|| format!("Looked at and clean: {}.", clean.join(", ").to_lowercase()));
    let points: Vec<String> = told.map(line).chain(clean).collect();
    chapter("Found before and outside", (!points.is_empty()).then_some(Block::Points(points)))
}

/// Nothing is known of it but that it is clean, or not even that.
fn is_bare(view: &OutsideView) -> bool {
    view.findings.is_empty() && view.photos.is_empty() && view.note.is_empty()
}

fn label(view: &OutsideView) -> &str {
    &view.label
}

fn line(view: &OutsideView) -> String {
    let told = Recorded::of_outside(view).lines().join(" ");
    format!("{}: {told} {}", view.label, view.note).trim_end().to_owned()
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};

    fn told(changes: &[Value]) -> Vec<Block> {
        let all: Vec<Value> = [arrange(&Arrangement::inline(2))].iter().chain(changes).cloned().collect();
        outside(&assess(&job_of(&all)))
    }

    fn changes() -> [Value; 5] {
        [
            json!({ "do": "tag", "part": "oil-filler", "tag": "missing", "grade": 4 }),
            json!({ "do": "remark", "part": "oil-filler", "text": "A rag stood in for it." }),
            json!({ "do": "add-photo", "part": "oil-filler", "photo": "a".repeat(64) }),
            json!({ "do": "clean", "part": "engine-oil" }),
            json!({ "do": "clean", "part": "coolant" }),
        ]
    }

    #[test]
    fn only_what_was_looked_at_is_told() {
        assert_eq!(told(&[]), []);
        assert_eq!(told(&[json!({ "do": "clean", "part": "piston.1" })]), []);
    }

    #[test]
    fn each_is_told_in_a_line() {
        let points = [
            "Oil filler: Missing or wrong, grade 4 of 4. Missing, the opening bare. A rag stood in for it.",
            "Looked at and clean: engine oil, coolant.",
        ];
        let body = told(&changes());
        assert_eq!(body.last(), Some(&Block::Points(points.map(str::to_owned).into())));
    }
}
