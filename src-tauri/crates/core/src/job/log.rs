//! A job's log, folded once: each edit that follows is applied to what is known already.

use super::known::Job;
use super::{Edit, EditId, RecordedChange};
use crate::engine::{Engine, Impossible};
use crate::words::Terms;

/// The edits of a job and all that is known from them: at any time the same as [`Job::fold`] of these edits.
#[derive(Debug, Clone, Default)]
pub struct Log {
    edits: Vec<Edit>,
    job: Job,
    engine: Option<Result<Engine, Impossible>>,
}

impl Log {
    /// Of edits in any order.
    pub fn new(edits: Vec<Edit>) -> Self {
        let mut log = Self::default();
        log.extend(edits);
        log
    }

    /// Its edits in the order of their ids.
    pub fn edits(&self) -> &[Edit] {
        &self.edits
    }

    /// All that is known from them.
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// The engine, once its arrangement is entered.
    ///
    /// # Errors
    /// [`Impossible`] says what can't be true of an arrangement that came from elsewhere.
    pub fn engine(&self) -> Option<Result<&Engine, &Impossible>> {
        self.engine.as_ref().map(Result::as_ref)
    }

    /// From now on all of it is told in these words.
    pub fn speak(&mut self, terms: Terms) {
        if self.job.terms != terms {
            self.job.terms = terms;
            self.engine = None;
            self.arrange();
        }
    }

    /// Derives the engine anew where the arrangement is another.
    fn arrange(&mut self) {
        let known = self.engine().and_then(Result::ok).map(Engine::arrangement);
        if known != self.job.arrangement.as_ref() {
            let speaking = |arrangement| Engine::speaking(arrangement, self.job.terms);
            self.engine = self.job.arrangement.clone().map(speaking);
        }
    }

    /// The latest edit, of whatever device.
    pub fn latest(&self) -> Option<EditId> {
        self.edits.last().map(|edit| edit.id)
    }
}

/// Takes in further edits. One that takes another back, or that came late from another device, changes what followed
/// from those before it: only then all are folded anew.
impl Extend<Edit> for Log {
    fn extend<E: IntoIterator<Item = Edit>>(&mut self, edits: E) {
        let mut follows = true;
        for edit in edits {
            follows &= self.latest() < Some(edit.id) && edit.change.undoes().is_none();
            match &edit.change {
                _ if !follows => {}
                RecordedChange::Known(change) => self.job.apply(edit.id, change),
                RecordedChange::Unknown(_) => self.job.unknown.push(edit.id),
            }
            self.edits.push(edit);
        }
        if !follows {
            self.edits.sort_by_key(|edit| edit.id);
            self.job = Job::fold(&self.edits).speaking(self.job.terms);
        }
        self.arrange();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::testing::any_log;
    use proptest::prelude::*;

    proptest! {
        /// Undo and redo, edits of other devices that come late or twice, edits of a newer version, in whatever portions.
        #[test]
        fn a_log_that_grows_tells_the_same_as_all_its_edits_at_once(edits in any_log(), portion in 1_usize..5) {
            let mut log = Log::default();
            let mut arrived = 0;
            for some in edits.chunks(portion) {
                log.extend(some.iter().cloned());
                arrived += some.len();
                let anew = Job::fold(edits.iter().take(arrived));
                let engine = anew.arrangement.clone().map(Engine::new);
                prop_assert_eq!(log.engine(), engine.as_ref().map(Result::as_ref));
                prop_assert_eq!(log.job(), &anew);
                prop_assert!(log.edits().is_sorted_by_key(|edit| edit.id));
            }
        }
    }
}
