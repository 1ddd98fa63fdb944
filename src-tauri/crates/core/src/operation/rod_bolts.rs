//! New bolts in rods that stay: before a big end is resized, and else with a measure of what they do to it.

use super::come::bolts_awaited;
use super::resize::resized;
use super::row::{Brought, Row, Scene, Stage};
use crate::decide::rules::BOLTS_OF_RESIZED_RODS;
use crate::engine::{Part, PartKind};
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Fit,
    done: |_| "fit the new bolts, and measure each big end with them tightened",
    stage: Stage::Straighten,
    hands: Hands::Here,
    is_by_part: false,
    mind: "Seat each head square. A bolt that is pressed in may draw the big end out of round: then it is resized.",
    source: "Common practice.",
    brought: |scene| {
        let bolts = scene.with(PartKind::RodBolts, Work::Replace);
        let rods = renewed(scene, &bolts);
        if rods.is_empty() {
            return vec![];
        }
        let resized = resized(scene);
        let done = match resized.len() {
            0 => None,
            some if some == rods.len() => Some("fit the new bolts, before the big end is resized"),
            _ => Some("fit the new bolts, before a big end is resized; measure the others with them tightened"),
        };
        vec![Brought {
            done: done.map(Into::into),
            which: scene.which(PartKind::Rod, &rods),
            hands: done.map(|_| Hands::MachineShop),
            waits_for: if done.is_some() { bolts_awaited(scene) } else { vec![] },
            ..Brought::new(PartKind::Rod, rods, scene.because(&bolts))
        }]
    },
};

/// The rods that get new bolts: where the bolts are condemned all that stay, for a new rod comes with its own; else those
/// alone that are resized.
fn renewed(scene: &Scene<'_>, bolts: &[Part]) -> Vec<Part> {
    let Some(decision) = bolts.first().and_then(|bolts| scene.decision(*bolts)) else { return vec![] };
    let is_condemned = decision.overruled_because.is_some()
        || decision.reasons.iter().any(|own| own.outcome == Outcome::Replace && own.rule != BOLTS_OF_RESIZED_RODS);
    match is_condemned {
        true => scene.parts(PartKind::Rod, |own| own.outcome != Outcome::Replace),
        false => resized(scene),
    }
}

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::Arrangement;
    use crate::work::Work;
    use serde_json::{Value, json};
    use std::slice::from_ref;

    #[test]
    fn new_bolts_go_in_before_a_big_end_is_resized() {
        let engine = Arrangement::inline(2);
        let asked = |changes: &[Value], line| {
            let looked = [1, 2].map(|n| json!({ "do": "clean", "part": format!("rod.{n}") }));
            let changes: Vec<Value> = looked.iter().chain(changes).cloned().collect();
            check(&engine, &changes, "rod", Work::Fit, line);
        };
        let tag = |part: &str, tag: &str| json!({ "do": "tag", "part": part, "tag": tag, "grade": 3 });
        asked(&[], None);
        let here =
            Line { done: "fit the new bolts, and measure each big end with them tightened", waits: "", is_here: true };
        let bent = tag("rod-bolts", "bent");
        asked(from_ref(&bent), Some(here));
        asked(&[tag("rod.1", "hot-spot"), tag("rod.2", "hot-spot"), bent.clone()], None);
        let held = Line {
            done: "fit the new bolts, before the big end is resized",
            waits: "The new bolts go along, and have not come yet.",
            is_here: false,
        };
        let moved = tag("rod.1", "bright-back");
        asked(from_ref(&moved), Some(held));
        let all = Line {
            done: "fit the new bolts, before a big end is resized; measure the others with them tightened",
            ..held
        };
        asked(&[moved.clone(), bent], Some(all));
        let item = json!({ "key": { "of": "order", "kind": "rod-bolts" }, "quantity": 1 });
        let steps = json!([{ "step": "back", "done": 1, "date": "2026-05-03" }]);
        let come = json!({ "do": "tick", "item": item, "tick": { "done": 0, "steps": steps } });
        asked(&[moved, come], Some(Line { waits: "", ..held }));
    }
}
