//! Whole engines as data: a job in; every list, every line of the bill and every verdict out. What is expected was written
//! by hand before the engine ran, each line with its source; nothing writes it from what the program says. The README in
//! `tests/whole-engines` tells how a case is written.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use serde::Deserialize;
use serde_json::{Map, Value, json};
use wearbook_core::assess::{Assessment, assess, check};
use wearbook_core::caution::{ALL, Caution, GOVERNS};
use wearbook_core::document::{
    Block, Date, Desk, Extent, Paper, Shop, closing_sheet, condition_report, size_sheet, work_list,
};
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, ListKind, RecordedChange};
use wearbook_core::measure::Quantity;
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
    /// "crankpin.2", or "crankpin.*" for all.
    parts: String,
    quantity: Quantity,
    value: String,
    #[serde(default)]
    phase: Option<String>,
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
    Changed(Value),
}

/// Lists and bill are told whole; of verdicts those that matter.
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
            Step::Changed(change) => changes.push(change.clone()),
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

/// A reading at every place.
fn measure(engine: &Engine, readings: &Readings) -> Vec<Value> {
    let parts: Vec<Part> = match readings.parts.strip_suffix(".*") {
        Some(kind) => engine.parts().iter().copied().filter(|part| part.kind.row().id == kind).collect(),
        None => vec![readings.parts.parse().unwrap()],
    };
    assert!(!parts.is_empty(), "{} is nothing that the engine has", readings.parts);
    let of_part = |part: Part| {
        let has = part.kind.has(readings.quantity).unwrap_or_else(|| panic!("{part} has no {:?}", readings.quantity));
        let spots = has.spots.needed();
        spots.into_iter().map(move |spot| {
            json!({ "do": "measure", "reading": { "part": part, "quantity": readings.quantity, "spot": spot,
                "phase": readings.phase.as_deref().unwrap_or("found"), "value": readings.value } })
        })
    };
    parts.into_iter().flat_map(of_part).collect()
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
