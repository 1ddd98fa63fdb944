//! The oil pump.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::OilPump;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, RebuildHere, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("oil-pump-damage"),
    why: "A pump with felt scores has lost pressure and is renewed; a dirty one is taken apart, cleaned and measured.",
    source: "Common practice.",
    says: Says::OnWear(&[
        up_to(Grade::ONE, &[OilPump], &[Tag::Deposits, Tag::EmbeddedDebris], Clean),
        from(Grade::TWO, &[OilPump], &[Tag::Deposits, Tag::EmbeddedDebris], RebuildHere),
        up_to(Grade::TWO, &[OilPump], &[Tag::Scoring, Tag::Pitting], RebuildHere),
        from(Grade::THREE, &[OilPump], &[Tag::Scoring, Tag::Pitting], Replace),
    ]),
};
