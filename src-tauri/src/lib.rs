//! The shell: a window on desktops, the phone projects, commands that forward to `wearbook-app`.
//!
//! It decides nothing about engines. It finds the folder of the shop's data, opens it, hands the page's commands and
//! picture requests to [`wearbook_app`], and asks the operating system where a document shall go.
//!
//! What is *not* here: any rule of the trade, any SQL, any knowledge of what an action's arguments mean.

mod backups;
mod commands;
mod documents;
mod payload;
mod photos;
mod second_window;
mod shell_commands;
mod shop;
mod window;

/// Runs the program until its window is closed.
#[allow(clippy::exit, reason = "the window library's own macro ends the process where it can't go on")]
#[cfg_attr(mobile, tauri::mobile_entry_point)]
pub fn run() {
    let builder = tauri::Builder::default()
        .plugin(tauri_plugin_dialog::init())
        .plugin(tauri_plugin_fs::init())
        .plugin(tauri_plugin_opener::Builder::new().open_js_links_on_click(false).build())
        .plugin(wearbook_phone::init())
        .register_asynchronous_uri_scheme_protocol("photo", photos::answer)
        .invoke_handler(commands::answer)
        .setup(|app| {
            if shop::open(app)? {
                window::open(app)?;
            } else {
                app.handle().exit(0);
            }
            Ok(())
        });

    // The system ends the page's process of a program in the background when memory is short; without this the
    // window stays white. The page finds its way back by itself: it restores its last screen from the settings.
    #[cfg(any(target_os = "macos", target_os = "ios"))]
    let builder = builder.on_web_content_process_terminate(window::reload);

    #[cfg(desktop)]
    let builder = builder.on_window_event(|window, event| {
        if let tauri::WindowEvent::CloseRequested { api, .. } = event {
            backups::before_closing(window, api);
        }
    });

    #[cfg(mobile)]
    let builder = builder.on_window_event(|window, event| {
        if matches!(event, tauri::WindowEvent::Suspended) {
            shop::rest(window);
        }
    });

    match builder.build(tauri::generate_context!()) {
        Ok(app) => app.run(heed),
        Err(error) => eprintln!("Wearbook could not start: {error}"),
    }
}

/// What the system tells the program.
fn heed<R: tauri::Runtime>(app: &tauri::AppHandle<R>, event: tauri::RunEvent) {
    #[cfg(any(target_os = "macos", target_os = "ios", target_os = "android"))]
    if let tauri::RunEvent::Opened { urls } = event {
        shop::opened(app, urls);
    }
    #[cfg(not(any(target_os = "macos", target_os = "ios", target_os = "android")))]
    let _ = (app, event);
}
