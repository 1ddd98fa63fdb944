//! The order of things along the crankshaft, from the front: which pin lies between which mains, which cylinder works
//! on which pin.

use super::{Arrangement, At, Bank, Banks, Camshaft, End, Layout, Port};

/// One place along the crankshaft.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Station {
    /// A main bearing, by number.
    Main(u8),
    /// A crankpin, by number.
    Crankpin(u8),
}

/// All stations from front to rear.
pub type CrankLine = Vec<Station>;

impl Arrangement {
    /// Mains and crankpins from front to rear. Where there are fewer mains than gaps, the crankpins spread over the
    /// bays as evenly as they can, fuller bays in the middle; a main beyond the last pin is an outrigger.
    pub fn crank_line(&self) -> CrankLine {
        let pins = usize::from(self.crankpins());
        let bays = usize::from(self.mains.saturating_sub(1)).clamp(1, pins.max(1));
        let mut fill = vec![pins / bays; bays];
        let spare = pins % bays;
        let first_full = (bays - spare) / 2;
        for bay in fill.iter_mut().skip(first_full).take(spare) {
            *bay += 1;
        }
        let mut line = vec![Station::Main(1)];
        let (mut main, mut pin) = (1, 0);
        for count in fill {
            for _ in 0..count {
                pin += 1;
                line.push(Station::Crankpin(pin));
            }
            main += 1;
            line.push(Station::Main(main));
        }
        line.extend((main + 1..=self.mains).map(Station::Main));
        line
    }

    /// The bank of a cylinder and its place in that bank, counted from the front from 0.
    pub fn seat(&self, cylinder: u8) -> (Bank, u8) {
        let k = cylinder.saturating_sub(1);
        let per_bank = self.cylinders / self.banks();
        let other = |bank: Bank| if bank == Bank::Left { Bank::Right } else { Bank::Left };
        let (bank, row) = match (self.layout, self.numbering.banks) {
            (Layout::Inline, _) => (Bank::Left, k),
            (_, Banks::OneThenOther) if k < per_bank => (self.numbering.first_bank, k),
            (_, Banks::OneThenOther) => (other(self.numbering.first_bank), k.saturating_sub(per_bank)),
            (_, Banks::Across) if k.is_multiple_of(2) => (self.numbering.first_bank, k / 2),
            (_, Banks::Across) => (other(self.numbering.first_bank), k / 2),
        };
        let row = match self.numbering.from {
            End::Front => row,
            End::Rear => per_bank.saturating_sub(row + 1),
        };
        (bank, row)
    }

    /// The bank of a position that belongs to a cylinder, where there are two.
    pub fn bank_of(&self, at: At) -> Option<Bank> {
        at.cylinder().filter(|_| self.banks() > 1).map(|cylinder| self.seat(cylinder).0)
    }

    /// The crankpin on which a cylinder's rod works.
    pub fn crankpin_of(&self, cylinder: u8) -> u8 {
        let (bank, row) = self.seat(cylinder);
        if self.layout == Layout::Inline || self.rods_per_crankpin == 2 {
            return row + 1;
        }
        // One pin for each cylinder of two banks: the first bank's pin lies ahead of its neighbour's.
        let behind = u8::from(bank != self.numbering.first_bank);
        2 * row + behind + 1
    }

    /// The cylinders whose rods work on a crankpin, in ascending order.
    pub fn cylinders_on_crankpin(&self, pin: u8) -> Vec<u8> {
        (1..=self.cylinders).filter(|cylinder| self.crankpin_of(*cylinder) == pin).collect()
    }

    /// Number of valves of one port in each cylinder; of an odd number the intake has one more (common practice).
    pub fn valves_of(&self, port: Port) -> u8 {
        match port {
            Port::Intake => self.valves_per_cylinder.div_ceil(2),
            Port::Exhaust => self.valves_per_cylinder / 2,
        }
    }

    /// A valve by its cylinder and port, in words: "2, intake"; with its number where the port has several.
    pub fn valve_words(&self, cylinder: u8, port: Port, nth: u8) -> String {
        let port_word = if port == Port::Intake { "intake" } else { "exhaust" };
        let which = if self.valves_of(port) > 1 { format!(" {nth}") } else { String::new() };
        format!("{cylinder}, {port_word}{which}")
    }

    /// The camshaft that works a valve: the only one in the block; overhead, the left bank's before the right bank's, and
    /// of twin shafts the intake's before the exhaust's.
    pub fn camshaft_of(&self, cylinder: u8, port: Port) -> u8 {
        let bank = u8::from(self.seat(cylinder).0 == Bank::Right);
        match self.camshaft {
            Camshaft::InBlock | Camshaft::InBlockSideValves | Camshaft::None => 1,
            Camshaft::OverheadSingle => bank + 1,
            Camshaft::OverheadTwin => 2 * bank + u8::from(port == Port::Exhaust) + 1,
        }
    }

    /// Which camshaft of several, in words, lower case: "left bank", "intake, right bank", "exhaust"; empty of a single one.
    pub fn camshaft_words(&self, shaft: u8) -> String {
        let nth = shaft.saturating_sub(1);
        let bank = |nth: u8| match nth {
            _ if self.banks() < 2 => None,
            0 => Some("left bank"),
            _ => Some("right bank"),
        };
        let (port, bank) = match self.camshaft {
            Camshaft::None | Camshaft::InBlock | Camshaft::InBlockSideValves => (None, None),
            Camshaft::OverheadSingle => (None, bank(nth)),
            Camshaft::OverheadTwin => (Some(if nth.is_multiple_of(2) { "intake" } else { "exhaust" }), bank(nth / 2)),
        };
        let words: Vec<&str> = port.into_iter().chain(bank).collect();
        words.join(", ")
    }

