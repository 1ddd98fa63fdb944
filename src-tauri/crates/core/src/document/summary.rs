//! The summary: one page under fixed headings that a person who knows nothing of engines understands.
//!
//! It must stay one page whatever was found, so every list in it is cut short and says where the rest stands.

use super::desk::Desk;
use super::grouping::{by_kind, grouped, named, some_of};
use super::paper::{Block, Section};
use crate::assess::Assessment;
use crate::cause::{CauseView, ComplaintAnswer};
use crate::job::{Complaint, Consent, HistoryFact};
use crate::money::Money;
use crate::sheet::SizeGroup;
use crate::sizing::Action;
use crate::view::{OrderState, PartView};
use crate::words::{capitalised, counted};
use crate::work::Outcome;

/// Causes told in the summary before the rest is left to its chapter.
const CAUSES_NAMED: usize = 2;
/// Groups of parts named in one sentence before the rest is counted.
const GROUPS_NAMED: usize = 5;
/// Questions asked of the customer.
const QUESTIONS: usize = 3;

/// Where the old parts are the customer's by law.
const OLD_PARTS: &str =
    "Whether you want the old parts back: say so with your answer. What goes in exchange can only be shown to you.";

/// The summary of a job.
pub(super) fn summary(desk: &Desk<'_>) -> Block {
    let assessment = desk.assessment;
    let section = |heading: &str, sentences| Section { heading: heading.into(), sentences };
    Block::Summary(vec![
        section("What we found", found(assessment)),
        section("Why", why(assessment)),
        section("What we propose", proposed(assessment)),
        section("What it costs", costs(assessment)),
        section("What we need from you", needed(desk)),
    ])
}

fn found(assessment: &Assessment) -> Vec<String> {
    let progress = assessment.progress;
    if progress.parts == 0 {
        return vec![
            "The engine’s arrangement has not been entered yet, so nothing can be said about its parts.".into(),
        ];
    }
    let of = format!("of the engine’s {} parts", progress.parts);
    let mut told = vec![match (progress.looked, progress.worn) {
        (0, _) => format!("None {of} has been looked at yet."),
        (looked, 0) => format!("{looked} {of} have been looked at; no damage was seen."),
        (looked, worn) => format!("{looked} {of} have been looked at; damage was found on {worn}."),
    }];
    if let Some(worst) = assessment.parts.iter().filter_map(|view| view.worst).max() {
        let views: Vec<&PartView> = assessment.parts.iter().filter(|view| view.worst == Some(worst)).collect();
        told.push(format!(
            "The worst, grade {} of 4: {}.",
            worst.number(),
            some_of(&by_kind(&views, assessment), GROUPS_NAMED)
        ));
    }
    let outside: Vec<&PartView> = assessment.parts.iter().filter(|view| view.is_measured_outside()).collect();
    if !outside.is_empty() {
        told.push(format!(
            "Measured and outside the limits: {}.",
            some_of(&by_kind(&outside, assessment), GROUPS_NAMED)
        ));
    }
    let open = progress.parts - progress.looked;
    if progress.looked > 0 && open > 0 {
        told.push(format!("{} not looked at. That does not mean sound.", counted(open, "part was", "parts were")));
    }
    told
}

fn why(assessment: &Assessment) -> Vec<String> {
    let causes = &assessment.causes;
    let told = |answer: &ComplaintAnswer| format!("{}: {}. {}", answer.told, answer.words, answer.because());
    let answered: Vec<String> = causes.answers.iter().map(told).collect();
    if assessment.parts.is_empty() || !causes.enough_seen {
        return [answered, vec![causes.summary.clone()]].concat();
    }
    let likely: Vec<&CauseView> = causes.causes.iter().filter(|view| view.named).collect();
    let mut told = answered;
    told.extend(
        likely.iter().take(CAUSES_NAMED).map(|view| format!("{}: {}", capitalised(&view.likelihood), view.plainly)),
    );
    match likely.len().saturating_sub(CAUSES_NAMED) {
        0 => told.push("The chapter “Why it happened” gives the reasons.".into()),
        more => told.push(format!(
            "The chapter “Why it happened” gives the reasons, and {}.",
            counted(more, "more cause", "more causes")
        )),
    }
    told
}

