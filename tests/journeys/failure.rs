//! Why a journey failed, in plain words.

use std::fmt;

/// How a journey ended.
pub(crate) type Outcome<T = ()> = Result<T, Failure>;

/// A sentence; the test runner shows it as it is.
pub(crate) struct Failure(pub(crate) String);

impl fmt::Debug for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl<E: std::error::Error> From<E> for Failure {
    fn from(error: E) -> Self {
        Self(error.to_string())
    }
}

/// A failure with this sentence.
pub(crate) fn fail<T>(sentence: impl Into<String>) -> Outcome<T> {
    Err(Failure(sentence.into()))
}

/// Fails with the sentence unless the condition holds.
pub(crate) fn ensure(holds: bool, sentence: impl Into<String>) -> Outcome {
    if holds { Ok(()) } else { fail(sentence) }
}
