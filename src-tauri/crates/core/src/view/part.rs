//! A part with all that is known and concluded about it, as every screen and paper shows it.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::caution::{self, Caution};
use crate::decide::Decision;
use crate::engine::{Part, PartKind};
use crate::figure::{Figure, Readings, doubt};
use crate::job::{Drawn, EditId, PartRecord, PhotoId};
use crate::label::Piece;
use crate::measure::{Length, Phase, Quantity, Reading, Spot};
use crate::wear::{Grade, Tag, Zone};

/// Whether somebody has looked at a part, and what they saw.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Seen {
    /// Nothing has been recorded: not the same as clean.
    NotLooked,
    /// It was looked at with another part, and nothing asks for a look of its own.
    Along,
    /// Looked at and clean, or only evenly worn.
    Clean,
    /// Damage was tagged.
    Worn,
}

impl Seen {
    /// What a record says by itself.
    pub(super) fn of(record: &PartRecord) -> Self {
        match record.worst() {
            Some(_) => Self::Worn,
            None if record.looked_at() => Self::Clean,
            None => Self::NotLooked,
        }
    }
}

/// One part with all that is known and concluded about it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct PartView {
    /// The part.
    pub part: Part,
    /// Its kind.
    pub kind: PartKind,
    /// What a mechanic calls it.
    pub label: String,
    /// The piece by whose label it goes: itself, or what it stays on; none of what gets none.
    pub piece: Option<Piece>,
    /// Looked at or not, and what was seen.
    pub seen: Seen,
    /// The worst grade of damage.
    pub worst: Option<Grade>,
    /// Whether it is a shell whose back was looked at and found clean.
    pub back_clean: bool,
    /// The tags, worst first.
    pub findings: Vec<Finding>,
    /// Photos in the order taken in.
    pub photos: Vec<PhotoId>,
    /// What is drawn over them, in the order in which it was drawn; photos with nothing on them are left out.
    pub drawn: BTreeMap<PhotoId, Vec<Drawn>>,
    /// The remark; empty if none.
    pub note: String,
    /// The readings, in the order in which they were taken; those that a later one at the same place replaced included.
    pub readings: Vec<ReadingView>,
    /// What follows from the readings.
    pub figures: Vec<Figure>,
    /// What can hurt with it in the hand, the gravest first.
    pub cautions: Vec<&'static Caution>,
    /// What to do about it.
    pub decision: Decision,
    /// What can hurt in doing that, as far as it is not said of the part.
    pub work_cautions: Vec<&'static Caution>,
}

impl PartView {
    /// Whether it was measured beyond a limit as it was found.
    pub fn is_measured_outside(&self) -> bool {
        self.figures.iter().any(Figure::is_found_outside)
    }

    /// Whether nothing at all is known of it: it was neither looked at, by itself or with another part, nor measured.
    pub fn is_unknown(&self) -> bool {
        self.seen == Seen::NotLooked && self.is_looked_at_alone() && self.readings.is_empty()
    }

    /// Whether it was measured and not looked at.
    pub fn is_only_measured(&self) -> bool {
        self.seen == Seen::NotLooked && !self.readings.is_empty()
    }

    /// Whether it asks for a look of its own, or has had one: else it is looked at with another part.
    pub fn is_looked_at_alone(&self) -> bool {
        let along = self.seen == Seen::NotLooked && self.part.seen_with().is_some() && self.decision.goes_along();
        self.seen != Seen::Along && !along
    }
}

/// One tag on one part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Finding {
    /// What.
    pub tag: Tag,
    /// Its name.
    pub name: String,
    /// How bad.
    pub grade: Grade,
    /// The grade's sentence.
    pub sentence: String,
    /// Where, in the order of the drawing.
    pub zones: Vec<Zone>,
}

/// One reading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ReadingView {
    /// The edit that took it, by which it can be undone.
    pub edit: EditId,
    /// What was measured.
    pub quantity: Quantity,
    /// The name of a quantity of the manual's own; else empty.
    pub name: String,
    /// Where.
    pub spot: Spot,
    /// When in the rebuild.
    pub phase: Phase,
    /// As it was entered.
    pub value: String,
    /// The whole reading as it was taken, so that it can be given again as sure.
    pub taken: Reading,
    /// Corrected, at 20 °C, in nanometres.
    pub length: Length,
    /// With what; empty if no instrument was named.
    pub instrument: String,
    /// Whether it stands: no later one was taken at its place.
    pub stands: bool,
    /// A question, if it is hard to believe.
    pub doubt: Option<String>,
}

/// The part as a person sees it, without its readings.
pub(crate) fn view(readings: &Readings<'_>, part: Part, decision: Decision) -> PartView {
    let Readings { engine, job, .. } = *readings;
    let blank = PartRecord::default();
    let is_looked_at = |part| job.parts.get(&part).is_some_and(PartRecord::looked_at);
    let record = job.parts.get(&part).unwrap_or(&blank);
    let tags: Vec<Tag> = record.tags.keys().copied().collect();
    let cautions = caution::of_part(part.kind, &tags);
    let work = decision.work();
    PartView {
        part,
        kind: part.kind,
        label: engine.label(part),
        piece: Piece::of(part, engine),
        seen: match Seen::of(record) {
            Seen::NotLooked if job.seen_with(part).is_some_and(is_looked_at) => Seen::Along,
            seen => seen,
        },
        worst: record.worst(),
        back_clean: record.back_clean,
        findings: findings_of(record),
        photos: record.photos.clone(),
        drawn: drawn_over(record),
        note: record.note.clone(),
        readings: vec![],
        figures: vec![],
        work_cautions: work.map_or_else(Vec::new, |work| caution::of_work(part.kind, work, &cautions)),
        cautions,
        decision,
    }
}

/// The tags of a record, worst first.
pub(super) fn findings_of(record: &PartRecord) -> Vec<Finding> {
    let mut findings: Vec<Finding> = record
        .tags
        .iter()
        .map(|(tag, tagged)| Finding {
            tag: *tag,
            name: tag.row().name.into(),
            grade: tagged.grade,
            sentence: tag.sentence(tagged.grade).into(),
            zones: tagged.zones.iter().copied().collect(),
        })
        .collect();
    findings.sort_by_key(|finding| (std::cmp::Reverse(finding.grade), finding.tag));
    findings
}

/// What is drawn over the photos that a record still has.
pub(super) fn drawn_over(record: &PartRecord) -> BTreeMap<PhotoId, Vec<Drawn>> {
    record.drawn.clone().into_iter().filter(|(photo, _)| record.photos.contains(photo)).collect()
}

/// The readings of a part, in the order in which they were taken.
pub(crate) fn readings_of(readings: &Readings<'_>, part: Part) -> Vec<ReadingView> {
    let job = readings.job;
    let of_part = job.readings.iter().filter(|taken| taken.reading.part == part);
    of_part
        .map(|taken| {
            let reading = &taken.reading;
            let instrument = reading.instrument.as_ref().and_then(|id| job.instruments.get(id));
            let standing = readings.of(part).iter().find(|standing| standing.edit == taken.edit);
            ReadingView {
                edit: taken.edit,
                quantity: reading.quantity,
                name: reading.name.clone(),
                spot: reading.spot,
                phase: reading.phase,
                value: reading.value.to_string(),
                taken: reading.clone(),
                length: reading.length(instrument),
                instrument: instrument.map_or_else(String::new, |instrument| instrument.name.clone()),
                stands: standing.is_some(),
                doubt: standing.and_then(|standing| doubt(readings, standing)),
            }
        })
        .collect()
}
