//! A job: what a person did (edits) and all that is known from it.
//!
//! Edits are appended, never changed. [`Job::fold`] turns a set of them into what is known: pure, total, the same
//! for any order of arrival. A [`Log`] keeps both and follows edit by edit. An edit that this version does not know is kept and counted, not dropped.

mod ancillary;
mod approval;
mod asked;
mod change;
mod complaint;
mod edit;
mod edit_id;
mod excess;
mod fold;
mod former_item;
pub(crate) mod former_put_right;
mod intake;
mod item_key;
mod known;
mod list_kind;
mod log;
mod mark;
mod mark_warnings;
mod markup;
mod on_intake;
mod on_job;
mod on_list;
mod on_money;
mod on_part;
mod on_reading;
mod on_sheet;
mod on_size;
mod opening;
mod photo_id;
mod proposal;
mod refusal;
mod refused;
mod said_by;
mod step;
mod strip_down;
#[cfg(test)]
pub(crate) mod testing;
mod tick;
mod ticked;
mod topic;

pub use ancillary::{Ancillary, NotedAncillary};
pub use approval::{Approval, Since};
pub use asked::Asked;
pub use change::Change;
pub use complaint::Complaint;
pub use edit::{Edit, RecordedChange};
pub use edit_id::{DeviceId, EditId};
pub use excess::Excess;
pub use intake::{Answer, HistoryFact, TextField};
pub use item_key::ItemKey;
pub use known::{ChosenSize, ChosenWay, ConfirmedSize, Job, Overrule, PartRecord, TagRecord, Taken};
pub use list_kind::ListKind;
pub use log::Log;
pub use mark::{Mark, MarkPlace, MarkSide, Marking};
pub use markup::{Drawn, Markup, numbers};
pub use on_intake::OnIntake;
pub use on_job::OnJob;
pub use on_list::OnList;
pub use on_money::OnMoney;
pub use on_part::{MOST_SHOWN_PHOTOS, OnPart};
pub use on_reading::OnReading;
pub use on_sheet::OnSheet;
pub use on_size::OnSize;
pub use photo_id::PhotoId;
pub use proposal::{Consent, CustomerAnswer, JobAnswer, LineAnswer, Proposed};
pub use refusal::Refusal;
pub use refused::Refused;
pub use said_by::{FromAfar, SaidBy, Stroke};
pub use step::{Step, StepTaken, TestResult};
pub use strip_down::{OrderedStripDown, StripDownAnswer};
pub use tick::{OwnItem, Tick, Ticked};
pub use topic::Topic;
