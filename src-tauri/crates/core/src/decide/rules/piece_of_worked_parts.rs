//! A piece goes to the machine shop with what is part of it.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("piece-of-worked-parts"),
    why: "A journal is ground on its shaft and a bore is bored in its block: the piece goes along, whatever it is like itself.",
    source: "Common practice.",
    says: Says::OnSet(|scene, stands| {
        let pieces = [PartKind::Crankshaft, PartKind::Block].map(|kind| Part { kind, at: At::Engine });
        let along = |piece: Part| {
            let is_on = |part: &&Part| part.comes_with(scene.engine.arrangement()) == Some(piece);
            let on_it: Vec<Part> = scene.engine.parts().iter().filter(is_on).copied().collect();
            let with =
                |outcome| -> Vec<Part> { on_it.iter().copied().filter(|part| stands(*part) == outcome).collect() };
            let is_damaged = |part: &Part| scene.job.parts.get(part).is_some_and(|record| record.worst().is_some());
            // What can't be judged yet sends the piece nowhere, but where there is damage it can't be put back either.
            let mut open = with(Outcome::CantSay);
            open.retain(is_damaged);
            let all = [
                (Outcome::Machine, with(Outcome::Machine)),
                (Outcome::CantSay, open),
                (Outcome::Polish, with(Outcome::Polish)),
            ];
            let (outcome, parts) = all.into_iter().find(|(_, parts)| !parts.is_empty())?;
            // One that must itself be looked at first stays to be looked at.
            let first = parts.first().filter(|_| outcome > stands(piece) && stands(piece) != Outcome::CantSay)?;
            let more = match parts.len() {
                1 => String::new(),
                several => format!(" and {} more", several - 1),
            };
            let because = match outcome {
                Outcome::CantSay => "can’t be judged yet",
                _ => "worked on there",
            };
            let verb = match (outcome, parts.len()) {
                (Outcome::CantSay, _) => "",
                (_, 1) => "is ",
                _ => "are ",
            };
            Some((piece, outcome, format!("{}{more} {verb}{because}.", scene.engine.label(*first))))
        };
        pieces.into_iter().filter_map(along).collect()
    }),
};
