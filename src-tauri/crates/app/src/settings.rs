//! What the shop has set.

use serde::{Deserialize, Serialize};
use wearbook_core::document::PaperSize;
use wearbook_core::words::Terms;
use wearbook_store::Ledger;

use crate::Error;
use crate::look::{Look, TextSize};
use crate::shelf::json;

/// The shop's settings. What has not been set is empty.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(deny_unknown_fields, default)]
pub struct Settings {
    /// The shop's name, for the head of its papers.
    pub shop_name: String,
    /// The shop's address, one or more lines.
    pub shop_address: String,
    /// The number at which the shop is called, for customers and machine shops.
    pub shop_phone: String,
    /// Its own terms, for the sheet that is handed over at the end.
    pub shop_conditions: String,
    /// Where the page was, to go back there after the system has closed the app.
    pub last_screen: String,
    /// What papers are printed on.
    pub paper: PaperSize,
    /// The words that it uses where the trade is split by country.
    pub terms: Terms,
    /// How light or dark the page is.
    pub look: Look,
    /// How large the page's text is, in per cent.
    pub text_size: TextSize,
    /// Whether a single key goes to a screen or a step; unless said otherwise, it does.
    pub keys: bool,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            shop_name: String::new(),
            shop_address: String::new(),
            shop_phone: String::new(),
            shop_conditions: String::new(),
            last_screen: String::new(),
            paper: PaperSize::default(),
            terms: Terms::default(),
            look: Look::default(),
            text_size: TextSize::default(),
            keys: true,
        }
    }
}

/// The longest setting, in characters.
const MAX_LENGTH: usize = 1000;
/// The written form of keys that were switched off.
const KEYS_OFF: &str = "off";

impl Settings {
    pub(crate) fn load(ledger: &Ledger<'_>) -> Result<Self, Error> {
        let mut kept = ledger.settings()?;
        let mut take = |key: &str| kept.remove(key).unwrap_or_default();
        Ok(Self {
            shop_name: take("shop_name"),
            shop_address: take("shop_address"),
            shop_phone: take("shop_phone"),
            shop_conditions: take("shop_conditions"),
            last_screen: take("last_screen"),
            paper: PaperSize::named(&take("paper")),
            // A choice that only a newer version knows is as good as none.
            terms: serde_json::from_str(&take("terms")).unwrap_or_default(),
            look: Look::named(&take("look")),
            text_size: TextSize::written(&take("text_size")),
            keys: take("keys") != KEYS_OFF,
        })
    }

    pub(crate) fn save(&self, ledger: &Ledger<'_>) -> Result<(), Error> {
        ledger.set_setting("shop_name", &self.shop_name)?;
        ledger.set_setting("shop_address", &self.shop_address)?;
        ledger.set_setting("shop_phone", &self.shop_phone)?;
        ledger.set_setting("shop_conditions", &self.shop_conditions)?;
        ledger.set_setting("last_screen", &self.last_screen)?;
        ledger.set_setting("paper", self.paper.name())?;
        ledger.set_setting("terms", &json(&self.terms)?)?;
        ledger.set_setting("look", self.look.name())?;
        ledger.set_setting("text_size", &self.text_size.0.to_string())?;
        ledger.set_setting("keys", if self.keys { "on" } else { KEYS_OFF })?;
        Ok(())
    }

    pub(crate) fn check(&self) -> Result<(), Error> {
        let named = [
            ("The shop’s name", &self.shop_name),
            ("The shop’s address", &self.shop_address),
            ("The shop’s telephone", &self.shop_phone),
            ("The shop’s terms", &self.shop_conditions),
            ("The last screen", &self.last_screen),
        ];
        for (name, text) in named {
            let length = text.chars().count();
            if length > MAX_LENGTH {
                let sentence = format!("{name} has {length} characters: {MAX_LENGTH} at most.");
                return Err(Error::new("setting-refused", sentence));
            }
        }
        if !self.text_size.is_possible() {
            let sentence = format!("A text size of {} per cent: 100 to 200 can be chosen.", self.text_size.0);
            return Err(Error::new("setting-refused", sentence));
        }
        Ok(())
    }
}
