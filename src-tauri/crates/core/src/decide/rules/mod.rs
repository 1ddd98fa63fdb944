//! The rules: one file each, one line each in [`ALL`]. The order is that in which reasons of equal severity are told;
//! rules about sets come last, each after those whose outcomes it reads.

mod bore_damage;
mod cam_bearing_damage;
mod camshaft_as_one;
mod common_size;
mod cracks;
mod crankshaft_as_one;
mod debris_in_the_oil_ways;
mod dirty_tappets;
mod drive_damage;
mod heat_on_a_shaft;
mod housing_damage;
mod journal_scratches;
mod journals_as_a_group;
mod lobe_damage;
mod measure_first;
mod new_cam_new_tappets;
mod not_looked_at;
mod nothing_found;
mod oil_pump_damage;
mod outside_limits;
mod piston_damage;
mod pistons_to_bores;
mod renewed_at_overhaul;
mod rod_damage;
mod rust_and_dirt;
mod tappet_damage;

use super::Outcome;
use crate::engine::{Engine, Part, PartKind};
use crate::job::{Job, PartRecord};
use crate::sizing::Measured;
use crate::wear::{Grade, Tag};

/// Every rule.
pub const ALL: [&Rule; 26] = [
    &renewed_at_overhaul::RULE,
    &not_looked_at::RULE,
    &cracks::RULE,
    &heat_on_a_shaft::RULE,
    &journal_scratches::RULE,
    &measure_first::RULE,
    &common_size::RULE,
    &outside_limits::RULE,
    &piston_damage::RULE,
    &bore_damage::RULE,
    &tappet_damage::RULE,
    &dirty_tappets::RULE,
    &lobe_damage::RULE,
    &cam_bearing_damage::RULE,
    &housing_damage::RULE,
    &rod_damage::RULE,
    &oil_pump_damage::RULE,
    &drive_damage::RULE,
    &rust_and_dirt::RULE,
    &debris_in_the_oil_ways::RULE,
    &nothing_found::RULE,
    &crankshaft_as_one::RULE,
    &journals_as_a_group::RULE,
    &pistons_to_bores::RULE,
    &camshaft_as_one::RULE,
    &new_cam_new_tappets::RULE,
];

/// A rule: what it looks at, what it concludes, why, and who says so.
#[derive(Debug)]
pub struct Rule {
    /// The written form.
    pub id: &'static str,
    /// Why, in a sentence for the mechanic.
    pub why: &'static str,
    /// Where it comes from: a published source, or "common practice".
    pub source: &'static str,
    /// How it concludes.
    pub says: Says,
}

/// How a rule concludes.
#[derive(Debug)]
pub enum Says {
    /// From the tags on a part, by a table.
    OnWear(&'static [Line]),
    /// From anything known of a part and its job: an outcome with its sentence.
    OnPart(fn(&Scene<'_>, Part, &PartRecord) -> Option<(Outcome, String)>),
    /// From what stands for other parts: outcomes for further parts, each with its sentence.
    OnSet(fn(&Engine, &dyn Fn(Part) -> Outcome) -> Vec<Verdict>),
}

/// A part, its outcome, and why.
pub type Verdict = (Part, Outcome, String);

/// The engine and everything recorded.
#[derive(Debug, Clone, Copy)]
pub struct Scene<'a> {
    /// The engine.
    pub engine: &'a Engine,
    /// All that is known.
    pub job: &'a Job,
    /// What was measured and what follows from it.
    pub measured: &'a Measured<'a>,
}

/// One line of a table of wear: on these kinds, these tags from this grade on mean this.
#[derive(Debug)]
pub struct Line {
    kinds: &'static [PartKind],
    tags: &'static [Tag],
    from: Grade,
    to: Grade,
    outcome: Outcome,
}

/// From a grade upwards.
const fn from(grade: Grade, kinds: &'static [PartKind], tags: &'static [Tag], outcome: Outcome) -> Line {
    Line { kinds, tags, from: grade, to: Grade::FOUR, outcome }
}

/// Just one grade.
const fn at(grade: Grade, kinds: &'static [PartKind], tags: &'static [Tag], outcome: Outcome) -> Line {
    Line { kinds, tags, from: grade, to: grade, outcome }
}

/// Up to a grade.
const fn up_to(grade: Grade, kinds: &'static [PartKind], tags: &'static [Tag], outcome: Outcome) -> Line {
    Line { kinds, tags, from: Grade::ONE, to: grade, outcome }
}

impl Line {
    /// The outcome for a part with the tag that decides it.
    pub(super) fn reads(&self, part: Part, record: &PartRecord) -> Option<(Outcome, Tag, Grade)> {
        if !self.kinds.contains(&part.kind) {
            return None;
        }
        let hit = |tag: &Tag| {
            record.grade(*tag).filter(|grade| (self.from..=self.to).contains(grade)).map(|grade| (grade, *tag))
        };
        let (grade, tag) = self.tags.iter().filter_map(hit).max_by_key(|(grade, _)| *grade)?;
        Some((self.outcome, tag, grade))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rules_are_well_formed() {
        let mut ids: Vec<&str> = ALL.iter().map(|rule| rule.id).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), ALL.len(), "two rules share an id");
        for rule in ALL {
            assert!(rule.why.ends_with('.') && !rule.source.is_empty(), "{}", rule.id);
            let Says::OnWear(lines) = &rule.says else { continue };
            for line in *lines {
                for kind in line.kinds {
                    for tag in line.tags {
                        assert!(kind.row().tags.contains(tag), "{}: a {kind:?} can't be tagged {tag:?}", rule.id);
                    }
                    let possible = kind.row().outcomes;
                    assert!(
                        line.outcome == Outcome::CantSay || possible.contains(&line.outcome),
                        "{}: {:?} is not possible for a {kind:?}",
                        rule.id,
                        line.outcome
                    );
                }
            }
        }
    }

    #[test]
    fn a_worse_grade_never_reads_a_milder_line() {
        let lines = || {
            ALL.iter()
                .filter_map(|rule| if let Says::OnWear(lines) = &rule.says { Some(*lines) } else { None })
                .flatten()
        };
        for kind in PartKind::ALL {
            for tag in kind.row().tags {
                let outcome = |grade: &Grade| {
                    let about = |line: &&Line| {
                        line.kinds.contains(&kind) && line.tags.contains(tag) && (line.from..=line.to).contains(grade)
                    };
                    lines().filter(about).map(|line| line.outcome).max()
                };
                let by_grade: Vec<Option<Outcome>> = Grade::ALL.iter().map(outcome).collect();
                assert!(by_grade.is_sorted(), "{kind:?} {tag:?} {by_grade:?}");
            }
        }
    }
}
