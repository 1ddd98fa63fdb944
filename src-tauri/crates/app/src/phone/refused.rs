//! Why a device did not do what it was asked.

use serde::Deserialize;

use crate::Error;

/// The code that a device gives, in Kotlin and in Swift, and the sentence for the person.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, thiserror::Error)]
#[serde(rename_all = "kebab-case")]
pub enum Refused {
    /// No program takes photos, or none may.
    #[error("No camera could be opened: choose a photo instead.")]
    NoCamera,
    /// It is open already.
    #[error("The camera is open already.")]
    CameraOpen,
    /// There is no share sheet.
    #[error("This device has nothing to share with: save the file or copy the text instead.")]
    NoShare,
    /// It is open already.
    #[error("The share sheet is open already.")]
    ShareOpen,
    /// The disk is full.
    #[error("There is no room left on this device: free some space and try again.")]
    NoRoom,
    /// The device has no such thing.
    #[error("This device can’t do that.")]
    NotHere,
    /// Something else; the device has written it into its log.
    #[error("The device could not do that: try again.")]
    Failed,
}

impl Refused {
    /// What a device gave as its code. One that is not known is a failure like any other.
    pub fn from_code(code: &str) -> Self {
        serde_json::from_value(code.into()).unwrap_or(Self::Failed)
    }

    /// Its code.
    pub fn code(self) -> &'static str {
        match self {
            Self::NoCamera => "no-camera",
            Self::CameraOpen => "camera-open",
            Self::NoShare => "no-share",
            Self::ShareOpen => "share-open",
            Self::NoRoom => "no-room",
            Self::NotHere => "not-here",
            Self::Failed => "failed",
        }
    }
}

impl From<Refused> for Error {
    fn from(refused: Refused) -> Self {
        Self::new(refused.code(), refused.to_string())
    }
}
