//! Shafts that ran hot.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::{self, CamJournal, Crankpin, Crankshaft, MainJournal};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{CantSay, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("heat-on-a-shaft"),
    why: "Heat that colours a journal may have destroyed its heat treatment; a faint tint is settled by a hardness and crack test.",
    source: "TM 9-4310-397-14 and TM 9-2815-255-24 (overheated or discoloured crankshaft: replace).",
    says: Says::OnWear(&[
        up_to(Grade::TWO, SHAFTS, &[Tag::HotSpot], CantSay).asking("Have its hardness tested, and test it for cracks."),
        from(Grade::THREE, SHAFTS, &[Tag::HotSpot], Replace),
    ]),
};

const SHAFTS: &[PartKind] = &[MainJournal, Crankpin, Crankshaft, CamJournal];
