//! What a test for cracks has shown: it settles a suspicion, and a piece that failed is not used again.

use super::{Rule, RuleId, Says, Scene};
use crate::engine::Part;
use crate::job::PartRecord;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{self, CantSay, PutBack, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("tested-for-cracks"),
    why: "A suspected crack is tested first (dye or magnetic particles); what fails is not used again.",
    source: "AC 43.13-1B (crack: replace); TM 5-4320-300-14 (magnetic inspection after grinding); common practice.",
    says: Says::OnPart(says),
};

fn says(scene: &Scene<'_>, part: Part, record: &PartRecord) -> Option<(Outcome, String)> {
    let piece = part.comes_with(scene.engine.arrangement()).unwrap_or(part);
    let is_suspected = record.grade(Tag::Cracks) == Some(Grade::ONE);
    let possible = part.kind.row().outcomes;
    match scene.job.crack_test(piece) {
        Some((false, result)) if possible.contains(&Replace) => {
            let of_piece = if piece == part {
                String::new()
            } else {
                format!(" of the {}", scene.engine.label(piece).to_lowercase())
            };
            Some((Replace, format!("The crack test{of_piece} failed: {}.", result.told())))
        }
        Some((true, result)) if is_suspected => {
            Some((PutBack, format!("Tested for cracks and passed: {}.", result.told())))
        }
        None if is_suspected => {
            Some((CantSay, format!("{} Dye or magnetic particles tell.", Tag::Cracks.told(Grade::ONE))))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::ListKind;
    use crate::job::testing::{arrange, job_of, then};
    use crate::work::Outcome;
    use serde_json::{Value, json};

    fn test_of_the_shaft(result: &str) -> Value {
        let tested = json!({ "how": "magnetic particles", "by": "A. Machinist", result: ["crankshaft"] });
        json!({ "do": "tick", "item": { "key": { "of": "machine", "kind": "crankshaft", "work": "crack-test" } },
            "tick": { "done": 0, "result": tested } })
    }

    /// The outcome of the shaft and of a pin on it, and whether a new shaft stands on the order and the test on its list.
    #[track_caller]
    fn check(changes: &[Value], shaft: Outcome, pin: Outcome, because: &str) {
        let changes: Vec<Value> = [arrange(&Arrangement::inline(4))].iter().chain(changes).cloned().collect();
        let assessment = assess(&job_of(&changes));
        let decided = |part: &str| &assessment.part(part.parse().unwrap()).unwrap().decision;
        assert_eq!(decided("crankpin.1").outcome, pin);
        assert_eq!(decided("crankshaft").outcome, shaft);
        assert_eq!(decided("crankshaft").because(), because);
        let order = assessment.list(ListKind::Order).unwrap();
        let ordered = order.items.iter().any(|item| item.what == "Crankshaft");
        assert_eq!(ordered, shaft == Outcome::Replace);
        let charged = assessment.quote.lines.iter().any(|line| line.what == "Crankshaft: replace");
        assert_eq!(charged, ordered, "what is ordered is charged");
        let sent = assessment.list(ListKind::MachineShop).unwrap();
        let test = sent.items.iter().find(|item| !item.tested.is_empty()).unwrap();
        assert_eq!(test.is_done(), test.tick.is_some(), "a test that was made is behind");
        assert_eq!(sent.not_wanted, [], "and stays where it was");
    }

    #[test]
    fn a_suspected_crack_waits_for_its_test() {
        let suspected = json!({ "do": "tag", "part": "crankshaft", "tag": "cracks", "grade": 1 });
        let before = assess(&job_of(&[arrange(&Arrangement::inline(4)), suspected.clone()]));
        let shaft = &before.part("crankshaft".parse().unwrap()).unwrap().decision;
        assert_eq!(shaft.outcome, Outcome::CantSay);
        assert!(shaft.because().ends_with("Dye or magnetic particles tell."), "{}", shaft.because());
        let clean = json!({ "do": "clean", "part": "crankpin.1" });
        let passed = "Tested for cracks and passed: magnetic particles, A. Machinist.";
        let changes = [clean.clone(), suspected.clone(), test_of_the_shaft("passed")];
        check(&changes, Outcome::PutBack, Outcome::CantSay, passed);
        let failed = "The crack test failed: magnetic particles, A. Machinist.";
        check(&[clean, suspected, test_of_the_shaft("failed")], Outcome::Replace, Outcome::Replace, failed);
    }

    #[test]
    fn what_a_failed_test_brings_is_asked_anew() {
        let scored = json!({ "do": "tag", "part": "crankpin.1", "tag": "scoring", "grade": 4 });
        let mut job = job_of(&[arrange(&Arrangement::inline(4)), scored]);
        let quote = assess(&job).quote;
        let answers: Vec<_> = quote.jobs.iter().map(|asked| json!({ "of": asked.of, "answer": "yes" })).collect();
        let proposal = then(&mut job, 10, &json!({ "do": "propose", "quote": quote }));
        let answer = json!({ "proposal": proposal, "jobs": answers, "name": "A" });
        then(&mut job, 11, &json!({ "do": "answer-proposal", "answer": answer }));
        then(&mut job, 12, &test_of_the_shaft("failed"));
        let assessment = assess(&job);
        let more: Vec<&str> = assessment.approval.exceeding().map(|since| since.what.as_str()).collect();
        assert_eq!(more, ["Crankshaft: replace"]);
        let order = assessment.list(ListKind::Order).unwrap();
        let shaft = order.items.iter().find(|item| item.what == "Crankshaft").unwrap();
        assert_eq!(shaft.waits_for[0], "The customer has not been asked: it came after the proposal.");
    }
}
