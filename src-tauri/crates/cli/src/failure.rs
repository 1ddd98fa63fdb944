//! How a command ends when it could not do what was asked.

use std::io;
use std::path::Path;
use std::process::ExitCode;

/// Why a command could not be done.
#[derive(Debug, thiserror::Error)]
pub(crate) enum Failure {
    /// A sentence for the person at the keyboard.
    #[error("{0}")]
    Sentence(String),
    /// The picture is refused, and the answer has been printed.
    #[error("The picture is refused.")]
    Refused,
    /// Whoever read the output has gone away.
    #[error("The output could not be written: {0}.")]
    Output(#[source] io::Error),
}

impl Failure {
    /// A sentence about a file.
    pub(crate) fn of_file(doing: &str, file: &Path, error: &io::Error) -> Self {
        Self::Sentence(format!("{} could not be {doing}: {error}.", file.display()))
    }

    /// Says it on standard error, unless it has been said.
    pub(crate) fn tell(&self) {
        if !matches!(self, Self::Refused) {
            eprintln!("{self}");
        }
    }

    pub(crate) fn exit_code(&self) -> ExitCode {
        match self {
            Self::Refused => ExitCode::from(2),
            Self::Sentence(_) | Self::Output(_) => ExitCode::FAILURE,
        }
    }
}

impl From<wearbook_app::Error> for Failure {
    fn from(error: wearbook_app::Error) -> Self {
        Self::Sentence(error.message)
    }
}
