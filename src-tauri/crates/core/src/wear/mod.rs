//! What is seen on a part: tags, grades and zones.
//!
//! Terms are those of the trade's handbooks and of ISO 4378-2 / ISO 7146-1 as far as their public parts show them.
//! Not looked at is not the same as clean: a part without an entry says nothing, *looked at and clean* is an entry.

mod grade;
mod tag;
mod zone;

pub use grade::Grade;
pub use tag::{Tag, TagRow};
pub use zone::{Zone, ZoneMap};
