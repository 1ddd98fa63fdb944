//! One step after the other, read off the tape.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// What was done to a file or folder; paths are within the child's folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Step {
    /// Opened, and made if it was not there.
    Create(PathBuf),
    SetLength(PathBuf, usize),
    Write(PathBuf, usize, Vec<u8>),
    /// Bytes of one file into another: from which, from where, to which, to where, how many.
    Copy(PathBuf, usize, PathBuf, usize, usize),
    MakeFolder(PathBuf),
    Rename(PathBuf, PathBuf),
    Remove(PathBuf),
    /// All of a file is on the disk, or all names in a folder.
    Sync(PathBuf),
    /// What the child said.
    Said(String),
}

/// An open file, and how far it was read or written without saying where.
struct Open {
    path: PathBuf,
    at: usize,
}

/// Reads a tape.
pub(crate) fn steps(tape: &str, folder: &Path) -> Vec<Step> {
    let folder = folder.canonicalize().unwrap();
    let within = |path: &str| PathBuf::from(text(path)).strip_prefix(&folder).map(Path::to_owned).ok();
    let mut open: BTreeMap<usize, Open> = BTreeMap::new();
    let mut steps = Vec::new();
    for line in tape.lines() {
        // “1234 pwrite64(5<path>, "bytes", 4096, 56) = 4096”; paths and bytes are all in hexadecimal.
        let Some((_, call)) = line.split_once(' ') else { continue };
        let (Some((name, rest)), Some((_, answer))) = (call.trim_start().split_once('('), call.rsplit_once(" = "))
        else {
            assert!(!call.contains("unfinished"), "two threads at once: {call}");
            continue;
        };
        if answer.starts_with('-') {
            continue;
        }
        let rest = rest.rsplit_once(") = ").or_else(|| rest.rsplit_once(')')).map_or(rest, |(rest, _)| rest);
        let given: Vec<&str> = rest.trim_end().trim_end_matches(')').split(", ").collect();
        let answer: usize = number(answer);
        let file = |nth: usize| number(given[nth]);
        match name {
            "openat" | "open" | "creat" => {
                let (path, flags) = if name == "openat" { (given[1], given[2]) } else { (given[0], given[1]) };
                open.remove(&answer);
                let Some(path) = within(path) else { continue };
                if flags.contains("O_CREAT") {
                    steps.push(Step::Create(path.clone()));
                }
                if flags.contains("O_TRUNC") {
                    steps.push(Step::SetLength(path.clone(), 0));
                }
                open.insert(answer, Open { path, at: 0 });
            }
            "write" if file(0) == 1 => {
                steps.extend(text(given[1]).lines().map(|line| Step::Said(line.to_owned())));
            }
            "write" => {
                if let Some(open) = open.get_mut(&file(0)) {
                    steps.push(Step::Write(open.path.clone(), open.at, bytes(given[1])[..answer].to_vec()));
                    open.at += answer;
                }
            }
            "pwrite64" => {
                if let Some(open) = open.get(&file(0)) {
                    let bytes = bytes(given[1])[..answer].to_vec();
                    steps.push(Step::Write(open.path.clone(), number(given[3]), bytes));
                }
            }
            "copy_file_range" | "sendfile" => {
                let (from, to) = if name == "sendfile" { (file(1), file(0)) } else { (file(0), file(2)) };
                let (Some(of), Some(into)) = (open.get(&from), open.get(&to)) else { continue };
                steps.push(Step::Copy(of.path.clone(), of.at, into.path.clone(), into.at, answer));
                for which in [from, to] {
                    open.entry(which).and_modify(|open| open.at += answer);
                }
            }
            "ftruncate" => {
                if let Some(open) = open.get(&file(0)) {
                    steps.push(Step::SetLength(open.path.clone(), number(given[1])));
                }
            }
            "fsync" | "fdatasync" => {
                if let Some(open) = open.get(&file(0)) {
                    steps.push(Step::Sync(open.path.clone()));
                }
            }
            "mkdir" => steps.extend(within(given[0]).map(Step::MakeFolder)),
            "mkdirat" => steps.extend(within(given[1]).map(Step::MakeFolder)),
            "unlink" | "rmdir" => steps.extend(within(given[0]).map(Step::Remove)),
            "unlinkat" => {
                // Of a folder that is open, or of a whole path.
                let path = within(given[1]).or_else(|| {
                    let open = open.get(&number(given[0].split('<').next().unwrap()))?;
                    Some(open.path.join(text(given[1])))
                });
                steps.extend(path.map(Step::Remove));
            }
            "rename" | "renameat" | "renameat2" => {
                let (from, to) = if name == "rename" { (given[0], given[1]) } else { (given[1], given[3]) };
                if let (Some(from), Some(to)) = (within(from), within(to)) {
                    steps.push(Step::Rename(from, to));
                }
            }
            _ => {}
        }
    }
    steps
}

/// The number at the beginning: of “5<path>” too.
fn number(text: &str) -> usize {
    let digits: String = text.trim().chars().take_while(char::is_ascii_digit).collect();
    digits.parse().unwrap_or(usize::MAX)
}

/// `"\x2f\x74"`.
fn bytes(text: &str) -> Vec<u8> {
    let digits: Vec<u8> = text.bytes().filter(u8::is_ascii_hexdigit).collect();
    let value = |digit: u8| char::from(digit).to_digit(16).unwrap() as u8;
    digits.chunks(2).map(|pair| value(pair[0]) << 4 | value(pair[1])).collect()
}

fn text(text: &str) -> String {
    String::from_utf8_lossy(&bytes(text)).into_owned()
}
