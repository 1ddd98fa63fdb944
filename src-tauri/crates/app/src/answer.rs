//! What an action answers.

use serde::Serialize;

use crate::Error;

/// The answer of an action.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// JSON as text, of the type that the action's file names.
    Json(String),
    /// Bytes: a picture, a document, an archive.
    Bytes {
        /// The bytes.
        bytes: Vec<u8>,
        /// Their media type.
        mime: &'static str,
        /// A name under which a person would look for them.
        file_name: Option<String>,
    },
}

/// Bytes that leave the book.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct File {
    /// The bytes.
    pub bytes: Vec<u8>,
    /// Their media type.
    pub mime: &'static str,
    /// A name under which a person would look for them.
    pub file_name: Option<String>,
}

/// Whatever an action's function returns becomes an answer.
pub(crate) trait Reply {
    fn into_answer(self) -> Result<Answer, Error>;
}

impl<T: Serialize> Reply for T {
    fn into_answer(self) -> Result<Answer, Error> {
        serde_json::to_string(&self).map(Answer::Json).map_err(|error| Error::new("answer", error.to_string()))
    }
}

impl Reply for File {
    fn into_answer(self) -> Result<Answer, Error> {
        Ok(Answer::Bytes { bytes: self.bytes, mime: self.mime, file_name: self.file_name })
    }
}
