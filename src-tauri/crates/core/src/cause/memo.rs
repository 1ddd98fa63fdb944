//! What was worked out of an engine, kept for the next time.

use std::collections::BTreeMap;

use super::network::KnownSites;
use super::topic::Recorded;
use crate::engine::{Arrangement, Part};
use crate::job::{PartRecord, TagRecord};
use crate::wear::Tag;

/// What was worked out earlier. Nothing depends on it but the time that it takes.
#[derive(Debug, Default)]
pub struct Memo {
    pub(super) looks: Looks,
    pub(super) sites: KnownSites,
}

/// What the looks at the parts of an engine told.
#[derive(Debug, Default)]
pub(super) struct Looks {
    of: Option<Arrangement>,
    by_part: BTreeMap<Part, Look>,
}

/// What a look at a part told, and all that it depends on.
#[derive(Debug)]
pub(super) struct Look {
    tags: BTreeMap<Tag, TagRecord>,
    clean: bool,
    back_clean: bool,
    recorded: Vec<Recorded>,
}

impl Looks {
    /// As far as they are of this engine.
    pub(super) fn of(self, arrangement: &Arrangement) -> Self {
        if self.of.as_ref() == Some(arrangement) {
            return self;
        }
        Self { of: Some(arrangement.clone()), by_part: BTreeMap::new() }
    }

    /// What was told of a part with just such a record.
    pub(super) fn told(&self, part: Part, record: &PartRecord) -> Option<Vec<Recorded>> {
        let look = self.by_part.get(&part)?;
        let is_same = look.tags == record.tags && look.clean == record.clean && look.back_clean == record.back_clean;
        is_same.then(|| look.recorded.clone())
    }

    /// Keeps what is told of a part.
    pub(super) fn keep(&mut self, part: Part, record: &PartRecord, recorded: Vec<Recorded>) {
        let PartRecord { tags, clean, back_clean, .. } = record;
        let look = Look { tags: tags.clone(), clean: *clean, back_clean: *back_clean, recorded };
        self.by_part.insert(part, look);
    }
}
