//! What the tests of the whole share: where the checkout's files are, and the policy under which the page runs.

use std::path::{Path, PathBuf};

use serde_json::Value;

/// The top of the checkout.
pub fn checkout() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().map(Path::to_path_buf).unwrap_or_default()
}

/// The shell's `tauri.conf.json`.
///
/// # Errors
/// A sentence, when the file can't be read.
pub fn shell_config() -> Result<Value, String> {
    let path = checkout().join("src-tauri/tauri.conf.json");
    let text = std::fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
    serde_json::from_str(&text).map_err(|error| format!("{}: {error}", path.display()))
}

/// The shell's content security policy as a header's value, for a page whose actions and pictures come from its own
/// origin. All else is as strict as in the window.
///
/// # Errors
/// A sentence, when the configuration holds no policy.
pub fn content_security_policy() -> Result<String, String> {
    let config = shell_config()?;
    let policy = config
        .pointer("/app/security/csp")
        .and_then(Value::as_object)
        .ok_or("tauri.conf.json sets no content security policy.")?;
    let directives = policy.iter().map(|(directive, sources)| {
        let sources = match directive.as_str() {
            "connect-src" => "'self'",
            "img-src" => "'self' blob:",
            _ => sources.as_str().unwrap_or("'none'"),
        };
        format!("{directive} {sources}")
    });
    Ok(directives.collect::<Vec<_>>().join("; "))
}
