//! What rules and operations share about coolant and oil that met: told by the customer or found. No rule itself.

use super::oil_ways;
use crate::engine::{Engine, Part, PartKind};
use crate::job::{Answer, Complaint, HistoryFact, Job};
use crate::wear::{Grade, Tag};

/// That coolant and oil met inside the engine, in a sentence; none where nothing tells of it. A trace of cream in a cold spot
/// is condensation, and a film of colours on the coolant may have come with the hose.
pub fn coolant_met_oil(engine: &Engine, job: &Job) -> Option<String> {
    if job.history.get(&HistoryFact::CoolantInOil) == Some(&Answer::Yes) {
        return Some("Coolant got into the oil.".into());
    }
    if job.complaints.contains(&Complaint::OilInCoolant) {
        return Some("Oil got into the coolant.".into());
    }
    let shows = |part: &Part, tag: Tag| {
        job.parts.get(part).and_then(|record| record.grade(tag)).is_some_and(|grade| grade >= Grade::TWO)
    };
    let is_met = |part: &&Part| match part.kind {
        PartKind::Coolant => shows(part, Tag::OilFilm),
        _ => oil_ways::holds_oil(**part) && shows(part, Tag::Milky),
    };
    let met = engine.outside().iter().find(is_met)?;
    Some(match met.kind {
        PartKind::Coolant => "There is oil in the coolant.".into(),
        _ => format!("{}, milky: coolant or water got into the oil.", engine.label(*met)),
    })
}
