//! Chromium in the measures of a small phone, on the page of the harness.

use std::path::PathBuf;
use std::process::Command;
use std::time::Duration;

use serde_json::json;

use super::browser::connect;
use super::process::{Process, free_port};
use super::{Folders, Look};
use crate::failure::{Outcome, fail};
use crate::page::Page;

pub(crate) struct Phone {
    harness: Process,
    driver: Process,
}

impl Phone {
    /// Starts both; the size is that of the page, width before height. The files are those that the system opens with the
    /// program.
    pub(crate) async fn start(
        look: Look,
        folders: &Folders,
        size: (u32, u32),
        in_hand: bool,
        files: &[PathBuf],
    ) -> Outcome<(Self, Page)> {
        let mut program = Command::new(env!("CARGO_BIN_EXE_harness"));
        program.arg("--data").arg(folders.data()).arg("--port").arg(folders.port().to_string());
        if in_hand {
            program.arg("--phone").arg(folders.device());
        }
        for file in files {
            program.arg("--open").arg(file);
        }
        // An earlier page, to count its taps beside those of this one.
        if let Some(earlier) = std::env::var_os("WEARBOOK_PAGE") {
            program.arg("--ui").arg(earlier);
        }
        let (harness, address) = Process::start_and_hear(&mut program)?;
        if !address.starts_with("http://") {
            return fail("The harness did not start.");
        }
        let port = free_port()?;
        let driver =
            Process::start(Command::new("chromedriver").arg(format!("--port={port}")).env("HOME", folders.home()))?;
        let page = connect(port, "chromedriver", capabilities(look, folders, size)).await?;
        page.client.update_timeouts(timeouts()).await?;
        page.client.goto(&address).await?;
        Ok((Self { harness, driver }, page))
    }

    /// Ends the harness and the browser at once.
    pub(crate) fn kill(&mut self) -> Outcome {
        self.harness.kill()?;
        self.driver.kill()
    }
}

fn timeouts() -> fantoccini::wd::TimeoutConfiguration {
    let long = Some(Duration::from_secs(90));
    fantoccini::wd::TimeoutConfiguration::new(long, long, None)
}

fn capabilities(look: Look, folders: &Folders, (width, height): (u32, u32)) -> serde_json::Value {
    // The setting counts dark as 0 and light as 1.
    let scheme = if look == Look::Dark { 0 } else { 1 };
    json!({
        "goog:chromeOptions": {
            "args": [
                "--headless=new",
                "--no-sandbox",
                "--disable-dev-shm-usage",
                "--disable-gpu",
                "--hide-scrollbars",
                format!("--blink-settings=preferredColorScheme={scheme}"),
                format!("--user-data-dir={}", folders.home().join("chromium").display()),
            ],
            "mobileEmulation": {
                "deviceMetrics": { "width": width, "height": height, "pixelRatio": 2.0, "touch": true },
            },
            "prefs": {
                "download.default_directory": folders.saved(),
                "download.prompt_for_download": false,
            },
        },
        "goog:loggingPrefs": { "browser": "ALL" },
    })
}
