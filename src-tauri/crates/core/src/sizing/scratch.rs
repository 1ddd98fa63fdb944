//! What damage of a running surface asks for: by the fingernail, and where the depth of a scratch was measured, by the
//! spec sheet. The plan of a group and the rules read the same table.

use crate::engine::{Part, PartKind};
use crate::figure::Readings;
use crate::measure::{Length, Phase, Quantity, Stated};
use crate::sheet::Sheet;
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

use PartKind::{Bore, CamJournal, Crankpin, MainJournal, TappetBore};
use Tag::{Corrosion, HandlingDamage, Pitting, Rust, Scoring, Scuffing, Seizure};

/// On these kinds these tags are machined out from this grade on; below it they polish out of a journal and are honed out
/// of a bore. What catches a fingernail would cut the new bearing (common practice); a bore that a fingernail feels is
/// bored out (TM 5-3805-281-24-2: pits or deep scratches felt by the fingernail).
const BY_NAIL: [(&[PartKind], &[Tag], Grade); 5] = [
    (&[MainJournal, Crankpin, CamJournal], &[Scoring, Pitting, Corrosion], Grade::THREE),
    (&[MainJournal, Crankpin], &[HandlingDamage], Grade::THREE),
    (&[MainJournal, Crankpin], &[Seizure], Grade::TWO),
    (&[Bore], &[Scoring, Scuffing, Pitting, Rust, Seizure], Grade::TWO),
    // What is felt only is stroked with a stone: a tappet runs on oil, no ring must seal here (common practice).
    (&[TappetBore], &[Scoring, Scuffing, Pitting], Grade::THREE),
];

/// What the fingernail alone says of a grade of damage; none where it is no judge of it.
pub fn by_nail(kind: PartKind, tag: Tag, grade: Grade) -> Option<Outcome> {
    let (.., machined_from) = BY_NAIL.iter().find(|(kinds, tags, _)| kinds.contains(&kind) && tags.contains(&tag))?;
    Some(if grade >= *machined_from { Outcome::Machine } else { light(kind) })
}

/// A bore is honed or stroked with a stone, a journal polished.
fn light(kind: PartKind) -> Outcome {
    if matches!(kind, Bore | TappetBore) { Outcome::Clean } else { Outcome::Polish }
}

/// What a sheet says of a scratch, with the depth that it allows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scratch {
    /// It may be polished or honed out: the sheet lets as much be.
    Light(Length),
    /// It is machined out: more than the sheet lets be polished out, or the sheet says nothing of that. A scratch whose
    /// depth can be measured catches a fingernail.
    Machined(Option<Length>),
    /// It condemns the part: deeper than the sheet lets be machined out.
    TooDeep(Length),
}

impl Scratch {
    /// What it asks for. A bore that is damaged too deep takes a sleeve: it goes to the machine shop too.
    pub fn outcome(self, kind: PartKind) -> Outcome {
        match self {
            Self::Light(_) => light(kind),
            Self::TooDeep(_) if kind != Bore => Outcome::Replace,
            Self::Machined(_) | Self::TooDeep(_) => Outcome::Machine,
        }
    }
}

/// What the sheet says of a scratch of this depth; none where there is none. Manuals differ, so there is no depth of our
/// own (TM 5-2815-241-34&P p. 2-216: to 0.020 in deep grind, deeper discard).
pub fn scratch(sheet: &Sheet, part: Part, depth: Length) -> Option<Scratch> {
    if depth <= Length::default() {
        return None;
    }
    let line = sheet.line(part, Quantity::ScratchDepth, "", None);
    let most = |of: fn(&crate::sheet::Line) -> Option<&Stated>| line.and_then(of).map(Stated::length);
    let (light, deepest) = (most(|line| line.max.as_ref()), most(|line| line.limit.as_ref()));
    Some(match (light, deepest) {
        (_, Some(deepest)) if depth > deepest => Scratch::TooDeep(deepest),
        (Some(light), _) if depth <= light => Scratch::Light(light),
        (light, _) => Scratch::Machined(light),
    })
}

/// The deepest scratch of a part as found, with what the sheet says of it; none where none was measured.
pub fn deepest_scratch(readings: &Readings<'_>, part: Part) -> Option<(Length, Scratch)> {
    let depth = readings.value(part, Quantity::ScratchDepth, Phase::Found, None)?.high;
    Some((depth, scratch(&readings.job.sheet, part, depth)?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[track_caller]
    fn check(limits: serde_json::Value, thousandths: i64, expected: impl Fn(fn(i64) -> Length) -> Option<Scratch>) {
        let mut line = json!({ "of": { "kind": "crankpin", "quantity": "scratch-depth" } });
        line.as_object_mut().unwrap().extend(limits.as_object().unwrap().clone());
        let sheet = Sheet { lines: vec![serde_json::from_value(line).unwrap()], ..Sheet::default() };
        let inches = |thousandths| Length::from_nanometres(thousandths * 25_400);
        assert_eq!(scratch(&sheet, "crankpin.1".parse().unwrap(), inches(thousandths)), expected(inches));
    }

    // TM 5-2815-241-34&P p. 2-216: to 0.020 in deep grind, deeper discard.
    #[test]
    fn the_sheet_judges_a_depth_and_without_a_limit_it_is_machined() {
        let both = || json!({ "max": "0.001 in", "limit": "0.020 in" });
        check(both(), 0, |_| None);
        check(both(), 1, |inches| Some(Scratch::Light(inches(1))));
        check(both(), 20, |inches| Some(Scratch::Machined(Some(inches(1)))));
        check(both(), 21, |inches| Some(Scratch::TooDeep(inches(20))));
        check(json!({ "limit": "0.020 in" }), 1, |_| Some(Scratch::Machined(None)));
        check(json!({ "min": "0 in" }), 1, |_| Some(Scratch::Machined(None)));
    }

    #[test]
    fn every_line_of_the_fingernail_is_of_tags_and_outcomes_that_the_kind_can_have() {
        for (kinds, tags, _) in BY_NAIL {
            for (kind, tag) in kinds.iter().flat_map(|kind| tags.iter().map(move |tag| (kind, tag))) {
                assert!(kind.row().tags.contains(tag), "a {kind:?} can’t be tagged {tag:?}");
                for outcome in Grade::ALL.into_iter().filter_map(|grade| by_nail(*kind, *tag, grade)) {
                    assert!(kind.row().outcomes.contains(&outcome), "{outcome:?} is not possible for a {kind:?}");
                }
            }
        }
    }
}
