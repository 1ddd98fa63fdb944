//! What must not be said of one engine at the same time, on whatever screen or page.

use std::collections::BTreeSet;

use wearbook_core::assess::{Assessment, next_look};
use wearbook_core::cause::{Answered, CauseView, ComplaintAnswer, Memo, Verdict, WayInView};
use wearbook_core::date::Date;
use wearbook_core::document::{Block, Desk, Extent, Shop, condition_report, message};
use wearbook_core::engine::{Part, PartKind};
use wearbook_core::job::{Answer, ItemKey, Job, ListKind};
use wearbook_core::list::ListItem;
use wearbook_core::view::{PartView, Seen};
use wearbook_core::work::Outcome;

/// Every contradiction in what follows from a job, in words.
pub(crate) fn contradictions(job: &Job, came: &Assessment) -> Vec<String> {
    [
        states(came),
        counts(came),
        verdict(came),
        causes(job, came),
        answers(job, came),
        todos(job, came),
        looks(job, came),
    ]
    .into_iter()
    .flatten()
    .chain(accused(came))
    .collect()
}

/// A part has one state.
fn states(came: &Assessment) -> Vec<String> {
    let wrong = |view: &&PartView| {
        let damaged = view.findings.iter().any(|finding| finding.tag.is_damage());
        match view.seen {
            Seen::Worn => !damaged || view.worst.is_none(),
            Seen::Clean => damaged || view.worst.is_some(),
            Seen::NotLooked | Seen::Along => !view.findings.is_empty(),
        }
    };
    came.parts.iter().filter(wrong).map(|view| format!("{} is {:?} with its tags", view.label, view.seen)).collect()
}

/// What is counted is there.
fn counts(came: &Assessment) -> Vec<String> {
    let count = |is: &dyn Fn(&PartView) -> bool| came.parts.iter().filter(|view| is(view)).count();
    let worn = count(&|view| view.seen == Seen::Worn);
    let looked = count(&|view| matches!(view.seen, Seen::Clean | Seen::Worn));
    let open = count(&|view| view.seen == Seen::NotLooked && view.is_looked_at_alone());
    let told = came.progress;
    let mut wrong = Vec::new();
    if (told.worn, told.looked) != (worn, looked) || told.parts.checked_sub(told.looked) != Some(open) {
        wrong.push(format!("{told:?}, and there are {looked} looked at, {worn} worn, {open} open"));
    }
    wrong
}

/// The verdict and what it is about.
fn verdict(came: &Assessment) -> Vec<String> {
    let causes = &came.causes;
    let damaged =
        came.parts.iter().find(|view| view.is_measured_outside() || view.worst.is_some_and(|worst| worst.number() > 1));
    let looked = came.progress.looked > 0;
    let is_wrong = match causes.verdict {
        Verdict::Sound | Verdict::SoundSoFar => damaged.is_some(),
        Verdict::NothingExamined => looked,
        Verdict::Named => !causes.causes.iter().any(|cause| cause.named),
        _ => causes.causes.iter().any(|cause| cause.named),
    };
    let told = || format!("{:?}: {}, and {:?}", causes.verdict, causes.summary, damaged.map(|view| &view.label));
    is_wrong.then(told).into_iter().collect()
}

