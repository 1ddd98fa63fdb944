//! An edit in a sentence, for the history that a person can read and undo from.

use super::{Answer, Asked, Change, Consent, Edit, Job, Marking, RecordedChange, Tick};
use crate::engine::{Arrangement, Part};
use crate::measure::Phase;
use crate::wear::Zone;
use crate::words::plural;

impl Edit {
    /// What was done, in words. Positions are named by the job's arrangement.
    pub fn sentence(&self, job: &Job) -> String {
        let RecordedChange::Known(change) = &self.change else {
            return "Something that a newer version of this program recorded".into();
        };
        let named = |part: &Part| match &job.arrangement {
            Some(arrangement) => part.label(arrangement),
            None => part.label(&Arrangement::inline(1)),
        };
        match change {
            Change::Fill { field, text } if text.trim().is_empty() => format!("{} cleared", field.label()),
            Change::Fill { field, text } => format!("{}: {}", field.label(), first_words(text)),
            Change::Recall { fact, answer } => {
                let answer = match answer {
                    Answer::Yes => "yes",
                    Answer::No => "no",
                    Answer::Unknown => "not known",
                };
                format!("{} {answer}", fact.question())
            }
            Change::Arrange { arrangement } => format!("Arrangement: {}", arrangement.summary()),
            Change::NoteMark { place, mark } => {
                let how = if mark.marking == Marking::Found { "marked" } else { "marked by hand" };
                format!("{} is {how} “{}”", place.label(), mark.text.trim())
            }
            Change::AddPhoto { part, .. } => format!("{}: photo added", named(part)),
            Change::RemovePhoto { part, .. } => format!("{}: photo taken off", named(part)),
            Change::MarkUp { part, markup, .. } if markup.note().is_empty() => {
                format!("{}: {} drawn on a photo", named(part), markup.words())
            }
            Change::MarkUp { part, markup, .. } => {
                format!("{}: {} drawn on a photo: {}", named(part), markup.words(), first_words(markup.note()))
            }
            Change::Tag { part, tag, grade, zones } => {
                let places: Vec<&str> = zones.iter().copied().map(Zone::label).collect();
                let places = if places.is_empty() { String::new() } else { format!(" ({})", places.join("; ")) };
                format!("{}: {}, grade {}{places}", named(part), tag.row().name, grade.number())
            }
            Change::Untag { part, tag } => format!("{}: {} taken off", named(part), tag.row().name),
            Change::Clean { part } => format!("{}: looked at and clean", named(part)),
            Change::Remark { part, text } if text.trim().is_empty() => format!("{}: remark cleared", named(part)),
            Change::Remark { part, text } => format!("{}: {}", named(part), first_words(text)),
            Change::Overrule { part, outcome, .. } => {
                format!("{}: decided “{}” against the rules", named(part), outcome.words())
            }
            Change::FollowRules { part } => format!("{}: back to the rules’ view", named(part)),
            Change::NoteInstrument { instrument } => format!("Instrument: {}", first_words(&instrument.name)),
            Change::UseSheet { sheet } => format!("Spec sheet in use: {}", first_words(&sheet.head.name)),
            Change::HeadSheet { head } => format!("Head of the spec sheet: {}", first_words(&head.name)),
            Change::StateLine { line } => format!("Spec sheet: {}", line.of.label()),
            Change::DropLine { of } => format!("Spec sheet: {} taken off", of.label()),
            Change::StateUndersize { undersize } => {
                format!("Spec sheet: undersize {} of the {}", undersize.size, undersize.journals.group().label())
            }
            Change::DropUndersize { journals, size } => {
                format!("Spec sheet: undersize {size} of the {} taken off", journals.group().label())
            }
            Change::StateOversize { oversize } => format!("Spec sheet: oversize {}", oversize.size),
            Change::DropOversize { size } => format!("Spec sheet: oversize {size} taken off"),
            Change::Measure { reading } => {
                let quantity = match reading.name.trim() {
                    "" => reading.quantity.words(),
                    name => name,
                };
                let places = [
                    reading.spot.label(),
                    (if reading.phase == Phase::Found { "" } else { reading.phase.label() }).into(),
                ];
                let places: Vec<String> = places.into_iter().filter(|place| !place.is_empty()).collect();
                let places = if places.is_empty() { String::new() } else { format!(" ({})", places.join("; ")) };
                format!("{}: {quantity}{places} {}", named(&reading.part), reading.value)
            }
            Change::FoundSize { group, size: Some(size) } => format!("The {} were {size} already", group.label()),
            Change::FoundSize { group, size: None } => format!("The {} were standard", group.label()),
            Change::ChooseSize { group, size: Some(size), .. } => format!("The {} go to {size}", group.label()),
            Change::ChooseSize { group, size: None, .. } => format!("The {} go to the planned size", group.label()),
            Change::ChooseWay { kind, way: Some(way), .. } => {
                format!("Way for the {}: {}", plural(kind.row().name), kind.way_words(*way))
            }
            Change::ChooseWay { kind, way: None, .. } => format!("Way for the {}: the plan’s", plural(kind.row().name)),
            Change::UsePrices { prices } => format!("The shop’s prices in use, in {}", prices.currency),
            Change::SetPrice { price } => {
                let each = job.prices.currency.show(job.prices.each(price));
                format!("Price of {}, {}: {each}", price.of.kind.row().name, price.of.work.words())
            }
            Change::NoteEstimate { lines } => format!("First estimate: {} lines", lines.len()),
            Change::Tick { item, tick } => ticked(job, item, tick),
            Change::AddItem { item } => format!("{}: {} {}", item.list.title(), item.quantity, first_words(&item.what)),
            Change::Propose { quote } => format!("Proposed to the customer: {}", quote.currency.show(quote.gross)),
            Change::AnswerProposal { answer } => {
                let count = |consent: Consent| answer.lines.iter().filter(|line| line.answer == consent).count();
                format!(
                    "{} answered: {} yes, {} no, {} later",
                    first_words(&answer.name),
                    count(Consent::Yes),
                    count(Consent::No),
                    count(Consent::Later)
                )
            }
            Change::Close { closed: true } => "Job closed".into(),
            Change::Close { closed: false } => "Job opened again".into(),
            Change::Undo { .. } => "Undid an entry".into(),
        }
    }
}

