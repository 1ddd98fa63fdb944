//! A shell has moved, so its seat is measured.

use super::{Rule, RuleId, Says, shells};
use crate::engine::PartKind;
use crate::measure::{Phase, Quantity};
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("seat-of-a-moved-shell"),
    why: "A shell moves where its seat holds it too loosely: before the seat is used again its bore is measured, caps tightened and without shells.",
    source: "Neale, The Tribology Handbook (fretting: inadequate interference, flimsy housing); TM 55-1905-221-14-3; common practice.",
    says: Says::OnPart(|scene, part, _| {
        let bore = match part.kind {
            PartKind::HousingBore => Quantity::Diameter,
            PartKind::Rod => Quantity::BigEndBore,
            _ => return None,
        };
        let has_moved = |grade| grade >= Grade::TWO;
        let (shell, _) =
            shells::at(scene, part).find(|(_, record)| record.grade(Tag::BrightBack).is_some_and(has_moved))?;
        let is_measured = scene.measured.figures(part, Phase::Found).any(|figure| figure.quantity == bore);
        (!is_measured).then(|| {
            let shell = scene.engine.label(shell);
            (Outcome::CantSay, format!("{shell} has moved in it: measure its bore with the cap tightened."))
        })
    }),
};
