//! What was done about items of the lists, and items of the shop’s own.

use serde::{Deserialize, Serialize};

use super::known::Job;
use super::refused::{MAX_NAME, MAX_PARTS_OF_ITEM, MAX_TEXT, Refused, check_length, check_room};
use super::{Asked, EditId, ItemKey, OwnItem, Step, TestResult, Tick};
use crate::engine::PartKind;
use crate::money::{Money, PartState, PriceKey, Supply};
use crate::words::{capitalised, first_words, plural};
use crate::work::{Hands, Work};

/// What was done about items of the lists, and items of the shop’s own.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum OnList {
    /// Said what has been done about an item of a list.
    Tick {
        /// The item, as it was asked for.
        item: Asked,
        /// What has been done.
        tick: Box<Tick>,
    },
    /// Put an item of the shop's own on a list.
    AddItem {
        /// The item.
        item: OwnItem,
    },
    /// Said what an item of the shop's own costs.
    PriceItem {
        /// The edit that put it on its list.
        item: EditId,
        /// What one of it costs without tax; none takes the price off.
        price: Option<Money>,
    },
    /// Said how the parts of a kind are supplied, and where the old ones go.
    SupplyParts {
        /// The kind.
        kind: PartKind,
        /// How, and where to.
        supply: Supply,
    },
    /// Gave a piece of work to the machine shop, or took it over.
    GiveWork {
        /// What is done to what.
        of: PriceKey,
        /// Who does it.
        hands: Hands,
    },
}

impl OnList {
    /// What stands in `do` of each form.
    pub(super) const DOES: &[&str] = &["tick", "add-item", "price-item", "supply-parts", "give-work"];

    /// Whether it fits the job: see [`Job::check`].
    pub(super) fn check(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::Tick { item, tick } => {
                check_asked(item)?;
                check_length("The date", &tick.date, MAX_NAME)?;
                check_length("The part number", &tick.part_number, MAX_NAME)?;
                check_length("The note", &tick.note, MAX_TEXT)?;
                tick.steps.iter().try_for_each(|taken| check_length("The date", &taken.date, MAX_NAME))?;
                if tick.steps.len() > Step::ALL.len() {
                    return Err(Refused("A step is told more than once: say each step once.".into()));
                }
                tick.result.as_ref().map_or(Ok(()), check_result)
            }
            Self::AddItem { item } => {
                if item.what.trim().is_empty() || item.quantity == 0 {
                    return Err(Refused("Say what is to be done or ordered, and how many of it.".into()));
                }
                check_price(item.price)?;
                check_length("The item", &item.what, MAX_NAME)?;
                check_length("The reason", &item.because, MAX_TEXT)
            }
            Self::PriceItem { item, price } => {
                check_price(*price)?;
                match job.own_items.iter().any(|(edit, _)| edit == item) {
                    true => Ok(()),
                    false => Err(Refused("There is no such item of your own: add it first.".into())),
                }
            }
            Self::SupplyParts { supply, .. } => supply.check().map_err(Refused),
            Self::GiveWork { of, .. } if of.work == Work::Replace => {
                Err(Refused("What is ordered is nobody’s work: order it.".into()))
            }
            Self::GiveWork { .. } => Ok(()),
        }
    }

    /// Whether it has an effect: see [`Job::fits`].
    pub(super) fn fits(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::AddItem { .. } => check_room("items of its own", job.own_items.len() + 1, MOST_OWN)?,
            Self::Tick { tick, .. } if tick.says_something() => check_room("ticks", job.ticks.len() + 1, MOST_TICKS)?,
            _ => {}
        }
        self.check(job)
    }

    /// What it does to the job: see [`Job::apply`].
    pub(super) fn apply(&self, id: EditId, job: &mut Job) {
        match self {
            Self::Tick { item, tick } => job.tick(item, tick),
            Self::AddItem { item } => job.own_items.push((id, item.clone())),
            Self::PriceItem { item, price } => {
                let own = job.own_items.iter_mut().find(|(edit, _)| edit == item);
                if let Some((_, own)) = own {
                    own.price = *price;
                }
            }
            Self::SupplyParts { kind, supply } => {
                job.supplies.insert(*kind, *supply);
            }
            Self::GiveWork { of, hands } => {
                job.hands.insert(*of, *hands);
            }
        }
    }

    /// What was done, in words: see [`Edit::sentence`](super::Edit::sentence).
    pub(super) fn sentence(&self, job: &Job) -> String {
        match self {
            Self::Tick { item, tick } => ticked(job, item, tick),
            Self::AddItem { item } => format!("{}: {} {}", item.list.title(), item.quantity, first_words(&item.what)),
            Self::PriceItem { item, price } => {
                let own = job.own_items.iter().find(|(edit, _)| edit == item);
                let what = own.map_or_else(|| "an item that was removed".into(), |(_, own)| first_words(&own.what));
                let price = price.map_or_else(|| "removed".into(), |price| job.prices.currency.show(price));
                format!("Price of {what}: {price}")
            }
            Self::SupplyParts { kind, supply } => {
                let name = capitalised(&plural(&kind.row().name.said(job.terms)));
                let state = match supply.state {
                    PartState::New => PartState::New.words().into(),
                    _ => supply.state_words(job.prices.currency),
                };
                let old = supply.old_words();
                let old = if old.is_empty() { String::new() } else { format!("; the old ones {old}") };
                format!("{name}: {state}{old}")
            }
            Self::GiveWork { of, hands } => {
                let name = plural(&of.kind.row().name.said(job.terms));
                format!("{}, {}: {}", capitalised(&name), of.kind.work_words(of.work), hands.words())
            }
        }
    }
}

