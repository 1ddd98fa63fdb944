//! Timing and auxiliary drives.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::{AuxiliaryDrive, TimingDrive};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{PutBack, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("drive-damage"),
    why: "A pitted, flaked or cracked gear, chain or sprocket will fail later with far greater damage; polished flanks are ordinary.",
    source: "Common practice.",
    says: Says::OnWear(&[
        from(Grade::ONE, &[TimingDrive, AuxiliaryDrive], &[Tag::Pitting, Tag::Spalling, Tag::Cracks], Replace),
        up_to(Grade::ONE, &[TimingDrive, AuxiliaryDrive], &[Tag::Scuffing], PutBack),
        from(Grade::TWO, &[TimingDrive, AuxiliaryDrive], &[Tag::Scuffing], Replace),
    ]),
};
