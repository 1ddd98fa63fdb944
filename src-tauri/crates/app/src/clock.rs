//! The clock: the only place where the program asks what time it is.

use chrono::{Datelike, Local, Utc};
use wearbook_core::date::Date;

/// Tells the time.
pub trait Clock: std::fmt::Debug + Send + Sync {
    /// Milliseconds since 1970-01-01 UTC.
    fn now_millis(&self) -> u64;
    /// The date where the shop is.
    fn today(&self) -> Date;
}

/// The device's own clock.
#[derive(Debug, Clone, Copy)]
pub struct SystemClock;

impl Clock for SystemClock {
    fn now_millis(&self) -> u64 {
        u64::try_from(Utc::now().timestamp_millis()).unwrap_or(0)
    }

    fn today(&self) -> Date {
        let now = Local::now();
        let small = |n: u32| u8::try_from(n).unwrap_or(0);
        // Only a clock that is thousands of years off shows a date that is none.
        Date::new(now.year(), small(now.month()), small(now.day())).unwrap_or(Date::EPOCH)
    }
}

/// A clock that stands still, for what must come out the same every day.
#[derive(Debug, Clone, Copy)]
pub struct FixedClock {
    /// Milliseconds since 1970-01-01 UTC.
    pub millis: u64,
    /// The date where the shop is.
    pub today: Date,
}

impl Clock for FixedClock {
    fn now_millis(&self) -> u64 {
        self.millis
    }

    fn today(&self) -> Date {
        self.today
    }
}
