//! What to do about the engine as a whole.

use crate::assess::Assessment;
use crate::cause::Verdict;
use crate::engine::PartKind;
use crate::money::{JobScope, Money, Need, PriceKey};
use crate::view::PartView;
use crate::work::Outcome;

/// What a shop says first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Advice {
    /// Too little has been seen, or a piece that decides all has not.
    TooEarly,
    /// Nothing has to be done but what an overhaul renews anyway.
    Sound,
    /// The dear pieces can be used again, and no other engine is cheaper.
    WorthRebuilding,
    /// Another engine may be, or is, cheaper.
    CompareWithAnother,
}

impl Advice {
    /// Read off what follows from the job. Block and crankshaft decide whether an engine is worth it: each of them may cost
    /// more than the engine (common practice).
    pub(super) fn of(assessment: &Assessment) -> Self {
        let other = &assessment.other_engines;
        if assessment.parts.is_empty() || is_too_little(assessment.causes.verdict) {
            return Self::TooEarly;
        }
        let renews_dear = dear(assessment).any(|view| view.decision.work().is_some_and(|work| outweighs(view, work)));
        if !other.verdict.is_empty() || renews_dear && !is_another_dearer(assessment) {
            return Self::CompareWithAnother;
        }
        if undecided(assessment).next().is_some() {
            return Self::TooEarly;
        }
        if is_sound(assessment) { Self::Sound } else { Self::WorthRebuilding }
    }

    /// In one or two sentences.
    pub(super) fn sentence(self, assessment: &Assessment) -> String {
        let progress = assessment.progress;
        match self {
            Self::TooEarly if progress.parts == 0 => {
                "It is too early to say: the engine has not been examined yet.".into()
            }
            Self::TooEarly => match undecided(assessment).next() {
                Some(view) if !is_too_little(assessment.causes.verdict) => format!(
                    "It is too early to say whether it is worth rebuilding. Still to be judged: {}.",
                    view.label.to_lowercase()
                ),
                _ => format!(
                    "It is too early to say: {} of {} parts have been examined.",
                    progress.looked, progress.parts
                ),
            },
            Self::Sound => match assessment.outside.iter().find(|view| view.worst.is_some()) {
                Some(view) => format!(
                    "Inside, nothing was found beyond the marks of use. Outside it something is wrong: {}.",
                    view.label.to_lowercase()
                ),
                None => "The engine is sound. Nothing was found beyond the marks of use.".into(),
            },
            Self::WorthRebuilding => format!("The engine is worth rebuilding. {}", worth(assessment)),
            Self::CompareWithAnother => {
                format!("Compare it with another engine before you decide. {}", compare(assessment))
            }
        }
    }
}

/// Whether too little was looked at to say anything of the whole.
fn is_too_little(verdict: Verdict) -> bool {
    matches!(verdict, Verdict::NothingExamined | Verdict::TooEarly | Verdict::SoundSoFar)
}

/// Block and crankshaft.
fn dear(assessment: &Assessment) -> impl Iterator<Item = &PartView> {
    assessment.parts.iter().filter(|view| matches!(view.kind, PartKind::Block | PartKind::Crankshaft))
}

fn outweighs(view: &PartView, work: crate::work::Work) -> bool {
    PriceKey { kind: view.kind, work }.may_outweigh_engine()
}

/// Of these it is still open what becomes of them, or nobody has looked.
fn undecided(assessment: &Assessment) -> impl Iterator<Item = &PartView> {
    dear(assessment).filter(|view| !view.decision.goes_along() && view.decision.outcome == Outcome::CantSay)
}

/// Whether another engine is known, and dearer.
fn is_another_dearer(assessment: &Assessment) -> bool {
    assessment.other_engines.engines.first().is_some_and(|engine| engine.more <= Money::default())
}

