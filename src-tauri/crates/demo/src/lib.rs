//! An invented engine with a real diagnosis, and the program that draws its pictures; and another with so much on record
//! that what takes time can be timed on it.

pub mod picture;
mod recorded_v8;
pub mod scenario;

pub use recorded_v8::recorded_v8;
