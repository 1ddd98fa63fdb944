//! The crankshaft of a V engine balanced, where what turns on it no longer weighs what it was balanced to.

use super::come::has_come;
use super::row::{Brought, Row, Scene, Stage};
use crate::engine::{Layout, Part, PartKind};
use crate::words::plural;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Balance,
    done: |_| "balance to the weight of the pistons and rods that it gets",
    stage: Stage::Finish,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "After grinding, the set of pistons and of rods matched first. Drill where no oil gallery runs.",
    source: "Common practice.",
    brought: |scene| match because(scene) {
        Some((because, waits_for)) => {
            let shaft = scene.parts(PartKind::Crankshaft, |_| true);
            vec![Brought { waits_for, ..Brought::new(PartKind::Crankshaft, shaft, because) }]
        }
        None => vec![],
    },
};

/// Whether its crankshaft is balanced to bobweights. That of an engine in line, or with cylinders that lie opposite, is balanced
/// bare as a rule: pistons and rods that all weigh the same hold each other there (our judgement; odd numbers in line are
/// left to the machinist).
pub(super) fn is_bobweighted(scene: &Scene<'_>) -> bool {
    scene.engine.arrangement().layout == Layout::Vee
}

/// The crankshaft, where another is fitted.
pub(super) fn new_shaft(scene: &Scene<'_>) -> Option<Part> {
    scene.with(PartKind::Crankshaft, Work::Replace).first().copied()
}

/// Whether it is balanced.
pub(super) fn is_balanced(scene: &Scene<'_>) -> bool {
    because(scene).is_some()
}

/// Why it is balanced, and what that waits for; none where nothing changed its weights, or they were weighed and are the same.
fn because(scene: &Scene<'_>) -> Option<(String, Vec<String>)> {
    if !is_bobweighted(scene) {
        return None;
    }
    let terms = scene.engine.terms();
    let names = |kind: PartKind| plural(&kind.row().name.said(terms));
    let sets = [PartKind::Piston, PartKind::Rod];
    if new_shaft(scene).is_some() {
        let is_new = |kind: &PartKind| !scene.with(*kind, Work::Replace).is_empty();
        let open = sets.into_iter().filter(is_new).filter(|kind| !has_come(scene.job(), *kind));
        let mut waits_for: Vec<String> =
            open.map(|kind| format!("The {} go along, and have not come yet.", names(kind))).collect();
        if !has_come(scene.job(), PartKind::Crankshaft) {
            waits_for.insert(0, "The new crankshaft has not come yet.".into());
        }
        return Some(("Another crankshaft was not balanced to these pistons and rods.".into(), waits_for));
    }
    let differs = |kind: PartKind| {
        let all = scene.parts(kind, |_| true);
        let is_set = scene.with(kind, Work::Replace).len() == all.len();
        let (passed, result) = scene.job().test(Work::Weigh, *all.first().filter(|_| is_set)?)?;
        (!passed).then(|| format!("The new {} weigh otherwise than the old: {}.", names(kind), result.told()))
    };
    sets.into_iter().find_map(differs).map(|because| (because, vec![]))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::Arrangement;
    use crate::work::Work;
    use serde_json::{Value, json};
    use std::slice::from_ref;

    const BALANCED: Line<'_> =
        Line { done: "balance to the weight of the pistons and rods that it gets", waits: "", is_here: false };

    #[test]
    fn a_crankshaft_is_balanced_where_its_weights_changed_and_nowhere_else() {
        let asked = |engine: &Arrangement, changes: &[Value], line| {
            check(engine, changes, "crankshaft", Work::Balance, line);
        };
        let (vee, inline) = (Arrangement::vee(6), Arrangement::inline(6));
        let set: Vec<Value> = (1..=6)
            .map(|n| json!({ "do": "tag", "part": format!("piston.{n}"), "tag": "scuffing", "grade": 4 }))
            .collect();
        let weighed = |result: &str| {
            let tested = json!({ "how": "new 612 g, old 604 g", result: ["piston.1"] });
            let item = json!({ "key": { "of": "machine", "kind": "piston", "work": "weigh" } });
            let tick = json!({ "do": "tick", "item": item, "tick": { "done": 0, "result": tested } });
            set.iter().cloned().chain([tick]).collect::<Vec<Value>>()
        };
        asked(&vee, &[json!({ "do": "clean", "part": "crankshaft" })], None);
        asked(&vee, &set, None);
        asked(&vee, &weighed("passed"), None);
        // One piece, one trip.
        let waits = "Crankshaft and 7 more can’t be judged yet.";
        asked(&vee, &weighed("failed"), Some(Line { waits, ..BALANCED }));
        asked(&inline, &weighed("failed"), None);
        // Ground pins and one new piston, matched to the others, weigh what they did.
        let ground = json!({ "do": "tag", "part": "crankpin.1", "tag": "scoring", "grade": 4 });
        asked(&vee, &[ground, set[0].clone()], None);
    }

    #[test]
    fn another_crankshaft_is_balanced_in_a_v_engine() {
        let lost = json!({ "do": "tag", "part": "crankshaft", "tag": "cracks", "grade": 4 });
        let order = |kind: &str, quantity: u32| {
            let item = json!({ "key": { "of": "order", "kind": kind }, "quantity": quantity });
            let steps = json!([{ "step": "back", "done": quantity, "date": "2026-05-03" }]);
            json!({ "do": "tick", "item": item, "tick": { "done": 0, "steps": steps } })
        };
        let torn = json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 4 });
        let asked = |changes: &[Value], waits| {
            check(&Arrangement::vee(6), changes, "crankshaft", Work::Balance, Some(Line { waits, ..BALANCED }));
        };
        asked(from_ref(&lost), "The new crankshaft has not come yet.");
        let come = order("crankshaft", 1);
        asked(&[lost.clone(), come.clone()], "");
        asked(&[lost.clone(), torn.clone(), come.clone()], "The pistons go along, and have not come yet.");
        asked(&[lost.clone(), torn, come, order("piston", 1)], "");
        check(&Arrangement::inline(6), &[lost], "crankshaft", Work::Balance, None);
    }
}