/// Nothing is damaged, and no job must be done but what is put together again anyway.
fn is_sound(assessment: &Assessment) -> bool {
    let jobs = &assessment.quote.jobs;
    let must = jobs.iter().any(|job| job.need == Need::Must && job.of != JobScope::Assembly);
    assessment.causes.verdict == Verdict::Sound && !must
}

fn worth(assessment: &Assessment) -> String {
    if let Some(engine) = assessment.other_engines.engines.first() {
        let less = Money::default() - engine.more;
        if less > Money::default() {
            return format!("It costs {} less than another engine.", assessment.quote.currency.show(less));
        }
    }
    "Its block and crankshaft can be used again.".into()
}

fn compare(assessment: &Assessment) -> String {
    if let Some(engine) = assessment.other_engines.engines.first().filter(|engine| engine.more > Money::default()) {
        let least = if assessment.quote.without_price > 0 { "at least " } else { "" };
        return format!("The rebuild costs {least}{} more.", assessment.quote.currency.show(engine.more));
    }
    let renewed: Vec<String> = dear(assessment)
        .filter(|view| view.decision.work().is_some_and(|work| outweighs(view, work)))
        .map(|view| view.label.to_lowercase())
        .collect();
    let verb = if renewed.len() == 1 { "has" } else { "have" };
    format!("The {} {verb} to be renewed.", renewed.join(" and "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::{Arrangement, Engine};
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    #[track_caller]
    fn advises(changes: &[Value], advice: Advice, words: &str) {
        let changes: Vec<Value> = [arrange(&Arrangement::inline(2))].iter().chain(changes).cloned().collect();
        let assessment = assess(&job_of(&changes));
        assert_eq!(Advice::of(&assessment), advice);
        let said = advice.sentence(&assessment);
        assert!(said.contains(words), "{said}");
    }

    fn clean() -> Vec<Value> {
        let engine = Engine::new(Arrangement::inline(2)).unwrap();
        engine.parts().iter().map(|part| json!({ "do": "clean", "part": part.to_string() })).collect()
    }

    fn tag(part: &str, tag: &str, grade: u8) -> Value {
        json!({ "do": "tag", "part": part, "tag": tag, "grade": grade })
    }

    #[test]
    fn it_is_too_early_before_enough_was_seen() {
        advises(&[], Advice::TooEarly, "0 of");
        advises(&[json!({ "do": "clean", "part": "crankpin.1" })], Advice::TooEarly, "1 of");
    }

    #[test]
    fn it_is_too_early_while_nobody_knows_of_the_block() {
        let mut changes = clean();
        changes.retain(|change| change["part"] != "block");
        changes.push(tag("rod-shell.1.upper", "scoring", 3));
        advises(&changes, Advice::TooEarly, "cylinder block");
    }

    #[test]
    fn an_engine_without_damage_is_sound() {
        advises(&clean(), Advice::Sound, "is sound");
    }

    #[test]
    fn what_can_be_mended_is_worth_it_and_what_costs_more_is_compared() {
        let scored = [clean(), vec![tag("rod-shell.1.upper", "scoring", 3)]].concat();
        advises(&scored, Advice::WorthRebuilding, "block and crankshaft");
        let cracked = [clean(), vec![tag("block", "cracks", 4)]].concat();
        advises(&cracked, Advice::CompareWithAnother, "has to be renewed");
        let prices = json!({ "do": "use-prices", "prices": { "currency": "EUR", "hour": 6000,
            "prices": [{ "of": { "kind": "rod-shell", "work": "replace" }, "part": 90_000 }] } });
        let other = |net: u32| json!({ "do": "note-other-engines", "engines": [{ "what": "Exchange", "state": "exchange", "net": net }] });
        let beside = |net| [scored.clone(), vec![prices.clone(), other(net)]].concat();
        advises(&beside(50_000), Advice::CompareWithAnother, "more");
        advises(&beside(900_000), Advice::WorthRebuilding, "less than another engine");
    }
}
