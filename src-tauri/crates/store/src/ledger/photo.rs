//! Photos: a row for each, and the file it stands for.

use rusqlite::{OptionalExtension, Row};
use wearbook_core::job::PhotoId;

use super::{Ledger, from_column, to_column};
use crate::photo_folder::{PhotoFolder, ShownSize, photo_id};
use crate::{JobId, MAX_PHOTO_BYTES, StoreError};

/// The kinds of picture that are kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "the names say it")]
pub enum PhotoFormat {
    Jpeg,
    Png,
    Webp,
}

impl PhotoFormat {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Jpeg, Self::Png, Self::Webp];

    /// Its name: "jpeg".
    pub fn name(self) -> &'static str {
        match self {
            Self::Jpeg => "jpeg",
            Self::Png => "png",
            Self::Webp => "webp",
        }
    }

    /// How file names end.
    pub fn extension(self) -> &'static str {
        match self {
            Self::Jpeg => "jpg",
            Self::Png => "png",
            Self::Webp => "webp",
        }
    }

    /// Its media type.
    pub fn mime(self) -> &'static str {
        match self {
            Self::Jpeg => "image/jpeg",
            Self::Png => "image/png",
            Self::Webp => "image/webp",
        }
    }

    /// The format of this name.
    pub fn from_name(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|format| format.name() == name)
    }
}

/// What is known of a picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PhotoFacts {
    /// What the file is.
    pub format: PhotoFormat,
    /// Width in pixels, upright.
    pub width: u32,
    /// Height in pixels, upright.
    pub height: u32,
}

/// A photo that is kept here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PhotoRow {
    /// The name of its content.
    pub id: PhotoId,
    /// What is known of it.
    pub facts: PhotoFacts,
    /// Size of the file.
    pub bytes: u64,
    /// When it was first added here: milliseconds since 1970-01-01 UTC.
    pub taken_in: u64,
}

/// A photo to be kept, with what was derived from it.
#[derive(Debug, Clone, Copy)]
pub struct NewPhoto<'a> {
    /// The bytes as they came.
    pub original: &'a [u8],
    /// What is known of them.
    pub facts: PhotoFacts,
    /// The picture for looking at.
    pub screen: &'a [u8],
    /// The picture for lists.
    pub thumb: &'a [u8],
}

impl Ledger<'_> {
    /// Keeps a photo for a job: the files first, and only when they are on the disk the row. Should the rest of the
    /// transaction fail, the files stay; they are named by their content and serve when the photo is added again.
    ///
    /// # Errors
    /// [`StoreError::NoSuchJob`]; what the disk and the database say.
    pub fn add_photo(&self, job: JobId, new: NewPhoto<'_>, now: u64) -> Result<PhotoId, StoreError> {
        self.require_job(job)?;
        if new.original.len() as u64 > MAX_PHOTO_BYTES {
            let most = MAX_PHOTO_BYTES / (1024 * 1024);
            return Err(StoreError::EntryRefused(format!(
                "This photo has more than {most} MB, the most that is kept."
            )));
        }
        let id = photo_id(new.original);
        self.photos.keep_original(&id, new.original)?;
        self.photos.keep_shown(&id, ShownSize::Screen, new.screen)?;
        self.photos.keep_shown(&id, ShownSize::Thumb, new.thumb)?;
        self.record_photo(&id, new.facts, new.original.len() as u64, now)?;
        self.link_photo(job, &id)?;
        Ok(id)
    }

    /// What is known of a photo, if it is kept here.
    ///
    /// # Errors
    /// What the database says.
    pub fn photo(&self, id: &PhotoId) -> Result<Option<PhotoRow>, StoreError> {
        let sql = "SELECT id, format, width, height, bytes, taken_in FROM photo WHERE id = ?1";
        let mut statement = self.connection.prepare_cached(sql)?;
        statement.query_row([id.as_str()], |row| Ok(photo_row(row))).optional()?.transpose()
    }

    /// The photos that leave with a job, sorted by name.
    ///
    /// # Errors
    /// What the database says.
    pub fn photos_of(&self, job: JobId) -> Result<Vec<PhotoRow>, StoreError> {
        let mut statement = self.connection.prepare_cached(include_str!("photos_of_job.sql"))?;
        let rows = statement.query_map([job.to_string()], |row| Ok(photo_row(row)))?;
        rows.map(|row| row?).collect()
    }

    /// Notes that a photo belongs to a job. A photo that is not here (its job came without it) is passed over.
    pub(crate) fn link_photo(&self, job: JobId, photo: &PhotoId) -> Result<(), StoreError> {
        let sql = "INSERT INTO job_photo (job, photo) SELECT ?1, id FROM photo WHERE id = ?2 ON CONFLICT DO NOTHING";
        self.connection.prepare_cached(sql)?.execute((job.to_string(), photo.as_str()))?;
        Ok(())
    }

    pub(crate) fn record_photo(&self, id: &PhotoId, facts: PhotoFacts, bytes: u64, now: u64) -> Result<(), StoreError> {
        let bytes = i64::try_from(bytes).unwrap_or(i64::MAX);
        let values = (id.as_str(), facts.format.name(), facts.width, facts.height, bytes, to_column(now));
        self.connection.execute(include_str!("record_photo.sql"), values)?;
        self.came.borrow_mut().push(id.clone());
        Ok(())
    }

    /// Where the files of photos are.
    pub(crate) fn photo_folder(&self) -> &PhotoFolder {
        self.photos
    }
}

fn photo_row(row: &Row<'_>) -> Result<PhotoRow, StoreError> {
    let id: String = row.get("id")?;
    let format: String = row.get("format")?;
    Ok(PhotoRow {
        id: PhotoId::try_from(id).map_err(|_| StoreError::Damaged)?,
        facts: PhotoFacts {
            format: PhotoFormat::from_name(&format).ok_or(StoreError::Damaged)?,
            width: row.get("width")?,
            height: row.get("height")?,
        },
        bytes: from_column(row.get("bytes")?),
        taken_in: from_column(row.get("taken_in")?),
    })
}
