//! The content of the papers that leave the shop, free of any layout: blocks of text, tables, pictures and the plan.
//!
//! A paper is made from what lies on the [`Desk`]: the job, what follows from it, the day and the shop.

mod cautions;
mod chapter;
mod closing_sheet;
mod condition_report;
mod costs;
mod customers_page;
mod decided;
mod desk;
mod evidence;
mod found;
mod goes_back;
mod grouping;
mod head;
mod labels;
mod machine_shop;
mod measured;
mod outside;
mod page;
mod paper;
mod paper_size;
mod parts_counter;
mod picture;
mod plan;
mod rests_on;
mod size_sheet;
mod strip_down_order;
mod usual_form;
mod why;
mod work_list;
mod zone_drawing;

pub use closing_sheet::closing_sheet;
pub use condition_report::condition_report;
pub use customers_page::{customers_page, message, page_to_propose};
pub use desk::{Desk, Extent, Shop};
pub use evidence::evidence_sheet;
pub use goes_back::goes_back;
pub use labels::{Label, LabelStock, Labels, Pieces, SheetField, labels};
pub use machine_shop::machine_shop;
pub use page::{
    Agreed, Choice, CustomersPage, Image, JobToDecide, Link, ProposalHead, Section, Shown, ToldAndFound, Total,
};
pub use paper::{Bar, Block, FormDrawing, FormStation, MeasuredRow, Paper, PlanDrawing, Reader};
pub use paper_size::PaperSize;
pub use parts_counter::parts_counter;
pub use picture::Picture;
pub use size_sheet::{size_sheet, size_table};
pub use strip_down_order::strip_down_order;
pub use work_list::{work_list, work_list_table};
pub use zone_drawing::ZoneDrawing;
