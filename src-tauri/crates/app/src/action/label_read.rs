//! The part to which a label leads, read from a photo of it.

use wearbook_core::label::{Code, NotACode};

use super::label_find::find;
use crate::{Error, Wearbook};

/// Nothing to be told.
pub type Arguments = super::Nothing;

/// Where the label leads.
pub type Reply = super::label_find::Reply;

/// Reads the code in a picture, which is not kept, and finds the job and the part.
///
/// # Errors
/// `no-code` if none can be read, `several-codes` if it shows several labels; the codes of the picture's refusal, such as
/// `photo-heic`; else as [`label_find`](super::label_find::act).
pub fn act(book: &Wearbook, _: Arguments, bytes: Vec<u8>) -> Result<Reply, Error> {
    let texts = wearbook_photo::codes(&bytes)?;
    let read: Vec<Result<Code, NotACode>> = texts.iter().map(|text| text.parse()).collect();
    let ours: Vec<Code> = read.iter().filter_map(|code| code.ok()).collect();
    match (ours.as_slice(), read.first()) {
        ([code], _) => find(book, *code),
        ([_, _, ..], _) => Err(Error::new("several-codes", SEVERAL)),
        ([], Some(Err(wrong))) => Err((*wrong).into()),
        ([], _) => Err(Error::new("no-code", NONE)),
    }
}

const SEVERAL: &str = "This picture shows several labels: take one alone.";
const NONE: &str = "No code can be read in this picture: take it closer and straight from above, in even light, or type the code.";
