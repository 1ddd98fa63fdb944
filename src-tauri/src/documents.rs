//! Where documents go: a file that the person names, or the system's own viewer.

use std::fs::File;
use std::io::Read;
use std::path::{Path, PathBuf};

use serde_json::{Value, json};
use tauri::{AppHandle, Manager, Runtime};
use tauri_plugin_dialog::{DialogExt, FilePath};
use tauri_plugin_fs::{FsExt, OpenOptions};
use wearbook_app::action::archive_export;
use wearbook_app::{Answer, Error};

use crate::shop::Shop;

/// Fetches a document by `action`, asks for a place, and writes it there. Answers `{path}`, or `null` if the person
/// changed their mind.
pub(crate) fn save<R: Runtime>(
    app: &AppHandle<R>,
    shop: &Shop,
    action: &str,
    arguments: Value,
) -> Result<Answer, Error> {
    let document = fetch(shop, action, arguments)?;
    let Some(place) = ask_for_place(app, &document.name) else {
        return Ok(Answer::Json(Value::Null.to_string()));
    };
    write(app, &place, &document.bytes).map_err(|error| not_saved(&document.name, &error))?;
    Ok(Answer::Json(json!({ "path": place.to_string() }).to_string()))
}

/// The same with a job's archive, which is never whole in memory.
pub(crate) fn save_archive<R: Runtime>(app: &AppHandle<R>, shop: &Shop, arguments: Value) -> Result<Answer, Error> {
    let book = shop.book()?;
    let asked = archive_export::Arguments::read(arguments)?;
    let name = book.archive_name(&asked)?;
    let Some(place) = ask_for_place(app, &name) else {
        return Ok(Answer::Json(Value::Null.to_string()));
    };
    save_at(app, &name, &place, |path| book.save_archive(asked, path))?;
    Ok(Answer::Json(json!({ "path": place.to_string() }).to_string()))
}

/// Saves what is written file by file at a place that may be no path.
pub(crate) fn save_at<R: Runtime>(
    app: &AppHandle<R>,
    name: &str,
    place: &FilePath,
    save: impl FnOnce(&Path) -> Result<(), Error>,
) -> Result<(), Error> {
    if let Some(path) = place.as_path().filter(|_| cfg!(desktop)) {
        return save(path).map_err(|error| of_the_place(name, error));
    }
    // Another program's place may take bytes in their order alone, and an archive's list is written last.
    let path = cache(app).map_err(|error| not_saved(name, &error))?.join(name);
    save(&path)?;
    let copied = File::open(&path).and_then(|mut file| copy(app, place, &mut file));
    // The system empties the cache, if this fails.
    let _ = std::fs::remove_file(&path);
    copied.map_err(|error| not_saved(name, &error))
}

/// Writes a document to the program's cache and opens it in the system's viewer. Desktops only: phones hand documents
/// over through their share sheet.
pub(crate) fn open<R: Runtime>(app: &AppHandle<R>, shop: &Shop, arguments: Value) -> Result<Answer, Error> {
    if !cfg!(desktop) {
        return Err(Error::new("not-possible", "This device opens no documents by itself; save it instead."));
    }
    let document = fetch(shop, "document_get", arguments)?;
    let path = cached(app, &document).map_err(|error| not_saved(&document.name, &error))?;
    tauri_plugin_opener::open_path(&path, None::<&str>)
        .map_err(|error| Error::new("not-opened", format!("The system could not open {}: {error}.", path.display())))?;
    Ok(Answer::Json(json!({ "path": path }).to_string()))
}

struct Document {
    bytes: Vec<u8>,
    name: String,
}

fn fetch(shop: &Shop, action: &str, arguments: Value) -> Result<Document, Error> {
    match shop.act(action, arguments, None)? {
        Answer::Bytes { bytes, file_name, .. } => {
            Ok(Document { bytes, name: file_name.unwrap_or_else(|| "wearbook".into()) })
        }
        Answer::Json(_) => Err(Error::new("broken", format!("{action} answered without a document."))),
    }
}

/// On desktops the variable `WEARBOOK_SAVE_DIR` names a folder that is used without asking: no test can press the
/// buttons of the system's own dialog.
pub(crate) fn ask_for_place<R: Runtime>(app: &AppHandle<R>, name: &str) -> Option<FilePath> {
    if cfg!(desktop)
        && let Some(folder) = std::env::var_os("WEARBOOK_SAVE_DIR")
    {
        return Some(FilePath::Path(PathBuf::from(folder).join(name)));
    }
    let mut dialog = app.dialog().file().set_file_name(name);
    if let Some(extension) = Path::new(name).extension().and_then(|e| e.to_str()) {
        dialog = dialog.add_filter(name, &[extension]);
    }
    dialog.blocking_save_file()
}

/// What stood there stands until the new file is whole. On phones a place is often an address of another program's, not a
/// path, so there it is written through the plugin.
fn write<R: Runtime>(app: &AppHandle<R>, place: &FilePath, bytes: &[u8]) -> std::io::Result<()> {
    if cfg!(desktop)
        && let FilePath::Path(path) = place
    {
        return wearbook_app::write_whole(path, bytes);
    }
    copy(app, place, &mut &*bytes)
}

fn copy<R: Runtime>(app: &AppHandle<R>, place: &FilePath, from: &mut dyn Read) -> std::io::Result<()> {
    let mut options = OpenOptions::new();
    options.write(true).create(true).truncate(true);
    let mut file = app.fs().open(place.clone(), options)?;
    std::io::copy(from, &mut file)?;
    file.sync_all()
}

fn cached<R: Runtime>(app: &AppHandle<R>, document: &Document) -> std::io::Result<PathBuf> {
    let path = cache(app)?.join(&document.name);
    wearbook_app::write_whole(&path, &document.bytes)?;
    Ok(path)
}

/// What the disk says of a place is no matter of the shop's own folder.
fn of_the_place(name: &str, error: Error) -> Error {
    match error.code {
        "store-full" | "store-io" | "store-read-only" => Error::new(
            "not-saved",
            format!("{name} could not be saved there. Choose another place, or free some space."),
        ),
        _ => error,
    }
}

/// Where documents lie that another program is to read.
fn cache<R: Runtime>(app: &AppHandle<R>) -> std::io::Result<PathBuf> {
    let folder = app.path().app_cache_dir().map_err(std::io::Error::other)?.join("documents");
    std::fs::create_dir_all(&folder)?;
    Ok(folder)
}

fn not_saved(name: &str, error: &std::io::Error) -> Error {
    Error::new("not-saved", format!("{name} could not be saved: {error}. Choose another place, or free some space."))
}
