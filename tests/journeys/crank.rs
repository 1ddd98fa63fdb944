//! The crank of a V8 under the micrometer: what its manual says, what is read on it, and what must come of that.

use serde_json::{Value, json};
use wearbook_app::Wearbook;

use crate::failure::{Failure, Outcome, ensure};
use crate::page::Page;
use crate::worn_engine::{act, price};

/// The journals in the order of the walk, each with what is read at the front in A and B, then at the rear.
pub(crate) const AS_FOUND: [(&str, [&str; 4]); 9] = [
    ("Main 1, journal", ["2.9994", "2.9993", "2.9994", "2.9992"]),
    ("Main 2, journal", ["2.9995", "2.9993", "2.9994", "2.9993"]),
    // Worn beyond 2.9975 in at the rear: this journal sends all mains to the grinder.
    ("Main 3, journal", ["2.9981", "2.9978", "2.9972", "2.9969"]),
    ("Main 4, journal", ["2.9993", "2.9992", "2.9993", "2.9991"]),
    ("Main 5, journal", ["2.9996", "2.9995", "2.9995", "2.9994"]),
    ("Crankpin 1", ["2.2496", "2.2494", "2.2495", "2.2494"]),
    ("Crankpin 2", ["2.2495", "2.2493", "2.2495", "2.2492"]),
    ("Crankpin 3", ["2.2496", "2.2495", "2.2494", "2.2493"]),
    ("Crankpin 4", ["2.2494", "2.2492", "2.2493", "2.2492"]),
];

/// What comes back from the grinder: 2.989 to 2.990 in was asked for.
pub(crate) const AS_MACHINED: [[&str; 4]; 5] = [
    ["2.9896", "2.9895", "2.9896", "2.9895"],
    ["2.9895", "2.9895", "2.9894", "2.9894"],
    ["2.9896", "2.9896", "2.9895", "2.9895"],
    ["2.9894", "2.9894", "2.9893", "2.9893"],
    ["2.9895", "2.9894", "2.9895", "2.9894"],
];

const PLACES: [&str; 4] = ["front, A", "front, B", "rear, A", "rear, B"];

/// A job with the engine, its journals looked at, and its spec sheet but for the diameter of the mains; and the shop's
/// micrometer.
pub(crate) fn enter_but_for_one_line(book: &Wearbook) -> Outcome {
    enter(book, &[]).map(drop)
}

/// A job with the engine, its journals looked at and its whole spec sheet; and the shop's micrometer.
pub(crate) fn enter_all(book: &Wearbook) -> Outcome {
    enter_whole(book).map(drop)
}

fn enter_whole(book: &Wearbook) -> Outcome<Value> {
    let line = json!({ "of": { "kind": "main-journal", "quantity": "diameter" },
        "min": "2.999 in", "max": "3.000 in", "limit": "2.9975 in", "source": "p. 12" });
    enter(book, &[line])
}

/// The same with every journal measured as found and the shop's prices for the work that follows.
pub(crate) fn enter_measured(book: &Wearbook) -> Outcome {
    let job = enter_whole(book)?;
    let spots = [("front", "a"), ("front", "b"), ("rear", "a"), ("rear", "b")];
    let mains = (1..=5).map(|n| format!("main-journal.{n}"));
    let parts = mains.chain((1..=4).map(|n| format!("crankpin.{n}")));
    let readings = parts.zip(AS_FOUND).flat_map(|(part, (_, values))| {
        spots.into_iter().zip(values).map(move |((station, direction), value)| {
            json!({ "do": "measure", "reading": { "part": part, "quantity": "diameter",
                "spot": { "station": station, "direction": direction }, "value": format!("{value} in") } })
        })
    });
    let prices = [
        price("main-journal", "machine", 0, 3_500),
        price("main-shell", "replace", 2_180, 0),
        price("rod-shell", "replace", 1_640, 0),
        price("crankshaft", "crack-test", 0, 4_000),
    ];
    let prices = json!({ "do": "use-prices", "prices": { "currency": "EUR", "hour": 6_000, "prices": prices } });
    let looked = json!({ "do": "clean", "part": "crankshaft" });
    let changes: Vec<Value> = readings.chain([prices, looked]).collect();
    act(book, "edits_append", json!({ "job": job, "changes": changes }), None)?;
    Ok(())
}

