//! What looks like damage and is none: how a sound part looks after hours of work.

use crate::engine::PartKind;
use crate::wear::{Grade, Tag};

/// Whether a tag of such a grade on such a part tells of nothing but use.
///
/// Shells: leaden grey with minute craters "in no way indicates failure" (TM 10-3930-671-24 p. F-179); minute cracks and small
/// isolated cavities are not detrimental (TM 9-2320-302-34 WP 0041); embedded specks on less than 5 % of the area are left (TM
/// 9-2815-220-24 WP 0138); what wipes off is a stain, not burning (TM 5-4210-233-14&P-1 para 4-9). Anything: *even wear* in its
/// first grade is nearly new.
pub(super) fn is_natural(kind: PartKind, tag: Tag, grade: Grade) -> bool {
    let is_shell =
        matches!(kind, PartKind::MainShell | PartKind::RodShell | PartKind::CamBearing | PartKind::ThrustFace);
    let is_look =
        matches!(tag, Tag::Pitting | Tag::Corrosion | Tag::FatigueCracks | Tag::EmbeddedDebris | Tag::HotSpot);
    grade == Grade::ONE && (!tag.is_damage() || is_shell && is_look)
}
