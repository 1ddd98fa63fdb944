//! What has become of the last proposal: what was shown, what was answered, and what has changed since.

use std::collections::BTreeMap;

use serde::Serialize;

use super::known::Job;
use super::{Consent, CustomerAnswer, EditId, Proposed};
use crate::money::{Charge, Money, PartState, Quote, QuoteLine};

/// How a line of the quote differs from the last proposal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Since {
    /// The line.
    pub of: Charge,
    /// In words.
    pub what: String,
    /// What changed, in a sentence.
    pub because: String,
    /// Whether it is more than was proposed: then it must be asked anew.
    pub exceeds: bool,
}

/// What was proposed to the customer last, and what has become of it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Approval {
    /// How many proposals there were: the number of the last one.
    pub version: usize,
    /// The edit that made the last proposal.
    pub proposal: Option<EditId>,
    /// Exactly what was shown.
    pub shown: Option<Quote>,
    /// What the customer answered.
    pub answer: Option<CustomerAnswer>,
    /// How the quote of now differs from it.
    pub since: Vec<Since>,
}

impl Approval {
    /// What the customer said to a line; none before there was an answer, and where nothing was asked.
    pub fn said_to(&self, of: &Charge) -> Option<Consent> {
        self.answer.as_ref()?.to(self.shown.as_ref()?, of)
    }

    /// Whether a line was asked for and has no answer.
    pub fn asks(&self, of: &Charge) -> bool {
        let is_shown = |shown: &Quote| shown.lines.iter().any(|line| line.of == *of);
        self.answer.is_none() && self.shown.as_ref().is_some_and(is_shown)
    }

    /// What is more than was proposed.
    pub fn exceeding(&self) -> impl Iterator<Item = &Since> {
        self.since.iter().filter(|since| since.exceeds)
    }

    /// What a line was asked for under: "job 2, Bores, pistons and rings"; "it" where lines were asked for one by one.
    pub fn named(&self, of: &Charge) -> String {
        let job = self.shown.as_ref().and_then(|shown| shown.job_of(of));
        job.map_or_else(|| "it".into(), |job| format!("job {}, {}", job.number, job.title))
    }
}

impl Job {
    /// What was proposed last and what has become of it, beside the quote of now.
    pub fn approval(&self, quote: &Quote) -> Approval {
        self.proposals.last().map_or_else(Approval::default, |last| became_of(self.proposals.len(), last, quote))
    }

    /// The same of the last proposal that was answered: that answer holds until a later one is there.
    pub fn answered(&self, quote: &Quote) -> Approval {
        self.last_answered().map_or_else(Approval::default, |(version, last)| became_of(version, last, quote))
    }

    /// The last proposal that was answered, with its number.
    pub(super) fn last_answered(&self) -> Option<(usize, &Proposed)> {
        (1..).zip(&self.proposals).filter(|(_, proposed)| proposed.answer.is_some()).last()
    }
}

/// What has become of one proposal, beside the quote of now.
fn became_of(version: usize, proposed: &Proposed, quote: &Quote) -> Approval {
    Approval {
        version,
        proposal: Some(proposed.edit),
        shown: Some(proposed.quote.clone()),
        answer: proposed.answer.clone(),
        since: changed_since(&proposed.quote, quote),
    }
}

/// In which state a part was asked for and in which it comes now; none where they are the same or one was not noted.
fn other_state(old: &QuoteLine, now: &QuoteLine) -> Option<(PartState, PartState)> {
    old.state.zip(now.state).filter(|(old, now)| old != now)
}

