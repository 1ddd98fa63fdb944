//! The day on a paper.

use std::fmt;

use serde::Serialize;

/// A day that is in the calendar (Gregorian, years 1 to 9999), shown as ISO 8601 writes it: 2024-03-09.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
pub struct Date {
    year: i32,
    month: u8,
    day: u8,
}

impl Date {
    /// The day from which clocks count.
    pub const EPOCH: Self = Self { year: 1970, month: 1, day: 1 };

    /// The day; none if the calendar has no such day.
    pub const fn new(year: i32, month: u8, day: u8) -> Option<Self> {
        let is_there = 1 <= year && year <= 9999 && 1 <= day && day <= days(year, month);
        if is_there { Some(Self { year, month, day }) } else { None }
    }

    /// 1 to 9999.
    pub const fn year(self) -> i32 {
        self.year
    }

    /// 1 to 12.
    pub const fn month(self) -> u8 {
        self.month
    }

    /// 1 to 31.
    pub const fn day(self) -> u8 {
        self.day
    }
}

/// How many days a month has; none if there is no such month.
const fn days(year: i32, month: u8) -> u8 {
    match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        _ => 0,
    }
}

impl fmt::Display for Date {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Leap years as the bull Inter gravissimas of 1582 has them: of the hundreds only each fourth.
    #[test]
    fn only_days_of_the_calendar_are_dates() {
        for (year, month, day) in [(2024, 2, 29), (2000, 2, 29), (2023, 12, 31), (1, 1, 1), (9999, 4, 30)] {
            assert!(Date::new(year, month, day).is_some(), "{year}-{month}-{day}");
        }
        for (year, month, day) in
            [(2023, 2, 29), (1900, 2, 29), (2024, 2, 30), (2024, 4, 31), (2024, 13, 1), (2024, 0, 1), (2024, 1, 0)]
        {
            assert_eq!(Date::new(year, month, day), None, "{year}-{month}-{day}");
        }
        assert!(Date::new(0, 1, 1).is_none() && Date::new(-5, 1, 1).is_none() && Date::new(10_000, 1, 1).is_none());
    }

    #[test]
    fn a_date_is_shown_with_leading_zeros() {
        assert_eq!(Date::new(2024, 3, 9).unwrap().to_string(), "2024-03-09");
    }
}
