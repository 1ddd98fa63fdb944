//! An archive from outside: everything in it is hostile until checked.

use std::io::{Read, Seek, SeekFrom};

use wearbook_core::job::PhotoId;
use wearbook_core::under_way::UnderWay;
use zip::ZipArchive;

use super::job_file::ReadJob;
use super::limits::{
    MAX_ARCHIVE_BYTES, MAX_JOB_FILE_BYTES, MAX_PHOTO_BYTES, MAX_PHOTOS, MAX_SHOP_ENTRIES, MAX_SHOP_FILE_BYTES,
};
use super::source::{Bare, Entry, Source, unreadable};
use super::{JOB_ENTRY, JOB_FOLDER, PHOTO_FOLDER, SHOP_ENTRY};
use crate::ledger::Written;
use crate::photo_folder::photo_id;
use crate::{JobId, PhotoFormat, StoreError};

/// An archive whose names and sizes have been checked. What it holds is checked as it is read.
#[derive(Debug)]
pub(super) struct Archive<R> {
    zip: ZipArchive<R>,
    content: Content,
    photos: Vec<PhotoEntry>,
}

/// What an archive holds beside photos, by the places in its list.
#[derive(Debug)]
enum Content {
    Job(usize),
    Shop { shop: usize, jobs: Vec<(JobId, usize)> },
}

/// A photo in an archive, as its name says.
#[derive(Debug, Clone)]
pub(super) struct PhotoEntry {
    pub(super) id: PhotoId,
    pub(super) format: PhotoFormat,
    index: usize,
}

/// A zip begins with its own two letters; JSON can't.
pub(super) fn is_zip(reader: &mut (impl Read + Seek)) -> Result<bool, StoreError> {
    reader.seek(SeekFrom::Start(0))?;
    let mut start = Vec::new();
    reader.by_ref().take(2).read_to_end(&mut start)?;
    Ok(start == b"PK")
}

/// Reads the job of an archive that holds one, or of a bare `job.json`.
pub(super) fn read_one_job(
    mut reader: impl Read + Seek,
    way: &UnderWay,
    take: &mut dyn FnMut(Written) -> Result<(), StoreError>,
) -> Result<ReadJob, StoreError> {
    if is_zip(&mut reader)? {
        Archive::open(reader)?.read_job(way, take)
    } else {
        ReadJob::read(&mut Bare(reader, MAX_JOB_FILE_BYTES), way, take)
    }
}

impl<R: Read + Seek> Archive<R> {
    pub(super) fn open(mut reader: R) -> Result<Self, StoreError> {
        check_end(&mut reader)?;
        let mut zip = ZipArchive::new(reader).map_err(unreadable)?;
        let (content, photos) = entries(&mut zip)?;
        Ok(Self { zip, content, photos })
    }

    /// Reads the job of an archive that holds one.
    pub(super) fn read_job(
        &mut self,
        way: &UnderWay,
        take: &mut dyn FnMut(Written) -> Result<(), StoreError>,
    ) -> Result<ReadJob, StoreError> {
        let Content::Job(index) = self.content else {
            return Err(StoreError::archive(
                "This file holds a whole shop, not one job: take it in as the shop’s archive.",
            ));
        };
        self.read_job_at(index, way, take)
    }

    /// Reads one of the jobs of a shop.
    pub(super) fn read_job_at(
        &mut self,
        index: usize,
        way: &UnderWay,
        take: &mut dyn FnMut(Written) -> Result<(), StoreError>,
    ) -> Result<ReadJob, StoreError> {
        ReadJob::read(&mut self.entry(index, MAX_JOB_FILE_BYTES)?, way, take)
    }

    /// The shop’s file, in an archive of a shop.
    pub(super) fn shop(&mut self) -> Result<Option<impl Source + '_>, StoreError> {
        let Content::Shop { shop, .. } = self.content else { return Ok(None) };
        self.entry(shop, MAX_SHOP_FILE_BYTES).map(Some)
    }

    /// The jobs of a shop’s archive, with their places.
    pub(super) fn jobs(&self) -> Vec<(JobId, usize)> {
        match &self.content {
            Content::Job(_) => vec![],
            Content::Shop { jobs, .. } => jobs.clone(),
        }
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

    /// A file in it that does not say that it is larger than it may be.
    fn entry(&mut self, index: usize, most: u64) -> Result<Entry<'_, R>, StoreError> {
        let entry = self.zip.by_index_raw(index).map_err(unreadable)?;
        if entry.size() > most {
            return Err(too_large(&String::from_utf8_lossy(entry.name_raw()), most));
        }
        drop(entry);
        Ok(Entry { zip: &mut self.zip, index, most })
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
    if usize::from(entries) > MAX_SHOP_ENTRIES + 1 {
        return Err(StoreError::archive(format!("This file holds {entries} entries: {MAX_SHOP_ENTRIES} at most.")));
    }
    Ok(())
}

/// Checks every name and every declared size. Names are only compared, never used as paths.
fn entries<R: Read + Seek>(zip: &mut ZipArchive<R>) -> Result<(Content, Vec<PhotoEntry>), StoreError> {
    if zip.has_duplicate_names() {
        return Err(StoreError::archive("This file holds two entries of the same name: it was altered."));
    }
    let (job, shop) = (zip.index_for_name(JOB_ENTRY), zip.index_for_name(SHOP_ENTRY));
    let (mut jobs, mut photos) = (Vec::new(), Vec::new());
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
        if [job, shop].contains(&Some(index)) {
            continue;
        }
        let name = std::str::from_utf8(entry.name_raw()).unwrap_or_default();
        if let Some(photo) = photo_entry(name, index) {
            photos.push(photo);
        } else if let Some(job) = job_entry(name).filter(|_| shop.is_some()) {
            jobs.push((job, index));
        } else {
            let shown: String = String::from_utf8_lossy(entry.name_raw()).chars().take(60).collect();
            let belongs = if shop.is_some() { "shop.json, jobs" } else { "job.json" };
            return Err(StoreError::archive(format!(
                "This file holds “{}”: only {belongs} and photos named by their content belong in it.",
                shown.escape_default()
            )));
        }
    }
    photos.sort_by(|a, b| a.id.cmp(&b.id));
    jobs.sort_unstable();
    match (job, shop) {
        (Some(_), Some(_)) => {
            Err(StoreError::archive("This file holds both a job.json and a shop.json: it was altered."))
        }
        (None, None) => Err(StoreError::archive("This file holds no job: a .wearbook file has an entry “job.json”.")),
        (Some(_), None) if photos.len() > MAX_PHOTOS => {
            Err(StoreError::archive(format!("This file holds {} photos: {MAX_PHOTOS} at most.", photos.len())))
        }
        (Some(job), None) => Ok((Content::Job(job), photos)),
        (None, Some(shop)) => Ok((Content::Shop { shop, jobs }, photos)),
    }
}

/// `jobs/<32 hexadecimal digits>.json`.
fn job_entry(name: &str) -> Option<JobId> {
    name.strip_prefix(JOB_FOLDER)?.strip_suffix(".json")?.parse().ok()
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
    if entry.size() > most {
        return Err(too_large(&name, most));
    }
    let mut bytes = Vec::new();
    entry.take(most + 1).read_to_end(&mut bytes).map_err(|error| unreadable(error.into()))?;
    if bytes.len() as u64 > most {
        return Err(too_large(&name, most));
    }
    Ok(bytes)
}

fn too_large(name: &str, most: u64) -> StoreError {
    StoreError::archive(format!("“{name}” in this file has more than {} MB: it was altered.", most / (1024 * 1024)))
}
