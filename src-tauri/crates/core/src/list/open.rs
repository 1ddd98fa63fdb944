//! What is still open at the end of a job.

use serde::Serialize;

use super::{ListItem, ListKind, WorkList};
use crate::engine::Part;
use crate::job::{Ancillary, Approval, Consent, CustomerAnswer, Excess, Job};
use crate::measure::{Conformity, Phase};
use crate::view::{PartView, Sizing};
use crate::words::counted;

/// Where something that is still open is settled.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OpenAt {
    /// On a list.
    List,
    /// Where a part is measured.
    Part,
    /// With the customer's answer to a proposal.
    Approval,
    /// With the customer's answer to the strip-down order.
    StripDown,
    /// Where it is said what was given back.
    Ancillaries,
}

/// One thing that is still open.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Open {
    /// The list on which it stands; none if it is on no list.
    pub list: Option<ListKind>,
    /// The part that is to be measured again; none if it is not about one part.
    pub part: Option<Part>,
    /// Where it is settled.
    pub at: OpenAt,
    /// In a sentence.
    pub words: String,
}

impl Open {
    /// On no list and about no part.
    fn beside(at: OpenAt, words: String) -> Self {
        Self { list: None, part: None, at, words }
    }
}

/// Items that are not done, save those to which the customer said no; what came back wrong or unmeasured; figures outside
/// their limits after machining or fitting; what the customer has not answered or must be asked; and what was not given
/// back. Of a refused job only the last.
pub fn still_open(
    job: &Job,
    lists: &[WorkList],
    parts: &[PartView],
    sizing: &Sizing,
    approval: &Approval,
    excess: Option<&Excess>,
) -> Vec<Open> {
    if job.refusal.is_some() {
        return not_given_back(job);
    }
    let mut open: Vec<Open> = lists.iter().flat_map(undone).collect();
    // What is still to be done stands on its list, and of what is renewed nothing comes back.
    let is_back = |part| {
        let works = [ListKind::MachineShop, ListKind::RebuildHere];
        let work = lists.iter().filter(|list| works.contains(&list.kind)).flat_map(|list| &list.items);
        let mut on_it = work.filter(|item| item.parts.contains(&part)).peekable();
        on_it.peek().is_some() && on_it.all(ListItem::is_done)
    };
    let returned: Vec<Open> = sizing
        .read_back
        .iter()
        .flat_map(|back| &back.parts)
        .filter(|line| line.verdict.is_some() || is_back(line.part))
        .filter_map(|line| Some(about(line.part, line.sentence()?)))
        .collect();
    let late = parts.iter().flat_map(|view| view.figures.iter().map(move |figure| (view, figure)));
    let wrong = late.filter(|(view, figure)| {
        let is_wrong =
            figure.phase != Phase::Found && figure.verdict.is_some_and(|verdict| verdict != Conformity::Within);
        is_wrong && !returned.iter().any(|told| told.part == Some(view.part))
    });
    let wrong: Vec<Open> = wrong
        .map(|(view, figure)| about(view.part, format!("{}: {} {}", view.label, figure.name, figure.because)))
        .collect();
    open.extend(returned);
    open.extend(wrong);
    open.extend(excess.map(|excess| Open::beside(OpenAt::Approval, excess.words.clone())));
    open.extend(unanswered(approval).map(|words| Open::beside(OpenAt::Approval, words)));
    open.extend(unanswered_strip_down(job));
    open.extend(not_given_back(job));
    open
}

/// What came with the engine and is still here.
pub(crate) fn not_given_back(job: &Job) -> Vec<Open> {
    let words = |own: &Ancillary| format!("Came with the engine, not given back: {}.", own.words());
    let here = job.ancillaries.iter().filter(|own| !own.given_back);
    here.map(|own| Open::beside(OpenAt::Ancillaries, words(own))).collect()
}

