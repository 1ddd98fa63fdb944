//! Backups: into which folder, and before the window closes.

use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};

use serde_json::{Value, json};
use tauri::{AppHandle, CloseRequestApi, Manager, Runtime, Window};
use tauri_plugin_dialog::DialogExt;
use wearbook_app::action::Awaited;
use wearbook_app::{Answer, Error};

use crate::documents::{ask_for_place, save_at};
use crate::shop::Shop;

/// Asks for the folder into which backups go. Answers whether one was chosen.
pub(crate) fn choose<R: Runtime>(app: &AppHandle<R>, shop: &Shop) -> Result<Answer, Error> {
    let book = shop.book()?;
    let folder = ask_for_folder(app)?;
    if let Some(folder) = &folder {
        book.choose_backup(Some(folder))?;
    }
    Ok(Answer::Json(json!(folder.is_some()).to_string()))
}

/// Asks for a folder with backups and takes all of them in. Answers what came of it, or `null` if the person changed their
/// mind.
pub(crate) fn restore<R: Runtime>(app: &AppHandle<R>, shop: &Shop, arguments: Value) -> Result<Answer, Error> {
    let book = shop.book()?;
    let Awaited { way } = Awaited::read(arguments)?;
    let Some(folder) = ask_for_folder(app)? else { return Ok(Answer::Json(Value::Null.to_string())) };
    let taken = book.restore(&folder, way)?;
    Ok(Answer::Json(serde_json::to_string(&taken).map_err(|error| Error::new("broken", error.to_string()))?))
}

/// Saves the whole shop as one file. Answers `{path}`, or `null` if the person changed their mind.
pub(crate) fn save_shop<R: Runtime>(app: &AppHandle<R>, shop: &Shop, arguments: Value) -> Result<Answer, Error> {
    let book = shop.book()?;
    let Awaited { way } = Awaited::read(arguments)?;
    let name = book.shop_archive_name();
    let Some(place) = ask_for_place(app, &name) else { return Ok(Answer::Json(Value::Null.to_string())) };
    save_at(app, &name, &place, |path| book.save_shop(path, way).map(drop))?;
    book.note_shop_saved()?;
    Ok(Answer::Json(json!({ "path": place.to_string() }).to_string()))
}

/// The variable `WEARBOOK_BACKUP_DIR` names a folder that is used without asking: no test can press the buttons of the
/// system's own dialog.
fn ask_for_folder<R: Runtime>(app: &AppHandle<R>) -> Result<Option<PathBuf>, Error> {
    if let Some(folder) = std::env::var_os("WEARBOOK_BACKUP_DIR") {
        return Ok(Some(folder.into()));
    }
    #[cfg(desktop)]
    return Ok(app.dialog().file().blocking_pick_folder().and_then(|folder| folder.into_path().ok()));
    #[cfg(mobile)]
    {
        let _ = app.dialog();
        Err(Error::new("not-possible", "This device lets no folder be chosen: save the whole shop as a file instead."))
    }
}

/// Whether the window is closing already: who asks again does not wait any longer.
static CLOSING: AtomicBool = AtomicBool::new(false);

/// Saves what changed before the window goes, where a folder was chosen for it. How it went is told on the next start, if it
/// failed.
pub(crate) fn before_closing<R: Runtime>(window: &Window<R>, api: &CloseRequestApi) {
    let shop = window.state::<Shop>().inner().clone();
    let is_wanted = shop.book().is_ok_and(|book| {
        book.backup().is_ok_and(|backup| backup.folder.is_some()) && book.is_changed_since_backup().unwrap_or(false)
    });
    if !is_wanted || CLOSING.swap(true, Ordering::SeqCst) {
        return;
    }
    api.prevent_close();
    let window = window.clone();
    tauri::async_runtime::spawn_blocking(move || {
        if let Ok(book) = shop.book()
            && let Err(error) = book.back_up(None)
        {
            eprintln!("{}", error.message);
        }
        let _ = window.destroy();
    });
}
