//! What the last look at a job worked out, kept for the next: after one more tap most of it is still so.

use std::sync::{Mutex, MutexGuard, PoisonError};

use wearbook_core::cause::network::Memo;
use wearbook_store::JobId;

/// The memory of the job that was looked at last. A shop works at one engine at a time, so one is enough, and nothing
/// grows. Without it every answer is the same, only later.
#[derive(Debug, Default)]
pub(crate) struct OpenJob(Mutex<Option<(JobId, Memo)>>);

impl OpenJob {
    /// Lends what is remembered of a job. Nothing is locked meanwhile: a second look at the same time begins from nothing.
    pub(crate) fn look<R>(&self, job: JobId, with: impl FnOnce(&mut Memo) -> R) -> R {
        let remembered = self.lock().take_if(|(of, _)| *of == job);
        let mut memo = remembered.map(|(_, memo)| memo).unwrap_or_default();
        let seen = with(&mut memo);
        *self.lock() = Some((job, memo));
        seen
    }

    /// What a look that broke off has left behind is as good as any: it only saves time.
    fn lock(&self) -> MutexGuard<'_, Option<(JobId, Memo)>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
