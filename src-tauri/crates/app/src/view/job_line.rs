//! A job as it stands in the list.

use serde::{Deserialize, Serialize};
use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;
use wearbook_core::assess::assess;
use wearbook_core::engine::{Engine, Part};
use wearbook_core::job::{EditId, Horizon, Job, TextField};
use wearbook_core::waiting::{Waiting, waiting};
use wearbook_store::{JobId, JobRow, ReadEdits, Summary};

use crate::Error;
use crate::open_job::Open;

/// A job in one line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct JobLine {
    /// The job.
    pub job: JobId,
    /// Whose engine it is; may be empty.
    pub customer: String,
    /// What the engine came out of; may be empty.
    pub machine: String,
    /// The engine's number; may be empty.
    pub number: String,
    /// The arrangement in words, once entered.
    pub engine: Option<String>,
    /// When it was last changed: milliseconds since 1970-01-01 UTC.
    pub changed_at: u64,
    /// When it was closed: milliseconds since 1970-01-01 UTC; none while it is open.
    pub closed_at: Option<u64>,
    /// Whether the customer refused the work.
    pub refused: bool,
    /// Parts that were looked at.
    pub looked: usize,
    /// Parts of the engine.
    pub parts: usize,
    /// Photos taken in.
    pub photos: usize,
    /// What it waits for, in the order in which a bench takes it up.
    pub waits: Vec<Waiting>,
    /// Whether some of its entries can't be read.
    #[serde(default)]
    pub damaged: bool,
}

/// The version of what is kept of a job for lists: raise it when a line tells another thing of the same job.
pub(crate) const SUMMARY: u32 = 2;

/// What is kept of a job for lists; nothing is worked out for it but the assessment of one that is not over.
pub(crate) fn summary(row: JobRow, read: &ReadEdits, horizon: Horizon) -> Result<Summary, Error> {
    let job = Job::fold_within(&read.edits, horizon);
    // Most jobs are over: of those nothing has to be worked out. Nor of one of which not all is known.
    let is_over = job.closed.is_some() || job.refusal.is_some() || !read.is_whole;
    let waits = if is_over { vec![] } else { waiting(&job, &assess(&job)) };
    summary_of(row, &job, waits, !read.is_whole)
}

/// The same of the open job, most of which is known.
pub(crate) fn summary_of_open(row: JobRow, open: &mut Open) -> Result<Summary, Error> {
    let waits = open.waits();
    summary_of(row, open.log.job(), waits, false)
}

fn summary_of(row: JobRow, job: &Job, waits: Vec<Waiting>, damaged: bool) -> Result<Summary, Error> {
    let line = JobLine { damaged, ..JobLine::new(row, job, waits) };
    let content = serde_json::to_string(&line).map_err(|error| Error::new("answer", error.to_string()))?;
    let texts = job.texts.values().map(String::as_str).chain(line.engine.as_deref());
    let found_by = plain(&texts.collect::<Vec<_>>().join(" "));
    Ok(Summary { row, is_open: line.closed_at.is_none(), engine: compared(&line.number), found_by, content })
}

/// Small letters without accents, single spaces between words.
pub(crate) fn plain(text: &str) -> String {
    let letters: String = text.nfd().filter(|letter| !is_combining_mark(*letter)).collect();
    letters.to_lowercase().split_whitespace().collect::<Vec<_>>().join(" ")
}

/// An engine's number as it is compared: however it is spaced, dotted or written large.
pub(crate) fn compared(number: &str) -> String {
    plain(number).chars().filter(|letter| letter.is_alphanumeric()).collect()
}

impl JobLine {
    fn new(row: JobRow, job: &Job, waits: Vec<Waiting>) -> Self {
        let engine = job.arrangement.clone().and_then(|arrangement| Engine::new(arrangement).ok());
        let parts = engine.as_ref().map(Engine::parts).unwrap_or_default();
        let outside = engine.as_ref().map(Engine::outside).unwrap_or_default();
        let records = |of: &[Part]| of.iter().filter_map(|part| job.parts.get(part)).collect::<Vec<_>>();
        let text = |field| job.texts.get(&field).cloned().unwrap_or_default();
        Self {
            job: row.id,
            customer: text(TextField::Customer),
            machine: text(TextField::Machine),
            number: text(TextField::EngineNumber),
            engine: engine.as_ref().map(|engine| engine.arrangement().summary()),
            changed_at: row.changed_at,
            closed_at: job.closed.map(EditId::millis),
            refused: job.refusal.is_some(),
            looked: records(parts).into_iter().filter(|record| record.looked_at()).count(),
            parts: parts.iter().filter(|part| job.seen_with(**part).is_none()).count(),
            photos: [records(parts), records(outside)].concat().iter().map(|record| record.photos.len()).sum(),
            waits,
            damaged: false,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::job::Edit;

    #[test]
    fn words_are_found_however_they_are_written() {
        assert_eq!(plain("  Zoë\n ÅNGSTRÖM-Werft "), "zoe angstrom-werft");
        assert_eq!(compared(" No. 40 117/b"), "no40117b");
        assert_eq!(compared("…"), "");
    }

    /// What is kept must be made anew when a newer program would tell another thing: if this fails because a line tells
    /// more or other than before, raise [`SUMMARY`], then write down here what is told now.
    #[test]
    fn another_content_needs_another_version() {
        let tag = r#"{"do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 4}"#;
        let fill = r#"{"do": "fill", "field": "engine-number", "text": "A 1"}"#;
        let arrangement = serde_json::to_string(&wearbook_core::engine::Arrangement::inline(2)).unwrap();
        let arrange = format!(r#"{{"do": "arrange", "arrangement": {arrangement}}}"#);
        let edits: Vec<Edit> = [arrange.as_str(), tag, fill]
            .iter()
            .zip(1..)
            .map(|(change, n)| Edit {
                id: EditId::next(None, n, wearbook_core::job::DeviceId(1)),
                change: serde_json::from_str(change).unwrap(),
            })
            .collect();
        let row = JobRow { id: JobId::from_bits(1), changed_at: 3 };
        let read = ReadEdits { edits, is_whole: true };
        let kept = summary(row, &read, Horizon::default()).unwrap();
        let line: serde_json::Value = serde_json::from_str(&kept.content).unwrap();
        let told: Vec<&String> = line.as_object().unwrap().keys().collect();
        assert_eq!((SUMMARY, told.len(), kept.engine.as_str()), (2, 13, "a1"), "{told:?}");
        let line: JobLine = serde_json::from_value(line.clone()).unwrap();
        let waits: Vec<String> = line.waits.iter().map(|own| format!("{:?} {}", own.waits_for, own.count)).collect();
        assert_eq!(waits.first().map(String::as_str), Some("Look 56"), "{waits:?}");
    }
}