/// What has changed between a proposal and the quote of now.
fn changed_since(proposed: &Quote, now: &Quote) -> Vec<Since> {
    let by_key = |quote: &Quote| -> BTreeMap<Charge, QuoteLine> {
        quote.lines.iter().map(|line| (line.of.clone(), line.clone())).collect()
    };
    let (before, after) = (by_key(proposed), by_key(now));
    let gone = before.iter().filter(|(key, _)| !after.contains_key(key)).map(|(key, line)| Since {
        of: key.clone(),
        what: line.what.clone(),
        because: "It is no longer needed.".into(),
        exceeds: false,
    });
    let changed = after.iter().filter_map(|(key, line)| {
        let old = before.get(key);
        let state = old.and_then(|old| other_state(old, line));
        // A new one for the price of a used one is no less than was agreed to.
        let is_worse = state.is_some_and(|(_, now)| now != PartState::New);
        let exceeds = old.is_none_or(|old| is_worse || line.quantity > old.quantity || line.net > old.net);
        let because = match old {
            None => format!("Added since: {}", line.because),
            Some(old) if old.quantity != line.quantity => {
                format!("{} proposed, now {}: {}", old.quantity, line.quantity, line.because)
            }
            Some(old) if old.net != line.net => {
                let show = |net: Option<Money>| net.map_or_else(|| "no price".into(), |net| now.currency.show(net));
                format!("Its price has changed from {} to {}.", show(old.net), show(line.net))
            }
            Some(_) if state.is_none() => return None,
            Some(_) => String::new(),
        };
        let because = match state {
            Some((old, now)) => format!("Proposed {}, now {}. {because}", old.words(), now.words()).trim_end().into(),
            None => because,
        };
        Some(Since { of: key.clone(), what: line.what.clone(), because, exceeds })
    });
    gone.chain(changed).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::{assess, check};
    use crate::engine::Arrangement;
    use crate::job::testing::then;
    use crate::job::{Change, DeviceId, Edit, Job, RecordedChange};
    use serde_json::json;

    /// A log that grows as it would at the bench: each change is checked first.
    struct Bench(Vec<Edit>);

    impl Bench {
        fn job(&self) -> Job {
            Job::fold(&self.0)
        }

        fn try_do(&mut self, change: serde_json::Value) -> Result<EditId, String> {
            let change: Change = serde_json::from_value(change).unwrap();
            check(&self.job(), &change).map_err(|refused| refused.0)?;
            let id = EditId::next(self.0.last().map(|edit| edit.id), 1, DeviceId(1));
            self.0.push(Edit { id, change: RecordedChange::Known(change) });
            Ok(id)
        }

        #[track_caller]
        fn does(&mut self, change: serde_json::Value) -> EditId {
            self.try_do(change).unwrap()
        }
    }

    fn bench() -> Bench {
        let mut bench = Bench(vec![]);
        bench.does(json!({ "do": "arrange", "arrangement": Arrangement::inline(4) }));
        bench.does(json!({ "do": "use-prices", "prices": {
            "currency": "EUR", "hour": 6000, "tax": { "rate": 1900 },
            "prices": [{ "of": { "kind": "main-shell", "work": "replace" }, "part": 2500, "minutes": 10 }],
        } }));
        bench
    }

    #[test]
    fn what_was_shown_is_kept_and_a_late_find_makes_a_difference() {
        let mut bench = bench();
        let quote = assess(&bench.job()).quote;
        assert_eq!(quote.lines[0].net.map(|net| net.minor()), Some(5 * (2500 + 1000)), "five pairs, ten minutes each");
        assert_eq!((quote.net.minor(), quote.tax.minor(), quote.gross.minor()), (17_500, 3_325, 20_825));
        let proposal = bench.does(json!({ "do": "propose", "quote": quote }));
        let answers: Vec<_> = quote.jobs.iter().map(|asked| json!({ "of": asked.of, "answer": "yes" })).collect();
        let mut answer = json!({
            "proposal": proposal, "jobs": answers, "name": "A. Customer", "signature": [[[10, 10], [9000, 500]]],
        });
        bench.does(json!({ "do": "answer-proposal", "answer": answer }));
        let approval = assess(&bench.job()).approval;
        assert_eq!((approval.version, approval.since.len()), (1, 0));
        assert_eq!(approval.answer.unwrap().name, "A. Customer");

        bench.does(json!({ "do": "tag", "part": "piston.2", "tag": "scuffing", "grade": 3 }));
        let late = assess(&bench.job()).approval;
        assert_eq!(late.since[0].what, "Piston: replace");
        assert!(late.since[0].because.starts_with("Added since: "), "{}", late.since[0].because);
        assert_eq!(late.shown.unwrap(), quote, "what was shown does not change");

        answer["jobs"][0]["answer"] = "no".into();
        answer["jobs"].as_array_mut().unwrap().pop();
        let refusal = bench.try_do(json!({ "do": "answer-proposal", "answer": answer })).unwrap_err();
        assert!(refusal.contains("has no answer"), "{refusal}");
    }

    /// 16 CCR 3353(a): a part is new unless it is named otherwise; so a yes to new ones is none to used ones.
    #[test]
    fn a_yes_to_new_parts_is_none_to_used_ones() {
        let mut begun = bench();
        begun.does(json!({ "do": "clean", "part": "crankshaft" }));
        let changed = |supplied: &str, now: &str| {
            let mut bench = Bench(begun.0.clone());
            let supply = |state: &str| {
                let supply = json!({ "state": state });
                json!({ "do": "supply-parts", "kind": "main-shell", "supply": supply })
            };
            bench.does(supply(supplied));
            let quote = assess(&bench.job()).quote;
            bench.does(json!({ "do": "propose", "quote": quote }));
            bench.does(supply(now));
            let since = assess(&bench.job()).approval.since;
            since.into_iter().map(|own| (own.because, own.exceeds)).collect::<Vec<_>>()
        };
        assert_eq!(changed("new", "new"), []);
        assert_eq!(changed("new", "used"), [("Proposed new, now used.".into(), true)]);
        assert_eq!(changed("exchange", "used"), [("Proposed exchange, now used.".into(), true)]);
        assert_eq!(changed("used", "new"), [("Proposed used, now new.".into(), false)]);
    }

    #[test]
    fn a_figure_typed_past_the_job_is_refused() {
        let mut bench = bench();
        let mut quote = serde_json::to_value(assess(&bench.job()).quote).unwrap();
        quote["gross"] = 1.into();
        let refusal = bench.try_do(json!({ "do": "propose", "quote": quote })).unwrap_err();
        assert!(refusal.contains("not what follows"), "{refusal}");
    }

    #[test]
    fn a_signature_keeps_to_its_field() {
        let mut bench = bench();
        let quote = assess(&bench.job()).quote;
        let proposal = bench.does(json!({ "do": "propose", "quote": quote }));
        let jobs: Vec<_> = quote.jobs.iter().map(|asked| json!({ "of": asked.of, "answer": "later" })).collect();
        let outside = json!({ "proposal": proposal, "jobs": jobs, "name": "A", "signature": [[[10_001, 0]]] });
        assert!(bench.try_do(json!({ "do": "answer-proposal", "answer": outside })).is_err());
        let nameless = json!({ "proposal": proposal, "jobs": jobs, "name": " " });
        assert!(bench.try_do(json!({ "do": "answer-proposal", "answer": nameless })).is_err());
    }

    /// Published: 16 CCR 3356(e), a consent by word is noted with date, time, name and telephone number.
    #[test]
    fn a_yes_by_telephone_without_number_or_time_does_not_count() {
        let mut bench = bench();
        let quote = assess(&bench.job()).quote;
        let proposal = bench.does(json!({ "do": "propose", "quote": quote }));
        let jobs: Vec<_> = quote.jobs.iter().map(|asked| json!({ "of": asked.of, "answer": "yes" })).collect();
        let mut by_telephone = |number: &str, time: &str| {
            let afar = json!({ "number": number, "date": "3 May 2026", "time": time });
            let answer =
                json!({ "proposal": proposal, "jobs": jobs, "name": "A", "way": "by telephone", "afar": afar });
            bench.try_do(json!({ "do": "answer-proposal", "answer": answer })).map(|_| ())
        };
        let refused = |what: &str| {
            Err(format!("{what} is missing: without number, date and time an answer from afar does not count."))
        };
        assert_eq!(by_telephone(" ", "14:20"), refused("The number"));
        assert_eq!(by_telephone("0100 200", ""), refused("The time"));
        assert_eq!(by_telephone("0100 200", "14:20"), Ok(()));
    }

    #[test]
    fn what_was_answered_line_by_line_stays_so() {
        let mut quote = assess(&bench().job()).quote;
        quote.jobs.clear();
        let mut job = bench().job();
        then(&mut job, 49, &json!({ "do": "clean", "part": "crankpin.1" }));
        let proposal = then(&mut job, 50, &json!({ "do": "propose", "quote": quote }));
        let lines: Vec<_> = quote.lines.iter().map(|line| json!({ "of": line.of, "answer": "no" })).collect();
        let answer = json!({ "proposal": proposal, "lines": lines, "name": "A" });
        then(&mut job, 51, &json!({ "do": "answer-proposal", "answer": answer }));
        let assessment = assess(&job);
        let shells = &quote.lines[0].of;
        assert_eq!(assessment.approval.said_to(shells), Some(Consent::No));
        let order = assessment.list(crate::job::ListKind::Order).unwrap();
        let held = order.items.iter().find(|item| item.of.as_ref() == Some(shells)).unwrap();
        assert_eq!(held.waits_for[0], "The customer said no to it.");
    }

    #[test]
    fn what_costs_less_than_agreed_is_not_asked_again() {
        let mut bench = bench();
        let quote = assess(&bench.job()).quote;
        let proposal = bench.does(json!({ "do": "propose", "quote": quote }));
        let jobs: Vec<_> = quote.jobs.iter().map(|asked| json!({ "of": asked.of, "answer": "yes" })).collect();
        bench.does(json!({ "do": "answer-proposal", "answer": { "proposal": proposal, "jobs": jobs, "name": "A" } }));
        let mut price = |part: u32| {
            let of = json!({ "kind": "main-shell", "work": "replace" });
            bench.does(json!({ "do": "set-price", "price": { "of": of, "part": part, "minutes": 10 } }));
            assess(&bench.job()).approval.since.iter().map(|since| since.exceeds).collect::<Vec<_>>()
        };
        assert_eq!(price(2400), [false]);
        assert_eq!(price(2600), [true]);
    }
}
