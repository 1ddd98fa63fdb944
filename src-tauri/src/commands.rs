//! The page's commands. Each is an action of [`wearbook_app`] or one of the few that ask the operating system.
//!
//! There is no function per action: the list of actions is the list of commands, and `build.rs` gives the same list
//! to Tauri, which lets no other name through to here (`capabilities/main.json` grants each by name).

use serde_json::Value;
use tauri::ipc::{Invoke, InvokeError, InvokeResponseBody};
use tauri::{AppHandle, Manager, Runtime};
use wearbook_app::{ACTIONS, Answer, Error};

use crate::backups;
use crate::documents;
use crate::payload::Payload;
use crate::shell_commands::SHELL_COMMANDS;
use crate::shop::Shop;

/// Answers a command of the page away from the thread of the window; `false` if there is no such command.
pub(crate) fn answer<R: Runtime>(invoke: Invoke<R>) -> bool {
    let Invoke { message, resolver, .. } = invoke;
    let name = message.command().to_owned();
    if !ACTIONS.contains(&name.as_str()) && !SHELL_COMMANDS.contains(&name.as_str()) {
        return false;
    }
    let app = message.webview_ref().app_handle().clone();
    let payload = Payload::read(message.payload(), message.headers());
    resolver.respond_async_serialized(async move {
        let done = tauri::async_runtime::spawn_blocking(move || perform(&app, &name, payload?));
        match done.await {
            Ok(Ok(answer)) => into_body(answer),
            Ok(Err(error)) => Err(into_invoke_error(&error)),
            Err(stopped) => Err(InvokeError::from_error(stopped)),
        }
    });
    true
}

fn perform<R: Runtime>(app: &AppHandle<R>, name: &str, Payload { arguments, bytes }: Payload) -> Result<Answer, Error> {
    let shop = app.state::<Shop>();
    match name {
        "document_save" => documents::save(app, &shop, "document_get", arguments),
        "document_open" => documents::open(app, &shop, arguments),
        "archive_save" => documents::save_archive(app, &shop, arguments),
        "shop_save" => backups::save_shop(app, &shop, arguments),
        "backup_choose" => backups::choose(app, &shop),
        "backup_restore" => backups::restore(app, &shop, arguments),
        "sheet_save" => documents::save(app, &shop, "sheet_export", arguments),
        action => shop.act(action, arguments, bytes),
    }
}

fn into_body(answer: Answer) -> Result<InvokeResponseBody, InvokeError> {
    Ok(match answer {
        Answer::Json(json) => InvokeResponseBody::Json(json),
        Answer::Bytes { bytes, .. } => InvokeResponseBody::Raw(bytes),
    })
}

fn into_invoke_error(error: &Error) -> InvokeError {
    InvokeError(serde_json::to_value(error).unwrap_or(Value::Null))
}
