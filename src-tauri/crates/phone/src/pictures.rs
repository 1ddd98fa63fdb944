//! The web view's own file input, which reads a label where there is no plugin yet, leaves the photos that it took.

use std::path::Path;

use tauri::{AppHandle, Manager, Runtime};

/// Removes what an earlier run's web view has left. At the start nobody uses it any longer.
pub(crate) fn sweep<R: Runtime>(app: &AppHandle<R>) {
    if !cfg!(target_os = "android") {
        return;
    }
    // On Android this is the program's own folder, not the person's pictures.
    if let Ok(folder) = app.path().picture_dir()
        && let Err(error) = sweep_folder(&folder)
        && error.kind() != std::io::ErrorKind::NotFound
    {
        eprintln!("{} could not be swept: {error}", folder.display());
    }
}

fn sweep_folder(folder: &Path) -> std::io::Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        if entry.file_name().to_str().is_some_and(is_left) && entry.file_type()?.is_file() {
            std::fs::remove_file(entry.path())?;
        }
    }
    Ok(())
}

/// Whether a file is named as the web view names its photos.
fn is_left(name: &str) -> bool {
    name.starts_with("JPEG_") && name.ends_with(".jpg")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_the_web_view_left_is_swept() {
        assert!(is_left("JPEG_20300317_101500_123.jpg"));
        for name in ["shell.jpg", "JPEG_notes.txt", "old JPEG_1.jpg", ""] {
            assert!(!is_left(name), "{name}");
        }
    }
}
