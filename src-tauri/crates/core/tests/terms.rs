//! Where the trade is split by country, all that is told is told in the words that the shop chose; what a person typed
//! stays as it was typed, and what was proposed stays as it was shown.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test stops at what it did not expect")]

use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Value, json};
use wearbook_core::assess::{assess, assess_given, check};
use wearbook_core::cause::diagnose;
use wearbook_core::date::Date;
use wearbook_core::decide::rules;
use wearbook_core::document::{
    Desk, Extent, Shop, closing_sheet, condition_report, evidence_sheet, size_sheet, size_table, work_list,
    work_list_table,
};
use wearbook_core::engine::{Arrangement, Engine, Part, PartKind, Tappets};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, ListKind, PartRecord, RecordedChange, TagRecord};
use wearbook_core::sheet::Dispute;
use wearbook_core::wear::Grade;
use wearbook_core::words::{Term, Terms, Usage};

/// Each term as it is not said by default.
const OTHER: Terms = Terms { tappet: Usage::American, end_float: Usage::American, piston_pin: Usage::British };

/// What a customer typed, with all that could be mistaken for a marker or be said otherwise.
const TYPED: &str = "{tappet} and {end-float}: the tappets rattle, the end float is large";

/// A log, each change held against the job before it.
#[derive(Default)]
struct Bench(Vec<Edit>);

impl Bench {
    fn job(&self, terms: Terms) -> Job {
        Job::fold(&self.0).speaking(terms)
    }

    #[track_caller]
    fn does(&mut self, change: Value) {
        let change: Change = serde_json::from_value(change).unwrap();
        assert_eq!(check(&self.job(OTHER), &change), Ok(()), "{change:?}");
        let id = EditId::next(self.0.last().map(|edit| edit.id), 1, DeviceId(1));
        self.0.push(Edit { id, change: RecordedChange::Known(change) });
    }
}

fn arrangement(tappets: Tappets) -> Arrangement {
    Arrangement { tappets, ..Arrangement::inline(1) }
}

/// An engine with a finding on every part, and with readings of what is called by two names.
fn bench() -> Bench {
    let mut bench = Bench::default();
    let arrangement = arrangement(Tappets::FlatHydraulic);
    let parts = Engine::new(arrangement.clone()).unwrap().parts().to_vec();
    bench.does(json!({ "do": "arrange", "arrangement": arrangement }));
    let line = |kind: &str, quantity: &str, figures: Value| {
        let mut line = figures;
        line["of"] = json!({ "kind": kind, "quantity": quantity });
        line
    };
    bench.does(json!({ "do": "use-sheet", "sheet": {
        "head": { "name": "Bench", "unit": "millimetre" },
        "lines": [
            line("crankshaft", "end-float", json!({ "max": "0.1 mm", "limit": "0.2 mm" })),
            line("tappet", "diameter", json!({ "min": "24.9 mm", "max": "25 mm", "limit": "24.8 mm" })),
        ] } }));
    let mut measure = |part: &str, quantity: &str, value: &str| {
        bench.does(json!({ "do": "measure", "reading": { "part": part, "quantity": quantity, "value": value } }));
    };
    measure("crankshaft", "end-float", "0.4 mm");
    measure("tappet.1.intake.1", "diameter", "24.5 mm");
    measure("tappet.1.intake.1", "tappet-bore", "25.1 mm");
    for (n, part) in parts.iter().enumerate() {
        for (m, tag) in part.kind.row().tags.iter().enumerate() {
            let grade = Grade::ALL[(n + m) % 4];
            bench.does(json!({ "do": "tag", "part": part, "tag": tag, "grade": grade }));
        }
    }
    let price = |kind: PartKind| json!({ "of": { "kind": kind, "work": "replace" }, "part": 2500, "minutes": 10 });
    let prices: Vec<Value> = PartKind::ALL.into_iter().map(price).collect();
    bench.does(json!({ "do": "use-prices", "prices": { "currency": "EUR", "hour": 6000, "tax": { "rate": 1900 }, "prices": prices } }));
    bench.does(json!({ "do": "set-price", "price": price(PartKind::Tappet) }));
    bench.does(json!({ "do": "choose-way", "kind": "camshaft", "way": "replace", "reason": "No weld." }));
    bench
}

