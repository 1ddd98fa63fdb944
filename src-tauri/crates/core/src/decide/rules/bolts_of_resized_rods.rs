//! New bolts for rods whose big end is brought back to size.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Part, PartKind};
use crate::job::Job;
use crate::measure::Quantity::{BigEndBore, OutOfRound};
use crate::sizing::Measured;
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("bolts-of-resized-rods"),
    why: "A big end is finished with its bolts tightened: those that it runs with must be in it, so they are renewed first.",
    source: "Common practice.",
    says: Says::OnSet(|scene, stands| {
        let rods = || scene.engine.parts().iter().copied().filter(|part| part.kind == PartKind::Rod);
        let is_resized = |rod: &Part| stands(*rod) == Outcome::Machine && is_resized(scene.job, scene.measured, *rod);
        let resized: Vec<String> = rods().filter(is_resized).map(|rod| scene.engine.label(rod)).collect();
        if resized.is_empty() {
            return vec![];
        }
        let because = format!("{}: the big end is finished with its new bolts tightened.", resized.join("; "));
        vec![(Part { kind: PartKind::RodBolts, at: At::Engine }, Outcome::Replace, because)]
    }),
};

/// Whether what is machined on a rod is its big end, and not the bush of the small end alone: by a person's word, by a shell
/// that moved, or by its size.
pub fn is_resized(job: &Job, measured: &Measured<'_>, rod: Part) -> bool {
    let by_hand_or_look = job.parts.get(&rod).is_some_and(|record| {
        record.overrule.is_some() || record.grade(Tag::BrightBack).is_some_and(|grade| grade >= Grade::TWO)
    });
    let mut found = measured.figures.get(&rod).into_iter().flatten().filter(|figure| figure.is_found_outside());
    by_hand_or_look || found.any(|figure| matches!(figure.quantity, BigEndBore | OutOfRound))
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use crate::work::Outcome::{self, PutBack, Replace};
    use serde_json::{Value, json};

    #[track_caller]
    fn check(changes: &[Value], bolts: Outcome) {
        let begin = [
            arrange(&Arrangement::inline(4)),
            json!({ "do": "clean", "part": "rod-bolts" }),
            json!({ "do": "measure", "reading": { "part": "rod-bolts", "quantity": "length", "value": "50 mm" } }),
            json!({ "do": "clean", "part": "rod.2" }),
        ];
        let changes: Vec<Value> = begin.iter().chain(changes).cloned().collect();
        let assessment = assess(&job_of(&changes));
        let decision = &assessment.part("rod-bolts".parse().unwrap()).unwrap().decision;
        assert_eq!(decision.outcome, bolts, "{decision:#?}");
    }

    #[test]
    fn bolts_are_renewed_with_a_big_end_and_not_with_a_small_end_or_a_new_rod() {
        check(&[], PutBack);
        check(&[json!({ "do": "tag", "part": "rod.2", "tag": "bright-back", "grade": 2 })], Replace);
        check(&[json!({ "do": "tag", "part": "rod.2", "tag": "hot-spot", "grade": 3 })], PutBack);
        let limit = |quantity: &str| {
            let of = json!({ "kind": "rod", "quantity": quantity });
            json!({ "do": "state-line", "line": { "of": of, "limit": "22.05 mm" } })
        };
        let read = |quantity: &str| {
            let reading = json!({ "part": "rod.2", "quantity": quantity, "value": "22.20 mm" });
            json!({ "do": "measure", "reading": reading })
        };
        check(&[limit("small-end-bore"), read("small-end-bore")], PutBack);
        check(&[limit("big-end-bore"), read("big-end-bore")], Replace);
        let kept =
            json!({ "do": "overrule", "part": "rod-bolts", "outcome": "put-back", "reason": "Renewed last year." });
        check(&[limit("big-end-bore"), read("big-end-bore"), kept], PutBack);
    }
}
