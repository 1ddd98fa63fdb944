//! A crankshaft brought true, its thrust faces dressed, and whatever is knocked or rusted.

use super::row::{Brought, Row, Scene, Stage};
use crate::decide::rules::{BENT_CRANKSHAFT, PIECE_OF_WORKED_PARTS, THRUST_FACES};
use crate::engine::{Part, PartKind};
use crate::measure::{Conformity, Phase, Quantity};
use crate::sizing::{bent_mains, thrust_back};
use crate::work::{Hands, Outcome, Work};

pub(super) const ROW: Row = Row {
    work: Work::Machine,
    done: |_| "measure the run-out; straighten or dress what is damaged",
    stage: Stage::Straighten,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "",
    source: "TM 5-2815-241-34&P p. 2-216 (thrust width, flatness of the face); common practice.",
    brought: |scene| {
        let mut all = scene.decided_itself(PartKind::Crankshaft, Work::Machine);
        all.retain_mut(|own| of_its_own(scene, own));
        all
    },
};

/// Whether there is anything to be done to the shaft but what has operations of its own; what is bent or torn is named.
fn of_its_own(scene: &Scene<'_>, own: &mut Brought) -> bool {
    let decisions = own.parts.iter().filter_map(|part| scene.decision(*part));
    let by_hand = decisions.clone().any(|decision| decision.overruled_because.is_some());
    let mut reasons: Vec<_> = decisions.flat_map(|decision| &decision.reasons).collect();
    reasons.retain(|reason| reason.outcome == Outcome::Machine && reason.rule != PIECE_OF_WORKED_PARTS);
    let has = |rule| reasons.iter().any(|reason| reason.rule == rule);
    let (is_bent, is_torn) = (has(BENT_CRANKSHAFT), has(THRUST_FACES));
    if !is_bent && !is_torn {
        return by_hand || !reasons.is_empty();
    }
    if let (false, Some(first)) = (by_hand, reasons.first()) {
        own.because.clone_from(&first.because);
    }
    let is_more = reasons.iter().any(|reason| ![BENT_CRANKSHAFT, THRUST_FACES].contains(&reason.rule));
    let bent = if is_bent { bent_mains(scene.measured) } else { vec![] };
    let found: Vec<String> =
        bent.iter().map(|(part, figure)| format!("{} {}", scene.engine.label(*part), figure.shown)).collect();
    let straighten =
        is_bent.then(|| format!("straighten, or say if it must be ground true (run-out {})", found.join(", ")));
    let dress = is_torn.then(|| "dress the thrust faces flat and square, and say how wide they are then".to_owned());
    let damage = is_more.then(|| "dress what is damaged".to_owned());
    own.done = Some([straighten, dress, damage].into_iter().flatten().collect::<Vec<_>>().join("; "));
    let is_dressed = !is_torn || thrust_back(scene.measured).is_some();
    own.is_right = !is_more && is_dressed && bent.iter().all(|(part, _)| is_straight(scene, *part));
    true
}

/// Whether it was measured as it came back, and runs true.
fn is_straight(scene: &Scene<'_>, main: Part) -> bool {
    let mut back = scene.measured.figures(main, Phase::Machined);
    back.any(|own| own.quantity == Quantity::RunOut && own.verdict == Some(Conformity::Within))
}

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::Arrangement;
    use crate::work::Work;
    use serde_json::{Value, json};

    const ENGINE: fn() -> Arrangement = || Arrangement::inline(4);

    fn begin(further: &[Value]) -> Vec<Value> {
        let line = json!({ "do": "state-line", "line": {
            "of": { "kind": "main-journal", "quantity": "run-out" }, "limit": "0.002 in", "source": "" } });
        let width = json!({ "do": "state-line", "line": {
            "of": { "kind": "main-journal", "quantity": "thrust-width" }, "limit": "1.256 in", "source": "" } });
        [line, width].iter().chain(further).cloned().collect()
    }

    fn measured(part: &str, quantity: &str, value: &str, phase: &str) -> Value {
        let reading = json!({ "part": part, "quantity": quantity, "value": value, "phase": phase });
        json!({ "do": "measure", "reading": reading })
    }

    #[test]
    fn a_bent_crankshaft_is_straightened_and_tested_first() {
        let bent = begin(&[measured("main-journal.3", "run-out", "0.006 in", "found")]);
        // One piece, one trip.
        let waits = "Main 1, journal and 8 more can’t be judged yet.";
        let done = "straighten, or say if it must be ground true (run-out Main 3, journal 0.006 in)";
        check(&ENGINE(), &bent, "crankshaft", Work::Machine, Some(Line { done, waits, is_here: false }));
        let tested = Line { done: "test for cracks", waits, is_here: false };
        check(&ENGINE(), &bent, "crankshaft", Work::CrackTest, Some(tested));
        let straight = begin(&[measured("main-journal.3", "run-out", "0.001 in", "found")]);
        check(&ENGINE(), &straight, "crankshaft", Work::Machine, None);
        check(&ENGINE(), &straight, "crankshaft", Work::CrackTest, None);
    }

    #[test]
    fn thrust_faces_are_dressed_and_no_journal_is_ground_for_them() {
        let waits = "Main 1, journal and 8 more can’t be judged yet.";
        let done = "dress the thrust faces flat and square, and say how wide they are then";
        let dressed = Some(Line { done, waits, is_here: false });
        let wide = begin(&[measured("main-journal.3", "thrust-width", "1.260 in", "found")]);
        let torn = begin(&[json!({ "do": "tag", "part": "thrust-face.front", "tag": "wiping", "grade": 4 })]);
        for changes in [wide, torn] {
            check(&ENGINE(), &changes, "crankshaft", Work::Machine, dressed);
            check(&ENGINE(), &changes, "main-journal", Work::Machine, None);
        }
        let light = begin(&[json!({ "do": "tag", "part": "thrust-face.front", "tag": "wiping", "grade": 2 })]);
        check(&ENGINE(), &light, "crankshaft", Work::Machine, None);
        let lost = json!({ "do": "tag", "part": "crankshaft", "tag": "cracks", "grade": 4 });
        let new = begin(&[lost, measured("main-journal.3", "thrust-width", "1.260 in", "found")]);
        check(&ENGINE(), &new, "crankshaft", Work::Machine, None);
    }
}
