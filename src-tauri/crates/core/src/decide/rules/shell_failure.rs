//! Shells that have failed.

use super::{Rule, RuleId, Says, WearLine, from};
use crate::engine::PartKind::{MainShell, RodShell};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::Replace;

pub(super) const LINES: &[WearLine] = &[
    from(Grade::ONE, &[MainShell, RodShell], &[Tag::LiningLoss, Tag::Pitting, Tag::Wiping, Tag::Seizure], Replace),
    from(Grade::ONE, &[MainShell, RodShell], &[Tag::HotSpot], Replace),
    from(Grade::TWO, &[MainShell, RodShell], &[Tag::Corrosion], Replace),
    from(Grade::THREE, &[MainShell, RodShell], &[Tag::Scoring, Tag::CopperShowing], Replace),
];

pub(super) const RULE: Rule = Rule {
    id: RuleId("shell-failure"),
    why: "A shell is discarded for missing, pitted or smeared metal, for signs of overheating, and for scores deep enough to have raised their edges; fine scratches alone are no reason.",
    source: "TM 9-2320-302-34 WP 0041; TM 9-2815-220-24 WP 0138 and 0143; TM 55-1905-220-14-4. That a score has raised its edges where it catches a fingernail is our judgement.",
    says: Says::OnWear(LINES),
};
