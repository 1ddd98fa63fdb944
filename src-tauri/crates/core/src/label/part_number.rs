//! A part as a number of sixteen bits. These numbers hang on engines: none ever changes, none is given twice.
//!
//! ```text
//! kind: 7 bits | number: 5 bits | which of several there: 4 bits
//! ```

use crate::engine::{At, End, Half, Part, PartKind, Port, Positions};

/// The part's number; none of a part that no engine can have.
pub(super) fn of(part: Part) -> Option<u16> {
    let (number, which) = place(part.at);
    let fits = number < 1 << 5 && which < 1 << 4;
    fits.then(|| u16::from(kind_number(part.kind)) << 9 | u16::from(number) << 4 | u16::from(which))
}

/// The part of this number; none if this version knows none.
pub(super) fn part(number: u16) -> Option<Part> {
    let kind = PartKind::ALL.into_iter().find(|kind| u16::from(kind_number(*kind)) == number >> 9)?;
    let (counted, which) = ((number >> 4 & 0x1f) as u8, (number & 0xf) as u8);
    let part = Part { kind, at: at(kind.row().positions, counted, which)? };
    // Only the one form, so that a part has one number.
    (of(part) == Some(number)).then_some(part)
}

fn kind_number(kind: PartKind) -> u8 {
    use PartKind::*;
    match kind {
        MainShell => 1,
        MainJournal => 2,
        HousingBore => 3,
        ThrustFace => 4,
        RodShell => 5,
        Crankpin => 6,
        Rod => 7,
        Piston => 8,
        Rings => 9,
        Bore => 10,
        Tappet => 11,
        TappetBore => 12,
        Pushrod => 13,
        Lobe => 14,
        CamJournal => 15,
        CamBearing => 16,
        Camshaft => 17,
        Crankshaft => 18,
        OilPump => 19,
        PumpGears => 20,
        PumpBody => 21,
        PumpCover => 22,
        OilPickup => 23,
        TimingDrive => 24,
        AuxiliaryDrive => 25,
        AuxiliaryShaft => 26,
        AuxiliaryBushes => 27,
        AuxiliaryGear => 28,
        CorePlugs => 29,
        Block => 30,
        MainCapBolts => 31,
        RodBolts => 32,
        HeadBolts => 33,
        AsReceived => 34,
        EngineOil => 35,
        OilFilter => 36,
        DrainPlug => 37,
        Coolant => 38,
        AirCleaner => 39,
        OilFiller => 40,
        Breather => 41,
        Sump => 42,
    }
}

/// What is counted along the engine, and which of several there.
fn place(at: At) -> (u8, u8) {
    match at {
        At::Engine => (0, 0),
        At::Main(n) | At::Crankpin(n) | At::Cylinder(n) | At::Camshaft(n) => (n, 0),
        At::MainHalf(n, half) | At::CylinderHalf(n, half) => (n, u8::from(half == Half::Lower)),
        At::ThrustSide(end) => (0, u8::from(end == End::Rear)),
        At::Valve(n, Port::Intake, nth) => (n, nth),
        At::Valve(n, Port::Exhaust, nth) => (n, nth | 1 << 3),
        At::CamBearing(shaft, n) => (n, shaft),
    }
}

fn at(positions: Positions, number: u8, which: u8) -> Option<At> {
    let half = if which == 0 { Half::Upper } else { Half::Lower };
    let at = match positions {
        Positions::One | Positions::OneIfCamshaft | Positions::OneIfWater => return Some(At::Engine),
        Positions::ThrustSides => return Some(At::ThrustSide(if which == 0 { End::Front } else { End::Rear })),
        Positions::EachMain => At::Main(number),
        Positions::EachMainHalf => At::MainHalf(number, half),
        Positions::EachCrankpin => At::Crankpin(number),
        Positions::EachCylinder => At::Cylinder(number),
        Positions::EachRodHalf => At::CylinderHalf(number, half),
        Positions::EachValve | Positions::EachTappet | Positions::EachPushrod => {
            At::Valve(number, if which >> 3 == 0 { Port::Intake } else { Port::Exhaust }, which & 0b111)
        }
        Positions::EachCamshaft => At::Camshaft(number),
        Positions::EachCamBearing => At::CamBearing(which, number),
    };
    (number > 0).then_some(at)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::{Arrangement, Camshaft, Engine, every_arrangement};
    use std::collections::BTreeMap;

    #[test]
    fn every_part_of_every_engine_has_a_number_of_its_own() {
        let mut parts: BTreeMap<u16, Part> = BTreeMap::new();
        let most = Arrangement {
            camshaft: Camshaft::OverheadTwin,
            cam_bearings: 20,
            valves_per_cylinder: 5,
            mains: 18,
            rods_per_crankpin: 1,
            ..Arrangement::flat(16)
        };
        for arrangement in every_arrangement().into_iter().chain([most]) {
            let engine = Engine::new(arrangement).unwrap();
            for met in engine.parts().iter().chain(engine.outside()) {
                let number = of(*met).unwrap_or_else(|| panic!("{met} has no number"));
                assert_eq!(part(number), Some(*met), "{number:016b}");
                assert_eq!(*parts.entry(number).or_insert(*met), *met, "one number for two parts");
            }
        }
        assert!(parts.len() > 600, "{} parts are few", parts.len());
    }

    #[test]
    fn a_number_means_one_part_or_none() {
        for number in 0..=u16::MAX {
            if let Some(met) = part(number) {
                assert_eq!(of(met), Some(number), "{met}");
            }
        }
    }

    #[test]
    fn a_part_that_no_engine_has_gets_no_number() {
        assert_eq!(of("piston.200".parse().unwrap()), None);
        assert_eq!(of("cam-bearing.16.1".parse().unwrap()), None);
    }
}
