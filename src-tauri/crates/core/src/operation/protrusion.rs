//! How far the pistons stand over a deck that was faced: where the heat of compression lights the charge the gasket goes by it.

use super::dress::{faced, is_faced};
use super::row::{Brought, Row, Stage};
use crate::engine::{Ignition, PartKind};
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Measure,
    done: |_| "measure the protrusion over the faced deck; choose the gasket by the highest",
    stage: Stage::Rebuild,
    hands: Hands::Here,
    is_by_part: false,
    mind: "Crankshaft, rods and pistons in on trial, each piston at top dead centre and held square. What stands too high with the thickest gasket is skimmed.",
    source: "TM 5-3825-225-14&P p. 5-23 (piston height over the deck; crowns with stock to be skimmed); common practice.",
    brought: |scene| {
        let is_lit_by_heat = scene.engine.arrangement().construction.ignition == Some(Ignition::Compression);
        if !is_lit_by_heat || faced(scene).is_none() {
            return vec![];
        }
        let waits_for = if is_faced(scene) { vec![] } else { vec!["The deck is faced first.".into()] };
        let because = "What comes off the deck brings the pistons nearer to the head and its valves.";
        let pistons = scene.parts(PartKind::Piston, |_| true);
        vec![Brought { waits_for, ..Brought::new(PartKind::Piston, pistons, because.into()) }]
    },
};

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::{Arrangement, Construction, Ignition};
    use crate::work::Work;
    use serde_json::json;

    #[test]
    fn pistons_are_measured_again_over_a_faced_deck_where_heat_lights_the_charge() {
        let engine = |ignition| {
            let construction = Construction { ignition: Some(ignition), ..Construction::default() };
            Arrangement { construction, ..Arrangement::inline(4) }
        };
        let gap = |value: &str| {
            let reading = json!({ "part": "block", "quantity": "flatness-along", "value": value });
            json!({ "do": "measure", "reading": reading })
        };
        let looked = json!({ "do": "clean", "part": "block" });
        let (flat, warped) = ([looked.clone(), gap("0.001 in")], [looked.clone(), gap("0.008 in")]);
        let asked = |changes, ignition, line| check(&engine(ignition), changes, "piston", Work::Measure, line);
        asked(&flat, Ignition::Compression, None);
        asked(&warped, Ignition::Spark, None);
        let done = "measure the protrusion over the faced deck; choose the gasket by the highest";
        let held = Line { done, waits: "The deck is faced first.", is_here: true };
        asked(&warped, Ignition::Compression, Some(held));
        let item = json!({ "key": { "of": "machine", "kind": "block", "work": "machine" }, "quantity": 1 });
        let steps = json!([{ "step": "back", "done": 1, "date": "2026-05-03" }]);
        let back = json!({ "do": "tick", "item": item, "tick": { "done": 0, "steps": steps } });
        asked(&[looked, gap("0.008 in"), back], Ignition::Compression, Some(Line { waits: "", ..held }));
    }
}