fn enter(book: &Wearbook, more: &[Value]) -> Outcome<Value> {
    let view = act(book, "job_create", json!({}), None)?;
    let job = view.get("job").cloned().unwrap_or_default();
    let catalogue = act(book, "catalogue", json!({}), None)?;
    let ordinary = catalogue.pointer("/arrangements").and_then(Value::as_array).cloned().unwrap_or_default();
    let vee = ordinary.iter().find(|one| one.pointer("/arrangement/layout") == Some(&json!("vee")));
    let arrangement = vee.and_then(|vee| vee.get("arrangement")).ok_or(Failure("There is no V engine.".into()))?;
    let mut changes = vec![
        json!({ "do": "fill", "field": "customer", "text": "A. Harrow" }),
        json!({ "do": "arrange", "arrangement": arrangement }),
        json!({ "do": "use-sheet", "sheet": sheet(more) }),
    ];
    let journals = (1..=5).map(|n| format!("main-journal.{n}")).chain((1..=4).map(|n| format!("crankpin.{n}")));
    changes.extend(journals.map(|part| json!({ "do": "clean", "part": part })));
    act(book, "edits_append", json!({ "job": job, "changes": changes }), None)?;
    let micrometer = json!({ "id": "mic-2-3", "name": "2 to 3 in micrometer", "kind": "micrometer",
        "resolution": "0.0001 in", "uncertainty": "0.0001 in" });
    act(book, "instrument_keep", json!({ "instrument": micrometer }), None)?;
    let screen = format!("#/job/{}/part/main-journal.1", job.as_str().unwrap_or_default());
    let settings = json!({ "shop_name": "", "shop_address": "", "last_screen": screen });
    act(book, "settings_set", json!({ "settings": settings }), None)?;
    Ok(job)
}

fn sheet(more: &[Value]) -> Value {
    let line = |kind: &str, quantity: &str, figures: &[(&str, &str)]| {
        let of = [("of", json!({ "kind": kind, "quantity": quantity })), ("source", json!("p. 12"))];
        let figures = figures.iter().map(|(name, figure)| (*name, json!(figure)));
        Value::Object(of.into_iter().chain(figures).map(|(name, value)| (name.to_owned(), value)).collect())
    };
    let mut lines = vec![
        line("main-journal", "out-of-round", &[("limit", "0.001 in")]),
        line("main-journal", "taper", &[("limit", "0.0015 in")]),
        line("crankpin", "diameter", &[("min", "2.249 in"), ("max", "2.250 in"), ("limit", "2.2475 in")]),
        line("crankpin", "out-of-round", &[("limit", "0.001 in")]),
        line("crankpin", "taper", &[("limit", "0.0015 in")]),
        line("main-shell", "wall", &[("min", "0.1245 in"), ("max", "0.1250 in")]),
        line("housing-bore", "diameter", &[("min", "3.251 in"), ("max", "3.252 in")]),
        line("main-journal", "clearance", &[("min", "0.001 in"), ("max", "0.004 in")]),
    ];
    lines.extend_from_slice(more);
    let undersize = |journals: &str, size: &str, min: &str, max: &str| json!({ "journals": journals, "size": size, "min": min, "max": max, "source": "p. 13" });
    let undersizes = [
        undersize("mains", "0.010 in", "2.989 in", "2.990 in"),
        undersize("mains", "0.020 in", "2.979 in", "2.980 in"),
        undersize("crankpins", "0.010 in", "2.239 in", "2.240 in"),
        undersize("crankpins", "0.020 in", "2.229 in", "2.230 in"),
    ];
    json!({ "head": { "name": "Winch engine", "source": "The winch’s own manual", "unit": "inch" },
        "lines": lines, "undersizes": undersizes, "oversizes": [] })
}

/// Goes from the part to the pad and takes the shop's micrometer into the hand.
pub(crate) async fn choose_micrometer(page: &Page) -> Outcome {
    page.press("button", "Set up: …").await?;
    page.press_in("Instrument", "radio", "2 to 3 in micrometer").await?;
    page.see("button", "Set up: Diameter · as found · 2 to 3 in micrometer").await?;
    page.press("button", "Set up: …").await
}

/// Every reading is on record, each at its own place; and no more entries than were made.
pub(crate) async fn all_found_are_on_record(page: &Page, entries: usize) -> Outcome {
    page.sheet("History").await?;
    page.see("button", "Show: everything").await?;
    page.unfold_all().await?;
    page.read("Main 1, journal: diameter (front, A) 2.9994 in").await?;
    let text = page.text().await?;
    for (journal, values) in AS_FOUND {
        for (place, value) in PLACES.iter().zip(values) {
            let cylinders = if journal.starts_with("Crankpin") { " (cylinder" } else { ": diameter" };
            let is_there = text.lines().any(|line| {
                line.contains(&format!("{journal}{cylinders}")) && line.contains(&format!("diameter ({place}) {value}"))
            });
            ensure(is_there, format!("{journal}, {place}: {value} is not in the history.\n{text}"))?;
        }
    }
    let taken = text.lines().filter(|line| line.contains(": diameter (")).count();
    ensure(taken == entries, format!("{entries} readings were entered, the history has {taken}."))
}
