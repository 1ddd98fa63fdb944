//! A session with a WebDriver program.

use std::time::Duration;

use fantoccini::ClientBuilder;
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Map, Value};

use super::process::listening;
use crate::failure::{Failure, Outcome};
use crate::page::Page;

/// Opens a session on the driver at this port with these capabilities.
pub(crate) async fn connect(port: u16, driver: &str, capabilities: Value) -> Outcome<Page> {
    listening(port, driver).await?;
    let capabilities: Map<String, Value> = serde_json::from_value(capabilities)?;
    let mut session = ClientBuilder::new(HttpConnector::new());
    session.capabilities(capabilities);
    let client = tokio::time::timeout(Duration::from_secs(90), session.connect(&format!("http://127.0.0.1:{port}")))
        .await
        .map_err(|_| Failure(format!("{driver} opened no page within 90 seconds.")))??;
    Ok(Page { client })
}
