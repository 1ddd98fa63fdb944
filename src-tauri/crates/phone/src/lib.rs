//! The Tauri plugin "wearbook-phone": the camera, the share sheet and the screen of the device on which the page runs.
//!
//! It only passes on. What may be asked and what an answer means is decided in [`wearbook_app::phone`], where it is
//! tested without a device; Kotlin (`android/`) and Swift (`ios/`) do what they are told and answer with a code. On
//! desktops there is none of it, and every command says so by its code: the page then saves and copies instead.

mod commands;
#[cfg(mobile)]
mod device;
mod pictures;

use std::sync::Arc;

use tauri::plugin::{Builder, TauriPlugin};
use tauri::{Manager, Runtime};
use wearbook_app::phone::{Phone, empty_outbox};
use wearbook_app::{Error, Wearbook};

/// The open book, or why it could not be opened. The shell hands it over before the page can ask for anything.
#[derive(Debug, Clone)]
pub struct Book(pub Arc<Result<Wearbook, Error>>);

/// The device under the page.
struct Device(Arc<dyn Phone>);

/// The plugin.
pub fn init<R: Runtime>() -> TauriPlugin<R> {
    Builder::new("wearbook-phone")
        .invoke_handler(commands::answer)
        .setup(|app, api| {
            #[cfg(mobile)]
            let device = device::register(app, api)?;
            #[cfg(desktop)]
            let device = {
                let _ = api;
                wearbook_app::phone::NoPhone
            };
            app.manage(Device(Arc::new(device)));
            // A desktop lends no files.
            if cfg!(mobile) {
                empty_outbox(&commands::outbox(app)?);
                pictures::sweep(app);
            }
            Ok(())
        })
        .build()
}
