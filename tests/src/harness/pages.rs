//! The page's files, under the shell's own policy.

use std::path::{Component, Path, PathBuf};

use axum::Router;
use axum::extract::Request;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};

/// Serves the page's files; whatever is not there is an error, never the start page in its place.
pub(crate) fn router(root: PathBuf, policy: String) -> Router {
    Router::new().fallback(move |request: Request| {
        let file = inside(&root, request.uri().path());
        let policy = policy.clone();
        async move { answer(file, policy).await }
    })
}

async fn answer(file: Option<PathBuf>, policy: String) -> Response {
    let Some((file, media)) = file.and_then(|file| media(&file).map(|media| (file, media))) else {
        return StatusCode::NOT_FOUND.into_response();
    };
    match tokio::task::spawn_blocking(move || std::fs::read(file)).await {
        Ok(Ok(bytes)) => {
            let headers = [
                (header::CONTENT_TYPE, media.to_owned()),
                (header::CONTENT_SECURITY_POLICY, policy),
                (header::X_CONTENT_TYPE_OPTIONS, "nosniff".into()),
                (header::CACHE_CONTROL, "no-store".into()),
            ];
            (headers, bytes).into_response()
        }
        _ => StatusCode::NOT_FOUND.into_response(),
    }
}

/// The file that an address names, if it is one inside the folder.
fn inside(root: &Path, path: &str) -> Option<PathBuf> {
    let path = Path::new(if path == "/" { "index.html" } else { path.trim_start_matches('/') });
    path.components().all(|part| matches!(part, Component::Normal(_))).then(|| root.join(path))
}

fn media(file: &Path) -> Option<&'static str> {
    Some(match file.extension()?.to_str()? {
        "html" => "text/html; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "woff2" => "font/woff2",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_files_of_the_page_are_served() {
        let root = Path::new("ui");
        assert_eq!(inside(root, "/"), Some(root.join("index.html")));
        assert_eq!(inside(root, "/part/part.js"), Some(root.join("part/part.js")));
        assert_eq!(inside(root, "/../Cargo.toml"), None);
        assert_eq!(inside(root, "/part/../../Cargo.toml"), None);
        assert_eq!(media(Path::new("ui/types/api.d.ts")), None);
    }
}
