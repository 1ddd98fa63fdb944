//! Worn camshaft bearings.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::CamBearing;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{PutBack, Replace};

const TAGS: &[Tag] = &[Tag::Scoring, Tag::EmbeddedDebris, Tag::CopperShowing, Tag::Wiping, Tag::Corrosion];

pub(super) const RULE: Rule = Rule {
    id: RuleId("cam-bearing-damage"),
    why: "A cam bearing with felt marks or worn through lets oil pressure go that the mains need.",
    source: "Common practice.",
    says: Says::OnWear(&[
        up_to(Grade::ONE, &[CamBearing], TAGS, PutBack),
        from(Grade::TWO, &[CamBearing], TAGS, Replace),
    ]),
};
