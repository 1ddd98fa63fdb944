//! The catalogue of causes: one file each, and one line each in [`ALL`].
//!
//! Chances marked "our judgement" are how often a mechanic would expect to find the sign on one such part of an engine
//! that suffers from the cause alone; the direction of every sign (which tag, on which half) has the source named.

mod corrosion;
mod dirt_in_oil;
mod misaligned_main_bores;
mod normal_wear;
mod oil_starvation;
mod overheating;
mod overload;
mod thrust_overload;

use super::network::GradeChances;
use crate::engine::{At, End, Half, Part, PartKind};
use crate::job::HistoryFact;
use crate::wear::Tag;

/// Every cause, in no particular order: probability ranks them.
pub const ALL: [&Cause; 9] = [
    &dirt_in_oil::CAUSE,
    &oil_starvation::CAUSE,
    &overheating::CAUSE,
    &corrosion::CAUSE,
    &overload::CAUSE,
    &misaligned_main_bores::CAUSE,
    &thrust_overload::FRONT_FACE,
    &thrust_overload::REAR_FACE,
    &normal_wear::CAUSE,
];

/// A cause and the pattern that it leaves.
#[derive(Debug)]
pub struct Cause {
    /// The written form.
    pub id: &'static str,
    /// The name, lower case.
    pub name: &'static str,
    /// The sentence for the customer.
    pub plainly: &'static str,
    /// How often an engine that comes in for a rebuild suffers from it, before anything is seen; 0 to 1.
    pub prior: f64,
    /// What is known of the engine's past, and by which factor it changes the odds.
    pub shifts: &'static [(HistoryFact, f64)],
    /// The signs it leaves.
    pub signs: &'static [Sign],
    /// What to check or put right before assembly.
    pub check: &'static [&'static str],
    /// Where the figures come from.
    pub source: &'static str,
}

/// A sign: on these parts the cause produces this tag.
#[derive(Debug)]
pub struct Sign {
    /// On which kinds of part.
    pub kinds: &'static [PartKind],
    /// On which half, where there are two.
    pub side: Side,
    /// Which tag.
    pub tag: Tag,
    /// With which chance on each such part, 0 to 1.
    pub chance: f64,
    /// How bad it tends to be.
    pub grades: Severity,
}

/// Halves of bearings by load. Combustion presses the rod's upper half onto the crankpin and the shaft into the lower
/// half of the mains (US marine-engineer examination item; TM 55-1905-221-14-3: lower main shells carry the load).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Lower main shells, upper rod shells; and every part that has no halves.
    Loaded,
    /// The other halves.
    Unloaded,
    /// Both, or parts without halves.
    Any,
    /// Loaded main shells in proportion to how near they lie to the middle of the crankshaft.
    LoadedCentreWorst,
    /// Unloaded main shells, likewise.
    UnloadedCentreWorst,
    /// The front thrust face.
    FrontFace,
    /// The rear thrust face.
    RearFace,
}

/// How bad a sign tends to be: shares of grades 1 to 4 (our judgement).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "the shares say it")]
pub enum Severity {
    Slight,
    Middling,
    Severe,
}

impl Severity {
    pub(super) fn shares(self) -> [f64; 4] {
        match self {
            Self::Slight => [0.55, 0.30, 0.12, 0.03],
            Self::Middling => [0.25, 0.40, 0.25, 0.10],
            Self::Severe => [0.10, 0.25, 0.40, 0.25],
        }
    }
}

/// Least share of the chance that an end main keeps where the centre is worst.
const END_MAIN_SHARE: f64 = 0.2;

impl Sign {
    /// One line of a cause's table.
    const fn new(kinds: &'static [PartKind], side: Side, tag: Tag, chance: f64, grades: Severity) -> Self {
        Self { kinds, side, tag, chance, grades }
    }

    /// What the sign produces on a part, or nothing if it does not concern the part. `centrality` is 1 for the middle
    /// main and 0 for the ends.
    pub fn on(&self, part: Part, tag: Tag, centrality: f64) -> Option<GradeChances> {
        if tag != self.tag || !self.kinds.contains(&part.kind) {
            return None;
        }
        let share = match (self.side, is_loaded(part)) {
            (Side::Any, _) | (Side::Loaded, Some(true) | None) | (Side::Unloaded, Some(false)) => 1.0,
            (Side::LoadedCentreWorst, Some(true)) | (Side::UnloadedCentreWorst, Some(false)) => {
                END_MAIN_SHARE + (1.0 - END_MAIN_SHARE) * centrality
            }
            (Side::FrontFace, None) if part.at == At::ThrustSide(End::Front) => 1.0,
            (Side::RearFace, None) if part.at == At::ThrustSide(End::Rear) => 1.0,
            _ => return None,
        };
        Some(GradeChances::new(self.chance * share, self.grades.shares()))
    }
}

/// Whether a shell is the loaded half; none for parts without halves.
fn is_loaded(part: Part) -> Option<bool> {
    match (part.kind, part.at) {
        (PartKind::MainShell, At::MainHalf(_, half)) => Some(half == Half::Lower),
        (PartKind::RodShell, At::CylinderHalf(_, half)) => Some(half == Half::Upper),
        _ => None,
    }
}

/// What turns up without any cause of the catalogue (our judgement): stray particles, marks from dismantling, wear of
/// earlier lives. It is seldom severe.
pub fn leak(tag: Tag) -> GradeChances {
    let chance = match tag {
        Tag::LooksEven => 0.30,
        Tag::Scoring => 0.06,
        Tag::Deposits | Tag::HandlingDamage => 0.05,
        _ => 0.012,
    };
    GradeChances::new(chance, [0.70, 0.22, 0.06, 0.02])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_catalogue_is_sound() {
        for cause in ALL {
            assert!(cause.prior > 0.0 && cause.prior < 1.0, "{}", cause.id);
            assert!(!cause.signs.is_empty() && !cause.check.is_empty() && !cause.source.is_empty(), "{}", cause.id);
            for sign in cause.signs {
                assert!(sign.chance > 0.0 && sign.chance < 1.0, "{} {:?}", cause.id, sign.tag);
                for kind in sign.kinds {
                    assert!(
                        kind.row().tags.contains(&sign.tag),
                        "{}: a {kind:?} can't be tagged {:?}",
                        cause.id,
                        sign.tag
                    );
                }
            }
        }
        let mut ids: Vec<&str> = ALL.iter().map(|cause| cause.id).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), ALL.len(), "two causes share an id");
    }

    #[test]
    fn a_sign_is_given_once_for_each_kind_and_half() {
        let engine = crate::engine::Engine::new(crate::engine::Arrangement::vee(8)).unwrap();
        for cause in ALL {
            for part in engine.parts() {
                for tag in part.kind.row().tags {
                    let signs = cause.signs.iter().filter(|sign| sign.on(*part, *tag, 0.5).is_some()).count();
                    assert!(signs <= 1, "{} speaks twice of {tag:?} on {part}", cause.id);
                }
            }
        }
    }
}
