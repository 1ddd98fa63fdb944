//! The rules: one file each, one line each in [`ALL`]. The order is that in which reasons of equal severity are told;
//! rules about sets come last, each after those whose outcomes it reads.

mod adjacent_clearances;
mod block_as_one;
mod bore_damage;
mod both_halves;
mod cam_bearing_damage;
mod camshaft_as_one;
mod common_size;
mod cracks;
mod crankshaft_as_one;
mod debris_in_the_oil_ways;
mod dirty_tappets;
mod drive_damage;
mod fastener_damage;
mod ground_journals;
mod heat_on_a_shaft;
mod housing_damage;
mod journal_of_a_scored_shell;
mod journal_scratches;
mod journals_as_a_group;
mod lobe_damage;
mod lobe_of_a_spalled_tappet;
mod measure_first;
mod new_cam_new_tappets;
mod new_crank_new_shells;
mod new_tappet_old_cam;
mod not_looked_at;
mod nothing_found;
mod oil_pickup_damage;
mod oil_pump_damage;
mod one_bearing_failed;
mod outside_limits;
mod piston_damage;
mod pistons_to_bores;
mod pitted_tappets;
mod pushrod_damage;
mod renewed_at_overhaul;
mod rod_damage;
mod rod_shells_to_copper;
mod roller_damage;
mod rust_and_dirt;
mod seat_of_a_moved_shell;
mod shell_debris;
mod shell_failure;
mod shell_fatigue;
mod shell_moved;
mod shells;
mod tappet_damage;

use crate::engine::{Engine, Part, PartKind};
use crate::job::{Job, PartRecord};
use crate::sizing::Measured;
use crate::wear::{Grade, Tag};
use crate::words::capitalised;
use crate::work::Outcome;

/// Every rule.
pub const ALL: [&Rule; 46] = [
    &renewed_at_overhaul::RULE,
    &shell_failure::RULE,
    &shell_debris::RULE,
    &shell_fatigue::RULE,
    &shell_moved::RULE,
    &both_halves::RULE,
    &rod_shells_to_copper::RULE,
    &one_bearing_failed::RULE,
    &adjacent_clearances::RULE,
    &journal_of_a_scored_shell::RULE,
    &lobe_of_a_spalled_tappet::RULE,
    &seat_of_a_moved_shell::RULE,
    &not_looked_at::RULE,
    &cracks::RULE,
    &heat_on_a_shaft::RULE,
    &journal_scratches::RULE,
    &measure_first::RULE,
    &bore_damage::RULE,
    &common_size::RULE,
    &outside_limits::RULE,
    &piston_damage::RULE,
    &pitted_tappets::RULE,
    &tappet_damage::RULE,
    &dirty_tappets::RULE,
    &roller_damage::RULE,
    &pushrod_damage::RULE,
    &lobe_damage::RULE,
    &cam_bearing_damage::RULE,
    &housing_damage::RULE,
    &rod_damage::RULE,
    &oil_pump_damage::RULE,
    &oil_pickup_damage::RULE,
    &drive_damage::RULE,
    &fastener_damage::RULE,
    &rust_and_dirt::RULE,
    &debris_in_the_oil_ways::RULE,
    &nothing_found::RULE,
    &crankshaft_as_one::RULE,
    &new_crank_new_shells::RULE,
    &journals_as_a_group::RULE,
    &ground_journals::RULE,
    &block_as_one::RULE,
    &pistons_to_bores::RULE,
    &camshaft_as_one::RULE,
    &new_cam_new_tappets::RULE,
    &new_tappet_old_cam::RULE,
];

/// Not a rule but a person's word, told among the reasons.
pub const CHOSEN_WAY: Rule = Rule {
    id: "chosen-way",
    why: "Where more than one way serves, the shop and its customer choose.",
    source: "The shop’s choice.",
    says: Says::OnWear(&[]),
};

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
    OnSet(fn(&Scene<'_>, &dyn Fn(Part) -> Outcome) -> Vec<Verdict>),
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
    /// The look or reading that would decide, in a sentence; empty where it is decided.
    ask: &'static str,
}

/// From a grade upwards.
const fn from(grade: Grade, kinds: &'static [PartKind], tags: &'static [Tag], outcome: Outcome) -> Line {
    Line { kinds, tags, from: grade, to: Grade::FOUR, outcome, ask: "" }
}

/// Just one grade.
const fn at(grade: Grade, kinds: &'static [PartKind], tags: &'static [Tag], outcome: Outcome) -> Line {
    Line { kinds, tags, from: grade, to: grade, outcome, ask: "" }
}

/// Up to a grade.
const fn up_to(grade: Grade, kinds: &'static [PartKind], tags: &'static [Tag], outcome: Outcome) -> Line {
    Line { kinds, tags, from: Grade::ONE, to: grade, outcome, ask: "" }
}

/// What the severest line of a table that applies says of a part, with the finding in a sentence.
pub(super) fn read(lines: &[Line], part: Part, record: &PartRecord) -> Option<(Outcome, String)> {
    let applying = lines.iter().filter_map(|line| Some((line, line.reads(part, record)?)));
    let (line, (tag, grade)) = applying.max_by_key(|(line, _)| line.outcome)?;
    let space = if line.ask.is_empty() { "" } else { " " };
    Some((line.outcome, format!("{}{space}{}", seen(tag, grade), line.ask)))
}

/// A finding in a sentence.
fn seen(tag: Tag, grade: Grade) -> String {
    format!("{}, grade {}: {}", capitalised(tag.row().name), grade.number(), tag.sentence(grade))
}

impl Line {
    /// It can't be said yet: this look or reading would decide.
    const fn asking(self, ask: &'static str) -> Self {
        Self { ask, ..self }
    }

    /// The tag of a part to which it applies.
    fn reads(&self, part: Part, record: &PartRecord) -> Option<(Tag, Grade)> {
        if !self.kinds.contains(&part.kind) {
            return None;
        }
        let hit = |tag: &Tag| {
            record.grade(*tag).filter(|grade| (self.from..=self.to).contains(grade)).map(|grade| (grade, *tag))
        };
        let (grade, tag) = self.tags.iter().filter_map(hit).max_by_key(|(grade, _)| *grade)?;
        Some((tag, grade))
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
                    assert_eq!(
                        line.ask.is_empty(),
                        line.outcome != Outcome::CantSay,
                        "{}: what can't be said yet names the look or reading that would decide, and nothing else does",
                        rule.id
                    );
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
