//! What to do about each part: a plain list of rules, the severest applicable one wins, all are shown.

mod decision;
pub mod rules;
mod way;

pub use decision::{Decision, Reason};

use std::collections::BTreeMap;

use crate::engine::{Engine, Part, PartKind};
use crate::job::{Job, PartRecord};
use crate::sheet::SizeGroup;
use crate::sizing::Measured;
use crate::work::Outcome;
use rules::{Rule, Says, Scene};

/// Decides about every part, in the order of [`Engine::parts`].
pub fn decide(engine: &Engine, job: &Job, measured: &Measured<'_>) -> Vec<Decision> {
    let blank = PartRecord::default();
    let scene = Scene { engine, job, measured };
    let mut alone = alone(&scene);
    let mut in_sets = in_sets(&scene, &alone, None);
    let mut unswayed: BTreeMap<Part, Vec<Reason>> = engine
        .parts()
        .iter()
        .filter(|part| job.parts.get(part).is_some_and(|record| record.overrule.is_some()))
        .map(|part| (*part, unswayed(&scene, &alone, *part)))
        .collect();
    engine
        .parts()
        .iter()
        .map(|part| {
            let record = job.parts.get(part).unwrap_or(&blank);
            let told = unswayed.remove(part).unwrap_or_else(|| told(&mut alone, &mut in_sets, *part));
            let mut decision = decision(*part, record, told);
            way::take(&scene, *part, &mut decision);
            decision
        })
        .collect()
}

/// Reasons, part by part.
type Reasons = BTreeMap<Part, Vec<Reason>>;

/// What the rules say of a part of which a person decided otherwise, as if they had not: the plan of its group of sizes and
/// the rules about sets heed a person's word, and would no longer tell what it is weighed against.
fn unswayed(scene: &Scene<'_>, alone: &Reasons, part: Part) -> Vec<Reason> {
    if SizeGroup::of(part.kind).is_none() && part.kind != PartKind::TappetBore {
        let mut own = BTreeMap::from([(part, alone.get(&part).cloned().unwrap_or_default())]);
        return told(&mut own, &mut in_sets(scene, alone, Some(part)), part);
    }
    let mut job = scene.job.clone();
    job.parts.entry(part).or_default().overrule = None;
    let scene = Scene { job: &job, measured: &Measured::of(scene.engine, &job), ..*scene };
    let mut alone = self::alone(&scene);
    let mut in_sets = in_sets(&scene, &alone, None);
    told(&mut alone, &mut in_sets, part)
}

/// All that the rules say of a part, in their order: those about sets come last.
fn told(alone: &mut Reasons, in_sets: &mut Reasons, part: Part) -> Vec<Reason> {
    let mut told = alone.remove(&part).unwrap_or_default();
    told.extend(in_sets.remove(&part).unwrap_or_default());
    told
}

/// What the rules about one part say; none of them heeds a person's decision.
fn alone(scene: &Scene<'_>) -> Reasons {
    let blank = PartRecord::default();
    let of_part = |part: Part| {
        let record = scene.job.parts.get(&part).unwrap_or(&blank);
        let says = |rule: &&Rule| {
            let (outcome, because) = match &rule.says {
                Says::OnWear(lines) => rules::read(lines, part, record)?,
                Says::OnPart(says) => says(scene, part, record)?,
                Says::OnSet(_) => return None,
            };
            Some(Reason::of(rule, outcome, because, scene.engine.terms()))
        };
        rules::ALL.iter().filter_map(says).collect()
    };
    scene.engine.parts().iter().map(|part| (*part, of_part(*part))).collect()
}

