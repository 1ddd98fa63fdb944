//! A job as the page works with it: what was entered, what follows, what undo would take back.

use std::collections::BTreeMap;

use serde::Serialize;
use wearbook_core::assess::{Assessment, assess_with};
use wearbook_core::cause::network::Memo;
use wearbook_core::engine::{Arrangement, Engine, Plan};
use wearbook_core::job::{Answer, Edit, EditId, HistoryFact, Job, TextField};
use wearbook_core::measure::Instrument;
use wearbook_core::money::{EstimateLine, PriceList};
use wearbook_core::sheet::{GeneralRule, Sheet, SizeGroup};
use wearbook_store::JobId;

use super::undo::Undo;

/// A job, whole.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct JobView {
    /// The job.
    pub job: JobId,
    /// The lines of its sheet that are filled in.
    pub texts: BTreeMap<TextField, String>,
    /// What is known of the engine's past.
    pub history: BTreeMap<HistoryFact, Answer>,
    /// The layout, once entered.
    pub arrangement: Option<Arrangement>,
    /// The engine drawn as a plan, once the layout is entered.
    pub plan: Option<Plan>,
    /// The shop's instruments, as far as this job knows them.
    pub instruments: Vec<Instrument>,
    /// What the engine's manual says.
    pub sheet: Sheet,
    /// What general rules give where the sheet is silent.
    pub general_rules: Vec<GeneralRule>,
    /// To which size a group had been ground or bored before; standard where nothing is noted.
    pub found_sizes: BTreeMap<SizeGroup, String>,
    /// Sizes that a person chose.
    pub chosen_sizes: BTreeMap<SizeGroup, String>,
    /// What this job is charged at.
    pub prices: PriceList,
    /// The estimate that the customer was given before the engine was opened.
    pub estimate: Vec<EstimateLine>,
    /// When the job was closed: milliseconds since 1970-01-01 UTC; none while it is open.
    pub closed_at: Option<u64>,
    /// All that follows.
    pub assessment: Assessment,
    /// The edit that undo would take back.
    pub last_edit: Option<EditId>,
    /// The undo that redo would take back.
    pub redo: Option<EditId>,
}

impl JobView {
    /// `memo` holds what an earlier look at the same job worked out.
    pub(crate) fn new(id: JobId, edits: &[Edit], memo: &mut Memo) -> Self {
        let job = Job::fold(edits);
        let engine = job.arrangement.clone().and_then(|arrangement| Engine::new(arrangement).ok());
        let undo = Undo::of(edits, &job);
        Self {
            job: id,
            general_rules: engine.as_ref().map_or_else(Vec::new, |engine| job.sheet.standing_in(engine)),
            plan: engine.map(|engine| engine.plan()),
            assessment: assess_with(&job, memo),
            last_edit: undo.last_edit,
            redo: undo.redo,
            instruments: job.instruments.into_values().collect(),
            sheet: job.sheet,
            prices: job.prices,
            estimate: job.estimate,
            closed_at: job.closed.map(EditId::millis),
            found_sizes: job.found_sizes.into_iter().map(|(group, size)| (group, size.to_string())).collect(),
            chosen_sizes: job.chosen_sizes.into_iter().map(|(group, size)| (group, size.size.to_string())).collect(),
            texts: job.texts,
            history: job.history,
            arrangement: job.arrangement,
        }
    }
}