fn unanswered_strip_down(job: &Job) -> Option<Open> {
    let waits = job.strip_down()?.answer.is_none();
    waits.then(|| Open::beside(OpenAt::StripDown, "The strip-down order has not been answered.".into()))
}

fn undone(list: &WorkList) -> impl Iterator<Item = Open> {
    undone_items(list).map(|item| {
        let words = format!("{}: {item}", list.title);
        Open { list: Some(list.kind), part: None, at: OpenAt::List, words }
    })
}

/// The items of a list that are not done, save those to which the customer said no, each in words with its size.
pub(crate) fn undone_items(list: &WorkList) -> impl Iterator<Item = String> {
    let items = list.items.iter().filter(|item| !item.is_done() && item.consent != Some(Consent::No));
    items.map(|item| {
        let size = if list.kind == ListKind::Order { item.detail.as_str() } else { "" };
        let size = if size.is_empty() { String::new() } else { format!(", {size}") };
        format!("{}{size}", item.what)
    })
}

fn about(part: Part, words: String) -> Open {
    Open { list: None, part: Some(part), at: OpenAt::Part, words }
}

fn unanswered(approval: &Approval) -> impl Iterator<Item = String> {
    let version = approval.version;
    let waits =
        (version > 0 && approval.answer.is_none()).then(|| format!("Proposal {version} has not been answered."));
    let later = approval.answer.iter().flat_map(CustomerAnswer::given).filter(|given| *given == Consent::Later).count();
    let of_jobs = approval.shown.as_ref().is_some_and(|shown| !shown.jobs.is_empty());
    let put_off = if of_jobs { counted(later, "job", "jobs") } else { lines(later) };
    let later = (later > 0).then(|| format!("The customer put off {put_off} of proposal {version}."));
    let since = approval.exceeding().count();
    let since = (since > 0).then(|| format!("Changed since proposal {version} and not agreed: {}.", lines(since)));
    waits.into_iter().chain(later).chain(since)
}

fn lines(count: usize) -> String {
    if count == 1 { "one line".into() } else { format!("{count} lines") }
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::job_of;
    use serde_json::{Value, json};

    /// What is open beside the lists.
    #[track_caller]
    fn check(done: &[Value], expected: &[&str]) {
        let sheet = json!({
            "head": { "name": "Any", "source": "", "unit": "inch" },
            "lines": [{ "of": { "kind": "crankpin", "quantity": "diameter" }, "min": "2.499 in", "max": "2.500 in", "limit": "2.498 in", "source": "" }],
            "undersizes": [{ "journals": "crankpins", "size": "0.010 in", "source": "" }], "oversizes": [],
        });
        let before = [
            json!({ "do": "arrange", "arrangement": Arrangement { cylinders: 1, ..Arrangement::inline(1) } }),
            json!({ "do": "use-sheet", "sheet": sheet }),
            measured("found", "2.490 in"),
        ];
        let changes: Vec<Value> = before.iter().chain(done).cloned().collect();
        let open = assess(&job_of(&changes)).still_open;
        let beside: Vec<&str> =
            open.iter().filter(|open| open.list.is_none()).map(|open| open.words.as_str()).collect();
        assert_eq!(beside, expected);
    }

    fn measured(phase: &str, inches: &str) -> Value {
        json!({ "do": "measure", "reading": { "part": "crankpin.1", "quantity": "diameter", "phase": phase,
            "spot": { "station": "front", "direction": "a" }, "value": inches } })
    }

    #[test]
    fn what_came_back_wrong_or_unmeasured_is_open() {
        let came = json!({ "do": "tick", "item": "machine crankpin 0.010 in undersize", "tick": { "done": 1 } });
        check(&[], &[]);
        check(std::slice::from_ref(&came), &["Crankpin 1: not measured since it was ground."]);
        let wrong = "Crankpin 1: it is 2.488 in; asked for was 2.4890 to 2.4900 in.";
        check(&[measured("machined", "2.488 in")], &[wrong]);
        check(&[came, measured("machined", "2.488 in")], &[wrong]);
    }
}
