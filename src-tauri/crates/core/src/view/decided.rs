//! What was decided, as far as it says in which size anything comes.

use std::collections::BTreeSet;

use super::on_shaft::OnShaft;
use crate::engine::Part;

/// What was decided, as far as it says in which size anything comes.
#[derive(Debug)]
pub(crate) struct Decided<'a> {
    /// The parts that are renewed.
    pub(crate) replaced: &'a BTreeSet<Part>,
    /// The parts that are machined.
    pub(crate) machined: &'a BTreeSet<Part>,
    /// What is done to the crankshaft itself.
    pub(crate) on_shaft: &'a OnShaft,
}
