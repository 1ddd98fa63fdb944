//! All that is known about one engine, and of each of its parts.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    Ancillary, Answer, Complaint, Drawn, EditId, HistoryFact, Mark, MarkPlace, NoEffect, OrderedStripDown, OwnItem,
    PhotoId, Proposed, Refusal, TextField, Ticked,
};
use crate::engine::{Arrangement, Part, PartKind};
use crate::measure::{Entry, Instrument, InstrumentId, Reading};
use crate::money::{EstimateLine, OtherEngine, PriceKey, PriceList, Supply};
use crate::sheet::{Sheet, SizeGroup};
use crate::wear::{Grade, Tag, Zone};
use crate::words::Terms;
use crate::work::{Hands, Outcome, Work};

/// All that is known about one engine on the bench.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Job {
    /// Customer, machine, complaint and the like, as typed.
    pub texts: BTreeMap<TextField, String>,
    /// What is known of the engine's past.
    pub history: BTreeMap<HistoryFact, Answer>,
    /// What the customer complained of. What was once asked about the past as well stands in both, and counts once.
    pub complaints: BTreeSet<Complaint>,
    /// What came with the engine, in the order in which it was noted.
    pub ancillaries: Vec<Ancillary>,
    /// The layout, once it has been entered.
    pub arrangement: Option<Arrangement>,
    /// The marks found or made on caps and rods.
    pub marks: BTreeMap<MarkPlace, Mark>,
    /// The marks by which shells are graded, read off housings and journals.
    pub grade_marks: BTreeMap<Part, String>,
    /// The main bores whose caps are renewed.
    pub renewed_caps: BTreeSet<Part>,
    /// What has been recorded of each part; a part that is missing here has not been looked at.
    pub parts: BTreeMap<Part, PartRecord>,
    /// The photos that were picked for the customer, in the order in which they were picked.
    pub shown_photos: Vec<(Part, PhotoId)>,
    /// How sharp photos are, the higher the sharper, as far as was measured.
    pub sharpness: BTreeMap<PhotoId, u16>,
    /// The shop's instruments, as far as readings of this job were taken with them.
    pub instruments: BTreeMap<InstrumentId, Instrument>,
    /// What the engine's manual says.
    pub sheet: Sheet,
    /// Readings in the order in which they were taken; of several at one place the last stands.
    pub readings: Vec<Taken>,
    /// How many readings of each part there are.
    pub taken_of: BTreeMap<Part, usize>,
    /// To which size a group had been ground or bored before; standard where nothing is noted.
    pub found_sizes: BTreeMap<SizeGroup, Entry>,
    /// Sizes that a person chose.
    pub chosen_sizes: BTreeMap<SizeGroup, ChosenSize>,
    /// Sizes that the machinist confirmed.
    pub confirmed_sizes: BTreeMap<SizeGroup, ConfirmedSize>,
    /// Ways that a person chose, where more than one serves: for worn bores, for a worn camshaft.
    pub chosen_ways: BTreeMap<PartKind, ChosenWay>,
    /// Who does what, where a person said so.
    pub hands: BTreeMap<PriceKey, Hands>,
    /// How parts are supplied and where the old ones go, where a person said so.
    pub supplies: BTreeMap<PartKind, Supply>,
    /// What the shop charges.
    pub prices: PriceList,
    /// The estimate that the customer was given before the engine was opened.
    pub estimate: Vec<EstimateLine>,
    /// What other engines would cost.
    pub other_engines: Vec<OtherEngine>,
    /// What has been done about items of the lists.
    pub ticks: Vec<Ticked>,
    /// Items of the shop's own on the lists.
    pub own_items: Vec<(EditId, OwnItem)>,
    /// What was proposed to the customer, in order, each with its answer.
    pub proposals: Vec<Proposed>,
    /// What the customer was told before anything was opened, in order, each with its answer; the last one stands.
    pub strip_downs: Vec<OrderedStripDown>,
    /// That the customer refused the work, if so.
    pub refusal: Option<Refusal>,
    /// The edit that closed the job, if it is closed.
    pub closed: Option<EditId>,
    /// Edits from a newer version, kept but not understood.
    pub unknown: Vec<EditId>,
    /// Edits that have been undone.
    pub undone: BTreeSet<EditId>,
    /// Edits that are kept and do nothing, each with the reason.
    pub without_effect: BTreeMap<EditId, NoEffect>,
    /// The words in which all of it is told. They come from the shop, not from edits.
    pub terms: Terms,
}

impl Job {
    /// Whether any part has been looked at, measured or decided by hand. What lies outside the parts begins nothing: from
    /// oil and air cleaner alone no list of work follows.
    pub fn is_begun(&self) -> bool {
        let is_known = |(part, record): (&Part, &PartRecord)| {
            !part.kind.is_outside() && (record.looked_at() || record.overrule.is_some())
        };
        !self.readings.is_empty() || self.parts.iter().any(is_known)
    }

    /// The part with which a part is looked at; none where somebody has looked at it itself, and where something asks for a
    /// look of its own: a tappet with felt scores on its body for one at its bore.
    pub fn seen_with(&self, part: Part) -> Option<Part> {
        let with = part.seen_with()?;
        let is_looked_at = self.parts.get(&part).is_some_and(PartRecord::looked_at);
        let is_asked = part.kind == PartKind::TappetBore && self.is_torn(with);
        (!is_looked_at && !is_asked).then_some(with)
    }

    /// Whether an assembly was taken apart and each of its parts looked at.
    pub fn is_taken_apart(&self, part: Part) -> bool {
        let is_looked_at = |kind| self.parts.get(&Part { kind, at: part.at }).is_some_and(PartRecord::looked_at);
        let details = part.kind.details();
        !details.is_empty() && details.iter().copied().all(is_looked_at)
    }

