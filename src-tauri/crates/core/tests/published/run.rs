//! One case from what is entered to what comes out: each entry is read and held against the job as at its border, the
//! rest is folded and assessed.

use serde_json::{Map, Value, json};
use wearbook_core::assess::assess;
use wearbook_core::engine::{Arrangement, Engine};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, RecordedChange};

use crate::case::{Case, Source};
use crate::compare;

/// All that comes out otherwise than the case says.
pub(crate) fn wrong(source: &Source, case: &Case) -> Vec<String> {
    let entered = match entries(source, case) {
        Ok(entered) => entered,
        Err(wrong) => return vec![wrong],
    };
    let (job, refusals) = taken_in(entered);
    compare::wrong(&case.expect, &job, &assess(&job), &refusals)
}

/// Takes entries in one after the other; what is refused leaves no trace but its sentence.
fn taken_in(entries: Vec<Value>) -> (Job, Vec<String>) {
    let (mut edits, mut refusals) = (Vec::<Edit>::new(), Vec::new());
    let mut job = Job::default();
    for entry in entries {
        let change = serde_json::from_value::<Change>(entry).map_err(|error| error.to_string());
        let checked = change.and_then(|change| job.check(&change).map(|()| change).map_err(|refused| refused.0));
        match checked {
            Ok(change) => {
                let id = EditId::next(None, edits.len() as u64, DeviceId(1));
                edits.push(Edit { id, change: RecordedChange::Known(change) });
                job = Job::fold(&edits);
            }
            Err(refusal) => refusals.push(refusal),
        }
    }
    (job, refusals)
}

/// Everything that the case enters, in order, in the published form of edits.
fn entries(source: &Source, case: &Case) -> Result<Vec<Value>, String> {
    let ordinary = serde_json::to_value(Arrangement::inline(4)).map_err(|error| error.to_string())?;
    let mut fields = ordinary.as_object().cloned().unwrap_or_default();
    fields.extend(source.engine.iter().chain(&case.engine).map(|(field, value)| (field.clone(), value.clone())));
    let arrangement = Value::from(fields);
    let engine: Arrangement = serde_json::from_value(arrangement.clone()).map_err(|error| error.to_string())?;
    let engine = Engine::new(engine).map_err(|impossible| impossible.0)?;
    let mut entries = vec![json!({ "do": "arrange", "arrangement": arrangement })];
    if let Some(name) = source.sheet_name(case) {
        let sheet = source.sheets.get(name).ok_or_else(|| format!("there is no sheet “{name}”"))?;
        entries.push(json!({ "do": "use-sheet", "sheet": sheet }));
    }
    entries.extend(source.instruments.iter().map(|one| json!({ "do": "note-instrument", "instrument": one })));
    if case.looked_at {
        entries.extend(engine.parts().iter().map(|part| json!({ "do": "clean", "part": part })));
    }
    entries.extend(case.changes.iter().cloned());
    for reading in &case.readings {
        entries.extend(each_place(reading)?.into_iter().map(|one| json!({ "do": "measure", "reading": one })));
    }
    Ok(entries)
}

/// A reading as it is, or one for each of its `values` by place: `{ "front a": "2.2483 in", … }`.
fn each_place(reading: &Map<String, Value>) -> Result<Vec<Map<String, Value>>, String> {
    let Some(values) = reading.get("values") else { return Ok(vec![reading.clone()]) };
    let values = values.as_object().ok_or("“values” must name a value for each place")?;
    // A place is a station, a direction or both.
    let at = |place: &str| -> Map<String, Value> {
        let named = |word: &str| (if ["a", "b"].contains(&word) { "direction" } else { "station" }).to_owned();
        place.split(' ').map(|word| (named(word), word.into())).collect()
    };
    Ok(values
        .iter()
        .map(|(place, value)| {
            let mut one = reading.clone();
            one.remove("values");
            one.insert("spot".into(), at(place).into());
            one.insert("value".into(), value.clone());
            one
        })
        .collect())
}
