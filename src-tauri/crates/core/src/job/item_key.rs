//! Which item of which list: what a tick refers to, whatever words the item is told in and whatever size it now has.

use serde::{Deserialize, Serialize};

use super::{EditId, ListKind};
use crate::engine::{Part, PartKind};
use crate::money::Standing;
use crate::work::Work;

/// The key of an item. No size stands in it: what was ordered or sent must survive a new reading.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "of", rename_all = "kebab-case", deny_unknown_fields)]
pub enum ItemKey {
    /// Parts of a kind that are ordered.
    Order {
        /// The kind.
        kind: PartKind,
        /// Where one kind is wanted in several sizes at once: those of this size. Else empty: all of the kind.
        #[serde(default, skip_serializing_if = "Vec::is_empty")]
        parts: Vec<Part>,
    },
    /// What is done to the parts of a kind, here or in the machine shop: written as it was when only the latter was meant.
    #[serde(rename = "machine")]
    Operation {
        /// The kind.
        kind: PartKind,
        /// What is done to them; none where an old entry did not tell.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        work: Option<Work>,
    },
    /// One part that is rebuilt here, cleaned, or looked at again.
    Part {
        /// On which list.
        list: ListKind,
        /// The part.
        part: Part,
    },
    /// What a cause asks for before assembly.
    PutRight {
        /// The cause's written form.
        cause: String,
        /// The written form of what it asks for.
        check: String,
    },
    /// Goods that every rebuild takes: gaskets, oil.
    Standing {
        /// Which.
        standing: Standing,
    },
    /// An item of the shop's own.
    Own {
        /// The edit that put it there.
        edit: EditId,
    },
    /// What an old entry named in words that no version knows any longer; kept as it came.
    Former {
        /// On which list, as far as it can be told.
        list: ListKind,
        /// The words.
        words: String,
    },
}

impl ItemKey {
    /// Whether a line with the other key is about the same, sizes apart: exactly so, or as far as an old entry told.
    pub fn is_about(&self, line: &Self) -> bool {
        match (self, line) {
            (Self::Order { kind, .. }, Self::Order { kind: other, .. }) => kind == other,
            // When entries did not tell the work, none of it was told apart that is charged for by itself now.
            (Self::Operation { kind, work: None }, Self::Operation { kind: other, work: Some(work) }) => {
                kind == other && matches!(work, Work::Machine | Work::Sleeve | Work::WeldUp)
            }
            // Washing the block and flushing the shaft stood among what was cleaned, each a part of its own.
            (Self::Part { list: ListKind::Clean, part }, Self::Operation { kind, work: Some(Work::Clean) }) => {
                part.kind == *kind
            }
            _ => self == line,
        }
    }
}
