//! Whole engines as data: a job in; every list, every line of the bill, every verdict, every complaint's answer and every cause
//! out. What is expected was written by hand before the engine ran, each line with its source; nothing writes it from what the
//! program says. The README in `tests/whole-engines` tells how a case is written.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use serde::Deserialize;
use serde_json::{Map, Value, json};
use wearbook_core::assess::{Assessment, assess, check};
use wearbook_core::cause::CauseView;
use wearbook_core::caution::{ALL, Caution, GOVERNS};
use wearbook_core::document::{
    Block, Date, Desk, Extent, Paper, Shop, closing_sheet, condition_report, size_sheet, work_list,
};
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::{Change, Complaint, DeviceId, Edit, EditId, ItemKey, Job, ListKind, RecordedChange};
use wearbook_core::measure::{Quantity, Spot, Station};
use wearbook_core::words::Terms;
use wearbook_core::work::Outcome;

/// What cases share: an engine that was looked at and measured, and is sound.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Base {
    /// "inline", "vee" or "flat", and how many cylinders.
    engine: (String, u8),
    /// What differs from the ordinary engine of that layout.
    #[serde(default)]
    arrangement: Map<String, Value>,
    sheet: Value,
    #[serde(default)]
    prices: Option<Value>,
    readings: Vec<Readings>,
}

/// One quantity of one part or of all of a kind, the same at every place where it is measured.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Readings {
    /// "crankpin.2", or "crankpin.*" for all of them.
    parts: String,
    quantity: Quantity,
    value: String,
    #[serde(default)]
    phase: Option<String>,
    /// Only at this station.
    #[serde(default)]
    station: Option<Station>,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    /// What it is about.
    about: String,
    base: String,
    /// What differs from the base's engine.
    #[serde(default)]
    arrangement: Map<String, Value>,
    /// Nothing was looked at or measured.
    #[serde(default)]
    untouched: bool,
    /// Changes in the published form of a job's edits, and readings of a whole part.
    #[serde(default)]
    then: Vec<Step>,
    expect: Expect,
}

#[derive(Debug, Deserialize)]
#[serde(untagged)]
enum Step {
    Measured(Readings),
    Changed(Map<String, Value>),
}

/// Lists, bill, complaints and causes are told whole; of verdicts and of what is put right those that matter.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case", default)]
struct Expect {
    order: Option<Vec<Item>>,
    machine_shop: Option<Vec<Item>>,
    rebuild_here: Option<Vec<Item>>,
    clean: Option<Vec<Item>>,
    bill: Option<Vec<BillLine>>,
    /// The sum of the bill without tax, in hundredths.
    net: Option<i64>,
    verdicts: BTreeMap<String, Verdict>,
    complaints: Option<BTreeMap<Complaint, Answer>>,
    /// What is said of the whole engine.
    verdict: Option<Said>,
    causes: Option<Vec<Cause>>,
    /// Causes that are not even told.
    not_told: Vec<Unlikely>,
    put_right: Vec<PutRight>,
}

/// The answer to one complaint.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Answer {
    /// "explained", "partly", "not-explained" or "cant-say".
    answered: String,
    /// The parts that explain it, told whole: "rod-shell.3.upper", "main-shell.*.lower" for all of them.
    #[serde(default)]
    parts: Vec<String>,
    /// Words of the reason.
    #[serde(default)]
    because: String,
    source: String,
}

/// What is said, by its written form.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Said {
    is: String,
    source: String,
}

/// A named cause, its named places and its named ways in told whole.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Cause {
    id: String,
    #[serde(default)]
    places: BTreeSet<String>,
    /// The likeliest first.
    #[serde(default)]
    ways_in: Vec<String>,
    source: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Unlikely {
    id: String,
    source: String,
}

/// What a cause asks for before assembly.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct PutRight {
    cause: String,
    check: String,
    source: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Item {
    what: String,
    #[serde(default = "one")]
    quantity: u32,
    /// With how it begins.
    #[serde(default)]
    detail: String,
    #[serde(default)]
    held: bool,
    /// Words of what holds it.
    #[serde(default)]
    because_held: String,
    /// It is back, measured and right.
    #[serde(default)]
    right: bool,
    source: String,
}

