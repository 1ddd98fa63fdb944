//! What the shop charges, what it estimated and proposed, and what the customer answered.

use serde::{Deserialize, Serialize};

use super::known::Job;
use super::opening::{check_answer as check_strip_down_answer, check_order};
use super::refused::{MAX_NAME, MAX_TEXT, Refused, check_length, check_room};
use super::strip_down::{OrderedStripDown, StripDownAnswer};
use super::{Consent, CustomerAnswer, EditId, Proposed, ProposedPage};
use crate::date::Date;
use crate::money::{
    Charge, EstimateLine, Money, OtherEngine, Price, PriceList, ProposedJob, Quote, QuoteLine, StripDownOrder,
};
use crate::words::first_words;

/// What the shop charges, what it estimated and proposed, and what the customer answered.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "do", rename_all = "kebab-case", deny_unknown_fields)]
pub enum OnMoney {
    /// Took the shop's prices into use in place of those before.
    UsePrices {
        /// The prices.
        prices: Box<PriceList>,
    },
    /// Entered or corrected one price for this job.
    SetPrice {
        /// The price.
        price: Price,
    },
    /// Noted the estimate that the customer was given before the engine was opened, in place of one noted before.
    NoteEstimate {
        /// Its lines.
        lines: Vec<EstimateLine>,
    },
    /// Noted what another engine would cost, in place of those noted before; none takes the comparison off.
    NoteOtherEngines {
        /// The engines.
        engines: Vec<OtherEngine>,
    },
    /// Made a proposal to the customer: exactly what follows from the job at that moment.
    Propose {
        /// What was shown.
        quote: Box<Quote>,
        /// The day, where the shop is, as ISO 8601 writes it: 2026-05-03. Unknown of what was proposed before it was noted.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "schema", ts(optional))]
        made: Option<Date>,
        /// What the customer read beside the jobs. The program writes it when the proposal is made; not kept of what was
        /// proposed before it did.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "schema", ts(optional))]
        page: Option<Box<ProposedPage>>,
    },
    /// The customer answered a proposal.
    AnswerProposal {
        /// The answer.
        answer: Box<CustomerAnswer>,
    },
    /// Told the customer, before anything is opened, what opening costs and what becomes of the engine if the work is refused.
    OrderStripDown {
        /// What was shown.
        order: Box<StripDownOrder>,
        /// The day, where the shop is.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "schema", ts(optional))]
        made: Option<Date>,
    },
    /// The customer answered a strip-down order.
    AnswerStripDown {
        /// The answer.
        answer: Box<StripDownAnswer>,
    },
}

impl OnMoney {
    /// What stands in `do` of each form.
    pub(super) const DOES: &[&str] = &[
        "use-prices",
        "set-price",
        "note-estimate",
        "note-other-engines",
        "propose",
        "answer-proposal",
        "order-strip-down",
        "answer-strip-down",
    ];

