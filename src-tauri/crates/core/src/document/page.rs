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

/// A section of the page. Its heading is the same in every form.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Section {
    /// What was told and what was found.
    Found,
    /// How it happened.
    How,
    /// The photos.
    Shown,
    /// The jobs.
    Jobs,
    /// What it costs.
    Costs,
    /// The choices.
    Choices,
    /// What was not examined.
    NotExamined,
    /// What is asked besides.
    Asked,
    /// What has come since.
    Since,
    /// The answer, given or to be given.
    Answer,
}

impl Section {
    /// Every section, in their order.
    pub const ALL: [Self; 10] = [
        Self::Found,
        Self::How,
        Self::Shown,
        Self::Jobs,
        Self::Costs,
        Self::Choices,
        Self::NotExamined,
        Self::Asked,
        Self::Since,
        Self::Answer,
    ];
}

impl CustomersPage {
    /// The heading of a section.
    pub fn heading(&self, section: Section) -> String {
        match section {
            Section::Found if self.told.is_empty() => "What we found".into(),
            Section::Found => "What you told us, what we found".into(),
            Section::How => "How it happened".into(),
            Section::Shown => "In pictures".into(),
            Section::Jobs => match self.proposal.number {
                0 => "What has to be done".into(),
                number => format!("Proposal {number}: what to decide"),
            },
            Section::Costs => "What it costs".into(),
            Section::Choices => "Another way".into(),
            Section::NotExamined => "Not examined".into(),
            Section::Asked => "What we ask you".into(),
            Section::Since => "Not yet agreed".into(),
            Section::Answer if self.proposal.is_open() => "Your answer".into(),
            Section::Answer => "Answered".into(),
        }
    }
}

/// A complaint and what was found of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ToldAndFound {
    /// What the customer noticed.
    pub told: String,
    /// Whether what was found explains it, in a word or two, with a capital first letter.
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

impl JobToDecide {
    /// What it costs, without the currency: "at least 1 234.50", "no price yet".
    pub fn price_words(&self) -> String {
        match (self.price.is_empty(), self.at_least) {
            (true, _) => "no price yet".into(),
            (false, true) => format!("at least {}", self.price),
            (false, false) => self.price.clone(),
        }
    }
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

impl Choice {
    /// All of it in sentences.
    pub fn words(&self) -> String {
        let saving = if self.saving.is_empty() { String::new() } else { format!(", {}", self.saving) };
        let Self { what, proposed, other, drawback, advice, .. } = self;
        format!("{what}. Proposed: {proposed}. Instead: {other}{saving}. {drawback} {advice}")
    }
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

impl Total {
    /// What the sum is: "Total with tax, EUR".
    pub fn sum_words(&self) -> String {
        format!("{} with tax, {}", if self.at_least { "At least" } else { "Total" }, self.currency)
    }
}

impl ProposalHead {
    /// How a customer answers.
    pub const HOW_TO_ANSWER: &'static str =
        "Answer each number with yes, no or later. From afar it counts with name, number, date and time.";

    /// When it was made and until when it holds; that it is none yet; nothing where that no longer matters.
    pub fn dates(&self) -> String {
        if self.number == 0 && self.answered.is_empty() {
            return "not proposed yet: a numbered proposal follows".into();
        }
        let made = self.made.map(|day| format!("made on {}", day.in_words()));
        let until = self.valid_until.map(|day| format!("valid until {}", day.in_words()));
        made.into_iter().chain(until).collect::<Vec<_>>().join(", ")
    }

    /// Whether it waits for an answer.
    pub fn is_open(&self) -> bool {
        self.number > 0 && self.answered.is_empty()
    }
}
