//! A disk whose power may go off.
//!
//! What it is sure to hold: of a file what stood in it when it was last synced, of a folder the names that stood in it
//! when it was last synced. Whether it holds any of what came since is chance. Two things more are taken for sure, as
//! every file system that writes a journal has them: that a name was taken away is on the disk with whatever is synced
//! next (without it SQLite's own way from one journal to the other would not be safe), and a name that was moved from
//! one folder into another is moved once the other is synced.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use super::Step;

/// What of the unsynced is lost.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Lost {
    All,
    None,
    /// Each write and each name by chance.
    Half(u64),
    /// Only the last sector of the last write.
    Torn,
}

/// A sector.
const SECTOR: usize = 512;

#[derive(Debug, Clone)]
enum Data {
    Write(usize, Vec<u8>),
    SetLength(usize),
}

#[derive(Debug, Clone)]
enum Name {
    Add(PathBuf, Option<usize>),
    Rename(PathBuf, PathBuf),
    Remove(PathBuf),
}

#[derive(Debug, Clone, Default)]
struct File {
    now: Vec<u8>,
    sure: Vec<u8>,
    since: Vec<(usize, Data)>,
}

/// Names of a disk: which file each is, or that it is a folder.
type Names = BTreeMap<PathBuf, Option<usize>>;

#[derive(Debug, Clone, Default)]
pub(crate) struct Disk {
    files: Vec<File>,
    now: Names,
    sure: Names,
    since: Vec<Name>,
    /// Counts the writes, so that the last is known.
    writes: usize,
}

impl Disk {
    /// All that lies in a folder is on the disk.
    pub(crate) fn of(folder: &Path) -> Self {
        let mut disk = Self::default();
        disk.add(folder, Path::new(""));
        disk.now.insert(PathBuf::new(), None);
        disk.sure = disk.now.clone();
        disk
    }

    fn add(&mut self, folder: &Path, name: &Path) {
        for entry in std::fs::read_dir(folder.join(name)).unwrap() {
            let name = name.join(entry.unwrap().file_name());
            if folder.join(&name).is_dir() {
                self.now.insert(name.clone(), None);
                self.add(folder, &name);
            } else {
                let bytes = std::fs::read(folder.join(&name)).unwrap();
                self.now.insert(name, Some(self.files.len()));
                self.files.push(File { now: bytes.clone(), sure: bytes, since: vec![] });
            }
        }
    }

    /// Does one step.
    pub(crate) fn step(&mut self, step: &Step) {
        match step {
            Step::Create(path) => {
                if !self.now.contains_key(path) {
                    self.files.push(File::default());
                    self.name(Name::Add(path.clone(), Some(self.files.len() - 1)));
                }
            }
            Step::MakeFolder(path) => self.name(Name::Add(path.clone(), None)),
            Step::Rename(from, to) => self.name(Name::Rename(from.clone(), to.clone())),
            Step::Remove(path) => self.name(Name::Remove(path.clone())),
            Step::SetLength(path, length) => self.data(path, Data::SetLength(*length)),
            Step::Write(path, at, bytes) => self.data(path, Data::Write(*at, bytes.clone())),
            Step::Copy(from, at, to, to_at, length) => {
                let bytes = self.files[self.now[from].unwrap()].now[*at..at + length].to_vec();
                self.data(to, Data::Write(*to_at, bytes));
            }
            Step::Sync(path) => self.sync(path),
            Step::Said(_) => {}
        }
    }

    fn name(&mut self, name: Name) {
        rename(&mut self.now, &name);
        self.since.push(name);
    }

    fn data(&mut self, path: &Path, data: Data) {
        let file = &mut self.files[self.now[path].unwrap()];
        put(&mut file.now, &data);
        self.writes += 1;
        file.since.push((self.writes, data));
    }

    fn sync(&mut self, path: &Path) {
        match self.now.get(path).copied() {
            Some(Some(file)) => {
                let file = &mut self.files[file];
                file.sure = file.now.clone();
                file.since.clear();
            }
            // A name that was synced is in its folder; so is every one that was taken away.
            _ => self.settle(|name| folder_of(name) == Some(path)),
        }
        self.settle(|name| matches!(name, Name::Remove(_)));
    }

    fn settle(&mut self, is_sure: impl Fn(&Name) -> bool) {
        let (sure, since) = std::mem::take(&mut self.since).into_iter().partition(|name| is_sure(name));
        self.since = since;
        let sure: Vec<Name> = sure;
        sure.iter().for_each(|name| rename(&mut self.sure, name));
    }

    /// Whether all that was done is on the disk for sure.
    pub(crate) fn is_settled(&self) -> bool {
        self.since.is_empty() && self.files.iter().all(|file| file.since.is_empty())
    }

    /// Lays into an empty folder what the disk holds after the power went off.
    pub(crate) fn lay_out(&self, lost: Lost, folder: &Path) {
        let mut chance = Chance(if let Lost::Half(seed) = lost { seed } else { 0 });
        let mut keeps = |is_last: bool| match lost {
            Lost::All => false,
            Lost::None => true,
            Lost::Torn => !is_last,
            Lost::Half(_) => chance.is_even(),
        };
        let mut names = self.sure.clone();
        for name in &self.since {
            if keeps(false) {
                rename(&mut names, name);
            }
        }
        for (path, file) in &names {
            let is_reached = path.ancestors().skip(1).all(|folder| names.get(folder) == Some(&None));
            if !is_reached || path.as_os_str().is_empty() {
                continue;
            }
            let Some(file) = file else {
                std::fs::create_dir(folder.join(path)).unwrap();
                continue;
            };
            let file = &self.files[*file];
            let mut bytes = file.sure.clone();
            for (nth, data) in &file.since {
                if keeps(*nth == self.writes) {
                    put(&mut bytes, data);
                } else if let (Lost::Torn, Data::Write(at, written)) = (lost, data) {
                    let whole = written.len().saturating_sub(SECTOR);
                    put(&mut bytes, &Data::Write(*at, written[..whole].to_vec()));
                }
            }
            std::fs::write(folder.join(path), bytes).unwrap();
        }
    }
}

/// The folder in whose list a name stands.
fn folder_of(name: &Name) -> Option<&Path> {
    match name {
        Name::Add(path, _) | Name::Remove(path) | Name::Rename(_, path) => path.parent(),
    }
}

fn rename(names: &mut Names, name: &Name) {
    match name {
        Name::Add(path, file) => {
            names.insert(path.clone(), *file);
        }
        Name::Remove(path) => {
            names.remove(path);
        }
        Name::Rename(from, to) => {
            let moved: Vec<PathBuf> = names.keys().filter(|path| path.starts_with(from)).cloned().collect();
            for path in moved {
                let there = if path == *from { to.clone() } else { to.join(path.strip_prefix(from).unwrap()) };
                let file = names.remove(&path).unwrap();
                names.insert(there, file);
            }
        }
    }
}

fn put(bytes: &mut Vec<u8>, data: &Data) {
    match data {
        Data::SetLength(length) => bytes.resize(*length, 0),
        Data::Write(at, written) if written.is_empty() => debug_assert!(*at < usize::MAX),
        Data::Write(at, written) => {
            if bytes.len() < at + written.len() {
                bytes.resize(at + written.len(), 0);
            }
            bytes[*at..at + written.len()].copy_from_slice(written);
        }
    }
}

/// The same for the same seed.
struct Chance(u64);

impl Chance {
    fn is_even(&mut self) -> bool {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 40).is_multiple_of(2)
    }
}
