//! New rods or pistons weighed: one among old ones is brought to their weight; a whole new set in a V engine is held beside
//! the old, to whose weight its crankshaft was balanced.

use super::balance::{is_bobweighted, new_shaft};
use super::come::has_come;
use super::row::{Brought, Row, Scene, Stage};
use crate::engine::PartKind;
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Weigh,
    done: |_| "weigh all, and match the new to the others",
    stage: Stage::Rebuild,
    hands: Hands::Here,
    is_by_part: false,
    mind: "Where the manual says nothing: rods within 5 g of each other with their bolts, pistons within 2 g.",
    source: "TM 10-3930-653-14&P p. 4-35 (the weights of another engine).",
    brought: |scene| {
        let weighed = |kind| mixed(scene, kind).or_else(|| of_other_weight(scene, kind));
        [PartKind::Rod, PartKind::Piston].into_iter().filter_map(weighed).collect()
    },
};

/// All of a kind of which some are renewed and others stay. A whole new set is matched by its maker.
fn mixed(scene: &Scene<'_>, kind: PartKind) -> Option<Brought> {
    let renewed = scene.with(kind, Work::Replace);
    let stay = scene.parts(kind, |own| !matches!(own.outcome, Outcome::Replace | Outcome::CantSay));
    if renewed.is_empty() || stay.is_empty() {
        return None;
    }
    let all = scene.parts(kind, |_| true);
    Some(Brought::new(kind, all, "New and old run together: unequal weights shake the engine.".into()))
}

/// A whole new set in a V engine whose crankshaft stays: one of it is asked for beside an old one, and that it weighs otherwise
/// brings balancing. Another crankshaft is balanced to them in any case.
fn of_other_weight(scene: &Scene<'_>, kind: PartKind) -> Option<Brought> {
    let all = scene.parts(kind, |_| true);
    let first = *all.first()?;
    let is_set = scene.with(kind, Work::Replace).len() == all.len();
    if !is_set || !is_bobweighted(scene) || new_shaft(scene).is_some() {
        return None;
    }
    let done = match kind {
        PartKind::Piston => "weigh a new one with its pin and rings beside an old one: within 2 g it passes",
        _ => "weigh a new one with its bolts beside an old one, big end and small end apart: within 5 g it passes",
    };
    let waits_for = if has_come(scene.job(), kind) { vec![] } else { vec!["The new ones have not come yet.".into()] };
    let because = "The crankshaft of a V engine is balanced to the weight of its pistons and rods.";
    Some(Brought {
        done: Some(done.into()),
        waits_for,
        tested: vec![first],
        is_right: scene.job().test(Work::Weigh, first).is_some_and(|(passed, _)| passed),
        ..Brought::new(kind, all, because.into())
    })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::Arrangement;
    use crate::work::Work;
    use serde_json::{Value, json};

    #[test]
    fn a_new_set_in_a_v_engine_is_weighed_beside_the_old() {
        let torn = |n: u8| json!({ "do": "tag", "part": format!("piston.{n}"), "tag": "scuffing", "grade": 4 });
        let clean = |n: u8| json!({ "do": "clean", "part": format!("piston.{n}") });
        let set: Vec<Value> = (1..=6).map(torn).collect();
        let done = "weigh a new one with its pin and rings beside an old one: within 2 g it passes";
        let asked = Line { done, waits: "The new ones have not come yet.", is_here: true };
        check(&Arrangement::vee(6), &set, "piston", Work::Weigh, Some(asked));
        check(&Arrangement::inline(6), &set, "piston", Work::Weigh, None);
        let fits = json!({ "do": "overrule", "part": "piston.6", "outcome": "put-back", "reason": "Good." });
        let some: Vec<Value> = (1..=5).map(torn).chain([clean(6), fits]).collect();
        let mixed = Line { done: "weigh all, and match the new to the others", waits: "", is_here: true };
        check(&Arrangement::vee(6), &some, "piston", Work::Weigh, Some(mixed));
        let new_shaft = json!({ "do": "tag", "part": "crankshaft", "tag": "cracks", "grade": 4 });
        let all: Vec<Value> = set.into_iter().chain([new_shaft]).collect();
        check(&Arrangement::vee(6), &all, "piston", Work::Weigh, None);
    }
}
