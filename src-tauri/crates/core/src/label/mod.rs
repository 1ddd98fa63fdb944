//! What the code on a label holds: the job and one part, in fourteen letters and digits that a camera reads or a hand types.

mod check_character;
mod code;
mod part_number;

pub use code::{Code, JobStart, NotACode};
