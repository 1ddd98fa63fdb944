//! What every screen and paper shows of a job once it is decided what is done: each part, the sizes, what to order in
//! which size.

mod order_line;
mod part;
mod sizing;

pub use order_line::{OrderLine, OrderState};
pub use part::{Finding, PartView, ReadingView, Seen};
pub(crate) use part::{readings_of, view};
pub use sizing::Sizing;
