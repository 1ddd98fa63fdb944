//! What a person measured, and with what.

use serde::{Deserialize, Serialize};

use super::EditId;
use super::known::{Job, Taken};
use super::refused::{MAX_NAME, Refused, check_length, check_room};
use crate::engine::Part;
use crate::measure::{Instrument, Length, Phase, Quantity, Reading, Warmth};
use crate::words::{a, capitalised, first_words};

/// What a person measured, and with what.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum OnReading {
    /// Entered or corrected an instrument of the shop, as this job knows it.
    NoteInstrument {
        /// The instrument.
        instrument: Box<Instrument>,
    },
    /// Took a reading. A later one at the same place stands; the earlier is kept.
    Measure {
        /// The reading.
        reading: Box<Reading>,
    },
}

impl OnReading {
    /// The part that was measured.
    pub fn part(&self) -> Option<Part> {
        match self {
            Self::Measure { reading } => Some(reading.in_present_form().part),
            Self::NoteInstrument { .. } => None,
        }
    }

    /// What stands in `do` of each form.
    pub(super) const DOES: &[&str] = &["note-instrument", "measure"];

    /// Whether it fits the job: see [`Job::check`].
    pub(super) fn check(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::NoteInstrument { instrument } => check_instrument(instrument),
            Self::Measure { reading } => {
                let reading = reading.in_present_form();
                if let Some(id) = reading.instrument.as_ref().filter(|id| !job.instruments.contains_key(id)) {
                    return Err(Refused(format!(
                        "The instrument “{}” is not entered in this job: enter it first.",
                        id.as_str()
                    )));
                }
                check_reading(job, &reading)
            }
        }
    }

    /// Whether it has an effect: see [`Job::fits`]. Where the instrument is not entered, the reading stands without it.
    pub(super) fn fits(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::NoteInstrument { instrument } => {
                check_instrument(instrument)?;
                let is_new = !job.instruments.contains_key(&instrument.id);
                check_room("instruments", job.instruments.len() + usize::from(is_new), MOST_INSTRUMENTS)
            }
            Self::Measure { reading } => {
                let reading = reading.in_present_form();
                check_room("readings", job.readings.len() + 1, MOST_READINGS)?;
                let of_part = job.taken_of.get(&reading.part).copied().unwrap_or(0);
                check_room("readings of this part", of_part + 1, MOST_OF_PART)?;
                check_reading(job, &reading)
            }
        }
    }

    /// What it does to the job: see [`Job::apply`].
    pub(super) fn apply(&self, id: EditId, job: &mut Job) {
        match self {
            Self::NoteInstrument { instrument } => {
                job.instruments.insert(instrument.id.clone(), (**instrument).clone());
            }
            Self::Measure { reading } => {
                let reading = reading.in_present_form();
                *job.taken_of.entry(reading.part).or_default() += 1;
                job.readings.push(Taken { edit: id, reading });
            }
        }
    }

    /// What was done, in words: see [`Edit::sentence`](super::Edit::sentence).
    pub(super) fn sentence(&self, job: &Job) -> String {
        match self {
            Self::NoteInstrument { instrument } => format!("Instrument: {}", first_words(&instrument.name)),
            Self::Measure { reading } => {
                let reading = reading.in_present_form();
                let quantity = match reading.name.trim() {
                    "" => reading.quantity.words(job.terms),
                    name => name.into(),
                };
                let places = [
                    reading.spot.label(),
                    (if reading.phase == Phase::Found { "" } else { reading.phase.label() }).into(),
                ];
                let places: Vec<String> = places.into_iter().filter(|place| !place.is_empty()).collect();
                let places = if places.is_empty() { String::new() } else { format!(" ({})", places.join("; ")) };
                format!("{}: {quantity}{places} {}", job.label(reading.part), reading.value)
            }
        }
    }
}

/// Most readings that count: each place of the largest engine ten times over (our judgement).
const MOST_READINGS: usize = 20_000;
/// Most readings of one part that count (our judgement).
const MOST_OF_PART: usize = 300;
/// Most instruments that one job knows (our judgement).
const MOST_INSTRUMENTS: usize = 500;

/// The largest thing that is measured here: a bore or bearing of a metre and a half would be a ship's.
const LARGEST: Length = Length::from_nanometres(1_500_000_000);

