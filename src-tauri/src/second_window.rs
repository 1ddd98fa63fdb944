//! One window for a shop: a second one hands its files to the first and goes.
//!
//! ```text
//! handed-over/<anything>.json    the files' paths
//! ```

use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::thread;
use std::time::Duration;

use tauri::{AppHandle, Manager, Runtime};

use crate::shop::{self, Shop};

/// How often the first looks.
const OFTEN: Duration = Duration::from_millis(300);
/// So long the second waits to be heard. Whoever does not hear is no window.
const PATIENCE: Duration = Duration::from_secs(5);
/// The longest note that is read.
const LONGEST: u64 = 256 * 1024;

fn folder(dir: &Path) -> PathBuf {
    dir.join("handed-over")
}

/// Hands files, or none, to the window that has the shop open, which then comes to the front. Answers whether it was
/// heard.
pub(crate) fn hand_over(dir: &Path, files: &[PathBuf]) -> bool {
    match note(&folder(dir), files) {
        Ok(note) => {
            let mut waited = Duration::ZERO;
            while note.exists() && waited < PATIENCE {
                thread::sleep(OFTEN);
                waited += OFTEN;
            }
            // Who has taken it has removed it.
            fs::remove_file(&note).is_err()
        }
        Err(error) => {
            eprintln!("The other window could not be told: {error}.");
            false
        }
    }
}

fn note(folder: &Path, files: &[PathBuf]) -> io::Result<PathBuf> {
    fs::create_dir_all(folder)?;
    let note = folder.join(format!("{}.json", std::process::id()));
    wearbook_app::write_whole(&note, &serde_json::to_vec(files)?)?;
    Ok(note)
}

/// Takes what a second window hands over, as long as the program runs.
pub(crate) fn listen<R: Runtime>(app: &AppHandle<R>, dir: &Path) {
    if !cfg!(desktop) {
        return;
    }
    let (app, folder) = (app.clone(), folder(dir));
    thread::spawn(move || {
        loop {
            thread::sleep(OFTEN);
            let notes = take(&folder);
            if !notes.is_empty() {
                show(&app, notes.into_iter().flatten());
            }
        }
    });
}

/// What was handed over since the last look: of each note its files.
fn take(folder: &Path) -> Vec<Vec<PathBuf>> {
    // It is there only once there was a second window.
    let Ok(entries) = fs::read_dir(folder) else { return vec![] };
    let is_note = |path: &PathBuf| path.extension().is_some_and(|extension| extension == "json");
    let notes = entries.filter_map(|entry| Some(entry.ok()?.path())).filter(is_note);
    notes.filter_map(|note| read(&note)).collect()
}

fn read(note: &Path) -> Option<Vec<PathBuf>> {
    let is_short = fs::metadata(note).ok()?.len() <= LONGEST;
    let bytes = fs::read(note).ok().filter(|_| is_short);
    fs::remove_file(note).ok()?;
    Some(bytes.and_then(|bytes| serde_json::from_slice(&bytes).ok()).unwrap_or_default())
}

fn show<R: Runtime>(app: &AppHandle<R>, files: impl Iterator<Item = PathBuf>) {
    let shop = app.state::<Shop>();
    for file in files {
        shop.arrive(&file);
    }
    for window in app.webview_windows().values() {
        // A window that can't come to the front still takes the files in.
        #[cfg(desktop)]
        let _ = window.unminimize();
        let _ = window.set_focus();
    }
    shop::tell_page(app);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_note_is_taken_once_and_nonsense_is_no_file() {
        let dir = tempfile::tempdir().unwrap();
        let folder = folder(dir.path());
        assert!(take(&folder).is_empty());
        let files = vec![PathBuf::from("/bench/a.wearbook"), PathBuf::from("/bench/b.wearbook")];
        note(&folder, &files).unwrap();
        fs::write(folder.join("other.json"), "no list").unwrap();
        fs::write(folder.join(".incoming-x"), "half").unwrap();
        let mut taken = take(&folder);
        taken.sort();
        assert_eq!(taken, [vec![], files]);
        assert!(take(&folder).is_empty());
    }

    #[test]
    fn who_is_not_heard_says_so_and_leaves_no_note() {
        let dir = tempfile::tempdir().unwrap();
        let heard = dir.path().to_owned();
        let first = thread::spawn(move || {
            let folder = folder(&heard);
            loop {
                let taken = take(&folder);
                if !taken.is_empty() {
                    return taken;
                }
                thread::sleep(OFTEN);
            }
        });
        assert!(hand_over(dir.path(), &[PathBuf::from("/bench/a.wearbook")]));
        assert_eq!(first.join().unwrap(), [[PathBuf::from("/bench/a.wearbook")]]);
        assert!(!hand_over(dir.path(), &[]), "nobody listens");
        assert!(fs::read_dir(folder(dir.path())).unwrap().next().is_none());
    }
}
