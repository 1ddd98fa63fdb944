//! The marks of caps and rods, noted before they come off, so that each goes back to its own place and way round.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::Job;
use crate::engine::{Arrangement, End};

/// What carries a mark.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum MarkPlace {
    /// The cap of a main bearing, by number.
    MainCap(u8),
    /// The connecting rod of a cylinder.
    Rod(u8),
    /// The cap of a cylinder's rod.
    RodCap(u8),
}

impl MarkPlace {
    /// Every place of an arrangement, in strip-down order.
    pub fn all(arrangement: &Arrangement) -> Vec<Self> {
        let rods = (1..=arrangement.cylinders).flat_map(|n| [Self::Rod(n), Self::RodCap(n)]);
        rods.chain((1..=arrangement.mains).map(Self::MainCap)).collect()
    }

    /// Its name: "Rod cap 2".
    pub fn label(self) -> String {
        match self {
            Self::MainCap(n) => format!("Main cap {n}"),
            Self::Rod(n) => format!("Rod {n}"),
            Self::RodCap(n) => format!("Rod cap {n}"),
        }
    }

    /// A group within which two alike marks would be mistaken for each other. A rod and its cap carry the same mark.
    fn group(self) -> &'static str {
        match self {
            Self::MainCap(_) => "main caps",
            Self::Rod(_) => "rods",
            Self::RodCap(_) => "rod caps",
        }
    }
}

/// The side of the engine on which a mark is stamped, seen from the rear looking to the front.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
#[allow(missing_docs, reason = "the names say it")]
pub enum MarkSide {
    Left,
    Right,
    Front,
    Rear,
    Underneath,
}

/// Where a mark comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Marking {
    /// It was there.
    Found,
    /// There was none; the mechanic made it.
    Made,
}

/// The marks of one cap or rod.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Mark {
    /// The number or letters as they stand there, such as "3" or "II".
    pub text: String,
    /// Where it comes from.
    pub marking: Marking,
    /// On which side it stands.
    pub side: Option<MarkSide>,
    /// Which way the arrow or the bearing tang points.
    pub points: Option<End>,
}

impl Job {
    /// Places whose mark has not been noted yet.
    pub fn marks_missing(&self) -> Vec<MarkPlace> {
        let Some(arrangement) = &self.arrangement else { return vec![] };
        MarkPlace::all(arrangement).into_iter().filter(|place| !self.marks.contains_key(place)).collect()
    }

    /// What is odd about the marks: two alike, a cap that doesn't match its rod, a number that is skipped.
    pub fn mark_warnings(&self) -> Vec<String> {
        let Some(arrangement) = &self.arrangement else { return vec![] };
        let mut warnings = Vec::new();
        let mut seen: BTreeMap<(&str, String), Vec<MarkPlace>> = BTreeMap::new();
        for place in MarkPlace::all(arrangement) {
            if let Some(mark) = self.marks.get(&place) {
                seen.entry((place.group(), reading(&mark.text))).or_default().push(place);
            }
        }
        for ((_, text), places) in &seen {
            if let [_, _, ..] = places.as_slice() {
                let names: Vec<String> = places.iter().map(|place| place.label()).collect();
                warnings.push(format!(
                    "{} carry the same mark “{text}”: add a mark of your own to tell them apart.",
                    names.join(" and ")
                ));
            }
        }
        for cylinder in 1..=arrangement.cylinders {
            let rod = self.marks.get(&MarkPlace::Rod(cylinder));
            let cap = self.marks.get(&MarkPlace::RodCap(cylinder));
            if let (Some(rod), Some(cap)) = (rod, cap)
                && reading(&rod.text) != reading(&cap.text)
            {
                warnings.push(format!(
                    "Rod {cylinder} is marked “{}” but its cap “{}”: they may have been mixed up before.",
                    rod.text.trim(),
                    cap.text.trim()
                ));
            }
        }
        warnings.extend(self.gaps(arrangement));
        warnings
    }

    /// Numbers missing from a group of marks that is complete and otherwise counts 1, 2, 3 ….
    fn gaps(&self, arrangement: &Arrangement) -> Vec<String> {
        let mut numbers: BTreeMap<&str, Vec<Option<u8>>> = BTreeMap::new();
        for place in MarkPlace::all(arrangement) {
            let number = self.marks.get(&place).and_then(|mark| reading(&mark.text).parse().ok());
            numbers.entry(place.group()).or_default().push(number);
        }
        let mut gaps = Vec::new();
        for (group, found) in numbers {
            let Some(found) = found.into_iter().collect::<Option<Vec<u8>>>() else { continue };
            let count = u8::try_from(found.len()).unwrap_or(u8::MAX);
            let missing: Vec<String> = (1..=count).filter(|n| !found.contains(n)).map(|n| n.to_string()).collect();
            if !missing.is_empty() {
                gaps.push(format!(
                    "No {} carry the number {}: a part may come from another engine.",
                    group,
                    missing.join(", ")
                ));
            }
        }
        gaps
    }
}

/// Marks are compared without regard to spaces and case.
fn reading(text: &str) -> String {
    text.split_whitespace().collect::<String>().to_uppercase()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn marked(marks: &[(MarkPlace, &str)]) -> Job {
        let mark = |text: &str| Mark { text: text.into(), marking: Marking::Found, side: None, points: None };
        Job {
            arrangement: Some(Arrangement::inline(2)),
            marks: marks.iter().map(|(place, text)| (*place, mark(text))).collect(),
            ..Job::default()
        }
    }

    use MarkPlace::{MainCap, Rod, RodCap};

    #[track_caller]
    fn warns(marks: &[(MarkPlace, &str)], expected: &[&str]) {
        assert_eq!(marked(marks).mark_warnings(), expected);
    }

    #[test]
    fn doubles_gaps_and_mismatches_are_named() {
        warns(&[(MainCap(1), "1"), (MainCap(2), "2"), (MainCap(3), "3")], &[]);
        warns(
            &[(MainCap(1), "1"), (MainCap(2), " 1")],
            &["Main cap 1 and Main cap 2 carry the same mark “1”: add a mark of your own to tell them apart."],
        );
        warns(
            &[(MainCap(1), "1"), (MainCap(2), "2"), (MainCap(3), "4")],
            &["No main caps carry the number 3: a part may come from another engine."],
        );
        warns(&[(Rod(1), "a"), (RodCap(1), "A")], &[]);
        warns(
            &[(Rod(1), "A"), (RodCap(1), "B")],
            &["Rod 1 is marked “A” but its cap “B”: they may have been mixed up before."],
        );
    }

    #[test]
    fn every_cap_and_rod_is_asked_for() {
        let job = marked(&[(Rod(1), "1"), (MainCap(2), "2")]);
        assert_eq!(job.marks_missing(), [RodCap(1), Rod(2), RodCap(2), MainCap(1), MainCap(3)]);
    }
}
