//! Labels for the bags and tags of what comes off: the position in words, whose engine it is, and the code that leads back.

use serde::{Deserialize, Serialize};

use super::desk::Desk;
use super::head::{paper, typed};
use crate::date::Date;
use crate::engine::{Arrangement, At, Engine, Half, Part, PartKind};
use crate::job::TextField;
use crate::label::{Code, JobStart};
use crate::words::{Terms, capitalised};

/// What labels are printed on.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum LabelStock {
    /// Sheets of paper, to be cut up.
    #[default]
    Sheet,
    /// A roll 62 mm wide, 29 mm for each.
    Roll,
}

/// A label for each piece of a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Labels {
    /// The title, for the file's properties.
    pub title: String,
    /// The machine and the engine.
    pub subtitle: String,
    /// The day on which they are printed, where the shop is.
    pub date: Date,
    /// In the order in which the pieces come out of the engine; none before its arrangement is known.
    pub labels: Vec<Label>,
}

/// What stands on a label.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Label {
    /// The piece, as a mechanic calls it: "Main 3, upper shell".
    pub piece: String,
    /// Customer and machine, each a line; may be empty.
    pub job: Vec<String>,
    /// Where it leads.
    pub code: Code,
}

/// Writes a label for each piece that is bagged or tagged, of a job whose name begins so.
pub fn labels(desk: &Desk<'_>, job: JobStart) -> Labels {
    let lines = [TextField::Customer, TextField::Machine].into_iter().filter_map(|field| typed(desk.job, field));
    let lines: Vec<String> = lines.collect();
    let arrangement = desk.job.arrangement.clone();
    let engine = arrangement.and_then(|arrangement| Engine::speaking(arrangement, desk.job.terms).ok());
    let of = |engine: &Engine| {
        let parts = engine.outside().iter().chain(engine.parts());
        let label = |part: Part| {
            let piece = piece(part, engine.arrangement(), engine.terms())?;
            Some(Label { piece, job: lines.clone(), code: Code::new(job, part)? })
        };
        parts.flat_map(|part| coming_off(*part)).filter_map(label).collect()
    };
    let head = paper(desk, "Labels", vec![]);
    let labels = engine.as_ref().map(of).unwrap_or_default();
    Labels { title: head.title, subtitle: head.subtitle, date: head.date, labels }
}

/// What comes off at the turn of a part: with the lower shell of a main its cap, which is called by its bore.
fn coming_off(part: Part) -> Vec<Part> {
    match (part.kind, part.at) {
        (PartKind::MainShell, At::MainHalf(n, Half::Lower)) => {
            vec![Part { kind: PartKind::HousingBore, at: At::Main(n) }, part]
        }
        (PartKind::HousingBore, _) => vec![],
        _ => vec![part],
    }
}

/// What is bagged or tagged of a part, in words; none of what stays on another piece, lies in the bag of its assembly or is
/// thrown away.
fn piece(part: Part, arrangement: &Arrangement, terms: Terms) -> Option<String> {
    use PartKind::*;
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
        Bore => format!("{} {}", capitalised(&part.kind.renewed_as(arrangement).said(terms)), part.at.cylinder()?),
        _ => part.label(arrangement, terms),
    };
    is_own.then_some(named)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Construction, Cylinders, ThrustBearing, every_arrangement};
    use crate::job::Job;
    use std::collections::BTreeSet;

    fn printed(arrangement: Arrangement) -> Vec<Label> {
        let texts = [(TextField::Customer, "A. Customer ".to_owned()), (TextField::Machine, "Winch".to_owned())];
        let job = Job { arrangement: Some(arrangement), texts: texts.into(), ..Job::default() };
        let assessment = assess(&Job::default());
        labels(&Desk::bare(&job, &assessment), JobStart::of(7 << 90)).labels
    }

    fn pieces(arrangement: Arrangement) -> Vec<String> {
        printed(arrangement).into_iter().map(|label| label.piece).collect()
    }

    #[test]
    fn each_piece_gets_one_in_the_order_of_stripping() {
        let pieces = pieces(Arrangement::inline(2));
        let told = [
            "Oil filter",
            "Air cleaner and duct",
            "Breather",
            "Sump",
            "Head bolt set",
            "Pushrod 1, intake",
            "Pushrod 1, exhaust",
            "Pushrod 2, intake",
            "Pushrod 2, exhaust",
            "Oil pump",
            "Oil pick-up",
            "Timing drive",
            "Pump or distributor drive",
            "Rod 1, lower shell",
            "Rod 1, upper shell",
            "Rod 1",
            "Piston 1",
            "Rings 1",
            "Rod 2, lower shell",
            "Rod 2, upper shell",
            "Rod 2",
            "Piston 2",
            "Rings 2",
            "Rod bolt set",
            "Main cap bolt set",
            "Main 1, cap",
            "Main 1, lower shell",
            "Main 2, cap",
            "Main 2, lower shell",
            "Main 3, cap",
            "Main 3, lower shell",
            "Crankshaft",
            "Main 1, upper shell",
            "Main 2, upper shell",
            "Main 3, upper shell",
            "Thrust face, front side of main 2",
            "Thrust face, rear side of main 2",
            "Tappet 1, intake",
            "Tappet 1, exhaust",
            "Tappet 2, intake",
            "Tappet 2, exhaust",
            "Camshaft",
            "Cylinder block",
        ];
        assert_eq!(pieces, told);
    }

    #[test]
    fn what_is_a_piece_follows_from_how_the_engine_is_made() {
        let made = |construction| pieces(Arrangement { construction, ..Arrangement::inline(1) });
        let flanged = made(Construction { thrust: Some(ThrustBearing::Flange), ..Construction::default() });
        assert!(!flanged.iter().any(|piece| piece.starts_with("Thrust")), "{flanged:?}");
        let barrels = made(Construction { cylinders: Some(Cylinders::Barrels), ..Construction::default() });
        assert!(barrels.contains(&"Cylinder barrel 1".to_owned()), "{barrels:?}");
    }

    #[test]
    fn no_two_labels_of_an_engine_say_the_same() {
        for arrangement in every_arrangement() {
            let labels = printed(arrangement);
            let pieces: BTreeSet<&str> = labels.iter().map(|label| label.piece.as_str()).collect();
            let codes: BTreeSet<String> = labels.iter().map(|label| label.code.to_string()).collect();
            assert!(pieces.len() == labels.len() && codes.len() == labels.len(), "{pieces:?}");
        }
    }

    #[test]
    fn whose_it_is_stands_on_each() {
        for label in printed(Arrangement::vee(8)) {
            assert_eq!(label.job, ["A. Customer", "Winch"]);
        }
    }

    #[test]
    fn without_an_arrangement_there_are_none() {
        let (job, assessment) = (Job::default(), assess(&Job::default()));
        assert!(labels(&Desk::bare(&job, &assessment), JobStart::of(0)).labels.is_empty());
    }
}
