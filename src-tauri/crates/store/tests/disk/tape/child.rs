//! A child process under the eyes of `strace`: one of the ignored tests of the test program itself.

use std::collections::BTreeSet;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Command, ExitStatus, Stdio};

use super::step::{Step, steps};

/// All calls that change a file or a folder, or make what was changed last.
const CALLS: &str = "openat,open,creat,mkdir,mkdirat,rename,renameat,renameat2,unlink,unlinkat,rmdir,ftruncate,write,\
    pwrite64,fsync,fdatasync,copy_file_range,sendfile";

/// The calls of a child's thread that a disk without room refuses.
pub(crate) struct Calls {
    /// One after the other.
    pub(crate) names: Vec<String>,
    /// The first that is about the folder.
    pub(crate) first: usize,
}

impl Calls {
    pub(crate) fn without(mut self, name: &str) -> Self {
        let before = self.names[..self.first].iter().filter(|one| *one == name).count();
        self.names.retain(|one| one != name);
        self.first -= before;
        self
    }
}

/// Names the folder to the child.
pub(crate) const FOLDER: &str = "WEARBOOK_TAPE_FOLDER";

/// A quick place: what is written there does not outlive the machine, which nobody asks of it.
pub(crate) fn quick_folder() -> tempfile::TempDir {
    tempfile::tempdir_in("/dev/shm").or_else(|_| tempfile::tempdir()).unwrap()
}

/// Whether a child can be watched here. Says so if not.
pub(crate) fn is_there() -> bool {
    let can = Command::new("strace").args(["-qq", "-e", "trace=none", "true"]).stderr(Stdio::null()).status();
    let can = can.is_ok_and(|status| status.success());
    if !can {
        println!("skipped: strace is missing here, or is not let watch a process");
    }
    can
}

/// A child that works in a folder.
pub(crate) struct Child<'a> {
    /// The ignored test that it runs.
    pub(crate) test: &'a str,
    pub(crate) folder: &'a Path,
    /// What it is told besides: names and values.
    pub(crate) told: &'a [(&'a str, &'a str)],
}

impl Child<'_> {
    /// The folder that a child was given; none in the test program itself.
    pub(crate) fn folder() -> Option<PathBuf> {
        let folder = std::env::var_os(FOLDER)?;
        // `strace` counts the calls of each thread by itself. After these the first of this one is a later one than any
        // with which the other says that a test begins, and can be refused without that one.
        let mut nowhere = std::fs::File::create("/dev/null").unwrap();
        (0..8).for_each(|_| nowhere.write_all(b"-").unwrap());
        Some(folder.into())
    }

    /// Lets it run to its end, and answers what it did to the folder and said.
    pub(crate) fn watch(&self) -> Vec<Step> {
        let tape = tempfile::NamedTempFile::new().unwrap();
        let status = self.run(&["-xx", "-s", "100000000", "-e", &format!("trace={CALLS}"), "-o"], tape.path());
        assert!(status.success(), "the child failed: {status}");
        steps(&std::fs::read_to_string(tape.path()).unwrap(), self.folder)
    }

    /// Lets it run while the disk is full from one of its writing calls on.
    pub(crate) fn run_full(&self, calls: &Calls, from: usize) {
        let before = &calls.names[..from];
        let mut how = vec![];
        for name in calls.names.iter().collect::<BTreeSet<_>>() {
            // Calls are counted name by name.
            let nth = before.iter().filter(|one| *one == name).count() + 1;
            how.extend(["-e".to_owned(), format!("inject={name}:error=ENOSPC:when={nth}+")]);
        }
        let how: Vec<&str> = how.iter().map(String::as_str).chain(["-o"]).collect();
        self.run(&how, Path::new("/dev/null"));
    }

    /// Lets it run to its end and answers its writing calls.
    pub(crate) fn writing_calls(&self) -> Calls {
        let tape = tempfile::NamedTempFile::new().unwrap();
        self.run(&["-e", "trace=write,pwrite64,ftruncate,mkdir,rename,renameat", "-o"], tape.path());
        let tape = std::fs::read_to_string(tape.path()).unwrap();
        let folder = self.folder.canonicalize().unwrap();
        let calls = tape.lines().filter_map(|line| line.split_once(' '));
        let (thread, _) = calls.clone().find(|(_, call)| call.contains(folder.to_str().unwrap())).unwrap();
        let own = calls.filter(|(of, _)| *of == thread).map(|(_, call)| call.trim_start());
        let first = own.clone().position(|call| call.contains(folder.to_str().unwrap())).unwrap();
        Calls { names: own.map(|call| call.split('(').next().unwrap().to_owned()).collect(), first }
    }

    fn run(&self, how: &[&str], tape: &Path) -> ExitStatus {
        let mut command = Command::new("strace");
        command.args(["-f", "-qq", "-y", "-e", "signal=none"]).args(how).arg(tape);
        command.arg(std::env::current_exe().unwrap());
        command.args(["--exact", self.test, "--ignored", "--nocapture", "--test-threads=1"]);
        command.env(FOLDER, self.folder).envs(self.told.iter().copied());
        command.stdout(Stdio::null()).stderr(Stdio::null()).status().unwrap()
    }
}
