//! A file of published cases as it is written. What is entered (sheet, changes, readings) has the published form of a
//! job's edits and is read by the core itself, so that what can't be read is refused as it would be from a person.

use std::collections::{BTreeMap, BTreeSet};

use serde::{Deserialize, Deserializer};
use serde_json::{Map, Value};
use wearbook_core::engine::{Part, PartKind};
use wearbook_core::measure::{Conformity, Entry, Phase, Quantity, Station};
use wearbook_core::sheet::SizeGroup;
use wearbook_core::work::Outcome;

use crate::data::Status;

/// One source with its cases.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Source {
    /// Manual and page.
    pub citation: String,
    /// How surely what it says is known.
    pub status: Vec<Status>,
    /// What a reader should know: what of the source does not apply, and why.
    #[serde(default)]
    pub remarks: Vec<String>,
    /// What differs from an ordinary in-line engine of four cylinders.
    #[serde(default)]
    pub engine: Map<String, Value>,
    /// Spec sheets by name.
    #[serde(default)]
    pub sheets: BTreeMap<String, Value>,
    /// Instruments.
    #[serde(default)]
    pub instruments: Vec<Value>,
    /// The cases.
    pub cases: Vec<Case>,
}

/// One case.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Case {
    /// What it is about.
    pub name: String,
    /// Where it differs from the file's.
    #[serde(default)]
    pub citation: Option<String>,
    /// Where it differs from the file's.
    #[serde(default)]
    pub status: Option<Vec<Status>>,
    /// What differs from the file's engine.
    #[serde(default)]
    pub engine: Map<String, Value>,
    /// Which sheet; the only one if not said, none where the file has none.
    #[serde(default)]
    pub sheet: Option<String>,
    /// Further changes in the published form of a job's edits.
    #[serde(default)]
    pub changes: Vec<Value>,
    /// Every part was looked at and found clean.
    #[serde(default)]
    pub looked_at: bool,
    /// Readings in the published form; `values` by place stands for several of them.
    #[serde(default)]
    pub readings: Vec<Map<String, Value>>,
    /// What must come out.
    pub expect: Expect,
}

