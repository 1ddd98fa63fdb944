//! The places of an engine: what belongs together when something is wrong at one spot only.

use crate::engine::{Arrangement, At, Engine, Part, PartKind, Port};

/// One place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// What belongs to no single spot: pump, drives, block, the shafts as a whole, cam bearings, fasteners.
    Engine,
    /// A main bearing: both shells, journal, housing bore.
    Main(u8),
    /// A crankpin.
    Crankpin(u8),
    /// A rod with its bearing, piston, rings and bore.
    Rod(u8),
    /// A valve's tappet, pushrod and lobe.
    Valve(u8, Port, u8),
    /// The thrust bearing.
    Thrust,
}

/// Kinds of places.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs, reason = "see the places")]
pub enum PlaceKind {
    Engine,
    Main,
    Crankpin,
    Rod,
    Valve,
    Thrust,
}

impl Place {
    /// The place to which a part belongs.
    pub fn of(part: Part) -> Self {
        use PartKind::*;
        match (part.kind, part.at) {
            (MainShell | MainJournal | HousingBore, At::Main(n) | At::MainHalf(n, _)) => Self::Main(n),
            (Crankpin, At::Crankpin(n)) => Self::Crankpin(n),
            (RodShell | Rod | Piston | Rings | Bore, At::Cylinder(n) | At::CylinderHalf(n, _)) => Self::Rod(n),
            (Tappet | Pushrod | Lobe, At::Valve(cylinder, port, nth)) => Self::Valve(cylinder, port, nth),
            (ThrustFace, _) => Self::Thrust,
            _ => Self::Engine,
        }
    }

    /// Its kind.
    pub fn kind(self) -> PlaceKind {
        match self {
            Self::Engine => PlaceKind::Engine,
            Self::Main(_) => PlaceKind::Main,
            Self::Crankpin(_) => PlaceKind::Crankpin,
            Self::Rod(_) => PlaceKind::Rod,
            Self::Valve(..) => PlaceKind::Valve,
            Self::Thrust => PlaceKind::Thrust,
        }
    }

    /// In words: "main 3", "cylinder 2".
    pub fn label(self, arrangement: &Arrangement) -> String {
        match self {
            Self::Engine => "the whole engine".into(),
            Self::Main(n) => format!("main {n}"),
            Self::Crankpin(n) => format!("crankpin {n}"),
            Self::Rod(n) => format!("cylinder {n}"),
            Self::Valve(cylinder, port, nth) => {
                format!("cylinder {}", arrangement.valve_words(cylinder, port, nth))
            }
            Self::Thrust => format!("main {}", arrangement.thrust_main),
        }
    }
}

/// The places of an engine as the model has them: each with the places that hang on it.
pub(super) fn places(engine: &Engine) -> Vec<(Place, Vec<Place>)> {
    let arrangement = engine.arrangement();
    let mut all = vec![(Place::Engine, vec![])];
    all.extend((1..=arrangement.mains).map(|n| (Place::Main(n), vec![])));
    all.extend(
        (1..=arrangement.crankpins())
            .map(|n| (Place::Crankpin(n), arrangement.cylinders_on_crankpin(n).into_iter().map(Place::Rod).collect())),
    );
    all.push((Place::Thrust, vec![]));
    let valves = engine.parts().iter().filter(|part| part.kind == PartKind::Lobe).map(|part| Place::of(*part));
    all.extend(valves.map(|place| (place, vec![])));
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_part_has_one_place_in_the_model() {
        for arrangement in [Arrangement::vee(8), Arrangement::inline(3), Arrangement::flat(6)] {
            let engine = Engine::new(arrangement).unwrap();
            let places = places(&engine);
            for part in engine.parts() {
                let of = |place: &Place| usize::from(*place == Place::of(*part));
                let times: usize =
                    places.iter().map(|(root, hanging)| of(root) + hanging.iter().map(of).sum::<usize>()).sum();
                assert_eq!(times, 1, "{part}");
            }
        }
    }

    #[test]
    fn a_place_is_called_what_a_mechanic_calls_it() {
        let arrangement = Arrangement::vee(8);
        let called = |place: Place| place.label(&arrangement);
        assert_eq!(called(Place::Main(3)), "main 3");
        assert_eq!(called(Place::Rod(2)), "cylinder 2");
        assert_eq!(called(Place::Valve(2, Port::Intake, 1)), "cylinder 2, intake");
    }
}
