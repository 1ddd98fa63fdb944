//! What turns up without any cause of the catalogue.

use super::sign::{self, Fault, Symptom};
use crate::cause::network::GradeChances;
use crate::cause::pattern::Pattern;
use crate::engine::PartKind;
use crate::wear::{Tag, ZoneMap};

/// What turns up without any cause of the catalogue (our judgement): stray particles, marks from dismantling, wear of
/// earlier lives. It is seldom severe. Lobes and tappets pit and spall by fatigue of their faces, and wear down by a
/// tappet that stands still or a film that breaks: hardly by anything else (NAVEDTRA 14076, wear of cam followers).
pub fn leak(kind: PartKind, symptom: Symptom) -> GradeChances {
    let is_cam_face = matches!(kind, PartKind::Lobe | PartKind::Tappet);
    let chance = match symptom {
        Symptom::Seen(Tag::Pitting | Tag::Spalling) if is_cam_face => 0.0001,
        Symptom::Seen(Tag::WornNose | Tag::DishedFace) if is_cam_face => 0.0005,
        Symptom::Seen(Tag::LooksEven) => 0.30,
        Symptom::Seen(Tag::Scoring) => 0.06,
        Symptom::Seen(Tag::Deposits | Tag::HandlingDamage) => 0.05,
        Symptom::Seen(Tag::Scuffing) => 0.02,
        Symptom::Seen(_) => 0.012,
        Symptom::Measured(Fault::Worn | Fault::Loose) => 0.08,
        Symptom::Measured(Fault::WideGroove | Fault::ThinRing) => 0.03,
        // Beyond its limit without one of the listed causes is a size hardly ever.
        Symptom::Measured(_) => 0.006,
    };
    GradeChances::new(chance, [0.70, 0.22, 0.06, 0.02])
}

/// The chance that what turns up without a cause shows this pattern: any is as likely as another (our judgement).
pub fn leak_share(map: ZoneMap, pattern: Pattern) -> f64 {
    sign::share(&[], map, pattern)
}
