//! Why it was decided so: each decision with its reason, said once for all parts that are decided alike.

use std::cmp::Reverse;

use super::chapter::chapter;
use super::desk::Desk;
use super::grouping::{grouped, named};
use super::paper::Block;
use super::rests_on::RestsOn;
use crate::assess::Assessment;
use crate::cost::Ways;
use crate::decide::{Decision, Reason, rules};
use crate::sheet::SizeGroup;
use crate::view::PartView;
use crate::words::{capitalised, plural};
use crate::work::Outcome;

/// The chapter: what is decided, the severest first, and below it what the rules rest on.
pub(super) fn decided(desk: &Desk<'_>) -> Vec<Block> {
    let assessment = desk.assessment;
    let mut views: Vec<&PartView> = assessment.parts.iter().filter(|view| is_told(desk, view)).collect();
    if views.is_empty() {
        return vec![];
    }
    views.sort_by_key(|view| Reverse(view.decision.outcome));
    let alike = grouped(&views, |view| {
        let decision = &view.decision;
        // Of what stays in its group of sizes the rule's sentence would tell only what becomes of the others.
        let ground = ground(assessment, view);
        let stays = decision.is_of_group() && ground != Ground::GroupSize;
        let because = stays.then(|| decision.because_by_rules().to_owned());
        (decision.words(), ground, decision.overruled_because.clone(), because)
    });
    let mut rests_on = RestsOn::default();
    let mut rows: Vec<[String; 2]> = Vec::new();
    for ((outcome, ground, ..), parts) in &alike {
        let sources = parts.iter().filter_map(|view| Some(view.decision.reasons.first()?.source));
        let named = names(parts, assessment);
        let told = match why(parts, *ground, assessment) {
            because if because.is_empty() => format!("{named}{}", rests_on.numbers(sources)),
            because => format!("{named}: {because}{}", rests_on.numbers(sources)),
        };
        let outcome = capitalised(outcome);
        match rows.iter_mut().find(|[own, _]| *own == outcome) {
            Some([_, lines]) => *lines = format!("{lines}\n{told}"),
            None => rows.push([outcome, told]),
        }
    }
    rows.push(["Rests on".into(), rests_on.told()]);
    let table = Block::table(
        "What is decided, of which parts and why; the numbers tell what a rule rests on.",
        [("Decided", 3), ("Parts, and why", 19)],
        rows,
    );
    let lead = Block::Paragraph("Where no reason stands, it is the damage that is told part by part.".into());
    let is_needed =
        alike.iter().any(|((_, ground, overruled, _), _)| *ground == Ground::OwnDamage && overruled.is_none());
    chapter("Why it was decided so", is_needed.then_some(lead).into_iter().chain([table]))
}

/// Whether it has a line here: what nobody looked at stands in a chapter of its own, and what only goes along with another part, or
/// comes new with it, is told by that one.
fn is_told(desk: &Desk<'_>, view: &PartView) -> bool {
    let decision = &view.decision;
    let is_open = decision.outcome == Outcome::CantSay && !decision.looked_at;
    decision.overruled_because.is_some() || !(is_open || decision.goes_along() || is_brought(desk, view))
}

fn is_brought(desk: &Desk<'_>, view: &PartView) -> bool {
    let arrangement = desk.job.arrangement.as_ref();
    let brings = arrangement.and_then(|arrangement| view.part.comes_with(arrangement));
    let is_renewed = |view: &PartView| view.decision.outcome == Outcome::Replace;
    is_renewed(view) && desk.assessment.parts.iter().any(|other| Some(other.part) == brings && is_renewed(other))
}

/// On what a decision stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Ground {
    /// The damage of the part itself, which is told part by part.
    OwnDamage,
    /// What is planned for the whole group of sizes, which is told with the sizes.
    GroupSize,
    /// What this rule says besides.
    Rule(&'static str),
    /// No rule has a word on it.
    None,
}

fn ground(assessment: &Assessment, view: &PartView) -> Ground {
    let Decision { outcome, overruled_because, .. } = &view.decision;
    if *outcome == Outcome::Machine && overruled_because.is_none() && is_sized(assessment, view) {
        return Ground::GroupSize;
    }
    let Some(Reason { rule, outcome, .. }) = view.decision.reasons.first() else { return Ground::None };
    // What can't be said yet names the look or reading that would decide, and that stands nowhere else.
    let is_told_by_part = rules::is_read_off_damage(*rule) && *outcome != Outcome::CantSay;
    if is_told_by_part { Ground::OwnDamage } else { Ground::Rule(rule.as_str()) }
}

