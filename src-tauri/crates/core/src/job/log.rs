//! A job's log, folded once: each edit that follows is applied to what is known already.

use super::closing::closes;
use super::known::Job;
use super::{Edit, EditId, Horizon, NoEffect, RecordedChange};
use crate::engine::{Engine, Impossible};
use crate::words::Terms;

/// The edits of a job and all that is known from them: at any time the same as [`Job::fold_within`] of these edits.
#[derive(Debug, Clone, Default)]
pub struct Log {
    edits: Vec<Edit>,
    job: Job,
    engine: Option<Result<Engine, Impossible>>,
    horizon: Horizon,
    /// The latest edit that is not dated ahead.
    latest_in_time: Option<EditId>,
}

impl Log {
    /// Of edits in any order.
    pub fn new(edits: Vec<Edit>) -> Self {
        Self::within(edits, Horizon::default())
    }

    /// The same at a time.
    pub fn within(edits: Vec<Edit>, horizon: Horizon) -> Self {
        let mut log = Self { horizon, ..Self::default() };
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

    /// From now on it is this late: what was dated ahead may have its time.
    pub fn look_from(&mut self, horizon: Horizon) {
        let (before, now) = (self.horizon, horizon);
        self.horizon = now;
        // What is ahead stands at the end, but for what this device entered with a wrong clock.
        let is_other = self.edits.iter().rev().map(|edit| edit.id).any(|id| before.is_ahead(id) != now.is_ahead(id));
        if is_other {
            self.fold();
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

    /// The latest edit that is not dated ahead: what is entered next comes after it.
    pub fn latest_in_time(&self) -> Option<EditId> {
        self.latest_in_time
    }

    /// The edit of this id.
    pub fn edit(&self, id: EditId) -> Option<&Edit> {
        self.edits.binary_search_by_key(&id, |edit| edit.id).ok().and_then(|at| self.edits.get(at))
    }

    fn fold(&mut self) {
        self.edits.sort_by_key(|edit| edit.id);
        self.job = Job::fold_within(&self.edits, self.horizon).speaking(self.job.terms);
        let in_time = self.edits.iter().rev().map(|edit| edit.id).find(|id| !self.horizon.is_ahead(*id));
        self.latest_in_time = in_time;
        self.arrange();
    }

    /// Adds what an edit does that is later than all others; says whether that could be done without folding all anew.
    fn follow(&mut self, edit: &Edit) -> bool {
        let Edit { id, change } = edit;
        if change.undoes().is_some() || self.latest_in_time >= Some(*id) {
            return false;
        }
        let is_closed = self.job.closed.is_some();
        match change {
            RecordedChange::Unknown(_) => return !self.horizon.is_ahead(*id) && self.know_of(*id),
            RecordedChange::Known(_) if self.horizon.is_ahead(*id) => {
                self.job.without_effect.insert(*id, NoEffect::Ahead);
                return true;
            }
            // What waited has its effect now.
            RecordedChange::Known(_) if is_closed && closes(change) == Some(false) => return false,
            RecordedChange::Known(_) if is_closed && closes(change).is_none() => {
                self.job.without_effect.insert(*id, NoEffect::Closed);
            }
            RecordedChange::Known(change) => self.job.apply_if_it_fits(*id, change),
        }
        self.latest_in_time = Some(*id);
        true
    }

    /// Counts an edit of a newer version.
    fn know_of(&mut self, id: EditId) -> bool {
        let is_last = self.job.unknown.last() < Some(&id);
        if is_last {
            self.job.unknown.push(id);
            self.latest_in_time = Some(id);
        }
        is_last
    }
}

/// Takes in further edits. One that takes another back, or that came late from another device, changes what followed
/// from those before it: only then all are folded anew.
impl Extend<Edit> for Log {
    fn extend<E: IntoIterator<Item = Edit>>(&mut self, edits: E) {
        let mut follows = true;
        for edit in edits {
            follows = follows && self.follow(&edit);
            match self.latest() {
                // Some are dated ahead of it.
                Some(latest) if follows && latest >= edit.id => {
                    let at = self.edits.partition_point(|own| own.id < edit.id);
                    follows = self.edits.get(at).is_none_or(|own| own.id != edit.id);
                    self.edits.insert(at, edit);
                }
                _ => self.edits.push(edit),
            }
        }
        if !follows {
            self.fold();
        }
        self.arrange();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::DeviceId;
    use crate::job::testing::any_log;
    use proptest::prelude::*;

    proptest! {
        /// Undo and redo, closing and opening, edits of other devices that come late, twice or from ahead, edits of a newer
        /// version, in whatever portions, while time goes on or back.
        #[test]
        fn a_log_that_grows_tells_the_same_as_all_its_edits_at_once(
            edits in any_log(), portion in 1_usize..5, times in prop::collection::vec(0_u64..60, 40),
        ) {
            let mut log = Log::default();
            let mut arrived = 0;
            let mut times = times.into_iter().map(|now| Horizon { until: now, own: Some(DeviceId(1)) });
            for some in edits.chunks(portion) {
                log.extend(some.iter().cloned());
                arrived += some.len();
                let horizon = times.next().unwrap_or_default();
                prop_assert_eq!(log.job(), &Job::fold_within(edits.iter().take(arrived), log.horizon));
                log.look_from(horizon);
                let anew = Job::fold_within(edits.iter().take(arrived), horizon);
                let engine = anew.arrangement.clone().map(Engine::new);
                prop_assert_eq!(log.engine(), engine.as_ref().map(Result::as_ref));
                prop_assert_eq!(log.job(), &anew);
                prop_assert!(log.edits().is_sorted_by_key(|edit| edit.id));
            }
        }
    }
}
