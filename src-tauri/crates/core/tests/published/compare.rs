//! What came out beside what was expected.

use wearbook_core::assess::Assessment;
use wearbook_core::engine::Part;
use wearbook_core::job::Job;
use wearbook_core::measure::{Conformity, Entry, Length};
use wearbook_core::money::PriceList;
use wearbook_core::sizing::{Missing, ReadBackLine};
use wearbook_core::words::Terms;

use crate::case::{
    Expect, ExpectClearance, ExpectDecision, ExpectEstimate, ExpectFigure, ExpectOrder, ExpectPlan, ExpectReadBack,
};

/// Everything that is otherwise than expected, each in a sentence.
pub(crate) fn wrong(expect: &Expect, job: &Job, came: &Assessment, refusals: &[String]) -> Vec<String> {
    let mut wrong = refused(expect.refused.as_deref(), refusals);
    wrong.extend(expect.figures.iter().flat_map(|expected| figure(expected, came)));
    wrong.extend(expect.plans.iter().flat_map(|expected| plan(expected, came)));
    wrong.extend(expect.clearances.iter().flat_map(|expected| clearance(expected, came)));
    wrong.extend(expect.orders.iter().flat_map(|expected| order(expected, came)));
    wrong.extend(expect.read_back.iter().flat_map(|expected| read_back(expected, came)));
    wrong.extend(expect.decisions.iter().flat_map(|expected| decision(expected, came)));
    wrong.extend(expect.estimates.iter().flat_map(|expected| estimate(expected, &job.prices)));
    if let Some(expected) = &expect.doubts {
        wrong.extend(sentences("doubts", expected, &came.sheet_doubts));
    }
    if let Some(expected) = &expect.questions {
        let asked: Vec<String> =
            came.parts.iter().flat_map(|view| &view.readings).filter_map(|r| r.doubt.clone()).collect();
        wrong.extend(sentences("questions", expected, &asked));
    }
    wrong
}

/// What is wrong about one thing, gathered under its name.
struct Wrong {
    about: String,
    found: Vec<String>,
}

impl Wrong {
    fn about(about: String) -> Self {
        Self { about, found: vec![] }
    }

    fn unless(&mut self, right: bool, sentence: impl FnOnce() -> String) {
        if !right {
            self.found.push(format!("{}: {}", self.about, sentence()));
        }
    }

    /// To the last digit of what is expected.
    fn length(&mut self, what: &str, expected: Option<&Entry>, came: Length) {
        let Some(expected) = expected else { return };
        let off = (came - expected.length).abs();
        self.unless(off.times(2, 1) <= expected.step(), || {
            let shown = came.show(Length::from_nanometres(1), expected.unit);
            format!("the {what} is {shown}, not {expected}")
        });
    }

    fn verdict(&mut self, expected: Option<Option<Conformity>>, came: Option<Conformity>, because: &str) {
        let words = |verdict: Option<Conformity>| verdict.map_or("none", Conformity::words);
        let Some(expected) = expected else { return };
        self.unless(expected == came, || format!("the verdict is {}, not {}: {because}", words(came), words(expected)));
    }

    fn words(&mut self, what: &str, expected: Option<&String>, came: &[&str]) {
        let Some(expected) = expected else { return };
        self.unless(came.iter().any(|sentence| sentence.contains(expected)), || {
            format!("the {what} does not say “{expected}”: {came:?}")
        });
    }
}

fn refused(expected: Option<&str>, refusals: &[String]) -> Vec<String> {
    match (expected, refusals) {
        (None, refusals) => refusals.iter().map(|refusal| format!("refused: {refusal}")).collect(),
        (Some(_), []) => vec!["nothing was refused".into()],
        (Some(words), [refusal]) if refusal.contains(words) => vec![],
        (Some(words), refusals) => vec![format!("refused, but not with “{words}” alone: {refusals:?}")],
    }
}

fn sentences(what: &str, expected: &[String], came: &[String]) -> Vec<String> {
    let alike = expected.len() == came.len()
        && expected.iter().all(|words| came.iter().any(|sentence| sentence.contains(words.as_str())));
    if alike { vec![] } else { vec![format!("the {what} are {came:?}, not {expected:?}")] }
}

fn figure(expected: &ExpectFigure, came: &Assessment) -> Vec<String> {
    let mut wrong = Wrong::about(format!("{} of {}", kebab(expected.quantity), expected.part));
    let figures = came.parts.iter().filter(|view| view.part == expected.part).flat_map(|view| &view.figures);
    let mut figures = figures.filter(|figure| {
        figure.quantity == expected.quantity && figure.phase == expected.phase && figure.station == expected.station
    });
    let Some(figure) = figures.next() else {
        wrong.unless(false, || "no such figure".into());
        return wrong.found;
    };
    wrong.length("value", expected.value.as_ref(), figure.low);
    if figure.high != figure.low {
        wrong.length("value", expected.value.as_ref(), figure.high);
    }
    wrong.length("smallest", expected.least.as_ref(), figure.low);
    wrong.length("largest", expected.most.as_ref(), figure.high);
    wrong.verdict(expected.verdict, figure.verdict, &figure.because);
    wrong.words("reason", expected.because.as_ref(), &[&figure.because]);
    wrong.words("limit", expected.limits.as_ref(), &[&figure.limits]);
    if let Some(general) = expected.general {
        wrong.unless(figure.general == general, || format!("the limits are from {}", figure.source));
    }
    wrong.found
}

