//! What is looked at beside the parts that are judged, since it tells how the damage got in: nothing of it is measured,
//! decided about or priced.

use super::PartKind;
use PartKind::*;

impl PartKind {
    /// What lies outside the judged parts, in the order in which it is met: before anything is opened, then the sump as it
    /// comes off (common practice).
    pub const OUTSIDE: [Self; 9] =
        [AsReceived, EngineOil, OilFilter, DrainPlug, Coolant, AirCleaner, OilFiller, Breather, Sump];

    /// Whether it is only recorded, for what it tells of the rest.
    pub fn is_outside(self) -> bool {
        Self::OUTSIDE.contains(&self)
    }

    /// How it is looked at, in a sentence; empty of a part that is judged. Common practice, but for the oil: what comes first out of
    /// a sump that has stood is water (Army subcourse OD 1001, lesson 4).
    pub fn look(self) -> &'static str {
        match self {
            AsReceived => "All round, before it is washed: washing takes the evidence away.",
            EngineOil => "Let it stand, then slacken the plug slowly: water comes first. Look at it in the light.",
            OilFilter => {
                "Cut it open without making chips, spread the folds and look at both sides; look at the by-pass valve too."
            }
            DrainPlug => "Before it is wiped: what clings to the magnet?",
            Coolant => "Cold, at the filler and as it drains; look for traces where it has run.",
            AirCleaner => "Housing, element and duct right up to the engine: what is on the clean side?",
            OilFiller => "The lid, its seal, and what sticks beneath it.",
            Breather => "The pipe and the valve: is the way through open?",
            Sump => "Before it is washed: what lies on the bottom?",
            _ => "",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::{Arrangement, Construction, Cooling, Engine};
    use crate::words::Terms;

    #[test]
    fn it_is_recorded_and_nothing_else() {
        for kind in PartKind::ALL {
            let row = kind.row();
            assert_eq!(kind.is_outside(), row.outcomes.is_empty(), "{kind:?}");
            assert_eq!(kind.is_outside(), !kind.look().is_empty(), "{kind:?}");
            let is_worked = !kind.works().is_empty() || row.always_renewed || !kind.quantities().is_empty();
            assert!(!kind.is_outside() || !is_worked, "{kind:?} is measured or worked on");
        }
    }

    #[test]
    fn the_engine_knows_it_beside_its_parts() {
        let engine = Engine::new(Arrangement::inline(4)).unwrap();
        let kinds: Vec<PartKind> = engine.outside().iter().map(|part| part.kind).collect();
        assert_eq!(kinds, PartKind::OUTSIDE);
        for part in engine.outside() {
            assert!(engine.has(*part) && !engine.parts().contains(part), "{part}");
        }
        assert!(engine.parts().iter().all(|part| !part.kind.is_outside()));
    }

    #[test]
    fn what_air_cools_has_no_coolant() {
        let construction = Construction { cooling: Some(Cooling::Air), ..Construction::default() };
        let engine = Engine::new(Arrangement { construction, ..Arrangement::flat(4) }).unwrap();
        let coolant = "coolant".parse().unwrap();
        assert!(!engine.has(coolant) && engine.outside().len() == PartKind::OUTSIDE.len() - 1);
        let refusal = super::super::require(coolant, engine.arrangement(), Terms::default()).unwrap_err();
        assert!(refusal.to_string().starts_with("This engine has no coolant:"), "{refusal}");
    }
}
