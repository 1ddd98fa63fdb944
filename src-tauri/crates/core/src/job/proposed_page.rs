//! What the customer read beside the jobs when these were proposed: kept with the proposal, so that what stands above a
//! signature is what was signed.

use serde::{Deserialize, Serialize};

use super::refused::{MAX_TEXT, Refused, check_length};
use super::{Markup, PhotoId};
use crate::wear::{Grade, Zone, ZoneMap};

/// The words and pictures of the customer's page that are read off the engine, not off the bill.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct ProposedPage {
    /// What to do about the engine as a whole.
    pub advice: String,
    /// What the customer told, each with what was found.
    pub told: Vec<ToldAndFound>,
    /// What was found, in sentences.
    pub found: Vec<String>,
    /// How it happened, from how it got in to what was noticed.
    pub how: Vec<Link>,
    /// What else is likely, each in a sentence.
    pub besides: Vec<String>,
    /// What was shown.
    pub shown: Vec<ProposedPicture>,
    /// Where there was more than one way.
    pub choices: Vec<Choice>,
    /// What the total was compared with, in sentences.
    pub beside: Vec<String>,
    /// What had not been examined.
    pub not_examined: String,
}

/// A complaint and what was found of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ToldAndFound {
    /// What the customer noticed.
    pub told: String,
    /// Whether what was found explains it, in a word or two, with a capital first letter.
    pub answer: String,
    /// What was found, in a sentence; may be empty.
    pub found: String,
}

/// A link of the chain from the way in to the complaint.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Link {
    /// Which link: "How it got in".
    pub head: String,
    /// In words.
    pub words: String,
}

/// Where there is more than one way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Choice {
    /// What it is about.
    pub what: String,
    /// The way that is proposed, in words.
    pub proposed: String,
    /// The other way, in words.
    pub other: String,
    /// What the other way costs less or more, in words; empty where it is not known.
    pub saving: String,
    /// The drawback of the other way, in a sentence.
    pub drawback: String,
    /// Which of the two the shop advises, in a sentence.
    pub advice: String,
}

impl Choice {
    /// All of it in sentences.
    pub fn words(&self) -> String {
        let saving = if self.saving.is_empty() { String::new() } else { format!(", {}", self.saving) };
        let Self { what, proposed, other, drawback, advice, .. } = self;
        format!("{what}. Proposed: {proposed}. Instead: {other}{saving}. {drawback} {advice}")
    }
}

/// A photo, or a part that was drawn with its zones, with one sentence.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ProposedPicture {
    /// What it shows, in a sentence.
    pub sentence: String,
    /// What it looks like, in words.
    pub alt: String,
    /// What it is.
    pub of: PictureOf,
}

/// What is shown.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub enum PictureOf {
    /// A photo with what was drawn over it.
    Photo {
        /// Which.
        photo: PhotoId,
        /// What was drawn over it.
        markups: Vec<Markup>,
    },
    /// A drawing.
    Zones {
        /// Which drawing.
        map: ZoneMap,
        /// The marked zones, each with the worst grade that was marked there.
        marked: Vec<(Zone, Grade)>,
    },
}

impl ProposedPage {
    /// The page is written by the program: it is refused only where it can't be one.
    pub(super) fn check(&self) -> Result<(), Refused> {
        const MOST: usize = 100;
        let Self { advice, told, found, how, besides, shown, choices, beside, not_examined } = self;
        let counts = [told.len(), found.len(), how.len(), besides.len(), shown.len(), choices.len(), beside.len()];
        if counts.into_iter().any(|count| count > MOST) {
            return Err(Refused(format!("The customer’s page is too long: {MOST} of each at most.")));
        }
        let told = told.iter().flat_map(|row| [&row.told, &row.answer, &row.found]);
        let how = how.iter().flat_map(|link| [&link.head, &link.words]);
        let shown = shown.iter().flat_map(|own| [&own.sentence, &own.alt]);
        let choices = choices
            .iter()
            .flat_map(|own| [&own.what, &own.proposed, &own.other, &own.saving, &own.drawback, &own.advice]);
        let all = [advice, not_examined].into_iter().chain(told).chain(found).chain(how).chain(besides);
        let mut all = all.chain(shown).chain(choices).chain(beside);
        all.try_for_each(|text| check_length("The customer’s page", text, MAX_TEXT))
    }
}
