//! The shell's own window in WebKitGTK, on a display that nobody sees.

use std::path::PathBuf;
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
}

impl Window {
    pub(crate) async fn start(look: Look, folders: &Folders) -> Outcome<(Self, Page)> {
        // The driver refuses a session that asks for a browser by name.
        let options = json!({ "webkitgtk:browserOptions": { "binary": program()?, "args": [] } });
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
            Command::new("WebKitWebDriver")
                .arg(format!("--port={port}"))
                .env("DISPLAY", format!(":{number}"))
                .env_remove("WAYLAND_DISPLAY")
                .env("HOME", folders.home())
                .env("WEARBOOK_DATA", folders.data())
                .env("WEARBOOK_SAVE_DIR", folders.saved())
                .env("TAURI_WEBVIEW_AUTOMATION", "true")
                .env("GTK_THEME", if look == Look::Dark { "Adwaita:dark" } else { "Adwaita" })
                // There is neither a graphics card nor a desktop session here.
                .env("WEBKIT_DISABLE_DMABUF_RENDERER", "1")
                .env("LIBGL_ALWAYS_SOFTWARE", "1")
                .env("NO_AT_BRIDGE", "1")
                .env("GSETTINGS_BACKEND", "memory"),
        )?;
        let page = connect(port, "WebKitWebDriver", options).await?;
        Ok((Self { driver, _display: display }, page))
    }

    /// Ends the program and its driver at once.
    pub(crate) fn kill(&mut self) -> Outcome {
        self.driver.kill()
    }
}

/// The shell as Cargo built it beside this test.
fn program() -> Outcome<PathBuf> {
    let program = target_folder().join("wearbook");
    if program.exists() {
        return Ok(program);
    }
    fail(format!("{} is missing: build it first with `cargo build --package wearbook`.", program.display()))
}
