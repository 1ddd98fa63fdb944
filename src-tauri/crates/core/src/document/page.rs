//! What stands on the customer's page, free of any layout.

use serde::Serialize;

use super::picture::Picture;
use super::zone_drawing::ZoneDrawing;
use crate::date::Date;
use crate::job::{Consent, Stroke};
use crate::money::Need;

/// One page for somebody who knows nothing of engines and has to decide.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CustomersPage {
    /// The shop: its name, then its address; may be empty.
    pub shop: Vec<String>,
    /// Whose engine and which: names and values.
    pub facts: Vec<(String, String)>,
    /// What to do about the engine as a whole, in one or two sentences.
    pub advice: String,
    /// What the customer told, each with what was found; may be empty.
    pub told: Vec<ToldAndFound>,
    /// What was found, in sentences.
    pub found: Vec<String>,
    /// The photos that show it best; at most three.
    pub shown: Vec<Shown>,
    /// How it happened, from how it got in to what was noticed; empty while no cause is named.
    pub how: Vec<Link>,
    /// What else is likely, each in a sentence.
    pub besides: Vec<String>,
    /// The jobs to decide on, in their order; may be empty.
    pub jobs: Vec<JobToDecide>,
    /// Where there is more than one way; may be empty.
    pub choices: Vec<Choice>,
    /// What it costs; none before the shop has entered a price.
    pub total: Option<Total>,
    /// What was not examined, in sentences; empty where all was.
    pub not_examined: String,
    /// What is asked of the customer besides an answer to the jobs, each in a sentence; may be empty.
    pub asked: Vec<String>,
    /// How the proposal stands.
    pub proposal: ProposalHead,
}

/// A complaint and what was found of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ToldAndFound {
    /// What the customer noticed.
    pub told: String,
    /// Whether what was found explains it, in a word or two.
    pub answer: String,
    /// What was found, in a sentence; may be empty.
    pub found: String,
}

/// What shows a part, with one sentence.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Shown {
    /// What it looks like.
    pub image: Image,
    /// What it shows.
    pub sentence: String,
}

/// What a part looks like.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub enum Image {
    /// A photo.
    Photo(Picture),
    /// Where nobody took one: the part drawn with the zones that were marked.
    Zones(ZoneDrawing),
}

impl Shown {
    /// The sentence, and the notes on the photo under their numbers.
    pub fn caption(&self) -> String {
        let notes = self.photo().map(Picture::notes).unwrap_or_default();
        [vec![self.sentence.clone()], notes].concat().join("  ")
    }

    /// The photo; none where it is drawn.
    pub fn photo(&self) -> Option<&Picture> {
        match &self.image {
            Image::Photo(picture) => Some(picture),
            Image::Zones(_) => None,
        }
    }
}

/// A link of the chain from the way in to the complaint.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Link {
    /// Which link: "How it got in".
    pub head: &'static str,
    /// In words.
    pub words: String,
}

/// A job as it is decided on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct JobToDecide {
    /// Its number on the proposal.
    pub number: u32,
    /// Its title.
    pub title: String,
    /// Why, in a clause.
    pub because: String,
    /// What happens if it is left.
    pub if_left: String,
    /// How much it is needed.
    pub need: Need,
    /// What it costs without tax, in figures without the currency; empty without a price.
    pub price: String,
    /// Whether some of it has no price yet, so that it costs at least so much.
    pub at_least: bool,
    /// What the customer answered; none before there was an answer.
    pub answer: Option<Consent>,
}

/// Where there is more than one way.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
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

/// What it costs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Total {
    /// The currency's code.
    pub currency: String,
    /// Without tax.
    pub net: String,
    /// The tax.
    pub tax: String,
    /// The rate of tax, in words.
    pub tax_rate: String,
    /// With tax.
    pub gross: String,
    /// Whether something has no price yet.
    pub at_least: bool,
    /// What is not in it, in a sentence; may be empty.
    pub left_out: String,
    /// How it compares with another engine and with the first estimate, in sentences.
    pub beside: Vec<String>,
}

/// How the proposal stands.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
pub struct ProposalHead {
    /// Its number; 0 while nothing has been proposed.
    pub number: usize,
    /// The day on which it was made, if that is known.
    pub made: Option<Date>,
    /// The last day on which it holds, if the shop has set one.
    pub valid_until: Option<Date>,
    /// What has changed since it was answered and is not agreed to, each in a sentence.
    pub since: Vec<String>,
    /// Who answered and how; empty while it is open.
    pub answered: String,
    /// The signature.
    pub signature: Vec<Stroke>,
}

impl ProposalHead {
    /// Whether it waits for an answer.
    pub fn is_open(&self) -> bool {
        self.number > 0 && self.answered.is_empty()
    }
}
