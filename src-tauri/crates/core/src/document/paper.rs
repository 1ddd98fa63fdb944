//! What a paper consists of: its title and its blocks.

use serde::Serialize;

use super::page::{CustomersPage, Shown};
use crate::date::Date;
use crate::engine::{Part, Plan};
use crate::job::Stroke;
use crate::measure::Length;
use crate::view::Seen;
use crate::wear::Grade;

/// A paper: a title and its blocks.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Paper {
    /// The title, as it stands on the cover and in the file's properties.
    pub title: String,
    /// A line below the title: the machine, the engine.
    pub subtitle: String,
    /// The machine or the engine's number, for heads that have little room; may be empty.
    pub subject: String,
    /// Who reads it.
    pub reader: Reader,
    /// The date on the paper, where the shop is.
    pub date: Date,
    /// The content from top to bottom.
    pub blocks: Vec<Block>,
}

/// Who reads a paper.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub enum Reader {
    /// The customer, whose name stands in the file's properties; it may be empty.
    Customer(String),
    /// Another trade: the machine shop, the parts counter. They want it on one sheet, and need not know the customer.
    Trade,
}

/// One piece of a paper.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub enum Block {
    /// A heading of level 1 or 2.
    Heading {
        /// 1 or 2.
        level: u8,
        /// The words.
        text: String,
    },
    /// A paragraph.
    Paragraph(String),
    /// A paragraph that must catch the eye: the summary.
    Lead(String),
    /// A warning about safety or about the limits of the paper.
    Caution(String),
    /// Points.
    Points(Vec<String>),
    /// Names and values, side by side.
    Facts(Vec<(String, String)>),
    /// A table with a head row. Every row has as many cells as the head.
    Table {
        /// What the table shows, for those who can't see it.
        summary: String,
        /// Column heads.
        head: Vec<String>,
        /// Relative widths, one each column.
        widths: Vec<u8>,
        /// The rows.
        rows: Vec<Vec<String>>,
        /// Whether it is filled in by hand: then every cell is ruled off, and high enough to write in.
        to_fill: bool,
    },
    /// The customer's page, a page of its own; only at the beginning.
    CustomersPage(Box<CustomersPage>),
    /// Photos with a sentence each.
    Photos {
        /// The photos.
        shown: Vec<Shown>,
        /// Four in a row; else two, 80 mm wide.
        small: bool,
    },
    /// The chapters that follow, each with its page.
    Contents,
    /// The engine as a plan, hatched by what was seen.
    Plan(PlanDrawing),
    /// What was measured, each reading beside its limits.
    Measured {
        /// What the table shows, for those who can't see it.
        summary: String,
        /// The rows.
        rows: Vec<MeasuredRow>,
    },
    /// Lines that are filled in by hand, each after its name.
    Blanks(Vec<String>),
    /// How to read the bars of [`Block::Measured`].
    BarKey,
    /// The form of round parts of one kind, drawn with all deviations exaggerated alike.
    Forms {
        /// Whether they are bores, which wear wider, not thinner.
        hollow: bool,
        /// The parts.
        parts: Vec<FormDrawing>,
    },
    /// A signature over its name.
    Signature {
        /// Who signed, and how; empty for a line that is to be signed on paper.
        name: String,
        /// The strokes, in a field of 10 000 by 10 000; none if nothing was drawn.
        strokes: Vec<Stroke>,
    },
    /// Begins a new page.
    NewPage,
}

impl Block {
    /// The heading of a chapter.
    pub(super) fn heading(text: impl Into<String>) -> Self {
        Self::Heading { level: 1, text: text.into() }
    }

    /// A heading within a chapter.
    pub(super) fn subheading(text: impl Into<String>) -> Self {
        Self::Heading { level: 2, text: text.into() }
    }

    /// A table, of each column its head and its relative width.
    pub(super) fn table<const COLUMNS: usize>(
        summary: impl Into<String>,
        columns: [(&str, u8); COLUMNS],
        rows: impl IntoIterator<Item = [String; COLUMNS]>,
    ) -> Self {
        Self::Table {
            summary: summary.into(),
            head: columns.map(|(head, _)| head.to_owned()).to_vec(),
            widths: columns.map(|(_, width)| width).to_vec(),
            rows: rows.into_iter().map(|row| row.to_vec()).collect(),
            to_fill: false,
        }
    }
}

/// The engine as a plan.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PlanDrawing {
    /// Where everything stands.
    pub plan: Plan,
    /// The look of each part: whether and how bad.
    pub ink: Vec<(Part, Seen, Option<Grade>)>,
    /// The plan in words.
    pub alt: String,
}

/// A figure beside its limits.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct MeasuredRow {
    /// The part.
    pub part: String,
    /// What was measured.
    pub what: String,
    /// The value.
    pub shown: String,
    /// The limits in words.
    pub limits: String,
    /// What follows, in words.
    pub verdict: String,
    /// The same as lengths, to be drawn.
    pub bar: Bar,
}

/// A value between its limits.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
pub struct Bar {
    /// The smallest value.
    pub low: Length,
    /// The largest value.
    pub high: Length,
    /// How far each may be off.
    pub uncertainty: Length,
    /// The least and the most that is allowed; an open end sets no limit.
    pub allowed: (Option<Length>, Option<Length>),
    /// The range of a new part, as far as it is known.
    pub new: (Option<Length>, Option<Length>),
}

/// The diameters of a round part along its length.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FormDrawing {
    /// The part's name.
    pub label: String,
    /// Along the part.
    pub stations: Vec<FormStation>,
    /// The drawing in words.
    pub alt: String,
}

/// The diameters at one station, in two directions at right angles.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FormStation {
    /// In words.
    pub name: String,
    /// In the first direction.
    pub a: Option<Length>,
    /// In the second.
    pub b: Option<Length>,
}
