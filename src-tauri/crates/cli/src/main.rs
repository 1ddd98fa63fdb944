//! The same actions as the app, without a window.
//!
//! What it prints on standard output is the answer; what goes wrong is a sentence on standard error. It ends with 0
//! when it has done what was asked, 2 when a picture is refused, 1 for everything else.

mod assess;
mod demo;
mod documents;
mod failure;
mod file;
mod photo;
mod schema;
mod visit;

use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand};
use schema::Published;

/// Wearbook without a window: the same actions, for scripts and for a look from afar.
#[derive(Debug, Parser)]
#[command(name = "wearbook-cli", version, arg_required_else_help = true, flatten_help = true)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Write the demo job: an invented engine with photos, tags, marks and a cause.
    Demo {
        /// Where to write the archive.
        #[arg(value_name = "OUT.wearbook")]
        out: PathBuf,
    },
    /// Say what follows from a job: causes, decisions, what was not looked at.
    Assess {
        /// A .wearbook archive, or a bare job.json.
        file: PathBuf,
        /// Print the whole assessment as JSON.
        #[arg(long)]
        json: bool,
    },
    /// Write a job's papers: the customer's page, the reports, those for machine shop and parts counter, lists.
    Documents {
        /// A .wearbook archive, or a bare job.json.
        file: PathBuf,
        /// The folder for the papers; made if it is not there.
        #[arg(long, value_name = "DIR")]
        out: PathBuf,
    },
    /// Print the form of published JSON, as a JSON schema.
    Schema {
        /// Whose form.
        of: Published,
    },
    /// Look at a single picture.
    #[command(subcommand)]
    Photo(Photo),
}

#[derive(Debug, Subcommand)]
#[command(flatten_help = true)]
enum Photo {
    /// Say in one line of JSON whether a picture would be taken in, and its size as shown, or why not.
    Check {
        /// The picture.
        file: PathBuf,
    },
    /// Write what would leave the shop: upright, no location, no camera data.
    Outgoing {
        /// The picture.
        #[arg(value_name = "IN")]
        from: PathBuf,
        /// Where to write the JPEG.
        #[arg(value_name = "OUT")]
        to: PathBuf,
    },
}

fn main() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(usage) => {
            // Help and version are no mistakes. If they can't be printed there is nobody to tell.
            let _ = usage.print();
            return if usage.use_stderr() { ExitCode::FAILURE } else { ExitCode::SUCCESS };
        }
    };
    let done = match arguments.command {
        Command::Demo { out } => demo::run(&out),
        Command::Assess { file, json } => assess::run(&file, json),
        Command::Documents { file, out } => documents::run(&file, &out),
        Command::Schema { of } => schema::print(of),
        Command::Photo(Photo::Check { file }) => photo::check(&file),
        Command::Photo(Photo::Outgoing { from, to }) => photo::outgoing(&from, &to),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(failure) => {
            failure.tell();
            failure.exit_code()
        }
    }
}
