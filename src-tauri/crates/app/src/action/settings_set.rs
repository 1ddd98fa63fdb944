//! Changes the shop's settings.

use serde::Deserialize;

use crate::{Error, Settings, Wearbook};

/// The settings, all of them.
#[derive(Debug, Clone, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields)]
pub struct Arguments {
    /// What they are to be; what is missing becomes empty.
    pub settings: Settings,
}

/// The settings as they now are.
pub type Reply = Settings;

/// Sets them.
///
/// # Errors
/// `setting-refused` if one is too long; what the store says.
pub fn act(book: &Wearbook, Arguments { settings }: Arguments) -> Result<Reply, Error> {
    settings.check()?;
    book.store.write(|ledger| settings.save(ledger))?;
    Ok(settings)
}
