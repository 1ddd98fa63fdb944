//! A file appears under its name only with all its bytes on the disk; until then what stood there stands.

use std::fs::File;
use std::io::{self, Write};
use std::path::Path;

/// Files that are not whole yet begin with this; nothing else does.
pub(crate) const TEMPORARY: &str = ".incoming-";

/// Writes a file: a temporary name in the same folder, sync, rename, sync of the folder. A full disk or a killed
/// process leaves the old file, or none.
///
/// # Errors
/// What the disk says.
pub fn write_whole(path: &Path, bytes: &[u8]) -> io::Result<()> {
    write_whole_by(path, |file| file.write_all(bytes))
}

/// The same of what is never whole in memory.
///
/// # Errors
/// Those of the closure; what the disk says.
pub fn write_whole_by<E: From<io::Error>>(
    path: &Path,
    write: impl FnOnce(&mut File) -> Result<(), E>,
) -> Result<(), E> {
    // A bare name lies in the folder that is open.
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut file = temporary().tempfile_in(folder)?;
    write(file.as_file_mut())?;
    file.as_file().sync_all()?;
    file.persist(path).map_err(|error| error.error)?;
    Ok(sync_folder(folder)?)
}

/// Whether there is no room in a folder for as much as SQLite lays beside a database.
pub(crate) fn is_full(folder: &Path) -> bool {
    const NEEDED: usize = 128 * 1024;
    let written = temporary().tempfile_in(folder).and_then(|mut file| {
        file.write_all(&[0; NEEDED])?;
        file.as_file().sync_all()
    });
    let why = written.err().map(|error| error.kind());
    matches!(why, Some(io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded))
}

/// Takes away what is not whole in a folder, but not in those within it. Nobody else may be writing.
pub(crate) fn sweep(folder: &Path) -> io::Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        if !entry.file_name().to_string_lossy().starts_with(TEMPORARY) {
            continue;
        }
        if entry.file_type()?.is_dir() {
            std::fs::remove_dir_all(entry.path())?;
        } else {
            std::fs::remove_file(entry.path())?;
        }
    }
    Ok(())
}

/// To be read by whom the system lets read new files.
#[cfg(unix)]
fn temporary() -> tempfile::Builder<'static, 'static> {
    use std::os::unix::fs::PermissionsExt;
    let mut builder = tempfile::Builder::new();
    builder.prefix(TEMPORARY).permissions(std::fs::Permissions::from_mode(0o666));
    builder
}

#[cfg(not(unix))]
fn temporary() -> tempfile::Builder<'static, 'static> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(TEMPORARY);
    builder
}

/// A rename is safe from the power going off only once its folder is on the disk too.
#[cfg(unix)]
pub(crate) fn sync_folder(folder: &Path) -> io::Result<()> {
    File::open(folder)?.sync_all()
}

/// Other systems can't open folders; their file systems log renames.
#[cfg(not(unix))]
pub(crate) fn sync_folder(_: &Path) -> io::Result<()> {
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_can_not_be_written_whole_leaves_what_was_there() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("report.pdf");
        write_whole(&path, b"the first").unwrap();
        write_whole(&path, b"the second").unwrap();
        assert_eq!(std::fs::read(&path).unwrap(), b"the second");
        // A folder stands where the file should: nothing of it is touched, and nothing is left beside it.
        let taken = dir.path().join("folder");
        std::fs::create_dir(&taken).unwrap();
        write_whole(&taken, b"bytes").unwrap_err();
        assert_eq!(std::fs::read_dir(dir.path()).unwrap().count(), 2);
    }
}
