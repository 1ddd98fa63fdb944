//! Which size was found or chosen, and which way is gone.

use serde::{Deserialize, Serialize};

use super::EditId;
use super::known::{ChosenSize, ChosenWay, ConfirmedSize, Job};
use super::refused::{MAX_NAME, MAX_TEXT, Refused, check_length};
use crate::engine::PartKind;
use crate::measure::{Entry, Length};
use crate::sheet::SizeGroup;
use crate::words::{Terms, first_words, plural};
use crate::work::Work;

/// Which size was found or chosen, and which way is gone.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum OnSize {
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
    /// Noted that the machinist has looked at a group and confirms the size to which it cleans up.
    ConfirmSize {
        /// The group.
        group: SizeGroup,
        /// The size, standard as 0; nothing takes the confirmation off.
        size: Option<Entry>,
        /// Who confirmed it; may be empty.
        #[serde(default)]
        by: String,
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
}

impl OnSize {
    /// What stands in `do` of each form.
    pub(super) const DOES: &[&str] = &["found-size", "choose-size", "confirm-size", "choose-way"];

    /// Whether it fits the job: see [`Job::check`].
    pub(super) fn check(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::FoundSize { size, .. } => check_size(size.as_ref()),
            Self::ChooseSize { size, reason, .. } => {
                check_size(size.as_ref())?;
                if size.is_some() && reason.trim().is_empty() {
                    return Err(Refused("The reason is empty: say why this size is chosen.".into()));
                }
                check_length("The reason", reason, MAX_TEXT)
            }
            Self::ConfirmSize { size, by, .. } => {
                check_size(size.as_ref())?;
                check_length("The name", by, MAX_NAME)
            }
            Self::ChooseWay { kind, way, reason } => {
                check_way(*kind, *way, job.terms)?;
                if way.is_some() && reason.trim().is_empty() {
                    return Err(Refused("The reason is empty: say why this way is chosen.".into()));
                }
                check_length("The reason", reason, MAX_TEXT)
            }
        }
    }

    /// Whether it has an effect: see [`Job::fits`].
    pub(super) fn fits(&self, job: &Job) -> Result<(), Refused> {
        self.check(job)
    }

    /// What it does to the job: see [`Job::apply`].
    pub(super) fn apply(&self, _id: EditId, job: &mut Job) {
        match self {
            Self::FoundSize { group, size: Some(size) } => {
                job.found_sizes.insert(*group, size.clone());
            }
            Self::FoundSize { group, size: None } => {
                job.found_sizes.remove(group);
            }
            Self::ChooseSize { group, size: Some(size), reason } => {
                let chosen = ChosenSize { size: size.clone(), reason: reason.trim().to_owned() };
                job.chosen_sizes.insert(*group, chosen);
            }
            Self::ChooseSize { group, size: None, .. } => {
                job.chosen_sizes.remove(group);
            }
            Self::ConfirmSize { group, size: Some(size), by } => {
                let confirmed = ConfirmedSize { size: size.clone(), by: by.trim().to_owned() };
                job.confirmed_sizes.insert(*group, confirmed);
            }
            Self::ConfirmSize { group, size: None, .. } => {
                job.confirmed_sizes.remove(group);
            }
            Self::ChooseWay { kind, way: Some(way), reason } => {
                job.chosen_ways.insert(*kind, ChosenWay { way: *way, reason: reason.trim().to_owned() });
            }
            Self::ChooseWay { kind, way: None, .. } => {
                job.chosen_ways.remove(kind);
            }
        }
    }

    /// What was done, in words: see [`Edit::sentence`](super::Edit::sentence).
    pub(super) fn sentence(&self, job: &Job) -> String {
        match self {
            Self::FoundSize { group, size: Some(size) } => format!("The {} were {size} already", group.label()),
            Self::FoundSize { group, size: None } => format!("The {} were standard", group.label()),
            Self::ChooseSize { group, size: Some(size), .. } => format!("The {} go to {size}", group.label()),
            Self::ChooseSize { group, size: None, .. } => format!("The {} go to the planned size", group.label()),
            Self::ConfirmSize { group, size: Some(size), by } => {
                let by = if by.trim().is_empty() { "the machine shop".into() } else { first_words(by) };
                format!("The {} clean up at {size}, confirmed by {by}", group.label())
            }
            Self::ConfirmSize { group, size: None, .. } => {
                format!("The size of the {} is not confirmed", group.label())
            }
            Self::ChooseWay { kind, way: Some(way), .. } => {
                format!("Way for the {}: {}", plural(&kind.row().name.said(job.terms)), kind.way_words(*way))
            }
            Self::ChooseWay { kind, way: None, .. } => {
                format!("Way for the {}: the plan’s", plural(&kind.row().name.said(job.terms)))
            }
        }
    }
}

/// Refuses a size that is none.
fn check_size(size: Option<&Entry>) -> Result<(), Refused> {
    match size {
        Some(size) if size.length < Length::default() || size.length > Length::from_nanometres(20_000_000) => {
            Err(Refused(format!("{size}: an undersize or oversize is between zero and 20 mm.")))
        }
        _ => Ok(()),
    }
}

fn check_way(kind: PartKind, way: Option<Work>, terms: Terms) -> Result<(), Refused> {
    let ways = kind.ways();
    let name = kind.row().name.said(terms);
    match way {
        _ if ways.is_empty() => Err(Refused(format!("There is only one way for a {name}: nothing to choose."))),
        Some(way) if !ways.contains(&way) => {
            let possible: Vec<&str> = ways.iter().map(|way| kind.way_words(*way)).collect();
            Err(Refused(format!(
                "“{}” is no way to choose for a {name}: choose {}.",
                way.words(),
                possible.join("; or ")
            )))
        }
        _ => Ok(()),
    }
}
