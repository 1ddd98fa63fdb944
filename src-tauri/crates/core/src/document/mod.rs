//! The content of the papers that leave the shop, free of any layout: blocks of text, tables, pictures and the plan.
//!
//! A paper is made from what lies on the [`Desk`]: the job, what follows from it, the day and the shop.

mod cautions;
mod chapter;
mod closing_sheet;
mod condition_report;
mod costs;
mod cover;
mod date;
mod desk;
mod evidence;
mod found;
mod grouping;
mod head;
mod measured;
mod outside;
mod paper;
mod paper_size;
mod size_sheet;
mod summary;
mod why;
mod work_list;

pub use closing_sheet::closing_sheet;
pub use condition_report::condition_report;
pub use date::Date;
pub use desk::{Desk, Extent, Shop};
pub use evidence::evidence_sheet;
pub use paper::{
    Bar, Block, Cover, FormDrawing, FormStation, MeasuredRow, Paper, Picture, PlanDrawing, Section, ZoneDrawing,
};
pub use paper_size::PaperSize;
pub use size_sheet::{size_sheet, size_table};
pub use work_list::{work_list, work_list_table};