/// Every text in it that is for people: ids have neither spaces nor capitals.
fn texts(value: &Value) -> Vec<String> {
    let is_id = |text: &str| text.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b".-".contains(&b));
    match value {
        Value::String(text) if is_id(text) => vec![],
        Value::String(text) => vec![text.clone()],
        Value::Array(values) => values.iter().flat_map(texts).collect(),
        Value::Object(fields) => fields.values().flat_map(texts).collect(),
        _ => vec![],
    }
}

/// The texts of a paper: what stands in quotes in its debugging form.
fn texts_of(paper: &impl std::fmt::Debug) -> Vec<String> {
    let shown = format!("{paper:?}").replace("\\\"", "”").replace("\\u{a0}", " ");
    let quoted: Vec<Value> = shown.split('"').skip(1).step_by(2).map(Value::from).collect();
    texts(&Value::from(quoted))
}

/// Words that were not chosen.
fn not_chosen() -> [&'static str; 3] {
    Term::ALL.map(|term| {
        Usage::ALL.map(|usage| term.name(usage)).into_iter().find(|name| *name != OTHER.name(term)).unwrap()
    })
}

#[track_caller]
fn speaks(texts: impl IntoIterator<Item = String>) -> usize {
    let mut spoken = 0;
    for text in texts {
        assert!(!text.contains(['{', '}']), "a marker was left: {text}");
        let words = text.to_lowercase();
        let said = not_chosen().into_iter().find(|word| words.contains(word));
        assert_eq!(said, None, "not chosen: {text}");
        spoken += usize::from(Term::ALL.iter().any(|term| words.contains(OTHER.name(*term))));
    }
    spoken
}

#[test]
fn an_assessment_and_its_papers_speak_in_the_words_that_were_chosen() {
    let job = bench().job(OTHER);
    let assessment = assess(&job);
    assert!(speaks(texts(&serde_json::to_value(&assessment).unwrap())) > 20);
    let shop = Shop::default();
    let desk = Desk { job: &job, assessment: &assessment, date: Date::EPOCH, shop: &shop };
    let lists = ListKind::ALL.map(|kind| work_list(&desk, kind));
    assert!(speaks(texts_of(&condition_report(&desk, Extent::Full))) > 15);
    assert!(speaks(texts_of(&lists)) > 4);
    assert!(speaks(texts_of(&ListKind::ALL.map(|kind| work_list_table(&assessment, kind)))) > 2);
    assert!(speaks(texts_of(&size_sheet(&desk))) > 1);
    assert!(speaks(texts_of(&size_table(&assessment))) > 1);
    assert!(speaks(texts_of(&evidence_sheet(&desk))) > 0);
    speaks(texts_of(&closing_sheet(&desk)));
}

#[test]
fn every_reason_speaks_in_the_words_that_were_chosen() {
    let mut spoken = 0;
    for tappets in [Tappets::FlatSolid, Tappets::RollerHydraulic] {
        let arrangement = arrangement(tappets);
        let parts = Engine::new(arrangement.clone()).unwrap().parts().to_vec();
        for kind in [PartKind::Tappet, PartKind::Pushrod, PartKind::Lobe, PartKind::Camshaft] {
            for (tag, grade) in kind.row().tags.iter().flat_map(|tag| Grade::ALL.map(|grade| (tag, grade))) {
                let record = |part: &Part| {
                    let tagged = (part.kind == kind).then(|| (*tag, TagRecord { grade, zones: BTreeSet::new() }));
                    (
                        *part,
                        PartRecord {
                            clean: tagged.is_none(),
                            tags: tagged.into_iter().collect(),
                            ..PartRecord::default()
                        },
                    )
                };
                let parts = parts.iter().map(record).collect();
                let job = Job { arrangement: Some(arrangement.clone()), parts, terms: OTHER, ..Job::default() };
                let assessment = assess_given(&job, |_, _| diagnose(None, &job, &BTreeMap::new()));
                let decided: Vec<_> = assessment.parts.into_iter().map(|view| view.decision).collect();
                spoken += speaks(texts(&serde_json::to_value(decided).unwrap()));
            }
        }
    }
    assert!(spoken > 100, "{spoken}");
}

