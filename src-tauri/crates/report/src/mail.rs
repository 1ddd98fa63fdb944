//! Pictures made to fit into a file that can be mailed.

use wearbook_core::document::{Block, Paper};

/// What a report may weigh to be mailed, in bytes: many mail servers refuse more than a few megabytes, and mail makes
/// four bytes of three.
pub(crate) const MOST: usize = 5_000_000;
/// What fonts, drawings and text weigh at most, in bytes; the test with 120 photos holds it.
const WITHOUT_PICTURES: usize = 900_000;
/// A picture is never made smaller than this for it, in bytes: nobody could judge by it.
const LEAST: usize = 12_000;
/// The long side of a picture at most, in pixels: 500 to the inch at the size at which it is printed.
const SIDE: u32 = 1280;

/// How many bytes each picture of a paper may have.
pub(crate) fn share(paper: &Paper) -> usize {
    let pictures: usize = paper
        .blocks
        .iter()
        .map(|block| if let Block::Findings { pictures, .. } = block { pictures.len() } else { 0 })
        .sum();
    ((MOST - WITHOUT_PICTURES) / pictures.max(1)).max(LEAST)
}

/// The picture within its share; as it is where it fits, or where it can't be read.
pub(crate) fn fitted(bytes: Vec<u8>, share: usize) -> Vec<u8> {
    if bytes.len() <= share && bytes.starts_with(&JPEG_START) {
        return bytes;
    }
    wearbook_photo::outgoing_within(&bytes, SIDE, share).unwrap_or(bytes)
}

/// The marker that begins every JPEG file (ITU-T T.81, table B.1: SOI).
const JPEG_START: [u8; 2] = [0xff, 0xd8];
