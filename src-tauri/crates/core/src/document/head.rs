//! What stands at the head of a paper: its title, the machine, the engine, who it is from.

use super::desk::Desk;
use super::paper::{Block, Paper, Reader};
use crate::assess::Assessment;
use crate::job::{Answer, HistoryFact, Job, TextField};

/// A paper of this desk's engine and day. Whose engine it is stands in none that goes to others than the customer.
pub(super) fn paper(desk: &Desk<'_>, title: &str, blocks: Vec<Block>) -> Paper {
    let machine = typed(desk.job, TextField::Machine);
    let engine = typed(desk.job, TextField::EngineNumber);
    let subtitle: Vec<String> = machine.iter().cloned().chain(desk.assessment.engine.clone()).collect();
    Paper {
        title: title.to_owned(),
        subtitle: subtitle.join(" · "),
        subject: machine.or(engine).unwrap_or_default(),
        reader: Reader::Trade,
        date: desk.date,
        blocks,
    }
}

/// The same for the customer, whose name stands in the file's properties.
pub(super) fn customers_paper(desk: &Desk<'_>, title: &str, blocks: Vec<Block>) -> Paper {
    let reader = Reader::Customer(typed(desk.job, TextField::Customer).unwrap_or_default());
    Paper { reader, ..paper(desk, title, blocks) }
}

/// What was typed into a line of the job's sheet; none if it is blank.
pub(super) fn typed(job: &Job, field: TextField) -> Option<String> {
    let text = job.texts.get(&field)?.trim();
    (!text.is_empty()).then(|| text.to_owned())
}

/// What was typed into these lines, each with its label; blank ones are left out.
pub(super) fn filled(job: &Job, fields: &[TextField]) -> Vec<(String, String)> {
    fields.iter().filter_map(|field| Some((field.label().to_owned(), typed(job, *field)?))).collect()
}

/// Customer, machine, what is known of the engine, and who examined it; none if nothing is known.
pub(super) fn engine_facts(desk: &Desk<'_>) -> Option<Block> {
    let Desk { job, assessment, shop, .. } = desk;
    let mut facts = filled(job, &TextField::ALL);
    facts.extend(engine(assessment));
    facts.extend(made(job));
    let past: Vec<&str> = HistoryFact::ALL
        .iter()
        .filter(|fact| job.history.get(fact) == Some(&Answer::Yes))
        .map(|fact| fact.statement())
        .collect();
    facts.extend(fact("Known of its past", past.join("; ")));
    facts.extend(fact("Examined by", shop.lines().collect::<Vec<_>>().join(", ")));
    (!facts.is_empty()).then_some(Block::Facts(facts))
}

/// Which engine, and which shop asks: for suppliers and machine shops, who need not know the customer. Machine and layout
/// stand in the paper's head.
pub(super) fn engine_only(desk: &Desk<'_>) -> Block {
    let mut facts = filled(desk.job, &[TextField::EngineNumber]);
    facts.extend(made(desk.job));
    facts.extend(fact("From", desk.shop.lines().collect::<Vec<_>>().join(", ")));
    Block::Facts(facts)
}

fn engine(assessment: &Assessment) -> Option<(String, String)> {
    fact("Engine", assessment.engine.clone()?)
}

/// How it is made, as far as that is known.
fn made(job: &Job) -> Option<(String, String)> {
    fact("Made", job.arrangement.as_ref()?.construction.words().join("; "))
}

fn fact(name: &str, value: String) -> Option<(String, String)> {
    (!value.is_empty()).then(|| (name.to_owned(), value))
}
