//! The scheme `photo:`, by which the page shows pictures: `photo://localhost/<size>/<photo>`.
//!
//! A picture is named by its content, so an answer never changes and may be kept for good.

use serde_json::json;
use tauri::http::{Request, Response, StatusCode, header};
use tauri::{Manager, Runtime, UriSchemeContext, UriSchemeResponder};
use wearbook_app::Answer;

use crate::shop::Shop;

/// Answers one request, away from the thread of the window.
pub(crate) fn answer<R: Runtime>(
    context: UriSchemeContext<'_, R>,
    request: Request<Vec<u8>>,
    responder: UriSchemeResponder,
) {
    let app = context.app_handle().clone();
    tauri::async_runtime::spawn_blocking(move || {
        responder.respond(match wanted(request.uri().path()) {
            Some((size, photo)) => picture(&app.state::<Shop>(), size, photo),
            None => refused(StatusCode::BAD_REQUEST),
        });
    });
}

/// The size and the photo that an address names. Addresses have just this form; the action checks the two words.
fn wanted(path: &str) -> Option<(&str, &str)> {
    let (size, photo) = path.strip_prefix('/')?.split_once('/')?;
    let is_word = |word: &str| !word.is_empty() && word.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit());
    (is_word(size) && is_word(photo)).then_some((size, photo))
}

fn picture(shop: &Shop, size: &str, photo: &str) -> Response<Vec<u8>> {
    let Ok(Answer::Bytes { bytes, mime, .. }) = shop.act("photo_get", json!({ "photo": photo, "size": size }), None)
    else {
        return refused(StatusCode::NOT_FOUND);
    };
    Response::builder()
        .header(header::CONTENT_TYPE, mime)
        .header(header::X_CONTENT_TYPE_OPTIONS, "nosniff")
        .header(header::CACHE_CONTROL, "private, max-age=31536000, immutable")
        .body(bytes)
        .unwrap_or_else(|_| refused(StatusCode::INTERNAL_SERVER_ERROR))
}

fn refused(status: StatusCode) -> Response<Vec<u8>> {
    let mut response = Response::new(Vec::new());
    *response.status_mut() = status;
    response
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_names_a_size_and_a_photo_and_nothing_else() {
        assert_eq!(wanted("/thumb/0a1b"), Some(("thumb", "0a1b")));
        for address in
            ["", "/", "/thumb", "/thumb/", "//0a1b", "/thumb/../x", "/thumb/0a1b/x", "/thumb/0A1B", "thumb/0a"]
        {
            assert_eq!(wanted(address), None, "{address}");
        }
    }
}
