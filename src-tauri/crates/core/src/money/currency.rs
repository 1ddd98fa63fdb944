//! Currencies and amounts: whole minor units, never a fraction.

use std::fmt;

use serde::{Deserialize, Serialize};

/// A currency by its three letters (ISO 4217).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[cfg_attr(feature = "schema", ts(type = "string"))]
#[serde(try_from = "String", into = "String")]
pub struct Currency([u8; 3]);

/// An amount in minor units of a currency that stands beside it: cents, or whole yen.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Money(i64);

/// Text that is no amount or no currency: what is wrong, what would be right.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct NotMoney(pub String);

/// Currencies without minor units, and with three decimals (ISO 4217, list one, from memory).
const NO_DECIMALS: [&str; 14] =
    ["BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "VND", "VUV", "XPF"];
const THREE_DECIMALS: [&str; 7] = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"];

impl Currency {
    /// The currencies whose amounts have other than two decimals, with how many they have.
    pub fn uneven() -> impl Iterator<Item = (&'static str, u32)> {
        NO_DECIMALS.into_iter().map(|code| (code, 0)).chain(THREE_DECIMALS.into_iter().map(|code| (code, 3)))
    }

    /// The code, three capital letters.
    pub fn code(&self) -> &str {
        std::str::from_utf8(&self.0).unwrap_or("XXX")
    }

    /// Decimals of an amount: 0, 2 or 3.
    pub fn decimals(self) -> u32 {
        match self.code() {
            code if NO_DECIMALS.contains(&code) => 0,
            code if THREE_DECIMALS.contains(&code) => 3,
            _ => 2,
        }
    }

    /// An amount in this currency: "1 234.50 EUR".
    pub fn show(self, money: Money) -> String {
        format!("{}\u{a0}{}", self.figures(money), self.code())
    }

    /// The figures alone, for a column that names the currency at its head: "1 234.50".
    pub fn figures(self, money: Money) -> String {
        let scale = 10_u64.pow(self.decimals());
        let (whole, minor) = (money.0.unsigned_abs() / scale, money.0.unsigned_abs() % scale);
        let sign = if money.0 < 0 { "−" } else { "" };
        let decimals = usize::try_from(self.decimals()).unwrap_or(0);
        let fraction = if decimals == 0 { String::new() } else { format!(".{minor:0decimals$}") };
        format!("{sign}{}{fraction}", grouped(whole))
    }

    /// Reads what people type: `1234.5`, `1 234,50`.
    ///
    /// # Errors
    /// [`NotMoney`] when it is no number, has more decimals than the currency, or is larger than any rebuild.
    pub fn read(self, text: &str) -> Result<Money, NotMoney> {
        let shown: String = text.trim().chars().take(40).collect();
        let refuse = |why: String| Err(NotMoney(format!("“{shown}” {why}")));
        let plain: String = text.chars().filter(|c| !c.is_whitespace() && *c != '\u{a0}').collect();
        let plain = plain.strip_suffix(self.code()).unwrap_or(&plain);
        let (whole, fraction) = plain.split_once(['.', ',']).unwrap_or((plain, ""));
        let digits = |text: &str| text.bytes().all(|b| b.is_ascii_digit());
        if !digits(whole) || !digits(fraction) || (whole.is_empty() && fraction.is_empty()) || whole.len() > 15 {
            return refuse("is no amount: type a number such as 1234.50.".into());
        }
        let decimals = usize::try_from(self.decimals()).unwrap_or(0);
        if fraction.len() > decimals {
            return refuse(format!("has too many decimals: {} has {decimals}.", self.code()));
        }
        let padded = format!("{whole}{fraction:0<decimals$}");
        match padded.parse::<i64>() {
            Ok(minor) if minor <= Money::LARGEST.0 => Ok(Money(minor)),
            _ => refuse("is more than any rebuild costs: check the number.".into()),
        }
    }
}

impl Money {
    /// The largest amount: a rebuild never costs that, and sums of thousands stay exact.
    pub const LARGEST: Self = Self(1_000_000_000_000);

    /// From minor units.
    pub const fn from_minor(minor: i64) -> Self {
        Self(minor)
    }

    /// In minor units.
    pub const fn minor(self) -> i64 {
        self.0
    }

    /// So many times.
    pub fn times(self, count: i64) -> Self {
        Self(self.0.saturating_mul(count))
    }

    /// A share in whole parts, rounded once to the minor unit, halves away from zero.
    pub fn share(self, numerator: i64, denominator: i64) -> Self {
        let (product, divisor) = (i128::from(self.0) * i128::from(numerator), i128::from(denominator.max(1)));
        let half = if product < 0 { -divisor / 2 } else { divisor / 2 };
        Self(i64::try_from((product + half) / divisor).unwrap_or(i64::MAX))
    }

    /// Whether it lies between zero and the most that any rebuild costs.
    pub fn is_price(self) -> bool {
        (0..=Self::LARGEST.0).contains(&self.0)
    }
}

impl std::ops::Add for Money {
    type Output = Self;

    fn add(self, other: Self) -> Self {
        Self(self.0.saturating_add(other.0))
    }
}

impl std::ops::Sub for Money {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self(self.0.saturating_sub(other.0))
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        amounts.fold(Self::default(), std::ops::Add::add)
    }
}

