//! Tells Tauri which commands the plugin has, and where its Kotlin and Swift stand.

include!("../app/src/phone/commands.rs");

fn main() {
    println!("cargo::rerun-if-changed=../app/src/phone/commands.rs");
    let built = tauri_plugin::Builder::new(COMMANDS).android_path("android").ios_path("ios").try_build();
    if let Err(error) = built {
        // Cargo shows lines of this form as an error and stops.
        println!("cargo::error={error:#}");
    }
}
