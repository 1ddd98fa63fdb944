//! Lengths as whole nanometres.
//!
//! 1 in = 25.4 mm exactly (international inch, 1959), so 0.0001 in is 2 540 nm and every figure that a micrometer can
//! show is a whole number. Nothing is rounded between entry and result.

use std::fmt;
use std::ops::{Add, Neg, Sub};

use serde::{Deserialize, Serialize};

/// A length in whole nanometres. Signed, since a reading may be an offset. In JSON a whole number of nanometres.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Length(i64);

/// A unit in which lengths are typed.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum LengthUnit {
    /// Millimetre.
    Millimetre,
    /// Micrometre.
    Micrometre,
    /// International inch.
    #[default]
    Inch,
    /// A thousandth of an inch.
    Thou,
}

/// A length as it was typed: the exact value with the text and unit in which it is shown back. In JSON a text with its
/// unit, such as `2.2483 in`, `57.11 mm`, `10 thou` or `3 µm`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "string"))]
#[serde(try_from = "String", into = "String")]
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

    /// As written after a number.
    pub fn name(self) -> &'static str {
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

    /// In millimetres with six decimals, exactly, for a spreadsheet: no unit, a hyphen for minus.
    pub fn millimetres(self) -> String {
        let sign = if self.0 < 0 { "-" } else { "" };
        let digits = self.0.unsigned_abs();
        format!("{sign}{}.{:06}", digits / 1_000_000, digits % 1_000_000)
    }

    /// Without its sign.
    pub fn abs(self) -> Self {
        Self(self.0.saturating_abs())
    }

    /// Times a ratio of whole numbers, rounded once to the nearest nanometre, halves away from zero. A ratio to
    /// zero gives zero.
    pub fn times(self, numerator: i64, denominator: i64) -> Self {
        let (product, divisor) = (i128::from(self.0) * i128::from(numerator), i128::from(denominator));
        if divisor == 0 {
            return Self(0);
        }
        let (product, divisor) = if divisor < 0 { (-product, -divisor) } else { (product, divisor) };
        let half = if product < 0 { -divisor / 2 } else { divisor / 2 };
        Self(saturated((product + half) / divisor))
    }

    /// The root of the sum of squares, rounded up to a whole nanometre, so that an uncertainty is never understated.
    pub fn root_sum_square(lengths: impl IntoIterator<Item = Self>) -> Self {
        let sum: u128 = lengths.into_iter().map(|length| u128::from(length.0.unsigned_abs()).pow(2)).sum();
        let root = sum.isqrt();
        let up = if root * root < sum { root + 1 } else { root };
        Self(i64::try_from(up).unwrap_or(i64::MAX))
    }

    /// Rounded to a step, for show: with its unit, and with as many decimals as the step needs. The step is an
    /// instrument's resolution or the last digit of what was typed.
    pub fn show(self, step: Self, unit: LengthUnit) -> String {
        format!("{} {}", self.number(step, unit), unit.name())
    }

    /// The number of [`show`](Self::show) without its unit, where the unit stands once for several.
    pub fn number(self, step: Self, unit: LengthUnit) -> String {
        let (scale, decimals) = scale_for(step, unit);
        let rounded = self.times(scale, unit.nanometres()).0;
        let sign = if rounded < 0 { "−" } else { "" };
        let digits = rounded.unsigned_abs();
        let whole = digits / scale.unsigned_abs();
        if decimals == 0 {
            return format!("{sign}{whole}");
        }
        let fraction = digits % scale.unsigned_abs();
        format!("{sign}{whole}.{fraction:0decimals$}")
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

/// Ten to the number of decimals in which a unit must be written to show a step, and that number.
fn scale_for(step: Length, unit: LengthUnit) -> (i64, usize) {
    const MOST_DECIMALS: usize = 6;
    let (mut scale, mut decimals) = (1_i64, 0);
    while decimals < MOST_DECIMALS && unit.nanometres() > step.0.abs().max(1).saturating_mul(scale) {
        scale *= 10;
        decimals += 1;
    }
    (scale, decimals)
}

/// Sums of lengths stay far below the limit; a hostile sum stops at it.
fn saturated(nanometres: i128) -> i64 {
    i64::try_from(nanometres).unwrap_or(if nanometres < 0 { i64::MIN } else { i64::MAX })
}

impl Add for Length {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl Sub for Length {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl Neg for Length {
    type Output = Self;

    fn neg(self) -> Self {
        Self(self.0.saturating_neg())
    }
}

impl Entry {
    /// The number without its unit, as typed.
    pub fn number(&self) -> &str {
        self.text.split(|c: char| !matches!(c, '0'..='9' | '.' | ',' | '+' | '-' | '−')).next().unwrap_or("")
    }

    /// The step of its last digit: 0.0001 in for `2.2483`.
    pub fn step(&self) -> Length {
        let number = self.number();
        let decimals = number.split_once(['.', ',']).map_or(0, |(_, fraction)| fraction.len());
        let scale = 10_i64.checked_pow(u32::try_from(decimals).unwrap_or(u32::MAX)).unwrap_or(i64::MAX);
        Length((self.unit.nanometres() / scale).max(1))
    }
}

impl TryFrom<String> for Entry {
    type Error = NotALength;

    /// Outside a form, where a unit could be assumed, a length must name its own.
    fn try_from(text: String) -> Result<Self, NotALength> {
        if is_bare(&text) {
            let shown: String = text.chars().take(40).collect();
            return Err(NotALength(format!("“{shown}” has no unit: write it as in “2.2483 in” or “57.11 mm”.")));
        }
        Length::read(&text, LengthUnit::Inch)
    }
}

impl From<Entry> for String {
    fn from(entry: Entry) -> Self {
        entry.to_string()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Entry {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Entry".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "pattern": "^\\s*[+\\-−]?[0-9]*[.,]?[0-9]*\\s*(mm|um|µm|μm|in|inch|\"|″|”|thou|thousandths)\\s*$",
            "description": "A length as typed, always with its unit, kept exactly.",
            "examples": ["2.2483 in", "57.11 mm", "+0.0005 in", "10 thou", "3 µm"],
        })
    }
}

/// Whether a text is a number alone, without its unit.
fn is_bare(text: &str) -> bool {
    text.trim_end().ends_with(|c: char| c.is_ascii_digit() || matches!(c, '.' | ','))
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
        let bare = is_bare(&self.text);
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
    fn shows(nanometres: i64, step: i64, unit: LengthUnit, text: &str) {
        assert_eq!(Length(nanometres).show(Length(step), unit), text);
    }

    #[test]
    fn results_are_rounded_once_at_the_step() {
        shows(57_106_820, 2_540, LengthUnit::Inch, "2.2483 in");
        shows(57_106_820, 1_270, LengthUnit::Inch, "2.24830 in");
        shows(57_106_820, 10_000, LengthUnit::Millimetre, "57.11 mm");
        shows(57_106_820, 2_540, LengthUnit::Millimetre, "57.107 mm");
        shows(-12_700, 2_540, LengthUnit::Inch, "−0.0005 in");
        shows(19_050, 2_540, LengthUnit::Inch, "0.0008 in");
        shows(-400, 1_000, LengthUnit::Millimetre, "0.000 mm");
        shows(254_000, 25_400, LengthUnit::Thou, "10 thou");
        shows(1, 0, LengthUnit::Millimetre, "0.000001 mm");
    }

    #[test]
    fn roots_are_rounded_up() {
        let root = |lengths: &[i64]| Length::root_sum_square(lengths.iter().copied().map(Length)).0;
        assert_eq!(root(&[3, 4]), 5);
        assert_eq!(root(&[1, 1]), 2, "the root of two is not understated");
        assert_eq!(root(&[]), 0);
        assert_eq!(root(&[i64::MIN]), i64::MAX);
    }

    #[track_caller]
    fn in_json(json: &str, expected: Result<i64, &str>) {
        let read: Result<Entry, _> = serde_json::from_value(json.into());
        match (read, expected) {
            (Ok(entry), Ok(nanometres)) => {
                assert_eq!(entry.length.0, nanometres);
                let again = serde_json::to_value(&entry).unwrap();
                assert_eq!(serde_json::from_value::<Entry>(again).unwrap(), entry, "{json} comes back as written");
            }
            (Err(error), Err(part)) => assert!(error.to_string().contains(part), "{error}"),
            (read, _) => panic!("{json}: {read:?}"),
        }
    }

    #[test]
    fn in_json_a_length_names_its_unit() {
        in_json("2.2483 in", Ok(57_106_820));
        in_json("57,11 mm", Ok(57_110_000));
        in_json("2.2483\"", Ok(57_106_820));
        in_json("2.2483", Err("has no unit"));
        in_json("in", Err("is no length"));
    }

    #[test]
    fn the_last_digit_tells_the_step() {
        let step = |text: &str| Length::read(text, LengthUnit::Inch).unwrap().step().0;
        assert_eq!(step("2.2483"), 2_540);
        assert_eq!(step("2.2480"), 2_540, "a typed zero counts");
        assert_eq!(step("57.11 mm"), 10_000);
        assert_eq!(step("10 thou"), 25_400);
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
