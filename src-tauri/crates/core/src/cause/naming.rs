//! What damage is noticed, and what it is called: a tag is an observation that another hand might have named otherwise.
//!
//! Every cause makes damage; of it a share is noticed, under its right name or under that of something that looks like it,
//! in its right grade or in the next. All of that is laid into what each cause makes of each tag, so that the network need
//! not know of it.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use super::catalogue::{self, Cause, Sign, Symptom};
use crate::engine::PartKind;
use crate::wear::Tag;

/// How often damage that is there is noticed, by grade 1 to 4. People who sorted 137 pictures of engine blades noticed 72 %
/// of what was slight, 92.8 of what was middling and 99 of what was heavy (Aerospace 2022, 9(1), 18, abstract); blades are
/// no shells, so the form is theirs and the figures are our judgement.
const NOTICED: [f64; 4] = [0.78, 0.93, 0.98, 0.99];
/// How often damage is graded one step too mild, and one too bad (our judgement; a machine that sorted standstill marks
/// into six grades was right in 83.7 % and never more than one off: Machines 2024, 12, 840, abstract).
const A_STEP_DOWN: f64 = 0.08;
const A_STEP_UP: f64 = 0.08;

/// What is called what, and how often (our judgement; the kinds of damage that are taken for one another are named in TM
/// 10-3930-671-24 p. F-179, TM 9-2815-220-24 WP 0138, TM 55-2815-574-24 WP 0027 and common practice). What is not listed
/// keeps its right name. The chance of the right name differs by kind as it does for blades, 38 to 98 %.
const CALLED: &[(Tag, &[(Tag, f64)])] = {
    use Tag::*;
    &[
        (Scoring, &[(EmbeddedDebris, 0.07), (CopperShowing, 0.04), (Wiping, 0.03), (Scuffing, 0.06)]),
        (EmbeddedDebris, &[(Scoring, 0.14), (Pitting, 0.06), (Deposits, 0.03)]),
        (Pitting, &[(Corrosion, 0.14), (FatigueCracks, 0.05), (Spalling, 0.10), (EmbeddedDebris, 0.03), (Rust, 0.03)]),
        (HotSpot, &[(Wiping, 0.05), (Corrosion, 0.04), (Seizure, 0.03), (Deposits, 0.04), (Scuffing, 0.03)]),
        (CopperShowing, &[(Scoring, 0.08), (Wiping, 0.08), (LiningLoss, 0.05), (LooksEven, 0.02)]),
        (Wiping, &[(Scoring, 0.09), (CopperShowing, 0.08), (Seizure, 0.06), (HotSpot, 0.05)]),
        (FatigueCracks, &[(Pitting, 0.10), (LiningLoss, 0.09), (Cracks, 0.06), (Corrosion, 0.04)]),
        (LiningLoss, &[(FatigueCracks, 0.20), (Pitting, 0.12), (Wiping, 0.04), (CopperShowing, 0.03)]),
        (Corrosion, &[(Pitting, 0.14), (Rust, 0.05), (FatigueCracks, 0.04), (Deposits, 0.04), (HotSpot, 0.04)]),
        (BrightBack, &[(Scoring, 0.06), (HotSpot, 0.05), (LooksEven, 0.04)]),
        (Rust, &[(Corrosion, 0.10), (Pitting, 0.06)]),
        (Scuffing, &[(Scoring, 0.14), (Seizure, 0.08), (Spalling, 0.04), (Wiping, 0.03)]),
        (Spalling, &[(Pitting, 0.18), (DishedFace, 0.03), (Scuffing, 0.05)]),
        (DishedFace, &[(Spalling, 0.11), (Scuffing, 0.06), (LooksEven, 0.05)]),
        (StuckPlunger, &[(Deposits, 0.06)]),
        (WornNose, &[(Spalling, 0.11), (Scuffing, 0.06), (Scoring, 0.04), (LooksEven, 0.03)]),
        (Seizure, &[(Scuffing, 0.12), (Wiping, 0.10), (HotSpot, 0.05), (Scoring, 0.04)]),
        (Cracks, &[(FatigueCracks, 0.08), (Scoring, 0.05)]),
        (Deposits, &[(Corrosion, 0.05), (Rust, 0.03)]),
        (HandlingDamage, &[(Scoring, 0.08), (Pitting, 0.04)]),
    ]
};

/// What a cause makes under other names than the right one counts from this chance on: less lies far below what turns up
/// without any cause, and every maker of an observation doubles the work (our judgement; what it costs in recognition:
/// `tests/causes/misnamed.rs`).
const MATERIAL: f64 = 0.005;

/// How damage is noticed and named by those who look.
#[derive(Debug)]
pub struct Naming {
    /// By kind of part, name and cause: the signs of the cause that are told so, each with how often.
    signs: Vec<Vec<ByCause>>,
    /// By grade and grade told: the chance that it is noticed and graded so.
    graded: [[f64; 4]; 4],
}

/// The signs of each cause, each with how often it is told so.
type ByCause = BTreeMap<&'static str, Vec<(&'static Sign, f64)>>;

/// How often damage is called by any name that the part can bear, likely or not (our judgement).
const BY_ANY_NAME: f64 = 0.05;

/// What damage on a kind of part is called beside its right name, as we judge it.
fn called(kind: PartKind, damage: Tag) -> Vec<(Tag, f64)> {
    let likely = CALLED.iter().find(|(own, _)| *own == damage).map_or(&[][..], |(_, names)| names);
    let others = kind.row().tags.iter().filter(|name| **name != damage && name.is_damage());
    let each = if damage.is_damage() { BY_ANY_NAME / others.clone().count().max(1) as f64 } else { 0.0 };
    likely.iter().copied().chain(others.map(|name| (*name, each))).collect()
}

