//! What has been done about an item of a list, as it is asked for now.

use super::known::Job;
use super::{Asked, ItemKey, ListKind, TestResult, Tick, Ticked};
use crate::engine::Part;
use crate::words::{capitalised, plural};
use crate::work::Work;

impl Job {
    /// What has been done about an item, as it is asked for now; of two ticks that of its own size.
    pub fn ticked(&self, now: &Asked) -> Option<&Ticked> {
        let about = || self.ticks.iter().rev().filter(|ticked| ticked.is_about(now));
        about().find(|ticked| ticked.asked.size == now.size).or_else(|| about().next())
    }

    /// Keeps a tick in place of those about the same item that it replaces.
    pub(super) fn tick(&mut self, asked: &Asked, tick: &Tick) {
        self.ticks.retain(|earlier| !earlier.is_about(asked));
        if tick.says_something() {
            self.ticks.push(Ticked { asked: asked.clone(), tick: tick.clone() });
        }
    }

    /// What the test for cracks showed of a piece; none if it was not tested.
    pub fn crack_test(&self, piece: Part) -> Option<(bool, &TestResult)> {
        self.test(Work::CrackTest, piece)
    }

    /// What such a work showed of a piece, whether it passed; none if it was not tested. Of several tests the last tells, and
    /// a piece that has failed once has failed.
    pub fn test(&self, work: Work, piece: Part) -> Option<(bool, &TestResult)> {
        let is_test =
            |ticked: &&Ticked| matches!(ticked.asked.key, ItemKey::Operation { work: Some(own), .. } if own == work);
        let results = || self.ticks.iter().rev().filter(is_test).filter_map(|ticked| ticked.tick.result.as_ref());
        let failed = results().find(|result| result.failed.contains(&piece)).map(|result| (false, result));
        failed.or_else(|| results().find(|result| result.passed.contains(&piece)).map(|result| (true, result)))
    }

    /// The list on which an item stands. One of the shop's own that has been taken off is told of with the orders: most
    /// were.
    pub fn list_of(&self, key: &ItemKey) -> ListKind {
        match key {
            ItemKey::Order { .. } | ItemKey::Standing { .. } => ListKind::Order,
            ItemKey::Operation { .. } => ListKind::MachineShop,
            ItemKey::Part { list, .. } | ItemKey::Former { list, .. } => *list,
            ItemKey::PutRight { .. } => ListKind::PutRight,
            ItemKey::Own { edit } => {
                let own = self.own_items.iter().find(|(of, _)| of == edit);
                own.map_or(ListKind::Order, |(_, item)| item.list)
            }
        }
    }

    /// An item in words. An old entry did not always tell them: then as far as its key does.
    pub fn item_words(&self, asked: &Asked) -> String {
        if !asked.words.is_empty() {
            return asked.words.clone();
        }
        match &asked.key {
            ItemKey::Order { kind, .. } | ItemKey::Operation { kind, .. } => {
                capitalised(&plural(&kind.row().name.said(self.terms)))
            }
            ItemKey::Part { part, .. } => {
                self.arrangement.as_ref().map_or_else(|| part.to_string(), |_| self.label(*part))
            }
            ItemKey::PutRight { check, .. } => check.clone(),
            ItemKey::Standing { standing } => standing.said(self.arrangement.as_ref()).into(),
            ItemKey::Own { edit } => {
                let own = self.own_items.iter().find(|(of, _)| of == edit);
                own.map_or_else(|| "an item that was removed".into(), |(_, item)| item.what.clone())
            }
            ItemKey::Former { words, .. } => words.clone(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::PartKind;
    use crate::measure::Length;

    fn shells(thou: i64) -> Asked {
        let key = ItemKey::Order { kind: PartKind::MainShell, parts: vec![] };
        Asked { key, words: String::new(), size: Some(Length::from_nanometres(thou * 25_400)), quantity: 5 }
    }

    fn done(done: u32, note: &str) -> Tick {
        Tick { done, note: note.into(), ..Tick::default() }
    }

    #[test]
    fn what_was_ordered_in_one_size_is_not_what_is_wanted_in_another() {
        let mut job = Job::default();
        job.tick(&shells(10), &done(5, "From the north."));
        assert_eq!(job.ticked(&shells(10)).map(|ticked| ticked.tick.done), Some(5));
        assert_eq!(job.ticked(&shells(20)), None);
        job.tick(&shells(20), &done(2, ""));
        assert_eq!(job.ticks.len(), 2, "the first order is still known");
        assert_eq!(job.ticked(&shells(20)).map(|ticked| ticked.tick.done), Some(2));
        job.tick(&shells(10), &done(0, ""));
        assert_eq!(job.ticks.len(), 1, "and can be taken back");
    }

    #[test]
    fn a_note_goes_along_to_another_size() {
        let mut job = Job::default();
        job.tick(&shells(10), &done(0, "Ask the north."));
        assert_eq!(job.ticked(&shells(20)).map(|ticked| ticked.tick.note.as_str()), Some("Ask the north."));
        job.tick(&shells(20), &done(5, "Ask the north."));
        assert_eq!(job.ticks.len(), 1);
    }
}
