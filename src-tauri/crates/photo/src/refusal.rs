//! Why a picture was not taken: a code for programs and one sentence for people.

/// A picture that can't be taken, and what to do instead.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{message}")]
pub struct Refusal {
    code: &'static str,
    message: String,
}

impl Refusal {
    /// What kind of refusal this is: lower case words joined by hyphens, such as `photo-heic`. Stays the same when the
    /// sentence is reworded.
    pub fn code(&self) -> &'static str {
        self.code
    }

    /// One sentence: what is wrong with the picture and what would be right.
    pub fn message(&self) -> &str {
        &self.message
    }

    pub(crate) fn new(code: &'static str, message: impl Into<String>) -> Self {
        Self { code, message: message.into() }
    }

    /// The picture ends before all of it has been read.
    pub(crate) fn incomplete() -> Self {
        Self::new(
            "photo-incomplete",
            "This picture is incomplete, its lower part is missing: copy it again from the camera, or take it again.",
        )
    }

    /// The picture contradicts itself; `what` completes the sentence "This picture is damaged: ...".
    pub(crate) fn broken(what: &str) -> Self {
        Self::new(
            "photo-broken",
            format!("This picture is damaged ({what}): copy it again from the camera, or take it again."),
        )
    }
}
