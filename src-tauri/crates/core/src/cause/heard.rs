//! What a complaint says for a cause: by which factor it changes the odds. Sound tells little, load and temperature more,
//! pressure most; all are our judgement, the pairs come from the sources of [`answers`](super::answers).

use crate::engine::{At, Part, PartKind};
use crate::job::{Complaint, Job};
use crate::wear::Tag;

/// Cause, complaint, factor. The four complaints that were once asked about the past stand with the causes themselves.
const HEARD: &[(&str, Complaint, f64)] = {
    use Complaint::*;
    &[
        ("oil-starvation", LowPressureAtIdle, 1.5),
        ("oil-starvation", PressureSwings, 4.0),
        ("blocked-oil-way", KnockWithoutLoad, 1.3),
        ("bent-rod", WouldNotTurn, 2.0),
        ("corrosion", CoolantUsed, 3.0),
        ("corrosion", WhiteSmoke, 1.5),
        // Milky is water; thin, black and smelling is fuel.
        ("fuel-dilution", CoolantInOil, 0.3),
        ("fuel-dilution", FuelInOil, 12.0),
        ("fuel-wash", FuelInOil, 1.5),
        ("dusty-air", OilUsed, 1.7),
        ("dusty-air", LowCompression, 1.5),
        ("dusty-air", BreatherFumes, 1.5),
        ("broken-ring", OilUsed, 1.4),
        ("broken-ring", LowCompression, 2.0),
        ("broken-ring", BreatherFumes, 1.5),
        ("dirt-in-oil", MetalInOil, 1.3),
        ("stuck-tappet", NoiseAtTheTop, 3.0),
        ("cam-fatigue", NoiseAtTheTop, 2.0),
        ("tappet-did-not-turn", NoiseAtTheTop, 2.0),
        ("overheating", CoolantUsed, 2.0),
    ]
};

/// The factor by which a complaint changes the odds of a cause; none of most.
pub(super) fn heard(cause: &str, complaint: Complaint) -> Option<f64> {
    HEARD.iter().find(|(own, of, _)| *own == cause && *of == complaint).map(|(.., factor)| *factor)
}

/// By what it is seen at the oil or the coolant that a complaint is so.
const SEEN: &[(Complaint, PartKind, &[Tag])] = {
    use PartKind::{Coolant, DrainPlug, EngineOil, OilFiller, OilFilter, Sump};
    use Tag::{
        AluminiumFlakes, FuelSmell, HighLevel, Leak, LowLevel, Milky, OilFilm, SoftFlakes, SteelFlakes, SteelSplinters,
    };
    const METAL: &[Tag] = &[SoftFlakes, SteelSplinters, SteelFlakes, AluminiumFlakes];
    &[
        (Complaint::FuelInOil, EngineOil, &[FuelSmell, HighLevel]),
        (Complaint::CoolantInOil, EngineOil, &[Milky]),
        (Complaint::CoolantInOil, OilFiller, &[Milky]),
        (Complaint::CoolantUsed, Coolant, &[LowLevel, Leak]),
        (Complaint::OilInCoolant, Coolant, &[OilFilm]),
        (Complaint::MetalInOil, EngineOil, METAL),
        (Complaint::MetalInOil, OilFilter, METAL),
        (Complaint::MetalInOil, DrainPlug, METAL),
        (Complaint::MetalInOil, Sump, METAL),
    ]
};

/// Whether what is told was seen to be so: then it is one fact, and not two.
pub(super) fn is_found_so(told: Complaint, job: &Job) -> bool {
    SEEN.iter().filter(|(own, ..)| *own == told).any(|(_, kind, tags)| {
        let record = job.parts.get(&Part { kind: *kind, at: At::Engine });
        record.is_some_and(|record| tags.iter().any(|tag| record.grade(*tag).is_some()))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cause::catalogue;

    #[test]
    fn every_row_names_a_cause_once() {
        for (cause, complaint, factor) in HEARD {
            assert!(catalogue::ALL.iter().any(|own| own.id == *cause), "{cause}");
            assert!(*factor > 0.1 && *factor < 20.0);
            assert_eq!(HEARD.iter().filter(|(own, of, _)| own == cause && of == complaint).count(), 1);
        }
    }
}