    /// Whether the body of a tappet bears felt marks of what it slides in.
    fn is_torn(&self, tappet: Part) -> bool {
        let grade = |tag| self.parts.get(&tappet).and_then(|record| record.grade(tag));
        [Tag::Scoring, Tag::Scuffing].into_iter().filter_map(grade).any(|grade| grade >= Grade::TWO)
    }

    /// The same job, told in a shop's words.
    pub fn speaking(self, terms: Terms) -> Self {
        Self { terms, ..self }
    }

    /// What a mechanic calls a part of this engine.
    pub(super) fn label(&self, part: Part) -> String {
        match &self.arrangement {
            Some(arrangement) => part.label(arrangement, self.terms),
            None => part.label(&Arrangement::inline(1), self.terms),
        }
    }
}

/// What has been recorded of one part.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct PartRecord {
    /// Photos, in the order in which they were taken in.
    pub photos: Vec<PhotoId>,
    /// What was drawn over photos, in order; also over those that were taken off since.
    pub drawn: BTreeMap<PhotoId, Vec<Drawn>>,
    /// Tags, each with its grade and zones.
    pub tags: BTreeMap<Tag, TagRecord>,
    /// It was looked at and found clean; of a shell its running face.
    pub clean: bool,
    /// The back of a shell was looked at and found clean.
    pub back_clean: bool,
    /// A remark.
    pub note: String,
    /// A person's own decision, with the reason.
    pub overrule: Option<Overrule>,
}

impl PartRecord {
    /// Whether somebody has said what they saw: a tag or *clean*. A photo alone is not a look.
    pub fn looked_at(&self) -> bool {
        self.clean || !self.tags.is_empty()
    }

    /// Whether somebody has said what they saw at the back of a shell: damage, or *clean*.
    pub fn back_looked_at(&self) -> bool {
        let is_of_back = |(tag, seen): (&Tag, &TagRecord)| *tag == Tag::BrightBack || seen.zones.contains(&Zone::Back);
        self.back_clean || self.tags.iter().any(is_of_back)
    }

    /// The worst grade of damage, if any damage is recorded.
    pub fn worst(&self) -> Option<Grade> {
        self.tags.iter().filter(|(tag, _)| tag.is_damage()).map(|(_, record)| record.grade).max()
    }

    /// The grade of a tag, if it is recorded.
    pub fn grade(&self, tag: Tag) -> Option<Grade> {
        self.tags.get(&tag).map(|record| record.grade)
    }
}

/// How bad and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TagRecord {
    /// How bad.
    pub grade: Grade,
    /// Where; empty when no zone was marked.
    pub zones: BTreeSet<Zone>,
}

/// A reading with the edit that took it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Taken {
    /// The edit, by which it can be undone.
    pub edit: EditId,
    /// The reading.
    pub reading: Reading,
}

/// A size that a person chose, with the reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChosenSize {
    /// The size.
    pub size: Entry,
    /// Why.
    pub reason: String,
}

/// A size that the machinist confirmed, before it is machined.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ConfirmedSize {
    /// The size.
    pub size: Entry,
    /// Who confirmed it; may be empty.
    pub by: String,
}

/// A way that a person chose, with the reason.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChosenWay {
    /// The way.
    pub way: Work,
    /// Why.
    pub reason: String,
}

/// A person's decision against the rules' view.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Overrule {
    /// What is to be done.
    pub outcome: Outcome,
    /// Why.
    pub reason: String,
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::*;
    use crate::job::Edit;
    use crate::job::testing::{arrange, edit, job_of};

    #[track_caller]
    fn is_begun(changes: &[Value], expected: bool) {
        let all: Vec<Value> = [arrange(&Arrangement::inline(4))].iter().chain(changes).cloned().collect();
        assert_eq!(job_of(&all).is_begun(), expected, "{changes:?}");
    }

    /// Lists of work and a bill follow once a job is begun: from oil and air cleaner alone none does.
    #[test]
    fn only_parts_and_readings_begin_a_job() {
        let photo = json!({ "do": "add-photo", "part": "as-received", "photo": "a".repeat(64) });
        let torn = json!({ "do": "tag", "part": "air-cleaner", "tag": "torn", "grade": 3 });
        is_begun(&[photo, torn, json!({ "do": "clean", "part": "engine-oil" })], false);
        is_begun(&[json!({ "do": "clean", "part": "piston.1" })], true);
    }

    /// By the same edits, told in the history and undone like them.
    #[test]
    fn what_lies_outside_is_recorded_as_a_part_is() {
        let filter: Part = "oil-filter".parse().unwrap();
        let edit_of = |n, change: Value| Edit { id: edit(n), change: serde_json::from_value(change).unwrap() };
        let mut edits = vec![
            edit_of(1, arrange(&Arrangement::inline(4))),
            edit_of(2, json!({ "do": "clean", "part": filter })),
            edit_of(3, json!({ "do": "remark", "part": filter, "text": "Cut open." })),
            edit_of(4, json!({ "do": "tag", "part": filter, "tag": "grit", "grade": 2 })),
        ];
        let job = Job::fold(&edits);
        let record = &job.parts[&filter];
        assert_eq!((record.clean, record.worst(), record.note.as_str()), (false, Some(Grade::TWO), "Cut open."));
        assert_eq!(edits[3].sentence(&job), "Oil filter: grit or dust, grade 2");
        edits.push(edit_of(5, json!({ "do": "undo", "edit": edit(4) })));
        assert!(Job::fold(&edits).parts[&filter].clean);
    }
}
