//! Shells with much debris in them.

use super::{Rule, RuleId, Says, WearLine, from};
use crate::engine::PartKind::{MainShell, RodShell};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::Replace;

/// One field of the nine of a running face is 11 per cent of it: specks all over it are more than the 5 per cent that the
/// manuals allow, a few fine specks are less (our judgement).
pub(super) const LINES: &[WearLine] = &[from(Grade::TWO, &[MainShell, RodShell], &[Tag::EmbeddedDebris], Replace)];

pub(super) const RULE: Rule = Rule {
    id: RuleId("shell-debris"),
    why: "Metal or dirt embedded over 5 per cent or more of the face discards a shell; a few fine specks are left in it, and no attempt is made to dig them out.",
    source: "TM 9-2815-220-24 WP 0138 and 0143; TM 9-2815-247-34 WP 0070. That grade 2 stands for 5 per cent is our judgement.",
    says: Says::OnWear(LINES),
};
