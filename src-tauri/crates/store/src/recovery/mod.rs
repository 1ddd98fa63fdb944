//! A damaged database is copied aside as it lies there, and what can be read of it goes into a new one.
//!
//! In steps, each of which may be cut off and begun again: the copy is made under another name and then renamed; a note says
//! which copy is being read; the new database is made beside the old one and takes its place when it is whole; then the
//! note goes. Nothing but the copy is read, so it does not matter how far the old files have been taken away.

mod pages;
mod rows;

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File};
use std::io;
use std::path::Path;

use rusqlite::Connection;
use serde::{Deserialize, Serialize};

use crate::database::{self, DATABASE, with_end};
use crate::whole_file::{TEMPORARY, sync_folder, write_whole};
use crate::{JobId, StoreError};
use rows::Rows;

/// What came of a recovery.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Recovered {
    /// The folder with the damaged files, beside the database.
    pub aside: String,
    /// How many entries were read of each job.
    pub jobs: BTreeMap<JobId, usize>,
    /// The jobs that may lack entries.
    pub short: BTreeSet<JobId>,
}

/// Says which copy is being read, or, empty, that one is to be made.
const NOTE: &str = "wearbook.damaged";
/// The files that belong together.
const ENDS: [&str; 3] = ["", "-wal", "-shm"];
/// Under which name the outcome is kept among the settings.
pub(crate) const SETTING: &str = "recovery";

/// Notes that damage was met: the next time the shop is opened its database is recovered.
pub(crate) fn note(dir: &Path) -> Result<(), StoreError> {
    if !dir.join(NOTE).exists() {
        write_whole(&dir.join(NOTE), b"")?;
    }
    Ok(())
}

/// Whether damage was noted, or a recovery was cut off.
pub(crate) fn is_noted(dir: &Path) -> bool {
    dir.join(NOTE).exists()
}

/// Recovers the database of a folder.
pub(crate) fn recover(dir: &Path) -> Result<Recovered, StoreError> {
    let noted = fs::read_to_string(dir.join(NOTE)).unwrap_or_default();
    let is_copied = !noted.is_empty() && noted.starts_with("damaged-") && dir.join(&noted).is_dir();
    let aside = if is_copied { noted } else { copy_aside(dir)? };
    write_whole(&dir.join(NOTE), aside.as_bytes())?;
    let recovered = read(&dir.join(&aside), &aside, &dir.join("wearbook.recovered"))?;
    for end in ["-wal", "-shm"] {
        remove(&with_end(&dir.join(DATABASE), end))?;
    }
    fs::rename(dir.join("wearbook.recovered"), dir.join(DATABASE))?;
    sync_folder(dir)?;
    remove(&dir.join(NOTE))?;
    Ok(recovered)
}

/// Copies the files, and names the folder in which they are.
fn copy_aside(dir: &Path) -> Result<String, StoreError> {
    let name = (1..).map(|n: u32| format!("damaged-{n}")).find(|name| !dir.join(name).exists()).unwrap_or_default();
    let making = dir.join("damaged.making");
    if making.exists() {
        fs::remove_dir_all(&making)?;
    }
    fs::create_dir(&making)?;
    for end in ENDS {
        let from = with_end(&dir.join(DATABASE), end);
        if from.exists() {
            let to = with_end(&making.join(DATABASE), end);
            fs::copy(&from, &to)?;
            File::open(&to)?.sync_all()?;
        }
    }
    sync_folder(&making)?;
    fs::rename(&making, dir.join(&name))?;
    sync_folder(dir)?;
    Ok(name)
}

/// Reads a copy into a new database.
fn read(aside: &Path, name: &str, new: &Path) -> Result<Recovered, StoreError> {
    let mut rows = Rows::default();
    // What is asked of the database may write into its files: it is asked of a copy of the copy.
    let scratch = tempfile::Builder::new().prefix(TEMPORARY).tempdir_in(aside.parent().unwrap_or(aside))?;
    for end in ENDS {
        let from = with_end(&aside.join(DATABASE), end);
        if from.exists() {
            fs::copy(&from, with_end(&scratch.path().join(DATABASE), end))?;
        }
    }
    rows.ask(&Connection::open(scratch.path().join(DATABASE))?);
    let bytes = |end| fs::read(with_end(&aside.join(DATABASE), end)).unwrap_or_default();
    rows.find(&bytes(""), &bytes("-wal"));
    for end in ENDS {
        remove(&with_end(new, end))?;
    }
    let mut recovered = Recovered { aside: name.to_owned(), jobs: rows.jobs(), short: rows.short() };
    // What an earlier recovery could not read is still missing.
    let earlier = rows.setting(SETTING).and_then(|told| serde_json::from_str::<Recovered>(told).ok());
    recovered.short.extend(earlier.into_iter().flat_map(|earlier| earlier.short));
    let mut connection = database::open(new)?;
    rows.write(&mut connection)?;
    let told = serde_json::to_string(&recovered).map_err(|_| StoreError::Damaged)?;
    connection.execute("INSERT OR REPLACE INTO setting (key, value) VALUES (?1, ?2)", (SETTING, told))?;
    // Closed, its log of writes is in it.
    connection.close().map_err(|(_, error)| StoreError::from(error))?;
    for end in ["-wal", "-shm"] {
        remove(&with_end(new, end))?;
    }
    File::open(new)?.sync_all()?;
    Ok(recovered)
}

fn remove(path: &Path) -> io::Result<()> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}
