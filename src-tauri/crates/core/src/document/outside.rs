//! What was found before the engine was opened and beside its parts; only what somebody looked at.

use super::chapter::chapter;
use super::desk::Extent;
use super::found::Recorded;
use super::paper::Block;
use crate::assess::Assessment;
use crate::view::{OutsideView, Seen};

/// With pictures in the full report, in the short one in a line each.
pub(super) fn outside(assessment: &Assessment, extent: Extent) -> Vec<Block> {
    let told: Vec<&OutsideView> = assessment.outside.iter().filter(|view| !is_bare(view)).collect();
    let clean: Vec<&str> =
        assessment.outside.iter().filter(|view| is_bare(view) && view.seen == Seen::Clean).map(label).collect();
    let clean = (!clean.is_empty()).then(|| format!("Looked at and clean: {}.", clean.join(", ").to_lowercase()));
    let body: Vec<Block> = match extent {
        Extent::Full => {
            let found = told.into_iter().map(|view| recorded(view).block("", None));
            found.chain(clean.map(Block::Paragraph)).collect()
        }
        Extent::Short => {
            let points: Vec<String> = told.into_iter().map(line).chain(clean).collect();
            (!points.is_empty()).then_some(Block::Points(points)).into_iter().collect()
        }
    };
    chapter("Found before and outside", body)
}

/// Nothing is known of it but that it is clean, or not even that.
fn is_bare(view: &OutsideView) -> bool {
    view.findings.is_empty() && view.photos.is_empty() && view.note.is_empty()
}

fn label(view: &OutsideView) -> &str {
    &view.label
}

fn line(view: &OutsideView) -> String {
    let told = recorded(view).lines().join(" ");
    format!("{}: {told} {}", view.label, view.note).trim_end().to_owned()
}

fn recorded(view: &OutsideView) -> Recorded<'_> {
    Recorded {
        label: &view.label,
        seen: view.seen,
        worst: view.worst,
        back_clean: false,
        findings: &view.findings,
        photos: &view.photos,
        drawn: &view.drawn,
        note: &view.note,
    }
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};

    fn told(changes: &[Value], extent: Extent) -> Vec<Block> {
        let all: Vec<Value> = [arrange(&Arrangement::inline(2))].iter().chain(changes).cloned().collect();
        outside(&assess(&job_of(&all)), extent)
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
        for extent in [Extent::Short, Extent::Full] {
            assert_eq!(told(&[], extent), []);
            assert_eq!(told(&[json!({ "do": "clean", "part": "piston.1" })], extent), []);
        }
    }

    #[test]
    fn the_short_report_tells_it_in_a_line_each() {
        let points = [
            "Oil filler: Missing or wrong, grade 4 of 4. Missing, the opening bare. A rag stood in for it.",
            "Looked at and clean: engine oil, coolant.",
        ];
        let body = told(&changes(), Extent::Short);
        assert_eq!(body.last(), Some(&Block::Points(points.map(str::to_owned).into())));
    }

    #[test]
    fn the_full_report_shows_its_pictures() {
        let body = told(&changes(), Extent::Full);
        let [.., Block::Findings { part, pictures, outcome, .. }, Block::Paragraph(clean)] = &body[..] else {
            panic!("{body:?}")
        };
        assert_eq!((part.as_str(), pictures.len(), outcome.as_str()), ("Oil filler", 1, ""));
        assert_eq!(pictures[0].alt, "Oil filler: missing or wrong");
        assert_eq!(clean, "Looked at and clean: engine oil, coolant.");
    }
}
