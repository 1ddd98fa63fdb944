//! An engine so far destroyed that its parts no longer show what began it.

use crate::engine::{Engine, PartKind};
use crate::job::{Job, PartRecord};
use crate::wear::Grade;

/// What fails by itself at first: once parts of all three are destroyed, one failure has gone through the whole engine.
const GROUPS: [&[PartKind]; 3] = {
    use PartKind::*;
    [
        &[MainShell, RodShell, MainJournal, Crankpin, ThrustFace],
        &[Piston, Rings, Bore],
        &[Tappet, Lobe, CamJournal, CamBearing],
    ]
};

/// The share of the parts looked at that must be destroyed, in each group: half at the worst grade, or more at the two worst,
/// for one mechanic's 3 is another's 4; and the fewest that it is a share of (our judgement).
const SHARES: [(Grade, f64); 2] = [(Grade::FOUR, 0.5), (Grade::THREE, 0.6)];
const FEWEST: usize = 4;

/// Whether a part tells nothing any longer: metal is gone or moved, from whatever cause.
pub(super) fn is_destroyed(record: &PartRecord, from: Grade) -> bool {
    record.worst() >= Some(from)
}

/// Whether bearings, cylinders and valve train are destroyed all three. What is destroyed then bears the marks of the whole
/// failure, not of its cause: it counts for nothing, and only the parts that are less damaged are read (common practice:
/// what failed first is found on what failed least).
/// From which grade on parts count as destroyed; none where the engine is no wreck.
pub(super) fn wrecked_from(engine: &Engine, job: &Job) -> Option<Grade> {
    let is_wreck = |(from, share): &(Grade, f64)| is_wreck(engine, job, *from, *share);
    SHARES.into_iter().rev().find(is_wreck).map(|(from, _)| from)
}