/// A cause is called one thing everywhere.
fn causes(job: &Job, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    for cause in &came.causes.causes {
        let unlikely = cause.likelihood.contains("unlikely") || cause.likelihood == "possible";
        if cause.named && (unlikely || !cause.told || cause.ordinary) {
            wrong.push(format!("{} is named, and {}, told {}", cause.id, cause.likelihood, cause.told));
        }
        if cause.evidence_for.iter().any(|own| cause.evidence_against.iter().any(|other| own.words == other.words)) {
            wrong.push(format!("{} has the same evidence for and against it", cause.id));
        }
        if let Some(way) = cause.ways_in.iter().find(|way| way.named && !is_told_of(way, job, came)) {
            wrong.push(format!("{}: {} is named, and nothing tells of it", cause.id, way.words));
        }
        if !cause.chain.ways.is_empty() && !cause.chain.ask.is_empty() {
            wrong.push(format!("{}: its way in is known and is to be asked for", cause.id));
        }
        let own = |tag: &str| SIGNS.iter().any(|(id, signs)| *id == cause.id && signs.contains(&tag));
        let is_own = |words: &str| words.split(", grade").next().is_some_and(own) && words.contains("bearing shell");
        if let Some(sign) = cause.evidence_against.iter().find(|own| own.parts.len() > 2 && is_own(&own.words)) {
            wrong.push(format!("{} has its own sign against it: {}", cause.id, sign.words));
        }
        if !cause.chain.ways.is_empty() && !cause.chain.look.is_empty() {
            wrong.push(format!("{}: its way in is known and is to be looked for", cause.id));
        }
        let seen = |part: &Part| came.outside.iter().any(|view| view.part == *part && view.seen != Seen::NotLooked);
        if let Some(part) = cause.chain.look.iter().find(|part| seen(part)) {
            wrong.push(format!("{}: {part} is to be looked at and has been", cause.id));
        }
    }
    wrong
}

/// What dirt leaves on the halves of bearings: wherever it lies, it never speaks against it.
const SIGNS: [(&str, &[&str]); 1] = [("dirt-in-oil", &["scoring", "embedded debris"])];

/// Whether a find or an answer tells of a way in.
fn is_told_of(way: &WayInView, job: &Job, came: &Assessment) -> bool {
    let found = came.outside.iter().any(|view| view.seen == Seen::Worn);
    found || job.history.values().any(|answer| *answer == Answer::Yes) && !way.words.is_empty()
}

/// Each complaint is answered once, by something that was found.
fn answers(job: &Job, came: &Assessment) -> Vec<String> {
    let told: Vec<_> = came.causes.answers.iter().flat_map(|answer| &answer.complaints).collect();
    let once: BTreeSet<_> = told.iter().collect();
    let mut wrong = Vec::new();
    if once.len() != told.len() || told.len() != job.complaints.len() {
        wrong.push(format!("{} complaints, {} answers to {}", job.complaints.len(), told.len(), once.len()));
    }
    // Even wear explains as well as damage does.
    let is_found = |part: &Part| {
        let inside = came.parts.iter().find(|view| view.part == *part);
        let outside = came.outside.iter().find(|view| view.part == *part);
        inside.is_some_and(|view| !view.findings.is_empty() || view.is_measured_outside())
            || outside.is_some_and(|view| view.seen == Seen::Worn)
    };
    let of_answer = |answer: &ComplaintAnswer| {
        let explained = matches!(answer.answered, Answered::Explained | Answered::Partly);
        let told = || format!("{}: {} {}", answer.told, answer.words, answer.because());
        if explained == answer.parts.is_empty() {
            return Some(format!("{} by {} parts", told(), answer.parts.len()));
        }
        let idle = answer.parts.iter().find(|part| !is_found(part))?;
        Some(format!("{} by {idle}, on which nothing was found", told()))
    };
    wrong.extend(came.causes.answers.iter().filter_map(of_answer));
    wrong
}

