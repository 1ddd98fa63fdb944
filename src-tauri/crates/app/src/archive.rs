//! Archives on their way out, straight into a file: one may be larger than memory.

use std::io::{Seek, Write};
use std::path::Path;

use wearbook_core::job::Job;
use wearbook_store::{StoreError, write_whole_by};

use crate::action::archive_export::Arguments;
use crate::{Error, Wearbook, picture, view};

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
    pub fn write_archive<W: Write + Seek>(&self, asked: Arguments, to: W) -> Result<W, Error> {
        Ok(self.write(asked, to)?)
    }

    /// Saves an archive under a name: what stood there stands until the new one is whole.
    ///
    /// # Errors
    /// As [`Wearbook::write_archive`].
    pub fn save_archive(&self, asked: Arguments, path: &Path) -> Result<(), Error> {
        write_whole_by(path, |file| self.write(asked, file).map(drop))?;
        Ok(())
    }

    fn write<W: Write + Seek>(&self, Arguments { job, way, give_away }: Arguments, to: W) -> Result<W, StoreError> {
        let way = self.ways.begin(way);
        if give_away {
            return Ok(self.store.export_to_give_away(job, to, &picture::clean, &way)?.0);
        }
        self.store.export(job, to, &way)
    }
}
