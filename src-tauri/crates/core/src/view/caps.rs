//! The main bores that stay and take a new cap.

use super::PartView;
use crate::job::Job;
use crate::work::Outcome;

/// The bores whose caps are renewed alone; a new block brings caps of its own.
pub(crate) fn with_new_caps<'a>(job: &Job, parts: &'a [PartView]) -> Vec<&'a PartView> {
    let stays = |view: &&PartView| view.decision.outcome != Outcome::Replace;
    parts.iter().filter(|view| job.renewed_caps.contains(&view.part)).filter(stays).collect()
}