fn is_wreck(engine: &Engine, job: &Job, from: Grade, share: f64) -> bool {
    GROUPS.iter().all(|group| {
        let parts = engine.parts().iter().filter(|part| group.contains(&part.kind));
        let looked: Vec<&PartRecord> =
            parts.filter_map(|part| job.parts.get(part)).filter(|record| record.looked_at()).collect();
        let destroyed = looked.iter().filter(|record| is_destroyed(record, from)).count();
        looked.len() >= FEWEST && destroyed as f64 >= share * looked.len() as f64
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::cause::{CauseView, Verdict};
    use crate::engine::{Arrangement, Part};
    use crate::job::testing::{arrange, job_of};
    use crate::wear::Tag;
    use serde_json::{Value, json};

    /// A V8 of which every part that has damage to show shows this much of it, some tags each.
    fn damaged(tags: usize, grade: impl Fn(Part) -> u8) -> Vec<Value> {
        let arrangement = Arrangement::vee(8);
        let engine = Engine::new(arrangement.clone()).unwrap();
        let mut changes = vec![arrange(&arrangement)];
        for part in engine.parts() {
            let kinds = part.kind.row().tags.iter().filter(|tag| tag.is_damage() && **tag != Tag::HandlingDamage);
            let tagged = kinds.take(tags);
            changes.extend(tagged.map(|tag| json!({ "do": "tag", "part": part, "tag": tag, "grade": grade(*part) })));
        }
        changes
    }

    #[test]
    fn of_a_wreck_no_cause_is_named() {
        for tags in [1, 2, 20] {
            let causes = assess(&job_of(&damaged(tags, |_| 4))).causes;
            assert_eq!(causes.verdict, Verdict::Wreck, "{tags} tags each");
            let likely = |cause: &&CauseView| cause.named || cause.probability >= 0.5 && !cause.ordinary;
            assert_eq!(causes.causes.iter().find(likely).map(|cause| &cause.id), None, "{tags} tags each");
        }
    }

    /// One mechanic's 3 is another's 4.
    #[test]
    fn grade_three_all_over_is_a_wreck_too() {
        let tags = |part: Part| match part.kind {
            PartKind::MainShell | PartKind::RodShell | PartKind::CamBearing | PartKind::ThrustFace => Some("wiping"),
            PartKind::MainJournal | PartKind::Crankpin | PartKind::Piston | PartKind::Bore => Some("scoring"),
            PartKind::Tappet => Some("pitting"),
            PartKind::Lobe => Some("worn-nose"),
            PartKind::Rings => Some("cracks"),
            _ => None,
        };
        for arrangement in [Arrangement::vee(8), Arrangement::inline(4)] {
            let engine = Engine::new(arrangement.clone()).unwrap();
            for grade in [&|_| 3, &|n| 3 + n % 2] as [&dyn Fn(usize) -> usize; 2] {
                let looks = engine.parts().iter().enumerate().filter_map(|(n, part)| {
                    Some(json!({ "do": "tag", "part": part, "tag": tags(*part)?, "grade": grade(n) }))
                });
                let changes: Vec<Value> = std::iter::once(arrange(&arrangement)).chain(looks).collect();
                let causes = assess(&job_of(&changes)).causes;
                assert_eq!(causes.verdict, Verdict::Wreck, "{}", causes.summary);
            }
        }
    }

    /// Hardened faces break up by fatigue and by hardly anything else (NAVEDTRA 14076).
    #[test]
    fn one_pitted_lobe_is_named() {
        let engine = Engine::new(Arrangement::vee(8)).unwrap();
        let looks = engine.parts().iter().map(|part| match part.to_string().as_str() {
            "lobe.3.intake.1" => json!({ "do": "tag", "part": part, "tag": "pitting", "grade": 2 }),
            _ => json!({ "do": "clean", "part": part }),
        });
        let changes: Vec<Value> = std::iter::once(arrange(&Arrangement::vee(8))).chain(looks).collect();
        let causes = assess(&job_of(&changes)).causes;
        assert_eq!(
            (causes.verdict, causes.causes[0].id.as_str()),
            (Verdict::Named, "cam-fatigue"),
            "{}",
            causes.summary
        );
    }

    /// What is less damaged is still read.
    #[test]
    fn what_is_left_of_a_wreck_may_name_its_cause() {
        let bearings = |part: Part| part.kind == PartKind::MainShell || part.kind == PartKind::RodShell;
        let mut changes = damaged(1, |_| 4);
        let dirty: Vec<Value> = changes
            .iter()
            .filter_map(|change| change.get("part")?.as_str()?.parse::<Part>().ok())
            .filter(|part| bearings(*part))
            .flat_map(|part| {
                ["scoring", "embedded-debris"].map(|tag| json!({ "do": "tag", "part": part, "tag": tag, "grade": 2 }))
            })
            .collect();
        changes.extend(dirty);
        let causes = assess(&job_of(&changes)).causes;
        assert!(causes.causes.iter().any(|cause| cause.id == "dirt-in-oil" && cause.named), "{:?}", causes.summary);
    }

    #[test]
    fn burnt_bearings_alone_are_no_wreck() {
        let bearings = |part: &Part| GROUPS[0].contains(&part.kind);
        let arrangement = Arrangement::vee(8);
        let engine = Engine::new(arrangement.clone()).unwrap();
        let looks =
            engine.parts().iter().map(|part| match bearings(part) && part.kind.row().tags.contains(&Tag::Wiping) {
                true => json!({ "do": "tag", "part": part, "tag": "wiping", "grade": 4 }),
                false => json!({ "do": "clean", "part": part }),
            });
        let causes = assess(&job_of(&std::iter::once(arrange(&arrangement)).chain(looks).collect::<Vec<_>>())).causes;
        let first: Vec<_> = causes.causes.iter().take(5).map(|cause| (&cause.id, cause.probability)).collect();
        assert_eq!((causes.verdict, first[0].0.as_str()), (Verdict::Named, "oil-starvation"), "{first:?}");
    }
}
