//! Housing bores in which a shell has moved.

use super::{Rule, RuleId, Says, from, up_to};
use crate::engine::PartKind::HousingBore;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{Clean, Machine};

pub(super) const RULE: Rule = Rule {
    id: RuleId("housing-damage"),
    why: "Where a shell has moved or turned, the housing bore has lost its size; it is measured and line-bored or honed.",
    source: "Bright spots on the back mean movement: TM 55-1905-221-14-3; common practice.",
    says: Says::OnWear(&[
        up_to(Grade::ONE, &[HousingBore], &[Tag::BrightBack, Tag::HotSpot], Clean),
        up_to(Grade::TWO, &[HousingBore], &[Tag::Scoring], Clean),
        from(Grade::TWO, &[HousingBore], &[Tag::BrightBack, Tag::HotSpot], Machine),
        from(Grade::THREE, &[HousingBore], &[Tag::Scoring], Machine),
        from(Grade::ONE, &[HousingBore], &[Tag::Seizure], Machine),
    ]),
};
