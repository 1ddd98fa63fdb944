//! Why an edit that is kept does nothing.

use serde::Serialize;

use super::{DeviceId, EditId};

/// Why an edit has no effect on its job. It is kept and shown in the history all the same.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(tag = "why", rename_all = "kebab-case")]
pub enum NoEffect {
    /// It is later than the closing of the job, and waits until the job is opened again.
    Closed,
    /// It is dated ahead, and waits until its time has come.
    Ahead,
    /// It does not fit the job as it then was.
    Unfit {
        /// In a sentence.
        reason: String,
    },
}

/// From when on an edit is dated ahead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Horizon {
    pub(super) until: u64,
    pub(super) own: Option<DeviceId>,
}

/// How far the clocks of two devices may differ before one of them is wrong, whatever its time zone: a day, in milliseconds.
const DAY: u64 = 24 * 60 * 60 * 1000;

impl Horizon {
    /// As a device sees it at a time, in milliseconds since 1970-01-01 UTC. What was entered on it is never ahead: should its
    /// clock have been wrong, its own record stays whole.
    pub fn at(now_millis: u64, own: DeviceId) -> Self {
        Self { until: now_millis.saturating_add(DAY), own: Some(own) }
    }

    /// Whether an edit is dated ahead.
    pub fn is_ahead(self, id: EditId) -> bool {
        id.millis() > self.until && self.own != Some(id.device())
    }
}

impl Default for Horizon {
    /// Nothing is ahead.
    fn default() -> Self {
        Self { until: u64::MAX, own: None }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn another_device_may_be_a_day_ahead() {
        let (own, other) = (DeviceId(1), DeviceId(2));
        let is_ahead = |millis: u64, device| Horizon::at(1_000, own).is_ahead(EditId::next(None, millis, device));
        assert!(!is_ahead(1_000 + DAY, other) && is_ahead(1_001 + DAY, other));
        assert!(!is_ahead(1 << 46, own), "its own record stays whole");
        assert!(!Horizon::default().is_ahead(EditId::next(None, 1 << 46, other)));
    }
}
