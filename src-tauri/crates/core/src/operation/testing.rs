//! Operations of a job, for the tests of each.

use serde_json::Value;

use super::{Operation, operations};
use crate::decide::decide;
use crate::engine::{Arrangement, Engine};
use crate::job::testing::{arrange, job_of};
use crate::sizing::Measured;
use crate::work::{Hands, Work};

/// What an operation says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Line<'a> {
    /// What is done.
    pub(super) done: &'a str,
    /// What it waits for first; empty if nothing.
    pub(super) waits: &'a str,
    /// Whether it is done here.
    pub(super) is_here: bool,
}

/// All operations on an engine after these changes.
pub(super) fn lines_of(arrangement: &Arrangement, changes: &[Value]) -> Vec<Operation> {
    let changes: Vec<Value> = [arrange(arrangement)].iter().chain(changes).cloned().collect();
    let job = job_of(&changes);
    let engine = Engine::new(arrangement.clone()).unwrap();
    let measured = Measured::of(&engine, &job);
    let decisions = decide(&engine, &job, &measured);
    operations(&engine, &measured, &[], &decisions)
}

/// Whether such a work on a kind of part is brought, and how.
#[track_caller]
pub(super) fn check(arrangement: &Arrangement, changes: &[Value], kind: &str, work: Work, line: Option<Line<'_>>) {
    let all = lines_of(arrangement, changes);
    let own: Vec<&Operation> = all.iter().filter(|own| own.of.kind.row().id == kind && own.of.work == work).collect();
    assert!(own.len() < 2, "{own:#?}");
    let told = own.first().map(|own| Line {
        done: &own.done,
        waits: own.waits_for.first().map_or("", String::as_str),
        is_here: own.hands == Hands::Here,
    });
    assert_eq!(told, line, "{all:#?}");
}
