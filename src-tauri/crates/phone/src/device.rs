//! A phone: hands over to Kotlin or Swift, one thing at a time.

use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use tauri::plugin::mobile::PluginInvokeError;
use tauri::plugin::{PluginApi, PluginHandle};
use tauri::{AppHandle, Runtime};
use wearbook_app::phone::{Can, Parcel, Phone, Refused};

#[cfg(target_os = "ios")]
tauri::ios_plugin_binding!(init_plugin_phone);

/// Makes Kotlin’s or Swift’s side.
pub(crate) fn register<R: Runtime>(
    _: &AppHandle<R>,
    api: PluginApi<R, ()>,
) -> Result<Native<R>, Box<dyn std::error::Error>> {
    #[cfg(target_os = "android")]
    let handle = api.register_android_plugin("app.wearbook.phone", "PhonePlugin")?;
    #[cfg(target_os = "ios")]
    let handle = api.register_ios_plugin(init_plugin_phone)?;
    Ok(Native { handle, open: Mutex::new(false) })
}

/// The phone.
pub(crate) struct Native<R: Runtime> {
    handle: PluginHandle<R>,
    /// Whether another program is in front. Tauri keeps one callback for all: a second launch would take the answer of
    /// the first.
    open: Mutex<bool>,
}

impl<R: Runtime> std::fmt::Debug for Native<R> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Native").field("open", &self.open).finish_non_exhaustive()
    }
}

#[derive(Serialize)]
#[serde(rename_all = "camelCase")]
struct TakePhoto<'a> {
    path: &'a Path,
    room: u64,
}

#[derive(Serialize)]
struct Share<'a> {
    paths: &'a [PathBuf],
    mime: &'a str,
    title: &'a str,
    text: &'a str,
}

#[derive(Serialize)]
struct KeepAwake {
    on: bool,
}

/// What Kotlin and Swift say of the share sheet.
#[derive(Deserialize)]
struct Chosen {
    chosen: bool,
}

impl<R: Runtime> Phone for Native<R> {
    fn can(&self) -> Can {
        // Whether there is a camera is known only once it has been asked to open.
        Can { take_photo: true, share: true, keep_awake: true, tick: true }
    }

    fn take_photo(&self, file: &Path, room: u64) -> Result<(), Refused> {
        self.alone(Refused::CameraOpen, || self.run::<()>("takePhoto", TakePhoto { path: file, room }))
    }

    fn share(&self, Parcel { files, mime, title, text }: &Parcel) -> Result<bool, Refused> {
        let share = Share { paths: files, mime, title, text };
        self.alone(Refused::ShareOpen, || self.run::<Chosen>("share", share)).map(|Chosen { chosen }| chosen)
    }

    fn keep_awake(&self, on: bool) -> Result<(), Refused> {
        self.run("keepAwake", KeepAwake { on })
    }

    fn tick(&self) -> Result<(), Refused> {
        self.run("tick", ())
    }
}

impl<R: Runtime> Native<R> {
    fn alone<T>(&self, else_refused: Refused, launch: impl FnOnce() -> Result<T, Refused>) -> Result<T, Refused> {
        let set = |to: bool| std::mem::replace(&mut *self.open.lock().unwrap_or_else(PoisonError::into_inner), to);
        if set(true) {
            return Err(else_refused);
        }
        let launched = launch();
        set(false);
        launched
    }

    fn run<T: DeserializeOwned>(&self, command: &str, payload: impl Serialize) -> Result<T, Refused> {
        self.handle.run_mobile_plugin(command, payload).map_err(|error| match error {
            PluginInvokeError::InvokeRejected(said) => Refused::from_code(said.code.as_deref().unwrap_or_default()),
            other => {
                eprintln!("The phone could not be asked to {command}: {other}");
                Refused::Failed
            }
        })
    }
}
