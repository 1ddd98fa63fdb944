//! Times a shop with a thousand jobs beside one with ten: the list, a search, and the start of the program up to the list.
//!
//! `cargo run --profile quick --workspace --example shop`

use std::error::Error;
use std::path::Path;
use std::time::Instant;

use serde_json::{Value, json};
use wearbook_app::{Answer, Wearbook};

const FEW: usize = 10;
const MANY: usize = 1_000;
/// Tags of each job: an engine half looked at.
const TAGS: usize = 40;
const RUNS: usize = 51;

fn main() -> Result<(), Box<dyn Error>> {
    let (few, many) = (tempfile::tempdir()?, tempfile::tempdir()?);
    fill(few.path(), FEW)?;
    fill(many.path(), MANY)?;
    for (what, time) in
        [("list", list as fn(&Path) -> Result<f64, Box<dyn Error>>), ("search", search), ("start", start)]
    {
        let (ours, of_many) = (time(few.path())?, time(many.path())?);
        println!("{what}: {FEW} jobs {ours:.2} ms, {MANY} jobs {of_many:.2} ms: ratio {:.2}", of_many / ours);
    }
    let (edit, list) = changed(many.path())?;
    println!("one of {MANY} jobs is changed: the edit {edit:.2} ms, the list after it {list:.2} ms");
    Ok(())
}

/// So many jobs, one in ten of them still open, as a shop has them after some years.
fn fill(dir: &Path, jobs: usize) -> Result<(), Box<dyn Error>> {
    let book = Wearbook::open(dir)?;
    let catalogue = ask(&book, "catalogue", json!({}))?;
    let arrangement = catalogue.pointer("/arrangements/0/arrangement").cloned().unwrap_or_default();
    for nth in 0..jobs {
        let job = ask(&book, "job_create", json!({}))?.get("job").cloned().unwrap_or_default();
        let mut changes = vec![
            json!({ "do": "fill", "field": "customer", "text": format!("Customer {nth}") }),
            json!({ "do": "fill", "field": "machine", "text": format!("Pump set {}", nth % 37) }),
            json!({ "do": "fill", "field": "engine-number", "text": format!("N {nth}") }),
            json!({ "do": "arrange", "arrangement": arrangement }),
        ];
        let shell =
            |n: usize| format!("{}-shell.{}.lower", if n.is_multiple_of(2) { "main" } else { "rod" }, 1 + n % 4);
        changes
            .extend((0..TAGS).map(|n| json!({ "do": "tag", "part": shell(n), "tag": "scoring", "grade": 1 + n % 4 })));
        if nth % 10 != 0 {
            changes.push(json!({ "do": "close", "closed": true }));
        }
        ask(&book, "edits_append", json!({ "job": job, "changes": changes }))?;
    }
    ask(&book, "job_list", json!({}))?;
    Ok(())
}

fn list(dir: &Path) -> Result<f64, Box<dyn Error>> {
    let book = Wearbook::open(dir)?;
    median(|| ask(&book, "job_list", json!({})).map(drop))
}

fn search(dir: &Path) -> Result<f64, Box<dyn Error>> {
    let book = Wearbook::open(dir)?;
    median(|| ask(&book, "job_list", json!({ "find": "customer 7" })).map(drop))
}

fn start(dir: &Path) -> Result<f64, Box<dyn Error>> {
    median(|| ask(&Wearbook::open(dir)?, "job_list", json!({})).map(drop))
}

/// An edit of the open job, and the list after it.
fn changed(dir: &Path) -> Result<(f64, f64), Box<dyn Error>> {
    let book = Wearbook::open(dir)?;
    let list = ask(&book, "job_list", json!({}))?;
    let job = list.pointer("/open/lines/0/job").cloned().unwrap_or_default();
    let mut nth = 0;
    let mut edit = || {
        nth += 1;
        let remark = json!({ "do": "fill", "field": "remarks", "text": nth.to_string() });
        ask(&book, "edits_append", json!({ "job": job, "changes": [remark] })).map(drop)
    };
    let alone = median(&mut edit)?;
    let both = median(|| edit().and_then(|()| ask(&book, "job_list", json!({})).map(drop)))?;
    Ok((alone, both - alone))
}

/// The median of some runs, in milliseconds.
fn median(mut once: impl FnMut() -> Result<(), Box<dyn Error>>) -> Result<f64, Box<dyn Error>> {
    let mut times = Vec::with_capacity(RUNS);
    for _ in 0..RUNS {
        let start = Instant::now();
        once()?;
        times.push(start.elapsed().as_secs_f64() * 1e3);
    }
    times.sort_by(f64::total_cmp);
    Ok(times.get(RUNS / 2).copied().unwrap_or_default())
}

fn ask(book: &Wearbook, name: &str, arguments: Value) -> Result<Value, Box<dyn Error>> {
    match book.act(name, arguments, None)? {
        Answer::Json(json) => Ok(serde_json::from_str(&json)?),
        Answer::Bytes { .. } => Err("bytes where JSON was expected".into()),
    }
}
