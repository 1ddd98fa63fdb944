//! Roller tappets and the lobes on which they run.

use super::{Rule, RuleId, Says, WearLine, from};
use crate::engine::PartKind::{Lobe, Tappet};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::Replace;

const LINES: &[WearLine] = &[from(Grade::TWO, &[Tappet, Lobe], &[Tag::Scoring], Replace)];

pub(super) const RULE: Rule = Rule {
    id: RuleId("roller-damage"),
    why: "A roller and its lobe carry their load on a line: where a flat {tappet} may keep a light score mark, a scored, flaked or chipped roller or lobe is discarded.",
    source: "TM 55-1905-220-14-4; TM 5-3810-289-34; TM 9-2815-213-34.",
    says: Says::OnPart(|scene, part, record| {
        let is_roller = scene.engine.arrangement().tappets.is_roller();
        is_roller.then(|| super::read(LINES, part, record)).flatten()
    }),
};
