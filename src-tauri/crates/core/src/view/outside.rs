//! What was looked at beside the judged parts, as every screen and paper shows it.

use std::collections::BTreeMap;

use serde::Serialize;

use super::part::{drawn_over, findings_of};
use super::{Finding, Seen};
use crate::caution::{self, Caution};
use crate::engine::{Engine, Part, PartKind};
use crate::job::{Drawn, Job, PartRecord, PhotoId};
use crate::label::Piece;
use crate::wear::Grade;

/// What was recorded of something beside the judged parts: it is told as a part is, but nothing is measured of it or
/// decided about it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct OutsideView {
    /// What it is.
    pub part: Part,
    /// Its kind.
    pub kind: PartKind,
    /// What a mechanic calls it.
    pub label: String,
    /// The piece by whose label it goes; none of what is not kept.
    pub piece: Option<Piece>,
    /// Looked at or not, and what was seen.
    pub seen: Seen,
    /// The worst grade that was tagged.
    pub worst: Option<Grade>,
    /// The tags, worst first.
    pub findings: Vec<Finding>,
    /// Photos in the order taken in.
    pub photos: Vec<PhotoId>,
    /// What is drawn over them, in the order in which it was drawn; photos with nothing on them are left out.
    pub drawn: BTreeMap<PhotoId, Vec<Drawn>>,
    /// The remark; empty if none.
    pub note: String,
    /// What can hurt with it in the hand, the gravest first.
    pub cautions: Vec<&'static Caution>,
}

/// All that lies beside an engine's parts, in the order in which it is met.
pub(crate) fn outside(engine: &Engine, job: &Job) -> Vec<OutsideView> {
    let blank = PartRecord::default();
    let view = |part: &Part| {
        let record = job.parts.get(part).unwrap_or(&blank);
        let tags: Vec<_> = record.tags.keys().copied().collect();
        OutsideView {
            part: *part,
            kind: part.kind,
            label: engine.label(*part),
            piece: Piece::of(*part, engine),
            seen: Seen::of(record),
            worst: record.worst(),
            findings: findings_of(record),
            photos: record.photos.clone(),
            drawn: drawn_over(record),
            note: record.note.clone(),
            cautions: caution::of_part(part.kind, &tags),
        }
    };
    engine.outside().iter().map(view).collect()
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::*;
    use crate::assess::{Assessment, assess};
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};

    fn assessment(changes: &[Value]) -> Assessment {
        let all: Vec<Value> = [arrange(&Arrangement::inline(4))].iter().chain(changes).cloned().collect();
        assess(&job_of(&all))
    }

    #[test]
    fn it_is_told_beside_the_parts() {
        let photo = "a".repeat(64);
        let assessment = assessment(&[
            json!({ "do": "add-photo", "part": "air-cleaner", "photo": photo }),
            json!({ "do": "tag", "part": "air-cleaner", "tag": "grit", "grade": 2 }),
            json!({ "do": "tag", "part": "air-cleaner", "tag": "torn", "grade": 3 }),
            json!({ "do": "clean", "part": "engine-oil" }),
        ]);
        let told: Vec<(&str, Seen)> = assessment.outside.iter().map(|view| (view.label.as_str(), view.seen)).collect();
        let (open, clean) = (Seen::NotLooked, Seen::Clean);
        assert_eq!(
            told,
            [
                ("Engine as received", open),
                ("Engine oil", clean),
                ("Oil filter", open),
                ("Drain plug magnet", open),
                ("Coolant", open),
                ("Air cleaner and duct", Seen::Worn),
                ("Oil filler", open),
                ("Breather", open),
                ("Sump", open),
            ]
        );
        let cleaner = &assessment.outside[5];
        let names: Vec<&str> = cleaner.findings.iter().map(|finding| finding.name.as_str()).collect();
        assert_eq!((names, cleaner.worst), (vec!["torn or leaking", "grit or dust"], Some(Grade::THREE)));
        assert_eq!(cleaner.photos.len(), 1);
        assert_eq!(assessment.progress.photos, 1, "it is a photo of this job");
    }

    /// Whatever is found there, no part is judged otherwise and nothing costs anything.
    #[test]
    fn nothing_is_judged_by_it() {
        let clean = json!({ "do": "clean", "part": "piston.1" });
        let found = ["engine-oil", "oil-filter", "sump"]
            .map(|part| json!({ "do": "tag", "part": part, "tag": "soft-flakes", "grade": 4 }));
        let (with, without) =
            (assessment(&[std::slice::from_ref(&clean), &found].concat()), assessment(std::slice::from_ref(&clean)));
        assert_eq!((with.parts, with.quote), (without.parts, without.quote));
        assert_eq!((with.progress, with.notices), (without.progress, without.notices));
    }
}
