//! A lobe that can't be saved takes its camshaft with it.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("camshaft-as-one"),
    why: "The camshaft is one piece: a condemned lobe or journal condemns the shaft, and a new shaft brings new lobes and journals.",
    source: "Aircraft piston-engine overhaul manual, para 6-46; common practice.",
    says: Says::OnSet(|scene, stands| {
        let engine = scene.engine;
        let mut all = Vec::new();
        for shaft in 1..=engine.arrangement().camshafts() {
            let on_shaft = |part: &&Part| match (part.kind, part.at) {
                (PartKind::Camshaft, At::Camshaft(n)) | (PartKind::CamJournal, At::CamBearing(n, _)) => n == shaft,
                (PartKind::Lobe, At::Valve(cylinder, port, _)) => {
                    engine.arrangement().camshaft_of(cylinder, port) == shaft
                }
                _ => false,
            };
            let pieces: Vec<Part> = engine.parts().iter().filter(on_shaft).copied().collect();
            let Some(lost) = pieces.iter().find(|part| stands(**part) == Outcome::Replace) else { continue };
            let because = format!("{} can’t be used again, and the camshaft is one piece.", engine.label(*lost));
            all.extend(
                pieces.iter().filter(|part| *part != lost).map(|part| (*part, Outcome::Replace, because.clone())),
            );
        }
        all
    }),
};
