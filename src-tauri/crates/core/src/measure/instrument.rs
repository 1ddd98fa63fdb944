//! Measuring instruments and how far each can be trusted.

use serde::{Deserialize, Serialize};

use super::{Entry, Length, LengthUnit};

/// What kind of instrument.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum InstrumentKind {
    /// Outside micrometer.
    Micrometer,
    /// Micrometer with a ball anvil, for the wall of shells.
    BallMicrometer,
    /// Depth micrometer.
    DepthMicrometer,
    /// Bore gauge with a dial, set by a ring or micrometer.
    BoreGauge,
    /// Telescoping gauge, measured over with a micrometer.
    TelescopingGauge,
    /// Sliding caliper.
    Caliper,
    /// Dial indicator on a stand.
    DialIndicator,
    /// Feeler gauges, alone or under a straightedge.
    FeelerGauge,
    /// Deforming plastic strip with its scale.
    PlasticStrip,
    /// Any other.
    Other,
}

impl InstrumentKind {
    /// Every kind.
    pub const ALL: [Self; 10] = [
        Self::Micrometer,
        Self::BallMicrometer,
        Self::DepthMicrometer,
        Self::BoreGauge,
        Self::TelescopingGauge,
        Self::Caliper,
        Self::DialIndicator,
        Self::FeelerGauge,
        Self::PlasticStrip,
        Self::Other,
    ];

    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Self::Micrometer => "outside micrometer",
            Self::BallMicrometer => "ball-anvil micrometer",
            Self::DepthMicrometer => "depth micrometer",
            Self::BoreGauge => "bore gauge",
            Self::TelescopingGauge => "telescoping gauge",
            Self::Caliper => "caliper",
            Self::DialIndicator => "dial indicator",
            Self::FeelerGauge => "feeler gauges",
            Self::PlasticStrip => "plastic strip",
            Self::Other => "other instrument",
        }
    }

    /// What a sound instrument of this kind achieves in a careful hand, as resolution and expanded uncertainty (about
    /// 95 %) in micrometres: common practice, to be replaced by what the shop knows of its own.
    pub fn usual(self) -> (i64, i64) {
        match self {
            Self::Micrometer => (1, 3),
            Self::BallMicrometer => (1, 3),
            Self::DepthMicrometer => (10, 10),
            Self::BoreGauge => (1, 4),
            Self::TelescopingGauge => (10, 15),
            Self::Caliper => (10, 30),
            Self::DialIndicator => (10, 10),
            Self::FeelerGauge => (10, 10),
            Self::PlasticStrip => (13, 13),
            Self::Other => (10, 20),
        }
    }

    /// The same in words, in steps that stand on instruments of a unit: "0.0001 in", "0.01 mm".
    pub fn usual_in(self, unit: LengthUnit) -> (String, String) {
        let (resolution, uncertainty) = self.usual();
        (step_in(resolution, unit), step_in(uncertainty, unit))
    }
}

/// The steps of inch instruments, in hundred-thousandths of an inch; none at the bench reads finer than the first.
const INCH_STEPS: [i64; 7] = [10, 20, 50, 100, 200, 500, 1_000];

/// The step of an instrument in the unit in which it is read; of an inch the nearest by proportion.
fn step_in(micrometres: i64, unit: LengthUnit) -> String {
    let (length, step) = match unit {
        LengthUnit::Millimetre | LengthUnit::Micrometre => {
            (micrometres * 1_000, if micrometres % 10 == 0 { 10_000 } else { 1_000 })
        }
        LengthUnit::Inch | LengthUnit::Thou => {
            let wanted = (micrometres * 100_000 / 25_400).max(1);
            let apart = |step: &i64| (step * 1_000 / wanted).max(wanted * 1_000 / step);
            let nearest = INCH_STEPS.into_iter().min_by_key(apart).unwrap_or(10);
            (nearest * 254, if nearest % 100 == 0 { 25_400 } else { 2_540 })
        }
    };
    Length::from_nanometres(length).show(Length::from_nanometres(step), unit)
}

