//! The part to which a label's code leads, as it was typed.

use serde::{Deserialize, Serialize};
use wearbook_core::engine::{Part, require};
use wearbook_core::label::{Code, NotACode};
use wearbook_store::JobId;

use crate::{Error, Wearbook};

/// What was typed.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// The code, as it stands on the label or as a hand types it.
    pub text: String,
}

/// Where a label leads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(rename = "Labelled"))]
pub struct Reply {
    /// The job.
    pub job: JobId,
    /// The part of its engine.
    pub part: Part,
}

/// Finds the job on this device and the part of its engine.
///
/// # Errors
/// `not-a-code`, `wrong-code` or `newer-code` with what is wrong with the text; `no-such-job` if the job is not here,
/// `several-jobs` if two begin alike, `no-such-part` if its engine has no such part any longer; what the store says.
pub fn act(book: &Wearbook, Arguments { text }: Arguments) -> Result<Reply, Error> {
    find(book, text.parse()?)
}

pub(super) fn find(book: &Wearbook, code: Code) -> Result<Reply, Error> {
    let job = match book.store.read(|ledger| ledger.jobs_beginning(code.job()))?.as_slice() {
        [job] => *job,
        [] => return Err(Error::new("no-such-job", NOT_HERE)),
        _ => return Err(Error::new("several-jobs", SEVERAL)),
    };
    let (arrangement, terms) =
        book.look(job, |open| (open.log.job().arrangement.clone(), open.log.job().terms))?;
    let arrangement = arrangement.ok_or_else(|| Error::new("no-such-part", NOT_LAID_OUT))?;
    let part = require(code.part(), &arrangement, terms).map_err(|missing| Error::new("no-such-part", missing.0))?;
    Ok(Reply { job, part })
}

const NOT_HERE: &str =
    "The job of this label is not on this device: import its file, or look on the device where the label was printed.";
const SEVERAL: &str = "Two jobs here begin with the same code: open the right one and choose the part on its plan.";
const NOT_LAID_OUT: &str =
    "It is not known any longer how this job’s engine is laid out: enter the arrangement on the job’s intake sheet.";

impl From<NotACode> for Error {
    fn from(wrong: NotACode) -> Self {
        let code = match wrong {
            NotACode::Foreign | NotACode::Length(_) => "not-a-code",
            NotACode::WrongCheck => "wrong-code",
            NotACode::Newer => "newer-code",
        };
        Self::new(code, wrong.to_string())
    }
}
