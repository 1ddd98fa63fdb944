//! Jobs as data: a sound engine of `tests/whole-engines/bases`, and what was seen, measured and done after that.
#![allow(dead_code, reason = "no program uses all of it")]
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::path::Path;

use serde::Deserialize;
use serde_json::{Map, Value, json};
use wearbook_core::assess::check;
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, RecordedChange};
use wearbook_core::measure::{Quantity, Spot, Station};
use wearbook_core::words::Terms;

use crate::data::{files, folder, is_like, read};

/// What cases share: an engine that was looked at and measured, and is sound.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Base {
    /// "inline", "vee" or "flat", and how many cylinders.
    engine: (String, u8),
    /// What differs from the ordinary engine of that layout.
    #[serde(default)]
    arrangement: Map<String, Value>,
    sheet: Value,
    #[serde(default)]
    prices: Option<Value>,
    readings: Vec<Readings>,
}

/// One quantity of the parts of such a name, the same at every place where it is measured.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Readings {
    /// "crankpin.2", or "crankpin.*" for all.
    parts: String,
    quantity: Quantity,
    value: String,
    /// Only at this station.
    #[serde(default)]
    station: Option<Station>,
    #[serde(default)]
    phase: Option<String>,
}

/// What was done: readings, or a change in the published form of a job's edits, in which `parts` stands for every part
/// of such a name.
#[derive(Debug, Clone, Deserialize)]
#[serde(untagged)]
pub(crate) enum Step {
    Measured(Readings),
    Changed(Map<String, Value>),
}

/// An engine with all that is entered of it.
pub(crate) struct Entered {
    pub(crate) engine: Engine,
    readings: Vec<Readings>,
    changes: Vec<Value>,
}

/// A case of `tests/whole-engines`.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Whole {
    /// What it is about.
    pub(crate) about: String,
    base: String,
    /// What differs from the base's engine.
    #[serde(default)]
    arrangement: Map<String, Value>,
    /// Nothing was looked at or measured.
    #[serde(default)]
    untouched: bool,
    /// Changes in the published form of a job's edits, and readings of a whole part.
    #[serde(default)]
    then: Vec<Step>,
    /// What is expected of it, as the test that holds it reads it.
    pub(crate) expect: Value,
}

impl Whole {
    /// The case of such a name.
    pub(crate) fn named(name: &str) -> Self {
        read(&folder("whole-engines").join(format!("{name}.json")))
    }

    /// Every case with its name.
    pub(crate) fn all() -> impl Iterator<Item = (String, Self)> {
        let name = |path: &Path| path.file_stem().unwrap().to_string_lossy().into_owned();
        files(&folder("whole-engines")).into_iter().map(move |path| (name(&path), read(&path)))
    }

    /// All that is entered of it.
    pub(crate) fn job(&self) -> Job {
        let mut entered = Entered::untouched(&self.base, &self.arrangement);
        if !self.untouched {
            let parts = entered.engine.parts().to_vec();
            entered.clean(&parts);
            entered.measured();
        }
        entered.then(&self.then);
        entered.job()
    }
}

impl Entered {
    /// An engine of which nothing was looked at or measured, with its sheet and prices.
    pub(crate) fn untouched(base: &str, differs: &Map<String, Value>) -> Self {
        let base: Base = read(&folder("whole-engines").join("bases").join(format!("{base}.json")));
        let (layout, cylinders) = (base.engine.0.as_str(), base.engine.1);
        let ordinary = match layout {
            "inline" => Arrangement::inline(cylinders),
            "vee" => Arrangement::vee(cylinders),
            "flat" => Arrangement::flat(cylinders),
            other => panic!("no engine is “{other}”"),
        };
        let mut arrangement = serde_json::to_value(ordinary).unwrap();
        let differs = base.arrangement.iter().chain(differs);
        arrangement.as_object_mut().unwrap().extend(differs.map(|(field, value)| (field.clone(), value.clone())));
        let engine = Engine::speaking(serde_json::from_value(arrangement.clone()).unwrap(), Terms::default()).unwrap();
        let mut changes = vec![json!({ "do": "arrange", "arrangement": arrangement })];
        changes.push(json!({ "do": "use-sheet", "sheet": base.sheet }));
        changes.extend(base.prices.iter().map(|prices| json!({ "do": "use-prices", "prices": prices })));
        Self { engine, readings: base.readings, changes }
    }

    /// These parts were looked at and are clean.
    pub(crate) fn clean<'a>(&mut self, parts: impl IntoIterator<Item = &'a Part>) {
        self.changes.extend(parts.into_iter().map(|part| json!({ "do": "clean", "part": part })));
    }

    /// The base's readings were taken.
    pub(crate) fn measured(&mut self) {
        for readings in self.readings.clone() {
            self.measure(&readings);
        }
    }

    /// What was done after that.
    pub(crate) fn then(&mut self, steps: &[Step]) {
        for step in steps {
            match step {
                Step::Measured(readings) => self.measure(readings),
                Step::Changed(change) => self.change(change),
            }
        }
    }

    /// All of it as a job, each change held against it as at its border.
    pub(crate) fn job(&self) -> Job {
        let mut edits: Vec<Edit> = Vec::new();
        for change in &self.changes {
            let known: Change =
                serde_json::from_value(change.clone()).unwrap_or_else(|error| panic!("{change}: {error}"));
            check(&Job::fold(&edits), &known).unwrap_or_else(|refused| panic!("{change}: {}", refused.0));
            let id = EditId::next(edits.last().map(|edit| edit.id), 1, DeviceId(1));
            edits.push(Edit { id, change: RecordedChange::Known(known) });
        }
        Job::fold(&edits)
    }

    /// What the engine has of a name with stars, that which lies outside its parts too.
    pub(crate) fn parts(&self, mask: &str) -> Vec<Part> {
        let all = self.engine.parts().iter().chain(self.engine.outside());
        let parts: Vec<Part> = all.copied().filter(|part| is_like(&part.to_string(), mask)).collect();
        assert!(!parts.is_empty(), "{mask} is nothing that the engine has");
        parts
    }

    fn change(&mut self, change: &Map<String, Value>) {
        let mut one = change.clone();
        let Some(mask) = one.remove("parts") else {
            self.changes.push(one.into());
            return;
        };
        for part in self.parts(mask.as_str().unwrap_or_default()) {
            one.insert("part".into(), part.to_string().into());
            self.changes.push(one.clone().into());
        }
    }

    fn measure(&mut self, readings: &Readings) {
        for part in self.parts(&readings.parts) {
            let has = part.kind.has(readings.quantity);
            let has = has.unwrap_or_else(|| panic!("{part} has no {:?}", readings.quantity));
            let is_there = |spot: &Spot| readings.station.is_none() || spot.station == readings.station;
            let spots: Vec<Spot> = has.spots.needed().into_iter().filter(is_there).collect();
            assert!(!spots.is_empty(), "{part} is not measured at {:?}", readings.station);
            self.changes.extend(spots.into_iter().map(|spot| {
                json!({ "do": "measure", "reading": { "part": part, "quantity": readings.quantity, "spot": spot,
                    "phase": readings.phase.as_deref().unwrap_or("found"), "value": readings.value } })
            }));
        }
    }
}
