//! An invented engine with a real diagnosis, and the program that draws its pictures.

pub mod picture;
pub mod scenario;
