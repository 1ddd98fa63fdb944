//! An archive from outside: everything in it is hostile until checked.

use std::io::{Read, Seek, SeekFrom};

use wearbook_core::job::PhotoId;
use zip::ZipArchive;

use super::job_file::ReadJob;
use super::limits::{MAX_ARCHIVE_BYTES, MAX_JOB_BYTES, MAX_PHOTO_BYTES, MAX_PHOTOS};
use super::{JOB_ENTRY, PHOTO_FOLDER};
use crate::photo_folder::photo_id;
use crate::{PhotoFormat, StoreError};

/// An archive whose names, sizes and job have been checked. Its photos are checked as they are read.
pub(super) struct Archive<R> {
    zip: ZipArchive<R>,
    job: ReadJob,
    photos: Vec<PhotoEntry>,
}

/// A photo in an archive, as its name says.
#[derive(Debug, Clone)]
pub(super) struct PhotoEntry {
    pub(super) id: PhotoId,
    pub(super) format: PhotoFormat,
    index: usize,
}

impl<R: Read + Seek> Archive<R> {
    pub(super) fn open(mut reader: R) -> Result<Self, StoreError> {
        check_end(&mut reader)?;
        let mut zip = ZipArchive::new(reader).map_err(unreadable)?;
        let photos = entries(&mut zip)?;
        let index = zip
            .index_for_name(JOB_ENTRY)
            .ok_or_else(|| StoreError::archive("This file holds no job: a .wearbook file has an entry “job.json”."))?;
        let job = ReadJob::from_json(&bytes_of(&mut zip, index, MAX_JOB_BYTES)?)?;
        Ok(Self { zip, job, photos })
    }

    pub(super) fn job(&self) -> &ReadJob {
        &self.job
    }

    pub(super) fn into_job(self) -> ReadJob {
        self.job
    }

    pub(super) fn photos(&self) -> Vec<PhotoEntry> {
        self.photos.clone()
    }

    /// The bytes of a photo, which are what their name says.
    pub(super) fn photo(&mut self, entry: &PhotoEntry) -> Result<Vec<u8>, StoreError> {
        let bytes = bytes_of(&mut self.zip, entry.index, MAX_PHOTO_BYTES)?;
        if photo_id(&bytes) != entry.id {
            return Err(StoreError::archive(format!(
                "The photo {} in this file is not the one its name says: the file is damaged or was altered.",
                entry.id.as_str()
            )));
        }
        Ok(bytes)
    }
}

/// Length of a zip's last record when it has no comment.
const END_RECORD: u64 = 22;
/// Length of the record that stands before it in a zip with large numbers.
const LARGE_LOCATOR: u64 = 20;

/// Holds the zip's own list against the caps before anything is read of it: a list may claim millions of entries. Zips
/// with large numbers or a comment are not ours and are refused, so there is one list only.
fn check_end(reader: &mut (impl Read + Seek)) -> Result<(), StoreError> {
    let not_ours = || StoreError::archive("This is not a .wearbook file, or its end is missing: copy it again.");
    let length = reader.seek(SeekFrom::End(0))?;
    if length > MAX_ARCHIVE_BYTES {
        let most = MAX_ARCHIVE_BYTES / (1024 * 1024);
        return Err(StoreError::archive(format!("This file has {} MB: {most} MB at most.", length / (1024 * 1024))));
    }
    let tail_length = (END_RECORD + LARGE_LOCATOR).min(length);
    reader.seek(SeekFrom::Start(length - tail_length))?;
    let mut tail = Vec::new();
    reader.take(tail_length).read_to_end(&mut tail)?;
    let split = tail.len().checked_sub(END_RECORD as usize).ok_or_else(not_ours)?;
    let (before, end) = tail.split_at_checked(split).ok_or_else(not_ours)?;
    let large = before.starts_with(b"PK\x06\x07");
    let entries = match end {
        [b'P', b'K', 5, 6, 0, 0, 0, 0, _, _, low, high, .., 0, 0] if !large => u16::from_le_bytes([*low, *high]),
        _ => return Err(not_ours()),
    };
    if usize::from(entries) > MAX_PHOTOS + 1 {
        return Err(StoreError::archive(format!("This file holds {entries} entries: {MAX_PHOTOS} photos at most.")));
    }
    Ok(())
}

/// Checks every name and every declared size. Names are only compared, never used as paths.
fn entries<R: Read + Seek>(zip: &mut ZipArchive<R>) -> Result<Vec<PhotoEntry>, StoreError> {
    if zip.has_duplicate_names() {
        return Err(StoreError::archive("This file holds two entries of the same name: it was altered."));
    }
    let mut photos = Vec::new();
    let mut total: u64 = 0;
    for index in 0..zip.len() {
        let entry = zip.by_index_raw(index).map_err(unreadable)?;
        total = total.saturating_add(entry.size());
        if total > MAX_ARCHIVE_BYTES {
            let most = MAX_ARCHIVE_BYTES / (1024 * 1024);
            return Err(StoreError::archive(format!(
                "More than {most} MB would come out of this file: it was altered."
            )));
        }
        if entry.name_raw() == JOB_ENTRY.as_bytes() {
            continue;
        }
        let photo = std::str::from_utf8(entry.name_raw()).ok().and_then(|name| photo_entry(name, index));
        let photo = photo.ok_or_else(|| {
            let shown: String = String::from_utf8_lossy(entry.name_raw()).chars().take(60).collect();
            StoreError::archive(format!(
                "This file holds “{}”: only job.json and photos named by their content belong in it.",
                shown.escape_default()
            ))
        })?;
        photos.push(photo);
    }
    photos.sort_by(|a, b| a.id.cmp(&b.id));
    Ok(photos)
}

/// `photos/<64 hexadecimal digits>.<jpg|png|webp>`.
fn photo_entry(name: &str, index: usize) -> Option<PhotoEntry> {
    let (id, extension) = name.strip_prefix(PHOTO_FOLDER)?.split_once('.')?;
    let id = PhotoId::try_from(id.to_owned()).ok()?;
    let format = PhotoFormat::ALL.into_iter().find(|format| format.extension() == extension)?;
    Some(PhotoEntry { id, format, index })
}

/// Reads one entry, no further than the cap, whatever size it declares.
fn bytes_of<R: Read + Seek>(zip: &mut ZipArchive<R>, index: usize, most: u64) -> Result<Vec<u8>, StoreError> {
    let entry = zip.by_index(index).map_err(unreadable)?;
    let name = String::from_utf8_lossy(entry.name_raw()).into_owned();
    let too_large = || {
        StoreError::archive(format!("“{name}” in this file has more than {} MB: it was altered.", most / (1024 * 1024)))
    };
    if entry.size() > most {
        return Err(too_large());
    }
    let mut bytes = Vec::new();
    entry.take(most + 1).read_to_end(&mut bytes).map_err(|error| unreadable(error.into()))?;
    if bytes.len() as u64 > most {
        return Err(too_large());
    }
    Ok(bytes)
}

fn unreadable(error: zip::result::ZipError) -> StoreError {
    StoreError::archive(format!("This file can’t be read as a .wearbook file ({error}): copy it again."))
}
