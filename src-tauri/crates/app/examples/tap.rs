//! How long one tap takes, from its edit to the answer that the page draws: on a job out of an archive and on a V8 with 500
//! edits; and SQLite alone appending the same bytes as safely.
//!
//! `tap ARCHIVE` prints medians in milliseconds.

#![allow(clippy::indexing_slicing, reason = "what the actions answered has these fields")]

use std::error::Error;
use std::hint::black_box;
use std::path::Path;
use std::time::Instant;

use rusqlite::Connection;
use serde_json::{Value, json};
use wearbook_app::{Answer, Wearbook};
use wearbook_core::assess::{assess_with, check};
use wearbook_core::cause::Memo;
use wearbook_core::cause::diagnose_with;
use wearbook_core::decide::decide;
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Log, OnPart, RecordedChange};
use wearbook_core::measure::Quantity;
use wearbook_core::sizing::Measured;
use wearbook_core::wear::Grade;
use wearbook_store::{JobId, Store, StoreError};

const TAPS: usize = 101;
const EDITS: usize = 500;

/// A sheet with limits and a series.
const SHEET: &str = include_str!("../../core/examples/measured/sheet.json");

fn main() -> Result<(), Box<dyn Error>> {
    let archive = std::env::args().nth(1).ok_or("usage: tap ARCHIVE")?;
    time("the demo", |book| {
        let arrival = book.arrive(archive.as_ref())?;
        let taken = ask(book, "archive_import", json!({ "arrival": arrival }), None)?;
        Ok(json!({ "job": taken["jobs"][0] }))
    })?;
    time("a V8 with 500 edits", |book| {
        let begun = ask(book, "job_create", json!({}), None)?;
        ask(book, "edits_append", json!({ "job": begun["job"], "changes": v8()? }), None)
    })
}

/// Begins a job and taps.
fn time(name: &str, begin: impl FnOnce(&Wearbook) -> Result<Value, Box<dyn Error>>) -> Result<(), Box<dyn Error>> {
    let folder = tempfile::tempdir()?;
    let begun = begin(&Wearbook::open(folder.path())?)?;
    let job: JobId = serde_json::from_value(begun["job"].clone())?;
    let log = Log::new(Store::open(folder.path())?.read::<_, StoreError>(|ledger| ledger.edits(job))?);
    let parts = log.engine().and_then(Result::ok).map(|engine| engine.parts().to_vec()).unwrap_or_default();
    let taps: Vec<Change> = parts.iter().cycle().step_by(7).zip(0..).filter_map(tap).take(TAPS).collect();

    let book = Wearbook::open(folder.path())?;
    let mut whole = Vec::new();
    for change in &taps {
        let arguments = json!({ "job": job, "changes": [change] });
        whole.push(timed(|| book.act("edits_append", arguments, None)).1);
    }
    drop(book);
    let store = Store::open(folder.path())?;
    let (synced, written) =
        (sqlite(&folder.path().join("full"), "FULL", &taps)?, sqlite(&folder.path().join("off"), "OFF", &taps)?);
    let whole = median(whole);
    let sync = synced - written;
    let parts = parts_of(log, &store, job, &taps)?;
    let told = parts.iter().map(|(part, ms)| format!("{part} {ms:.2}"));
    let causes = parts.iter().filter(|(part, _)| *part == "causes").map(|(_, ms)| ms).sum::<f64>();
    println!("A tap on {name}, from its edit to the answer");
    println!("  ours {whole:.2} ms, SQLite alone appending the same {synced:.2} ms: ratio {:.2}", whole / synced);
    println!("  sync {sync:.2}, {}", told.collect::<Vec<_>>().join(", "));
    println!("  all but the sync and the causes {:.2} ms", whole - sync - causes);
    Ok(())
}

/// What an edit goes through, part by part, as the action does it.
fn parts_of(
    mut log: Log,
    store: &Store,
    job: JobId,
    taps: &[Change],
) -> Result<Vec<(&'static str, f64)>, Box<dyn Error>> {
    let (mut memo, mut other) = (Memo::default(), Memo::default());
    let mut times: [(&str, Vec<f64>); 8] =
        ["check", "append", "fold", "measured", "decisions", "causes", "lists and costs", "JSON"]
            .map(|part| (part, vec![]));
    for change in taps {
        let checked = timed(|| check(log.job(), change));
        let edit =
            Edit { id: EditId::next(log.latest(), 0, DeviceId(1)), change: RecordedChange::Known(change.clone()) };
        // Left again before it is kept: what remains is the sync.
        let (_, appended) = timed(|| {
            store.write(|ledger| {
                ledger.append(job, std::slice::from_ref(&edit))?;
                Err::<(), _>(StoreError::NoSuchJob)
            })
        });
        let folded = timed(|| log.extend([edit]));
        let Some(Ok(engine)) = log.engine() else { continue };
        let (measured, measuring) = timed(|| Measured::of(engine, log.job()));
        let decided = timed(|| decide(engine, log.job(), &measured));
        let caused = timed(|| diagnose_with(Some(engine), log.job(), &measured.figures, &mut memo));
        let (assessment, assessing) = timed(|| assess_with(&log, &mut other));
        let written = timed(|| serde_json::to_string(&assessment));
        let rest = assessing - measuring - decided.1 - caused.1;
        let took = [checked.1, appended, folded.1, measuring, decided.1, caused.1, rest, written.1];
        times.iter_mut().zip(took).for_each(|((_, all), took)| all.push(took));
    }
    Ok(times.into_iter().map(|(part, took)| (part, median(took))).collect())
}