/// "To order: Main bearing shells, 0.010 in undersize, 5 of 5 done".
fn ticked(job: &Job, asked: &Asked, tick: &Tick) -> String {
    let list = job.list_of(&asked.key).title();
    let done = match (tick.done, asked.quantity) {
        (0, _) => "not done".into(),
        (done, 0 | 1) if done == 1 => "done".into(),
        (done, 0) => format!("{done} done"),
        (done, of) => format!("{done} of {of} done"),
    };
    format!("{list}: {}, {done}", first_words(&job.item_words(asked)))
}

fn first_words(text: &str) -> String {
    const SHOWN: usize = 60;
    let text = text.trim();
    if text.chars().count() <= SHOWN {
        return text.to_owned();
    }
    let cut: String = text.chars().take(SHOWN).collect();
    format!("{}…", cut.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::testing::{arranged, edit};

    #[track_caller]
    fn says(json: serde_json::Value, sentence: &str) {
        let edit = Edit { id: edit(1), change: serde_json::from_value(json).unwrap() };
        let job = arranged(Arrangement::inline(4));
        assert_eq!(edit.sentence(&job), sentence);
    }

    #[test]
    fn edits_read_as_sentences() {
        use serde_json::json;
        says(
            json!({"do": "tag", "part": "main-shell.3.lower", "tag": "scoring", "grade": 3, "zones": ["front-crown"]}),
            "Main 3, lower shell: scoring, grade 3 (front edge, crown)",
        );
        says(
            json!({"do": "mark-up", "part": "piston.1", "photo": "a".repeat(64),
                "markup": {"shape": "note", "at": [1, 2], "note": "crack"}}),
            "Piston 1: note drawn on a photo: crack",
        );
        says(json!({"do": "clean", "part": "piston.1"}), "Piston 1: looked at and clean");
        says(
            json!({"do": "measure", "reading": {"part": "crankpin.2", "quantity": "diameter",
                "spot": {"station": "front", "direction": "a"}, "phase": "machined", "value": "2.2383 in"}}),
            "Crankpin 2: diameter (front, A; as machined) 2.2383 in",
        );
        says(
            json!({"do": "choose-way", "kind": "bore", "way": "sleeve", "reason": "Only one."}),
            "Way for the cylinder bores: sleeve those that need it, and keep the pistons that are sound",
        );
        let tick = |item: serde_json::Value, done: u32| json!({"do": "tick", "item": item, "tick": {"done": done}});
        let shells = json!({"key": {"of": "order", "kind": "main-shell"}, "words": "Main bearing shells, 0.010 in undersize",
            "size": 254_000, "quantity": 5});
        says(tick(shells, 4), "To order: Main bearing shells, 0.010 in undersize, 4 of 5 done");
        says(
            tick(json!("machine crankpin 0.010 in undersize"), 1),
            "For the machine shop: Crankpins, 0.010 in undersize, done",
        );
        says(tick(json!("look crankpin.2"), 0), "Look at or measure: Crankpin 2, not done");
        says(json!({"do": "weigh"}), "Something that a newer version of this program recorded");
    }
}
