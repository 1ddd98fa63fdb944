//! A bore that can't be saved takes the block with it.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("block-as-one"),
    why: "The block is one piece: what condemns a bore for good condemns the block, and a new block brings new bores.",
    source: "Common practice.",
    says: Says::OnSet(|scene, stands| {
        let block = Part { kind: PartKind::Block, at: At::Engine };
        let goes_along = |part: &&Part| **part == block || part.comes_with(scene.engine.arrangement()) == Some(block);
        let pieces = || scene.engine.parts().iter().filter(goes_along).copied();
        let Some(lost) = pieces().find(|part| stands(*part) == Outcome::Replace) else { return vec![] };
        let because = format!("{} can’t be used again, and the block is one piece.", scene.engine.label(lost));
        pieces().filter(|part| *part != lost).map(|part| (part, Outcome::Replace, because.clone())).collect()
    }),
};
