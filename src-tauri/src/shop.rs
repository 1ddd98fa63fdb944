//! The shop's data: where it lies, and the one open handle on it.

use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use serde_json::Value;
use tauri::{App, AppHandle, Manager, Runtime};
use wearbook_app::{Answer, Error, Wearbook};
use wearbook_phone::Book;

use crate::second_window;

/// The open data, or why it could not be opened. In the latter case every action answers with that reason, so that
/// the page can say it: a phone has no other place for it.
#[derive(Debug, Clone)]
pub(crate) struct Shop(Arc<Result<Wearbook, Error>>);

impl Shop {
    /// The open book.
    pub(crate) fn book(&self) -> Result<&Wearbook, Error> {
        self.0.as_ref().as_ref().map_err(Clone::clone)
    }

    /// The system opens a file with the program.
    pub(crate) fn arrive(&self, file: &Path) {
        if let Ok(book) = self.book() {
            arrive(book, file);
        }
    }

    /// Does an action. Blocks: call it away from the thread of the window.
    pub(crate) fn act(&self, action: &str, arguments: Value, bytes: Option<Vec<u8>>) -> Result<Answer, Error> {
        self.book()?.act(action, arguments, bytes)
    }
}

/// Before the system may end the program, or copy its folder: see [`Wearbook::rest`].
#[cfg(mobile)]
pub(crate) fn rest<R: Runtime>(window: &tauri::Window<R>) {
    let shop = window.state::<Shop>().inner().clone();
    // The window's thread must not wait for the disk.
    tauri::async_runtime::spawn_blocking(move || {
        if let Ok(book) = shop.book()
            && let Err(error) = book.rest()
        {
            eprintln!("{}", error.message);
        }
    });
}

/// Opens the data. Files that the desktop passed to the program wait until the page takes them in; if another window has
/// the shop open already, it gets them. Answers whether this one is to open its window.
pub(crate) fn open<R: Runtime>(app: &App<R>) -> Result<bool, tauri::Error> {
    let folder = folder(app)?;
    let files: Vec<PathBuf> = arguments().collect();
    let book = Arc::new(Wearbook::open(&folder));
    match &*book {
        Err(error) if error.code == "shop-open" && second_window::hand_over(&folder, &files) => return Ok(false),
        Err(_) => {}
        Ok(open) => {
            settle(open);
            for file in &files {
                arrive(open, file);
            }
            second_window::listen(app.handle(), &folder);
        }
    }
    app.manage(Book(Arc::clone(&book)));
    app.manage(Shop(book));
    Ok(true)
}

/// What stands on the command line, but for options, from wherever it was started.
fn arguments() -> impl Iterator<Item = PathBuf> {
    let is_option = |argument: &OsString| argument.as_encoded_bytes().starts_with(b"-");
    let files = std::env::args_os().skip(1).filter(move |argument| !is_option(argument));
    files.map(|file| std::path::absolute(&file).unwrap_or(file.into()))
}

/// The system opens a file with the program. The page asks what has come when it is told so, and when it comes to the front.
fn arrive(book: &Wearbook, file: &Path) {
    if let Err(error) = book.arrive(file) {
        eprintln!("{}", error.message);
    }
}

/// The page looks at once.
pub(crate) fn tell_page<R: Runtime>(app: &AppHandle<R>) {
    for window in app.webview_windows().values() {
        // A page that is not there yet asks by itself.
        let _ = window.eval("dispatchEvent(new Event('arrived'))");
    }
}

/// Files that a phone or a Mac opens with the program, while it runs or at its start.
#[cfg(any(target_os = "macos", target_os = "ios", target_os = "android"))]
pub(crate) fn opened<R: Runtime>(app: &AppHandle<R>, addresses: Vec<tauri::Url>) {
    use tauri_plugin_fs::{FilePath, FsExt, OpenOptions};
    let (app, shop) = (app.clone(), app.state::<Shop>().inner().clone());
    // The window's thread must not wait for the disk.
    tauri::async_runtime::spawn_blocking(move || {
        let Ok(book) = shop.book() else { return };
        for address in addresses {
            let name = PathBuf::from(address.path());
            // It is lent for now only, and may be no path at all.
            let mut options = OpenOptions::new();
            options.read(true);
            match app.fs().open(FilePath::Url(address), options).map(|mut file| book.arrive_copied(&name, &mut file)) {
                Ok(Ok(_)) => {}
                Ok(Err(error)) => eprintln!("{}", error.message),
                // The page says of which it could not be read.
                Err(_) => arrive(book, &name),
            }
        }
        tell_page(&app);
    });
}

/// A camera that was open when an earlier run ended is open no longer: what it took is offered.
fn settle(book: &Wearbook) {
    if let Err(error) = book.settle() {
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
