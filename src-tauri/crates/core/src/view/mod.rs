//! What every screen and paper shows of a job once it is decided what is done: each part and what lies beside them, the
//! sizes, what to order in which size.

mod before_apart;
mod caps;
mod decided;
mod ground_cam;
mod on_shaft;
mod order_line;
mod orders;
mod outside;
mod part;
mod sizing;

pub(crate) use before_apart::before_apart;
pub use before_apart::{BeforeApart, Chance};
pub(crate) use caps::with_new_caps;
pub(crate) use decided::Decided;
pub(crate) use on_shaft::OnShaft;
pub use order_line::{OrderLine, OrderState};
pub use outside::OutsideView;
pub(crate) use outside::outside;
pub use part::{Finding, PartView, ReadingView, Seen};
pub(crate) use part::{readings_of, view};
pub use sizing::Sizing;
