//! Mains worn on both halves all along send the crankshaft to be measured.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Half, Part, PartKind};
use crate::measure::{Phase, Quantity};
use crate::wear::{Grade, Tag};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("crankshaft-of-worn-mains"),
    why: "A bent crankshaft wears both halves of its mains; eyes can’t see the bend.",
    source: "From memory of printed trade guides (both halves of the complete set); measuring: TM 10-3930-653-14&P.",
    says: Says::OnPart(|scene, part, record| {
        if part.kind != PartKind::Crankshaft || !record.looked_at() {
            return None;
        }
        let is_worn = |number: u8, half: Half| {
            let shell = scene.job.parts.get(&Part { kind: PartKind::MainShell, at: At::MainHalf(number, half) });
            let grade = |tag: Tag| shell.and_then(|shell| shell.grade(tag));
            [Tag::CopperShowing, Tag::Wiping].into_iter().filter_map(grade).any(|grade| grade >= Grade::TWO)
        };
        let mains = scene.engine.arrangement().mains;
        let all = (1..=mains).all(|number| [Half::Upper, Half::Lower].into_iter().all(|half| is_worn(number, half)));
        let shows =
            |quantity: Quantity| matches!(quantity, Quantity::Bend | Quantity::RunOut | Quantity::AdjacentRunOut);
        let journals = (1..=mains).map(|number| Part { kind: PartKind::MainJournal, at: At::Main(number) });
        let is_known = std::iter::once(part)
            .chain(journals)
            .any(|part| scene.measured.figures(part, Phase::Found).any(|figure| shows(figure.quantity)));
        (all && !is_known).then(|| {
            let because =
                "Both halves of every main are worn: lay it on its end mains and measure the bend at the centre one.";
            (Outcome::CantSay, because.into())
        })
    }),
};
