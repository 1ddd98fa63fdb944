//! Jobs, latest changed first.

use std::cmp::Reverse;

use serde::{Deserialize, Serialize};
use wearbook_store::{Asked, JobRow, Ledger, Recovered, Summary};

use crate::view::{SUMMARY, searched, summary, summary_of_open};
use crate::{Error, JobLine, Wearbook};

/// Which jobs.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// Words that must all stand in what was typed of the job, or in its engine; none finds every job.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<String>"))]
    pub find: String,
    /// Whether those that are closed are listed too, not only counted.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub finished: bool,
    /// How many open ones and how many finished ones at most; 12, if not said.
    #[serde(default = "most")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<usize>"))]
    pub most: usize,
}

/// Two screens of a small phone.
const fn most() -> usize {
    12
}

/// The most words that are searched for; what is typed beyond them changes nothing.
const WORDS: usize = 12;

/// The jobs that were asked for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "JobList"))]
pub struct Reply {
    /// Those that are open.
    pub open: Lines,
    /// Those that are closed.
    pub finished: Lines,
    /// What came of the recovery of a damaged database, if there was one.
    pub recovery: Option<Recovery>,
    /// When something was last entered here, if that is more than a day after what the clock says now.
    pub clock_back: Option<u64>,
    /// Since when what was entered is in no backup, if that is more than a week.
    pub backup_due: Option<u64>,
    /// Why the last backup failed, if it did.
    pub backup_failed: Option<String>,
}

/// What came of the recovery of a damaged database.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Recovery {
    /// The folder with the damaged files, beside the database.
    pub aside: String,
    /// How many entries were read.
    pub entries: usize,
    /// Of how many jobs.
    pub jobs: usize,
    /// How many of these may lack entries.
    pub short: usize,
}

/// Some jobs of a kind.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Lines {
    /// The latest changed ones.
    pub lines: Vec<JobLine>,
    /// How many there are of which this is so.
    pub found: usize,
}

/// Lists jobs. Of those that have changed since the last time a summary is made anew; all others are only read.
///
/// # Errors
/// What the store says.
pub fn act(book: &Wearbook, Arguments { find, finished, most }: Arguments) -> Result<Reply, Error> {
    let words: Vec<String> = searched(&find).split(' ').filter(|word| !word.is_empty()).take(WORDS).map(str::to_owned).collect();
    let listed = book.summarised(|ledger| {
        let of = |is_open| ledger.summaries(Asked { is_open, words: &words, most: if is_open || finished { most } else { 0 } }).map_err(Error::from);
        Ok((of(true)?, of(false)?))
    });
    let (open, closed) = match listed {
        Ok(listed) => listed,
        // A disk that is full takes no summaries, damage hides some, and the list must be there all the same.
        Err(_) => unkept(book, &words, finished, most)?,
    };
    Ok(Reply { open: lines(open)?, finished: lines(closed)?, recovery: recovery(book), clock_back: clock_back(book), backup_due: book.backup_due().ok().flatten(), backup_failed: book.backup().ok().and_then(|backup| backup.failed) })
}

/// What is damaged must not keep the list away, so without an answer nothing is told.
fn recovery(book: &Wearbook) -> Option<Recovery> {
    let Recovered { aside, jobs, short } = book.store.recovered().ok()??;
    Some(Recovery { aside, entries: jobs.values().sum(), jobs: jobs.len(), short: short.len() })
}

fn clock_back(book: &Wearbook) -> Option<u64> {
    const DAY: u64 = 24 * 60 * 60 * 1000;
    let latest = book.store.read::<_, Error>(|ledger| Ok(ledger.latest_at()?)).ok()?;
    (latest > book.clock.now_millis().saturating_add(DAY)).then_some(latest)
}

type Found = (Vec<Summary>, usize);

/// The same without anything kept: every job unfolded.
fn unkept(book: &Wearbook, words: &[String], finished: bool, most: usize) -> Result<(Found, Found), Error> {
    let rows = book.store.read::<_, Error>(|ledger| Ok(ledger.jobs_as_far_as_read()?))?;
    let mut all: Vec<Summary> = rows.into_iter().map(|row| Ok(book.summary_now(row)?.1)).collect::<Result<_, Error>>()?;
    all.retain(|own| words.iter().all(|word| own.found_by.contains(word)));
    all.sort_by_key(|own| (Reverse(own.row.changed_at), own.row.id));
    let (open, closed): (Vec<Summary>, Vec<Summary>) = all.into_iter().partition(|own| own.is_open);
    let cut = |all: Vec<Summary>, most: usize| {
        let found = all.len();
        (all.into_iter().take(most).collect(), found)
    };
    Ok((cut(open, most), cut(closed, if finished { most } else { 0 })))
}

fn lines((summaries, found): Found) -> Result<Lines, Error> {
    let lines: Result<Vec<JobLine>, Error> = summaries.iter().map(line).collect();
    Ok(Lines { lines: lines?, found })
}

/// A summary as a line.
pub(super) fn line(summary: &Summary) -> Result<JobLine, Error> {
    serde_json::from_str(&summary.content).map_err(|_| wearbook_store::StoreError::Damaged.into())
}

/// How many summaries are kept at once.
const PORTION: usize = 50;

impl Wearbook {
    /// Reads summaries once those that are missing are made: what is long there takes no time. They are worked out while
    /// nothing is locked.
    pub(super) fn summarised<R>(&self, read: impl Fn(&Ledger<'_>) -> Result<R, Error>) -> Result<R, Error> {
        let missing = self.store.read::<_, Error>(|ledger| Ok(ledger.jobs_without_summary(SUMMARY)?))?;
        // Most often it is the one from which the person comes back.
        let is_one = missing.len() == 1;
        for portion in missing.chunks(PORTION) {
            let mut made = Vec::new();
            for row in portion {
                let of_open = is_one.then(|| {
                    self.look(row.id, |open| (Some(open.log.edits().len()), summary_of_open(*row, open)))
                });
                made.push(match of_open {
                    Some(Ok((edits, summary))) => (edits, summary?),
                    // Of a damaged job, or one taken away meanwhile, what can be read.
                    _ => self.summary_now(*row)?,
                });
            }
            self.store.write::<_, Error>(|ledger| {
                for (edits, summary) in &made {
                    // What came meanwhile is not told in it: it is made anew the next time.
                    if edits.is_none_or(|edits| ledger.count_edits(summary.row.id).is_ok_and(|count| count == edits)) {
                        ledger.keep_summary(SUMMARY, summary)?;
                    }
                }
                Ok(())
            })?;
        }
        self.store.read(read)
    }

    /// The summary of a job as it stands, and of how many edits; or of what of it can be read.
    fn summary_now(&self, row: JobRow) -> Result<(Option<usize>, Summary), Error> {
        let (read, horizon) = self.store.read::<_, Error>(|ledger| {
            // Where not even this can be read, nothing is ahead.
            let horizon = ledger.horizon(self.clock.now_millis()).unwrap_or_default();
            Ok((ledger.edits_as_far_as_read(row.id), horizon))
        })?;
        if !read.is_whole {
            // That it is damaged is shown, whether or not it could be noted for the next start.
            let _ = self.store.note_damage();
        }
        Ok((read.is_whole.then_some(read.edits.len()), summary(row, &read, horizon)?))
    }
}
