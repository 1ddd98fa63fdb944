//! Tells Tauri which commands exist, so that the page can call those and no others.
//!
//! The names come from the two lists that the program itself is made from, so they can't differ from it.

include!("crates/app/src/actions.rs");
include!("src/shell_commands.rs");

macro_rules! names {
    ($($name:ident),* $(,)?) => { &[$(stringify!($name)),*] };
}
const ACTIONS: &[&str] = actions!(names);

fn main() {
    println!("cargo::rerun-if-changed=crates/app/src/actions.rs");
    println!("cargo::rerun-if-changed=src/shell_commands.rs");
    // The manifest wants names that live as long as the program; a build script ends soon.
    let commands: &'static [&'static str] = [ACTIONS, SHELL_COMMANDS].concat().leak();
    let manifest = tauri_build::AppManifest::new().commands(commands);
    if let Err(error) = tauri_build::try_build(tauri_build::Attributes::new().app_manifest(manifest)) {
        // Cargo shows lines of this form as an error and stops.
        println!("cargo::error={error:#}");
    }
}
