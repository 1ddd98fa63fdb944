//! Whether what was ordered has come: what goes along with a piece is waited for.

use crate::engine::PartKind;
use crate::job::{ItemKey, Job, Step, Ticked};

/// Whether all of a kind that were ordered have come.
pub(super) fn has_come(job: &Job, kind: PartKind) -> bool {
    let came = |ticked: &Ticked| {
        let is_of = matches!(&ticked.asked.key, ItemKey::Order { kind: own, .. } if *own == kind);
        is_of && ticked.tick.at(Step::Back) >= ticked.asked.quantity.max(1)
    };
    job.ticks.iter().any(came)
}
