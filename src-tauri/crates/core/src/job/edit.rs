//! An edit: one thing that a person did.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use super::{Answer, Asked, CustomerAnswer, EditId, HistoryFact, Mark, MarkPlace, Markup, OwnItem, TextField, Tick};
use crate::engine::{Arrangement, Part, PartKind};
use crate::measure::{Entry, Instrument, Reading};
use crate::money::{EstimateLine, Price, PriceList, Quote};
use crate::sheet::{Journals, Line, LineKey, Oversize, Sheet, SheetBasis, SizeGroup, Undersize};
use crate::wear::{Grade, Tag, Zone};
use crate::work::{Outcome, Work};

/// The name of a photo's content: its SHA-256 as 64 hexadecimal digits.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(try_from = "String", into = "String")]
pub struct PhotoId(#[cfg_attr(feature = "schema", schemars(regex(pattern = "^[0-9a-f]{64}$")))] String);

impl PhotoId {
    /// As text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl TryFrom<String> for PhotoId {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        if text.len() == 64 && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f')) {
            return Ok(Self(text));
        }
        Err("A photo is named by 64 hexadecimal digits.".into())
    }
}

impl From<PhotoId> for String {
    fn from(id: PhotoId) -> Self {
        id.0
    }
}

/// What a person did, in the forms that this version knows.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Change {
    /// Filled in one line of the job's sheet; empty text clears it.
    Fill {
        /// Which line.
        field: TextField,
        /// What was typed.
        text: String,
    },
    /// Answered a question about the engine's past.
    Recall {
        /// The question.
        fact: HistoryFact,
        /// The answer.
        answer: Answer,
    },
    /// Entered or corrected the layout of the engine.
    Arrange {
        /// The whole layout.
        arrangement: Arrangement,
    },
    /// Noted the marks of a cap or rod before it came off.
    NoteMark {
        /// On what.
        place: MarkPlace,
        /// The marks.
        mark: Mark,
    },
    /// Added a photo to a part.
    AddPhoto {
        /// The part.
        part: Part,
        /// The photo's content.
        photo: PhotoId,
    },
    /// Took a photo off a part; the picture itself is kept.
    RemovePhoto {
        /// The part.
        part: Part,
        /// The photo's content.
        photo: PhotoId,
    },
    /// Drew something over a photo. Undoing the edit takes it off again.
    MarkUp {
        /// The part.
        part: Part,
        /// The photo's content.
        photo: PhotoId,
        /// What was drawn.
        markup: Box<Markup>,
    },
    /// Tagged a part, or changed the grade or zones of its tag. It is then no longer *clean*.
    Tag {
        /// The part.
        part: Part,
        /// What was seen.
        tag: Tag,
        /// How bad.
        grade: Grade,
        /// Where; may be empty.
        #[serde(default)]
        zones: BTreeSet<Zone>,
    },
    /// Took a tag off.
    Untag {
        /// The part.
        part: Part,
        /// The tag.
        tag: Tag,
    },
    /// Looked at a part and found it clean; its tags go.
    Clean {
        /// The part.
        part: Part,
    },
    /// Wrote a remark on a part; empty text clears it.
    Remark {
        /// The part.
        part: Part,
        /// What was written.
        text: String,
    },
    /// Decided otherwise than the rules.
    Overrule {
        /// The part.
        part: Part,
        /// What is to be done.
        outcome: Outcome,
        /// Why.
        reason: String,
    },
    /// Went back to the rules' view.
    FollowRules {
        /// The part.
        part: Part,
    },
    /// Entered or corrected an instrument of the shop, as this job knows it.
    NoteInstrument {
        /// The instrument.
        instrument: Box<Instrument>,
    },
    /// Took a whole spec sheet into use in place of the one before.
    UseSheet {
        /// The sheet.
        sheet: Box<Sheet>,
    },
    /// Changed the head of the spec sheet.
    HeadSheet {
        /// The head.
        head: Box<SheetBasis>,
    },
    /// Entered or corrected one line of the spec sheet.
    StateLine {
        /// The line.
        line: Box<Line>,
    },
    /// Took a line off the spec sheet.
    DropLine {
        /// What it was about.
        of: Box<LineKey>,
    },
    /// Entered or corrected an undersize of the spec sheet.
    StateUndersize {
        /// The undersize.
        undersize: Box<Undersize>,
    },
    /// Took an undersize off the spec sheet.
    DropUndersize {
        /// Of which journals.
        journals: Journals,
        /// Which.
        size: Entry,
    },
    /// Entered or corrected an oversize of the spec sheet.
    StateOversize {
        /// The oversize.
        oversize: Box<Oversize>,
    },
    /// Took an oversize off the spec sheet.
    DropOversize {
        /// Which.
        size: Entry,
    },
    /// Took a reading. A later one at the same place stands; the earlier is kept.
    Measure {
        /// The reading.
        reading: Box<Reading>,
    },
    /// Noted to which size a group had been ground or bored before this job: it is stamped on the backs of the shells and
    /// the crowns of the pistons.
    FoundSize {
        /// The group.
        group: SizeGroup,
        /// The size; nothing for standard.
        size: Option<Entry>,
    },
    /// Chose a size for a group, where the smallest that cleans up is not wanted.
    ChooseSize {
        /// The group.
        group: SizeGroup,
        /// The size; nothing to go back to the plan's own.
        size: Option<Entry>,
        /// Why.
        reason: String,
    },
    /// Chose among the ways that serve a kind of part: bore or sleeve, new or welded up.
    ChooseWay {
        /// The kind of part.
        kind: PartKind,
        /// The way; nothing to go back to the plan's own.
        way: Option<Work>,
        /// Why.
        reason: String,
    },
    /// Took the shop's prices into use in place of those before.
    UsePrices {
        /// The prices.
        prices: Box<PriceList>,
    },
    /// Entered or corrected one price for this job.
    SetPrice {
        /// The price.
        price: Price,
    },
    /// Noted the estimate that the customer was given before the engine was opened, in place of one noted before.
    NoteEstimate {
        /// Its lines.
        lines: Vec<EstimateLine>,
    },
    /// Said what has been done about an item of a list.
    Tick {
        /// The item, as it was asked for.
        item: Asked,
        /// What has been done.
        tick: Tick,
    },
    /// Put an item of the shop's own on a list.
    AddItem {
        /// The item.
        item: OwnItem,
    },
    /// Made a proposal to the customer: exactly what follows from the job at that moment.
    Propose {
        /// What was shown.
        quote: Box<Quote>,
    },
    /// The customer answered a proposal.
    AnswerProposal {
        /// The answer.
        answer: Box<CustomerAnswer>,
    },
    /// Closed the job, or opened it again.
    Close {
        /// Closed.
        closed: bool,
    },
    /// Undid an edit; undoing an undo does the edit again.
    Undo {
        /// The edit.
        edit: EditId,
    },
}

