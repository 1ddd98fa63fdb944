//! The one window: it shows our own page and nothing else.

use tauri::webview::NewWindowResponse;
use tauri::{App, Runtime, Url, WebviewWindowBuilder};

/// Opens the window that `tauri.conf.json` describes.
pub(crate) fn open<R: Runtime>(app: &App<R>) -> Result<(), tauri::Error> {
    let Some(config) = app.config().app.windows.first() else {
        return Err(tauri::Error::WindowNotFound);
    };
    WebviewWindowBuilder::from_config(app, config)?
        .on_navigation(is_own_page)
        .on_new_window(|_, _| NewWindowResponse::Deny)
        .build()?;
    Ok(())
}

/// Whether an address is inside the program: a link in a customer's text can't lead the window away.
fn is_own_page(url: &Url) -> bool {
    match url.scheme() {
        "tauri" => url.host_str() == Some("localhost"),
        "http" | "https" => url.host_str() == Some("tauri.localhost"),
        _ => false,
    }
}

/// Loads the page anew; the address is set again because it may have been lost with the process.
#[cfg(any(target_os = "macos", target_os = "ios"))]
pub(crate) fn reload<R: Runtime>(webview: &tauri::Webview<R>) {
    let Ok(start) = Url::parse("tauri://localhost") else {
        return;
    };
    if let Err(error) = webview.navigate(start) {
        eprintln!("Could not load the page again: {error}");
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(address: &str, expected: bool) {
        assert_eq!(is_own_page(&Url::parse(address).unwrap()), expected, "{address}");
    }

    #[test]
    fn only_our_own_page_may_be_shown() {
        check("tauri://localhost/index.html#/job/1", true);
        check("https://tauri.localhost/", true);
        check("http://tauri.localhost/", true);
        check("tauri://elsewhere/", false);
        check("https://tauri.localhost.example/", false);
        check("https://example.com/", false);
        check("file:///etc/hosts", false);
        check("about:blank", false);
    }
}