/// What a told cause asks for stands on a list, or it is said why it is not needed.
fn todos(job: &Job, came: &Assessment) -> Vec<String> {
    let Some(list) = came.list(ListKind::PutRight) else { return vec![] };
    let mut asked = BTreeSet::new();
    let mut wrong = Vec::new();
    for way in came.causes.to_close.iter() {
        let key = ItemKey::PutRight { cause: "way-in".into(), check: way.id.clone() };
        if list.items.iter().filter(|item| item.asked.key == key).count() != usize::from(job.is_begun()) {
            wrong.push(format!("{} was found, and is not put right once", way.id));
        }
        asked.insert(key);
    }
    for cause in came.causes.causes.iter().filter(|cause| cause.told) {
        for todo in cause.check.iter().chain(&cause.put_right) {
            let key = ItemKey::PutRight { cause: cause.id.clone(), check: todo.id.into() };
            // What another cause asks for in the same words stands there once, under that one's key.
            let of_another = |item: &ListItem| match &item.asked.key {
                ItemKey::PutRight { check, .. } => check == todo.id && item.what == todo.words,
                _ => false,
            };
            let is_asked = todo.moot.is_empty();
            let mut items = list.items.iter();
            let is_listed = items.any(|item| item.asked.key == key || (is_asked && of_another(item)));
            if is_listed == is_asked {
                asked.insert(key);
            } else {
                wrong.push(format!("{}: {} listed: {is_listed}", cause.id, todo.sentence()));
            }
        }
    }
    let stray = list.items.iter().filter(|item| matches!(&item.asked.key, ItemKey::PutRight { .. }));
    wrong.extend(
        stray.filter(|item| !asked.contains(&item.asked.key)).map(|item| format!("nothing asks for {}", item.what)),
    );
    wrong
}

/// What is to be looked at or measured has not been.
fn looks(job: &Job, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    if let Some(look) = next_look(job, &mut Memo::default())
        && let Some(record) = job.parts.get(&look.part)
        && !look.measure
    {
        let unmarked = look.tag.is_some_and(|tag| record.tags.get(&tag).is_some_and(|seen| seen.zones.is_empty()));
        let back = look.part.kind.has_back() && !record.back_looked_at();
        if record.looked_at() && !unmarked && !back {
            wrong.push(format!("{} It has been.", look.sentence));
        }
    }
    // A job in which nothing was looked at has no lists yet.
    let Some(list) = came.list(ListKind::LookAgain).filter(|_| job.is_begun()) else { return wrong };
    for view in &came.parts {
        let open = view.decision.outcome == Outcome::CantSay && !view.decision.goes_along();
        let listed = list.items.iter().any(|item| item.parts.contains(&view.part));
        if open != listed {
            wrong.push(format!("{}: {}, on the list to look again: {listed}", view.label, view.decision.words()));
        }
        if view.decision.because().starts_with("Not looked at") && view.decision.looked_at {
            wrong.push(format!("{}: {}", view.label, view.decision.because()));
        }
    }
    wrong
}

/// How likely a cause must be at a place for what it accuses to be measured before it is decided; below that a check asks
/// for it.
const ACCUSED_FROM: f64 = 0.9;

/// What a cause accuses is not put back unmeasured.
fn accused(came: &Assessment) -> Vec<String> {
    let kinds = |cause: &CauseView| match cause.id.as_str() {
        "bent-rod" => Some(vec![PartKind::Rod]),
        "oval-housing" => Some(vec![PartKind::Rod, PartKind::HousingBore]),
        "tapered-journal" | "barrel-journal" | "hourglass-journal" | "out-of-round-journal" => {
            Some(vec![PartKind::MainJournal, PartKind::Crankpin])
        }
        _ => None,
    };
    let mut wrong = Vec::new();
    for cause in came.causes.causes.iter().filter(|cause| cause.named) {
        let Some(kinds) = kinds(cause) else { continue };
        for part in cause.places.iter().filter(|place| place.probability >= ACCUSED_FROM).flat_map(|place| &place.parts)
        {
            let Some(view) = came.parts.iter().find(|view| view.part == *part && kinds.contains(&part.kind)) else {
                continue;
            };
            let goes_back = matches!(view.decision.outcome, Outcome::PutBack | Outcome::Clean);
            if goes_back && view.figures.is_empty() && view.decision.overruled_because.is_none() {
                wrong.push(format!("{} goes back unmeasured, and {} is {}", view.label, cause.name, cause.likelihood));
            }
        }
    }
    wrong
}

