//! Takes in a job from a file.

use serde::{Deserialize, Serialize};
use wearbook_store::{Imported, JobId, ShelfHolds, ShopTaken};

use crate::{Error, Wearbook};

/// Which file, and how it is begun.
#[derive(Debug, Clone, Copy, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The file.
    pub arrival: u32,
    /// A number by which to ask how far it is.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub way: Option<u32>,
    /// Whether a job that was put away here is to come back.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub back: bool,
}

/// What came of it, of a job or of a whole shop.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "Imported"))]
pub struct Reply {
    /// The jobs.
    pub jobs: Vec<JobId>,
    /// Entries that were refused, for no entry is so: each reason with how many.
    pub refused: Vec<RefusedEntries>,
    /// How many jobs of a shop were passed over, for they were put away here.
    pub put_away: usize,
    /// How many jobs of a shop stand in an earlier archive, and are not here.
    pub elsewhere: usize,
    /// Things of the shelf that are kept beside those here, under these names: it is not known which is later.
    pub beside: Vec<String>,
    /// Files of a folder that can't be read: each why.
    pub unread: Vec<String>,
}

impl Reply {
    /// Another file of the same folder.
    pub(crate) fn add(&mut self, other: Self) {
        self.jobs.extend(other.jobs);
        self.jobs.sort_unstable();
        self.jobs.dedup();
        self.refused.extend(other.refused);
        self.put_away = self.put_away.max(other.put_away);
        // What the latest names an earlier one brings.
        self.elsewhere = other.elsewhere.min(self.elsewhere);
        self.beside.extend(other.beside);
        self.unread.extend(other.unread);
    }
}

impl From<Imported> for Reply {
    fn from(Imported { job, refused }: Imported) -> Self {
        let refused = refused.into_iter().map(|(reason, count)| RefusedEntries { reason, count });
        Self { jobs: vec![job], refused: refused.collect(), ..Self::default() }
    }
}

impl From<ShopTaken> for Reply {
    fn from(taken: ShopTaken) -> Self {
        let beside = taken.differs.into_iter().filter_map(|differs| match differs.holds {
            ShelfHolds::Both(name) => Some(name),
            ShelfHolds::Theirs | ShelfHolds::Ours => None,
        });
        let mut all = Self {
            put_away: taken.put_away.len(),
            elsewhere: taken.elsewhere.len(),
            beside: beside.collect(),
            ..Self::default()
        };
        for job in taken.jobs {
            let Self { jobs, refused, .. } = job.into();
            all.jobs.extend(jobs);
            all.refused.extend(refused);
        }
        all
    }
}

/// Entries that were refused for the same reason.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct RefusedEntries {
    /// In a sentence.
    pub reason: String,
    /// How many.
    pub count: usize,
}

/// Takes in a `.wearbook` archive of a job or of a whole shop, or a bare `job.json`. A job that is here already gets what it lacks. The file is
/// forgotten whatever comes of it, unless it is to be asked whether the job comes back.
///
/// # Errors
/// `no-such-arrival`; `archive-refused`, `edit-conflict`, `job-put-away` or `stopped` with a sentence, and nothing is taken
/// in; what the store says.
pub fn act(book: &Wearbook, Arguments { arrival, way, back }: Arguments) -> Result<Reply, Error> {
    let way = book.ways.begin(way);
    let taken = book.open_arrival(arrival).and_then(|file| book.take_in(file, back, &way));
    if !taken.as_ref().is_err_and(|error| error.code == "job-put-away") {
        book.forget_arrival(arrival);
    }
    taken
}
