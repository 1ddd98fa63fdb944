//! What goes along with a piece that is sent to have something done to it, how it is packed, and what must not be done.

use crate::engine::PartKind;
use crate::money::PriceKey;
use crate::work::Work;

/// What must lie beside a piece so that the work can be done at all; empty where the piece alone is enough. It is there, or on
/// an order: sleeves and bushes are the machinist's to buy, in the price of the work (common practice).
pub fn goes_along(of: PriceKey) -> &'static str {
    match (of.kind, of.work) {
        (PartKind::HousingBore | PartKind::Block, Work::Machine) => "all main caps in their places, with their bolts",
        (PartKind::CamBearing, Work::Machine) => "the camshaft that runs in them",
        (PartKind::CamBearing, Work::Fit) => "the new bearings",
        (PartKind::Bore, Work::Machine) => "the new pistons, and the main caps with their bolts",
        (PartKind::Bore, Work::Sleeve) => "the pistons that stay",
        (PartKind::Bore, Work::Hone) => "the main caps with their bolts",
        (PartKind::Rod, Work::Machine | Work::Fit) => "each rod’s own cap and new bolts",
        (PartKind::Rod, Work::Bush) => "each rod’s pin",
        (PartKind::Rod, Work::Weigh) => "all rods of the set",
        (PartKind::Crankshaft, Work::Balance) => {
            "for the bobweights one piston with its pin, rings and clips, one rod with its cap and bolts, a pair of its shells; flywheel and damper"
        }
        (PartKind::Block, Work::Fit) => "the plugs",
        (PartKind::TappetBore, Work::Machine) => "the followers of that oversize",
        (PartKind::TappetBore, Work::Bush) => "one standard follower",
        (PartKind::MainJournal | PartKind::Crankpin, Work::Machine) => "the new thrust washers or flanged shells",
        (PartKind::PumpBody | PartKind::PumpCover, _) => "the gears",
        _ => "",
    }
}

/// What a machine shop must not do, in a sentence; empty where nothing special (common practice; the fillets: AC 43.13-1B
/// para 8-3).
pub fn must_not(of: PriceKey) -> &'static str {
    match (of.kind, of.work) {
        (PartKind::MainJournal | PartKind::Crankpin, Work::Machine) => {
            "No journal of a group to another size than the rest. No sharp fillet, no weld."
        }
        (PartKind::MainJournal | PartKind::Crankpin, Work::Polish) => "Take no measurable size off.",
        (PartKind::Crankshaft, Work::CrackTest) => "Do not grind what shows a crack: call first.",
        (PartKind::Crankshaft, Work::Balance) => "Do not drill into an oil gallery.",
        (PartKind::HousingBore | PartKind::Block, Work::Machine) => "Do not interchange or turn a cap.",
        (PartKind::Bore, Work::Machine) => "Do not bore before the pistons are measured.",
        (PartKind::Rod, _) => "Do not stamp on the big end’s sides, nor mix the caps.",
        _ => "",
    }
}

/// How a piece travels, in a sentence (common practice).
pub fn packed(piece: PartKind) -> &'static str {
    match piece {
        PartKind::Crankshaft | PartKind::Camshaft => {
            "Oiled, journals wrapped, carried upright or on wooden cradles at the journals; never on its throws."
        }
        PartKind::Block => "Bare, on a pallet, strapped; bores oiled.",
        PartKind::Rod => "Each with its own cap, bolted, in a box with dividers.",
        _ => "Oiled, each wrapped by itself.",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::PartKind;

    /// Nothing goes along that is on no order.
    #[test]
    fn sleeves_and_bushes_are_the_machinists_own() {
        for kind in PartKind::ALL {
            for work in [Work::Machine, Work::Sleeve, Work::Bush, Work::Hone] {
                let along = goes_along(PriceKey { kind, work });
                assert!(!along.contains("sleeve") && !along.contains("bush"), "{kind:?} {work:?}: {along}");
            }
        }
    }

    #[test]
    fn line_boring_takes_the_caps_along_and_boring_the_pistons() {
        let along = |kind, work| goes_along(PriceKey { kind, work });
        assert!(along(PartKind::HousingBore, Work::Machine).contains("caps"));
        assert!(along(PartKind::Bore, Work::Machine).contains("pistons"));
        assert!(along(PartKind::Rod, Work::Machine).contains("bolts"));
        for reference in ["piston with its pin, rings", "rod with its cap", "shells"] {
            assert!(along(PartKind::Crankshaft, Work::Balance).contains(reference), "{reference}");
        }
        assert_eq!(along(PartKind::Crankshaft, Work::CrackTest), "");
    }
}
