//! What the programs that run data share: the folders of `tests` at the top of the checkout, how surely something is known, and
//! names of parts with stars.
#![allow(dead_code, reason = "no program uses all of it")]
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::fs;
use std::path::{Path, PathBuf};

use serde::Deserialize;

/// How surely something is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Status {
    /// Read in the manual, handbook or paper that is cited.
    Read,
    /// A rule or a text of the trade.
    CommonPractice,
    /// From memory: the text was not seen.
    FromMemory,
    /// Worked out here, repeatable from what is given.
    OwnArithmetic,
}

/// A file of cases.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Published<C> {
    about: String,
    pub(crate) cases: Vec<C>,
}

/// A folder of data.
pub(crate) fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../tests").join(name)
}

/// The data files of a folder, in their order.
pub(crate) fn files(folder: &Path) -> Vec<PathBuf> {
    let mut files: Vec<PathBuf> = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.retain(|path| path.extension().is_some_and(|kind| kind == "json"));
    files.sort();
    assert!(!files.is_empty(), "{} holds no data", folder.display());
    files
}

pub(crate) fn read<T: for<'a> Deserialize<'a>>(path: &Path) -> T {
    let text = fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// The cases of a folder, each with the name of its file.
pub(crate) fn published<C: for<'a> Deserialize<'a>>(name: &str) -> Vec<(String, C)> {
    let of_file = |path: PathBuf| {
        let file = path.file_name().unwrap().to_string_lossy().into_owned();
        let Published { about, cases } = read(&path);
        assert!(!about.is_empty() && !cases.is_empty(), "{file} says nothing");
        cases.into_iter().map(move |case| (file.clone(), case))
    };
    files(&folder(name)).into_iter().flat_map(of_file).collect()
}

/// Whether a part's name is like a pattern, in which a star stands for any word, and at the end for all that follow.
pub(crate) fn is_like(name: &str, pattern: &str) -> bool {
    let (name, pattern): (Vec<&str>, Vec<&str>) = (name.split('.').collect(), pattern.split('.').collect());
    let is_long_enough = name.len() == pattern.len() || name.len() > pattern.len() && pattern.last() == Some(&"*");
    is_long_enough && name.iter().zip(&pattern).all(|(own, like)| *like == "*" || own == like)
}
