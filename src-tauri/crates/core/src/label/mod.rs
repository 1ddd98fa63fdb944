//! What gets a label, and what the code on it holds: the job and one part, in fourteen letters and digits that a camera reads or a
//! hand types.

mod check_character;
mod code;
mod part_number;
mod piece;

pub use code::{Code, JobStart, NotACode};
pub use piece::Piece;
