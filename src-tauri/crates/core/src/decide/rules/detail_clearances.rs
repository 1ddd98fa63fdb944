//! Clearances within an oil pump and an auxiliary drive.

use super::{Rule, RuleId, Says, Scene};
use crate::engine::{Part, PartKind};
use crate::figure::Figure;
use crate::measure::{Conformity, Phase, Quantity};
use crate::words::capitalised;
use crate::work::Outcome::{self, CantSay, Clean, Machine, RebuildHere, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("detail-clearances"),
    why: "Too much clearance loses oil pressure or shakes the drive, too little seizes it: what is worn is renewed, the cover or body of a pump faced where its gears have too much room at their ends, and what is tight eased. Without a limit on the sheet nothing is concluded.",
    source: "TM 5-4310-354-14 table 5-2 (a most for gears in their body); common practice; limits: the spec sheet.",
    says: Says::OnPart(|scene, part, _| {
        let gears = Part { kind: PartKind::PumpGears, at: part.at };
        // The room at the ends of the gears is put right on the cover, or where that is flat on the body.
        let ends = match part.kind {
            PartKind::PumpCover if !is_flat(scene, part) => figure(scene, gears, Quantity::EndClearance),
            PartKind::PumpBody if is_flat(scene, Part { kind: PartKind::PumpCover, at: part.at }) => {
                figure(scene, gears, Quantity::EndClearance)
            }
            _ => None,
        };
        let ends = ends.filter(|figure| is_outside(figure) && !is_tight(figure)).map(|figure| (Machine, figure));
        let own =
            scene.measured.figures(part, Phase::Found).filter_map(|figure| Some((remedy(part.kind, figure)?, figure)));
        let worst = own.chain(ends).max_by_key(|(outcome, _)| *outcome)?;
        Some((worst.0, told(worst.1)))
    }),
};

/// What puts a part right of which this was measured; none where that is right or put right elsewhere.
fn remedy(kind: PartKind, figure: &Figure) -> Option<Outcome> {
    use PartKind::{AuxiliaryBushes, AuxiliaryDrive, AuxiliaryGear, AuxiliaryShaft, PumpBody, PumpCover, PumpGears};
    if !matches!(
        (kind, figure.quantity),
        (PumpGears | AuxiliaryShaft | AuxiliaryBushes | AuxiliaryGear | PumpBody | PumpCover, _)
            | (AuxiliaryDrive, Quantity::EndFloat)
    ) {
        return None;
    }
    let outside = match (kind, figure.quantity) {
        // Packing sets the play at the end of a drive.
        (AuxiliaryDrive, _) => RebuildHere,
        (PumpGears | AuxiliaryBushes | AuxiliaryGear, quantity) if is_of_pair(quantity) && is_tight(figure) => Clean,
        (PumpGears, Quantity::EndClearance) => return None,
        (PumpCover, Quantity::CoverWear) => Machine,
        _ => Replace,
    };
    match figure.verdict {
        Some(Conformity::Within) => None,
        Some(Conformity::Outside) => Some(outside),
        Some(Conformity::TooClose) => Some(CantSay),
        None => figure.is_open().then_some(CantSay),
    }
}

/// Whether it is a clearance between two, which can be too small as well.
fn is_of_pair(quantity: Quantity) -> bool {
    use Quantity::{Backlash, Clearance, EndClearance, SideClearance};
    matches!(quantity, Clearance | EndClearance | SideClearance | Backlash)
}

fn figure<'a>(scene: &Scene<'a>, part: Part, quantity: Quantity) -> Option<&'a Figure> {
    scene.measured.figures(part, Phase::Found).find(|figure| figure.quantity == quantity)
}

fn is_outside(figure: &Figure) -> bool {
    figure.verdict == Some(Conformity::Outside)
}

/// Whether it is below the least that is allowed.
fn is_tight(figure: &Figure) -> bool {
    figure.allowed.0.is_some_and(|least| figure.low < least) && figure.allowed.1.is_none_or(|most| figure.high <= most)
}

/// Whether a cover was measured and its face is flat enough.
fn is_flat(scene: &Scene<'_>, cover: Part) -> bool {
    figure(scene, cover, Quantity::CoverWear).is_some_and(|figure| figure.verdict == Some(Conformity::Within))
}

fn told(figure: &Figure) -> String {
    let tight = if is_outside(figure) && is_tight(figure) {
        " It is too tight: take off burrs, and measure again."
    } else {
        ""
    };
    format!("{}: {}{tight}", capitalised(&figure.name), figure.because)
}
