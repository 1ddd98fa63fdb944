//! Never an old flat tappet on a new cam.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Part, PartKind};
use crate::words::Phrase;
use crate::work::Outcome;

const BECAUSE: Phrase = Phrase("The camshaft is renewed or reground: no old flat {tappet} runs on a new cam.");

pub(super) const RULE: Rule = Rule {
    id: RuleId("new-cam-new-tappets"),
    why: "A flat {tappet} has worn in with its lobe: a new or reground camshaft gets new flat {tappets}, all of them.",
    source: "Aircraft piston-engine overhaul manual, para 6-43; TM 9-4310-397-14 p.6-44 (do not reuse old followers with a new camshaft).",
    says: Says::OnSet(|scene, stands| {
        let engine = scene.engine;
        if !engine.arrangement().tappets.is_flat() {
            return vec![];
        }
        let is_new = |cylinder, port| {
            let shaft =
                Part { kind: PartKind::Camshaft, at: At::Camshaft(engine.arrangement().camshaft_of(cylinder, port)) };
            matches!(stands(shaft), Outcome::Replace | Outcome::Machine)
        };
        let worn_in = engine.parts().iter().filter(|part| match (part.kind, part.at) {
            (PartKind::Tappet, At::Valve(cylinder, port, _)) => is_new(cylinder, port),
            _ => false,
        });
        worn_in.map(|part| (*part, Outcome::Replace, BECAUSE.said(engine.terms()).into())).collect()
    }),
};
