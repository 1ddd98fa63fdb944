//! Archives on their way out, straight into a file: one may be larger than memory.

use std::io::{Seek, Write};
use std::path::Path;

use wearbook_core::job::Job;
use wearbook_store::write_whole_by;

use crate::action::archive_export::Arguments;
use crate::{Error, Wearbook, view};

/// What kind of file it is.
pub(crate) const ARCHIVE_MIME: &str = "application/zip";

impl Wearbook {
    /// Under which name an archive leaves.
    ///
    /// # Errors
    /// `no-such-job`; what the store says.
    pub fn archive_name(&self, Arguments { job, .. }: &Arguments) -> Result<String, Error> {
        let edits = self.store.read(|ledger| ledger.edits(*job))?;
        Ok(view::file_name(&Job::fold(&edits), self.clock.today(), "wearbook"))
    }

    /// Writes an archive.
    ///
    /// # Errors
    /// `no-such-job`; `stopped`; what the store and the writer say.
    pub fn write_archive<W: Write + Seek>(&self, Arguments { job, way }: Arguments, to: W) -> Result<W, Error> {
        let way = self.ways.begin(way);
        Ok(self.store.export(job, to, &way)?)
    }

    /// Saves an archive under a name: what stood there stands until the new one is whole.
    ///
    /// # Errors
    /// As [`Wearbook::write_archive`].
    pub fn save_archive(&self, Arguments { job, way }: Arguments, path: &Path) -> Result<(), Error> {
        let way = self.ways.begin(way);
        write_whole_by(path, |file| self.store.export(job, file, &way).map(drop))?;
        Ok(())
    }
}
