//! What a person entered of the engine’s manual.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::EditId;
use super::known::Job;
use super::refused::{MAX_NAME, Refused, check_length, check_room};
use crate::measure::{Entry, Length};
use crate::sheet::{Finish, Journals, Line, LineKey, Oversize, Oversized, Sheet, SheetBasis, ShellGrade, Undersize};
use crate::words::{Phrase, Terms, first_words};

/// What a person entered of the engine’s manual.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum OnSheet {
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
        /// Of what; of cylinders if not given.
        #[serde(default, skip_serializing_if = "Oversized::is_cylinders")]
        #[cfg_attr(feature = "schema", ts(optional, as = "Option<Oversized>"))]
        of: Oversized,
        /// Which.
        size: Entry,
    },
    /// Entered or corrected a row of the table by which standard shells are graded.
    StateGrade {
        /// The row.
        grade: Box<ShellGrade>,
    },
    /// Took a row off that table.
    DropGrade {
        /// Of which journals.
        journals: Journals,
        /// The mark of the housing.
        housing: String,
        /// The mark of the journal.
        journal: String,
    },
    /// Entered, corrected or, where it is empty, took off what the manual asks of a finished surface.
    StateFinish {
        /// The finish.
        finish: Box<Finish>,
    },
}

impl OnSheet {
    /// What stands in `do` of each form.
    pub(super) const DOES: &[&str] = &[
        "use-sheet",
        "head-sheet",
        "state-line",
        "drop-line",
        "state-undersize",
        "drop-undersize",
        "state-oversize",
        "drop-oversize",
        "state-grade",
        "drop-grade",
        "state-finish",
    ];

