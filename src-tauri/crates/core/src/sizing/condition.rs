//! The condition of one journal or bore as found: its size, its form, its damage, and what is still missing.

use super::plan::Missing;
use super::scratch::{Scratch, by_nail, deepest_scratch};
use crate::engine::{Cylinders, Part};
use crate::figure::{Bench, Figure, Readings, figures};
use crate::job::PartRecord;
use crate::measure::{Conformity, Length, Phase, Quantity, Sense, Spots, in_unit};
use crate::wear::Tag;
use crate::work::Outcome;

/// How sound a part is as found.
#[derive(Debug, Clone, Default)]
pub(super) struct Condition {
    /// Its figures.
    pub(super) figures: Vec<Figure>,
    /// Smallest and largest diameter with the uncertainty.
    pub(super) diameter: Option<(Length, Length, Length)>,
    /// The depth of the worst scratch that was measured.
    pub(super) scratch: Length,
    /// Its uncertainty.
    pub(super) scratch_uncertainty: Length,
    /// Only its size is outside, on the worn side.
    pub(super) worn_size: bool,
    /// Its form is outside, or it is damaged so that it must be machined; why, each in a sentence without its name.
    pub(super) faults: Vec<String>,
    /// Damage that may polish out.
    pub(super) polish: bool,
    /// Damage goes deeper than the sheet allows to be machined; why, as above.
    pub(super) too_deep: Option<String>,
    /// What is missing.
    pub(super) missing: Vec<Missing>,
    /// What is too close to call: it matters only where nothing else decides.
    pub(super) close: Vec<Missing>,
    /// What can't be right.
    pub(super) odd: Vec<Missing>,
}

/// Looks at one journal or bore as found.
pub(super) fn condition(readings: &Readings<'_>, part: Part, sense: Sense) -> Condition {
    let sizes = readings.found_sizes();
    let bench = Bench { readings, phase: Phase::Found, sizes: &sizes };
    let label = || readings.engine.label(part);
    let reading = |words| Missing::reading(part, label(), words);
    let blank = PartRecord::default();
    let record = readings.job.parts.get(&part).unwrap_or(&blank);
    let mut seen = Condition { figures: figures(bench, part), ..Condition::default() };
    if let Some(value) = readings.value(part, Quantity::Diameter, Phase::Found, None) {
        seen.diameter = Some((value.low, value.high, value.uncertainty));
    }
    if let Some(value) = readings.value(part, Quantity::ScratchDepth, Phase::Found, None) {
        (seen.scratch, seen.scratch_uncertainty) = (value.high, value.uncertainty);
    }
    for figure in &seen.figures {
        let about = format!("{} {}", figure.name, figure.because);
        if !is_judged(figure.quantity) {
            continue;
        }
        match (figure.quantity, figure.verdict) {
            (_, None) if figure.is_open() => seen.missing.push(reading(about)),
            (_, None | Some(Conformity::Within)) => {}
            // Whether a scratch condemns the part, no machining settles.
            (Quantity::ScratchDepth, Some(Conformity::TooClose)) => seen.missing.push(reading(about)),
            (_, Some(Conformity::TooClose)) => seen.close.push(reading(about)),
            (Quantity::Wear, Some(Conformity::Outside)) => seen.worn_size = true,
            (Quantity::Diameter, Some(Conformity::Outside)) if on_worn_side(figure, sense) => seen.worn_size = true,
            (Quantity::Diameter, Some(Conformity::Outside)) => seen.odd.push(reading(format!(
                "{about} It is on the new side of the range: check the reading, the sheet, and the size stamped on the old parts."
            ))),
            // How deep is too deep, the scratches themselves tell below.
            (Quantity::ScratchDepth, Some(Conformity::Outside)) => {}
            (_, Some(Conformity::Outside)) => seen.faults.push(about),
        }
    }
    damage(readings, part, record, &mut seen);
    // What a person keeps in spite of its damage or form condemns nothing else.
    if record.overrule.as_ref().is_some_and(|overrule| overrule.outcome < Outcome::CantSay) {
        seen.polish = record.overrule.as_ref().is_some_and(|overrule| overrule.outcome == Outcome::Polish);
        seen.faults.clear();
        seen.too_deep = None;
        seen.worn_size = false;
    }
    // What a person has machined takes its group along to a size; a wet liner is renewed, and not by such a word.
    let by_hand = record.overrule.as_ref().is_some_and(|overrule| overrule.outcome == Outcome::Machine);
    let is_liner = readings.engine.arrangement().construction.cylinders == Some(Cylinders::WetLiners);
    if by_hand && !is_liner && seen.faults.is_empty() {
        seen.faults.push("to be machined, decided by hand.".into());
    }
    if let Some(missing) = missing_spots(readings, part) {
        seen.missing.insert(0, reading(missing));
    }
    if !record.looked_at() {
        seen.missing.push(Missing::look(part, label(), "look at it; scratches count.".into()));
    }
    seen
}

