//! Quantities: lengths that stay exactly as they were read, in inches or millimetres.

mod length;

pub use length::{Entry, Length, LengthUnit, NotALength};
