//! Scratched, pitted or marked journals.

use super::{Rule, RuleId, Says, Scene, WearLine, from, read, up_to};
use crate::engine::Part;
use crate::engine::PartKind::{CamJournal, Crankpin, MainJournal};
use crate::measure::{Phase, Quantity, Stated, in_unit};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{self, Machine, Polish, Replace};

/// Marks that are judged by the fingernail alone.
const MARKS: &[WearLine] = &[
    up_to(Grade::TWO, &[MainJournal, Crankpin, CamJournal], &[Tag::Pitting, Tag::Corrosion], Polish),
    from(Grade::THREE, &[MainJournal, Crankpin, CamJournal], &[Tag::Pitting, Tag::Corrosion], Machine),
    up_to(Grade::ONE, &[MainJournal, Crankpin], &[Tag::Seizure], Polish),
    up_to(Grade::TWO, &[MainJournal, Crankpin], &[Tag::HandlingDamage], Polish),
    from(Grade::TWO, &[MainJournal, Crankpin], &[Tag::Seizure], Machine),
    from(Grade::THREE, &[MainJournal, Crankpin], &[Tag::HandlingDamage], Machine),
];
/// Scratches, whose depth the spec sheet may judge.
const SCRATCHES: &[WearLine] = &[
    up_to(Grade::TWO, &[MainJournal, Crankpin, CamJournal], &[Tag::Scoring], Polish),
    from(Grade::THREE, &[MainJournal, Crankpin, CamJournal], &[Tag::Scoring], Machine),
];

pub(super) const RULE: Rule = Rule {
    id: RuleId("journal-scratches"),
    why: "A mark that catches a fingernail would cut the new bearing, so the journal is ground; one that is only seen or felt may polish out. How deep is too deep differs from manual to manual: where the spec sheet gives a depth and it was measured, the depth decides.",
    source: "TM 10-4320-307-24 (slight marks: polish with crocus cloth, else grind or replace); TM 5-2815-241-34&P p. 2-216 (to 0.020 in deep grind, deeper discard); fingernail test: common practice.",
    says: Says::OnPart(|scene, part, record| {
        let scratches = read(SCRATCHES, part, record)
            .map(|(outcome, seen)| by_depth(scene, part, outcome, &seen).unwrap_or((outcome, seen)));
        read(MARKS, part, record).into_iter().chain(scratches).max_by_key(|(outcome, _)| *outcome)
    }),
};

/// What the sheet says of a scratch whose depth was measured, beside what the fingernail says.
fn by_depth(scene: &Scene<'_>, part: Part, by_nail: Outcome, seen: &str) -> Option<(Outcome, String)> {
    let depth = scene.measured.readings.value(part, Quantity::ScratchDepth, Phase::Found, None)?.high;
    let line = scene.job.sheet.line(part, Quantity::ScratchDepth, "", None)?;
    let show = |length| in_unit(length, scene.job.sheet.head.unit);
    let [polished, ground] = [&line.max, &line.limit].map(|stated| stated.as_ref().map(Stated::length));
    let (outcome, rule) = match (polished, ground) {
        (_, Some(most)) if depth > most => (Replace, format!("lets no more than {} be ground out", show(most))),
        (Some(most), _) if depth <= most => (Polish, format!("lets up to {} be polished out", show(most))),
        (Some(most), _) => (Machine, format!("lets no more than {} be polished out", show(most))),
        (None, _) => return None,
    };
    let nail = match by_nail == outcome {
        true => String::new(),
        false => format!(" By the fingernail alone: {}.", by_nail.words()),
    };
    Some((outcome, format!("{seen} It is {} deep, and the spec sheet {rule}.{nail}", show(depth))))
}
