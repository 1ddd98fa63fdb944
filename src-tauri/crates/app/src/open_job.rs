//! The job that was looked at last, kept for the next time: after one more tap most of it is still so.

use std::sync::{Mutex, MutexGuard, PoisonError};

use wearbook_core::assess::{self, Assessment, assess_with};
use wearbook_core::cause::{Memo, NextLook};
use wearbook_core::job::{DeviceId, Edit, Log, PhotoId, RecordedChange};
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
    pub(crate) fn look<R>(
        &self,
        store: &Store,
        now: u64,
        job: JobId,
        with: impl FnOnce(&mut Open) -> R,
    ) -> Result<R, Error> {
        let mut open = self.take(job);
        catch_up(&mut open.log, store, now, job)?;
        Ok(self.keep(job, open, with))
    }

    /// Appends to a job, all or nothing, then looks at it. What is to be appended is worked out from the job as it stands,
    /// while nothing is locked; should an import have appended meanwhile, it is worked out anew.
    pub(crate) fn append<R>(
        &self,
        store: &Store,
        job: JobId,
        new: &New<'_>,
        with: impl FnOnce(&mut Open) -> R,
    ) -> Result<R, Error> {
        loop {
            let mut open = self.take(job);
            let appended = try_to_append(&mut open.log, store, job, new);
            match appended {
                Ok(true) => return Ok(self.keep(job, open, with)),
                refused => {
                    // Some of what is not in the store may be in the log.
                    self.keep(job, Open { log: Log::default(), ..open }, |_| ());
                    refused?;
                }
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

/// Works edits out of a job as it stands, for a device.
pub(crate) type Entering<'a> = dyn Fn(&mut Log, DeviceId) -> Result<Vec<Edit>, Error> + 'a;

/// What is to be appended to a job.
pub(crate) struct New<'a> {
    /// When, in milliseconds since 1970-01-01 UTC.
    pub(crate) now: u64,
    /// Works the edits out, and adds them to the log.
    pub(crate) edits: &'a Entering<'a>,
    /// Keeps what they name, before they are appended.
    pub(crate) before: &'a dyn Fn(&Ledger<'_>) -> Result<(), Error>,
}

/// Says whether nobody else appended meanwhile.
fn try_to_append(log: &mut Log, store: &Store, job: JobId, new: &New<'_>) -> Result<bool, Error> {
    let device = catch_up(log, store, new.now, job)?;
    let known = log.edits().len();
    let edits = (new.edits)(log, device)?;
    store.write(|ledger| {
        if ledger.count_edits(job)? != known {
            return Ok(false);
        }
        (new.before)(ledger)?;
        for photo in edits.iter().filter_map(photo_of) {
            if ledger.picture(photo)?.is_none() {
                return Err(Error::change("This photo has not been taken in here: add the picture itself."));
            }
        }
        ledger.entered_at(new.now)?;
        ledger.append(job, &edits)?;
        Ok(true)
    })
}

fn photo_of(edit: &Edit) -> Option<&PhotoId> {
    match &edit.change {
        RecordedChange::Known(change) => change.photo(),
        RecordedChange::Unknown(_) => None,
    }
}

/// Reads what has come since, by an import, and in which words the shop is told of it. Edits are
/// never changed and never removed, so as long as their number is right, those that are known are those that are there.
/// Nothing is folded while the store is locked.
fn catch_up(log: &mut Log, store: &Store, now: u64, job: JobId) -> Result<DeviceId, Error> {
    let known = log.edits().len();
    let latest = log.latest();
    let (edits, are_all, terms, horizon, device) = store.read::<_, Error>(|ledger| {
        let since = ledger.edits_after(job, latest)?;
        let (terms, horizon, device) = (Settings::load(ledger)?.terms, ledger.horizon(now)?, ledger.device()?);
        Ok(match known + since.len() == ledger.count_edits(job)? {
            true => (since, false, terms, horizon, device),
            false => (ledger.edits(job)?, true, terms, horizon, device),
        })
    })?;
    if are_all {
        *log = Log::within(edits, horizon);
    } else {
        log.look_from(horizon);
        log.extend(edits);
    }
    log.speak(terms);
    Ok(device)
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::job::{Change, EditId, Job, OnIntake, TextField};
    use wearbook_store::StoreError;

    fn fill(n: u64) -> Edit {
        let change = OnIntake::Fill { field: TextField::Remarks, text: n.to_string() };
        Edit { id: EditId::next(None, n, DeviceId(n)), change: RecordedChange::Known(Change::OnIntake(change)) }
    }

    #[test]
    fn what_the_store_holds_is_the_truth() {
        let dir = tempfile::tempdir().unwrap();
        let here = Store::open(dir.path()).unwrap();
        let job = here.write::<_, StoreError>(|ledger| ledger.create_job(1)).unwrap();
        let open_job = OpenJob::default();
        let check = |because: &str| {
            let stored = here.read::<_, StoreError>(|ledger| ledger.edits(job)).unwrap();
            let look = |open: &mut Open| (open.log.edits().to_vec(), open.log.job().clone());
            assert_eq!(open_job.look(&here, 1_000, job, look), Ok((stored.clone(), Job::fold(&stored))), "{because}");
        };
        check("nothing is there");
        for n in [50, 90, 20, 70, 99] {
            here.write::<_, StoreError>(|ledger| ledger.append(job, &[fill(n)])).unwrap();
            check("an import appended, some of it earlier than what was known");
        }
        let append = |edit: Edit, answer: Result<(), Error>| {
            let edits = |log: &mut Log, _: DeviceId| {
                log.extend([edit.clone()]);
                Ok(vec![edit.clone()])
            };
            open_job.append(&here, job, &New { now: 1, edits: &edits, before: &|_| answer.clone() }, |_| ())
        };
        let refusal = Error::change("Refused.");
        assert_eq!(append(fill(100), Err(refusal.clone())), Err(refusal));
        check("what was refused is not there");
        here.write::<_, StoreError>(|ledger| ledger.append(job, &[fill(101)])).unwrap();
        check("as many as were thought to be there, and not the same");
        assert_eq!(append(fill(102), Ok(())), Ok(()));
        check("appended here");
        let tries = std::cell::Cell::new(0);
        let edits = |log: &mut Log, _: DeviceId| {
            tries.set(tries.get() + 1);
            // The store can be used meanwhile: nothing holds its lock.
            let at_once = if tries.get() == 1 { vec![fill(103)] } else { vec![] };
            here.write::<_, StoreError>(|ledger| ledger.append(job, &at_once)).unwrap();
            log.extend([fill(104)]);
            Ok(vec![fill(104)])
        };
        open_job.append(&here, job, &New { now: 1, edits: &edits, before: &|_| Ok(()) }, |_| ()).unwrap();
        assert_eq!(tries.get(), 2, "worked out anew after an import appended");
        check("appended beside an import");
    }
}