/// Refuses a reading that can't be one.
fn check_reading(job: &Job, reading: &Reading) -> Result<(), Refused> {
    let name = reading.part.kind.row().name.said(job.terms);
    let quantity = reading.quantity.words(job.terms);
    let Some(has) = reading.part.kind.has(reading.quantity) else {
        return Err(Refused(format!("{} has no {quantity} to measure.", capitalised(&a(&name)))));
    };
    if !has.is_read() {
        return Err(Refused(format!("The {quantity} of a {name} is not read: it follows from other readings.")));
    }
    if (reading.quantity == Quantity::Other) == reading.name.trim().is_empty() {
        return Err(Refused(
            "Only a quantity of the manual’s own has a name, and it must have one: say what was measured.".into(),
        ));
    }
    check_length("The name", &reading.name, MAX_NAME)?;
    // A place that is not said is "somewhere": better one reading than none.
    if reading.spot != Default::default() && !has.spots.all().contains(&reading.spot) {
        return Err(Refused(format!("The {quantity} of a {name} is not measured at “{}”.", reading.spot.label())));
    }
    let instrument = reading.instrument.as_ref().and_then(|id| job.instruments.get(id));
    if let Some(Warmth { celsius, .. }) = reading.warmth
        && !(-20..=120).contains(&celsius)
    {
        return Err(Refused(format!("{celsius} °C: a part is measured between −20 and 120 °C.")));
    }
    if let Some(angle) = reading.angle
        && angle > 359
    {
        return Err(Refused(format!("{angle}°: the angle of the high spot is 0 to 359°.")));
    }
    if let Some(over) = &reading.over
        && over.length <= Length::default()
    {
        return Err(Refused(format!("{over}: the length over which it was read must be above zero.")));
    }
    let length = reading.length(instrument);
    if length < Length::default() && reading.quantity != Quantity::LineOffset {
        return Err(Refused(format!(
            "{} comes out below zero, which no {quantity} is: check the value, its sign and what the gauge was set to.",
            reading.value
        )));
    }
    if length.abs() > LARGEST {
        return Err(Refused(format!(
            "{} is larger than any engine part: check the number and its unit.",
            reading.value
        )));
    }
    Ok(())
}

/// Refuses an instrument that can't be.
fn check_instrument(instrument: &Instrument) -> Result<(), Refused> {
    if instrument.name.trim().is_empty() {
        return Err(Refused("The instrument has no name: enter what the shop calls it.".into()));
    }
    check_length("The name", &instrument.name, MAX_NAME)?;
    check_length("The date", &instrument.checked, MAX_NAME)?;
    if instrument.resolution.length <= Length::default() {
        return Err(Refused("The resolution must be above zero: the smallest step that can be read off.".into()));
    }
    if instrument.uncertainty.length < Length::default() {
        return Err(Refused("The uncertainty can’t be below zero.".into()));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use crate::engine::Arrangement;
    use crate::job::Change;
    use crate::job::testing::arranged;
    use serde_json::json;

    #[track_caller]
    fn refused(change: serde_json::Value, because: &str) {
        let job = arranged(Arrangement::inline(4));
        let change: Change = serde_json::from_value(change).unwrap();
        assert_eq!(job.check(&change).unwrap_err().to_string(), because);
    }

    #[test]
    fn what_can_not_be_a_reading_is_refused_with_a_sentence() {
        let measure = |mut reading: serde_json::Value, more: serde_json::Value| {
            reading.as_object_mut().unwrap().extend(more.as_object().unwrap().clone());
            json!({ "do": "measure", "reading": reading })
        };
        let pin = || json!({ "part": "crankpin.1", "quantity": "diameter", "value": "2.2483 in" });
        refused(
            measure(pin(), json!({ "spot": { "station": "top" } })),
            "The diameter of a crankpin is not measured at “top”.",
        );
        refused(measure(pin(), json!({ "quantity": "ring-gap" })), "A crankpin has no ring gap to measure.");
        refused(
            measure(pin(), json!({ "quantity": "wear" })),
            "The wear of a crankpin is not read: it follows from other readings.",
        );
        refused(
            measure(pin(), json!({ "instrument": "mic-9" })),
            "The instrument “mic-9” is not entered in this job: enter it first.",
        );
        refused(
            measure(pin(), json!({ "value": "-0.0005 in" })),
            "-0.0005 in comes out below zero, which no diameter is: check the value, its sign and what the gauge was set to.",
        );
        refused(
            measure(pin(), json!({ "value": "2248.3 mm" })),
            "2248.3 mm is larger than any engine part: check the number and its unit.",
        );
        refused(
            measure(pin(), json!({ "part": "crankpin.9" })),
            "This engine has no crankpin 9: its arrangement is in-line 4, 5 mains, thrust on main 3.",
        );
    }
}
