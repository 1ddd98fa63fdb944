//! What can be measured only while the engine is still together, and what takes the chance away: one table.

use super::Quantity;
use super::Quantity::{Backlash, EndFloat, SidePlay};
use crate::engine::PartKind::{self, *};
use crate::engine::{At, Part};

/// A quantity that is gone once a part has come off.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OnlyTogether {
    /// The kind of which it is measured.
    pub of: PartKind,
    /// What is measured.
    pub quantity: Quantity,
    /// The kinds that are in the hand only once it can't be measured any longer, the first to come off first.
    pub lost_with: &'static [PartKind],
}

/// In strip-down order. Common practice: play between parts is read before they are parted, for as they were found they
/// never meet again. What a pump shows with its cover off is not among it, since its gears go back into the body at any
/// time; nor is a plastic strip, for which a cap comes off.
pub const ONLY_TOGETHER: [OnlyTogether; 5] = [
    only(AuxiliaryGear, Backlash, &[AuxiliaryDrive, AuxiliaryShaft, AuxiliaryBushes]),
    only(AuxiliaryDrive, EndFloat, &[AuxiliaryShaft, AuxiliaryBushes]),
    only(Rod, SidePlay, &[RodShell, Rings]),
    only(Crankshaft, EndFloat, &[MainShell, ThrustFace, MainJournal]),
    only(Camshaft, EndFloat, &[CamJournal, CamBearing]),
];

const fn only(of: PartKind, quantity: Quantity, lost_with: &'static [PartKind]) -> OnlyTogether {
    OnlyTogether { of, quantity, lost_with }
}

impl OnlyTogether {
    /// Whether this part in the hand means that it can't be measured of that one any longer: of a rod by its own shells, of
    /// a camshaft by its own bearings.
    pub fn is_lost_with(&self, measured: Part, off: Part) -> bool {
        let meets = match (measured.at, off.at) {
            (At::Cylinder(cylinder), at) => at.cylinder() == Some(cylinder),
            (At::Camshaft(shaft), At::CamBearing(of, _)) => of == shaft,
            (at, _) => at == At::Engine,
        };
        measured.kind == self.of && self.lost_with.contains(&off.kind) && meets
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::{Arrangement, Engine};

    fn lost(of: &str, off: &str) -> bool {
        let [of, off]: [Part; 2] = [of, off].map(|part| part.parse().unwrap());
        ONLY_TOGETHER.iter().any(|row| row.is_lost_with(of, off))
    }

    #[test]
    fn each_row_is_read_of_its_kind_and_named_once() {
        for (nth, row) in ONLY_TOGETHER.iter().enumerate() {
            assert!(row.of.has(row.quantity).is_some_and(super::super::Has::is_read), "{row:?}");
            assert!(!row.lost_with.is_empty() && !row.lost_with.contains(&row.of), "{row:?}");
            assert!(ONLY_TOGETHER.iter().take(nth).all(|other| (other.of, other.quantity) != (row.of, row.quantity)));
        }
    }

    #[test]
    fn end_float_goes_with_any_main_and_side_play_with_its_own_rod() {
        assert!(lost("crankshaft", "main-shell.1.lower") && lost("crankshaft", "main-journal.3"));
        assert!(!lost("crankshaft", "rod-shell.1.lower") && !lost("crankshaft", "crankpin.1"));
        assert!(lost("rod.2", "rod-shell.2.lower") && lost("rod.2", "rings.2"));
        assert!(!lost("rod.2", "rod-shell.1.lower") && !lost("rod.2", "piston.2"));
        assert!(lost("camshaft.1", "cam-bearing.1.3") && !lost("camshaft.1", "cam-bearing.2.3"));
    }

    #[test]
    fn something_comes_off_for_each_part_that_an_engine_has() {
        for arrangement in [Arrangement::inline(4), Arrangement::vee(8), Arrangement::flat(6)] {
            let engine = Engine::new(arrangement).unwrap();
            for row in ONLY_TOGETHER {
                for part in engine.parts().iter().filter(|part| part.kind == row.of) {
                    assert!(engine.parts().iter().any(|off| row.is_lost_with(*part, *off)), "{part}: {row:?}");
                }
            }
        }
    }
}