/// Most items of the shop's own in one job (our judgement).
const MOST_OWN: usize = 500;
/// Most lines with a tick: every part of the largest engine on several lists (our judgement).
const MOST_TICKS: usize = 4_000;

fn check_price(price: Option<Money>) -> Result<(), Refused> {
    match price {
        Some(price) if !price.is_price() => {
            Err(Refused("A price must be zero or more, and no more than any rebuild costs.".into()))
        }
        _ => Ok(()),
    }
}

fn check_result(result: &TestResult) -> Result<(), Refused> {
    let TestResult { how, by, date, passed, failed } = result;
    if how.trim().is_empty() {
        return Err(Refused("Say how it was tested: dye, magnetic particles, under pressure.".into()));
    }
    if passed.is_empty() && failed.is_empty() || passed.iter().any(|part| failed.contains(part)) {
        return Err(Refused("Say of each piece that was tested whether it passed or failed.".into()));
    }
    if passed.len() + failed.len() > MAX_PARTS_OF_ITEM {
        return Err(Refused(format!("A test of more than {MAX_PARTS_OF_ITEM} pieces.")));
    }
    check_length("How it was tested", how, MAX_NAME)?;
    check_length("The name", by, MAX_NAME)?;
    check_length("The date", date, MAX_NAME)
}

/// Whether such an item can be: what it is called and asks for may go with the next reading, so no more is held against it.
fn check_asked(asked: &Asked) -> Result<(), Refused> {
    check_length("The item", &asked.words, MAX_TEXT)?;
    match &asked.key {
        ItemKey::Order { parts, .. } if parts.len() > MAX_PARTS_OF_ITEM => {
            Err(Refused(format!("An item of {} parts: {MAX_PARTS_OF_ITEM} at most.", parts.len())))
        }
        ItemKey::PutRight { cause, check } => {
            check_length("The cause", cause, MAX_NAME)?;
            check_length("The check", check, MAX_NAME)
        }
        ItemKey::Former { words, .. } => check_length("The item", words, MAX_TEXT),
        _ => Ok(()),
    }
}

/// "To order: Main bearing shells, 0.010 in undersize, 5 of 5 done", "…, ordered, 3 of 5 came".
fn ticked(job: &Job, asked: &Asked, tick: &Tick) -> String {
    let list = job.list_of(&asked.key);
    let many = |count: u32, word: &str| match (count, asked.quantity) {
        (1, 0 | 1) => word.into(),
        (count, 0) => format!("{count} {word}"),
        (count, of) => format!("{count} of {of} {word}"),
    };
    let taken = tick.steps.iter().filter(|taken| taken.done > 0);
    let mut told: Vec<String> = taken.map(|taken| many(taken.done, &taken.step.words(list).to_lowercase())).collect();
    if tick.done > 0 {
        told.push(many(tick.done, "done"));
    }
    if let Some(result) = &tick.result {
        let failed = result.failed.iter().map(|part| job.label(*part)).collect::<Vec<_>>().join(", ");
        told.push(if failed.is_empty() { "tested and passed".into() } else { format!("failed the test: {failed}") });
    }
    if told.is_empty() {
        told.push("not done".into());
    }
    format!("{}: {}, {}", list.title(), first_words(&job.item_words(asked)), told.join(", "))
}
