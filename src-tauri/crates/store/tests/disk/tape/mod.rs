//! What a program did to its folder, as the system saw it, and what a disk may hold of it once the power went off.
//!
//! `strace` writes down every call of a child process that touches a file: the database's, the photos', the folders',
//! in the order in which they came, together with what the child said. So it is the very program that is tried, with
//! nothing put between it and the disk. Where there is no `strace`, or where it is not let do this, the tests that need
//! it are skipped.

mod child;
mod disk;
mod step;

pub(crate) use child::{Calls, Child, is_there, quick_folder};
pub(crate) use disk::{Disk, Lost};
pub(crate) use step::Step;
