//! The content of the papers that leave the shop, free of any layout: blocks of text, tables, pictures and the plan.

mod cautions;
mod closing_sheet;
mod condition_report;
mod costs;
mod grouping;
mod size_sheet;
mod work_list;

pub use cautions::{CAUTIONS, Caution};
pub use closing_sheet::{closing_sheet, still_open};
pub use condition_report::{Extent, Shop, condition_report};
pub use size_sheet::{size_sheet, size_table, work_words};

pub use work_list::{work_list, work_list_table};

use serde::Serialize;

use crate::assess::Seen;
use crate::engine::{Part, Plan};
use crate::job::{PhotoId, Stroke};
use crate::wear::Grade;

/// A paper: a title and its blocks.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Paper {
    /// The title, as it stands on the cover and in the file's properties.
    pub title: String,
    /// A line below the title: the machine, the engine.
    pub subtitle: String,
    /// The date on the paper, local time, as year, month, day.
    pub date: (i32, u8, u8),
    /// The content from top to bottom.
    pub blocks: Vec<Block>,
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
    },
    /// The engine as a plan, hatched by what was seen.
    Plan {
        /// Where everything stands.
        plan: Plan,
        /// The look of each part: whether and how bad.
        ink: Vec<(Part, Seen, Option<Grade>)>,
        /// The plan in words.
        alt: String,
    },
    /// A part's pictures and findings, kept together.
    Findings {
        /// The part's name.
        part: String,
        /// Whether it was looked at, and how it came out.
        seen: Seen,
        /// Its worst grade, if it is worn.
        worst: Option<Grade>,
        /// One line each finding: tag, grade, sentence, zones.
        lines: Vec<String>,
        /// The remark; may be empty.
        note: String,
        /// What is to be done, in words.
        outcome: String,
        /// The pictures.
        pictures: Vec<Picture>,
    },
    /// A signature over its name.
    Signature {
        /// Who signed, and how.
        name: String,
        /// The strokes, in a field of 10 000 by 10 000; none if nothing was drawn.
        strokes: Vec<Stroke>,
    },
    /// Begins a new page.
    NewPage,
}

/// A photo in a paper.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Picture {
    /// Which.
    pub photo: PhotoId,
    /// What it shows, in words, for those who can't see it.
    pub alt: String,
}
