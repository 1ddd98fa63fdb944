//! What is bagged or tagged as one, and so has one label: a shaft with its journals, a pump with its gears.

use serde::Serialize;

use crate::engine::{At, Engine, Part, PartKind};
use crate::words::capitalised;

/// A piece with a label of its own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Piece {
    /// The part to which its label leads.
    pub part: Part,
    /// What stands on it: "Main 3, upper shell", "Main 3, cap".
    pub name: String,
}

impl Piece {
    /// The piece that a part is, or on which it stays, or in whose bag it lies; none of what is thrown away, and of what was only
    /// looked at and is not kept.
    pub fn of(part: Part, engine: &Engine) -> Option<Self> {
        let itself = name(part, engine).map(|name| Self { part, name });
        itself.or_else(|| Self::of(stays_on(part, engine)?, engine))
    }
}

const BLOCK: Part = Part { kind: PartKind::Block, at: At::Engine };

/// The part on which one without a label stays.
fn stays_on(part: Part, engine: &Engine) -> Option<Part> {
    let arrangement = engine.arrangement();
    let is_pressed_in = part.kind == PartKind::CamBearing && arrangement.is_cam_in_block();
    if is_pressed_in { Some(BLOCK) } else { part.comes_with(arrangement) }
}

fn name(part: Part, engine: &Engine) -> Option<String> {
    use PartKind::*;
    let arrangement = engine.arrangement();
    let is_own = match part.kind {
        MainShell | RodShell | Rod | Piston | Rings | Tappet | Pushrod | Camshaft | Crankshaft => true,
        OilPump | OilPickup | TimingDrive | AuxiliaryDrive | Block => true,
        MainCapBolts | RodBolts | HeadBolts => true,
        // Kept for what they show.
        OilFilter | AirCleaner | Breather | Sump => true,
        ThrustFace | Bore => part.comes_with(arrangement).is_none(),
        // The bore stays in the block; its cap comes off.
        HousingBore => return Some(format!("Main {}, cap", part.at.main()?)),
        MainJournal | Crankpin | TappetBore | Lobe | CamJournal | CamBearing => false,
        PumpGears | PumpBody | PumpCover | AuxiliaryShaft | AuxiliaryBushes | AuxiliaryGear => false,
        CorePlugs | AsReceived | EngineOil | DrainPlug | Coolant | OilFiller => false,
    };
    let named = match part.kind {
        Bore => {
            format!("{} {}", capitalised(&part.kind.renewed_as(arrangement).said(engine.terms())), part.at.cylinder()?)
        }
        _ => part.label(arrangement, engine.terms()),
    };
    is_own.then_some(named)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::{Arrangement, Construction, Cylinders, ThrustBearing, every_arrangement};
    use std::collections::BTreeSet;

    #[track_caller]
    fn check(construction: Construction, part: &str, label: Option<(&str, &str)>) {
        let engine = Engine::new(Arrangement { construction, ..Arrangement::inline(4) }).unwrap();
        let piece = Piece::of(part.parse().unwrap(), &engine);
        let told = piece.map(|piece| (piece.part.to_string(), piece.name));
        assert_eq!(told, label.map(|(part, name)| (part.to_owned(), name.to_owned())), "{part}");
    }

    #[test]
    fn every_part_goes_by_the_label_of_what_it_stays_on() {
        let plain = Construction::default;
        check(plain(), "main-shell.3.upper", Some(("main-shell.3.upper", "Main 3, upper shell")));
        check(plain(), "housing-bore.3", Some(("housing-bore.3", "Main 3, cap")));
        check(plain(), "main-journal.3", Some(("crankshaft", "Crankshaft")));
        check(plain(), "lobe.2.intake.1", Some(("camshaft.1", "Camshaft")));
        check(plain(), "cam-bearing.1.2", Some(("block", "Cylinder block")));
        check(plain(), "tappet-bore.2.intake.1", Some(("block", "Cylinder block")));
        check(plain(), "pump-gears", Some(("oil-pump", "Oil pump")));
        check(plain(), "bore.2", Some(("block", "Cylinder block")));
        check(plain(), "core-plugs", None);
        check(plain(), "engine-oil", None);
        let barrels = Construction { cylinders: Some(Cylinders::Barrels), ..plain() };
        check(barrels, "bore.2", Some(("bore.2", "Cylinder barrel 2")));
        let flange = Construction { thrust: Some(ThrustBearing::Flange), ..plain() };
        check(flange, "thrust-face.rear", Some(("main-shell.3.upper", "Main 3, upper shell")));
    }

    #[test]
    fn no_two_pieces_of_an_engine_are_called_the_same() {
        for arrangement in every_arrangement() {
            let engine = Engine::new(arrangement).unwrap();
            let pieces = engine.parts().iter().chain(engine.outside()).filter_map(|part| Piece::of(*part, &engine));
            let pieces: BTreeSet<(Part, String)> = pieces.map(|piece| (piece.part, piece.name)).collect();
            let names: BTreeSet<&str> = pieces.iter().map(|(_, name)| name.as_str()).collect();
            assert_eq!(names.len(), pieces.len());
            assert!(pieces.iter().all(|(part, _)| Piece::of(*part, &engine).is_some_and(|own| own.part == *part)));
        }
    }
}
