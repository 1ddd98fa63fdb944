//! Shells that have moved in their seats.

use super::{Rule, RuleId, Says, WearLine, from};
use crate::engine::PartKind::{MainShell, RodShell};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::Replace;

pub(super) const LINES: &[WearLine] = &[from(Grade::ONE, &[MainShell, RodShell], &[Tag::BrightBack], Replace)];

pub(super) const RULE: Rule = Rule {
    id: RuleId("shell-moved"),
    why: "Bright spots on the back mean that the shell has been shifting in its seat: it is discarded, whatever its face looks like.",
    source: "TM 55-1905-221-14-3 p. 6-490; TM 5-4310-379-14; TM 9-2320-302-34.",
    says: Says::OnWear(LINES),
};
