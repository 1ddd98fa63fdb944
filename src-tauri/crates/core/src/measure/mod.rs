//! Measuring: exact lengths, instruments, readings, and what a reading says about a limit.

mod conformity;
mod form;
mod former;
mod how;
mod instrument;
mod length;
mod quantity;
mod reading;
mod shown;
mod spot;
mod stated;
mod together;
mod walk;

pub use conformity::{Bound, Bounds, Conformity};
pub use form::{Form, Grid};
pub use former::present;
pub use instrument::{Instrument, InstrumentId, InstrumentKind};
pub use length::{Entry, Length, LengthUnit, NotALength};
pub use quantity::{Comes, Has, Quantity, Sense, Spots};
pub use reading::{Material, Phase, Reading, Warmth};
pub use shown::{in_unit, limits_in_unit, range, range_in_unit};
pub use spot::{Direction, Spot, Station};
pub use stated::Stated;
pub use together::{ONLY_TOGETHER, OnlyTogether};
