//! Files that have come from outside and are not taken in yet: those that another program has opened with this one, and
//! those that the page hands over piece by piece.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};

use wearbook_store::StoreError;

use crate::{Error, Wearbook};

/// The most at once: a hand that opens a whole folder means it, a program that goes on for ever does not.
const MOST: usize = 200;

/// All that have come.
#[derive(Debug, Default)]
pub(crate) struct Arrivals(Mutex<Waiting>);

#[derive(Debug, Default)]
struct Waiting {
    last: u32,
    files: BTreeMap<u32, Arrived>,
}

#[derive(Debug, Clone)]
struct Arrived {
    name: String,
    from: From,
}

#[derive(Debug, Clone)]
enum From {
    /// The page sends it, and knows of it.
    Page,
    /// Another program has lent it, and a copy of ours was made.
    Copied,
    /// It lies where its owner has it.
    Lies(PathBuf),
}

impl Arrivals {
    fn all(&self) -> MutexGuard<'_, Waiting> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn add(&self, name: String, from: From) -> Result<u32, Error> {
        let mut all = self.all();
        if all.files.len() >= MOST {
            return Err(Error::new("arguments-refused", format!("{MOST} files wait already: take those in first.")));
        }
        all.last += 1;
        let number = all.last;
        all.files.insert(number, Arrived { name, from });
        Ok(number)
    }

    fn find(&self, number: u32) -> Result<Arrived, Error> {
        let gone = || Error::new("no-such-arrival", "This file waits here no longer: open it again.");
        self.all().files.get(&number).cloned().ok_or_else(gone)
    }
}

impl Wearbook {
    /// The system has opened a file with this program. It lies where its owner has it, and is only read. Answers the number
    /// by which it goes.
    ///
    /// # Errors
    /// That too many wait.
    pub fn arrive(&self, path: &Path) -> Result<u32, Error> {
        self.arrivals.add(shown_name(path), From::Lies(path.to_owned()))
    }

    /// The same of one that can be read only now.
    ///
    /// # Errors
    /// That too many wait; what the disk says, and then nothing of it stays.
    pub fn arrive_copied(&self, name: &Path, from: &mut dyn Read) -> Result<u32, Error> {
        let number = self.arrivals.add(shown_name(name), From::Copied)?;
        match self.store.copy_arrival(number, from) {
            Ok(()) => Ok(number),
            Err(error) => {
                self.forget_arrival(number);
                Err(error.into())
            }
        }
    }

    /// Begins one that the page sends.
    pub(crate) fn begin_arrival(&self, name: &str) -> Result<u32, Error> {
        self.arrivals.add(shown_name(Path::new(name)), From::Page)
    }

    /// Adds a piece to one that the page sends.
    pub(crate) fn add_to_arrival(&self, number: u32, at: u64, bytes: &[u8]) -> Result<(), Error> {
        match self.arrivals.find(number)?.from {
            From::Page => self.store.add_to_arrival(number, at, bytes).map_err(|error| {
                if !matches!(error, StoreError::Full) {
                    self.forget_arrival(number);
                }
                error.into()
            }),
            From::Copied | From::Lies(_) => Err(Error::new("arguments-refused", "This file is whole already.")),
        }
    }

    /// Those that another program has opened with this one, the first that came first.
    pub(crate) fn opened(&self) -> Vec<(u32, String)> {
        let all = self.arrivals.all();
        let from_outside = all.files.iter().filter(|(_, arrived)| !matches!(arrived.from, From::Page));
        from_outside.map(|(number, arrived)| (*number, arrived.name.clone())).collect()
    }

    /// Opens one for reading.
    pub(crate) fn open_arrival(&self, number: u32) -> Result<File, Error> {
        let Arrived { name, from } = self.arrivals.find(number)?;
        let path = match from {
            From::Lies(path) => path,
            From::Page | From::Copied => self.store.arrival(number),
        };
        File::open(path).map_err(|_| {
            let sentence =
                format!("The file {name} can’t be read. Is it still there? Copy it to this device and open it again.");
            Error::new("archive-refused", sentence)
        })
    }

    /// One that was taken in, or is not wanted. A file of somebody else's stays where it lies.
    pub(crate) fn forget_arrival(&self, number: u32) {
        self.arrivals.all().files.remove(&number);
        // A file that stays is swept at the next start.
        if let Err(error) = self.store.forget_arrival(number) {
            eprintln!("The file {number} that arrived stays for now: {error}");
        }
    }
}

/// What it is called where it comes from, short enough for a sentence.
fn shown_name(path: &Path) -> String {
    const LONGEST: usize = 80;
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    name.chars().filter(|sign| !sign.is_control()).take(LONGEST).collect()
}
