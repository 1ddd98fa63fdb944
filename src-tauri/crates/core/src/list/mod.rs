//! The lists that are worked: nothing stands on one without the finding that put it there.

mod bench;
mod caution;
mod consent;
mod make;
mod moot;
mod open;
mod operations;
mod order;
mod work;

pub(crate) use bench::Bench;
pub(crate) use make::lists;
pub(crate) use moot::strike_moot;
pub(crate) use open::not_given_back;
pub(crate) use open::undone_items;
pub use open::{Open, OpenAt, still_open};

use serde::Serialize;

use crate::caution::Caution;
use crate::engine::Part;
use crate::job::{Asked, Consent, ItemKey, ListKind, Step, Tick};
use crate::measure::Length;
use crate::money::{Charge, Supply};
use crate::work::Hands;

/// One line of a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ListItem {
    /// What a tick of it is kept under, with what it asks for now.
    pub asked: Asked,
    /// What, in words.
    pub what: String,
    /// Size or work in words; may be empty.
    pub detail: String,
    /// How many.
    pub quantity: u32,
    /// The parts it is about, to go to the finding; may be empty.
    pub parts: Vec<Part>,
    /// What put it there.
    pub because: String,
    /// Not to be done yet, and why, each in a sentence; empty if nothing holds it.
    pub waits_for: Vec<String>,
    /// To what is done what, by which it is priced and agreed to; none of what has no price of its own.
    pub of: Option<Charge>,
    /// Who does it; none of what is not work.
    pub hands: Option<Hands>,
    /// What the hand that does it must mind; may be empty.
    pub mind: String,
    /// What can hurt in doing it, as far as no line above says it; the gravest first.
    pub cautions: Vec<&'static Caution>,
    /// Whether it came back, was measured and is right: then it is behind, whatever was ticked.
    pub is_right: bool,
    /// How it is supplied and where the old parts go; none of what is not ordered.
    pub supply: Option<Supply>,
    /// What the customer said to it in the last answer; none before there was one, and where nothing was asked.
    pub consent: Option<Consent>,
    /// What has been done about it.
    pub tick: Option<Tick>,
    /// The steps that it takes, in order; none of what is simply done.
    pub steps: Vec<ItemStep>,
    /// The pieces of which a test tells whether they pass; none of what is no test.
    pub tested: Vec<Part>,
}

/// A step of an item.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ItemStep {
    /// Which.
    pub step: Step,
    /// In a word: "Ordered", "Came".
    pub words: String,
    /// How many have taken it.
    pub done: u32,
    /// When the last of them did, as the shop writes dates; may be empty.
    pub date: String,
}

impl ListItem {
    /// An item that nothing holds and about which nothing has been done.
    pub(crate) fn new(key: ItemKey, what: String, quantity: u32) -> Self {
        Self {
            asked: Asked { key, words: what.clone(), size: None, quantity },
            what,
            detail: String::new(),
            quantity,
            parts: vec![],
            because: String::new(),
            waits_for: vec![],
            of: None,
            hands: None,
            mind: String::new(),
            cautions: vec![],
            is_right: false,
            supply: None,
            consent: None,
            tick: None,
            steps: vec![],
            tested: vec![],
        }
    }

    /// The same in a size: beyond standard in nanometres, none while it is not known, and in words.
    fn in_size(mut self, size: Option<Length>, shown: &str) -> Self {
        self.asked.words = format!("{}, {shown}", self.what);
        self.asked.size = size;
        self
    }

    /// Its steps on such a list, with how far each is.
    pub(crate) fn with_steps(mut self, list: ListKind) -> Self {
        let tick = self.tick.clone().unwrap_or_default();
        if matches!(list, ListKind::Order | ListKind::MachineShop) {
            self.steps = Step::ALL
                .map(|step| ItemStep {
                    step,
                    words: step.words(list).into(),
                    done: tick.at(step),
                    date: tick.date_of(step).into(),
                })
                .to_vec();
        }
        self
    }

    /// Whether all of it is done.
    pub fn is_done(&self) -> bool {
        self.is_right || self.tick.as_ref().is_some_and(|tick| tick.is_whole(self.quantity))
    }
}

/// One list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct WorkList {
    /// Which.
    pub kind: ListKind,
    /// Its title.
    pub title: String,
    /// Why it is empty, where that is not because nothing is to be done; else empty.
    pub note: String,
    /// Its items.
    pub items: Vec<ListItem>,
    /// How many items are wholly done.
    pub done: usize,
    /// What was ordered, sent or done and no longer follows from the job.
    pub not_wanted: Vec<NotWanted>,
}

/// What was done about an item that is not, or no longer so, on any list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct NotWanted {
    /// The item, as it was asked for.
    pub asked: Asked,
    /// In words, with the size for which it was done.
    pub words: String,
    /// How it stands, in a sentence.
    pub because: String,
    /// What has been done about it.
    pub tick: Tick,
}
