//! What stands on the customer's page, free of any layout.

use serde::Serialize;

use super::picture::Picture;
use super::zone_drawing::ZoneDrawing;
use crate::date::Date;
pub use crate::job::{Choice, Link, ToldAndFound};
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
    /// What is said of the costs before the shop has entered a price; else empty.
    pub unpriced: String,
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
    /// What is said of the engine since the proposal was made.
    SaidSince,
    /// What has come since it was answered.
    Since,
    /// The answer, given or to be given.
    Answer,
}

impl Section {
    /// Every section, in their order.
    pub const ALL: [Self; 11] = [
        Self::Found,
        Self::How,
        Self::Shown,
        Self::Jobs,
        Self::Costs,
        Self::Choices,
        Self::NotExamined,
        Self::Asked,
        Self::SaidSince,
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
            Section::SaidSince => "Since the proposal".into(),
            Section::Since => "Not yet agreed".into(),
            Section::Answer if self.proposal.is_open() => "Your answer".into(),
            Section::Answer => "Answered".into(),
        }
    }
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
    /// What it costs, with the currency: "at least 1 234.50 EUR", "no price yet".
    pub fn price_words(&self, currency: &str) -> String {
        match (self.price.is_empty(), self.at_least) {
            (true, _) => "no price yet".into(),
            (false, true) => format!("at least {} {currency}", self.price),
            (false, false) => format!("{} {currency}", self.price),
        }
    }

    /// The same in a column that names the currency.
    pub fn price_figures(&self) -> String {
        self.price_words("").trim_end().to_owned()
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
    /// What the customer said yes to; none before there was an answer, and where that is the whole of it.
    pub agreed: Option<Agreed>,
}

/// The part of a proposal to which the customer said yes, in figures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Agreed {
    /// The currency's code.
    pub currency: String,
    /// The day on which they said so, if it is known.
    pub said: Option<Date>,
    /// Without tax.
    pub net: String,
    /// The tax.
    pub tax: String,
    /// With tax.
    pub gross: String,
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
    /// What would be said of the engine otherwise now than when it was made, each in a sentence.
    pub said_since: Vec<String>,
    /// Who answered and how; empty while it is open.
    pub answered: String,
    /// The signature.
    pub signature: Vec<Stroke>,
}

impl Total {
    /// The head of the whole beside what was agreed to.
    pub const ALL_JOBS: &'static str = "All jobs";

    /// What the sum is: "Total with tax, EUR".
    pub fn sum_words(&self) -> String {
        let sum = match (&self.agreed, self.at_least) {
            (Some(_), true) => "At least, with tax",
            (Some(_), false) => "With tax",
            (None, true) => "At least with tax",
            (None, false) => "Total with tax",
        };
        format!("{sum}, {}", self.currency)
    }
}

impl Agreed {
    /// When: "Agreed on 3 May 2026".
    pub fn head(&self) -> String {
        self.said.map_or_else(|| "Agreed so far".to_owned(), |day| format!("Agreed on {}", day.in_words()))
    }

    /// What the sum is: "Agreed on 3 May 2026, with tax, EUR".
    pub fn words(&self) -> String {
        format!("{}, with tax, {}", self.head(), self.currency)
    }
}

impl ProposalHead {
    /// How a customer answers.
    pub const HOW_TO_ANSWER: &'static str =
        "Answer each number with yes, no or later. From afar it counts with name, telephone number, date and time.";

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