fn plan(expected: &ExpectPlan, came: &Assessment) -> Vec<String> {
    let mut wrong = Wrong::about(format!("plan of the {}", expected.group.label()));
    let Some(plan) = came.plan(expected.group) else {
        wrong.unless(false, || "there is none".into());
        return wrong.found;
    };
    wrong.unless(kebab(plan.action) == expected.action, || {
        format!("the action is {}, not {}: {}", kebab(plan.action), expected.action, plan.because)
    });
    if let Some(size) = &expected.size {
        let size = size.as_ref().map(|size| size.length);
        wrong.unless(plan.size == size, || format!("the size is “{}”: {}", plan.size_shown, plan.because));
    }
    if let Some(settled) = expected.settled {
        wrong.unless(plan.settled == settled, || format!("settled is {}: {:?}", plan.settled, plan.missing));
    }
    if let Some(by) = expected.decided_by {
        wrong.unless(plan.decided_by == Some(by), || format!("it is decided by {}", part(plan.decided_by)));
    }
    wrong.words("reason", expected.because.as_ref(), &[&plan.because]);
    let missing: Vec<String> = plan.missing.iter().map(Missing::sentence).collect();
    wrong.words("list of what is missing", expected.missing.as_ref(), &all(&missing));
    wrong.words("list of notices", expected.notice.as_ref(), &all(&plan.notices));
    wrong.found
}

fn clearance(expected: &ExpectClearance, came: &Assessment) -> Vec<String> {
    let mut wrong = Wrong::about(format!("clearance to expect at {}", expected.part));
    let Some(predicted) = came.sizing.clearances.iter().find(|one| one.part == expected.part) else {
        wrong.unless(false, || "no clearance comes out".into());
        return wrong.found;
    };
    wrong.length("smallest", expected.least.as_ref(), predicted.worst_case.0);
    wrong.length("largest", expected.most.as_ref(), predicted.worst_case.1);
    wrong.length("smallest likely one", expected.likely_least.as_ref(), predicted.likely.0);
    wrong.length("largest likely one", expected.likely_most.as_ref(), predicted.likely.1);
    wrong.verdict(expected.verdict, predicted.verdict, &predicted.limits);
    wrong.found
}

fn order(expected: &ExpectOrder, came: &Assessment) -> Vec<String> {
    let mut wrong = Wrong::about(format!("order of {}", expected.kind.row().name.said(Terms::default())));
    let size = expected.size.as_ref().map(|size| size.length);
    let mut lines = came.sizing.orders.iter().filter(|line| line.kind == expected.kind);
    let Some(line) = lines.find(|line| size.is_none() || line.size == size) else {
        wrong.unless(false, || "no such line".into());
        return wrong.found;
    };
    wrong.unless(kebab(line.state) == expected.state, || {
        format!("the state is {}: {:?}", kebab(line.state), line.waits_for)
    });
    if let Some(quantity) = expected.quantity {
        wrong.unless(line.quantity == quantity, || format!("there are {}", line.quantity));
    }
    wrong.words("list of what it waits for", expected.waits_for.as_ref(), &all(&line.waits_for));
    wrong.found
}

fn read_back(expected: &ExpectReadBack, came: &Assessment) -> Vec<String> {
    let mut wrong = Wrong::about(format!("what came back of the {}", expected.group.label()));
    let Some(back) = came.sizing.read_back.iter().find(|back| back.group == Some(expected.group)) else {
        wrong.unless(false, || "nothing is to be machined".into());
        return wrong.found;
    };
    let problems: Vec<String> = back.parts.iter().filter_map(ReadBackLine::sentence).collect();
    wrong.unless(back.confirmed == expected.confirmed, || format!("confirmed is {}: {problems:?}", back.confirmed));
    wrong.words("list of problems", expected.problem.as_ref(), &all(&problems));
    wrong.found
}

fn decision(expected: &ExpectDecision, came: &Assessment) -> Vec<String> {
    let mut wrong = Wrong::about(format!("decision on {}", expected.part));
    let decision = came.part(expected.part).map(|view| &view.decision);
    wrong.unless(decision.is_some_and(|decision| decision.outcome == expected.outcome), || {
        let reasons = decision.map(|decision| decision.reasons.iter().map(|reason| reason.because.as_str()).collect());
        let reasons: Vec<&str> = reasons.unwrap_or_default();
        format!("it is “{}”: {reasons:?}", decision.map_or("none", |decision| decision.outcome.words()))
    });
    wrong.found
}

fn estimate(expected: &ExpectEstimate, prices: &PriceList) -> Vec<String> {
    let mut wrong = Wrong::about(format!("a sum of {}", expected.agreed));
    let read = |typed: &str| prices.currency.read(typed).map_err(|error| error.0);
    let rules = prices.estimate_rules;
    let judged = read(&expected.agreed).and_then(|agreed| {
        if let Some(allowed) = &expected.allowed {
            let ours = rules.allowance.map(|allowance| allowance.on(agreed));
            let expected = read(allowed)?;
            wrong.unless(ours == Some(expected), || format!("{ours:?} may be added, not {expected:?}"));
        }
        match (&expected.total, expected.must_ask) {
            (Some(total), Some(must_ask)) => {
                let ours = rules.must_ask(agreed, read(total)?);
                wrong.unless(ours == must_ask, || format!("whether the customer is asked before {total}: {ours}"));
            }
            (None, None) if expected.allowed.is_some() => {}
            _ => return Err("it expects nothing whole: a total and whether it must be asked about".into()),
        }
        Ok(())
    });
    wrong.unless(judged.is_ok(), || judged.err().unwrap_or_default());
    wrong.found
}

fn all(sentences: &[String]) -> Vec<&str> {
    sentences.iter().map(String::as_str).collect()
}

fn part(part: Option<Part>) -> String {
    part.map_or_else(|| "nobody".into(), |part| part.to_string())
}

fn kebab(word: impl serde::Serialize) -> String {
    serde_json::to_value(word).ok().as_ref().and_then(serde_json::Value::as_str).unwrap_or_default().to_owned()
}
