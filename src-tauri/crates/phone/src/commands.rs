//! From the page to the device and back.

use std::path::PathBuf;

use serde_json::Value;
use tauri::ipc::{Invoke, InvokeBody, InvokeError, InvokeResponseBody};
use tauri::{AppHandle, Manager, Runtime};
use wearbook_app::Error;
use wearbook_app::phone::{self, COMMANDS};

use crate::{Book, Device};

/// Answers a command of the page away from the thread of the window: each waits for the person. `false` if there is no
/// such command.
pub(crate) fn answer<R: Runtime>(invoke: Invoke<R>) -> bool {
    let Invoke { message, resolver, .. } = invoke;
    let name = message.command().to_owned();
    if !COMMANDS.contains(&name.as_str()) {
        return false;
    }
    let app = message.webview_ref().app_handle().clone();
    let arguments = arguments(message.payload());
    resolver.respond_async_serialized(async move {
        let done = tauri::async_runtime::spawn_blocking(move || perform(&app, &name, arguments?));
        match done.await {
            Ok(Ok(answer)) => Ok(InvokeResponseBody::Json(answer.to_string())),
            Ok(Err(error)) => Err(InvokeError(serde_json::to_value(error).unwrap_or(Value::Null))),
            Err(stopped) => Err(InvokeError::from_error(stopped)),
        }
    });
    true
}

/// The form in which the page sends every command.
fn arguments(body: &InvokeBody) -> Result<Value, Error> {
    match body {
        InvokeBody::Json(json) => Ok(json.get("arguments").cloned().unwrap_or(Value::Null)),
        InvokeBody::Raw(_) => Err(Error::new("bytes-unexpected", "The device takes no bytes from the page.")),
    }
}

fn perform<R: Runtime>(app: &AppHandle<R>, name: &str, arguments: Value) -> Result<Value, Error> {
    let broken = |why: &str| Error::new("broken", why);
    let book = app.try_state::<Book>().ok_or_else(|| broken("The shop’s data is not open yet."))?;
    let device = app.try_state::<Device>().ok_or_else(|| broken("The device is not ready yet."))?;
    let outbox =
        outbox(app).map_err(|error| broken(&format!("This device has no folder to lend files from: {error}.")))?;
    match &*book.0 {
        Ok(book) => phone::answer(book, &*device.0, &outbox, name, arguments),
        Err(error) => Err(error.clone()),
    }
}

/// Whence other programs are lent files. Android lends from here and from where the camera writes; see
/// `android/src/main/res/xml/phone_files.xml`.
pub(crate) fn outbox<R: Runtime>(app: &AppHandle<R>) -> Result<PathBuf, tauri::Error> {
    Ok(app.path().app_cache_dir()?.join("share"))
}
