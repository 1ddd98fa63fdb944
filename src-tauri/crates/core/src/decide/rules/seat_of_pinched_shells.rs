//! Shells pinched at the crown, or at both parting lines, send their big end or housing bore to be measured.

use super::{Rule, RuleId, Says};
use crate::cause::Pattern;
use crate::engine::{At, Half, Part, PartKind};
use crate::measure::{Phase, Quantity};
use crate::wear::{Tag, ZoneMap};
use crate::work::Outcome;

/// What a shell shows that is pinched, and not what dirt or rust leaves.
const PINCHED: [Tag; 3] = [Tag::CopperShowing, Tag::Wiping, Tag::FatigueCracks];

pub(super) const RULE: Rule = Rule {
    id: RuleId("seat-of-pinched-shells"),
    why: "A seat that is no longer round pinches both shells at the crown or at both parting lines; eyes can’t see it.",
    source: "A reconditioner’s printed chart (narrow wear zone in the crown); near both parting lines from memory.",
    says: Says::OnPart(|scene, part, record| {
        let (shell, position): (PartKind, fn(u8, Half) -> At) = match part.kind {
            PartKind::Rod => (PartKind::RodShell, At::CylinderHalf),
            PartKind::HousingBore => (PartKind::MainShell, At::MainHalf),
            _ => return None,
        };
        let number = |part: &Part| match part.at {
            At::Cylinder(number) | At::Main(number) => Some(number),
            _ => None,
        };
        let pinched = |number: u8, half: Half| -> Vec<Pattern> {
            let shell = scene.job.parts.get(&Part { kind: shell, at: position(number, half) });
            let tags = shell.map(|shell| &shell.tags).into_iter().flatten();
            let shown = tags.filter(|(tag, _)| PINCHED.contains(tag));
            let lies = shown.filter_map(|(_, seen)| Pattern::of(ZoneMap::Shell, &seen.zones));
            lies.filter(|pattern| matches!(pattern, Pattern::Crown | Pattern::Partings)).collect()
        };
        let is_pinched = |number: u8| {
            let lower = pinched(number, Half::Lower);
            pinched(number, Half::Upper).iter().any(|pattern| lower.contains(pattern))
        };
        let is_known = scene.measured.figures(part, Phase::Found).any(|figure| figure.quantity == Quantity::OutOfRound);
        let name = if part.kind == PartKind::Rod { "big end" } else { "housing bore" };
        (record.looked_at() && !is_known && number(&part).is_some_and(is_pinched)).then(|| {
            (
                Outcome::CantSay,
                format!("Both its shells were pinched: measure the {name} for round, its cap tightened."),
            )
        })
    }),
};
