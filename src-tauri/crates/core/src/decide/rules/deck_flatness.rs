//! The deck of a block, on which the head gasket seals: laid under a straightedge where something tells of heat or of a leak
//! at the gasket, and faced where it is not flat.

use super::{Rule, RuleId, Says, Scene, coolant_met_oil, judged};
use crate::engine::{Cylinders, PartKind};
use crate::job::{Answer, Complaint, HistoryFact, PartRecord};
use crate::measure::Phase;
use crate::measure::Quantity::{FlatnessAcross, FlatnessAlong};
use crate::sheet::Dispute;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{CantSay, Machine, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("deck-flatness"),
    why: "A head gasket leaks again on a deck that is not flat: after heat, a leak at the gasket or corrosion it is laid under a straightedge, and faced if it needs it. One manual renews the block. The spec sheet says which is followed.",
    source: "Common practice (face); TM 55-1930-208-24 p. 4-74 (renew the block); OD 1001 lesson 4 (water in the oil comes mostly by the head gasket); TM 5-3820-256-24-5 sec. 3 p. 18 (straightedge along, across and on both diagonals, of a head).",
    says: Says::OnPart(|scene, part, record| {
        // A barrel has a face of its own, and there is no deck.
        let has_deck = scene.engine.arrangement().construction.cylinders != Some(Cylinders::Barrels);
        if part.kind != PartKind::Block || !has_deck {
            return None;
        }
        let is_renewed = scene.job.sheet.follows_other(Dispute::Decks);
        let remedy = |quantity| {
            matches!(quantity, FlatnessAlong | FlatnessAcross).then_some(if is_renewed { Replace } else { Machine })
        };
        match judged::gravest(scene, part, remedy) {
            Some((CantSay, because)) => Some((CantSay, because)),
            Some((outcome, because)) => {
                Some((outcome, format!("{because} {}", Dispute::Decks.sentence(is_renewed, scene.engine.terms()))))
            }
            None => {
                let is_read =
                    |quantity| scene.measured.figures(part, Phase::Found).any(|figure| figure.quantity == quantity);
                let why = suspicion(scene, record).filter(|_| !is_read(FlatnessAlong) || !is_read(FlatnessAcross))?;
                Some((CantSay, format!("{why} Lay a straightedge along, across and on both diagonals of the deck.")))
            }
        }
    }),
};

/// What tells of a deck that may not be flat or tight, in a sentence.
fn suspicion(scene: &Scene<'_>, record: &PartRecord) -> Option<String> {
    let job = scene.job;
    if !record.looked_at() {
        return None;
    }
    if job.history.get(&HistoryFact::Overheated) == Some(&Answer::Yes) {
        return Some("It ran too hot.".into());
    }
    if let Some(met) = coolant_met_oil(scene.engine, job) {
        return Some(met);
    }
    if job.complaints.contains(&Complaint::WhiteSmoke) {
        return Some("White smoke when warm: coolant was burnt.".into());
    }
    record.grade(Tag::Corrosion).filter(|grade| *grade >= Grade::TWO).map(|grade| Tag::Corrosion.told(grade))
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::{Arrangement, Construction, Cylinders};
    use crate::job::testing::{arrange, job_of};
    use crate::work::Outcome::{self, CantSay, Clean, Machine, PutBack, Replace};
    use serde_json::{Value, json};

    fn gap(quantity: &str, value: &str) -> Value {
        json!({ "do": "measure", "reading": { "part": "block", "quantity": quantity, "value": value } })
    }

    #[track_caller]
    fn check(arrangement: &Arrangement, changes: &[Value], outcome: Outcome, because: &str) {
        let changes: Vec<Value> = [arrange(arrangement), json!({ "do": "clean", "part": "block" })]
            .into_iter()
            .chain(changes.iter().cloned())
            .collect();
        let assessment = assess(&job_of(&changes));
        let decision = &assessment.part("block".parse().unwrap()).unwrap().decision;
        assert_eq!(decision.outcome, outcome, "{decision:#?}");
        assert!(decision.because().contains(because), "{}", decision.because());
    }

    #[test]
    fn a_straightedge_is_asked_for_where_something_tells_of_heat_or_a_leak() {
        let engine = Arrangement::inline(4);
        let told = |complaint: &str| json!({ "do": "complain", "complaint": complaint, "told": true });
        let tag = |part: &str, tag: &str, grade: u8| json!({ "do": "tag", "part": part, "tag": tag, "grade": grade });
        check(&engine, &[], PutBack, "");
        check(&engine, &[told("overheated")], CantSay, "It ran too hot. Lay a straightedge");
        check(&engine, &[told("coolant-in-oil")], CantSay, "Coolant got into the oil.");
        check(&engine, &[told("white-smoke")], CantSay, "coolant was burnt");
        check(&engine, &[tag("coolant", "oil-film", 2)], CantSay, "oil in the coolant");
        check(&engine, &[tag("coolant", "oil-film", 1)], PutBack, "");
        // Coolant that only got less leaks outside more often than not.
        check(&engine, &[told("coolant-used")], PutBack, "");
        check(&engine, &[told("oil-used")], PutBack, "");
        check(&engine, &[tag("block", "corrosion", 1)], Clean, "");
        check(&engine, &[tag("block", "corrosion", 2)], CantSay, "Lay a straightedge");
        let construction = Construction { cylinders: Some(Cylinders::Barrels), ..Construction::default() };
        check(&Arrangement { construction, ..engine }, &[told("overheated")], PutBack, "");
    }

    /// The limits are a general rule's: 0.004 in along, 0.002 in across.
    #[test]
    fn a_flat_deck_stays_and_one_that_is_not_is_faced() {
        let engine = Arrangement::inline(4);
        let hot = json!({ "do": "complain", "complaint": "overheated", "told": true });
        let read =
            |along: &str, across: &str| [hot.clone(), gap("flatness-along", along), gap("flatness-across", across)];
        check(&engine, &read("0.001 in", "0 in"), PutBack, "");
        check(&engine, &read("0.008 in", "0 in"), Machine, "Followed here: the deck is faced");
        check(&engine, &read("0.001 in", "0.005 in"), Machine, "across");
        check(&engine, &read("0.008 in", "0 in")[..2], Machine, "along");
        check(&engine, &read("0.001 in", "0 in")[..2], CantSay, "Lay a straightedge");
        // A reading needs nobody's complaint.
        check(&engine, &[gap("flatness-along", "0.008 in")], Machine, "along");
        let other = json!({ "do": "head-sheet", "head": { "name": "Any", "otherwise": ["decks"] } });
        check(&engine, &[gap("flatness-along", "0.008 in"), other], Replace, "TM 55-1930-208-24");
    }
}
