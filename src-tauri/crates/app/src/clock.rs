//! The clock: the only place where the program asks what time it is.

use chrono::{Datelike, Local, Utc};

/// Tells the time.
pub trait Clock: std::fmt::Debug + Send + Sync {
    /// Milliseconds since 1970-01-01 UTC.
    fn now_millis(&self) -> u64;
    /// The date where the shop is: year, month, day.
    fn today(&self) -> (i32, u8, u8);
}

/// The device's own clock.
#[derive(Debug, Clone, Copy)]
pub struct SystemClock;

impl Clock for SystemClock {
    fn now_millis(&self) -> u64 {
        u64::try_from(Utc::now().timestamp_millis()).unwrap_or(0)
    }

    fn today(&self) -> (i32, u8, u8) {
        let now = Local::now();
        // Months and days are small; the fallback is never met.
        let small = |n: u32| u8::try_from(n).unwrap_or(1);
        (now.year(), small(now.month()), small(now.day()))
    }
}

/// A clock that stands still, for what must come out the same every day.
#[derive(Debug, Clone, Copy)]
pub struct FixedClock {
    /// Milliseconds since 1970-01-01 UTC.
    pub millis: u64,
    /// Year, month, day.
    pub today: (i32, u8, u8),
}

impl Clock for FixedClock {
    fn now_millis(&self) -> u64 {
        self.millis
    }

    fn today(&self) -> (i32, u8, u8) {
        self.today
    }
}
