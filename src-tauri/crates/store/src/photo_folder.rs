//! Photos as files: originals named by their content, and the pictures derived from them.
//!
//! ```text
//! photos/3f/3f9a…       the bytes as they came
//! shown/3f/3f9a…-screen.jpg, 3f9a…-thumb.jpg   derived; may be deleted, they are made again
//! ```

use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use sha2::{Digest, Sha256};
use wearbook_core::job::PhotoId;

use crate::StoreError;
use crate::incoming::{self, Incoming};
use crate::whole_file::{self, TEMPORARY, sync_folder, write_whole};

/// Which derived picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ShownSize {
    /// For looking at, and for paper.
    Screen,
    /// For lists.
    Thumb,
}

/// The name of a photo's content.
pub fn photo_id(bytes: &[u8]) -> PhotoId {
    let hex: String = Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect();
    // 32 bytes are 64 digits, so this can't be refused; the hash of nothing stands in for the impossible.
    PhotoId::try_from(hex).unwrap_or_else(|_| photo_id(&[]))
}

#[derive(Debug)]
pub(crate) struct PhotoFolder {
    photos: PathBuf,
    shown: PathBuf,
}

impl PhotoFolder {
    /// Makes the folders if need be.
    pub(crate) fn open(dir: &Path) -> Result<Self, StoreError> {
        let folder = Self { photos: dir.join("photos"), shown: dir.join("shown") };
        for top in [&folder.photos, &folder.shown] {
            fs::create_dir_all(top)?;
            // A program that was killed may have made a folder in it and not come to this.
            sync_folder(top)?;
        }
        sync_folder(dir)?;
        Ok(folder)
    }

    /// Takes away what a killed program has left: files that are not whole, and what an import was taking in and no row names.
    /// Nobody else may be writing.
    pub(crate) fn sweep(&self, is_named: &dyn Fn(&PhotoId) -> Result<bool, StoreError>) -> Result<(), StoreError> {
        incoming::sweep(self, &self.photos, is_named)?;
        for top in [&self.photos, &self.shown] {
            for folder in fs::read_dir(top)? {
                let folder = folder?;
                if folder.file_type()?.is_dir() {
                    whole_file::sweep(&folder.path())?;
                }
            }
        }
        Ok(())
    }

    /// Whether any photo is kept here.
    pub(crate) fn is_empty(&self) -> Result<bool, StoreError> {
        for folder in fs::read_dir(&self.photos)? {
            let folder = folder?;
            let is_kept = folder.file_type()?.is_dir() && !folder.file_name().to_string_lossy().starts_with(TEMPORARY);
            if is_kept && fs::read_dir(folder.path())?.next().is_some() {
                return Ok(false);
            }
        }
        Ok(true)
    }

    /// Begins to take in photos out of a file.
    pub(crate) fn incoming(&self) -> Result<Incoming, StoreError> {
        Incoming::begin(&self.photos)
    }

    /// Whether an original is here, with the bytes that it came with.
    pub(crate) fn is_whole(&self, photo: &PhotoId) -> Result<bool, StoreError> {
        match self.original(photo) {
            Ok(_) => Ok(true),
            Err(StoreError::NoSuchPhoto | StoreError::PhotoDamaged) => Ok(false),
            Err(error) => Err(error),
        }
    }

    /// Whether a file of this name is here, whatever its bytes.
    pub(crate) fn is_there(&self, photo: &PhotoId) -> bool {
        self.original_path(photo).exists()
    }

    /// Keeps an original that is on the disk already, under another name. It stays there safely only once its folder is on the
    /// disk too: see [`PhotoFolder::settle`].
    pub(crate) fn take_over(&self, photo: &PhotoId, from: &Path) -> Result<(), StoreError> {
        let path = self.original_path(photo);
        make_folder(&path)?;
        Ok(fs::rename(from, path)?)
    }

