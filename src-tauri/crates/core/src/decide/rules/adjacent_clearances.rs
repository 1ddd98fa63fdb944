//! Neighbouring mains with clearances that differ.

use super::{Rule, RuleId, Says, Scene};
use crate::engine::{At, Part, PartKind};
use crate::figure::Figure;
use crate::measure::{Length, Phase, Quantity, in_unit};
use crate::work::Outcome;

/// 0.001 in.
const MOST: Length = Length::from_nanometres(25_400);

pub(super) const RULE: Rule = Rule {
    id: RuleId("adjacent-clearances"),
    why: "Two neighbouring mains whose worn clearances differ by more than 0.001 in let the shaft bend: their shells are discarded.",
    source: "TM 5-6115-593-34.",
    says: Says::OnPart(|scene, part, _| {
        let (PartKind::MainShell, Some(main)) = (part.kind, part.at.main()) else { return None };
        let here = clearance(scene, main)?;
        let neighbours = [main.checked_sub(1)?, main + 1];
        let (other, by) = neighbours.into_iter().find_map(|other| {
            let there = clearance(scene, other)?;
            let apart = (here.low - there.high).max(there.low - here.high);
            let doubt = Length::root_sum_square([here.uncertainty, there.uncertainty]);
            (apart > MOST + doubt).then_some((other, apart))
        })?;
        let shown = in_unit(by, scene.job.sheet.head.unit);
        Some((
            Outcome::Replace,
            format!("The clearances of mains {main} and {other} differ by {shown}; no more than 0.001 in is allowed."),
        ))
    }),
};

/// The clearance of a main as found.
fn clearance<'a>(scene: &Scene<'a>, main: u8) -> Option<&'a Figure> {
    let journal = Part { kind: PartKind::MainJournal, at: At::Main(main) };
    scene.measured.figures(journal, Phase::Found).find(|figure| figure.quantity == Quantity::Clearance)
}