/// SQLite alone, appending the same bytes to a table of the same form.
fn sqlite(file: &Path, synchronous: &str, taps: &[Change]) -> Result<f64, Box<dyn Error>> {
    let mut connection = Connection::open(file)?;
    connection.pragma_update_and_check(None, "journal_mode", "WAL", |_| Ok(()))?;
    connection.pragma_update(None, "synchronous", synchronous)?;
    connection.execute_batch(
        "CREATE TABLE edit (job TEXT NOT NULL, id TEXT NOT NULL, change TEXT NOT NULL, PRIMARY KEY (job, id)) STRICT, WITHOUT ROWID",
    )?;
    let mut took = Vec::new();
    for (change, n) in taps.iter().zip(1..) {
        let row =
            (format!("{:032x}", 7), EditId::next(None, n, DeviceId(1)).to_string(), serde_json::to_string(change)?);
        let (done, ms) = timed(|| {
            let transaction = connection.transaction()?;
            transaction.prepare_cached("INSERT INTO edit VALUES (?1, ?2, ?3)")?.execute(row)?;
            transaction.commit()
        });
        done?;
        took.push(ms);
    }
    Ok(median(took))
}

/// A tag on a part, of another grade each time.
fn tap((part, n): (&Part, usize)) -> Option<Change> {
    let (tag, grade) = (*part.kind.row().tags.first()?, *Grade::ALL.get(n % Grade::ALL.len())?);
    Some(Change::OnPart(OnPart::Tag { part: *part, tag, grade, zones: [].into() }))
}

/// Every part looked at, some decided otherwise, and read place by place until there are 500 changes.
fn v8() -> Result<Vec<Value>, Box<dyn Error>> {
    let arrangement = Arrangement::vee(8);
    let engine = Engine::new(arrangement.clone())?;
    let mut changes = vec![json!({ "do": "arrange", "arrangement": arrangement }), serde_json::from_str(SHEET)?];
    for (part, n) in engine.parts().iter().zip(0..) {
        let row = part.kind.row();
        changes.push(match row.tags.get(n % row.tags.len().max(1)) {
            Some(tag) if n % 3 > 0 => {
                let zones: Vec<_> = row.zones.zones().iter().take(2).collect();
                json!({ "do": "tag", "part": part, "tag": tag, "grade": n % 4 + 1, "zones": zones })
            }
            _ => json!({ "do": "clean", "part": part }),
        });
        if n % 40 == 7 {
            let outcome = row.outcomes.get(n % row.outcomes.len().max(1));
            changes.push(json!({ "do": "overrule", "part": part, "outcome": outcome, "reason": "The shop’s way." }));
        }
    }
    // Read a second time, there are enough.
    for part in [engine.parts(), engine.parts()].concat() {
        let sizes = part.kind.quantities().iter();
        for has in sizes.filter(|has| matches!(has.quantity, Quantity::Diameter | Quantity::Wall)) {
            for (spot, n) in has.spots.all().into_iter().zip(0..) {
                let value = format!("2.{:04} in", 9990 + n % 7);
                let reading = json!({ "part": part, "quantity": has.quantity, "spot": spot, "value": value });
                changes.push(json!({ "do": "measure", "reading": reading }));
            }
        }
    }
    changes.truncate(EDITS);
    Ok(changes)
}

fn ask(book: &Wearbook, action: &str, arguments: Value, bytes: Option<Vec<u8>>) -> Result<Value, Box<dyn Error>> {
    match book.act(action, arguments, bytes)? {
        Answer::Json(json) => Ok(serde_json::from_str(&json)?),
        Answer::Bytes { .. } => Err(format!("{action} answered bytes").into()),
    }
}

fn timed<T>(work: impl FnOnce() -> T) -> (T, f64) {
    let start = Instant::now();
    let done = black_box(work());
    (done, start.elapsed().as_secs_f64() * 1e3)
}

fn median(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times.get(times.len() / 2).copied().unwrap_or(f64::NAN)
}
