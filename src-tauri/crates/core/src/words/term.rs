//! The words on which the trade is split by country, and the shop’s choice between them.

use std::borrow::Cow;

use serde::{Deserialize, Serialize};

use super::{capitalised, plural};

/// A thing that the trade calls by two names, by country: common practice.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Term {
    /// What stands on the cam and lifts the valve gear.
    Tappet,
    /// How far a shaft can be pushed along its axis.
    EndFloat,
    /// What joins a piston to its rod.
    PistonPin,
}

/// Whose name for a thing is said.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Usage {
    /// The one of British workshops.
    British,
    /// The one of American workshops.
    American,
}

impl Usage {
    /// Both.
    pub const ALL: [Self; 2] = [Self::British, Self::American];
}

impl Term {
    /// Every term.
    pub const ALL: [Self; 3] = [Self::Tappet, Self::EndFloat, Self::PistonPin];

    /// The name in one usage: singular, lower case.
    pub fn name(self, usage: Usage) -> &'static str {
        match (self, usage) {
            (Self::Tappet, Usage::British) => "tappet",
            (Self::Tappet, Usage::American) => "lifter",
            (Self::EndFloat, Usage::British) => "end float",
            (Self::EndFloat, Usage::American) => "end play",
            (Self::PistonPin, Usage::British) => "gudgeon pin",
            (Self::PistonPin, Usage::American) => "piston pin",
        }
    }

    /// What marks its place in a [`Phrase`].
    fn marker(self) -> &'static str {
        match self {
            Self::Tappet => "tappet",
            Self::EndFloat => "end-float",
            Self::PistonPin => "piston-pin",
        }
    }
}

/// The shop’s choice of words. Each is chosen by itself: shops mix them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case", deny_unknown_fields, default)]
pub struct Terms {
    /// Tappet or lifter.
    pub tappet: Usage,
    /// End float or end play.
    pub end_float: Usage,
    /// Gudgeon pin or piston pin.
    pub piston_pin: Usage,
}

impl Default for Terms {
    /// Tappet, end float, piston pin: what is said where nobody has chosen.
    fn default() -> Self {
        Self { tappet: Usage::British, end_float: Usage::British, piston_pin: Usage::American }
    }
}

impl Terms {
    /// What the shop calls a thing: singular, lower case.
    pub fn name(self, term: Term) -> &'static str {
        term.name(match term {
            Term::Tappet => self.tappet,
            Term::EndFloat => self.end_float,
            Term::PistonPin => self.piston_pin,
        })
    }

    /// What the shop calls several of it, lower case.
    pub fn plural(self, term: Term) -> String {
        plural(self.name(term))
    }
}

/// A text of ours that may hold words of the shop’s choice. Their places are marked: `{tappet}`, `{end-float}`,
/// `{piston-pin}`, with an *s* for the plural and a capital where a sentence begins. It can’t be shown before it is said
/// in the shop’s words; and since it is ours, what a person typed is never taken for a marker.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Phrase(pub(crate) &'static str);

impl Phrase {
    /// In the shop’s words.
    pub fn said(self, terms: Terms) -> Cow<'static, str> {
        if !self.0.contains('{') {
            return Cow::Borrowed(self.0);
        }
        let mut said = String::with_capacity(self.0.len());
        let mut rest = self.0;
        while let Some((before, marker, after)) = next_marker(rest) {
            said.push_str(before);
            match word(marker, terms) {
                Some(word) => said.push_str(&word),
                None => said.push_str(marker),
            }
            rest = after;
        }
        said.push_str(rest);
        Cow::Owned(said)
    }
}

/// What stands before the next marker, its name, and what follows it.
fn next_marker(text: &str) -> Option<(&str, &str, &str)> {
    let (before, marked) = text.split_once('{')?;
    let (marker, after) = marked.split_once('}')?;
    Some((before, marker, after))
}

/// What a marker stands for.
fn word(marker: &str, terms: Terms) -> Option<String> {
    let named = marker.to_lowercase();
    let (singular, is_plural) = named.strip_suffix('s').map_or((named.as_str(), false), |singular| (singular, true));
    let term = Term::ALL.into_iter().find(|term| term.marker() == singular)?;
    let name = terms.name(term);
    let name = if is_plural { terms.plural(term) } else { name.to_owned() };
    Some(if marker.starts_with(char::is_uppercase) { capitalised(&name) } else { name })
}

#[cfg(test)]
mod tests {
    use super::*;

    const OTHER: Terms = Terms { tappet: Usage::American, end_float: Usage::American, piston_pin: Usage::British };

    #[track_caller]
    fn says(text: &'static str, by_default: &str, otherwise: &str) {
        assert_eq!(Phrase(text).said(Terms::default()), by_default);
        assert_eq!(Phrase(text).said(OTHER), otherwise);
    }

    #[test]
    fn a_phrase_is_said_in_the_words_that_were_chosen() {
        says("cam lobe", "cam lobe", "cam lobe");
        says("{tappet}", "tappet", "lifter");
        says("Renew the {tappets}.", "Renew the tappets.", "Renew the lifters.");
        says(
            "{Tappets} turn; the {end-float} is right.",
            "Tappets turn; the end float is right.",
            "Lifters turn; the end play is right.",
        );
        says("broken ring or {piston-pin}", "broken ring or piston pin", "broken ring or gudgeon pin");
    }

    #[test]
    fn terms_are_kept_by_their_usage() {
        let json = serde_json::json!({ "tappet": "american", "end-float": "american", "piston-pin": "british" });
        assert_eq!(serde_json::to_value(OTHER).unwrap(), json);
        assert_eq!(serde_json::from_value::<Terms>(serde_json::json!({})).unwrap(), Terms::default());
    }
}
