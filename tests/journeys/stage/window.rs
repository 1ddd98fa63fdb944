//! The shell's own window in WebKitGTK, on a display that nobody sees.

use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::{Value, json};

use super::browser::connect;
use super::process::{Process, free_port, target_folder};
use super::{Folders, Look};
use crate::failure::{Outcome, ensure, fail};
use crate::page::Page;

pub(crate) struct Window {
    driver: Process,
    _display: Process,
    number: String,
}

impl Window {
    /// Starts the program with files that the desktop opens with it.
    pub(crate) async fn start(look: Look, folders: &Folders, files: &[PathBuf]) -> Outcome<(Self, Page)> {
        // The driver refuses a session that asks for a browser by name.
        let options = json!({ "webkitgtk:browserOptions": { "binary": program()?, "args": files } });
        Self::open(options, look, folders).await
    }

    /// The engine's own plain browser, for pages that leave the program.
    pub(crate) async fn plain(look: Look, folders: &Folders) -> Outcome<(Self, Page)> {
        Self::open(json!({}), look, folders).await
    }

    async fn open(options: Value, look: Look, folders: &Folders) -> Outcome<(Self, Page)> {
        let (display, number) = Process::start_and_hear(Command::new("Xvfb").args([
            "-displayfd",
            "1",
            "-screen",
            "0",
            "1280x900x24",
            "-nolisten",
            "tcp",
        ]))?;
        ensure(!number.is_empty(), "Xvfb gave no display.")?;
        let port = free_port()?;
        let driver = Process::start(
            surrounded(&mut Command::new("WebKitWebDriver"), &number, folders)
                .arg(format!("--port={port}"))
                .env("TAURI_WEBVIEW_AUTOMATION", "true")
                .env("GTK_THEME", if look == Look::Dark { "Adwaita:dark" } else { "Adwaita" }),
        )?;
        let page = connect(port, "WebKitWebDriver", options).await?;
        Ok((Self { driver, _display: display, number }, page))
    }

    /// Opens a file with the program while it runs, as a desktop does: it is started again. Answers once that second
    /// program has ended.
    pub(crate) fn open_with_it(&self, folders: &Folders, file: &Path) -> Outcome {
        let ended = surrounded(&mut Command::new(program()?), &self.number, folders).arg(file).status()?;
        ensure(ended.success(), format!("The second program ended with {ended}."))
    }

    /// Ends the program and its driver at once.
    pub(crate) fn kill(&mut self) -> Outcome {
        self.driver.kill()
    }
}

/// Where a program finds the shop, and a display; there is neither a graphics card nor a desktop session here.
fn surrounded<'a>(program: &'a mut Command, display: &str, folders: &Folders) -> &'a mut Command {
    program
        .env("DISPLAY", format!(":{display}"))
        .env_remove("WAYLAND_DISPLAY")
        .env("HOME", folders.home())
        .env("WEARBOOK_DATA", folders.data())
        .env("WEARBOOK_SAVE_DIR", folders.saved())
        .env("WEARBOOK_BACKUP_DIR", folders.backups())
        .env("WEBKIT_DISABLE_DMABUF_RENDERER", "1")
        .env("LIBGL_ALWAYS_SOFTWARE", "1")
        .env("NO_AT_BRIDGE", "1")
        .env("GSETTINGS_BACKEND", "memory")
}

/// The shell as Cargo built it beside this test.
fn program() -> Outcome<PathBuf> {
    let program = target_folder().join("wearbook");
    if program.exists() {
        return Ok(program);
    }
    fail(format!("{} is missing: build it first with `cargo build --package wearbook`.", program.display()))
}
