//! Cam bearings go with a hot wash of the block and with a new camshaft.

use super::{Rule, RuleId, Says};
use crate::engine::{At, CamBore, Part, PartKind};
use crate::job::Job;
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
        let is_washed = in_block && is_washed(scene.job, block, stands(block));
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
/// of it, for it is tested and that clean.
pub fn is_washed(job: &Job, block: Part, outcome: Outcome) -> bool {
    match outcome {
        Outcome::Clean | Outcome::Machine => true,
        Outcome::CantSay => job.parts.get(&block).is_some_and(|record| record.worst().is_some()),
        _ => false,
    }
}
