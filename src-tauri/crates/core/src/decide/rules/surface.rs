//! What the rules about damaged journals and bores share: the damage of a running surface that asks for the most. No rule
//! itself.

use super::Scene;
use crate::engine::{Part, PartKind};
use crate::job::PartRecord;
use crate::measure::{Length, in_unit};
use crate::sizing::{Scratch, by_nail, deepest_scratch};
use crate::wear::Tag;
use crate::work::Outcome;

/// What the worst damage of a surface asks for, with the finding in a sentence: by the fingernail, and of scratches whose
/// depth was measured by that.
pub(super) fn damage(scene: &Scene<'_>, part: Part, record: &PartRecord) -> Option<(Outcome, String)> {
    let measured = deepest_scratch(&scene.measured.readings, part);
    let asked = part.kind.row().tags.iter().filter_map(|tag| {
        let grade = record.grade(*tag)?;
        let by_nail = by_nail(part.kind, *tag, grade)?;
        let seen = tag.told(grade);
        let (outcome, because) = match measured.filter(|_| *tag == Tag::Scoring) {
            Some((depth, scratch)) => by_depth(scene, part.kind, depth, scratch, by_nail, &seen),
            None => (by_nail, seen),
        };
        Some((outcome, grade, because))
    });
    let (outcome, _, because) = asked.max_by_key(|(outcome, grade, _)| (*outcome, *grade))?;
    Some((outcome, because))
}

/// What the sheet says of a scratch whose depth was measured, beside what the fingernail says.
fn by_depth(
    scene: &Scene<'_>,
    kind: PartKind,
    depth: Length,
    scratch: Scratch,
    by_nail: Outcome,
    seen: &str,
) -> (Outcome, String) {
    let show = |length| in_unit(length, scene.measured.readings.unit());
    let (light, machined) = if kind == PartKind::Bore { ("honed", "bored") } else { ("polished", "ground") };
    let rule = match scratch {
        Scratch::Light(most) => format!("lets up to {} be {light} out", show(most)),
        Scratch::Machined(Some(most)) => format!("lets no more than {} be {light} out", show(most)),
        Scratch::Machined(None) => format!("does not say how deep a scratch may be {light} out"),
        Scratch::TooDeep(most) => format!("lets no more than {} be {machined} out", show(most)),
    };
    let outcome = scratch.outcome(kind);
    let nail = match by_nail == outcome {
        true => String::new(),
        false => format!(" By the fingernail alone: {}.", by_nail.words()),
    };
    (outcome, format!("{seen} It is {} deep, and the spec sheet {rule}.{nail}", show(depth)))
}
