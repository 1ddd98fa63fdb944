//! How long a job takes to fold and to assess that holds far more than any shop enters: each line is one such job.
//!
//! `cargo run --profile quick -p wearbook-core --example border`

#![allow(clippy::unwrap_used, clippy::print_stdout, reason = "an example may stop at once, and prints")]

use std::time::Instant;

use serde_json::{Value, json};
use wearbook_core::assess::assess;
use wearbook_core::engine::Arrangement;
use wearbook_core::job::{DeviceId, Edit, EditId, Job};

fn main() {
    time(
        "90,000 photos on one part",
        90_000,
        |n| json!({ "do": "add-photo", "part": "piston.1", "photo": format!("{n:064x}") }),
    );
    time("60,000 lines of a sheet", 60_000, |n| {
        json!({ "do": "state-line", "line": { "of": { "kind": "bore", "quantity": "other", "name": n.to_string() },
            "max": "1 mm" } })
    });
    time(
        "60,000 items of the shop’s own",
        60_000,
        |n| json!({ "do": "add-item", "item": { "list": "order", "what": n.to_string(), "quantity": 1 } }),
    );
    time("60,000 ticks", 60_000, |n| {
        let key = json!({ "of": "put-right", "cause": n.to_string(), "check": "x" });
        json!({ "do": "tick", "item": { "key": key, "quantity": 1 }, "tick": { "done": 1 } })
    });
    time("60,000 readings", 60_000, |n| {
        json!({ "do": "measure", "reading": { "part": "bore.1", "quantity": "other", "name": n.to_string(),
            "value": "1 mm" } })
    });
    time("60,000 undos, each of the one before", 60_000, |n| json!({ "do": "undo", "edit": id(n - 1) }));
}

fn id(n: u64) -> EditId {
    EditId::next(None, n, DeviceId(1))
}

fn time(what: &str, count: u64, change: impl Fn(u64) -> Value) {
    let arrange = json!({ "do": "arrange", "arrangement": Arrangement::inline(4) });
    let of = |n: u64| if n == 1 { arrange.clone() } else { change(n) };
    let edits: Vec<Edit> =
        (1..=count).map(|n| Edit { id: id(n), change: serde_json::from_value(of(n)).unwrap() }).collect();
    let start = Instant::now();
    let job = Job::fold(&edits);
    let folded = start.elapsed();
    let assessment = assess(&job);
    let assessed = start.elapsed() - folded;
    println!("{what}: folded {folded:.2?}, assessed {assessed:.2?}, {} notices", assessment.notices.len());
}
