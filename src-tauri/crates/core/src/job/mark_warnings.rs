//! What is missing and what is odd about the marks of caps and rods.

use std::collections::BTreeMap;

use super::MarkPlace;
use super::known::Job;
use crate::engine::Arrangement;

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
    use crate::job::{Mark, Marking};

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
