//! The desktop program; everything is in the library, which the phone projects link too.

// A release on Windows opens no console beside its window.
#![cfg_attr(not(debug_assertions), windows_subsystem = "windows")]

fn main() {
    wearbook_shell::run();
}