    /// Whether it fits the job: see [`Job::check`].
    pub(super) fn check(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::UsePrices { prices } => prices.check(job.terms).map_err(Refused),
            Self::SetPrice { price } => price.check(job.terms).map_err(Refused),
            Self::NoteEstimate { lines } => {
                const MOST_LINES: usize = 500;
                if lines.len() > MOST_LINES {
                    return Err(Refused(format!("An estimate of {} lines: {MOST_LINES} at most.", lines.len())));
                }
                lines.iter().try_for_each(|line| {
                    check_length("The line", &line.what, MAX_NAME)?;
                    match line.net.is_price() {
                        true => Ok(()),
                        false => Err(Refused(format!("“{}”: an amount must be zero or more.", line.what))),
                    }
                })
            }
            Self::NoteOtherEngines { engines } => check_engines(engines),
            Self::AnswerProposal { answer } => {
                let Some(proposed) = job.proposals.iter().find(|proposed| proposed.edit == answer.proposal) else {
                    return Err(Refused("There is no such proposal to answer: make it first.".into()));
                };
                answer.said_by().check()?;
                check_answers(answer, &proposed.quote).map_err(Refused)
            }
            Self::Propose { page, .. } => page.as_ref().map_or(Ok(()), |page| page.check()),
            Self::OrderStripDown { order, .. } => check_order(order, job),
            Self::AnswerStripDown { answer } => check_strip_down_answer(answer, job),
        }
    }

    /// Whether it has an effect: see [`Job::fits`]. What was shown to the customer stands as it was shown.
    pub(super) fn fits(&self, job: &Job) -> Result<(), Refused> {
        match self {
            Self::SetPrice { price } => {
                price.check(job.terms).map_err(Refused)?;
                let is_there = job.prices.prices.iter().any(|own| own.of == price.of);
                check_room("prices", job.prices.prices.len() + usize::from(!is_there), PriceList::MOST)
            }
            Self::Propose { page, .. } => {
                check_room("proposals", job.proposals.len() + 1, MOST_SHOWN)?;
                page.as_ref().map_or(Ok(()), |page| page.check())
            }
            Self::OrderStripDown { order, .. } => {
                check_room("strip-down orders", job.strip_downs.len() + 1, MOST_SHOWN)?;
                order.terms.check().map_err(Refused)?;
                check_length("The remark", &order.remark, MAX_TEXT)
            }
            _ => self.check(job),
        }
    }

    /// What it does to the job: see [`Job::apply`].
    pub(super) fn apply(&self, id: EditId, job: &mut Job) {
        match self {
            Self::UsePrices { prices } => job.prices = (**prices).clone(),
            Self::SetPrice { price } => job.prices.enter(*price),
            Self::NoteEstimate { lines } => job.estimate.clone_from(lines),
            Self::NoteOtherEngines { engines } => job.other_engines.clone_from(engines),
            Self::Propose { quote, made, page } => {
                let (quote, page) = ((**quote).clone(), page.as_deref().cloned());
                job.proposals.push(Proposed { edit: id, quote, made: *made, page, answer: None });
            }
            Self::AnswerProposal { answer } => {
                if let Some(proposed) = job.proposals.iter_mut().find(|proposed| proposed.edit == answer.proposal) {
                    proposed.answer = Some((**answer).clone());
                }
            }
            Self::OrderStripDown { order, made } => {
                let order = (**order).clone();
                job.strip_downs.push(OrderedStripDown { edit: id, order, made: *made, answer: None });
            }
            Self::AnswerStripDown { answer } => {
                if let Some(ordered) = job.strip_downs.iter_mut().find(|ordered| ordered.edit == answer.order) {
                    ordered.answer = Some((**answer).clone());
                }
            }
        }
    }

    /// What was done, in words: see [`Edit::sentence`](super::Edit::sentence).
    pub(super) fn sentence(&self, job: &Job) -> String {
        match self {
            Self::UsePrices { prices } => format!("The shop’s prices in use, in {}", prices.currency),
            Self::SetPrice { price } => {
                let show = |money| job.prices.currency.show(money);
                let each =
                    [price.part, price.machining].into_iter().filter(|money| *money != Money::default()).map(show);
                let time = (price.minutes > 0).then(|| format!("{} min", price.minutes));
                let each: Vec<String> = each.chain(time).collect();
                let name = price.of.kind.row().name.said(job.terms);
                format!("Price of {name}, {}: {}", price.of.kind.work_words(price.of.work), each.join(" and "))
            }
            Self::NoteEstimate { lines } => format!("First estimate: {} lines", lines.len()),
            Self::NoteOtherEngines { engines } if engines.is_empty() => "Another engine: none to compare with".into(),
            Self::NoteOtherEngines { engines } => {
                let engine = |engine: &OtherEngine| format!("{} {}", engine.what, job.prices.currency.show(engine.net));
                format!("What another engine costs: {}", engines.iter().map(engine).collect::<Vec<_>>().join("; "))
            }
            Self::Propose { quote, .. } => format!("Proposed to the customer: {}", quote.currency.show(quote.gross)),
            Self::AnswerProposal { answer } => {
                let count = |consent: Consent| answer.given().filter(|given| *given == consent).count();
                format!(
                    "{} answered: {} yes, {} no, {} later",
                    first_words(&answer.name),
                    count(Consent::Yes),
                    count(Consent::No),
                    count(Consent::Later)
                )
            }
            Self::OrderStripDown { order, .. } => {
                let price = order.terms.strip_down.map(|net| order.currency.show(net));
                format!("Strip-down order: {}", price.as_deref().unwrap_or("no price yet"))
            }
            Self::AnswerStripDown { answer } => {
                let said = if answer.agreed { "agreed to" } else { "refused" };
                format!("{} {said} the strip-down", first_words(&answer.name))
            }
        }
    }
}

/// Most proposals, and most strip-down orders, of one job (our judgement).
const MOST_SHOWN: usize = 500;

/// Every job has one answer, and nothing else has.
fn check_jobs(answer: &CustomerAnswer, jobs: &[ProposedJob]) -> Result<(), String> {
    if !answer.lines.is_empty() || answer.jobs.iter().any(|own| jobs.iter().all(|job| job.of != own.of)) {
        return Err("An answer is about something that was not proposed.".into());
    }
    let answered = |job: &ProposedJob| answer.jobs.iter().filter(|own| own.of == job.of).count() == 1;
    match jobs.iter().find(|job| !answered(job)) {
        Some(job) => Err(format!("Job {}, “{}”, has no answer, or two: yes, no or later.", job.number, job.title)),
        None => Ok(()),
    }
}

/// Refuses engines that can't stand beside the rebuild.
fn check_engines(engines: &[OtherEngine]) -> Result<(), Refused> {
    const MOST: usize = OtherEngine::MOST;
    if engines.len() > MOST {
        return Err(Refused(format!("{} other engines: compare with {MOST} at most.", engines.len())));
    }
    engines.iter().try_for_each(|engine| {
        check_length("The engine", &engine.what, MAX_NAME)?;
        if engine.what.trim().is_empty() {
            return Err(Refused("Say which engine it is: the customer reads it beside the price.".into()));
        }
        match engine.net.is_price() && engine.net != Money::default() {
            true => Ok(()),
            false => Err(Refused(format!("“{}”: an engine’s price must be more than zero.", engine.what))),
        }
    })
}

/// Every line has one answer, or every job where there are jobs.
fn check_answers(answer: &CustomerAnswer, shown: &Quote) -> Result<(), String> {
    if !shown.jobs.is_empty() {
        return check_jobs(answer, &shown.jobs);
    }
    let asked = |of: &Charge| shown.lines.iter().any(|line| line.of == *of);
    if answer.lines.iter().any(|line| !asked(&line.of)) {
        return Err("An answer is about a line that was not proposed.".into());
    }
    let answered = |line: &QuoteLine| answer.lines.iter().filter(|answer| answer.of == line.of).count() == 1;
    match shown.lines.iter().find(|line| !answered(line)) {
        Some(line) => Err(format!("“{}” has no answer, or two: yes, no or later.", line.what)),
        None => Ok(()),
    }
}
