//! What is tested for cracks: a crankshaft before money is spent on its journals, and any piece on which a crack is
//! suspected.

use super::row::{Brought, Row, Scene, Stage};
use crate::decide::rules::{BENT_CRANKSHAFT, coolant_met_oil};
use crate::engine::{Cooling, Part, PartKind};
use crate::job::{Answer, HistoryFact};
use crate::wear::Tag;
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::CrackTest,
    done: |kind| kind.work_words(Work::CrackTest),
    stage: Stage::Test,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "Clean it first, demagnetise it after.",
    source: "TM 5-4320-300-14 p. 6-103 (magnetic inspection of a ground shaft); AC 43.13-1B; common practice.",
    brought: |scene| {
        let pieces = [PartKind::Crankshaft, PartKind::Block, PartKind::Rod, PartKind::Camshaft];
        let tested = |kind| {
            let why = suspected(scene, kind).or_else(|| leaking(scene, kind)).or_else(|| journals(scene, kind));
            with_results(scene, kind, why)
        };
        pieces.into_iter().filter_map(tested).collect()
    },
};

/// What is to be tested with what was: a test that was made stays where it is, whatever came of it.
fn with_results(scene: &Scene<'_>, kind: PartKind, why: Option<Brought>) -> Option<Brought> {
    let result = |part: &Part| scene.job().crack_test(*part);
    let tested = scene.parts(kind, |_| true).into_iter().filter(|part| result(part).is_some());
    let mut parts: Vec<Part> = why.iter().flat_map(|why| why.parts.clone()).chain(tested).collect();
    parts.sort_unstable();
    parts.dedup();
    let results: Vec<bool> = parts.iter().filter_map(result).map(|(passed, _)| passed).collect();
    let is_right = results.len() == parts.len() && results.iter().all(|passed| *passed);
    let because = why.as_ref().map_or_else(|| "It was tested.".into(), |why| why.because.clone());
    (!parts.is_empty()).then(|| Brought {
        which: scene.which(kind, &parts),
        settles: !results.is_empty() || why.is_some_and(|why| why.settles),
        is_right,
        tested: parts.clone(),
        ..Brought::new(kind, parts, because)
    })
}

/// A shaft whose journals are ground or polished, or that is bent.
fn journals(scene: &Scene<'_>, kind: PartKind) -> Option<Brought> {
    let shaft = scene.parts(PartKind::Crankshaft, |own| own.outcome != Outcome::Replace);
    let because = "A shaft whose journals are worked on is tested first: a cracked one is not worth it.";
    let bent = "A shaft that was bent is tested first, and again once it is straight: it may be cracked.";
    let because = match scene.is_worked_itself(PartKind::Crankshaft, BENT_CRANKSHAFT) {
        true => bent,
        false if scene.works_on_journals() => because,
        false => return None,
    };
    (kind == PartKind::Crankshaft && !shaft.is_empty())
        .then(|| Brought::new(PartKind::Crankshaft, shaft, because.into()))
}

/// A block whose water got where it should not, or that ran too hot (common practice).
fn leaking(scene: &Scene<'_>, kind: PartKind) -> Option<Brought> {
    let ran_hot = || scene.job().history.get(&HistoryFact::Overheated) == Some(&Answer::Yes);
    let because = coolant_met_oil(scene.engine, scene.job()).or_else(|| ran_hot().then(|| "It ran too hot.".into()))?;
    let is_air = scene.engine.arrangement().construction.cooling == Some(Cooling::Air);
    let block = scene.parts(PartKind::Block, |own| own.outcome != Outcome::Replace);
    (kind == PartKind::Block && !is_air && !block.is_empty())
        .then(|| Brought { settles: true, ..Brought::new(PartKind::Block, block, because) })
}

/// The pieces of a kind on which, or on a part of which, a crack is suspected and not certain.
fn suspected(scene: &Scene<'_>, kind: PartKind) -> Option<Brought> {
    let arrangement = scene.engine.arrangement();
    let is_of = |part: Part, piece: Part| part == piece || part.comes_with(arrangement) == Some(piece);
    let records = &scene.job().parts;
    let is_suspected = |piece: &Part| {
        let mut of_piece = records.iter().filter(|(part, _)| is_of(**part, *piece));
        of_piece.any(|(_, record)| record.grade(Tag::Cracks).is_some())
    };
    let mut parts = scene.parts(kind, |own| own.outcome != Outcome::Replace);
    parts.retain(is_suspected);
    let because = "A crack is suspected.";
    (!parts.is_empty()).then(|| Brought {
        which: scene.which(kind, &parts),
        settles: true,
        ..Brought::new(kind, parts, because.into())
    })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::{Arrangement, Construction, Cooling};
    use crate::work::Work;
    use serde_json::{Value, json};

    #[test]
    fn a_block_is_tested_under_pressure_where_coolant_and_oil_met_or_it_ran_too_hot() {
        let tested = Line { done: "test under pressure and for cracks", waits: "", is_here: false };
        let asked = |arrangement: &Arrangement, change: &Value, is_asked: bool| {
            let changes = [json!({ "do": "clean", "part": "block" }), change.clone()];
            check(arrangement, &changes, "block", Work::CrackTest, is_asked.then_some(tested));
        };
        let told = |complaint: &str| json!({ "do": "complain", "complaint": complaint, "told": true });
        let found = |part: &str, tag: &str, grade: u8| json!({ "do": "tag", "part": part, "tag": tag, "grade": grade });
        let engine = Arrangement::inline(4);
        for complaint in ["coolant-in-oil", "oil-in-coolant", "overheated"] {
            asked(&engine, &told(complaint), true);
        }
        for (part, tag) in [("engine-oil", "milky"), ("sump", "milky"), ("coolant", "oil-film")] {
            asked(&engine, &found(part, tag, 2), true);
            asked(&engine, &found(part, tag, 1), false);
        }
        // Cream under the filler's lid is condensation.
        asked(&engine, &found("oil-filler", "milky", 4), false);
        asked(&engine, &told("oil-used"), false);
        let construction = Construction { cooling: Some(Cooling::Air), ..Construction::default() };
        asked(&Arrangement { construction, ..engine }, &told("overheated"), false);
    }
}
