//! Bent, worn or blocked pushrods.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::Pushrod;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{CantSay, Clean, PutBack, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("pushrod-damage"),
    why: "A bent pushrod flexes and is never straightened; a worn or flaked end eats its {tappet}. One that may be bent is rolled on a flat plate.",
    source: "TM 10-3930-653-14&P (a limit for the bend of pushrods); common practice.",
    says: Says::OnWear(&[
        up_to(Grade::ONE, &[Pushrod], &[Tag::Bent], CantSay).asking("A wobble on the plate condemns it."),
        from(Grade::TWO, &[Pushrod], &[Tag::Bent], Replace),
        up_to(Grade::ONE, &[Pushrod], &[Tag::Scuffing], PutBack),
        from(Grade::TWO, &[Pushrod], &[Tag::Scuffing], Replace),
        from(Grade::ONE, &[Pushrod], &[Tag::Pitting, Tag::Spalling], Replace),
        up_to(Grade::FOUR, &[Pushrod], &[Tag::Deposits], Clean),
    ]),
};
