//! Gears, body and cover of an oil pump that was taken apart.

use super::{Rule, RuleId, Says, at, from, up_to};
use crate::engine::PartKind::{PumpBody, PumpCover, PumpGears};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, Machine, Replace};

const TAGS: &[Tag] = &[Tag::Scoring, Tag::Pitting];

pub(super) const RULE: Rule = Rule {
    id: RuleId("pump-part-damage"),
    why: "Light marks are stroked with a stone; a cover with felt scores is lapped flat or renewed, and gears or a body with deep ones have lost pressure.",
    source: "Common practice.",
    says: Says::OnWear(&[
        up_to(Grade::TWO, &[PumpGears, PumpBody], TAGS, Clean),
        from(Grade::THREE, &[PumpGears, PumpBody], TAGS, Replace),
        up_to(Grade::ONE, &[PumpCover], TAGS, Clean),
        at(Grade::TWO, &[PumpCover], TAGS, Machine),
        at(Grade::THREE, &[PumpCover], TAGS, Machine),
        from(Grade::FOUR, &[PumpCover], TAGS, Replace),
    ]),
};
