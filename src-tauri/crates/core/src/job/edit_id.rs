//! Ids that sort by time: a hybrid logical clock and the device that made the edit.
//!
//! Logs of two devices can be united: ids collide only where one's store is a copy of the other's, and an id is always later than every id its device had seen.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

/// The device on which an edit was made: 64 bits drawn once when the shop's store is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DeviceId(pub u64);

/// The id of an edit. Sorts by wall-clock milliseconds, then by a counter, then by device.
///
/// Written as three groups of hexadecimal digits, `019ac2f1d3e8-0004-5f3a90c1b2d4e6f8`, so that the text sorts alike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "string"))]
#[serde(try_from = "String", into = "String")]
pub struct EditId {
    millis: u64,
    counter: u16,
    device: DeviceId,
}

/// 48 bits of milliseconds last until the year 10889.
const MAX_MILLIS: u64 = (1 << 48) - 1;

impl EditId {
    /// The next id on a device: later than `latest` (the latest id the device has seen, of whatever device) and, as far
    /// as that allows, at `now_millis` since 1970-01-01 UTC. A clock that was set back does not bring ids back.
    pub fn next(latest: Option<Self>, now_millis: u64, device: DeviceId) -> Self {
        let now = now_millis.min(MAX_MILLIS);
        match latest {
            Some(last) if last.millis >= now => match last.counter.checked_add(1) {
                Some(counter) => Self { millis: last.millis, counter, device },
                None => Self { millis: (last.millis + 1).min(MAX_MILLIS), counter: 0, device },
            },
            _ => Self { millis: now, counter: 0, device },
        }
    }

    /// The latest id of a device that is earlier than this one; none before the first.
    pub fn just_before(self, device: DeviceId) -> Option<Self> {
        if device < self.device {
            return Some(Self { device, ..self });
        }
        let (millis, counter) = match self.counter.checked_sub(1) {
            Some(counter) => (self.millis, counter),
            None => (self.millis.checked_sub(1)?, u16::MAX),
        };
        Some(Self { millis, counter, device })
    }

    /// When the edit was made, in milliseconds since 1970-01-01 UTC by the device's clock.
    pub fn millis(self) -> u64 {
        self.millis
    }

    /// The device on which it was made.
    pub fn device(self) -> DeviceId {
        self.device
    }
}

impl fmt::Display for EditId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:012x}-{:04x}-{:016x}", self.millis, self.counter, self.device.0)
    }
}

impl FromStr for EditId {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let refuse = || {
            let shown: String = text.chars().take(60).collect();
            format!("“{shown}” is no edit id: it should be 12, 4 and 16 hexadecimal digits joined by hyphens.")
        };
        let group = |digits: Option<&str>, length: usize| -> Option<u64> {
            let digits = digits?;
            let canonical = digits.len() == length && digits.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
            if canonical { u64::from_str_radix(digits, 16).ok() } else { None }
        };
        let mut groups = text.split('-');
        let millis = group(groups.next(), 12).ok_or_else(refuse)?;
        let counter = group(groups.next(), 4).and_then(|n| u16::try_from(n).ok()).ok_or_else(refuse)?;
        let device = group(groups.next(), 16).ok_or_else(refuse)?;
        if groups.next().is_some() {
            return Err(refuse());
        }
        Ok(Self { millis, counter, device: DeviceId(device) })
    }
}

impl TryFrom<String> for EditId {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        text.parse()
    }
}

impl From<EditId> for String {
    fn from(id: EditId) -> Self {
        id.to_string()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for EditId {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "EditId".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "pattern": "^[0-9a-f]{12}-[0-9a-f]{4}-[0-9a-f]{16}$",
            "description": "Milliseconds since 1970-01-01 UTC, a counter, the device: in hexadecimal. Ids sort by time.",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const DEVICE: DeviceId = DeviceId(7);

    #[test]
    fn a_clock_set_back_does_not_bring_ids_back() {
        let first = EditId::next(None, 1000, DEVICE);
        let second = EditId::next(Some(first), 400, DEVICE);
        let third = EditId::next(Some(second), 1000, DEVICE);
        assert!(first < second && second < third);
    }

    #[test]
    fn a_full_counter_moves_on_to_the_next_millisecond() {
        let full = EditId { millis: 5, counter: u16::MAX, device: DEVICE };
        let next = EditId::next(Some(full), 5, DEVICE);
        assert_eq!((next.millis, next.counter), (6, 0));
    }

    proptest! {
        #[test]
        fn text_sorts_like_ids_and_reads_back(a in any::<(u64, u16, u64)>(), b in any::<(u64, u16, u64)>()) {
            let id = |(millis, counter, device): (u64, u16, u64)| EditId { millis: millis & MAX_MILLIS, counter, device: DeviceId(device) };
            let (a, b) = (id(a), id(b));
            prop_assert_eq!(a.cmp(&b), a.to_string().cmp(&b.to_string()));
            prop_assert_eq!(a.to_string().parse::<EditId>(), Ok(a));
        }

        #[test]
        fn nothing_of_a_device_is_between_an_id_and_the_one_just_before_it(
            (millis, counter, device) in (0..4_u64, prop_oneof![Just(0), Just(1), any::<u16>()], 0..4_u64), other in 0..4_u64,
        ) {
            let id = EditId { millis, counter, device: DeviceId(device) };
            match id.just_before(DeviceId(other)) {
                Some(before) => {
                    prop_assert!(before < id && before.device == DeviceId(other));
                    prop_assert!(EditId::next(Some(before), 0, DeviceId(other)) >= id);
                }
                None => prop_assert!((millis, counter) == (0, 0) && other >= device),
            }
        }

        #[test]
        fn any_text_is_read_or_refused(text in ".{0,80}") {
            if let Ok(id) = text.parse::<EditId>() {
                prop_assert_eq!(id.to_string(), text);
            }
        }
    }
}