/// What the rules about sets say on top of it, heeding what persons decided, but for one part.
fn in_sets(scene: &Scene<'_>, alone: &Reasons, but: Option<Part>) -> Reasons {
    let mut in_sets = Reasons::new();
    for rule in rules::ALL {
        let Says::OnSet(says) = &rule.says else { continue };
        let stands = |part: Part| {
            let decided = scene.job.parts.get(&part).and_then(|record| record.overrule.as_ref());
            match decided.filter(|_| but != Some(part)) {
                Some(overrule) => overrule.outcome,
                None => severest([alone, &in_sets].into_iter().filter_map(|told| told.get(&part)).flatten()),
            }
        };
        for (part, outcome, because) in says(scene, &stands) {
            in_sets.entry(part).or_default().push(Reason::of(rule, outcome, because, scene.engine.terms()));
        }
    }
    in_sets
}

/// A part with wear of which no rule has a word is for a person to decide.
fn severest<'a>(reasons: impl IntoIterator<Item = &'a Reason>) -> Outcome {
    reasons.into_iter().map(|reason| reason.outcome).max().unwrap_or(Outcome::CantSay)
}

fn decision(part: Part, record: &PartRecord, mut reasons: Vec<Reason>) -> Decision {
    reasons.sort_by_key(|reason| std::cmp::Reverse(reason.outcome));
    Decision {
        // A person's word, or else the severest reason.
        outcome: record.overrule.as_ref().map_or_else(|| severest(&reasons), |overrule| overrule.outcome),
        by_rules: severest(&reasons),
        overruled_because: record.overrule.as_ref().map(|overrule| overrule.reason.clone()),
        way: None,
        looked_at: record.looked_at(),
        possible: part.kind.row().outcomes.to_vec(),
        reasons,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::{Arrangement, Tappets};
    use crate::job::testing::edit;
    use crate::job::{Change, Edit, OnIntake, OnPart, RecordedChange};
    use crate::wear::{Grade, Tag};
    use proptest::prelude::*;

    fn decided(arrangement: Arrangement, changes: &[Change]) -> BTreeMap<String, Decision> {
        let start = Change::OnIntake(OnIntake::Arrange { arrangement: arrangement.clone() });
        let edits: Vec<Edit> = std::iter::once(&start)
            .chain(changes)
            .zip(1..)
            .map(|(change, n)| Edit { id: edit(n), change: RecordedChange::Known(change.clone()) })
            .collect();
        let engine = Engine::new(arrangement).unwrap();
        let job = Job::fold(&edits);
        let decisions = decide(&engine, &job, &Measured::of(&engine, &job));
        engine.parts().iter().map(ToString::to_string).zip(decisions).collect()
    }

    fn tag(part: &str, tag: Tag, grade: Grade) -> Change {
        Change::OnPart(OnPart::Tag { part: part.parse().unwrap(), tag, grade, zones: Default::default() })
    }

    fn clean(part: &str) -> Change {
        Change::OnPart(OnPart::Clean { part: part.parse().unwrap() })
    }

    #[track_caller]
    fn check(changes: &[Change], part: &str, outcome: Outcome, rule: &str) {
        let decisions = decided(Arrangement::inline(4), changes);
        let decision = &decisions[part];
        assert_eq!((decision.outcome, decision.reasons[0].rule.as_str()), (outcome, rule), "{decision:#?}");
    }

    use Outcome::*;

    #[test]
    fn each_rule_decides_its_case() {
        check(&[], "main-shell.1.upper", Replace, "renewed-at-overhaul");
        check(&[], "piston.1", CantSay, "not-looked-at");
        check(&[clean("crankpin.1")], "crankpin.1", CantSay, "measure-first");
        check(&[tag("crankpin.1", Tag::Scoring, Grade::TWO)], "crankpin.1", CantSay, "measure-first");
        check(&[tag("crankpin.1", Tag::Scoring, Grade::THREE)], "crankpin.1", Machine, "journal-scratches");
        check(&[tag("crankpin.1", Tag::HotSpot, Grade::THREE)], "crankpin.1", Replace, "heat-on-a-shaft");
        check(&[tag("crankshaft", Tag::Cracks, Grade::TWO)], "crankshaft", Replace, "cracks");
        check(&[tag("crankshaft", Tag::Cracks, Grade::ONE)], "crankshaft", CantSay, "tested-for-cracks");
        check(&[tag("piston.2", Tag::Scuffing, Grade::THREE)], "piston.2", Replace, "piston-damage");
        check(&[tag("bore.2", Tag::Scoring, Grade::TWO)], "bore.2", Machine, "bore-damage");
        check(&[tag("tappet.1.intake.1", Tag::Deposits, Grade::TWO)], "tappet.1.intake.1", Clean, "dirty-tappets");
        check(&[tag("tappet.1.intake.1", Tag::DishedFace, Grade::ONE)], "tappet.1.intake.1", Replace, "tappet-damage");
        check(&[clean("tappet.1.intake.1")], "tappet.1.intake.1", PutBack, "nothing-found");
        let bore = "tappet-bore.1.intake.1";
        check(&[], bore, CantSay, "seen-along");
        check(&[clean("tappet.1.intake.1")], bore, PutBack, "seen-along");
        check(&[tag("tappet.1.intake.1", Tag::Pitting, Grade::FOUR)], bore, PutBack, "seen-along");
        check(&[tag("tappet.1.intake.1", Tag::Scoring, Grade::TWO)], bore, CantSay, "not-looked-at");
        check(&[tag(bore, Tag::Scoring, Grade::TWO)], bore, Clean, "tappet-bore-damage");
        check(&[tag(bore, Tag::Scoring, Grade::THREE)], bore, Machine, "tappet-bore-damage");
        check(&[tag(bore, Tag::Scoring, Grade::THREE)], "tappet.1.intake.1", Replace, "tappets-to-bores");
        check(&[tag(bore, Tag::Cracks, Grade::TWO)], "block", Replace, "block-as-one");
        check(&[tag("lobe.1.intake.1", Tag::Scoring, Grade::ONE)], "lobe.1.intake.1", PutBack, "lobe-damage");
        check(&[tag("lobe.1.intake.1", Tag::WornNose, Grade::TWO)], "lobe.1.intake.1", Replace, "lobe-damage");
        check(&[tag("cam-bearing.1.2", Tag::Scoring, Grade::TWO)], "cam-bearing.1.2", Replace, "cam-bearing-damage");
        check(&[tag("housing-bore.2", Tag::BrightBack, Grade::TWO)], "housing-bore.2", Machine, "housing-damage");
        check(&[tag("rod.2", Tag::HotSpot, Grade::TWO)], "rod.2", Replace, "rod-damage");
        check(&[tag("oil-pump", Tag::Scoring, Grade::THREE)], "oil-pump", Replace, "oil-pump-damage");
        check(&[tag("oil-pump", Tag::Scoring, Grade::TWO)], "pump-gears", PutBack, "seen-along");
        check(&[clean("oil-pump")], "pump-cover", PutBack, "seen-along");
        check(&[], "pump-body", CantSay, "seen-along");
        check(&[tag("oil-pump", Tag::Scoring, Grade::THREE)], "pump-gears", Replace, "taken-apart");
        check(
            &[clean("oil-pump"), tag("pump-cover", Tag::Scoring, Grade::TWO)],
            "oil-pump",
            RebuildHere,
            "taken-apart",
        );
        check(&[clean("oil-pump"), tag("pump-body", Tag::Scoring, Grade::THREE)], "oil-pump", Replace, "taken-apart");
        check(&[tag("pump-gears", Tag::Scoring, Grade::ONE)], "pump-gears", Clean, "pump-part-damage");
        let apart = ["pump-gears", "pump-body", "pump-cover"].map(clean);
        check(&apart, "oil-pump", PutBack, "taken-apart");
        check(&[tag("auxiliary-bushes", Tag::Wiping, Grade::TWO)], "auxiliary-bushes", Replace, "drive-damage");
        check(&[tag("oil-pickup", Tag::EmbeddedDebris, Grade::FOUR)], "oil-pickup", Clean, "oil-pickup-damage");
        check(&[tag("pushrod.2.intake.1", Tag::Bent, Grade::TWO)], "pushrod.2.intake.1", Replace, "pushrod-damage");
        check(&[clean("pushrod.2.intake.1")], "pushrod.2.intake.1", PutBack, "nothing-found");
        check(&[tag("head-bolts", Tag::Bent, Grade::TWO)], "head-bolts", Replace, "fastener-damage");
        check(&[clean("rod-bolts")], "rod-bolts", CantSay, "measure-first");
        check(&[tag("timing-drive", Tag::Spalling, Grade::ONE)], "timing-drive", Replace, "drive-damage");
        check(&[tag("block", Tag::Deposits, Grade::THREE)], "block", Clean, "rust-and-dirt");
        check(
            &[clean("oil-pump"), tag("main-shell.1.lower", Tag::EmbeddedDebris, Grade::TWO)],
            "oil-pump",
            RebuildHere,
            "debris-in-the-oil-ways",
        );
    }

    #[test]
    fn nothing_is_decided_without_a_word_why() {
        for grade in [Grade::TWO, Grade::FOUR] {
            let engine = Engine::new(Arrangement::inline(4)).unwrap();
            let damage = |part: &Part| {
                let tags = part.kind.row().tags.iter().copied().filter(|tag| tag.is_damage());
                tags.map(|damage| tag(&part.to_string(), damage, grade)).collect::<Vec<_>>()
            };
            let all: Vec<Change> = engine.parts().iter().flat_map(damage).collect();
            let told = decided(Arrangement::inline(4), &all);
            let silent: Vec<&String> =
                told.iter().filter(|(_, own)| own.because().trim().is_empty()).map(|(part, _)| part).collect();
            assert!(silent.is_empty(), "{silent:?}");
        }
    }

    #[test]
    fn sets_go_together() {
        let ground = [tag("crankpin.3", Tag::Scoring, Grade::THREE), clean("crankpin.1")];
        check(&ground, "crankpin.1", Machine, "common-size");
        check(&ground, "main-journal.1", CantSay, "not-looked-at");
        let burnt = [tag("main-journal.2", Tag::HotSpot, Grade::FOUR)];
        check(&burnt, "crankshaft", Replace, "crankshaft-as-one");
        check(&burnt, "crankpin.4", Replace, "crankshaft-as-one");
        let worn = [tag("lobe.2.exhaust.1", Tag::Pitting, Grade::ONE), clean("tappet.4.intake.1")];
        check(&worn, "camshaft.1", Replace, "camshaft-as-one");
        check(&worn, "tappet.4.intake.1", Replace, "new-cam-new-tappets");
    }

    #[test]
    fn roller_tappets_may_stay_on_a_new_cam() {
        let roller = Arrangement { tappets: Tappets::RollerHydraulic, ..Arrangement::inline(4) };
        let decisions =
            decided(roller, &[tag("lobe.2.exhaust.1", Tag::Pitting, Grade::ONE), clean("tappet.4.intake.1")]);
        assert_eq!(decisions["camshaft.1"].outcome, Replace);
        assert_eq!(decisions["tappet.4.intake.1"].outcome, PutBack);
    }

    #[test]
    fn a_person_decides_and_the_rules_view_stays() {
        let worn = tag("lobe.2.exhaust.1", Tag::Pitting, Grade::ONE);
        let keep = Change::OnPart(OnPart::Overrule {
            part: "lobe.2.exhaust.1".parse().unwrap(),
            outcome: PutBack,
            reason: "Spare engine.".into(),
        });
        let decisions = decided(Arrangement::inline(4), &[worn, keep, clean("camshaft.1"), clean("tappet.4.intake.1")]);
        let lobe = &decisions["lobe.2.exhaust.1"];
        assert_eq!(
            (lobe.outcome, lobe.by_rules, lobe.overruled_because.as_deref()),
            (PutBack, Replace, Some("Spare engine."))
        );
        assert_eq!(decisions["camshaft.1"].outcome, PutBack, "what a person keeps condemns nothing else");
        assert_eq!(decisions["tappet.4.intake.1"].outcome, PutBack);
    }

    #[test]
    fn every_part_gets_exactly_one_outcome_with_a_reason() {
        for arrangement in [Arrangement::inline(6), Arrangement::vee(8), Arrangement::flat(4)] {
            let job = Job::default();
            let engine = Engine::new(arrangement).unwrap();
            for (part, decision) in engine.parts().iter().zip(decide(&engine, &job, &Measured::of(&engine, &job))) {
                assert!(!decision.reasons.is_empty(), "{part} has an outcome without a reason");
                assert_eq!(decision.outcome, if part.kind.row().always_renewed { Replace } else { CantSay });
            }
        }
    }

    #[test]
    fn every_damage_of_every_grade_has_a_rule() {
        let arrangement = Arrangement { tappets: Tappets::FlatHydraulic, ..Arrangement::inline(1) };
        let engine = Engine::new(arrangement.clone()).unwrap();
        let mut silent = Vec::new();
        for part in engine.parts() {
            for damage in part.kind.row().tags {
                for grade in Grade::ALL {
                    let decision = decided(arrangement.clone(), &[tag(&part.to_string(), *damage, grade)])
                        .remove(&part.to_string())
                        .unwrap();
                    // "Measure first" holds for every state of the part: it does not answer to the damage.
                    if decision.reasons.iter().all(|reason| reason.rule == rules::MEASURE_FIRST) && damage.is_damage() {
                        silent.push(format!("{part} {damage:?} {}", grade.number()));
                    }
                }
            }
        }
        assert!(silent.is_empty(), "no rule speaks of {silent:#?}");
    }

    fn any_tagging() -> impl Strategy<Value = (Part, Tag, Grade)> {
        let parts = Engine::new(Arrangement::inline(2)).unwrap().parts().to_vec();
        prop::sample::select(parts).prop_flat_map(|part| {
            (Just(part), prop::sample::select(part.kind.row().tags), prop::sample::select(&Grade::ALL[..]))
        })
    }

    proptest! {
        #[test]
        fn a_worse_finding_never_leads_to_a_milder_outcome(taggings in prop::collection::vec(any_tagging(), 1..8)) {
            let change = |(part, tag, grade): &(Part, Tag, Grade)| Change::OnPart(OnPart::Tag { part: *part, tag: *tag, grade: *grade, zones: Default::default() });
            let before = decided(Arrangement::inline(2), &taggings.iter().map(change).collect::<Vec<_>>());
            let mut worse = taggings.clone();
            let (_, tag, grade) = worse.last_mut().unwrap();
            prop_assume!(tag.is_damage() && *grade < Grade::FOUR);
            *grade = Grade::try_from(grade.number() + 1).unwrap();
            let after = decided(Arrangement::inline(2), &worse.iter().map(change).collect::<Vec<_>>());
            // A rod that is renewed after all comes with its bolts, and those of it need not be bought.
            let is_new_rod = before.iter().any(|(part, own)| {
                part.starts_with("rod.") && own.outcome == Machine && after[part].outcome == Replace
            });
            for (part, decision) in before.iter().filter(|(part, _)| !is_new_rod || *part != "rod-bolts") {
                // What corrosion asks to be laid under a straightedge first is decided no milder: it is not decided yet.
                let is_asked = after[part].reasons.iter().any(|own| own.rule == rules::DECK_FLATNESS);
                if is_asked && after[part].outcome == CantSay {
                    continue;
                }
                prop_assert!(after[part].outcome >= decision.outcome, "{part}: {:?} then {:?}", decision, after[part]);
            }
        }

        #[test]
        fn outcomes_are_among_the_possible(taggings in prop::collection::vec(any_tagging(), 0..12)) {
            let changes: Vec<Change> = taggings.iter().map(|(part, tag, grade)| Change::OnPart(OnPart::Tag { part: *part, tag: *tag, grade: *grade, zones: Default::default() })).collect();
            for (part, decision) in decided(Arrangement::inline(2), &changes) {
                prop_assert!(decision.outcome == CantSay || decision.possible.contains(&decision.outcome), "{part}: {:?}", decision);
            }
        }
    }
}
