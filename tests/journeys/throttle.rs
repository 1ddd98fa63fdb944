//! A slow device: Chromium's processor slowed down.

use fantoccini::wd::WebDriverCompatibleCommand;
use http::Method;
use serde_json::json;
use url::{ParseError, Url};

use crate::failure::Outcome;
use crate::page::Page;

/// So many times slower than this machine.
#[derive(Debug)]
struct Throttle(u32);

impl WebDriverCompatibleCommand for Throttle {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        base.join(&format!("session/{}/goog/cdp/execute", session.unwrap_or_default()))
    }

    fn method_and_body(&self, _: &Url) -> (Method, Option<String>) {
        let body = json!({ "cmd": "Emulation.setCPUThrottlingRate", "params": { "rate": self.0 } });
        (Method::POST, Some(body.to_string()))
    }
}

/// Slows the page down from here on.
pub(crate) async fn throttle(page: &Page, times: u32) -> Outcome {
    page.client.issue_cmd(Throttle(times)).await?;
    Ok(())
}