fn one() -> u32 {
    1
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct BillLine {
    what: String,
    /// Without tax, in hundredths; none where it has no price.
    net: Option<i64>,
    source: String,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Verdict {
    outcome: Outcome,
    source: String,
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../tests/whole-engines")
}

fn read<T: for<'a> Deserialize<'a>>(path: &Path) -> T {
    let text = fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

#[test]
fn every_engine_comes_out_as_a_rebuilder_would_have_it() {
    let mut files: Vec<PathBuf> = fs::read_dir(folder()).unwrap().map(|entry| entry.unwrap().path()).collect();
    files.retain(|path| path.extension().is_some_and(|kind| kind == "json"));
    files.sort();
    assert!(!files.is_empty());
    let mut wrong = Vec::new();
    for path in files {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        let case: Case = read(&path);
        let job = job(&case);
        let came = assess(&job);
        let mut found = compare(&case, &came);
        found.extend(crowded(&job, &came));
        if !found.is_empty() {
            wrong.push(format!("{name}: {}\n  {}", case.about, found.join("\n  ")));
        }
    }
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n"));
}

fn job(case: &Case) -> Job {
    let base: Base = read(&folder().join("bases").join(format!("{}.json", case.base)));
    let (layout, cylinders) = (base.engine.0.as_str(), base.engine.1);
    let ordinary = match layout {
        "inline" => Arrangement::inline(cylinders),
        "vee" => Arrangement::vee(cylinders),
        "flat" => Arrangement::flat(cylinders),
        other => panic!("no engine is “{other}”"),
    };
    let mut arrangement = serde_json::to_value(ordinary).unwrap();
    let differs = base.arrangement.iter().chain(&case.arrangement);
    arrangement.as_object_mut().unwrap().extend(differs.map(|(field, value)| (field.clone(), value.clone())));
    let engine = Engine::speaking(serde_json::from_value(arrangement.clone()).unwrap(), Terms::default()).unwrap();
    let mut changes = vec![json!({ "do": "arrange", "arrangement": arrangement })];
    changes.push(json!({ "do": "use-sheet", "sheet": base.sheet }));
    changes.extend(base.prices.iter().map(|prices| json!({ "do": "use-prices", "prices": prices })));
    if !case.untouched {
        changes.extend(engine.parts().iter().map(|part| json!({ "do": "clean", "part": part })));
        changes.extend(base.readings.iter().flat_map(|readings| measure(&engine, readings)));
    }
    for step in &case.then {
        match step {
            Step::Measured(readings) => changes.extend(measure(&engine, readings)),
            Step::Changed(change) => changes.extend(of_all(&engine, change)),
        }
    }
    let mut edits: Vec<Edit> = Vec::new();
    for change in changes {
        let known: Change = serde_json::from_value(change.clone()).unwrap_or_else(|error| panic!("{change}: {error}"));
        check(&Job::fold(&edits), &known).unwrap_or_else(|refused| panic!("{change}: {}", refused.0));
        let id = EditId::next(edits.last().map(|edit| edit.id), 1, DeviceId(1));
        edits.push(Edit { id, change: RecordedChange::Known(known) });
    }
    Job::fold(&edits)
}

/// What the engine has of a name with stars.
fn all_like(engine: &Engine, pattern: &str) -> Vec<Part> {
    let all = engine.parts().iter().chain(engine.outside());
    let like: Vec<Part> = all.filter(|part| is_like(&part.to_string(), pattern)).copied().collect();
    assert!(!like.is_empty(), "{pattern} is nothing that the engine has");
    like
}

/// A reading at every place, or at those of one station.
fn measure(engine: &Engine, readings: &Readings) -> Vec<Value> {
    let of_part = |part: Part| {
        let has = part.kind.has(readings.quantity).unwrap_or_else(|| panic!("{part} has no {:?}", readings.quantity));
        let is_there = |spot: &Spot| readings.station.is_none() || spot.station == readings.station;
        let spots: Vec<Spot> = has.spots.needed().into_iter().filter(is_there).collect();
        assert!(!spots.is_empty(), "{part} is not measured at {:?}", readings.station);
        spots.into_iter().map(move |spot| {
            json!({ "do": "measure", "reading": { "part": part, "quantity": readings.quantity, "spot": spot,
                "phase": readings.phase.as_deref().unwrap_or("found"), "value": readings.value } })
        })
    };
    all_like(engine, &readings.parts).into_iter().flat_map(of_part).collect()
}

/// A change in which `parts` stands for every part of that name.
fn of_all(engine: &Engine, change: &Map<String, Value>) -> Vec<Value> {
    let mut one = change.clone();
    let Some(mask) = one.remove("parts") else { return vec![one.into()] };
    let of = |part: Part| {
        one.insert("part".into(), json!(part));
        one.clone().into()
    };
    all_like(engine, mask.as_str().unwrap()).into_iter().map(of).collect()
}

fn compare(case: &Case, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    let lists = [
        (ListKind::Order, &case.expect.order),
        (ListKind::MachineShop, &case.expect.machine_shop),
        (ListKind::RebuildHere, &case.expect.rebuild_here),
        (ListKind::Clean, &case.expect.clean),
    ];
    for (kind, expected) in lists {
        wrong.extend(expected.iter().flat_map(|expected| compare_list(came, kind, expected)));
    }
    wrong.extend(case.expect.bill.iter().flat_map(|bill| compare_bill(came, bill)));
    if let Some(net) = case.expect.net.filter(|net| came.quote.net.minor() != *net) {
        wrong.push(format!("bill: {} expected, it is {}", net, came.quote.net.minor()));
    }
    for (part, verdict) in &case.expect.verdicts {
        sourced(&mut wrong, part, &verdict.source);
        match came.part(part.parse().unwrap()) {
            Some(view) if view.decision.outcome == verdict.outcome => {}
            Some(view) => wrong.push(format!(
                "{part}: expected {:?}, it is {:?}: {}",
                verdict.outcome,
                view.decision.outcome,
                view.decision.because()
            )),
            None => wrong.push(format!("{part}: the engine does not have it")),
        }
    }
    wrong.extend(compare_answers(case, came));
    wrong.extend(compare_causes(case, came));
    wrong
}

/// The written form of what has one.
fn written(value: impl serde::Serialize) -> String {
    serde_json::to_value(value).unwrap().as_str().unwrap().to_owned()
}

fn compare_answers(case: &Case, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    let Some(expected) = &case.expect.complaints else { return wrong };
    let answered = |complaint: &Complaint| came.causes.answers.iter().find(|own| own.complaints.contains(complaint));
    for (complaint, answer) in expected {
        let name = written(complaint);
        sourced(&mut wrong, &name, &answer.source);
        let Some(own) = answered(complaint) else {
            wrong.push(format!("{name} is not answered"));
            continue;
        };
        if written(own.answered) != answer.answered || !own.because.contains(&answer.because) {
            let Answer { answered, because, .. } = answer;
            wrong.push(format!("{name}: {answered} “{because}” expected, it is {:.3} {own:?}", own.probability));
        }
        let names: BTreeSet<String> = own.parts.iter().map(ToString::to_string).collect();
        let is_of = |name: &&String| answer.parts.iter().any(|pattern| is_like(name, pattern));
        let more: Vec<&String> = names.iter().filter(|name| !is_of(name)).collect();
        let known: BTreeSet<String> = parts_of(came).map(|part| part.to_string()).collect();
        let less: Vec<&String> = known.iter().filter(|name| is_of(name) && !names.contains(*name)).collect();
        if !more.is_empty() || !less.is_empty() {
            wrong.push(format!("{name}: not of these, {more:?}; but of these, {less:?}"));
        }
        let of_nothing = answer.parts.iter().filter(|pattern| !known.iter().any(|name| is_like(name, pattern)));
        wrong.extend(of_nothing.map(|pattern| format!("{name}: {pattern} is nothing that the engine has")));
    }
    let all = came.causes.answers.iter().flat_map(|own| &own.complaints);
    let more = all.filter(|complaint| !expected.contains_key(complaint));
    wrong.extend(more.map(|complaint| format!("nobody asked what makes {}", written(complaint))));
    wrong
}

/// All parts, and what lies outside them.
fn parts_of(came: &Assessment) -> impl Iterator<Item = Part> + '_ {
    came.parts.iter().map(|view| view.part).chain(came.outside.iter().map(|view| view.part))
}

/// Whether a part's name is like a pattern, in which a star stands for any word, and at the end for all that follow.
fn is_like(name: &str, pattern: &str) -> bool {
    let (name, pattern): (Vec<&str>, Vec<&str>) = (name.split('.').collect(), pattern.split('.').collect());
    let is_long_enough = name.len() == pattern.len() || name.len() > pattern.len() && pattern.last() == Some(&"*");
    is_long_enough && name.iter().zip(&pattern).all(|(own, like)| *like == "*" || own == like)
}

fn compare_causes(case: &Case, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    let (expect, report) = (&case.expect, &came.causes);
    if let Some(said) = &expect.verdict {
        sourced(&mut wrong, &said.is, &said.source);
        if written(report.verdict) != said.is {
            wrong.push(format!("causes: {} expected, it is {}", said.is, written(report.verdict)));
        }
    }
    let told = |own: &CauseView| {
        format!("{} {:.3} {:?}", own.id, own.probability, own.evidence_for.first().map(|own| &own.words))
    };
    for expected in expect.causes.iter().flatten() {
        sourced(&mut wrong, &expected.id, &expected.source);
        let Some(own) = report.causes.iter().find(|own| own.id == expected.id) else {
            wrong.push(format!("causes: there is no {}", expected.id));
            continue;
        };
        if !own.named {
            wrong.push(format!("causes: {} is not named: {}", expected.id, told(own)));
            continue;
        }
        let places: BTreeSet<String> =
            own.places.iter().filter(|place| place.named).map(|place| place.label.clone()).collect();
        let ways: Vec<&String> = own.ways_in.iter().filter(|way| way.named).map(|way| &way.id).collect();
        if places != expected.places {
            wrong.push(format!("causes: {} at {:?}, it is at {places:?}", expected.id, expected.places));
        }
        if ways != expected.ways_in.iter().collect::<Vec<_>>() {
            wrong.push(format!("causes: {} came in by {:?}, it is {:?}", expected.id, expected.ways_in, own.ways_in));
        }
    }
    if let Some(expected) = &expect.causes {
        let named: Vec<&CauseView> = report.causes.iter().filter(|own| own.named).collect();
        let more = named.iter().filter(|own| !expected.iter().any(|expected| expected.id == own.id));
        wrong.extend(more.map(|own| format!("causes: nobody asked for {}", told(own))));
    }
    for unlikely in &expect.not_told {
        sourced(&mut wrong, &unlikely.id, &unlikely.source);
        match report.causes.iter().find(|own| own.id == unlikely.id) {
            Some(own) if !own.told => {}
            other => wrong.push(format!("causes: {} must not be told: {:?}", unlikely.id, other.map(told))),
        }
    }
    let asked: BTreeSet<&ItemKey> =
        came.list(ListKind::PutRight).unwrap().items.iter().map(|item| &item.asked.key).collect();
    for PutRight { cause, check, source } in &expect.put_right {
        sourced(&mut wrong, check, source);
        if !asked.contains(&ItemKey::PutRight { cause: cause.clone(), check: check.clone() }) {
            wrong.push(format!("put right: {cause}, {check} is missing"));
        }
    }
    wrong
}

fn compare_list(came: &Assessment, kind: ListKind, expected: &[Item]) -> Vec<String> {
    let list = came.list(kind).unwrap();
    let mut wrong = Vec::new();
    let mut met = BTreeSet::new();
    for line in expected {
        sourced(&mut wrong, &line.what, &line.source);
        let here =
            list.items.iter().enumerate().find(|(at, item)| {
                item.what == line.what && item.detail.starts_with(&line.detail) && !met.contains(at)
            });
        let Some((at, item)) = here else {
            wrong.push(format!("{}: “{}, {}” is missing", list.title, line.what, line.detail));
            continue;
        };
        met.insert(at);
        if item.quantity != line.quantity {
            wrong.push(format!("{}: {} of “{}”, it is {}", list.title, line.quantity, line.what, item.quantity));
        }
        let held = item.waits_for.join(" ");
        if held.is_empty() == line.held || !held.contains(&line.because_held) {
            let expected = if line.held { "held" } else { "free" };
            wrong.push(format!(
                "{}: “{}” must be {expected} {}; it waits for: {held}",
                list.title, line.what, line.because_held
            ));
        }
        if item.is_right != line.right {
            wrong.push(format!("{}: “{}” is back and right: {}", list.title, line.what, item.is_right));
        }
    }
    let more = list.items.iter().enumerate().filter(|(at, _)| !met.contains(at));
    wrong.extend(more.map(|(_, item)| {
        format!("{}: nobody asked for {} “{}, {}”: {}", list.title, item.quantity, item.what, item.detail, item.because)
    }));
    wrong
}

fn compare_bill(came: &Assessment, expected: &[BillLine]) -> Vec<String> {
    let mut wrong = Vec::new();
    for line in expected {
        sourced(&mut wrong, &line.what, &line.source);
        let here: Vec<_> = came.quote.lines.iter().filter(|own| own.what == line.what).collect();
        match here.as_slice() {
            [own] if own.net.map(|net| net.minor()) == line.net => {}
            [own] => wrong.push(format!("bill: “{}” {:?}, it is {:?}", line.what, line.net, own.net)),
            several => wrong.push(format!("bill: “{}” stands there {} times", line.what, several.len())),
        }
    }
    let told: BTreeSet<&str> = expected.iter().map(|line| line.what.as_str()).collect();
    let more = came.quote.lines.iter().filter(|line| !told.contains(line.what.as_str()));
    wrong.extend(more.map(|line| format!("bill: nobody asked for “{}”", line.what)));
    wrong
}

/// Spots of screens and papers that say nothing of the manual where they must, a caution twice, or more than two.
fn crowded(job: &Job, came: &Assessment) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut spot = |name: &str, rows: &[&Caution]| {
        if rows.len() > 2 {
            wrong.push(format!("{name}: {} cautions at one spot", rows.len()));
        }
    };
    for view in &came.parts {
        spot(&view.label, &view.cautions);
        spot(&format!("{}, decision", view.label), &view.work_cautions);
    }
    for list in &came.lists {
        list.items.iter().for_each(|item| spot(&format!("{}: {}", list.title, item.what), &item.cautions));
    }
    for view in &came.parts {
        let twice = view.work_cautions.iter().filter(|row| view.cautions.contains(row));
        wrong.extend(twice.map(|row| format!("{}: {} is said of the part and of its work", view.label, row.id)));
    }
    for list in &came.lists {
        let said: Vec<&str> = list.items.iter().flat_map(|item| &item.cautions).map(|row| row.id).collect();
        if said.iter().collect::<BTreeSet<_>>().len() < said.len() {
            wrong.push(format!("{}: a caution stands twice: {said:?}", list.title));
        }
    }
    let shop = Shop::default();
    let desk = Desk { job, assessment: came, date: Date::EPOCH, shop: &shop };
    let lists = came.lists.iter().filter(|list| list.items.iter().any(|item| item.hands.is_some() && !item.is_right));
    let mut papers: Vec<Paper> = lists.map(|list| work_list(&desk, list.kind)).collect();
    papers.extend([Extent::Short, Extent::Full].map(|extent| condition_report(&desk, extent)));
    papers.extend([size_sheet(&desk), closing_sheet(&desk)]);
    for paper in papers {
        let words: String = paper.blocks.iter().filter_map(told).collect();
        let rows = ALL.iter().filter(|row| words.contains(row.line)).count();
        let governs = words.matches(GOVERNS).count();
        if rows > 2 || governs != 1 {
            wrong.push(format!("{}: {rows} cautions, {governs} times that the manual governs", paper.title));
        }
    }
    wrong
}

fn told(block: &Block) -> Option<&str> {
    match block {
        Block::Caution(words) | Block::Paragraph(words) => Some(words),
        _ => None,
    }
}

fn sourced(wrong: &mut Vec<String>, what: &str, source: &str) {
    if source.trim().is_empty() {
        wrong.push(format!("“{what}” is expected without a source"));
    }
}