fn proposed(assessment: &Assessment) -> Vec<String> {
    let outcomes = [
        (Outcome::Replace, "To be replaced"),
        (Outcome::Machine, "To be machined"),
        (Outcome::Polish, "To be polished"),
        (Outcome::RebuildHere, "To be rebuilt in our shop"),
        (Outcome::Clean, "To be cleaned and put back"),
        (Outcome::PutBack, "To be put back as they are"),
    ];
    // A piece that only goes along is told by what is done to its parts; what came back right is behind.
    let to_come = |view: &&PartView| !view.decision.goes_along() && !assessment.sizing.is_right(view.part);
    let mut told: Vec<String> = Vec::new();
    let behind: Vec<&PartView> = assessment.parts.iter().filter(|view| assessment.sizing.is_right(view.part)).collect();
    if !behind.is_empty() {
        let groups = with_sizes(&behind, Outcome::Machine, assessment);
        told.push(format!("Back from the machine shop, measured and right: {}.", some_of(&groups, GROUPS_NAMED)));
    }
    for (outcome, words) in outcomes {
        let views: Vec<&PartView> =
            assessment.parts.iter().filter(to_come).filter(|view| view.decision.outcome == outcome).collect();
        if views.is_empty() {
            continue;
        }
        told.push(match outcome {
            Outcome::Clean | Outcome::PutBack => format!("{words}: {}.", counted(views.len(), "part", "parts")),
            _ => format!("{words}: {}.", some_of(&with_sizes(&views, outcome, assessment), GROUPS_NAMED)),
        });
    }
    let open = assessment.parts.iter().filter(to_come).filter(|view| view.decision.outcome == Outcome::CantSay).count();
    if open > 0 {
        told.push(format!(
            "Nothing can be said yet about {}: to be looked at or measured first.",
            counted(open, "part", "parts")
        ));
    }
    if told.is_empty() { vec!["Nothing yet.".into()] } else { told }
}

/// Groups by kind; what goes to one size is told with it.
fn with_sizes(views: &[&PartView], outcome: Outcome, assessment: &Assessment) -> Vec<String> {
    let size = |kind| {
        let plan = SizeGroup::of(kind).and_then(|group| assessment.plan(group))?;
        let told = outcome == Outcome::Machine && plan.action == Action::Machine;
        told.then(|| format!(" ({})", plan.words))
    };
    grouped(views, |view| view.kind)
        .iter()
        .map(|(kind, group)| format!("{}{}", named(group, assessment), size(*kind).unwrap_or_default()))
        .collect()
}

fn costs(assessment: &Assessment) -> Vec<String> {
    let quote = &assessment.quote;
    if quote.lines.iter().all(|line| line.each.is_none()) {
        return vec!["No prices have been entered yet.".into()];
    }
    let show = |money| quote.currency.show(money);
    let least = if quote.without_price > 0 { "At least " } else { "" };
    let mut told =
        vec![format!("{least}{} with tax ({} without, tax {}).", show(quote.gross), show(quote.net), quote.tax_rate)];
    if quote.without_price > 0 {
        let lines = usize::try_from(quote.without_price).unwrap_or(usize::MAX);
        told.push(format!(
            "{} not in it.",
            counted(lines, "line has no price yet and is", "lines have no price yet and are")
        ));
    }
    if !assessment.other_engines.verdict.is_empty() {
        told.push(assessment.other_engines.verdict.clone());
    }
    let more: Money = assessment.differences.iter().map(|difference| difference.more).sum();
    if more != Money::default() {
        let (amount, word) = if more > Money::default() { (more, "more") } else { (Money::default() - more, "less") };
        told.push(format!("Without tax that is {} {word} than the first estimate.", show(amount)));
    }
    if let Some(ways) = assessment.ways.first() {
        let followed = ways.kind.way_words(ways.followed);
        told.push(format!("{} can be put right in more than one way; proposed here: {followed}.", ways.what));
    }
    told
}

fn needed(desk: &Desk<'_>) -> Vec<String> {
    let Desk { job, assessment, .. } = desk;
    let mut told = answers(assessment);
    if job.prices.estimate_rules.old_parts && assessment.approval.answer.is_none() && assessment.progress.parts > 0 {
        told.push(OLD_PARTS.into());
    }
    let held = assessment.sizing.orders.iter().filter(|line| line.state == OrderState::Held);
    let held: Vec<String> = held.map(|line| line.what.clone()).collect();
    if !held.is_empty() {
        let waits = "Not to be ordered before their sizes are settled";
        told.push(format!("{waits}: {}. Nothing to do for you.", some_of(&held, GROUPS_NAMED)));
    }
    // What is a complaint is picked among them: it is not asked of somebody who told what was noticed.
    let was_told = |fact: HistoryFact| Complaint::of(fact).is_some() && !job.complaints.is_empty();
    let unasked = |fact: &&HistoryFact| !job.history.contains_key(*fact) && !was_told(**fact);
    let questions: Vec<&str> =
        HistoryFact::ALL.iter().filter(unasked).take(QUESTIONS).map(|fact| fact.question()).collect();
    if !questions.is_empty() && !assessment.parts.is_empty() {
        told.push(format!("What you know of its past: {}", questions.join(" ")));
    }
    if told.is_empty() { vec!["Nothing at the moment.".into()] } else { told }
}

