//! A job as the page works with it: what was entered, what follows, what undo would take back.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;
use wearbook_core::assess::Assessment;
use wearbook_core::engine::{Arrangement, Engine, Part, Plan};
use wearbook_core::job::{Ancillary, Answer, Complaint, ConfirmedSize, EditId, HistoryFact, Job};
use wearbook_core::job::{OrderedStripDown, PhotoId, Refusal, TextField};
use wearbook_core::measure::{Instrument, Length};
use wearbook_core::money::{EstimateLine, PriceList, StripDownLine, StripDownOrder};
use wearbook_core::sheet::{GeneralRule, Sheet, SheetWords, SizeGroup};
use wearbook_store::JobId;

use super::undo::{Said, Undo};
use crate::open_job::Open;

/// A size that the machinist confirmed.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Confirmed {
    /// The size beyond standard, in nanometres.
    pub size: Length,
    /// Who confirmed it; may be empty.
    pub by: String,
}

impl Confirmed {
    fn of(confirmed: &ConfirmedSize) -> Self {
        Self { size: confirmed.size.length, by: confirmed.by.clone() }
    }
}

/// What stands before anything is opened.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct StripDownView {
    /// The order as it would be made now, on the shop's usual terms.
    pub to_order: StripDownOrder,
    /// The order that was made, with its answer.
    pub ordered: Option<OrderedStripDown>,
    /// What that costs.
    pub lines: Vec<StripDownLine>,
}

impl StripDownView {
    fn of(job: &Job) -> Self {
        let ordered = job.strip_down().cloned();
        let lines = ordered.as_ref().map(|ordered| ordered.order.lines()).unwrap_or_default();
        Self { to_order: job.strip_down_to_order(), ordered, lines }
    }
}

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
    /// What the customer complained of.
    pub complaints: BTreeSet<Complaint>,
    /// What came with the engine.
    pub ancillaries: Vec<Ancillary>,
    /// The layout, once entered.
    pub arrangement: Option<Arrangement>,
    /// The engine drawn as a plan, once the layout is entered.
    pub plan: Option<Plan>,
    /// The shop's instruments, as far as this job knows them.
    pub instruments: Vec<Instrument>,
    /// What the engine's manual says.
    pub sheet: Sheet,
    /// The same in words.
    pub sheet_words: SheetWords,
    /// What general rules give where the sheet is silent.
    pub general_rules: Vec<GeneralRule>,
    /// To which size a group had been ground or bored before; standard where nothing is noted.
    pub found_sizes: BTreeMap<SizeGroup, String>,
    /// The marks by which shells are graded, read off housings and journals.
    pub grade_marks: BTreeMap<Part, String>,
    /// The main bores whose caps are renewed.
    pub renewed_caps: BTreeSet<Part>,
    /// The photos that were picked for the customer.
    pub shown_photos: Vec<(Part, PhotoId)>,
    /// Sizes that the machinist confirmed.
    pub confirmed_sizes: BTreeMap<SizeGroup, Confirmed>,
    /// Sizes that a person chose.
    pub chosen_sizes: BTreeMap<SizeGroup, String>,
    /// What this job is charged at.
    pub prices: PriceList,
    /// The estimate that the customer was given before the engine was opened.
    pub estimate: Vec<EstimateLine>,
    /// What stands before anything is opened.
    pub strip_down: StripDownView,
    /// That the customer refused the work, if so.
    pub refusal: Option<Refusal>,
    /// When the job was closed: milliseconds since 1970-01-01 UTC; none while it is open.
    pub closed_at: Option<u64>,
    /// All that follows.
    pub assessment: Assessment,
    /// The edit that undo would take back.
    pub last_edit: Option<EditId>,
    /// The undo that redo would take back.
    pub redo: Option<EditId>,
    /// What undo would take back, in words.
    pub last_said: Option<Said>,
    /// What redo would do again, in words.
    pub redo_said: Option<Said>,
}

impl JobView {
    pub(crate) fn new(id: JobId, open: &mut Open) -> Self {
        let assessment = open.assessment();
        let log = &open.log;
        let job = log.job();
        let engine = log.engine().and_then(Result::ok);
        let undo = Undo::of(log);
        Self {
            job: id,
            texts: job.texts.clone(),
            history: job.history.clone(),
            complaints: job.complaints.clone(),
            ancillaries: job.ancillaries.clone(),
            arrangement: job.arrangement.clone(),
            plan: engine.map(Engine::plan),
            instruments: job.instruments.values().cloned().collect(),
            sheet: job.sheet.clone(),
            sheet_words: job.sheet.in_words(job.terms),
            general_rules: engine.map_or_else(Vec::new, |engine| job.sheet.standing_in(engine)),
            found_sizes: job.found_sizes.iter().map(|(group, size)| (*group, size.to_string())).collect(),
            grade_marks: job.grade_marks.clone(),
            renewed_caps: job.renewed_caps.clone(),
            shown_photos: job.shown_photos.clone(),
            confirmed_sizes: job.confirmed_sizes.iter().map(|(group, own)| (*group, Confirmed::of(own))).collect(),
            chosen_sizes: job.chosen_sizes.iter().map(|(group, size)| (*group, size.size.to_string())).collect(),
            prices: job.prices.clone(),
            estimate: job.estimate.clone(),
            strip_down: StripDownView::of(job),
            refusal: job.refusal,
            closed_at: job.closed.map(EditId::millis),
            assessment,
            last_edit: undo.last_edit,
            redo: undo.redo,
            last_said: Said::of(log, undo.last_edit),
            redo_said: Said::taken_back_by(log, undo.redo),
        }
    }
}
