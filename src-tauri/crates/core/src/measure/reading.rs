//! A reading: a value, where it was taken, and with what.

use serde::{Deserialize, Serialize};

use super::{Entry, Instrument, InstrumentId, Length, Quantity, Spot};
use crate::engine::{Part, PartKind};

/// When in the life of a rebuild something was measured.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Phase {
    /// As it came out of the engine.
    #[default]
    Found,
    /// As it came back from the machine shop.
    Machined,
    /// As it was fitted: new parts, final clearances.
    Fitted,
}

impl Phase {
    /// Every phase, in the order of a rebuild.
    pub const ALL: [Self; 3] = [Self::Found, Self::Machined, Self::Fitted];

    /// In words.
    pub fn label(self) -> &'static str {
        match self {
            Self::Found => "as found",
            Self::Machined => "as machined",
            Self::Fitted => "as fitted",
        }
    }
}

/// What a part is made of, for its growth with warmth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Material {
    /// Steel: 11.5 millionths per kelvin.
    Steel,
    /// Grey cast iron: 10.5 millionths per kelvin.
    CastIron,
    /// Aluminium alloy: 23 millionths per kelvin.
    Aluminium,
}

impl Material {
    /// Every material.
    pub const ALL: [Self; 3] = [Self::Steel, Self::CastIron, Self::Aluminium];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Steel => "steel",
            Self::CastIron => "cast iron",
            Self::Aluminium => "aluminium",
        }
    }

    /// What a part of this kind is usually made of, where it may be measured warm: pistons and bores, which grow apart.
    pub fn usual(kind: PartKind) -> Option<Self> {
        match kind {
            PartKind::Piston => Some(Self::Aluminium),
            PartKind::Bore => Some(Self::CastIron),
            _ => None,
        }
    }

    /// Linear expansion in tenths of a millionth per kelvin (handbook values, common practice).
    const fn expansion(self) -> i64 {
        match self {
            Self::Steel => 115,
            Self::CastIron => 105,
            Self::Aluminium => 230,
        }
    }
}

/// How warm a part was when it was measured with an instrument at 20 °C.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Warmth {
    /// The part's temperature in whole degrees Celsius, −20 to 120.
    pub celsius: i16,
    /// What the part is made of.
    pub material: Material,
}

/// A reading, as it was taken.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[cfg_attr(feature = "schema", schemars(example = examples().remove(0), example = examples().remove(1), example = examples().remove(2)))]
#[serde(deny_unknown_fields)]
pub struct Reading {
    /// Of which part.
    pub part: Part,
    /// What was measured.
    pub quantity: Quantity,
    /// The name of a quantity of the manual's own ([`Quantity::Other`]); else empty.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<String>"))]
    pub name: String,
    /// Where on the part.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Spot>"))]
    pub spot: Spot,
    /// When in the rebuild; as found, if not said.
    #[serde(default)]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<Phase>"))]
    pub phase: Phase,
    /// What the instrument showed.
    pub value: Entry,
    /// What the instrument was set to, if the value is a difference from that (a bore gauge's dial).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub set_to: Option<Entry>,
    /// With what; without an instrument no uncertainty is allowed for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub instrument: Option<InstrumentId>,
    /// The length over which a bend or twist was read.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub over: Option<Entry>,
    /// Where the high spot of a run-out stood, in whole degrees from any mark on the shaft, 0 to 359.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub angle: Option<u16>,
    /// The part's warmth, if it was not at 20 °C.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "schema", ts(optional))]
    pub warmth: Option<Warmth>,
    /// The person was asked whether this odd value is right, and said yes.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    #[cfg_attr(feature = "schema", ts(optional, as = "Option<bool>"))]
    pub sure: bool,
}

/// Readings as they are written in JSON, for the published schema.
#[cfg(any(test, feature = "schema"))]
fn examples() -> Vec<serde_json::Value> {
    vec![
        serde_json::json!({
            "part": "main-journal.3", "quantity": "diameter", "spot": { "station": "front", "direction": "a" },
            "value": "2.9984 in", "instrument": "mic-2-3",
        }),
        serde_json::json!({
            "part": "housing-bore.1", "quantity": "diameter", "spot": { "station": "rear", "direction": "b" },
            "value": "+0.0005 in", "set_to": "3.2510 in",
        }),
        serde_json::json!({
            "part": "crankpin.2", "quantity": "diameter", "spot": { "station": "rear", "direction": "a" },
            "phase": "machined", "value": "2.4895 in",
        }),
    ]
}

impl Reading {
    /// The corrected value at 20 °C: setting added, zero error and ball taken off, growth by warmth taken out.
    pub fn length(&self, instrument: Option<&Instrument>) -> Length {
        let set = self.set_to.as_ref().map_or(Length::default(), |entry| entry.length);
        let offset = instrument.map_or(Length::default(), Instrument::offset);
        let warm = self.value.length + set - offset;
        match self.warmth {
            None => warm,
            Some(Warmth { celsius, material }) => {
                const PARTS: i64 = 10_000_000;
                warm.times(PARTS, PARTS + material.expansion() * (i64::from(celsius) - 20))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reading(json: serde_json::Value) -> Reading {
        serde_json::from_value(json).unwrap()
    }

    #[test]
    fn the_published_examples_are_readings() {
        for example in examples() {
            let read = reading(example.clone());
            assert_eq!(serde_json::to_value(&read).unwrap(), with_defaults(example));
        }
    }

    fn with_defaults(mut json: serde_json::Value) -> serde_json::Value {
        json.as_object_mut().unwrap().entry("phase").or_insert("found".into());
        json
    }

    #[test]
    fn a_dial_reading_is_added_to_what_the_gauge_was_set_to() {
        let read = reading(serde_json::json!({
            "part": "housing-bore.1", "quantity": "diameter", "value": "+0.0005 in", "set_to": "3.2510 in",
        }));
        assert_eq!(read.length(None).nanometres(), 82_588_100, "3.2515 in");
    }

    #[test]
    fn zero_error_and_ball_are_taken_off() {
        let instrument: Instrument = serde_json::from_value(serde_json::json!({
            "id": "mic", "name": "Ball micrometer", "kind": "ball-micrometer", "resolution": "0.0001 in",
            "uncertainty": "0.0001 in", "zero_error": "+0.0001 in", "ball": "0.2500 in",
        }))
        .unwrap();
        let read = reading(serde_json::json!({
            "part": "main-shell.1.lower", "quantity": "wall", "value": "0.3748 in", "instrument": "mic",
        }));
        assert_eq!(read.length(Some(&instrument)).nanometres(), 3_167_380, "0.1247 in");
    }

    // 23 millionths per kelvin on 100 mm and 10 K: about 23 µm (own arithmetic).
    #[test]
    fn a_warm_piston_is_smaller_at_20_degrees() {
        let read = reading(serde_json::json!({
            "part": "piston.1", "quantity": "diameter", "value": "100.023 mm",
            "warmth": { "celsius": 30, "material": "aluminium" },
        }));
        assert_eq!(read.length(None).nanometres(), 100_000_000);
    }
}
