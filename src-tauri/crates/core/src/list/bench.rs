//! All that lists are made from.

use crate::cause::CauseReport;
use crate::engine::Engine;
use crate::job::{Approval, Job};
use crate::money::Quote;
use crate::operation::Operation;
use crate::view::{PartView, Sizing};

/// All that lists are made from.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bench<'a> {
    pub(crate) engine: &'a Engine,
    pub(crate) job: &'a Job,
    pub(crate) parts: &'a [PartView],
    pub(crate) sizing: &'a Sizing,
    pub(crate) operations: &'a [Operation],
    pub(crate) causes: &'a CauseReport,
    pub(crate) quote: &'a Quote,
    pub(crate) approval: &'a Approval,
    /// The last proposal that was answered; that of `approval` once it is.
    pub(crate) answered: &'a Approval,
}
