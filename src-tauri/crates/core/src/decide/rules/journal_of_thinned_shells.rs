//! Shells thinned all alike send the journals to be polished.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Half, PartKind};
use crate::job::PartRecord;
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("journal-of-thinned-shells"),
    why: "A journal that looks sound and is rough thins its shells like a fine file, all of them alike.",
    source: "Common practice: a reconditioner’s printed chart (wall thinned and polished, not smeared, torn or scored).",
    says: Says::OnPart(|scene, part, record| {
        if !matches!(part.kind, PartKind::MainJournal | PartKind::Crankpin) || !record.looked_at() {
            return None;
        }
        let is_loaded = |at: At| match at {
            At::MainHalf(_, half) => half == Half::Lower,
            At::CylinderHalf(_, half) => half == Half::Upper,
            _ => false,
        };
        let loaded = scene.engine.parts().iter().filter(|part| is_loaded(part.at));
        let is_thinned = |shell: &PartRecord| shell.grade(Tag::CopperShowing) >= Some(Grade::TWO);
        let all = loaded.map(|shell| scene.job.parts.get(shell)).all(|shell| shell.is_some_and(is_thinned));
        all.then(|| {
            (Outcome::Polish, "Every loaded shell is worn to the copper: polish it, rough as it may be.".into())
        })
    }),
};

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use crate::work::Outcome;
    use serde_json::{Value, json};

    /// A journal that was looked at and measures as new, with so many of an engine's loaded shells worn to the copper.
    #[track_caller]
    fn is(outcome: Outcome, thinned: &[&str]) {
        let sheet = json!({ "do": "use-sheet", "sheet": { "head": { "name": "Any", "source": "", "unit": "millimetre" },
            "lines": [{ "of": { "kind": "main-journal", "quantity": "diameter" }, "min": "59.98 mm", "max": "60.00 mm",
                "limit": "59.90 mm", "source": "" }] } });
        let mut changes: Vec<Value> = vec![arrange(&Arrangement::inline(1)), sheet];
        for part in ["main-journal.1", "main-journal.2", "crankshaft"] {
            changes.push(json!({ "do": "clean", "part": part }));
        }
        for part in ["main-journal.1", "main-journal.2"] {
            for (station, direction) in [("front", "a"), ("front", "b"), ("rear", "a"), ("rear", "b")] {
                let spot = json!({ "station": station, "direction": direction });
                let reading = json!({ "part": part, "quantity": "diameter", "spot": spot, "value": "59.99 mm" });
                changes.push(json!({ "do": "measure", "reading": reading }));
            }
        }
        let shown = |part: &&str| json!({ "do": "tag", "part": part, "tag": "copper-showing", "grade": 2 });
        changes.extend(thinned.iter().map(shown));
        let came = assess(&job_of(&changes));
        let decision = &came.part("main-journal.1".parse().unwrap()).unwrap().decision;
        assert_eq!(decision.outcome, outcome, "{decision:#?}");
    }

    #[test]
    fn journals_that_thinned_all_their_shells_are_polished() {
        is(Outcome::PutBack, &["main-shell.1.lower", "main-shell.2.lower"]);
        is(Outcome::Polish, &["main-shell.1.lower", "main-shell.2.lower", "rod-shell.1.upper"]);
    }
}