/// The name under which readings refer to an instrument, such as `mic-2`: letters, digits and hyphens.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(try_from = "String", into = "String")]
pub struct InstrumentId(#[cfg_attr(feature = "schema", schemars(regex(pattern = "^[a-z0-9-]{1,40}$")))] String);

impl InstrumentId {
    /// As text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for InstrumentId {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        let fits =
            (1..=40).contains(&text.len()) && text.bytes().all(|b| matches!(b, b'a'..=b'z' | b'0'..=b'9' | b'-'));
        if fits {
            Ok(Self(text))
        } else {
            Err("An instrument is named by 1 to 40 small letters, digits and hyphens.".into())
        }
    }
}

impl From<InstrumentId> for String {
    fn from(id: InstrumentId) -> Self {
        id.0
    }
}

/// An instrument of the shop, as known to a job. Correcting it corrects all readings that were taken with it in that
/// job; an instrument that was set anew in the middle of a job is entered as another.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(example = example()))]
#[serde(deny_unknown_fields)]
pub struct Instrument {
    /// How readings refer to it.
    pub id: InstrumentId,
    /// What the shop calls it.
    pub name: String,
    /// What it is.
    pub kind: InstrumentKind,
    /// The smallest step that can be read off it.
    pub resolution: Entry,
    /// Expanded uncertainty of one reading, about 95 % (k = 2).
    pub uncertainty: Entry,
    /// What it shows at zero or on its setting standard, too much being positive: it is taken off every reading.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub zero_error: Option<Entry>,
    /// The ball between anvil and shell, taken off every reading (TM 55-1905-221-14-3 p. 6-490: thickness is the reading
    /// less the ball).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub ball: Option<Entry>,
    /// When it was last checked, as the shop writes dates.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<String>"))]
    pub checked: String,
}

/// An instrument as it is written in JSON, for the published schema.
#[cfg(any(test, feature = "schema"))]
fn example() -> serde_json::Value {
    serde_json::json!({
        "id": "mic-2-3", "name": "2 to 3 inch micrometer", "kind": "micrometer", "resolution": "0.0001 in",
        "uncertainty": "0.0001 in", "zero_error": "+0.0001 in", "checked": "2030-01-15",
    })
}

impl Instrument {
    /// What is taken off every reading.
    pub fn offset(&self) -> Length {
        let length = |entry: &Option<Entry>| entry.as_ref().map_or(Length::default(), |entry| entry.length);
        length(&self.zero_error) + length(&self.ball)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_published_example_is_an_instrument() {
        let instrument: Instrument = serde_json::from_value(example()).unwrap();
        assert_eq!(instrument.offset().nanometres(), 2_540);
    }

    #[track_caller]
    fn is_usual(kind: InstrumentKind, inch: (&str, &str), metric: (&str, &str)) {
        let texts = |(resolution, uncertainty): (&str, &str)| (resolution.to_owned(), uncertainty.to_owned());
        assert_eq!(kind.usual_in(LengthUnit::Inch), texts(inch), "{kind:?}");
        assert_eq!(kind.usual_in(LengthUnit::Millimetre), texts(metric), "{kind:?}");
    }

    #[test]
    fn what_is_usual_stands_in_steps_of_the_unit() {
        is_usual(InstrumentKind::Micrometer, ("0.0001 in", "0.0001 in"), ("0.001 mm", "0.003 mm"));
        is_usual(InstrumentKind::BoreGauge, ("0.0001 in", "0.0002 in"), ("0.001 mm", "0.004 mm"));
        is_usual(InstrumentKind::Caliper, ("0.0005 in", "0.001 in"), ("0.01 mm", "0.03 mm"));
        is_usual(InstrumentKind::PlasticStrip, ("0.0005 in", "0.0005 in"), ("0.013 mm", "0.013 mm"));
    }
}