/// What must come out. At least one thing.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub(crate) struct Expect {
    pub figures: Vec<ExpectFigure>,
    pub plans: Vec<ExpectPlan>,
    pub clearances: Vec<ExpectClearance>,
    pub orders: Vec<ExpectOrder>,
    pub read_back: Vec<ExpectReadBack>,
    pub decisions: Vec<ExpectDecision>,
    pub estimates: Vec<ExpectEstimate>,
    /// One entry is refused with a sentence that holds these words.
    pub refused: Option<String>,
    /// Words of each doubt about the sheet; an empty list says that there are none.
    pub doubts: Option<Vec<String>>,
    /// Words of each question about a reading; an empty list says that there are none.
    pub questions: Option<Vec<String>>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectFigure {
    pub part: Part,
    pub quantity: Quantity,
    #[serde(default)]
    pub station: Option<Station>,
    #[serde(default)]
    pub phase: Phase,
    /// The value, to its last digit.
    #[serde(default)]
    pub value: Option<Entry>,
    #[serde(default)]
    pub least: Option<Entry>,
    #[serde(default)]
    pub most: Option<Entry>,
    /// `null` says that there is none.
    #[serde(default, deserialize_with = "given")]
    pub verdict: Option<Option<Conformity>>,
    /// Words of the reason.
    #[serde(default)]
    pub because: Option<String>,
    /// Words of the limits.
    #[serde(default)]
    pub limits: Option<String>,
    /// The limits are a general rule's.
    #[serde(default)]
    pub general: Option<bool>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectPlan {
    pub group: SizeGroup,
    /// As in the published form: keep, polish, undersize-shells, machine, replace, open.
    pub action: String,
    /// Beyond standard, which is `0 in`; `null` says that there is none.
    #[serde(default, deserialize_with = "given")]
    pub size: Option<Option<Entry>>,
    #[serde(default)]
    pub settled: Option<bool>,
    #[serde(default)]
    pub decided_by: Option<Part>,
    #[serde(default)]
    pub because: Option<String>,
    /// Words of one thing that is missing.
    #[serde(default)]
    pub missing: Option<String>,
    /// Words of one notice.
    #[serde(default)]
    pub notice: Option<String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectClearance {
    pub part: Part,
    #[serde(default)]
    pub least: Option<Entry>,
    #[serde(default)]
    pub most: Option<Entry>,
    #[serde(default)]
    pub likely_least: Option<Entry>,
    #[serde(default)]
    pub likely_most: Option<Entry>,
    #[serde(default, deserialize_with = "given")]
    pub verdict: Option<Option<Conformity>>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectOrder {
    pub kind: PartKind,
    /// Held or free.
    pub state: String,
    #[serde(default)]
    pub size: Option<Entry>,
    #[serde(default)]
    pub quantity: Option<usize>,
    /// Words of one thing that it waits for.
    #[serde(default)]
    pub waits_for: Option<String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectReadBack {
    pub group: SizeGroup,
    pub confirmed: bool,
    /// Words of one problem.
    #[serde(default)]
    pub problem: Option<String>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectDecision {
    pub part: Part,
    pub outcome: Outcome,
}

/// What the rules of an estimate, as entered with the prices, say of a sum that was agreed to and a total.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectEstimate {
    /// As typed, in the currency of the prices.
    pub agreed: String,
    /// By how much it may be exceeded, as typed.
    #[serde(default)]
    pub allowed: Option<String>,
    /// As typed.
    #[serde(default)]
    pub total: Option<String>,
    /// Whether the customer must be asked before the total.
    #[serde(default)]
    pub must_ask: Option<bool>,
}

/// Tells `null`, which is something said, from a field that is not there.
fn given<'de, D: Deserializer<'de>, T: Deserialize<'de>>(from: D) -> Result<Option<T>, D::Error> {
    T::deserialize(from).map(Some)
}

impl Source {
    /// What is wrong with the file itself.
    pub(crate) fn faults(&self) -> Vec<String> {
        let mut faults = Vec::new();
        let mut fault = |wrong: bool, what: String| faults.extend(wrong.then_some(what));
        fault(self.citation.trim().is_empty(), "it cites nothing".into());
        fault(self.status.is_empty(), "it does not say how surely it is known".into());
        fault(self.cases.is_empty(), "it has no case".into());
        fault(self.remarks.iter().any(|remark| remark.trim().is_empty()), "a remark is empty".into());
        let mut names = BTreeSet::new();
        for case in &self.cases {
            fault(!names.insert(&case.name), format!("two cases are called “{}”", case.name));
            fault(case.expect.is_empty(), format!("{}: it expects nothing", case.name));
            fault(case.status.as_ref().is_some_and(Vec::is_empty), format!("{}: its status is empty", case.name));
            fault(
                case.citation.as_ref().is_some_and(|citation| citation.trim().is_empty()),
                format!("{}: it cites nothing", case.name),
            );
        }
        for name in self.sheets.keys() {
            let used = self.cases.iter().any(|case| self.sheet_name(case) == Some(name));
            fault(!used, format!("no case uses the sheet “{name}”"));
        }
        faults
    }

    /// The name of the sheet that a case uses.
    pub(crate) fn sheet_name<'a>(&'a self, case: &'a Case) -> Option<&'a str> {
        let only = self.sheets.keys().next().filter(|_| self.sheets.len() == 1);
        case.sheet.as_deref().or(only.map(String::as_str))
    }
}

impl Expect {
    fn is_empty(&self) -> bool {
        self.figures.is_empty()
            && self.plans.is_empty()
            && self.clearances.is_empty()
            && self.orders.is_empty()
            && self.read_back.is_empty()
            && self.decisions.is_empty()
            && self.estimates.is_empty()
            && self.refused.is_none()
            && self.doubts.is_none()
            && self.questions.is_none()
    }
}
