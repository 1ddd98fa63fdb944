//! A part and its position, with one written form used in logs, archives and addresses: `main-shell.3.upper`.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Serialize};

use super::at::{At, Half, Port};
use super::{Arrangement, End, PartKind, ThrustBearing};
use crate::words::{Terms, capitalised};

/// One part of one engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "string"))]
#[serde(try_from = "String", into = "String")]
pub struct Part {
    /// What it is.
    pub kind: PartKind,
    /// Where it sits.
    pub at: At,
}

/// Text that names no part, or a part that an arrangement lacks.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct NotAPart(pub String);

impl Part {
    /// The part that brings this one along when it is renewed: journals and lobes come with their shaft, bores with the
    /// block, thrust flanges with the shells that have them.
    pub fn comes_with(self, arrangement: &Arrangement) -> Option<Self> {
        if self.kind == PartKind::ThrustFace && arrangement.construction.thrust == Some(ThrustBearing::Flange) {
            return Some(Self { kind: PartKind::MainShell, at: At::MainHalf(arrangement.thrust_main, Half::Upper) });
        }
        let kind = self.kind.comes_with(arrangement)?;
        let at = match self.at {
            At::Valve(cylinder, port, _) if kind == PartKind::Camshaft => {
                At::Camshaft(arrangement.camshaft_of(cylinder, port))
            }
            At::CamBearing(shaft, _) => At::Camshaft(shaft),
            _ => At::Engine,
        };
        Some(Self { kind, at })
    }

    /// The part with which it is looked at, as long as nothing asks for a look of its own: a tappet that slides as it should
    /// tells of its bore, and a pump that is not taken apart of its gears.
    pub fn seen_with(self) -> Option<Self> {
        match self.kind {
            PartKind::TappetBore => Some(Self { kind: PartKind::Tappet, at: self.at }),
            kind => Some(Self { kind: kind.detail_of()?, at: self.at }),
        }
    }

    /// The name a mechanic would call out, in the shop's words: "Main 3, upper shell".
    pub fn label(self, arrangement: &Arrangement, terms: Terms) -> String {
        let row = self.kind.row();
        let (name, short) = (row.name.said(terms), row.short.said(terms));
        match self.at {
            At::Engine => capitalised(&name),
            At::Main(n) => format!("Main {n}, {short}"),
            At::MainHalf(n, half) => format!("Main {n}, {} {short}", half_word(half)),
            At::ThrustSide(end) => format!("Thrust face, {} side of main {}", end_word(end), arrangement.thrust_main),
            At::Crankpin(n) => {
                let cylinders = arrangement.cylinders_on_crankpin(n);
                match cylinders.as_slice() {
                    [one] if *one == n => format!("Crankpin {n}"),
                    [] => format!("Crankpin {n}"),
                    several => {
                        let list: Vec<String> = several.iter().map(u8::to_string).collect();
                        format!("Crankpin {n} (cylinder {})", list.join(" and "))
                    }
                }
            }
            At::Cylinder(n) => format!("{} {n}", capitalised(&short)),
            At::CylinderHalf(n, half) => format!("Rod {n}, {} {short}", half_word(half)),
            At::Valve(n, port, nth) => {
                format!("{} {}", capitalised(&short), arrangement.valve_words(n, port, nth))
            }
            At::Camshaft(shaft) => named(capitalised(&short), &arrangement.camshaft_words(shaft)),
            At::CamBearing(shaft, n) => {
                named(format!("{} {n}", capitalised(&short)), &arrangement.camshaft_words(shaft))
            }
        }
    }
}

/// "Camshaft", "Camshaft, left bank".
fn named(name: String, which: &str) -> String {
    if which.is_empty() { name } else { format!("{name}, {which}") }
}

fn half_word(half: Half) -> &'static str {
    if half == Half::Upper { "upper" } else { "lower" }
}

fn end_word(end: End) -> &'static str {
    if end == End::Front { "front" } else { "rear" }
}