impl Condition {
    /// Whether the part itself can't stay as it is.
    pub(super) fn at_fault(&self) -> bool {
        self.worn_size || self.too_deep.is_some() || !self.faults.is_empty()
    }
}

/// Figures that tell whether a part must be machined.
fn is_judged(quantity: Quantity) -> bool {
    use Quantity::{Barrel, Diameter, OutOfRound, ScratchDepth, Taper, Wear};
    matches!(quantity, Diameter | OutOfRound | Taper | Barrel | Wear | ScratchDepth)
}

/// Whether a diameter that is outside is so on the side of wear: beyond that limit, or not beyond the other.
fn on_worn_side(figure: &Figure, sense: Sense) -> bool {
    let (below, above) =
        (figure.allowed.0.map(|least| figure.low < least), figure.allowed.1.map(|most| figure.high > most));
    let (worn, new) = if sense == Sense::Least { (below, above) } else { (above, below) };
    worn == Some(true) || new != Some(true)
}

/// Scratches whose depth was measured, by the sheet, and damage that was only seen, by the fingernail.
fn damage(readings: &Readings<'_>, part: Part, record: &PartRecord, seen: &mut Condition) {
    let measured = deepest_scratch(readings, part);
    let show = |length| in_unit(length, readings.unit());
    match measured {
        Some((_, Scratch::Light(_))) => seen.polish = true,
        Some((depth, Scratch::Machined(_))) => seen.faults.push(format!("a scratch {} deep.", show(depth))),
        Some((depth, Scratch::TooDeep(most))) => {
            seen.too_deep =
                Some(format!("a scratch {} deep; the sheet allows no more than {}.", show(depth), show(most)));
        }
        None => {}
    }
    for tag in part.kind.row().tags {
        // Where the depth was measured it has the word on scratches.
        let grade = record.grade(*tag).filter(|_| *tag != Tag::Scoring || measured.is_none());
        let Some(grade) = grade else { continue };
        match by_nail(part.kind, *tag, grade) {
            Some(Outcome::Machine) => seen.faults.push(format!("{}, grade {}.", tag.row().name, grade.number())),
            Some(_) => seen.polish = true,
            None => {}
        }
    }
}

/// Places that must be measured and were not, in a sentence.
fn missing_spots(readings: &Readings<'_>, part: Part) -> Option<String> {
    let has = part.kind.has(Quantity::Diameter)?;
    let spots: Vec<_> = has
        .spots
        .needed()
        .into_iter()
        .filter(|spot| {
            readings.quantity(part, Quantity::Diameter, Phase::Found).all(|standing| standing.reading.spot != *spot)
        })
        .map(|spot| spot.label())
        .collect();
    if spots.is_empty() {
        return None;
    }
    if spots.len() == has.spots.needed().len() {
        let how = match has.spots {
            Spots::Bore => "at three levels, in two directions",
            _ => "at two stations, in two directions",
        };
        return Some(format!("measure its diameter {how}."));
    }
    Some(format!("measure its diameter at {}.", spots.join("; ")))
}
