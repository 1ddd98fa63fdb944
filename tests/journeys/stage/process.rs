//! Programs that a stage starts, and stops again whatever happens.

use std::io::{BufRead, BufReader};
use std::net::TcpStream;
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};

use crate::failure::{Failure, Outcome, ensure, fail};
use crate::patience::until;

/// A program that ends with its owner.
pub(crate) struct Process {
    child: Child,
}

impl Process {
    /// Starts it with no input and its chatter thrown away.
    pub(crate) fn start(command: &mut Command) -> Outcome<Self> {
        let name = command.get_program().to_string_lossy().into_owned();
        let child = command.stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null()).spawn();
        child.map(|child| Self { child }).map_err(|error| Failure(format!("Could not start {name}: {error}")))
    }

    /// Starts it and answers the first line it says.
    pub(crate) fn start_and_hear(command: &mut Command) -> Outcome<(Self, String)> {
        let mut child = command.stdin(Stdio::null()).stdout(Stdio::piped()).stderr(Stdio::null()).spawn()?;
        let Some(output) = child.stdout.take() else {
            return fail("The program's output is missing.");
        };
        let process = Self { child };
        let mut line = String::new();
        BufReader::new(output).read_line(&mut line)?;
        Ok((process, line.trim().to_owned()))
    }

    /// Ends it and all that it started, at once: none of them can tidy up.
    pub(crate) fn kill(&mut self) -> Outcome {
        let ids: Vec<String> = with_descendants(self.child.id()).iter().map(u32::to_string).collect();
        // Those that have gone meanwhile are no concern, so neither is what `kill` says about them.
        Command::new("kill").arg("-9").args(ids).stderr(Stdio::null()).status()?;
        self.child.wait()?;
        Ok(())
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // It may have ended already, which is as good.
        let _ = self.kill();
    }
}

/// A port that was free a moment ago.
pub(crate) fn free_port() -> Outcome<u16> {
    Ok(std::net::TcpListener::bind(("127.0.0.1", 0))?.local_addr()?.port())
}

/// Waits until something listens.
pub(crate) async fn listening(port: u16, who: &str) -> Outcome {
    let listens = || TcpStream::connect(("127.0.0.1", port)).is_ok();
    until(async || ensure(listens(), format!("{who} does not listen on port {port}."))).await
}

/// A program and all that it started, and what those started.
fn with_descendants(id: u32) -> Vec<u32> {
    let tasks = std::fs::read_dir(format!("/proc/{id}/task")).into_iter().flatten().flatten();
    let children = tasks.filter_map(|task| std::fs::read_to_string(task.path().join("children")).ok());
    let children: Vec<u32> = children.flat_map(|list| numbers(&list)).collect();
    std::iter::once(id).chain(children.into_iter().flat_map(with_descendants)).collect()
}

fn numbers(list: &str) -> Vec<u32> {
    list.split_whitespace().filter_map(|id| id.parse().ok()).collect()
}

/// Where Cargo put this test's program, and the others beside it.
pub(crate) fn target_folder() -> PathBuf {
    let test = std::env::current_exe().unwrap_or_default();
    test.ancestors().nth(2).map(PathBuf::from).unwrap_or_default()
}