impl fmt::Display for Part {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let kind = self.kind.row().id;
        match self.at {
            At::Engine => write!(f, "{kind}"),
            At::Main(n) | At::Crankpin(n) | At::Cylinder(n) | At::Camshaft(n) => write!(f, "{kind}.{n}"),
            At::MainHalf(n, half) | At::CylinderHalf(n, half) => write!(f, "{kind}.{n}.{}", half_word(half)),
            At::ThrustSide(end) => write!(f, "{kind}.{}", end_word(end)),
            At::Valve(n, Port::Intake, nth) => write!(f, "{kind}.{n}.intake.{nth}"),
            At::Valve(n, Port::Exhaust, nth) => write!(f, "{kind}.{n}.exhaust.{nth}"),
            At::CamBearing(shaft, n) => write!(f, "{kind}.{shaft}.{n}"),
        }
    }
}

impl FromStr for Part {
    type Err = NotAPart;

    fn from_str(text: &str) -> Result<Self, NotAPart> {
        let unknown = || {
            // Cut so that a hostile text can't fill the message.
            let shown: String = text.chars().take(60).collect();
            NotAPart(format!("“{shown}” names no part: it should look like “main-shell.3.upper” or “piston.2”."))
        };
        let mut words = text.split('.');
        let kind = words.next().and_then(PartKind::from_id).ok_or_else(unknown)?;
        let words: Vec<&str> = words.collect();
        let at = kind.row().positions.parse(&words).ok_or_else(unknown)?;
        Ok(Self { kind, at })
    }
}

impl TryFrom<String> for Part {
    type Error = NotAPart;

    fn try_from(text: String) -> Result<Self, NotAPart> {
        text.parse()
    }
}

impl From<Part> for String {
    fn from(part: Part) -> Self {
        part.to_string()
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Part {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Part".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        let kinds: Vec<&str> = PartKind::ALL.iter().map(|kind| kind.row().id).collect();
        schemars::json_schema!({
            "type": "string",
            "pattern": format!("^({})(\\.[a-z0-9]+)*$", kinds.join("|")),
            "description": "A part of the engine and its position, such as main-shell.3.upper, crankpin.2, tappet.4.intake.1 or oil-pump.",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn labelled(id: &str, arrangement: &Arrangement, label: &str) {
        let part: Part = id.parse().unwrap();
        assert_eq!(part.label(arrangement, Terms::default()), label);
        assert_eq!(part.to_string(), id);
    }

    #[test]
    fn parts_are_called_what_a_mechanic_calls_them() {
        let inline = Arrangement::inline(4);
        let vee = Arrangement::vee(8);
        labelled("main-shell.3.upper", &inline, "Main 3, upper shell");
        labelled("rod-shell.2.lower", &inline, "Rod 2, lower shell");
        labelled("main-journal.1", &inline, "Main 1, journal");
        labelled("thrust-face.front", &inline, "Thrust face, front side of main 3");
        labelled("crankpin.2", &inline, "Crankpin 2");
        labelled("crankpin.2", &vee, "Crankpin 2 (cylinder 2 and 6)");
        labelled("tappet.3.intake.1", &inline, "Tappet 3, intake");
        labelled("cam-bearing.1.4", &inline, "Cam bearing 4");
        labelled("oil-pump", &inline, "Oil pump");
        labelled("pushrod.3.exhaust.1", &inline, "Pushrod 3, exhaust");
        labelled("rod-bolts", &inline, "Rod bolt set");
    }

    #[test]
    fn nonsense_is_refused() {
        for text in [
            "",
            "main-shell",
            "main-shell.3",
            "main-shell.3.middle",
            "main-shell.0.upper",
            "piston.x",
            "piston.1.2",
            "wheel.1",
            "main-shell.03.upper",
            "main-shell.300.upper",
        ] {
            assert!(text.parse::<Part>().is_err(), "{text} was accepted");
        }
    }
}
