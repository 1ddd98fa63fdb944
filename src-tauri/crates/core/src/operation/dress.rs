//! A block dressed or faced where it is damaged, or its deck where it is not flat.

use super::row::{Row, Scene, Stage};
use crate::decide::Reason;
use crate::decide::rules::{DECK_FLATNESS, PIECE_OF_WORKED_PARTS};
use crate::engine::{Cylinders, PartKind};
use crate::job::{ItemKey, Step, Ticked};
use crate::measure::Quantity::{FlatnessAcross, FlatnessAlong};
use crate::measure::{Conformity, Phase};
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "dress or face what is damaged",
    stage: Stage::Straighten,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Take off no more than cleans up, on both banks alike, with the finish that the gasket asks for.",
    source: "Common practice.",
    brought: |scene| {
        let mut all = scene.decided_itself(PartKind::Block, Work::Machine);
        for own in &mut all {
            let Some(deck) = faced(scene) else { continue };
            let further = reasons(scene).any(|reason| reason.rule != DECK_FLATNESS);
            let liners = scene.engine.arrangement().construction.cylinders == Some(Cylinders::WetLiners);
            let found = flatness(scene, Phase::Found).map(|(name, shown, _)| format!("{name} {shown}"));
            own.done = Some(format!(
                "face the deck{}{}; found: {}",
                if liners { ", the counterbores of the liners as deep as before" } else { "" },
                if further { "; dress or face what is damaged besides" } else { "" },
                found.collect::<Vec<_>>().join(", ")
            ));
            own.because = deck.because.clone();
            own.is_right = !further && is_flat(scene);
        }
        all
    },
};

/// Why the deck is faced; none where it is not.
pub(super) fn faced<'a>(scene: &Scene<'a>) -> Option<&'a Reason> {
    let is_machined = !scene.with(PartKind::Block, Work::Machine).is_empty();
    reasons(scene).find(|reason| is_machined && reason.rule == DECK_FLATNESS)
}

/// Whether a deck that was faced is back.
pub(super) fn is_faced(scene: &Scene<'_>) -> bool {
    let facing = ItemKey::Operation { kind: PartKind::Block, work: Some(Work::Machine) };
    let is_back = |ticked: &Ticked| ticked.asked.key == facing && ticked.tick.at(Step::Back) > 0;
    scene.job().ticks.iter().any(is_back) || is_flat(scene)
}

/// Whether it was measured as it came back, both ways, and is within.
fn is_flat(scene: &Scene<'_>) -> bool {
    let back: Vec<_> = flatness(scene, Phase::Machined).map(|(.., verdict)| verdict).collect();
    back.len() == 2 && back.iter().all(|verdict| *verdict == Some(Conformity::Within))
}

/// What the block is machined for itself.
fn reasons<'a>(scene: &Scene<'a>) -> impl Iterator<Item = &'a Reason> {
    let block = scene.parts(PartKind::Block, |_| true);
    let told = block.into_iter().filter_map(|part| scene.decision(part)).flat_map(|own| &own.reasons);
    told.filter(|reason| reason.outcome == Outcome::Machine && reason.rule != PIECE_OF_WORKED_PARTS)
        .collect::<Vec<_>>()
        .into_iter()
}

/// The gaps under the straightedge: which way, how wide, and whether that is within.
fn flatness<'a>(scene: &Scene<'a>, phase: Phase) -> impl Iterator<Item = (&'static str, &'a str, Option<Conformity>)> {
    let block = scene.parts(PartKind::Block, |_| true);
    let figures = block.into_iter().flat_map(move |part| scene.measured.figures(part, phase));
    figures.filter_map(|figure| {
        let way = match figure.quantity {
            FlatnessAlong => "along",
            FlatnessAcross => "across",
            _ => return None,
        };
        Some((way, figure.shown.as_str(), figure.verdict))
    })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::Arrangement;
    use crate::work::Work;
    use serde_json::{Value, json};

    /// The limits are a general rule's: 0.004 in along, 0.002 in across.
    #[test]
    fn a_deck_is_faced_where_it_is_not_flat_and_nowhere_else() {
        let engine = Arrangement::inline(4);
        let gap = |quantity: &str, value: &str, phase: &str| {
            let reading = json!({ "part": "block", "quantity": quantity, "value": value, "phase": phase });
            json!({ "do": "measure", "reading": reading })
        };
        let begin = |along: &str| -> Vec<Value> {
            vec![
                json!({ "do": "clean", "part": "block" }),
                json!({ "do": "complain", "complaint": "overheated", "told": true }),
                gap("flatness-along", along, "found"),
                gap("flatness-across", "0.001 in", "found"),
            ]
        };
        check(&engine, &begin("0.002 in"), "block", Work::Machine, None);
        // One piece, one trip.
        let waits = "Bore 1 and 8 more can’t be judged yet.";
        let faced = Line { done: "face the deck; found: along 0.008 in, across 0.001 in", waits, is_here: false };
        check(&engine, &begin("0.008 in"), "block", Work::Machine, Some(faced));
        let mut bored = begin("0.002 in");
        bored.push(json!({ "do": "overrule", "part": "bore.1", "outcome": "machine", "reason": "Worn." }));
        check(&engine, &bored, "block", Work::Machine, None);
        let mut eaten = begin("0.008 in");
        eaten.push(json!({ "do": "tag", "part": "block", "tag": "corrosion", "grade": 3 }));
        let both = Line {
            done: "face the deck; dress or face what is damaged besides; found: along 0.008 in, across 0.001 in",
            ..faced
        };
        check(&engine, &eaten, "block", Work::Machine, Some(both));
    }
}
