//! The page with the real actions, in an ordinary browser: for the journeys, and for working on the page.
//!
//! Listens on the loopback address alone and has no notion of users: it is not meant to serve anyone else.

mod actions;
mod pages;
mod phone;

use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::routing::{get, post};
use clap::Parser;
use tokio::net::TcpListener;
use wearbook_app::Wearbook;

/// Serves Wearbook's page and actions to a browser on this machine.
#[derive(Debug, Parser)]
struct Options {
    /// The folder of the data; made if missing.
    #[arg(long)]
    data: PathBuf,
    /// The port; 0 takes a free one.
    #[arg(long, default_value_t = 0)]
    port: u16,
    /// The page's files; the checkout's own, if not said.
    #[arg(long)]
    ui: Option<PathBuf>,
    /// Behave like a phone, as this folder says; see `phone.rs`.
    #[arg(long)]
    phone: Option<PathBuf>,
    /// A file that the system opens with the program.
    #[arg(long)]
    open: Vec<PathBuf>,
    /// Where to write the port once the harness listens.
    #[arg(long)]
    port_file: Option<PathBuf>,
}

/// The largest body: a photo. Larger files come in pieces.
const MAX_BODY: usize = 48 * 1024 * 1024;

#[tokio::main]
async fn main() -> ExitCode {
    match serve(Options::parse()).await {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("The harness stopped: {error}");
            ExitCode::FAILURE
        }
    }
}

async fn serve(options: Options) -> Result<(), Box<dyn std::error::Error>> {
    let wearbook = Arc::new(Wearbook::open(&options.data)?);
    wearbook.settle()?;
    for file in &options.open {
        wearbook.arrive(file)?;
    }
    let device = phone::Device::new(Arc::clone(&wearbook), options.phone);
    let ui = options.ui.unwrap_or_else(|| wearbook_tests::checkout().join("ui"));
    let app = Router::new()
        .route("/act/{name}", post(actions::act))
        .route("/photo/{size}/{photo}", get(actions::photo))
        .with_state(wearbook)
        .merge(Router::new().route("/phone/{command}", post(phone::act)).with_state(device))
        .merge(pages::router(ui, wearbook_tests::content_security_policy()?))
        .layer(DefaultBodyLimit::max(MAX_BODY));
    let listener = TcpListener::bind(("127.0.0.1", options.port)).await?;
    let address = listener.local_addr()?;
    println!("http://{address}/");
    if let Some(file) = options.port_file {
        write_whole(&file, &address.port().to_string())?;
    }
    axum::serve(listener, app).await?;
    Ok(())
}

/// Writes a file that a waiting reader never sees half.
fn write_whole(file: &std::path::Path, text: &str) -> std::io::Result<()> {
    let unfinished = file.with_extension("unfinished");
    std::fs::write(&unfinished, text)?;
    std::fs::rename(unfinished, file)
}
