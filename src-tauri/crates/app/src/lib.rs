//! What a person can do with Wearbook, for whoever asks: the window, the command line, the tests' page server.
//!
//! ```
//! # let dir = tempfile::tempdir()?;
//! use serde_json::json;
//! use wearbook_app::{Answer, Wearbook};
//!
//! let book = Wearbook::open(dir.path())?;
//! let Answer::Json(job) = book.act("job_create", json!({}), None)? else { panic!("an empty job is JSON") };
//! let job: serde_json::Value = serde_json::from_str(&job)?;
//! let fill = json!({"do": "fill", "field": "customer", "text": "A. Customer"});
//! book.act("edits_append", json!({"job": job["job"], "changes": [fill]}), None)?;
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! The actions stand in one list (`actions.rs`), each in its own file under [`action`]. Whoever serves them can make
//! something of each name with [`actions!`]:
//!
//! ```
//! macro_rules! names { ($($name:ident),* $(,)?) => { [$(stringify!($name)),*] } }
//! assert!(wearbook_app::actions!(names).contains(&"job_open"));
//! ```
//!
//! This crate supplies the clock ([`Clock`]); those below it are told the time.

#![warn(missing_docs)]

#[macro_use]
mod actions;

pub mod action;
mod answer;
mod archive;
mod arrivals;
mod backup;
mod clock;
mod dispatch;
mod error;
mod look;
mod open_job;
pub mod phone;
mod picture;
#[cfg(feature = "schema")]
pub mod schema;
mod settings;
mod sheet_file;
mod shelf;
mod shots;
mod view;
mod ways;

pub use answer::{Answer, File};
pub use backup::{BackedUp, Backup};
pub use clock::{Clock, FixedClock, SystemClock};
pub use dispatch::ACTIONS;
pub use error::Error;
pub use look::{Look, TextSize};
pub use settings::Settings;
pub use shelf::Shelf;
pub use view::{HistoryLine, JobLine, JobView, Said, Shot};
pub use wearbook_store::write_whole;

use std::path::Path;

use arrivals::Arrivals;
use open_job::{Open, OpenJob};
use serde_json::Value;
use ways::Ways;
use wearbook_store::{JobId, Store};

/// The shop's book, open.
#[derive(Debug)]
pub struct Wearbook {
    store: Store,
    clock: Box<dyn Clock>,
    open_job: OpenJob,
    ways: Ways,
    arrivals: Arrivals,
}

impl Wearbook {
    /// Opens the book in a folder, or begins a new one there.
    ///
    /// # Errors
    /// What the store says, such as `store-newer`.
    pub fn open(dir: &Path) -> Result<Self, Error> {
        Self::open_with_clock(dir, SystemClock)
    }

    /// The same with another clock.
    ///
    /// # Errors
    /// As [`Wearbook::open`].
    pub fn open_with_clock(dir: &Path, clock: impl Clock + 'static) -> Result<Self, Error> {
        let store = Store::open(dir)?;
        Ok(Self {
            store,
            clock: Box::new(clock),
            open_job: OpenJob::default(),
            ways: Ways::default(),
            arrivals: Arrivals::default(),
        })
    }

    /// For when the system may end the program, or copy its folder: see [`Store::rest`].
    ///
    /// # Errors
    /// What the store says.
    pub fn rest(&self) -> Result<(), Error> {
        Ok(self.store.rest()?)
    }

    /// Looks at a job as it stands in the store.
    pub(crate) fn look<R>(&self, job: JobId, with: impl FnOnce(&mut Open) -> R) -> Result<R, Error> {
        self.open_job.look(&self.store, self.clock.now_millis(), job, with)
    }

    /// Does an action by its name.
    ///
    /// # Errors
    /// A code and a sentence; nothing of a refused action is kept.
    pub fn act(&self, name: &str, arguments: Value, bytes: Option<Vec<u8>>) -> Result<Answer, Error> {
        dispatch::act(self, name, arguments, bytes)
    }
}