    /// How near a main lies to the middle of the crankshaft: 1 at the centre, 0 at the ends.
    pub fn centrality(&self, main: u8) -> f64 {
        let last = f64::from(self.mains.saturating_sub(1)).max(1.0);
        let from_front = f64::from(main.saturating_sub(1));
        1.0 - (2.0 * from_front / last - 1.0).abs()
    }

    /// How far a bearing lies from where the oil comes: 0 at that end of the crankshaft, 1 at the other, a half where
    /// the end is not known or the position is not one along the crankshaft.
    pub fn remoteness(&self, at: At) -> f64 {
        let line = self.crank_line();
        let place = match at {
            At::Crankpin(pin) => Some(Station::Crankpin(pin)),
            at => at.main().map(Station::Main).or_else(|| Some(Station::Crankpin(self.crankpin_of(at.cylinder()?)))),
        };
        let place = place.and_then(|place| line.iter().position(|station| *station == place));
        let share = |place: usize| place as f64 / line.len().saturating_sub(1).max(1) as f64;
        match (place, self.oil_from) {
            (Some(place), Some(End::Front)) => share(place),
            (Some(place), Some(End::Rear)) => 1.0 - share(place),
            _ => 0.5,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::arrangement::examples;

    #[track_caller]
    fn line(arrangement: &Arrangement, expected: &str) {
        let shown: String = arrangement
            .crank_line()
            .iter()
            .map(|station| match station {
                Station::Main(n) => format!("M{n} "),
                Station::Crankpin(n) => format!("p{n} "),
            })
            .collect();
        assert_eq!(shown.trim_end(), expected);
    }

    #[test]
    fn mains_and_pins_alternate_as_far_as_the_mains_go() {
        line(&Arrangement::inline(4), "M1 p1 M2 p2 M3 p3 M4 p4 M5");
        line(&Arrangement { mains: 3, ..Arrangement::inline(4) }, "M1 p1 p2 M2 p3 p4 M3");
        line(&Arrangement { mains: 4, ..Arrangement::inline(6) }, "M1 p1 p2 M2 p3 p4 M3 p5 p6 M4");
        line(&Arrangement { mains: 5, ..Arrangement::inline(6) }, "M1 p1 M2 p2 p3 M3 p4 p5 M4 p6 M5");
        line(&Arrangement::vee(8), "M1 p1 M2 p2 M3 p3 M4 p4 M5");
        line(&Arrangement { mains: 4, ..Arrangement::flat(4) }, "M1 p1 M2 p2 p3 M3 p4 M4");
        line(&Arrangement { mains: 6, thrust_main: 6, ..Arrangement::flat(4) }, "M1 p1 M2 p2 M3 p3 M4 p4 M5 M6");
    }

    #[test]
    fn every_main_and_pin_appears_once_in_order() {
        for arrangement in examples() {
            let line = arrangement.crank_line();
            let mains: Vec<u8> =
                line.iter().filter_map(|s| if let Station::Main(n) = s { Some(*n) } else { None }).collect();
            let pins: Vec<u8> =
                line.iter().filter_map(|s| if let Station::Crankpin(n) = s { Some(*n) } else { None }).collect();
            assert_eq!(mains, (1..=arrangement.mains).collect::<Vec<_>>(), "{arrangement:?}");
            assert_eq!(pins, (1..=arrangement.crankpins()).collect::<Vec<_>>(), "{arrangement:?}");
        }
    }

    #[test]
    fn every_pin_carries_as_many_rods_as_the_arrangement_says() {
        for arrangement in examples() {
            for pin in 1..=arrangement.crankpins() {
                let rods = arrangement.cylinders_on_crankpin(pin).len();
                assert_eq!(rods, usize::from(arrangement.rods_per_crankpin), "pin {pin} of {arrangement:?}");
            }
        }
    }

    #[test]
    fn numbering_decides_who_shares_a_pin() {
        let across = Numbering { banks: Banks::Across, ..Arrangement::vee(8).numbering };
        let vee = Arrangement { numbering: across, ..Arrangement::vee(8) };
        assert_eq!(vee.cylinders_on_crankpin(1), [1, 2]);
        assert_eq!(Arrangement::vee(8).cylinders_on_crankpin(1), [1, 5]);
        let from_rear = Arrangement { numbering: Numbering { from: End::Rear, ..across }, ..vee };
        assert_eq!(from_rear.cylinders_on_crankpin(1), [7, 8]);
    }

    use crate::engine::Numbering;

    #[test]
    fn the_far_end_is_far_from_the_oil() {
        let from = |oil_from| Arrangement { oil_from, ..Arrangement::inline(4) };
        let mains = |arrangement: &Arrangement| [1, 3, 5].map(|main| arrangement.remoteness(At::Main(main)));
        assert_eq!(mains(&from(Some(End::Front))), [0.0, 0.5, 1.0]);
        assert_eq!(mains(&from(Some(End::Rear))), [1.0, 0.5, 0.0]);
        assert_eq!(mains(&from(None)), [0.5; 3]);
        let front = from(Some(End::Front));
        let cylinder = front.remoteness(At::Cylinder(4));
        assert_eq!(cylinder, front.remoteness(At::Crankpin(4)));
        assert!(cylinder > front.remoteness(At::Cylinder(1)) && cylinder < 1.0);
        assert_eq!(front.remoteness(At::Engine), 0.5);
    }

    #[test]
    fn the_centre_main_is_central() {
        let five = Arrangement::inline(4);
        assert_eq!([1, 2, 3, 4, 5].map(|main| five.centrality(main)), [0.0, 0.5, 1.0, 0.5, 0.0]);
    }
}
