//! What a complaint says for a cause: by which factor it changes the odds. Sound tells little, load and temperature more,
//! pressure most; all are our judgement, the pairs come from the sources of [`answers`](super::answers).

use crate::job::Complaint;

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
