//! Cam bearings go with a hot wash of the block and with a new camshaft.

use super::{Rule, RuleId, Says, Scene, debris_in_the_oil_ways, water_in_the_oil_ways};
use crate::engine::{At, CamBore, Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("cam-bearings-with-wash"),
    why: "A hot wash eats the lining of cam bearings that are bushes, and they are driven out for it; a new camshaft gets new ones in any case. Where the cam runs in the casting there are none to renew.",
    source: "Common practice.",
    says: Says::OnSet(|scene, stands| {
        let arrangement = scene.engine.arrangement();
        if arrangement.construction.cam_bore == Some(CamBore::Casting) {
            return vec![];
        }
        let in_block = arrangement.is_cam_in_block();
        let block = Part { kind: PartKind::Block, at: At::Engine };
        let is_washed = in_block && is_washed(scene, block, stands(block));
        let renewed = |part: &Part| {
            let At::CamBearing(shaft, _) = part.at else { return None };
            let is_new = stands(Part { kind: PartKind::Camshaft, at: At::Camshaft(shaft) }) == Outcome::Replace;
            let because = match stands(block) {
                _ if is_new => "A new camshaft gets new bearings.",
                Outcome::Replace if in_block => "A new block gets new bearings.",
                _ if is_washed => "The block is washed hot, which cam bearings do not stand.",
                _ => return None,
            };
            Some((*part, Outcome::Replace, because.into()))
        };
        let bearings = scene.engine.parts().iter().filter(|part| part.kind == PartKind::CamBearing);
        bearings.filter_map(renewed).collect()
    }),
};

/// Whether a block of which this is decided is washed hot: where it is dirty or machined, and where something is suspected
/// of it, for it is tested and that clean. One that can't be judged yet is washed of what went round with the oil all the same.
pub fn is_washed(scene: &Scene<'_>, block: Part, outcome: Outcome) -> bool {
    let went_round = |record| {
        [&debris_in_the_oil_ways::RULE, &water_in_the_oil_ways::RULE]
            .into_iter()
            .any(|rule| matches!(rule.says, Says::OnPart(says) if says(scene, block, record).is_some()))
    };
    match outcome {
        Outcome::Clean | Outcome::Machine => true,
        Outcome::CantSay => {
            scene.job.parts.get(&block).is_some_and(|record| record.worst().is_some() || went_round(record))
        }
        _ => false,
    }
}