/// What the customer has still to say.
fn answers(assessment: &Assessment) -> Vec<String> {
    let approval = &assessment.approval;
    let Some(shown) = &approval.shown else {
        let priced = assessment.quote.lines.iter().any(|line| line.net.is_some());
        return if priced { vec!["Your yes, no or later to each job of the proposal.".into()] } else { vec![] };
    };
    let Some(answer) = &approval.answer else {
        let asked = match shown.jobs.len() {
            0 => counted(shown.lines.len(), "line", "lines"),
            jobs => counted(jobs, "job", "jobs"),
        };
        return vec![format!("Your yes, no or later to proposal {}, {asked}.", approval.version)];
    };
    let put_off = answer.given().filter(|given| *given == Consent::Later).count();
    let mut told = Vec::new();
    if put_off > 0 {
        let put_off =
            if shown.jobs.is_empty() { counted(put_off, "line", "lines") } else { counted(put_off, "job", "jobs") };
        told.push(format!("Your decision on {put_off} that you put off."));
    }
    let more = approval.exceeding().count();
    if more > 0 {
        let lines = counted(more, "line", "lines");
        told.push(format!("Your answer to what has changed since proposal {}: {lines}.", approval.version));
    }
    if told.is_empty() {
        told.push(format!("Nothing: you have answered proposal {}.", approval.version));
    }
    told
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Arrangement, Part};
    use crate::job::testing::arranged;
    use crate::job::{Answer, Job, PartRecord, TagRecord};
    use crate::wear::{Grade, Tag};

    fn sections(job: &Job) -> Vec<Section> {
        let Block::Summary(sections) = summary(&Desk::bare(job, &assess(job))) else { panic!("not a summary") };
        sections
    }

    fn worn(arrangement: Arrangement) -> Job {
        let engine = crate::engine::Engine::new(arrangement.clone()).unwrap();
        let record = |part: &Part| {
            let tags = part.kind.row().tags.iter().filter(|tag| **tag != Tag::LooksEven);
            let tags = tags.map(|tag| (*tag, TagRecord { grade: Grade::FOUR, zones: [].into() })).collect();
            (*part, PartRecord { tags, ..PartRecord::default() })
        };
        Job { parts: engine.parts().iter().map(record).collect(), arrangement: Some(arrangement), ..Job::default() }
    }

    #[test]
    fn who_told_what_was_noticed_is_not_asked_for_it_again() {
        let asks = |job: &Job| {
            let asked = |section: &Section| section.sentences.iter().any(|line| line.contains("pressure warning"));
            sections(job).iter().any(asked)
        };
        let mut job = arranged(Arrangement::inline(4));
        let others = HistoryFact::ALL.into_iter().filter(|fact| *fact != HistoryFact::LowOilPressure);
        job.history.extend(others.map(|fact| (fact, Answer::No)));
        assert!(asks(&job));
        job.complaints.insert(Complaint::LowPressureAtIdle);
        assert!(!asks(&job));
    }

    #[test]
    fn the_headings_are_always_the_same_and_none_is_empty() {
        for job in [Job::default(), arranged(Arrangement::inline(1)), worn(Arrangement::vee(16))] {
            let sections = sections(&job);
            let headings: Vec<&str> = sections.iter().map(|section| section.heading.as_str()).collect();
            assert_eq!(headings, ["What we found", "Why", "What we propose", "What it costs", "What we need from you"]);
            assert!(sections.iter().all(|section| !section.sentences.is_empty()));
        }
    }

    /// Some 55 lines of 90 letters fill a page.
    #[test]
    fn the_worst_engine_still_takes_one_page() {
        let lines: usize = sections(&worn(Arrangement::vee(16)))
            .iter()
            .flat_map(|section| &section.sentences)
            .map(|sentence| sentence.chars().count().div_ceil(70))
            .sum();
        assert!(lines < 40, "{lines} lines");
    }

    #[test]
    fn what_was_not_asked_is_asked_and_what_was_is_not() {
        let mut job = arranged(Arrangement::inline(4));
        let asked = |job: &Job| sections(job)[4].sentences.iter().any(|told| told.contains("Has it stood unused"));
        assert!(asked(&job));
        for fact in HistoryFact::ALL {
            job.history.insert(fact, Answer::Unknown);
        }
        assert!(!asked(&job));
    }
}
