//! Files from outside, read no further than they may be long.

use std::fs::File;
use std::io::Read;
use std::path::Path;

use crate::failure::Failure;

/// Reads a file, but at most one byte more than the cap: whoever checks the bytes then sees that they are too many.
pub(crate) fn read(file: &Path, most: u64) -> Result<Vec<u8>, Failure> {
    let cannot = |error| Failure::of_file("read", file, &error);
    let opened = File::open(file).map_err(cannot)?;
    let mut bytes = Vec::new();
    opened.take(most.saturating_add(1)).read_to_end(&mut bytes).map_err(cannot)?;
    Ok(bytes)
}

pub(crate) fn write(file: &Path, bytes: &[u8]) -> Result<(), Failure> {
    wearbook_app::write_whole(file, bytes).map_err(|error| Failure::of_file("written", file, &error))
}
