//! What the page sends with a command: arguments, and bytes if there are any.
//!
//! Three forms arrive, because webviews differ. Bytes travel raw, with the arguments percent-encoded in a header;
//! Android's webview can't send raw bytes, so there they come as base64 inside JSON; and without bytes all is JSON.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use percent_encoding::percent_decode;
use serde_json::{Map, Value};
use tauri::http::HeaderMap;
use tauri::ipc::InvokeBody;
use wearbook_app::Error;

/// The header that carries arguments beside raw bytes.
const ARGUMENTS: &str = "x-arguments";

/// A command's input in its one form.
#[derive(Debug, PartialEq)]
pub(crate) struct Payload {
    /// The arguments: a JSON object.
    pub(crate) arguments: Value,
    /// The bytes, if the page sent any.
    pub(crate) bytes: Option<Vec<u8>>,
}

impl Payload {
    /// Reads whichever form came.
    pub(crate) fn read(body: &InvokeBody, headers: &HeaderMap) -> Result<Self, Error> {
        match body {
            InvokeBody::Raw(bytes) => Ok(Self { arguments: from_header(headers)?, bytes: Some(bytes.clone()) }),
            InvokeBody::Json(json) => from_json(json),
        }
    }
}

fn from_header(headers: &HeaderMap) -> Result<Value, Error> {
    let Some(header) = headers.get(ARGUMENTS) else {
        return Ok(Value::Object(Map::new()));
    };
    let text = percent_decode(header.as_bytes())
        .decode_utf8()
        .map_err(|_| refused("The arguments of the command are not text."))?;
    serde_json::from_str(&text).map_err(|_| refused("The arguments of the command are not JSON."))
}

fn from_json(json: &Value) -> Result<Payload, Error> {
    let arguments = json.get("arguments").cloned().unwrap_or_else(|| Value::Object(Map::new()));
    let bytes = match json.get("base64") {
        None | Some(Value::Null) => None,
        Some(Value::String(text)) => {
            Some(STANDARD.decode(text).map_err(|_| refused("The bytes of the command are not base64."))?)
        }
        Some(_) => return Err(refused("The bytes of the command are not base64 text.")),
    };
    Ok(Payload { arguments, bytes })
}

fn refused(message: &str) -> Error {
    Error::new("arguments-refused", message)
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[track_caller]
    fn check(body: InvokeBody, header: Option<&str>, expected: Result<(Value, Option<&[u8]>), ()>) {
        let mut headers = HeaderMap::new();
        if let Some(header) = header {
            headers.insert(ARGUMENTS, header.parse().unwrap());
        }
        let read = Payload::read(&body, &headers).map(|p| (p.arguments, p.bytes)).map_err(|_| ());
        assert_eq!(read, expected.map(|(arguments, bytes)| (arguments, bytes.map(<[u8]>::to_vec))));
    }

    #[test]
    fn every_form_of_every_webview_is_read() {
        let arguments = json!({ "job": "Ü" });
        check(json!({ "arguments": arguments }).into(), None, Ok((arguments.clone(), None)));
        check(json!({}).into(), None, Ok((json!({}), None)));
        check(json!({ "arguments": arguments, "base64": "aGk=" }).into(), None, Ok((arguments.clone(), Some(b"hi"))));
        check(InvokeBody::Raw(b"hi".into()), Some("%7B%22job%22:%22%C3%9C%22%7D"), Ok((arguments, Some(b"hi"))));
        check(InvokeBody::Raw(b"hi".into()), None, Ok((json!({}), Some(b"hi"))));
    }

    #[test]
    fn nonsense_is_refused() {
        check(json!({ "base64": "a gap" }).into(), None, Err(()));
        check(json!({ "base64": [1, 2] }).into(), None, Err(()));
        check(InvokeBody::Raw(vec![]), Some("%7B"), Err(()));
        check(InvokeBody::Raw(vec![]), Some("%FF"), Err(()));
    }
}
