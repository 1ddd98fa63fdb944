//! What is under way at the moment, by the number that the page gave it.

use std::collections::BTreeMap;
use std::ops::Deref;
use std::sync::{Arc, Mutex, PoisonError};

use wearbook_core::under_way::UnderWay;

/// All that is under way and may be asked about.
#[derive(Debug, Default)]
pub(crate) struct Ways(Mutex<BTreeMap<u32, Arc<UnderWay>>>);

impl Ways {
    /// Begins something. Without a number nobody can ask about it.
    pub(crate) fn begin(&self, number: Option<u32>) -> Begun<'_> {
        let way = Arc::<UnderWay>::default();
        if let Some(number) = number {
            self.all().insert(number, Arc::clone(&way));
        }
        Begun { ways: self, number, way }
    }

    /// What goes by a number; none when it is over, or never was.
    pub(crate) fn find(&self, number: u32) -> Option<Arc<UnderWay>> {
        self.all().get(&number).cloned()
    }

    fn all(&self) -> std::sync::MutexGuard<'_, BTreeMap<u32, Arc<UnderWay>>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Something under way, until it is dropped.
#[derive(Debug)]
pub(crate) struct Begun<'a> {
    ways: &'a Ways,
    number: Option<u32>,
    way: Arc<UnderWay>,
}

impl Deref for Begun<'_> {
    type Target = UnderWay;

    fn deref(&self) -> &UnderWay {
        &self.way
    }
}

impl Drop for Begun<'_> {
    fn drop(&mut self) {
        if let Some(number) = self.number {
            self.ways.all().remove(&number);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_can_be_asked_about_and_stopped_until_it_is_over() {
        let ways = Ways::default();
        let begun = ways.begin(Some(7));
        begun.expect(2);
        let found = ways.find(7).unwrap();
        assert_eq!(found.steps(), (0, 2));
        found.stop();
        assert!(begun.step().is_err());
        drop(begun);
        assert!(ways.find(7).is_none());
    }
}