/// What the papers say of the same job.
pub(crate) fn on_paper(job: &Job, came: &Assessment) -> Vec<String> {
    let shop = Shop::default();
    let desk = Desk { job, assessment: came, date: Date::EPOCH, shop: &shop };
    let mut wrong = Vec::new();
    let report = condition_report(&desk, Extent::Short);
    let texts: Vec<&String> = report
        .blocks
        .iter()
        .flat_map(|block| match block {
            Block::Paragraph(text) => vec![text],
            Block::Points(all) => all.iter().collect(),
            _ => vec![],
        })
        .collect();
    // A part is unknown, or something is known of it.
    let unknown = texts.iter().find_map(|text| text.split_once(". Nothing is known of these parts"));
    if let Some((unknown, _)) = unknown {
        let named: Vec<&str> = unknown.split("; ").collect();
        let known = came.parts.iter().filter(|view| view.seen != Seen::NotLooked || !view.readings.is_empty());
        wrong.extend(
            known
                .filter(|view| named.contains(&view.label.as_str()))
                .map(|view| format!("{} is called unknown", view.label)),
        );
    }
    let Some(Block::CustomersPage(page)) = report.blocks.first() else { return wrong };
    let looked = came.progress.looked;
    let counted = page.found.first().and_then(|text| text.split_once(" of ")).map(|(looked, _)| looked.to_owned());
    if counted.is_some_and(|counted| counted.parse() == Ok(0))
        && came.parts.iter().any(|view| !view.readings.is_empty())
    {
        wrong.push(format!("0 examined, {looked} looked at, and something was measured"));
    }
    let text: String = page.how.iter().map(|link| link.words.as_str()).collect::<Vec<&str>>().join(" ");
    let dust = came.causes.causes.iter().find(|cause| cause.id == "dusty-air");
    let is_unlikely = dust.is_some_and(|cause| cause.likelihood.contains("unlikely"));
    let is_looked = came.parts.iter().any(|view| {
        matches!(view.kind, PartKind::Piston | PartKind::Bore) && matches!(view.seen, Seen::Clean | Seen::Worn)
    });
    if is_unlikely && is_looked && text.to_lowercase().contains("an air cleaner") && !text.contains("show little dust")
    {
        wrong.push(format!("dust is unlikely, and the page says: {text}"));
    }
    // Every way in that is named in the chain stands on the page.
    if let Some(cause) = came.causes.causes.iter().find(|cause| cause.named).filter(|_| came.causes.enough_seen) {
        let ways = &cause.chain.ways;
        let told = unexplained(&text).to_lowercase();
        let untold = ways.iter().filter(|way| !told.contains(&unexplained(way).to_lowercase()));
        wrong.extend(untold.map(|way| format!("{way} let it in, and the page says: {text}")));
    }
    for told in page.besides.iter().filter(|told| !told.starts_with("Likely: ")) {
        let is_told = |words: &str| unexplained(words) == unexplained(told);
        let mut causes = came.causes.causes.iter();
        let sure = causes.any(|cause| is_told(&cause.plainly) && cause.likelihood == "very likely");
        // Of an engine that is worn and no more, the summary stands there.
        if !sure && !is_told(&came.causes.summary) {
            wrong.push(format!("{told} It is told as certain"));
        }
    }
    if message(&desk).iter().any(|line| line.starts_with("0 of ") && looked == 0)
        && !came.parts.is_empty()
        && job.is_begun()
    {
        wrong.push("the message says that nothing was examined".into());
    }
    wrong
}

/// Without what stands in brackets: a word of the trade is explained where it first stands.
fn unexplained(words: &str) -> String {
    let told = words.split('(').map(|part| part.split_once(')').map_or(part, |(_, after)| after).trim());
    told.collect::<Vec<_>>().join(" ").replace(" .", ".").replace(" ,", ",").trim_end().to_owned()
}