/// Whether it is machined by the plan of its group of sizes.
fn is_sized(assessment: &Assessment, view: &PartView) -> bool {
    let plan =
        SizeGroup::of(view.kind).filter(|group| group.kind() == view.kind).and_then(|group| assessment.plan(group));
    plan.is_some_and(|plan| plan.machined().any(|own| own.part == view.part))
}

/// The reason of parts that are decided alike, in sentences.
fn why(parts: &[&PartView], ground: Ground, assessment: &Assessment) -> String {
    let Some(decision) = parts.first().map(|view| &view.decision) else { return String::new() };
    let because = match (ground, decision.reasons.first()) {
        // Said once above.
        (Ground::OwnDamage, _) => String::new(),
        (Ground::GroupSize, _) => "As planned for all of its kind, told under “Sizes and forms”.".to_owned(),
        (_, Some(reason)) if parts.iter().all(|view| view.decision.because_by_rules() == reason.because) => {
            reason.because.clone()
        }
        (_, Some(reason)) => reason.why.clone().into_owned(),
        (_, None) => "No rule has a word on it.".to_owned(),
    };
    match &decision.overruled_because {
        // What the part itself shows stands part by part.
        Some(reason) => otherwise(decision, reason, if ground == Ground::OwnDamage { "" } else { &because }),
        None => format!("{because}{}", ways_left(parts, assessment)),
    }
}

/// What a person decided otherwise, and what they did not choose.
fn otherwise(decision: &Decision, reason: &str, because: &str) -> String {
    let others = decision.possible.iter().filter(|outcome| **outcome != decision.outcome);
    let others: Vec<&str> = others.filter(|outcome| **outcome != decision.by_rules).map(|own| own.words()).collect();
    let by_rules = match decision.by_rules {
        own if own == decision.outcome => "The rules say the same.".to_owned(),
        own if because.is_empty() => format!("By the rules: {}.", own.words()),
        own => format!("By the rules: {}. {}", own.words(), sentence(because)),
    };
    let others = if others.is_empty() { String::new() } else { format!(" Not chosen either: {}.", others.join("; ")) };
    format!("Decided by the mechanic. {} {by_rules}{others}", sentence(reason))
}

/// The ways that a person did not choose, where more than one serves; empty where nobody chose.
fn ways_left(parts: &[&PartView], assessment: &Assessment) -> String {
    let chosen = |ways: &&Ways| {
        ways.chosen_because.is_some()
            && parts.iter().any(|view| view.kind == ways.kind && view.decision.work() == Some(ways.followed))
    };
    let Some((ways, reason)) =
        assessment.ways.iter().find(chosen).and_then(|own| Some((own, own.chosen_because.as_ref()?)))
    else {
        return String::new();
    };
    let others = ways.ways.iter().filter(|way| way.work != ways.followed).map(|way| way.words.as_str());
    let others = format!("Not chosen: {}.", others.collect::<Vec<_>>().join("; "));
    // A way of its own tells who chose it; the plan of a group of sizes does not.
    let is_said =
        parts.iter().any(|view| view.decision.reasons.first().is_some_and(|first| first.rule == rules::CHOSEN_WAY.id));
    if is_said { format!(" {others}") } else { format!(" Chosen by hand: {} {others}", sentence(reason)) }
}

/// What a person typed, ended as a sentence.
fn sentence(typed: &str) -> String {
    let typed = typed.trim();
    let is_ended = typed.is_empty() || typed.ends_with(['.', '!', '?', '…']);
    format!("{typed}{}", if is_ended { "" } else { "." })
}

/// Names longer than this are counted.
const NAMED: usize = 4;

