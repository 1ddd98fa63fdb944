//! Lengths as whole nanometres.
//!
//! 1 in = 25.4 mm exactly (international inch, 1959), so 0.0001 in is 2 540 nm and every figure that a micrometer can
//! show is a whole number. Nothing is rounded between entry and result.

use std::fmt;

use serde::{Deserialize, Serialize};

/// A length in whole nanometres. Signed, since a reading may be an offset.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Length(i64);

/// A unit in which lengths are typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LengthUnit {
    /// Millimetre.
    Millimetre,
    /// Micrometre.
    Micrometre,
    /// International inch.
    Inch,
    /// A thousandth of an inch.
    Thou,
}

/// A length as it was typed: the exact value with the text and unit in which it is shown back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Entry {
    /// The value.
    pub length: Length,
    /// The text as typed, trimmed.
    pub text: String,
    /// The unit that was typed or assumed.
    pub unit: LengthUnit,
}

/// Text that is no length: which text, what is wrong with it, what would be right.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct NotALength(pub String);

/// The longest length accepted: 100 m, far beyond any engine, so that sums never overflow.
const MAX_NANOMETRES: i64 = 100_000_000_000;

impl LengthUnit {
    /// Nanometres in one of it.
    pub const fn nanometres(self) -> i64 {
        match self {
            Self::Millimetre => 1_000_000,
            Self::Micrometre => 1_000,
            Self::Inch => 25_400_000,
            Self::Thou => 25_400,
        }
    }

    fn name(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Micrometre => "µm",
            Self::Inch => "in",
            Self::Thou => "thou",
        }
    }

    fn from_suffix(suffix: &str) -> Option<Self> {
        match suffix {
            "mm" => Some(Self::Millimetre),
            "um" | "µm" | "μm" => Some(Self::Micrometre),
            "in" | "\"" | "″" | "”" | "inch" => Some(Self::Inch),
            "thou" | "thousandths" => Some(Self::Thou),
            _ => None,
        }
    }
}

impl Length {
    /// From whole nanometres.
    pub const fn from_nanometres(nanometres: i64) -> Self {
        Self(nanometres)
    }

    /// In whole nanometres.
    pub const fn nanometres(self) -> i64 {
        self.0
    }

    /// In millimetres, for show; exact up to nine digits.
    pub fn to_mm(self) -> f64 {
        self.0 as f64 / 1e6
    }

    /// In inches, for show.
    pub fn to_inches(self) -> f64 {
        self.0 as f64 / 25.4e6
    }

    /// Reads what people type: `2.2483`, `2.2483"`, `57.11 mm`, `+0.0005`, `10 thou`, `57,11 mm`. A number without a
    /// unit is taken in `assumed`.
    ///
    /// # Errors
    /// [`NotALength`] when it is no number, has an unknown unit, or more decimals than a whole nanometre can hold.
    pub fn read(text: &str, assumed: LengthUnit) -> Result<Entry, NotALength> {
        let text = text.trim();
        let shown: String = text.chars().take(40).collect();
        let refuse = |why: &str| Err(NotALength(format!("“{shown}” {why}")));
        let number_end =
            text.find(|c: char| !matches!(c, '0'..='9' | '.' | ',' | '+' | '-' | '−')).unwrap_or(text.len());
        let (number, suffix) = text.split_at(number_end);
        let suffix = suffix.trim();
        let unit = match suffix {
            "" => assumed,
            _ => match LengthUnit::from_suffix(&suffix.to_lowercase()) {
                Some(unit) => unit,
                None => return refuse("has an unknown unit: use mm, µm, in or thou."),
            },
        };
        let Some((negative, digits, decimals)) = decimal(number) else {
            return refuse("is no length: type a number such as 2.2483 in or 57.11 mm.");
        };
        let value = i128::from(digits) * i128::from(unit.nanometres());
        let scale = 10_i128.pow(decimals);
        if value % scale != 0 {
            return refuse(
                "is finer than can be kept exactly: use at most 5 decimals of an inch or 6 of a millimetre.",
            );
        }
        match i64::try_from(value / scale) {
            Ok(nanometres) if nanometres <= MAX_NANOMETRES => {
                let length = Self(if negative { -nanometres } else { nanometres });
                Ok(Entry { length, text: text.to_owned(), unit })
            }
            _ => refuse("is longer than 100 m: check the number and its unit."),
        }
    }
}

/// Sign, digits without the point, number of decimals.
fn decimal(number: &str) -> Option<(bool, u64, u32)> {
    let (negative, number) = match number.strip_prefix(['-', '−']) {
        Some(rest) => (true, rest),
        None => (false, number.strip_prefix('+').unwrap_or(number)),
    };
    let (whole, fraction) = number.split_once(['.', ',']).unwrap_or((number, ""));
    let all_digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
    if !all_digits(whole) || !all_digits(fraction) || (whole.is_empty() && fraction.is_empty()) {
        return None;
    }
    let fraction = fraction.trim_end_matches('0');
    if whole.len() + fraction.len() > 18 {
        return None;
    }
    let digits = format!("{whole}{fraction}").parse().ok()?;
    Some((negative, digits, u32::try_from(fraction.len()).ok()?))
}

impl fmt::Display for Entry {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let bare = self.text.ends_with(|c: char| c.is_ascii_digit());
        if bare { write!(f, "{} {}", self.text, self.unit.name()) } else { f.write_str(&self.text) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[track_caller]
    fn reads(text: &str, nanometres: i64) {
        assert_eq!(Length::read(text, LengthUnit::Inch).map(|entry| entry.length.0), Ok(nanometres), "{text}");
    }

    #[test]
    fn what_people_type_is_read_exactly() {
        reads("2.2483", 57_106_820);
        reads("2.2483\"", 57_106_820);
        reads("2.2483 in", 57_106_820);
        reads("57.11 mm", 57_110_000);
        reads("57,11mm", 57_110_000);
        reads("+0.0005", 12_700);
        reads("-0.0005", -12_700);
        reads("−.5", -12_700_000);
        reads("10 thou", 254_000);
        reads("0.5 thou", 12_700);
        reads("3 µm", 3_000);
        reads("1", 25_400_000);
    }

    #[track_caller]
    fn refused(text: &str) {
        let refusal = Length::read(text, LengthUnit::Inch).unwrap_err().0;
        assert!(refusal.contains(": "), "says what would be right: {refusal}");
    }

    #[test]
    fn what_is_no_length_is_refused() {
        for text in [
            "",
            "mm",
            "1.2.3",
            "1 furlong",
            "1e3",
            "0.0000001",
            "1,234.5",
            "--1",
            "99999999999",
            "NaN",
            "999999999999999999999",
        ] {
            refused(text);
        }
    }

    proptest! {
        #[test]
        fn an_inch_is_exactly_25_4_millimetres(tenths_of_thou in 0i64..1_000_000) {
            let inches = format!("{}.{:04}", tenths_of_thou / 10_000, tenths_of_thou % 10_000);
            let millimetres = format!("{}.{:05} mm", tenths_of_thou * 254 / 100_000, tenths_of_thou * 254 % 100_000);
            let inch = Length::read(&inches, LengthUnit::Inch).unwrap();
            prop_assert_eq!(inch.length, Length::read(&millimetres, LengthUnit::Inch).unwrap().length);
            prop_assert_eq!(inch.text, inches);
        }

        #[test]
        fn any_text_is_read_or_refused(text in ".{0,60}") {
            let _ = Length::read(&text, LengthUnit::Millimetre);
        }
    }
}
