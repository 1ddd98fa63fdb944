//! Files of ours and words beside them, handed to other programs.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

use super::{Phone, Refused, name};
use crate::action::{Awaited, archive_export};
use crate::archive::ARCHIVE_MIME;
use crate::{Answer, Error, Wearbook};

/// The most files at once.
const MOST_FILES: usize = 10;
/// The longest title and the longest text, in signs.
const LONGEST_TITLE: usize = 200;
const LONGEST_TEXT: usize = 20_000;

/// What shall be handed over. Files are named by what makes them: a page can name no path.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "Share"))]
#[serde(deny_unknown_fields)]
pub struct Asked {
    /// Up to ten files.
    #[serde(default)]
    pub files: Vec<Made>,
    /// What it is called on the share sheet.
    #[serde(default)]
    pub title: String,
    /// Words that go along; alone if there is no file.
    #[serde(default)]
    pub text: String,
}

/// A file of ours.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Made {
    /// The action that makes it.
    pub by: Makes,
    /// What that action is told.
    #[cfg_attr(feature = "schema", ts(type = "object"))]
    pub with: Map<String, Value>,
}

/// The actions of which the file may leave.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the actions of these names say it")]
pub enum Makes {
    DocumentGet,
    ArchiveExport,
    SheetExport,
    ShopExport,
    PhotoGet,
}

impl Makes {
    fn action(self) -> &'static str {
        match self {
            Self::DocumentGet => "document_get",
            Self::ArchiveExport => "archive_export",
            Self::SheetExport => "sheet_export",
            Self::ShopExport => "shop_export",
            Self::PhotoGet => "photo_get",
        }
    }
}

/// How it went, as far as it can be known: no system tells whether the other program sent it on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Shared {
    /// The person chose a program, and it was handed over.
    HandedOver,
    /// The person changed their mind.
    Cancelled,
}

/// What a device hands over.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Parcel {
    /// Where the files lie, each under the name that it shall have.
    pub files: Vec<PathBuf>,
    /// Of what kind they are together, as systems choose who can take it.
    pub mime: String,
    /// What it is called.
    pub title: String,
    /// Words that go along; may be empty.
    pub text: String,
}

pub(super) fn act(book: &Wearbook, phone: &dyn Phone, outbox: &Path, asked: Asked) -> Result<Shared, Error> {
    check(&asked)?;
    if !phone.can().share {
        // Before a long paper is made in vain.
        return Err(Refused::NoShare.into());
    }
    let folder = fresh_folder(outbox).map_err(not_written)?;
    let (mut files, mut names, mut kinds) = (Vec::new(), Vec::new(), Vec::new());
    for made in asked.files {
        let (path, mime) = make(book, made, &folder, &mut names)?;
        files.push(path);
        kinds.push(mime);
    }
    let parcel = Parcel { files, mime: together(&kinds), title: asked.title, text: asked.text };
    Ok(if phone.share(&parcel)? { Shared::HandedOver } else { Shared::Cancelled })
}

/// Makes a file under a name that no other of them has; an archive is never whole in memory.
fn make(
    book: &Wearbook,
    Made { by, with }: Made,
    folder: &Path,
    names: &mut Vec<String>,
) -> Result<(PathBuf, &'static str), Error> {
    let mut place = |name: &str| {
        let name = name::outgoing(name, names);
        let path = folder.join(&name);
        names.push(name);
        path
    };
    if by == Makes::ArchiveExport {
        let asked = archive_export::Arguments::read(Value::Object(with))?;
        let path = place(&book.archive_name(&asked)?);
        book.save_archive(asked, &path)?;
        return Ok((path, ARCHIVE_MIME));
    }
    if by == Makes::ShopExport {
        let Awaited { way } = Awaited::read(Value::Object(with))?;
        let path = place(&book.shop_archive_name());
        book.save_shop(&path, way)?;
        return Ok((path, ARCHIVE_MIME));
    }
    let Answer::Bytes { bytes, mime, file_name } = book.act(by.action(), Value::Object(with), None)? else {
        return Err(Refused::Failed.into());
    };
    let path = place(&file_name.unwrap_or_default());
    write(&path, &bytes).map_err(not_written)?;
    Ok((path, mime))
}

fn check(asked: &Asked) -> Result<(), Error> {
    let refused = |why: String| Err(Error::new("arguments-refused", why));
    if asked.files.is_empty() && asked.text.trim().is_empty() {
        return refused("There is nothing to share: say which file, or some text.".into());
    }
    if asked.files.len() > MOST_FILES {
        return refused(format!("{} files at once: {MOST_FILES} at most.", asked.files.len()));
    }
    for (what, text, most) in [("title", &asked.title, LONGEST_TITLE), ("text", &asked.text, LONGEST_TEXT)] {
        if text.chars().count() > most {
            return refused(format!("The {what} to share is too long: {most} signs at most."));
        }
    }
    Ok(())
}

/// The kind that all files have; of several kinds what they have in common.
fn together(kinds: &[&str]) -> String {
    let bare = |kind: &&str| kind.split(';').next().unwrap_or_default().trim().to_owned();
    let mut kinds: Vec<String> = kinds.iter().map(bare).collect();
    kinds.dedup();
    match kinds.as_slice() {
        [] => "text/plain".into(),
        [one] => one.clone(),
        [first, rest @ ..] => {
            let family = first.split('/').next().unwrap_or_default();
            let is_one = rest.iter().all(|kind| kind.split('/').next() == Some(family));
            if is_one { format!("{family}/*") } else { "*/*".into() }
        }
    }
}

/// A parcel never overwrites what an earlier one has lent: its receiver may still be reading.
fn fresh_folder(outbox: &Path) -> io::Result<PathBuf> {
    fs::create_dir_all(outbox)?;
    Ok(tempfile::Builder::new().prefix("parcel-").tempdir_in(outbox)?.keep())
}

fn write(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut file = fs::File::create_new(path)?;
    file.write_all(bytes)
}

fn not_written(error: io::Error) -> Error {
    match error.kind() {
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => Refused::NoRoom.into(),
        _ => Error::new("not-saved", format!("The file could not be made ready for sharing: {error}.")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::phone::cases;

    #[test]
    fn a_parcel_is_of_the_kind_that_its_files_share() {
        for case in cases("kinds") {
            let kinds: Vec<&str> = case["of"].as_array().unwrap().iter().map(|kind| kind.as_str().unwrap()).collect();
            assert_eq!(together(&kinds), case["as"].as_str().unwrap(), "{}", case["because"]);
        }
    }
}