/// The parts, kind by kind; where there are many of a kind and not all of it, how many.
fn names(parts: &[&PartView], assessment: &Assessment) -> String {
    let of_kind = |some: &[&PartView]| {
        let Some(kind) = some.first().map(|view| view.kind) else { return String::new() };
        let all = assessment.parts.iter().filter(|view| view.kind == kind).count();
        if (some.len(), all) == (2, 2) {
            return format!("both {}", plural(&kind.row().name.said(assessment.terms)));
        }
        let name = named(some, assessment);
        if some.len() <= NAMED || name.starts_with("all ") {
            return name;
        }
        format!("{} of {all} {}", some.len(), plural(&kind.row().name.said(assessment.terms)))
    };
    let kinds: Vec<String> = grouped(parts, |view| view.kind).iter().map(|(_, some)| of_kind(some)).collect();
    capitalised(&kinds.join("; "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::PartKind;
    use crate::engine::{Arrangement, Part};
    use crate::job::{ChosenWay, Job, Overrule, PartRecord, TagRecord};
    use crate::wear::{Grade, Tag};
    use crate::work::Work;

    fn looked_at(part: &str, tag: Option<(Tag, Grade)>) -> (Part, PartRecord) {
        let tags = tag.map(|(tag, grade)| (tag, TagRecord { grade, zones: [].into() })).into_iter().collect();
        (part.parse().unwrap(), PartRecord { clean: tag.is_none(), tags, ..PartRecord::default() })
    }

    fn rows(job: &Job) -> Vec<Vec<String>> {
        let blocks = decided(&Desk::bare(job, &assess(job)));
        let tables = blocks
            .into_iter()
            .filter_map(|block| if let Block::Table { rows, .. } = block { Some(rows) } else { None });
        tables.flatten().collect()
    }

    #[track_caller]
    fn tells(job: &Job, outcome: &str, line: &str) {
        let rows = rows(job);
        let row = rows.iter().find(|row| row[0] == outcome).unwrap_or_else(|| panic!("no {outcome} in {rows:#?}"));
        assert!(row[1].lines().any(|own| own == line), "“{line}” is not in {row:#?}");
    }

    fn job(parts: Vec<(Part, PartRecord)>) -> Job {
        Job { arrangement: Some(Arrangement::inline(4)), parts: parts.into_iter().collect(), ..Job::default() }
    }

    #[test]
    fn each_reason_is_told_once_with_what_it_rests_on() {
        let grade = Grade::TWO;
        let worn = job(vec![
            looked_at("piston.1", Some((Tag::Scuffing, Grade::THREE))),
            looked_at("pushrod.2.intake.1", Some((Tag::Bent, grade))),
            looked_at("lobe.2.exhaust.1", Some((Tag::Pitting, grade))),
            looked_at("tappet.4.intake.1", None),
            looked_at("rod.1", None),
            looked_at("rod.2", None),
        ]);
        tells(&worn, "Replace", "Pushrod 2, intake; Piston 1 [1]");
        tells(
            &worn,
            "Replace",
            "All 8 rod bearing shells; all 4 piston ring sets; all 10 main bearing shells; both thrust faces; Core plugs: \
             Renewed at every overhaul, whatever the old one looks like. [2, 3, 4]",
        );
        tells(&worn, "Put back", "Rod 1; Rod 2: It goes back to its own cylinder, the same way round. [1, 7]");
        let told = rows(&worn);
        let rests_on = told.last().unwrap();
        assert!(
            rests_on[0] == "Rests on" && rests_on[1].ends_with("; without a number: common practice."),
            "{rests_on:?}"
        );
        // Told by the camshaft that brings it, and by the chapter of what nobody looked at.
        let words = format!("{told:?}");
        assert!(words.contains("Camshaft: Lobe 2, exhaust") && !words.contains("Crankpin"), "{words}");
    }

    #[test]
    fn what_a_person_decided_otherwise_stands_beside_the_rules_and_what_else_could_be_done() {
        let (pump, mut record) = looked_at("oil-pump", Some((Tag::Scoring, Grade::THREE)));
        record.overrule = Some(Overrule { outcome: Outcome::RebuildHere, reason: "No new one is to be had".into() });
        tells(
            &job(vec![(pump, record)]),
            "Rebuild in the shop",
            "Oil pump: Decided by the mechanic. No new one is to be had. By the rules: replace. \
             Not chosen either: put back; clean and put back.",
        );
    }

    #[test]
    fn of_a_chosen_way_the_others_are_told() {
        let mut worn = job(vec![looked_at("lobe.2.exhaust.1", Some((Tag::Pitting, Grade::TWO)))]);
        let chosen = ChosenWay { way: Work::WeldUp, reason: "No new one is to be had.".into() };
        worn.chosen_ways.insert(PartKind::Camshaft, chosen);
        let words = format!("{:?}", rows(&worn));
        assert!(words.contains("No new one is to be had. Not chosen: a new camshaft."), "{words}");
    }

    #[test]
    fn an_engine_of_which_nothing_is_known_has_no_such_chapter() {
        assert!(decided(&Desk::bare(&Job::default(), &assess(&Job::default()))).is_empty());
    }
}
