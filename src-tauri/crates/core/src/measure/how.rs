//! How a quantity is measured, in a sentence for the one who holds the instrument. All of it is common practice.

use super::Quantity;
use super::Quantity::*;
use crate::engine::PartKind;

impl Quantity {
    /// How it is measured, in a sentence; empty where it is plain, and for what is not read.
    pub fn how(self) -> &'static str {
        match self {
            ScratchDepth => "Square to the surface, at the deepest scratch.",
            RunOut => {
                "In V-blocks, indicator on the middle of the journal, one slow turn: the whole swing of the needle."
            }
            Bend => {
                "A rod: on a fixture or between parallels, the gap over the length it was read over. A pushrod: rolled on a flat plate, the gap below it."
            }
            Twist => "On a rod fixture or between parallels: the gap over the length it was read over.",
            Strip => {
                "Lay the strip along the dry journal, torque the cap by the manual, do not turn the shaft; read the width where it is widest."
            }
            Length => {
                "A journal: along the shaft, between the fillets. Bolts: the longest of the set, free of load, beside a new one."
            }
            ThrustWidth => "Between the cheeks of the thrust journal.",
            Wall => "At the crown, with a ball anvil.",
            Thickness => "Across the washer, away from the oil grooves.",
            FlatnessAlong => {
                "Deck clean, straightedge along it and on both diagonals, each bank: the thickest feeler that enters."
            }
            FlatnessAcross => {
                "Straightedge across the deck between the cylinders, each bank: the thickest feeler that enters."
            }
            LineOffset => "Gap under a straightedge, or offset shown by a bar, along the line of the bores.",
            EndFloat => "Indicator on the end of the shaft; lever it gently to one end, then to the other.",
            SidePlay => "Feeler between the rod and the cheek.",
            EndClearance => {
                "Straightedge across the body, feeler down to the gears; or a plastic strip with the cover and its gasket on."
            }
            SideClearance => {
                "Push the gears away from the outlet with the thumb, then the feeler between teeth and body."
            }
            Backlash => "One gear held, indicator on a tooth of the other; or a feeler between the teeth.",
            Depth => "From the face of the body to the floor of the bore.",
            CoverWear => "Straightedge across the face, feeler in the mark of the gears.",
            BigEndBore => "Without shells, cap tightened by the manual.",
            SmallEndBore => "In the bush.",
            PinBore => "In the boss of the piston.",
            PinDiameter => "Where the pin is worn most.",
            GrooveClearance => "Feeler above a ring that is held in its own clean groove.",
            RingGap => "Ring squared in its bore with a piston, at the lower end of its travel; feeler in the gap.",
            Ridge => "Step at the top of the travel of the rings.",
            LobeHeight => "Over nose and heel, at the highest point.",
            BaseCircle => "Across the heel, at right angles to the nose.",
            Lift => "Indicator on the follower or the lobe: from heel to nose.",
            BearingBore => "Shells in, cap tightened by the manual; away from the parting line.",
            PinClearance => "Of the pin in its boss.",
            Diameter | OutOfRound | Taper | Barrel | Wear | Clearance | LineAdjacent | LineOverall | GapGrowth
            | HeightLoss | LiftLoss | LiftSpread | TappetBore | AdjacentRunOut | AdjacentRunOutSquare | Other => "",
        }
    }

    /// What the two directions across the part mean, in words: A, then B.
    pub fn directions(self, kind: PartKind) -> [&'static str; 2] {
        match (kind, self) {
            (PartKind::Bore, _) => ["A: along the crankshaft", "B: across the engine"],
            (PartKind::Tappet | PartKind::TappetBore, _) => ["A: in line with the part", "B: at right angles to A"],
            (_, Diameter) => ["A: upright, with the shaft’s mark on top", "B: at right angles to A"],
            _ => ["A: in line with the part", "B: at right angles to A"],
        }
    }

    /// Whether it is a size, which no small signed amount can be: a gauge that shows one shows a difference from what it
    /// was set to.
    pub fn is_size(self) -> bool {
        matches!(self, Diameter | BigEndBore | SmallEndBore | PinBore | PinDiameter | BearingBore)
    }

    /// Whether it is read over a length, which must be told with it.
    pub fn is_over_a_length(self) -> bool {
        matches!(self, Bend | Twist)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_sentence_is_one_of_a_quantity_that_is_read() {
        let is_read =
            |quantity| PartKind::ALL.iter().any(|kind| kind.has(quantity).is_some_and(super::super::Has::is_read));
        for quantity in Quantity::ALL {
            let how = quantity.how();
            assert!(how.is_empty() || (is_read(quantity) && how.ends_with('.')), "{quantity:?}: {how}");
        }
    }
}
