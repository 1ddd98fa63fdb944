//! The actions over HTTP, in the form that `ui/backend.js` speaks outside the shell.

use std::sync::Arc;

use axum::body::Bytes;
use axum::extract::{Path, State};
use axum::http::{HeaderMap, HeaderValue, StatusCode, header};
use axum::response::{IntoResponse, Response};
use percent_encoding::{NON_ALPHANUMERIC, percent_decode, utf8_percent_encode};
use serde_json::{Value, json};
use wearbook_app::{Answer, Error, Wearbook};

/// `POST /act/<name>`: the arguments are the body, or a header beside a body of bytes.
pub(crate) async fn act(
    State(wearbook): State<Arc<Wearbook>>,
    Path(name): Path<String>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    match read(&headers, body) {
        Ok((arguments, bytes)) => perform(wearbook, name, arguments, bytes).await,
        Err(error) => refused(&error),
    }
}

/// `GET /photo/<size>/<photo>`.
pub(crate) async fn photo(
    State(wearbook): State<Arc<Wearbook>>,
    Path((size, photo)): Path<(String, String)>,
) -> Response {
    perform(wearbook, "photo_get".into(), json!({ "photo": photo, "size": size }), None).await
}

fn read(headers: &HeaderMap, body: Bytes) -> Result<(Value, Option<Vec<u8>>), Error> {
    let unreadable = |_| Error::new("arguments-refused", "The arguments are not JSON.");
    match headers.get("x-arguments") {
        Some(header) => {
            let text = percent_decode(header.as_bytes()).decode_utf8_lossy();
            Ok((serde_json::from_str(&text).map_err(unreadable)?, Some(body.to_vec())))
        }
        None => Ok((serde_json::from_slice(&body).map_err(unreadable)?, None)),
    }
}

/// Actions block on the disk, so they run away from the threads that answer.
async fn perform(wearbook: Arc<Wearbook>, name: String, arguments: Value, bytes: Option<Vec<u8>>) -> Response {
    let done = tokio::task::spawn_blocking(move || wearbook.act(&name, arguments, bytes)).await;
    match done {
        Ok(Ok(Answer::Json(json))) => ([(header::CONTENT_TYPE, "application/json")], json).into_response(),
        Ok(Ok(Answer::Bytes { bytes, mime, file_name })) => with_name(bytes, mime, file_name.as_deref()),
        Ok(Err(error)) => refused(&error),
        Err(stopped) => refused(&Error::new("broken", stopped.to_string())),
    }
}

fn with_name(bytes: Vec<u8>, mime: &'static str, file_name: Option<&str>) -> Response {
    let mut response = ([(header::CONTENT_TYPE, mime)], bytes).into_response();
    let name = utf8_percent_encode(file_name.unwrap_or_default(), NON_ALPHANUMERIC).to_string();
    if let Ok(name) = HeaderValue::from_str(&name) {
        response.headers_mut().insert("x-file-name", name);
    }
    response
}

fn refused(error: &Error) -> Response {
    (StatusCode::BAD_REQUEST, axum::Json(error)).into_response()
}
