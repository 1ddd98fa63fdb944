/// What the page may ask of the device. The build script of the plugin reads this list too.
pub const COMMANDS: &[&str] = &["can", "take_photo", "share", "keep_awake", "tick"];
