//! Which positions a kind of part has in an arrangement: never typed in, always derived.

use super::{Arrangement, At, Camshaft, Cooling, End, Half, Port, Tappets};

/// The rule by which an arrangement gives a kind its positions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Positions {
    /// One in the engine.
    One,
    /// One at each main.
    EachMain,
    /// Two halves at each main.
    EachMainHalf,
    /// The two sides of the thrust main.
    ThrustSides,
    /// One at each crankpin.
    EachCrankpin,
    /// One in each cylinder.
    EachCylinder,
    /// Two halves at each rod.
    EachRodHalf,
    /// One at each valve.
    EachValve,
    /// One at each valve, where there are tappets.
    EachTappet,
    /// One at each valve, where the cam lies in the block and works on valves in the head.
    EachPushrod,
    /// One each camshaft.
    EachCamshaft,
    /// One at each bearing of each camshaft.
    EachCamBearing,
    /// One, where there is a camshaft to drive.
    OneIfCamshaft,
    /// One, where water cools the cylinders.
    OneIfWater,
}

impl Positions {
    /// All positions that an arrangement has, front to rear.
    pub fn all(self, arrangement: &Arrangement) -> Vec<At> {
        let halves = [Half::Upper, Half::Lower];
        let mains = 1..=arrangement.mains;
        let cylinders = 1..=arrangement.cylinders;
        match self {
            Self::One => vec![At::Engine],
            Self::OneIfCamshaft if arrangement.camshafts() == 0 => vec![],
            Self::OneIfCamshaft => vec![At::Engine],
            Self::OneIfWater if arrangement.construction.cooling == Some(Cooling::Air) => vec![],
            Self::OneIfWater => vec![At::Engine],
            Self::EachMain => mains.map(At::Main).collect(),
            Self::EachMainHalf => mains.flat_map(|n| halves.map(|half| At::MainHalf(n, half))).collect(),
            Self::ThrustSides => vec![At::ThrustSide(End::Front), At::ThrustSide(End::Rear)],
            Self::EachCrankpin => (1..=arrangement.crankpins()).map(At::Crankpin).collect(),
            Self::EachCylinder => cylinders.map(At::Cylinder).collect(),
            Self::EachRodHalf => cylinders.flat_map(|n| halves.map(|half| At::CylinderHalf(n, half))).collect(),
            Self::EachTappet if arrangement.tappets == Tappets::None => vec![],
            Self::EachPushrod if arrangement.camshaft != Camshaft::InBlock => vec![],
            Self::EachValve | Self::EachTappet | Self::EachPushrod => cylinders
                .flat_map(|n| {
                    [Port::Intake, Port::Exhaust]
                        .into_iter()
                        .flat_map(move |port| (1..=arrangement.valves_of(port)).map(move |nth| At::Valve(n, port, nth)))
                })
                .collect(),
            Self::EachCamshaft => (1..=arrangement.camshafts()).map(At::Camshaft).collect(),
            Self::EachCamBearing => (1..=arrangement.camshafts())
                .flat_map(|shaft| (1..=arrangement.cam_bearings).map(move |n| At::CamBearing(shaft, n)))
                .collect(),
        }
    }

    /// Reads the words that follow the kind in a part's written form.
    pub(super) fn parse(self, words: &[&str]) -> Option<At> {
        let number = |word: &str| -> Option<u8> {
            // Only the canonical form, so that a part has one name.
            word.parse().ok().filter(|n: &u8| *n > 0 && n.to_string() == word)
        };
        let half = |word: &str| match word {
            "upper" => Some(Half::Upper),
            "lower" => Some(Half::Lower),
            _ => None,
        };
        match (self, words) {
            (Self::One | Self::OneIfCamshaft | Self::OneIfWater, []) => Some(At::Engine),
            (Self::EachMain, [n]) => Some(At::Main(number(n)?)),
            (Self::EachMainHalf, [n, h]) => Some(At::MainHalf(number(n)?, half(h)?)),
            (Self::ThrustSides, ["front"]) => Some(At::ThrustSide(End::Front)),
            (Self::ThrustSides, ["rear"]) => Some(At::ThrustSide(End::Rear)),
            (Self::EachCrankpin, [n]) => Some(At::Crankpin(number(n)?)),
            (Self::EachCylinder, [n]) => Some(At::Cylinder(number(n)?)),
            (Self::EachRodHalf, [n, h]) => Some(At::CylinderHalf(number(n)?, half(h)?)),
            (Self::EachValve | Self::EachTappet | Self::EachPushrod, [n, "intake", nth]) => {
                Some(At::Valve(number(n)?, Port::Intake, number(nth)?))
            }
            (Self::EachValve | Self::EachTappet | Self::EachPushrod, [n, "exhaust", nth]) => {
                Some(At::Valve(number(n)?, Port::Exhaust, number(nth)?))
            }
            (Self::EachCamshaft, [n]) => Some(At::Camshaft(number(n)?)),
            (Self::EachCamBearing, [shaft, n]) => Some(At::CamBearing(number(shaft)?, number(n)?)),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::PartKind::{
        self, Crankpin, Lobe, MainJournal, MainShell, Pushrod, RodShell, Tappet, ThrustFace,
    };

    #[test]
    fn a_v8_has_the_parts_of_a_v8() {
        let vee = Arrangement::vee(8);
        let count = |kind: PartKind| kind.row().positions.all(&vee).len();
        assert_eq!(count(MainShell), 10);
        assert_eq!(count(MainJournal), 5);
        assert_eq!(count(Crankpin), 4, "two rods on each crankpin");
        assert_eq!(count(RodShell), 16);
        assert_eq!(count(Lobe), 16);
        assert_eq!(count(Tappet), 16);
        assert_eq!(count(Pushrod), 16);
        assert_eq!(count(ThrustFace), 2);
    }

    #[test]
    fn only_a_cam_below_valves_in_the_head_needs_pushrods() {
        let count = |camshaft| Pushrod.row().positions.all(&Arrangement { camshaft, ..Arrangement::inline(4) }).len();
        assert_eq!(count(Camshaft::InBlock), 8);
        assert_eq!(count(Camshaft::InBlockSideValves), 0, "the tappet lifts the valve itself");
        assert_eq!(count(Camshaft::OverheadSingle), 0);
    }
}
