//! What a job knows of its engine before and beside the work: what came with it, the strip-down order, its bill if the work is
//! refused.

use super::EditId;
use super::ancillary::{Ancillary, NotedAncillary};
use super::known::Job;
use super::refused::{MAX_NAME, MAX_TEXT, Refused, check_length};
use super::strip_down::{OrderedStripDown, StripDownAnswer};
use crate::money::{Money, OldPart, StripDownLine, StripDownOrder};

/// Most things that come with one engine.
const MOST: usize = 200;

impl Job {
    /// What the customer was told first that the whole would cost, with tax; none if nothing was estimated.
    pub fn estimated(&self) -> Option<Money> {
        let nets: Vec<Money> = self.estimate.iter().map(|line| line.net).collect();
        (!nets.is_empty()).then(|| nets.iter().copied().sum::<Money>() + self.prices.tax.on(&nets))
    }

    /// Something that came with the engine; none if it was not noted, or taken off.
    pub fn ancillary(&self, edit: EditId) -> Option<&Ancillary> {
        self.ancillaries.iter().find(|own| own.edit == edit)
    }

    pub(super) fn ancillary_mut(&mut self, edit: EditId) -> Option<&mut Ancillary> {
        self.ancillaries.iter_mut().find(|own| own.edit == edit)
    }

    /// What it is called; also where it was taken off since.
    pub(super) fn ancillary_words(&self, edit: EditId) -> String {
        self.ancillary(edit).map_or_else(|| "something that was removed".into(), |own| own.what.trim().to_owned())
    }
}

/// Refuses what can't be noted.
pub(super) fn check_noted(item: &NotedAncillary, job: &Job) -> Result<(), Refused> {
    if item.what.trim().is_empty() {
        return Err(Refused("Say what came with the engine: starter, brackets, carburettor.".into()));
    }
    if job.ancillaries.len() >= MOST {
        return Err(Refused(format!("{MOST} things came with the engine already: note several in one line.")));
    }
    check_length("The name", &item.what, MAX_NAME)?;
    check_length("The remark", &item.remark, MAX_TEXT)
}

/// Refuses what is about nothing that came with the engine.
pub(super) fn check_there(edit: EditId, job: &Job) -> Result<(), Refused> {
    match job.ancillary(edit) {
        Some(_) => Ok(()),
        None => Err(Refused("Nothing of that kind is noted as having come with the engine: note it first.".into())),
    }
}

impl Job {
    /// The bill of a refused job: for the strip-down alone, as the customer agreed to it. None where nothing was refused or no
    /// strip-down was agreed to: then nothing can be charged.
    pub fn refusal_bill(&self) -> Option<Vec<StripDownLine>> {
        let refusal = self.refusal?;
        let ordered = self.strip_down().filter(|ordered| ordered.is_agreed())?;
        Some(ordered.order.bill(refusal.goes_back))
    }
}

impl Job {
    /// The order that stands: the last that was made.
    pub fn strip_down(&self) -> Option<&OrderedStripDown> {
        self.strip_downs.last()
    }

    /// Where old parts go of which nothing is said one by one: to a customer who wanted them back when the strip-down was
    /// agreed to, else to scrap. None where that was not asked or not agreed to.
    pub fn old_parts_go(&self) -> Option<OldPart> {
        let agreed = self.strip_down().filter(|ordered| ordered.is_agreed())?;
        agreed.order.old_parts.map(|wanted| if wanted { OldPart::Customer } else { OldPart::Scrap })
    }

    /// The order as it would be made now, on the shop's usual terms.
    pub fn strip_down_to_order(&self) -> StripDownOrder {
        let prices = &self.prices;
        StripDownOrder {
            currency: prices.currency,
            tax: prices.tax,
            terms: prices.strip_down.clone().unwrap_or_default(),
            old_parts: None,
            estimate: self.estimated(),
            received: self.ancillaries.iter().map(Ancillary::words).collect(),
            remark: String::new(),
        }
    }
}

/// Refuses an order whose terms can't be, or in which something was typed past the job.
pub(super) fn check_order(order: &StripDownOrder, job: &Job) -> Result<(), Refused> {
    order.terms.check().map_err(Refused)?;
    check_length("The remark", &order.remark, MAX_TEXT)?;
    let StripDownOrder { currency, tax, estimate, received, .. } = job.strip_down_to_order();
    let follows =
        order.currency == currency && order.tax == tax && order.estimate == estimate && order.received == received;
    match follows {
        true => Ok(()),
        false => Err(Refused("The strip-down order is not what follows from the job now: open it anew.".into())),
    }
}

/// Refuses an answer that can't be.
pub(super) fn check_answer(answer: &StripDownAnswer, job: &Job) -> Result<(), Refused> {
    if job.strip_downs.iter().all(|ordered| ordered.edit != answer.order) {
        return Err(Refused("There is no such strip-down order to answer: make it first.".into()));
    }
    answer.said_by().check()
}
