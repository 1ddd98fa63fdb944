//! `schema`: the form of what goes in and comes out as JSON.

use std::io::Write;

use clap::ValueEnum;
use wearbook_app::schema::{assessment_schema, job_schema};

use crate::failure::Failure;

/// JSON that others may write or read.
#[derive(Debug, Clone, Copy, ValueEnum)]
pub(crate) enum Published {
    /// What `assess --json` prints.
    Assessment,
    /// `job.json`, alone or in an archive.
    Job,
}

pub(crate) fn print(of: Published) -> Result<(), Failure> {
    let schema = match of {
        Published::Assessment => assessment_schema(),
        Published::Job => job_schema(),
    };
    std::io::stdout().write_all(schema.as_bytes()).map_err(Failure::Output)
}
