//! The faces of the crankshaft that take the thrust: whether they are worn, and what they are once they were worked on.

use super::Measured;
use crate::engine::{At, Part, PartKind};
use crate::figure::Figure;
use crate::measure::Quantity::{EndFloat, ThrustWidth};
use crate::measure::{Conformity, Phase};
use crate::wear::{Grade, Tag};
use crate::words::capitalised;

/// Why the thrust faces are dressed, in a sentence: they are wide beyond the limit, or what ran on them is torn. That a
/// shaft slides too far says so only as long as the width was not measured; where that is within, new thrust bearings
/// take it up.
pub(crate) fn worn_thrust(measured: &Measured<'_>) -> Option<String> {
    let width = found(measured, ThrustWidth);
    let float = found(measured, EndFloat);
    let is = |figure: Option<&Figure>, verdict| figure.is_some_and(|own| own.verdict == Some(verdict));
    let told = |figure: &Figure| format!("{}: {}", capitalised(&figure.name), figure.because);
    if is(width, Conformity::Outside) {
        return width.map(told);
    }
    torn(measured).or_else(|| {
        let is_sound = is(width, Conformity::Within);
        float.filter(|_| !is_sound && is(float, Conformity::Outside)).map(told)
    })
}

/// What must be known before it can be said whether they are worn: a width too close to its limit.
pub(crate) fn doubtful_thrust(measured: &Measured<'_>) -> Option<String> {
    let width = found(measured, ThrustWidth)?;
    let is_doubtful = width.verdict == Some(Conformity::TooClose) || width.is_open();
    is_doubtful.then(|| format!("{}: {}", capitalised(&width.name), width.because))
}

/// What they are on the shaft that comes in, as it was measured since, in words: "thrust width 1.2530 in"; none before,
/// and where the end float measured is still outside.
pub(crate) fn thrust_back(measured: &Measured<'_>) -> Option<String> {
    let later = [Phase::Machined, Phase::Fitted];
    let all = || {
        later
            .into_iter()
            .flat_map(|phase| of_thrust(measured).into_iter().flat_map(move |part| measured.figures(part, phase)))
    };
    let is_known = |own: &&Figure| match own.quantity {
        ThrustWidth => true,
        EndFloat => own.verdict != Some(Conformity::Outside),
        _ => false,
    };
    let known: Vec<&Figure> = all().filter(is_known).collect();
    let width = known.iter().find(|own| own.quantity == ThrustWidth);
    width.or(known.first()).map(|own| format!("{} {}", own.name, own.shown))
}

/// A figure of the thrust as it was found.
fn found<'a>(measured: &'a Measured<'_>, quantity: crate::measure::Quantity) -> Option<&'a Figure> {
    let parts = of_thrust(measured).into_iter();
    parts.flat_map(|part| measured.figures(part, Phase::Found)).find(|figure| figure.quantity == quantity)
}

/// The journal between whose cheeks the width is measured, and the shaft, of which the end float is.
fn of_thrust(measured: &Measured<'_>) -> [Part; 2] {
    let main = measured.readings.engine.arrangement().thrust_main;
    let journal = Part { kind: PartKind::MainJournal, at: At::Main(main) };
    [journal, Part { kind: PartKind::Crankshaft, at: At::Engine }]
}

/// The thrust bearing that is torn worst, with what was found on it: the cheek that ran there is no better (common
/// practice).
fn torn(measured: &Measured<'_>) -> Option<String> {
    let readings = &measured.readings;
    let faces = readings.engine.parts().iter().filter(|part| part.kind == PartKind::ThrustFace);
    let worst = |part: &Part| {
        let record = readings.job.parts.get(part)?;
        let of = |tag: Tag| Some((record.grade(tag).filter(|grade| *grade >= Grade::THREE)?, tag));
        let (grade, tag) = [Tag::Wiping, Tag::Scoring].into_iter().filter_map(of).max_by_key(|(grade, _)| *grade)?;
        Some((grade, format!("{}: {}", readings.engine.label(*part), tag.told(grade))))
    };
    faces.filter_map(worst).rev().max_by_key(|(grade, _)| *grade).map(|(_, told)| told)
}
