//! The same actions as the app, without a window.
fn main() {}