static OURS: LazyLock<Naming> = LazyLock::new(|| Naming::new(called, NOTICED, (A_STEP_DOWN, A_STEP_UP)));

impl Naming {
    /// As we judge it.
    pub fn ours() -> &'static Self {
        &OURS
    }

    /// Of a table of what a kind of damage is called beside its right name, of how much of each grade is noticed, and of how
    /// often it is graded a step too mild and a step too bad. Names that a part can't bear fall to the right one.
    pub fn new(called: impl Fn(PartKind, Tag) -> Vec<(Tag, f64)>, noticed: [f64; 4], (down, up): (f64, f64)) -> Self {
        let of_kind = |kind: PartKind| {
            let names: Vec<Vec<f64>> = Tag::ALL.into_iter().map(|tag| names(kind, tag, &called(kind, tag))).collect();
            Tag::ALL.into_iter().map(|name| signs(kind, name, &names)).collect()
        };
        let mut graded = [[0.0; 4]; 4];
        for (grade, (row, noticed)) in graded.iter_mut().zip(noticed).enumerate() {
            let down = if grade == 0 { 0.0 } else { down };
            let up = if grade == 3 { 0.0 } else { up };
            for (told, chance) in row.iter_mut().enumerate() {
                *chance = noticed
                    * match (told + 1).checked_sub(grade) {
                        Some(0) => down,
                        Some(1) => 1.0 - down - up,
                        Some(2) => up,
                        _ => 0.0,
                    };
            }
        }
        Self { signs: PartKind::ALL.into_iter().map(of_kind).collect(), graded }
    }

    /// The signs of a cause on such a part that are told under a name, each with how often.
    pub(super) fn signs(&self, kind: PartKind, name: Tag, cause: &Cause) -> &[(&'static Sign, f64)] {
        let of_name = self.signs.get(kind as usize).and_then(|of_kind| of_kind.get(name as usize));
        of_name.and_then(|by_cause| by_cause.get(cause.id)).map(Vec::as_slice).unwrap_or_default()
    }

    /// With which chance damage of such grades, 1 to 4, is told as each grade. What is not noticed is left out.
    pub(super) fn graded(&self, chances: [f64; 4]) -> [f64; 4] {
        let mut told = [0.0; 4];
        for (chance, row) in chances.into_iter().zip(self.graded) {
            for (told, share) in told.iter_mut().zip(row) {
                *told += chance * share;
            }
        }
        told
    }
}

/// The chance of each name for damage on such a part, its own name included.
fn names(kind: PartKind, damage: Tag, called: &[(Tag, f64)]) -> Vec<f64> {
    let mut names = vec![0.0; Tag::ALL.len()];
    let mut right = 1.0;
    for (name, chance) in called {
        if let Some(own) = names.get_mut(*name as usize).filter(|_| kind.row().tags.contains(name)) {
            *own += chance;
            right -= chance;
        }
    }
    if let Some(own) = names.get_mut(damage as usize) {
        *own += right;
    }
    names
}

/// The signs of every cause on such a part that are told under a name, as far as they are material.
fn signs(kind: PartKind, name: Tag, called: &[Vec<f64>]) -> ByCause {
    let told_so = |sign: &'static Sign| {
        let Symptom::Seen(damage) = sign.symptom else { return None };
        let chance = called.get(damage as usize)?.get(name as usize).copied()?;
        (sign.kinds.contains(&kind) && chance > 0.0).then_some((sign, chance))
    };
    let of_cause = |cause: &'static Cause| {
        let signs: Vec<(&'static Sign, f64)> = cause.signs.iter().filter_map(told_so).collect();
        let by_its_name = signs.iter().any(|(sign, _)| sign.symptom == Symptom::Seen(name));
        let chance: f64 = signs.iter().map(|(sign, chance)| sign.chance * chance).sum();
        (by_its_name || chance >= MATERIAL).then_some((cause.id, signs))
    };
    catalogue::ALL.into_iter().filter_map(of_cause).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_certain_to_be_one_of_those_that_the_part_can_bear() {
        for kind in PartKind::ALL {
            for damage in kind.row().tags {
                let names = names(kind, *damage, &called(kind, *damage));
                let all: f64 = kind.row().tags.iter().map(|name| names[*name as usize]).sum();
                assert!((all - 1.0).abs() < 1e-12, "{damage:?} on a {kind:?} has names for {all}");
                assert!(names[*damage as usize] > 0.5, "{damage:?}");
            }
        }
        assert_eq!(PartKind::ALL.map(|kind| kind as usize), std::array::from_fn(|n| n));
        assert_eq!(Tag::ALL.map(|tag| tag as usize), std::array::from_fn(|n| n));
    }

    #[test]
    fn slight_damage_is_passed_over_more_often_and_grades_are_one_off_at_most() {
        let told = Naming::ours().graded([0.0, 1.0, 0.0, 0.0]);
        assert!((told.iter().sum::<f64>() - 0.93).abs() < 1e-12 && told[3] == 0.0 && told[0] > 0.0, "{told:?}");
        let slight: f64 = Naming::ours().graded([1.0, 0.0, 0.0, 0.0]).iter().sum();
        assert!((slight - 0.78).abs() < 1e-12);
    }
}
