//! A new tappet may run on a sound old lobe.

use super::{Rule, RuleId, Says};
use crate::engine::{Part, PartKind};
use crate::words::Phrase;
use crate::work::Outcome;

const BECAUSE: Phrase = Phrase("Its {tappet} is renewed: a new one may run on it while the lobe is serviceable.");

pub(super) const RULE: Rule = Rule {
    id: RuleId("new-tappet-old-cam"),
    why: "New followers may be used with an old camshaft while it is serviceable; never the other way round.",
    source: "TM 9-4310-397-14 p. 6-44.",
    says: Says::OnSet(|scene, stands| {
        let goes_on = |lobe: &Part| matches!(stands(*lobe), Outcome::PutBack | Outcome::Polish);
        let is_new = |lobe: &Part| stands(Part { kind: PartKind::Tappet, at: lobe.at }) == Outcome::Replace;
        let lobes = scene.engine.parts().iter().copied().filter(|part| part.kind == PartKind::Lobe);
        lobes
            .filter(|lobe| {
                goes_on(lobe) && scene.engine.has(Part { kind: PartKind::Tappet, at: lobe.at }) && is_new(lobe)
            })
            .map(|lobe| (lobe, Outcome::PutBack, BECAUSE.said(scene.engine.terms()).into()))
            .collect()
    }),
};