impl Change {
    /// The part it is about, if it is about one.
    pub fn part(&self) -> Option<Part> {
        match self {
            Self::AddPhoto { part, .. }
            | Self::RemovePhoto { part, .. }
            | Self::MarkUp { part, .. }
            | Self::Tag { part, .. }
            | Self::Untag { part, .. }
            | Self::Clean { part }
            | Self::Remark { part, .. }
            | Self::Overrule { part, .. }
            | Self::FollowRules { part } => Some(*part),
            Self::Measure { reading } => Some(reading.part),
            Self::Fill { .. }
            | Self::Recall { .. }
            | Self::Arrange { .. }
            | Self::NoteMark { .. }
            | Self::NoteInstrument { .. }
            | Self::UseSheet { .. }
            | Self::HeadSheet { .. }
            | Self::StateLine { .. }
            | Self::DropLine { .. }
            | Self::StateUndersize { .. }
            | Self::DropUndersize { .. }
            | Self::StateOversize { .. }
            | Self::DropOversize { .. }
            | Self::FoundSize { .. }
            | Self::ChooseSize { .. }
            | Self::ChooseWay { .. }
            | Self::UsePrices { .. }
            | Self::SetPrice { .. }
            | Self::NoteEstimate { .. }
            | Self::Tick { .. }
            | Self::AddItem { .. }
            | Self::Propose { .. }
            | Self::AnswerProposal { .. }
            | Self::Close { .. }
            | Self::Undo { .. } => None,
        }
    }
}

/// A change as it stands in a log: known, or from a newer version and kept as it came.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(untagged)]
pub enum RecordedChange {
    /// One of the forms of this version.
    Known(Change),
    /// Something else.
    #[cfg_attr(feature = "schema", ts(type = "{ do: string }"))]
    Unknown(#[cfg_attr(feature = "schema", schemars(schema_with = "unknown_change"))] serde_json::Value),
}

#[cfg(feature = "schema")]
fn unknown_change(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
    schemars::json_schema!({
        "type": "object",
        "required": ["do"],
        "properties": { "do": { "type": "string" } },
        "description": "What a newer version recorded.",
    })
}

/// One entry of the log.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Edit {
    /// When and on which device; unique.
    pub id: EditId,
    /// What was done.
    pub change: RecordedChange,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn reads_back(json: &str) -> RecordedChange {
        let change: RecordedChange = serde_json::from_str(json).unwrap();
        let again: serde_json::Value = serde_json::to_value(&change).unwrap();
        assert_eq!(again, serde_json::from_str::<serde_json::Value>(json).unwrap());
        change
    }

    #[test]
    fn known_changes_have_the_published_form() {
        let change =
            reads_back(r#"{"do":"tag","part":"main-shell.3.lower","tag":"scoring","grade":3,"zones":["front-crown"]}"#);
        assert!(matches!(change, RecordedChange::Known(Change::Tag { .. })));
        assert!(matches!(reads_back(r#"{"do":"clean","part":"piston.1"}"#), RecordedChange::Known(_)));
    }

    #[test]
    fn a_change_of_a_newer_version_is_kept_as_it_came() {
        for json in [
            r#"{"do":"weigh","part":"piston.1","grams":512}"#,
            r#"{"do":"tag","part":"gearbox.1","tag":"scoring","grade":1}"#,
            "17",
        ] {
            assert!(matches!(reads_back(json), RecordedChange::Unknown(_)), "{json}");
        }
    }
}
