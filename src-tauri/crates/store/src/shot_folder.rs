//! Where the camera writes: one file for each shot.
//!
//! ```text
//! files/shots/<shot>.jpg
//! ```
//!
//! The folder is called `files` because Android lets another program, the camera, write there and nowhere beside it.

use std::fs::{self, File};
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use std::time::{Duration, UNIX_EPOCH};

use crate::shot_id::ShotId;
use crate::whole_file::sync_folder;
use crate::{MAX_PHOTO_BYTES, StoreError};

#[derive(Debug)]
pub(crate) struct ShotFolder(PathBuf);

impl ShotFolder {
    pub(crate) fn open(dir: &Path) -> Result<Self, StoreError> {
        let folder = dir.join("files").join("shots");
        fs::create_dir_all(&folder)?;
        Ok(Self(folder))
    }

    pub(crate) fn path(&self, shot: &ShotId) -> PathBuf {
        self.0.join(shot.file_name())
    }

    /// The bytes that the camera has written, if it has written any; of a file that is too large for a photo just so
    /// many that whoever looks at them sees it.
    pub(crate) fn read(&self, shot: &ShotId) -> Result<Option<Vec<u8>>, StoreError> {
        let file = match File::open(self.path(shot)) {
            Ok(file) => file,
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(error) => return Err(error.into()),
        };
        let mut bytes = Vec::new();
        file.take(MAX_PHOTO_BYTES + 1).read_to_end(&mut bytes)?;
        Ok((!bytes.is_empty()).then_some(bytes))
    }

    /// Another program has written the file, and may have left it to the system when it reaches the disk.
    pub(crate) fn sync(&self, shot: &ShotId) -> Result<(), StoreError> {
        // Windows syncs only what is open for writing.
        File::options().write(true).open(self.path(shot))?.sync_all()?;
        sync_folder(&self.0)?;
        Ok(())
    }

    pub(crate) fn remove(&self, shot: &ShotId) -> Result<(), StoreError> {
        remove(&self.path(shot))
    }

    /// Removes every file that no shot knows, but none that has been written to since `spared` (milliseconds since
    /// 1970-01-01 UTC): the camera may be at it.
    pub(crate) fn sweep(&self, known: &[ShotId], spared: Option<u64>) -> Result<(), StoreError> {
        for entry in fs::read_dir(&self.0)? {
            let entry = entry?;
            let shot = entry.file_name().to_str().and_then(ShotId::of_file);
            if shot.is_some_and(|shot| known.contains(&shot)) || entry.file_type()?.is_dir() {
                continue;
            }
            let since = spared.map(|millis| UNIX_EPOCH + Duration::from_millis(millis));
            if since.is_some_and(|since| entry.metadata().and_then(|of| of.modified()).is_ok_and(|at| at >= since)) {
                continue;
            }
            remove(&entry.path())?;
        }
        Ok(())
    }
}

fn remove(path: &Path) -> Result<(), StoreError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error.into()),
        _ => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shot(digit: char) -> ShotId {
        digit.to_string().repeat(32).parse().unwrap()
    }

    #[test]
    fn what_nobody_knows_is_swept_unless_the_camera_may_be_at_it() {
        let dir = tempfile::tempdir().unwrap();
        let folder = ShotFolder::open(dir.path()).unwrap();
        let (known, unknown, other) = (folder.path(&shot('a')), folder.path(&shot('b')), folder.0.join("pending.tmp"));
        for path in [&known, &unknown, &other] {
            fs::write(path, b"picture").unwrap();
        }
        folder.sweep(&[shot('a')], Some(0)).unwrap();
        assert!(known.exists() && unknown.exists() && other.exists(), "all are younger than the open camera");
        folder.sweep(&[shot('a')], None).unwrap();
        assert!(known.exists() && !unknown.exists() && !other.exists());
    }

    #[test]
    fn a_file_too_large_is_not_read_whole_and_an_empty_one_is_none() {
        let dir = tempfile::tempdir().unwrap();
        let folder = ShotFolder::open(dir.path()).unwrap();
        assert_eq!(folder.read(&shot('a')).unwrap(), None);
        let file = File::create(folder.path(&shot('a'))).unwrap();
        assert_eq!(folder.read(&shot('a')).unwrap(), None);
        file.set_len(MAX_PHOTO_BYTES + 1000).unwrap();
        assert_eq!(folder.read(&shot('a')).unwrap().unwrap().len() as u64, MAX_PHOTO_BYTES + 1);
    }
}