#[test]
fn tables_speak_in_the_words_that_were_chosen() {
    let rules = rules::ALL.iter().flat_map(|rule| [rule.why(OTHER).into_owned(), rule.source.to_owned()]);
    assert!(speaks(rules) > 4);
    let disputes = Dispute::ALL.map(|dispute| dispute.row()).into_iter();
    let disputes = disputes.flat_map(|row| [row.question, row.usual.words, row.other.words]);
    assert!(speaks(disputes.map(|text| text.said(OTHER).into_owned())) > 1);
    for kind in PartKind::ALL {
        speaks([kind.row().name, kind.row().short].map(|name| name.said(OTHER).into_owned()));
        speaks(kind.quantities().iter().map(|has| has.quantity.words(OTHER).into_owned()));
    }
    let plan = Engine::speaking(arrangement(Tappets::FlatSolid), OTHER).unwrap().plan();
    assert!(speaks(texts(&serde_json::to_value(plan).unwrap())) > 1);
}

#[test]
fn a_history_speaks_in_the_words_that_were_chosen() {
    let bench = bench();
    let job = bench.job(OTHER);
    assert!(speaks(bench.0.iter().map(|edit| edit.sentence(&job))) > 10);
}

#[test]
fn a_refusal_speaks_in_the_words_that_were_chosen() {
    let job = bench().job(OTHER);
    let refused = [
        json!({ "do": "tag", "part": "tappet.1.intake.1", "tag": "copper-showing", "grade": 1 }),
        json!({ "do": "clean", "part": "tappet.2.intake.1" }),
        json!({ "do": "measure", "reading": { "part": "tappet.1.intake.1", "quantity": "end-float", "value": "1 mm" } }),
        json!({ "do": "state-line", "line": { "of": { "kind": "tappet", "quantity": "end-float" }, "max": "1 mm" } }),
        json!({ "do": "state-line", "line": { "of": { "kind": "bore", "quantity": "diameter", "port": "intake" }, "max": "1 mm" } }),
        json!({ "do": "choose-way", "kind": "tappet", "way": "weld-up", "reason": "Cheaper." }),
        json!({ "do": "set-price", "price": { "of": { "kind": "tappet", "work": "replace" }, "part": -1 } }),
        json!({ "do": "arrange", "arrangement": arrangement(Tappets::None) }),
    ];
    let refusals = refused.map(|change| {
        let change: Change = serde_json::from_value(change).unwrap();
        job.check(&change).unwrap_err().to_string()
    });
    assert_eq!(speaks(refusals.clone()), refusals.len(), "{refusals:?}");
}

#[test]
fn what_a_person_typed_stays_as_it_was_typed() {
    let mut bench = bench();
    bench.does(json!({ "do": "fill", "field": "complaint", "text": TYPED }));
    bench.does(json!({ "do": "remark", "part": "tappet.1.intake.1", "text": TYPED }));
    bench
        .does(json!({ "do": "add-item", "item": { "list": "order", "what": TYPED, "quantity": 1, "because": TYPED } }));
    let job = bench.job(OTHER);
    let assessment = assess(&job);
    let told = texts(&serde_json::to_value(&assessment).unwrap());
    assert_eq!(
        told.iter().filter(|text| *text == TYPED).count(),
        7,
        "the remark; the item’s words twice, and its reason; both on the bill, and the reason for its job"
    );
    let shop = Shop::default();
    let desk = Desk { job: &job, assessment: &assessment, date: Date::EPOCH, shop: &shop };
    let report = texts_of(&condition_report(&desk, Extent::Full));
    assert!(report.iter().any(|text| text == TYPED), "the complaint");
    let typed = bench.0.iter().map(|edit| edit.sentence(&job)).filter(|text| text.contains("{tappet} and {end-float}"));
    assert_eq!(typed.count(), 3);
}

#[test]
fn what_was_proposed_keeps_its_words_and_is_no_difference() {
    let mut bench = bench();
    let shown = assess(&bench.job(OTHER)).quote;
    bench.does(json!({ "do": "propose", "quote": shown }));
    let later = assess(&bench.job(Terms::default()));
    assert!(later.quote.lines.iter().any(|line| line.what == "2 tappets: replace"));
    assert_eq!(later.approval.shown, Some(shown), "as it was shown");
    assert_eq!(later.approval.since, [], "other words are no difference");
}
