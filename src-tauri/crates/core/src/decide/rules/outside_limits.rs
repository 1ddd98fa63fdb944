//! Parts with a figure outside its limits, or too close to call.

use super::{Rule, RuleId, Says, judged};
use crate::engine::PartKind;
use crate::measure::Quantity;
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("outside-limits"),
    why: "A part that does not keep to its limits is machined if that can put it right, and else replaced; a rod is not straightened, unless its manual says how. One too close to call is measured again.",
    source: "TM 9-2815-225-34&P App. F (replace what does not meet the wear standard); decision rule of ISO 14253-1, from memory; limits: the spec sheet.",
    says: Says::OnPart(|scene, part, _| judged::gravest(scene, part, |quantity| remedy(part.kind, quantity))),
};

/// What puts a part right whose figure is outside. Journals and bores are the business of [`super::common_size`], big
/// ends and the line of the main bores of rules of their own; what is renewed in any case needs no word here.
fn remedy(kind: PartKind, quantity: Quantity) -> Option<Outcome> {
    use Outcome::{Machine, Replace};
    match (kind, quantity) {
        // What the thrust width and the run-out of a main ask for is said of the crankshaft.
        (PartKind::MainJournal | PartKind::Crankpin | PartKind::Bore, _) => None,
        // What is wrong with it, and whether it is reamed or bushed, [`super::worn_tappet_bores`] says; a reading on the side
        // of a new one can’t be.
        (PartKind::TappetBore, Quantity::Diameter) => Some(Outcome::CantSay),
        // Whether it or its bore is to blame, [`super::loose_tappets`] says.
        (PartKind::Tappet, Quantity::Clearance) => None,
        // A new clearance comes with new shells; what is wrong as found is the shells' wear.
        // What the line of the bores asks for is said of each of them.
        (PartKind::Block, Quantity::LineAdjacent | Quantity::LineOverall) => None,
        // The deck is the business of [`super::deck_flatness`].
        (PartKind::Block, Quantity::FlatnessAlong | Quantity::FlatnessAcross) => None,
        (PartKind::HousingBore | PartKind::Block, _) => Some(Machine),
        // The bush is renewed; a bent rod is not straightened here.
        (PartKind::Rod, Quantity::SmallEndBore) => Some(Machine),
        (PartKind::Rod, Quantity::SidePlay | Quantity::Bend | Quantity::Twist) => Some(Replace),
        (PartKind::CamBearing, Quantity::Diameter | Quantity::OutOfRound) => Some(Replace),
        // The play at the crankshaft's end is taken up by the thrust faces, which are renewed.
        (PartKind::Crankshaft | PartKind::Camshaft, Quantity::EndFloat) => None,
        // Their clearances are the business of [`super::detail_clearances`].
        (PartKind::AuxiliaryDrive, Quantity::EndFloat) => None,
        (PartKind::OilPump | PartKind::OilPickup | PartKind::TimingDrive | PartKind::AuxiliaryDrive, _)
        | (PartKind::MainCapBolts | PartKind::RodBolts | PartKind::HeadBolts | PartKind::Pushrod, _)
        | (PartKind::Crankshaft | PartKind::Camshaft, _)
        | (PartKind::Piston | PartKind::Tappet | PartKind::Lobe | PartKind::CamJournal, _) => Some(Replace),
        _ => None,
    }
}
