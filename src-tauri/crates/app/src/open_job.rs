//! The job that was looked at last, kept for the next time: after one more tap most of it is still so.

use std::sync::{Mutex, MutexGuard, PoisonError};

use wearbook_core::assess::{self, Assessment, assess_with};
use wearbook_core::cause::{Memo, NextLook};
use wearbook_core::job::Log;
use wearbook_core::waiting::{Waiting, waiting};
use wearbook_store::{JobId, Ledger, Store};

use crate::{Error, Settings};

/// A shop works at one engine at a time, so one job is enough, and nothing grows. Without it every answer is the same,
/// only later: what the store holds is the truth.
#[derive(Debug, Default)]
pub(crate) struct OpenJob(Mutex<Option<(JobId, Open)>>);

/// What is known of a job.
#[derive(Debug, Default)]
pub(crate) struct Open {
    /// Its edits, folded.
    pub(crate) log: Log,
    /// What the last assessment worked out.
    memo: Memo,
    /// What it waited for when it had so many edits: the list of jobs asks for it when the person comes back.
    waits: Option<(usize, Vec<Waiting>)>,
}

impl Open {
    /// All that follows from it.
    pub(crate) fn assessment(&mut self) -> Assessment {
        let assessment = assess_with(&self.log, &mut self.memo);
        self.waits = Some((self.log.edits().len(), waiting(self.log.job(), &assessment)));
        assessment
    }

    /// The look that would settle most.
    pub(crate) fn next_look(&mut self) -> Option<NextLook> {
        assess::next_look(self.log.job(), &mut self.memo)
    }

    /// What it waits for.
    pub(crate) fn waits(&mut self) -> Vec<Waiting> {
        let is_known = self.waits.as_ref().is_some_and(|(edits, _)| *edits == self.log.edits().len());
        if !is_known {
            self.assessment();
        }
        self.waits.as_ref().map(|(_, waits)| waits.clone()).unwrap_or_default()
    }
}

impl OpenJob {
    /// Looks at a job as it stands in the store.
    pub(crate) fn look<R>(&self, store: &Store, job: JobId, with: impl FnOnce(&mut Open) -> R) -> Result<R, Error> {
        let mut open = self.take(job);
        store.read(|ledger| catch_up(&mut open.log, ledger, job))?;
        Ok(self.keep(job, open, with))
    }

    /// Appends to a job, all or nothing, then looks at it. Whoever appends to the ledger adds the same to the log.
    pub(crate) fn append<R>(
        &self,
        store: &Store,
        job: JobId,
        append: impl FnOnce(&Ledger<'_>, &mut Log) -> Result<(), Error>,
        with: impl FnOnce(&mut Open) -> R,
    ) -> Result<R, Error> {
        let mut open = self.take(job);
        let appended = store.write(|ledger| {
            catch_up(&mut open.log, ledger, job)?;
            append(ledger, &mut open.log)
        });
        match appended {
            Ok(()) => Ok(self.keep(job, open, with)),
            Err(refused) => {
                // Some of what is not in the store may be in the log.
                self.keep(job, Open { log: Log::default(), ..open }, |_| ());
                Err(refused)
            }
        }
    }

    /// Lends what is remembered of a job. Nothing is locked meanwhile: a second look at the same time begins from nothing.
    fn take(&self, job: JobId) -> Open {
        self.lock().take_if(|(of, _)| *of == job).map(|(_, open)| open).unwrap_or_default()
    }

    fn keep<R>(&self, job: JobId, mut open: Open, with: impl FnOnce(&mut Open) -> R) -> R {
        let seen = with(&mut open);
        *self.lock() = Some((job, open));
        seen
    }

    /// What a look that broke off has left behind is as good as any: it only saves time.
    fn lock(&self) -> MutexGuard<'_, Option<(JobId, Open)>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Reads what has come since, by another program or by an import, and in which words the shop is told of it. Edits are
/// never changed and never removed, so as long as their number is right, those that are known are those that are there.
fn catch_up(log: &mut Log, ledger: &Ledger<'_>, job: JobId) -> Result<(), Error> {
    let since = ledger.edits_after(job, log.latest())?;
    if log.edits().len() + since.len() == ledger.count_edits(job)? {
        log.extend(since);
    } else {
        *log = Log::new(ledger.edits(job)?);
    }
    log.speak(Settings::load(ledger)?.terms);
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, OnIntake, RecordedChange, TextField};
    use wearbook_store::StoreError;

    fn fill(n: u64) -> Edit {
        let change = OnIntake::Fill { field: TextField::Remarks, text: n.to_string() };
        Edit { id: EditId::next(None, n, DeviceId(n)), change: RecordedChange::Known(Change::OnIntake(change)) }
    }

    #[test]
    fn what_the_store_holds_is_the_truth() {
        let dir = tempfile::tempdir().unwrap();
        let (here, elsewhere) = (Store::open(dir.path()).unwrap(), Store::open(dir.path()).unwrap());
        let job = here.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap();
        let open_job = OpenJob::default();
        let check = |because: &str| {
            let stored = here.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap();
            let look = |open: &mut Open| (open.log.edits().to_vec(), open.log.job().clone());
            assert_eq!(open_job.look(&here, job, look), Ok((stored.clone(), Job::fold(&stored))), "{because}");
        };
        check("nothing is there");
        for n in [50, 90, 20, 70, 99] {
            elsewhere.write::<_, StoreError>(|ledger| ledger.append(job, &[fill(n)])).unwrap();
            check("another program appended, some of it earlier than what was known");
        }
        let append = |edit: Edit, answer: Result<(), Error>| {
            let append = |ledger: &Ledger<'_>, log: &mut Log| {
                ledger.append(job, std::slice::from_ref(&edit))?;
                log.extend([edit]);
                answer
            };
            open_job.append(&here, job, append, |_| ())
        };
        let refusal = Error::change("Refused.");
        assert_eq!(append(fill(100), Err(refusal.clone())), Err(refusal));
        check("what was refused is not there");
        elsewhere.write::<_, StoreError>(|ledger| ledger.append(job, &[fill(101)])).unwrap();
        check("as many as were thought to be there, and not the same");
        assert_eq!(append(fill(102), Ok(())), Ok(()));
        check("appended here");
    }
}
