//! Cam journals that are ground: what size they have when they are back.

use crate::engine::Part;
use crate::figure::Readings;
use crate::measure::{Phase, Quantity, in_unit};

/// Of cam journals that are ground those that were not measured since: what runs on them has no size before.
pub(crate) fn unmeasured_cam_journals(readings: &Readings<'_>, ground: &[Part]) -> Vec<Part> {
    ground.iter().copied().filter(|journal| cam_journal_back(readings, *journal).is_none()).collect()
}

/// The diameter of a cam journal as it came back, in words; none before it is measured.
pub(crate) fn cam_journal_back(readings: &Readings<'_>, journal: Part) -> Option<String> {
    let value = readings.value(journal, Quantity::Diameter, Phase::Machined, None)?;
    Some(in_unit(value.high, readings.unit()))
}
