//! Cautions of the work on a list: each once, at the first line that is still to be done and to which it belongs.

use super::ListItem;
use crate::caution::{Caution, of_work};
use crate::money::Charge;

/// Says them. What is to be ordered is not worked on.
pub(super) fn say(items: &mut [ListItem]) {
    let mut said: Vec<&'static Caution> = vec![];
    for item in items.iter_mut().filter(|item| item.hands.is_some() && !item.is_done()) {
        let Some(of) = item.of.as_ref().and_then(Charge::work) else { continue };
        item.cautions = of_work(of.kind, of.work, &said);
        said.extend(&item.cautions);
    }
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use crate::job::{Job, ListKind};
    use serde_json::json;

    #[track_caller]
    fn check(job: &Job, expected: [&[&str]; 2]) {
        let assessment = assess(job);
        let items = &assessment.list(ListKind::Clean).unwrap().items;
        let ids = items.iter().map(|item| item.cautions.iter().map(|row| row.id).collect::<Vec<&str>>());
        assert_eq!(ids.collect::<Vec<_>>(), expected);
    }

    #[test]
    fn a_list_says_each_once_where_it_is_met_next() {
        let dirty = |part: &str| json!({ "do": "overrule", "part": part, "outcome": "clean", "reason": "Dirty." });
        let mut changes = vec![arrange(&Arrangement::inline(4)), dirty("pushrod.1.intake.1"), dirty("rod-bolts")];
        check(&job_of(&changes), [&["compressed-air", "solvents"], &["worked-faces"]]);
        let item = json!({ "key": { "of": "part", "list": "clean", "part": "pushrod.1.intake.1" } });
        changes.push(json!({ "do": "tick", "item": item, "tick": { "done": 1 } }));
        check(&job_of(&changes), [&[], &["solvents", "worked-faces"]]);
    }
}
