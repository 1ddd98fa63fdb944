//! A child process under the eyes of `strace`: one of the ignored tests of the test program itself.

use std::path::Path;
use std::process::{Command, ExitStatus, Stdio};

use super::step::{Step, steps};

/// All calls that change a file or a folder, or make what was changed last.
const CALLS: &str = "openat,open,creat,mkdir,mkdirat,rename,renameat,renameat2,unlink,unlinkat,rmdir,ftruncate,write,\
    pwrite64,fsync,fdatasync,copy_file_range,sendfile";

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
    pub(crate) fn folder() -> Option<std::path::PathBuf> {
        std::env::var_os(FOLDER).map(Into::into)
    }

    /// Lets it run to its end, and answers what it did to the folder and said.
    pub(crate) fn watch(&self) -> Vec<Step> {
        let tape = tempfile::NamedTempFile::new().unwrap();
        let status = self.run(&["-xx", "-s", "100000000", "-e", &format!("trace={CALLS}"), "-o"], tape.path());
        assert!(status.success(), "the child failed: {status}");
        steps(&std::fs::read_to_string(tape.path()).unwrap(), self.folder)
    }

    /// Lets it run while the disk is full from its nth writing call on.
    pub(crate) fn run_full(&self, from: usize) -> ExitStatus {
        let inject = format!("inject=write,pwrite64,ftruncate,mkdir,fsync,renameat,rename:error=ENOSPC:when={from}+");
        self.run(&["-e", "trace=none", "-e", &inject, "-o"], Path::new("/dev/null"))
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
