//! What a person told of the engine as it came in: customer, past, layout, marks.

use serde::{Deserialize, Serialize};

use super::known::Job;
use super::opening::{check_noted, check_there};
use super::refused::{MAX_MARK, MAX_TEXT, Refused, check_length, no_arrangement};
use super::{
    Ancillary, Answer, Complaint, EditId, HistoryFact, Mark, MarkPlace, Marking, NotedAncillary, PhotoId, TextField,
};
use crate::engine::Arrangement;
use crate::words::first_words;

/// What a person told of the engine as it came in: customer, past, layout, marks.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum OnIntake {
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
    /// Picked a complaint of the customer, or took it off again.
    Complain {
        /// Of what.
        complaint: Complaint,
        /// Whether the customer does.
        told: bool,
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
    /// Noted something that came with the engine.
    AddAncillary {
        /// What.
        item: NotedAncillary,
    },
    /// Took it off again.
    RemoveAncillary {
        /// The edit that noted it.
        item: EditId,
    },
    /// Said what it looked like.
    PhotographAncillary {
        /// The edit that noted it.
        item: EditId,
        /// The photo's content, in place of one before; none takes it off, and the picture itself is kept.
        #[serde(default)]
        photo: Option<PhotoId>,
    },
    /// Gave it back to the customer, or has it still.
    GiveBack {
        /// The edit that noted it.
        item: EditId,
        /// Given back.
        given: bool,
    },
}

impl OnIntake {
    /// What stands in `do` of each form.
    pub(super) const DOES: &[&str] = &[
        "fill",
        "recall",
        "complain",
        "arrange",
        "note-mark",
        "add-ancillary",
        "remove-ancillary",
        "photograph-ancillary",
        "give-back",
    ];

    /// Whether it fits the job: see [`Job::check`].
    pub(super) fn check(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::Fill { text, .. } => check_length("The text", text, MAX_TEXT),
            Self::Arrange { arrangement } => arrangement.check(job.terms).map_err(|impossible| Refused(impossible.0)),
            Self::NoteMark { place, mark } => {
                let arrangement = job.arrangement.as_ref().ok_or_else(no_arrangement)?;
                if !MarkPlace::all(arrangement).contains(place) {
                    return Err(Refused(format!("This engine has no {}.", place.label().to_lowercase())));
                }
                check_mark(mark)
            }
            Self::Recall { .. } | Self::Complain { .. } => Ok(()),
            Self::AddAncillary { item } => check_noted(item, job),
            Self::RemoveAncillary { item } | Self::PhotographAncillary { item, .. } | Self::GiveBack { item, .. } => {
                check_there(*item, job)
            }
        }
    }

    /// Whether it has an effect: see [`Job::fits`]. An arrangement that can't be is told of, for the parts hang on it; a mark
    /// may stand on a cap that only the next arrangement has.
    pub(super) fn fits(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::NoteMark { mark, .. } => check_mark(mark),
            Self::Arrange { .. } => Ok(()),
            _ => self.check(job),
        }
    }

    /// What it does to the job: see [`Job::apply`].
    pub(super) fn apply(&self, id: EditId, job: &mut Job) {
        match self {
            Self::Fill { field, text } if text.trim().is_empty() => {
                job.texts.remove(field);
            }
            Self::Fill { field, text } => {
                job.texts.insert(*field, text.clone());
            }
            Self::Recall { fact, answer } => {
                job.history.insert(*fact, *answer);
                match (Complaint::of(*fact), answer) {
                    (Some(complaint), Answer::Yes) => job.complaints.insert(complaint),
                    (Some(complaint), _) => job.complaints.remove(&complaint),
                    (None, _) => false,
                };
            }
            Self::Complain { complaint, told } => {
                if *told {
                    job.complaints.insert(*complaint);
                    job.history.extend(complaint.fact().map(|fact| (fact, Answer::Yes)));
                } else {
                    job.complaints.remove(complaint);
                    complaint.fact().and_then(|fact| job.history.remove(&fact));
                }
            }
            Self::Arrange { arrangement } => job.arrangement = Some(arrangement.clone()),
            Self::NoteMark { place, mark } => {
                job.marks.insert(*place, mark.clone());
            }
            Self::AddAncillary { item } => {
                let NotedAncillary { what, remark } = item.clone();
                job.ancillaries.push(Ancillary { edit: id, what, remark, photo: None, given_back: false });
            }
            Self::RemoveAncillary { item } => job.ancillaries.retain(|own| own.edit != *item),
            Self::PhotographAncillary { item, photo } => {
                if let Some(own) = job.ancillary_mut(*item) {
                    own.photo.clone_from(photo);
                }
            }
            Self::GiveBack { item, given } => {
                if let Some(own) = job.ancillary_mut(*item) {
                    own.given_back = *given;
                }
            }
        }
    }

    /// What was done, in words: see [`Edit::sentence`](super::Edit::sentence).
    pub(super) fn sentence(&self, job: &Job) -> String {
        match self {
            Self::Fill { field, text } if text.trim().is_empty() => format!("{} cleared", field.label()),
            Self::Fill { field, text } => format!("{}: {}", field.label(), first_words(text)),
            Self::Recall { fact, answer } => {
                format!("{} {}", fact.question(), answer.words())
            }
            Self::Complain { complaint, told: true } => format!("Complaint: {}", complaint.words()),
            Self::Complain { complaint, told: false } => format!("Not complained of: {}", complaint.words()),
            Self::Arrange { arrangement } => format!("Arrangement: {}", arrangement.summary()),
            Self::NoteMark { place, mark } => {
                let how = if mark.marking == Marking::Found { "marked" } else { "marked by hand" };
                format!("{} is {how} “{}”", place.label(), mark.text.trim())
            }
            Self::AddAncillary { item } => format!("Came with the engine: {}", first_words(&item.what)),
            Self::RemoveAncillary { item } => {
                format!("Did not come with the engine: {}", job.ancillary_words(*item))
            }
            Self::PhotographAncillary { item, photo: Some(_) } => {
                format!("Came with the engine, photo added: {}", job.ancillary_words(*item))
            }
            Self::PhotographAncillary { item, photo: None } => {
                format!("Came with the engine, photo removed: {}", job.ancillary_words(*item))
            }
            Self::GiveBack { item, given: true } => format!("Given back: {}", job.ancillary_words(*item)),
            Self::GiveBack { item, given: false } => format!("Not given back: {}", job.ancillary_words(*item)),
        }
    }
}

/// Refuses a mark that says nothing, or is none.
fn check_mark(mark: &Mark) -> Result<(), Refused> {
    if mark.text.trim().is_empty() {
        return Err(Refused("The mark is empty: enter what is stamped there, or what you marked it with.".into()));
    }
    check_length("The mark", &mark.text, MAX_MARK)
}
