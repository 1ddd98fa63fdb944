//! The shop's data: where it lies, and the one open handle on it.

use std::path::PathBuf;
use std::sync::Arc;

use serde_json::{Value, json};
use tauri::{App, Manager, Runtime};
use wearbook_app::{Answer, Error, Wearbook};
use wearbook_phone::Book;

/// The open data, or why it could not be opened. In the latter case every action answers with that reason, so that
/// the page can say it: a phone has no other place for it.
#[derive(Debug, Clone)]
pub(crate) struct Shop(Arc<Result<Wearbook, Error>>);

impl Shop {
    /// Does an action. Blocks: call it away from the thread of the window.
    pub(crate) fn act(&self, action: &str, arguments: Value, bytes: Option<Vec<u8>>) -> Result<Answer, Error> {
        match &*self.0 {
            Ok(wearbook) => wearbook.act(action, arguments, bytes),
            Err(error) => Err(error.clone()),
        }
    }
}

/// Before the system may end the program, or copy its folder: see [`Wearbook::rest`].
#[cfg(mobile)]
pub(crate) fn rest<R: Runtime>(window: &tauri::Window<R>) {
    let shop = window.state::<Shop>().inner().clone();
    // The window's thread must not wait for the disk.
    tauri::async_runtime::spawn_blocking(move || {
        if let Ok(book) = &*shop.0
            && let Err(error) = book.rest()
        {
            eprintln!("{}", error.message);
        }
    });
}

/// Opens the data and takes in the jobs named as arguments of the program, if any.
pub(crate) fn open<R: Runtime>(app: &App<R>) -> Result<(), tauri::Error> {
    let book = Arc::new(Wearbook::open(&folder(app)?));
    settle(&book);
    app.manage(Book(Arc::clone(&book)));
    let shop = Shop(book);
    take_in(&shop, std::env::args_os().skip(1).map(PathBuf::from));
    app.manage(shop);
    Ok(())
}

/// A camera that was open when an earlier run ended is open no longer: what it took is offered.
fn settle(book: &Result<Wearbook, Error>) {
    if let Ok(book) = book
        && let Err(error) = book.settle_shots()
    {
        eprintln!("{}", error.message);
    }
}

/// The folder of this user and program; on desktops the variable `WEARBOOK_DATA` names another, for tests and for
/// keeping the data of several shops apart.
fn folder<R: Runtime>(app: &App<R>) -> Result<PathBuf, tauri::Error> {
    if cfg!(desktop)
        && let Some(folder) = std::env::var_os("WEARBOOK_DATA")
    {
        return Ok(folder.into());
    }
    app.path().app_data_dir()
}

/// Imports `.wearbook` files that the desktop passed to the program. If there was just one, the page opens at it.
fn take_in(shop: &Shop, files: impl Iterator<Item = PathBuf>) {
    let jobs: Vec<String> = files.filter(|file| !is_option(file)).filter_map(|file| import(shop, &file)).collect();
    let [job] = jobs.as_slice() else {
        return;
    };
    if let Err(error) = show_first(shop, job) {
        eprintln!("{}", error.message);
    }
}

fn is_option(argument: &std::path::Path) -> bool {
    argument.as_os_str().as_encoded_bytes().starts_with(b"-")
}

fn import(shop: &Shop, file: &std::path::Path) -> Option<String> {
    let bytes = match std::fs::read(file) {
        Ok(bytes) => bytes,
        Err(error) => {
            eprintln!("Could not read {}: {error}.", file.display());
            return None;
        }
    };
    match shop.act("archive_import", json!({}), Some(bytes)) {
        Ok(answer) => json(answer).get("job").and_then(Value::as_str).map(str::to_owned),
        Err(error) => {
            eprintln!("Could not take in {}: {}", file.display(), error.message);
            None
        }
    }
}

/// Makes the plan of a job the screen that the page restores.
fn show_first(shop: &Shop, job: &str) -> Result<(), Error> {
    let mut settings = json(shop.act("settings_get", json!({}), None)?);
    if let Some(settings) = settings.as_object_mut() {
        settings.insert("last_screen".into(), format!("#/job/{job}/plan").into());
    }
    shop.act("settings_set", json!({ "settings": settings }), None)?;
    Ok(())
}

/// What an action answers as JSON; null if it answers bytes.
fn json(answer: Answer) -> Value {
    match answer {
        Answer::Json(text) => serde_json::from_str(&text).unwrap_or_default(),
        Answer::Bytes { .. } => Value::Null,
    }
}