/// Thousands apart, so that columns line up.
fn grouped(whole: u64) -> String {
    let digits = whole.to_string();
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            text.push('\u{202f}');
        }
        text.push(digit);
    }
    text
}

impl TryFrom<String> for Currency {
    type Error = NotMoney;

    fn try_from(text: String) -> Result<Self, NotMoney> {
        match <[u8; 3]>::try_from(text.as_bytes()) {
            Ok(code) if code.iter().all(u8::is_ascii_uppercase) => Ok(Self(code)),
            _ => {
                let shown: String = text.chars().take(10).collect();
                Err(NotMoney(format!("“{shown}” is no currency: write its three letters, such as EUR or JPY.")))
            }
        }
    }
}

impl From<Currency> for String {
    fn from(currency: Currency) -> Self {
        currency.code().to_owned()
    }
}

impl Default for Currency {
    /// No currency in particular, until the shop says which (ISO 4217 reserves XXX for that).
    fn default() -> Self {
        Self(*b"XXX")
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Currency {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Currency".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string", "pattern": "^[A-Z]{3}$", "description": "A currency by its three letters (ISO 4217).",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn currency(code: &str) -> Currency {
        Currency::try_from(code.to_owned()).unwrap()
    }

    #[track_caller]
    fn reads(code: &str, text: &str, minor: i64, shown: &str) {
        let money = currency(code).read(text).unwrap();
        assert_eq!(money.minor(), minor);
        assert_eq!(currency(code).show(money).replace(['\u{a0}', '\u{202f}'], " "), shown);
    }

    #[test]
    fn currencies_with_none_two_and_three_decimals() {
        reads("EUR", "1234.5", 123_450, "1 234.50 EUR");
        reads("EUR", "12 345,60", 1_234_560, "12 345.60 EUR");
        reads("JPY", "120000", 120_000, "120 000 JPY");
        reads("KWD", "1.5", 1_500, "1.500 KWD");
        reads("USD", ".05", 5, "0.05 USD");
    }

    #[test]
    fn what_is_no_amount_is_refused() {
        for (code, text) in
            [("EUR", ""), ("EUR", "1.234"), ("JPY", "1.5"), ("EUR", "-5"), ("EUR", "1e5"), ("EUR", "99999999999999")]
        {
            let refusal = currency(code).read(text).unwrap_err().0;
            assert!(refusal.contains(": "), "says what would be right: {refusal}");
        }
        assert!(Currency::try_from("euro".to_owned()).is_err());
    }

    #[test]
    fn shares_round_halves_away_from_zero() {
        assert_eq!(Money(5).share(1, 2).minor(), 3);
        assert_eq!(Money(-5).share(1, 2).minor(), -3);
        assert_eq!(Money(100).share(19, 100).minor(), 19);
    }
}
