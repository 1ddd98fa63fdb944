//! A figure as a manual states it: in one unit, or in two columns side by side.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::{Entry, Length, LengthUnit, NotALength};

/// A stated figure. In JSON a text: `2.998 in`, or with the manual's second column `2.998 in = 76.149 mm`.
///
/// The first column counts; the second is kept, and the two must agree within the rounding of their last digits. Two
/// columns that disagree are a misprint of which nobody can say which half is right, so they are refused (sources of
/// such misprints: TM 5-4320-300-14 and TM 5-4310-354-14).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "string"))]
#[serde(try_from = "String", into = "String")]
pub struct Stated {
    first: Entry,
    second: Option<Entry>,
}

impl Stated {
    /// Reads `2.998`, `2.998 in`, `2.998 in = 76.149 mm` or `2.998 in (76.149 mm)`. A number without a unit is taken in
    /// `assumed`.
    ///
    /// # Errors
    /// [`NotALength`] when a column is no length or the two columns disagree.
    pub fn read(text: &str, assumed: LengthUnit) -> Result<Self, NotALength> {
        let (first, second) = columns(text);
        let first = Length::read(first, assumed)?;
        let second = second.map(|text| Length::read(text, other_system(first.unit))).transpose()?;
        Self::new(first, second)
    }

    fn new(first: Entry, second: Option<Entry>) -> Result<Self, NotALength> {
        if let Some(second) = &second {
            let apart = (first.length - second.length).abs();
            // Half a last digit of each column, and half a digit more for a figure converted from the rounded one.
            let rounding = (first.step() + second.step()).times(3, 4);
            if apart > rounding {
                let first_in_other = first.length.show(second.step(), second.unit);
                return Err(NotALength(format!(
                    "“{first}” and “{second}” disagree: {first} is {first_in_other}. One of the two is misprinted; enter the one that fits its neighbours."
                )));
            }
        }
        Ok(Self { first, second })
    }

    /// The value.
    pub fn length(&self) -> Length {
        self.first.length
    }

    /// The first column as typed.
    pub fn entry(&self) -> &Entry {
        &self.first
    }

    /// The range of a new part in words: "2.999 to 3.000 in", "from 2.999 in"; empty where neither end is stated.
    pub fn range(least: Option<&Self>, most: Option<&Self>) -> String {
        match (least.map(Self::entry), most.map(Self::entry)) {
            (Some(low), Some(high)) if low == high => low.to_string(),
            (Some(low), Some(high)) if low.unit == high.unit => format!("{} to {high}", low.number()),
            (Some(low), Some(high)) => format!("{low} to {high}"),
            (Some(low), None) => format!("from {low}"),
            (None, Some(high)) => format!("up to {high}"),
            (None, None) => String::new(),
        }
    }
}

/// The two columns of a text.
fn columns(text: &str) -> (&str, Option<&str>) {
    if let Some((first, second)) = text.split_once('=') {
        return (first, Some(second));
    }
    match text.trim_end().strip_suffix(')').and_then(|inside| inside.split_once('(')) {
        Some((first, second)) => (first, Some(second)),
        None => (text, None),
    }
}

/// The unit that a second column is in when it does not say.
fn other_system(unit: LengthUnit) -> LengthUnit {
    match unit {
        LengthUnit::Inch | LengthUnit::Thou => LengthUnit::Millimetre,
        LengthUnit::Millimetre | LengthUnit::Micrometre => LengthUnit::Inch,
    }
}

impl fmt::Display for Stated {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.second {
            Some(second) => write!(f, "{} = {second}", self.first),
            None => self.first.fmt(f),
        }
    }
}

impl TryFrom<String> for Stated {
    type Error = NotALength;

    fn try_from(text: String) -> Result<Self, NotALength> {
        let (first, second) = columns(&text);
        let second = second.map(|second| Entry::try_from(second.to_owned())).transpose()?;
        Self::new(Entry::try_from(first.to_owned())?, second)
    }
}

impl From<Stated> for String {
    fn from(stated: Stated) -> Self {
        stated.to_string()
    }
}

impl From<Entry> for Stated {
    fn from(first: Entry) -> Self {
        Self { first, second: None }
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Stated {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Stated".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "description": "A figure as a manual states it: a length with its unit, and after “=” the same in the manual’s other column, which must agree.",
            "examples": ["2.998 in", "0.25 mm", "2.998 in = 76.149 mm"],
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn agrees(text: &str) {
        Stated::read(text, LengthUnit::Inch).unwrap();
    }

    #[track_caller]
    fn disagrees(text: &str) {
        let refusal = Stated::read(text, LengthUnit::Inch).unwrap_err().0;
        assert!(refusal.contains("disagree"), "{refusal}");
    }

    #[test]
    fn two_columns_agree_within_their_rounding() {
        agrees("2.998 in = 76.149 mm");
        agrees("2.998 (76.149)");
        agrees("0.0015 in = 0.038 mm");
        agrees("0.0015 in = 0.04 mm");
        agrees("3.251 in = 82.5754 mm");
    }

    // TM 5-4320-300-14: 2.996 in beside 76.124 mm, which is 2.9970 in. TM 5-4310-354-14: 2.8444 in beside 72.7558 mm,
    // which is 2.8644 in.
    #[test]
    fn published_misprints_are_refused() {
        disagrees("2.996 in = 76.124 mm");
        disagrees("2.8444 in = 72.7558 mm");
    }

    #[test]
    fn a_range_names_a_shared_unit_once() {
        let stated = |text: &str| Stated::read(text, LengthUnit::Inch).unwrap();
        let range = |low: &str, high: &str| Stated::range(Some(&stated(low)), Some(&stated(high)));
        assert_eq!(range("2.999", "3.000 in = 76.20 mm"), "2.999 to 3.000 in");
        assert_eq!(range("76.17 mm", "3.000 in"), "76.17 mm to 3.000 in");
        assert_eq!(range("3.000", "3.000"), "3.000 in");
        assert_eq!(Stated::range(Some(&stated("2.999")), None), "from 2.999 in");
        assert_eq!(Stated::range(None, Some(&stated("3.000"))), "up to 3.000 in");
        assert_eq!(Stated::range(None, None), "");
    }

    #[test]
    fn the_text_comes_back() {
        for text in ["2.998 in", "2.998 in = 76.149 mm", "0.25 mm"] {
            let stated: Stated = serde_json::from_value(text.into()).unwrap();
            assert_eq!(serde_json::to_value(&stated).unwrap(), text);
        }
        assert!(serde_json::from_value::<Stated>("2.998".into()).is_err(), "a unit must stand in JSON");
    }
}
