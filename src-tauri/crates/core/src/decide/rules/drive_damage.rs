//! Timing and auxiliary drives, whole and taken apart.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::{self, AuxiliaryBushes, AuxiliaryDrive, AuxiliaryGear, AuxiliaryShaft, TimingDrive};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, PutBack, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("drive-damage"),
    why: "A pitted, flaked or cracked gear, chain or sprocket will fail later with far greater damage; polished flanks are ordinary.",
    source: "Common practice.",
    says: Says::OnWear(&[
        from(Grade::ONE, GEARED, &[Tag::Pitting, Tag::Spalling, Tag::Cracks], Replace),
        up_to(Grade::ONE, GEARED, &[Tag::Scuffing], PutBack),
        from(Grade::TWO, GEARED, &[Tag::Scuffing], Replace),
        up_to(Grade::TWO, &[AuxiliaryShaft], RUBBED, Clean),
        from(Grade::THREE, &[AuxiliaryShaft], RUBBED, Replace),
        from(Grade::ONE, &[AuxiliaryShaft], &[Tag::Cracks], Replace),
        up_to(Grade::ONE, &[AuxiliaryBushes], WORN, PutBack),
        from(Grade::TWO, &[AuxiliaryBushes], WORN, Replace),
    ]),
};

const GEARED: &[PartKind] = &[TimingDrive, AuxiliaryDrive, AuxiliaryGear];
const RUBBED: &[Tag] = &[Tag::Scoring, Tag::Scuffing, Tag::Pitting];
const WORN: &[Tag] = &[Tag::Scoring, Tag::Scuffing, Tag::Wiping];
