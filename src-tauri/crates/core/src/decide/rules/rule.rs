//! What a rule is: an id, a reason, a source and the way in which it concludes; and tables of wear, by which most do.

use std::borrow::Cow;

use serde::Serialize;

use crate::engine::{Engine, Part, PartKind};
use crate::job::{Job, PartRecord};
use crate::sizing::Measured;
use crate::wear::{Grade, Tag};
use crate::words::{Phrase, Terms};
use crate::work::Outcome;

/// A rule's written form, by which reasons name it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct RuleId(pub(super) &'static str);

impl RuleId {
    /// As text.
    pub fn as_str(self) -> &'static str {
        self.0
    }
}

/// A rule: what it looks at, what it concludes, why, and who says so.
#[derive(Debug)]
pub struct Rule {
    /// The written form.
    pub id: RuleId,
    /// Why, in a sentence for the mechanic, with the places of the shop's words.
    pub(super) why: &'static str,
    /// Where it comes from: a published source, or "common practice".
    pub source: &'static str,
    /// How it concludes.
    pub says: Says,
}

impl Rule {
    /// Why, in a sentence for the mechanic, in the shop's words.
    pub fn why(&self, terms: Terms) -> Cow<'static, str> {
        Phrase(self.why).said(terms)
    }
}

/// How a rule concludes.
#[derive(Debug)]
pub enum Says {
    /// From the tags on a part, by a table.
    OnWear(&'static [WearLine]),
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
pub struct WearLine {
    pub(super) kinds: &'static [PartKind],
    pub(super) tags: &'static [Tag],
    pub(super) from: Grade,
    pub(super) to: Grade,
    pub(super) outcome: Outcome,
    /// The look or reading that would decide, in a sentence; empty where it is decided.
    pub(super) ask: &'static str,
}

/// From a grade upwards.
pub(in crate::decide) const fn from(
    grade: Grade,
    kinds: &'static [PartKind],
    tags: &'static [Tag],
    outcome: Outcome,
) -> WearLine {
    WearLine { kinds, tags, from: grade, to: Grade::FOUR, outcome, ask: "" }
}

/// Just one grade.
pub(in crate::decide) const fn at(
    grade: Grade,
    kinds: &'static [PartKind],
    tags: &'static [Tag],
    outcome: Outcome,
) -> WearLine {
    WearLine { kinds, tags, from: grade, to: grade, outcome, ask: "" }
}

/// Up to a grade.
pub(in crate::decide) const fn up_to(
    grade: Grade,
    kinds: &'static [PartKind],
    tags: &'static [Tag],
    outcome: Outcome,
) -> WearLine {
    WearLine { kinds, tags, from: Grade::ONE, to: grade, outcome, ask: "" }
}

/// What the severest line of a table that applies says of a part, with the finding in a sentence.
pub(in crate::decide) fn read(lines: &[WearLine], part: Part, record: &PartRecord) -> Option<(Outcome, String)> {
    let applying = lines.iter().filter_map(|line| Some((line, line.reads(part, record)?)));
    let (line, (tag, grade)) = applying.max_by_key(|(line, _)| line.outcome)?;
    let space = if line.ask.is_empty() { "" } else { " " };
    Some((line.outcome, format!("{}{space}{}", tag.told(grade), line.ask)))
}

impl WearLine {
    /// It can't be said yet: this look or reading would decide.
    pub(super) const fn asking(self, ask: &'static str) -> Self {
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
