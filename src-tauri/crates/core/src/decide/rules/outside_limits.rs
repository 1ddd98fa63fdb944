//! Parts with a figure outside its limits, or too close to call.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind;
use crate::measure::{Conformity, Phase, Quantity};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("outside-limits"),
    why: "A part that does not keep to its limits is machined if that can put it right, and else replaced; one too close to call is measured again.",
    source: "TM 9-2815-225-34&P App. F (replace what does not meet the wear standard); decision rule of ISO 14253-1, from memory; limits: the spec sheet.",
    says: Says::OnPart(|scene, part, _| {
        let judged = scene.measured.figures(part, Phase::Found).filter_map(|figure| {
            let remedy = remedy(part.kind, figure.quantity)?;
            let outcome = match figure.verdict {
                Some(Conformity::Within) => return None,
                Some(Conformity::Outside) => remedy,
                Some(Conformity::TooClose) => Outcome::CantSay,
                // The reason says what must be known first.
                None if figure.is_open() => Outcome::CantSay,
                None => return None,
            };
            Some((outcome, format!("{}: {}", crate::words::capitalised(&figure.name), figure.because)))
        });
        judged.max_by_key(|(outcome, _)| *outcome)
    }),
};

/// What puts a part right whose figure is outside. Journals and bores are the business of [`super::common_size`]; what is
/// renewed in any case needs no word here.
fn remedy(kind: PartKind, quantity: Quantity) -> Option<Outcome> {
    use Outcome::{Machine, Replace};
    match (kind, quantity) {
        (PartKind::MainJournal, Quantity::ThrustWidth) => Some(Machine),
        (PartKind::MainJournal | PartKind::Crankpin | PartKind::Bore, _) => None,
        // A new clearance comes with new shells; what is wrong as found is the shells' wear.
        (PartKind::HousingBore | PartKind::Block, _) => Some(Machine),
        // The big end is resized and the bush renewed; a bent rod is not straightened here.
        (PartKind::Rod, Quantity::BigEndBore | Quantity::OutOfRound | Quantity::SmallEndBore) => Some(Machine),
        (PartKind::Rod, Quantity::SidePlay | Quantity::Bend | Quantity::Twist) => Some(Replace),
        (PartKind::CamBearing, Quantity::Diameter | Quantity::OutOfRound) => Some(Replace),
        // The play at the crankshaft's end is taken up by the thrust faces, which are renewed.
        (PartKind::Crankshaft | PartKind::Camshaft, Quantity::EndFloat) => None,
        (PartKind::OilPump | PartKind::OilPickup | PartKind::TimingDrive | PartKind::AuxiliaryDrive, _)
        | (PartKind::MainCapBolts | PartKind::RodBolts | PartKind::HeadBolts | PartKind::Pushrod, _)
        | (PartKind::Crankshaft | PartKind::Camshaft, _)
        | (PartKind::Piston | PartKind::Tappet | PartKind::Lobe | PartKind::CamJournal, _) => Some(Replace),
        _ => None,
    }
}
