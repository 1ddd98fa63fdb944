//! The day on a paper.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

/// A day that is in the calendar (Gregorian, years 1 to 9999), shown as ISO 8601 writes it: 2024-03-09.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "string"))]
#[serde(try_from = "String", into = "String")]
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

    /// As it stands in a sentence: "9 March 2024".
    pub fn in_words(self) -> String {
        const MONTHS: [&str; 12] = [
            "January",
            "February",
            "March",
            "April",
            "May",
            "June",
            "July",
            "August",
            "September",
            "October",
            "November",
            "December",
        ];
        let month = MONTHS.get(usize::from(self.month).saturating_sub(1)).unwrap_or(&"");
        format!("{} {month} {}", self.day, self.year)
    }
}

impl Date {
    /// The day so many days later; the last day there is where the calendar ends.
    #[must_use]
    pub fn after(self, days: u16) -> Self {
        (0..days).fold(self, |day, _| day.next().unwrap_or(day))
    }

    fn next(self) -> Option<Self> {
        let Self { year, month, day } = self;
        let in_month = Self::new(year, month, day + 1);
        in_month.or_else(|| Self::new(year, month + 1, 1)).or_else(|| Self::new(year + 1, 1, 1))
    }
}

impl From<Date> for String {
    fn from(date: Date) -> Self {
        date.to_string()
    }
}

impl TryFrom<String> for Date {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        text.parse()
    }
}

impl FromStr for Date {
    type Err = String;

    fn from_str(text: &str) -> Result<Self, String> {
        let refuse = || {
            let shown: String = text.chars().take(40).collect();
            format!("“{shown}” is no day of the calendar: it should be written as 2026-05-03.")
        };
        let digits = |from: usize, to: usize| -> Option<u16> {
            let group = text.get(from..to)?;
            group.bytes().all(|byte| byte.is_ascii_digit()).then(|| group.parse().ok())?
        };
        let dashes = text.len() == 10 && text.get(4..5) == Some("-") && text.get(7..8) == Some("-");
        let month_and_day =
            u8::try_from(digits(5, 7).unwrap_or(0)).ok().zip(u8::try_from(digits(8, 10).unwrap_or(0)).ok());
        let (month, day) = month_and_day.filter(|_| dashes).ok_or_else(refuse)?;
        Self::new(i32::from(digits(0, 4).unwrap_or(0)), month, day).ok_or_else(refuse)
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

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Date {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Date".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string", "format": "date", "description": "A day as ISO 8601 writes it: 2026-05-03.",
        })
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
    fn a_date_is_written_with_leading_zeros_and_read_back() {
        let date = Date::new(2024, 3, 9).unwrap();
        assert_eq!(date.to_string(), "2024-03-09");
        assert_eq!("2024-03-09".parse(), Ok(date));
        for wrong in ["2024-02-30", "2024-3-9", "24-03-09", "2024/03/09", "2024-03-0é", "", "+024-03-09"] {
            assert!(wrong.parse::<Date>().is_err(), "{wrong}");
        }
    }

    /// 2024 has 366 days.
    #[test]
    fn days_later_crosses_months_and_years() {
        let later = |date: &str, days| date.parse::<Date>().unwrap().after(days).to_string();
        assert_eq!(later("2024-02-28", 1), "2024-02-29");
        assert_eq!(later("2024-01-01", 366), "2025-01-01");
        assert_eq!(later("2026-12-20", 14), "2027-01-03");
    }
}
