/// What only a shell can do, because it asks the operating system. `build.rs` reads this list too.
pub(crate) const SHELL_COMMANDS: &[&str] =
    &["document_save", "document_open", "archive_save", "sheet_save", "shop_save", "backup_choose", "backup_restore"];