    /// Whether it fits the job: see [`Job::check`].
    pub(super) fn check(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::UseSheet { sheet } => {
                check_head(&sheet.head)?;
                sheet.in_present_form().check(job.terms).map_err(Refused)
            }
            Self::HeadSheet { head } => check_head(head),
            Self::StateLine { line } => {
                check_length("The source", &line.source, MAX_NAME)?;
                check_length("The name", &line.of.name, MAX_NAME)?;
                let mut sheet = job.sheet.clone();
                sheet.state(line.in_present_form());
                sheet.check(job.terms).map_err(Refused)
            }
            Self::StateUndersize { undersize } => job.sheet.check_undersize(undersize).map_err(Refused),
            Self::StateOversize { oversize } => job.sheet.check_oversize(oversize, job.terms).map_err(Refused),
            Self::StateGrade { grade } => {
                check_length("The source", &grade.source, MAX_NAME)?;
                let mut sheet = job.sheet.clone();
                sheet.state_grade((**grade).clone());
                sheet.check(job.terms).map_err(Refused)
            }
            Self::StateFinish { finish } => {
                check_length("The source", &finish.source, MAX_NAME)?;
                job.sheet.check_finish(finish).map_err(Refused)
            }
            Self::DropLine { .. } | Self::DropUndersize { .. } | Self::DropOversize { .. } | Self::DropGrade { .. } => {
                Ok(())
            }
        }
    }

    /// Whether it has an effect: see [`Job::fits`]. A line is judged by itself: beside which others it will stand in the end is
    /// not known here.
    pub(super) fn fits(&self, job: &Job) -> Result<(), Refused> {
        let sheet = &job.sheet;
        match self {
            // For one line that would be refused today the whole sheet does not go.
            Self::UseSheet { sheet } => {
                check_head(&sheet.head)?;
                check_room("lines of its sheet", sheet.rows(), Sheet::MOST_ROWS)
            }
            Self::StateLine { line } => {
                check_length("The source", &line.source, MAX_NAME)?;
                check_length("The name", &line.of.name, MAX_NAME)?;
                let line = line.in_present_form();
                sheet.check_line(&line, job.terms).map_err(Refused)?;
                check_row(sheet, sheet.lines.iter().any(|own| own.of == line.of))
            }
            Self::StateUndersize { undersize: row } => {
                check_length("The source", &row.source, MAX_NAME)?;
                let is_row = |own: &Undersize| (own.journals, own.size.length) == (row.journals, row.size.length);
                check_row(sheet, sheet.undersizes.iter().any(is_row))
            }
            Self::StateOversize { oversize: row } => {
                check_length("The source", &row.source, MAX_NAME)?;
                let is_row = |own: &Oversize| (own.of, own.size.length) == (row.of, row.size.length);
                check_row(sheet, sheet.oversizes.iter().any(is_row))
            }
            Self::StateGrade { grade } => {
                check_length("The source", &grade.source, MAX_NAME)?;
                grade.check().map_err(Refused)?;
                let is_row = |own: &ShellGrade| own.is_for(grade.journals, &grade.housing, &grade.journal);
                check_row(sheet, sheet.grades.iter().any(is_row))
            }
            _ => self.check(job),
        }
    }

    /// What it does to the job: see [`Job::apply`].
    pub(super) fn apply(&self, _id: EditId, job: &mut Job) {
        match self {
            Self::UseSheet { sheet } => job.sheet = sheet.in_present_form(),
            Self::HeadSheet { head } => job.sheet.head = (**head).clone(),
            Self::StateLine { line } => job.sheet.state(line.in_present_form()),
            Self::DropLine { of } => {
                let of = of.in_present_form();
                job.sheet.lines.retain(|line| line.of != of);
            }
            Self::StateUndersize { undersize } => job.sheet.state_undersize((**undersize).clone()),
            Self::DropUndersize { journals, size } => {
                job.sheet.undersizes.retain(|row| row.journals != *journals || row.size.length != size.length);
            }
            Self::StateOversize { oversize } => job.sheet.state_oversize((**oversize).clone()),
            Self::DropOversize { of, size } => {
                job.sheet.oversizes.retain(|row| row.of != *of || row.size.length != size.length);
            }
            Self::StateGrade { grade } => job.sheet.state_grade((**grade).clone()),
            Self::DropGrade { journals, housing, journal } => {
                job.sheet.grades.retain(|row| !row.is_for(*journals, housing, journal));
            }
            Self::StateFinish { finish } => job.sheet.state_finish((**finish).clone()),
        }
    }

    /// What was done, in words: see [`Edit::sentence`](super::Edit::sentence).
    pub(super) fn sentence(&self, job: &Job) -> String {
        match self {
            Self::UseSheet { sheet } => format!("Spec sheet in use: {}", first_words(&sheet.head.name)),
            Self::HeadSheet { head } => format!("Head of the spec sheet: {}", first_words(&head.name)),
            Self::StateLine { line } => format!("Spec sheet: {}", line.of.label(job.terms)),
            Self::DropLine { of } => format!("Spec sheet: {} removed", of.label(job.terms)),
            Self::StateUndersize { undersize } => {
                format!("Spec sheet: undersize {} of the {}", undersize.size, undersize.journals.group().label())
            }
            Self::DropUndersize { journals, size } => {
                format!("Spec sheet: undersize {size} of the {} removed", journals.group().label())
            }
            Self::StateOversize { oversize } => {
                format!("Spec sheet: oversize {}{}", oversize.size, of_what(oversize.of, job.terms))
            }
            Self::DropOversize { of, size } => {
                format!("Spec sheet: oversize {size}{} removed", of_what(*of, job.terms))
            }
            Self::StateGrade { grade } => {
                let ShellGrade { housing, journal, grade, .. } = &**grade;
                format!("Spec sheet: shells of grade {} for marks {housing} and {journal}", first_words(grade))
            }
            Self::DropGrade { housing, journal, .. } => {
                format!("Spec sheet: grade for marks {} and {} removed", first_words(housing), first_words(journal))
            }
            Self::StateFinish { finish } => format!("Spec sheet: finish of the {}", finish.of.label()),
        }
    }
}

/// " of the tappets"; empty where nothing need be said.
fn of_what(of: Oversized, terms: Terms) -> Cow<'static, str> {
    match of {
        Oversized::Cylinders => "".into(),
        Oversized::Tappets => Phrase(" of the {tappets}").said(terms),
    }
}

/// Refuses a row too many.
fn check_row(sheet: &Sheet, is_there: bool) -> Result<(), Refused> {
    check_room("lines of its sheet", sheet.rows() + usize::from(!is_there), Sheet::MOST_ROWS)
}

/// Refuses a head of a sheet that can't be.
fn check_head(head: &SheetBasis) -> Result<(), Refused> {
    check_length("The name", &head.name, MAX_NAME)?;
    check_length("The source", &head.source, MAX_NAME)?;
    if !(1..=100).contains(&head.guard_percent) {
        return Err(Refused("The margin to a limit must be 1 to 100 per cent of the uncertainty.".into()));
    }
    match &head.clean_up {
        Some(clean_up) if clean_up.length() < Length::default() => {
            Err(Refused("The allowance for cleaning up can’t be below zero.".into()))
        }
        _ => Ok(()),
    }
}