    /// Puts the folders of these photos on the disk.
    pub(crate) fn settle<'a>(&self, photos: impl Iterator<Item = &'a PhotoId>) -> Result<(), StoreError> {
        let folders: BTreeSet<PathBuf> = photos.map(|photo| self.photos.join(first_two(photo))).collect();
        Ok(folders.iter().try_for_each(|folder| sync_folder(folder))?)
    }

    /// Keeps an original. Returns whether it was not there before.
    pub(crate) fn keep_original(&self, photo: &PhotoId, bytes: &[u8]) -> Result<bool, StoreError> {
        let path = self.original_path(photo);
        // Written even if it is there: this heals a file that the disk has damaged.
        let new = !path.exists();
        keep(&path, bytes)?;
        Ok(new)
    }

    /// Takes an original out again whose import was refused half way.
    pub(crate) fn forget_original(&self, photo: &PhotoId) -> Result<(), StoreError> {
        remove_if_there(&self.original_path(photo))
    }

    /// Takes out a photo with all that was made of it.
    pub(crate) fn forget(&self, photo: &PhotoId) -> Result<(), StoreError> {
        self.forget_shown(photo)?;
        self.forget_original(photo)
    }

    /// Takes out what was made of a photo, or of what stood in for it.
    pub(crate) fn forget_shown(&self, photo: &PhotoId) -> Result<(), StoreError> {
        for size in [ShownSize::Screen, ShownSize::Thumb] {
            remove_if_there(&self.shown_path(photo, size))?;
        }
        Ok(())
    }

    pub(crate) fn original(&self, photo: &PhotoId) -> Result<Vec<u8>, StoreError> {
        let bytes = read_if_there(&self.original_path(photo))?.ok_or(StoreError::NoSuchPhoto)?;
        if photo_id(&bytes) != *photo {
            return Err(StoreError::PhotoDamaged);
        }
        Ok(bytes)
    }

    pub(crate) fn keep_shown(&self, photo: &PhotoId, size: ShownSize, bytes: &[u8]) -> Result<(), StoreError> {
        keep(&self.shown_path(photo, size), bytes)
    }

    pub(crate) fn shown(&self, photo: &PhotoId, size: ShownSize) -> Result<Option<Vec<u8>>, StoreError> {
        read_if_there(&self.shown_path(photo, size))
    }

    fn original_path(&self, photo: &PhotoId) -> PathBuf {
        self.photos.join(first_two(photo)).join(photo.as_str())
    }

    fn shown_path(&self, photo: &PhotoId, size: ShownSize) -> PathBuf {
        let word = if size == ShownSize::Screen { "screen" } else { "thumb" };
        self.shown.join(first_two(photo)).join(format!("{}-{word}.jpg", photo.as_str()))
    }
}

fn first_two(photo: &PhotoId) -> String {
    photo.as_str().chars().take(2).collect()
}

fn remove_if_there(path: &Path) -> Result<(), StoreError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error.into()),
        _ => Ok(()),
    }
}

fn read_if_there(path: &Path) -> Result<Option<Vec<u8>>, StoreError> {
    match fs::read(path) {
        Ok(bytes) => Ok(Some(bytes)),
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(None),
        Err(error) => Err(error.into()),
    }
}

/// The folder too is on the disk before the file is.
fn keep(path: &Path, bytes: &[u8]) -> Result<(), StoreError> {
    make_folder(path)?;
    Ok(write_whole(path, bytes)?)
}

/// The folder in which a file is to stand.
fn make_folder(path: &Path) -> Result<(), StoreError> {
    let Some(folder) = path.parent() else { return Err(StoreError::ReadOnly) };
    if !folder.exists() {
        fs::create_dir_all(folder)?;
        folder.parent().map(sync_folder).transpose()?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn content_names_are_sha_256() {
        // FIPS 180-2, appendix B.1: the message "abc".
        let expected = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(photo_id(b"abc").as_str(), expected);
    }

    #[test]
    fn what_is_kept_comes_back_and_damage_is_noticed() {
        let dir = tempfile::tempdir().unwrap();
        let folder = PhotoFolder::open(dir.path()).unwrap();
        let photo = photo_id(b"picture");
        assert!(matches!(folder.original(&photo), Err(StoreError::NoSuchPhoto)));
        assert!(folder.keep_original(&photo, b"picture").unwrap());
        assert!(!folder.keep_original(&photo, b"picture").unwrap(), "the second time it is not new");
        assert_eq!(folder.original(&photo).unwrap(), b"picture");
        fs::write(folder.original_path(&photo), b"pictire").unwrap();
        assert!(matches!(folder.original(&photo), Err(StoreError::PhotoDamaged)));
        assert!(!folder.keep_original(&photo, b"picture").unwrap());
        assert_eq!(folder.original(&photo).unwrap(), b"picture", "adding it again heals it");
    }

    #[test]
    fn leftovers_of_a_killed_write_are_swept_and_nothing_else() {
        let dir = tempfile::tempdir().unwrap();
        let folder = PhotoFolder::open(dir.path()).unwrap();
        let photo = photo_id(b"picture");
        folder.keep_original(&photo, b"picture").unwrap();
        folder.keep_shown(&photo, ShownSize::Thumb, b"small").unwrap();
        let leftover = folder.original_path(&photo).with_file_name(".incoming-abc");
        fs::write(&leftover, b"half").unwrap();
        let folder = PhotoFolder::open(dir.path()).unwrap();
        assert!(leftover.exists(), "another process may be at it");
        folder.sweep(&|_| Ok(true)).unwrap();
        assert!(!leftover.exists());
        assert_eq!(folder.original(&photo).unwrap(), b"picture");
        assert_eq!(folder.shown(&photo, ShownSize::Thumb).unwrap().unwrap(), b"small");
        assert_eq!(folder.shown(&photo, ShownSize::Screen).unwrap(), None);
    }
}
