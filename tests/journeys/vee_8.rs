//! A V8 of which everything is on record: each part looked at and most of them worn, each journal and bore measured; and
//! one of which nothing is.

use serde_json::{Value, json};
use wearbook_app::Wearbook;

use crate::failure::{Failure, Outcome};
use crate::worn_engine::{act, price};

/// What is read, in mm: of which kind, what, and at which stations.
const READINGS: [(&str, &str, &[&str]); 4] = [
    ("main-journal", "69.95", &["front", "rear"]),
    ("crankpin", "53.95", &["front", "rear"]),
    ("cam-journal", "47.95", &["front", "rear"]),
    ("bore", "96.09", &["top", "middle", "bottom"]),
];

/// Enters the engine with its spec sheet and prices, and nothing more.
pub(crate) fn enter_untouched(book: &Wearbook) -> Outcome {
    untouched(book).map(drop)
}

/// Enters the engine with all that can be seen and measured.
pub(crate) fn enter_recorded(book: &Wearbook) -> Outcome {
    let (job, parts) = untouched(book)?;
    let catalogue = act(book, "catalogue", json!({}), None)?;
    let kinds = items(&catalogue, "/kinds");
    let mut changes = Vec::new();
    for (n, part) in parts.iter().enumerate() {
        let kind = kinds.iter().find(|kind| kind.get("id") == part.get("kind"));
        let tags = kind.map(|kind| items(kind, "/tags")).unwrap_or_default();
        let part = part.get("part").cloned().unwrap_or_default();
        // Every fifth is clean.
        if n % 5 == 3 || tags.is_empty() {
            changes.push(json!({ "do": "clean", "part": part }));
            continue;
        }
        let tags = tags.iter().cycle().skip(n % tags.len()).take(tags.len().min(2));
        changes.extend(tags.enumerate().map(|(m, tag)| {
            let grade = (n + m) % 4 + 1;
            json!({ "do": "tag", "part": part, "tag": tag, "grade": grade, "zones": [] })
        }));
    }
    for part in &parts {
        let name = part.get("part").cloned().unwrap_or_default();
        for (kind, value, stations) in READINGS {
            if part.get("kind") != Some(&json!(kind)) {
                continue;
            }
            let spots = stations.iter().flat_map(|station| ["a", "b"].map(|direction| (station, direction)));
            changes.extend(spots.map(|(station, direction)| {
                json!({ "do": "measure", "reading": { "part": name, "quantity": "diameter",
                    "spot": { "station": station, "direction": direction }, "value": format!("{value} mm") } })
            }));
        }
    }
    for some in changes.chunks(100) {
        act(book, "edits_append", json!({ "job": job, "changes": some }), None)?;
    }
    Ok(())
}

/// The job and its parts.
fn untouched(book: &Wearbook) -> Outcome<(Value, Vec<Value>)> {
    let view = act(book, "job_create", json!({}), None)?;
    let job = view.get("job").cloned().unwrap_or_default();
    let catalogue = act(book, "catalogue", json!({}), None)?;
    let arrangements = items(&catalogue, "/arrangements");
    let vee = arrangements.iter().find(|one| one.pointer("/arrangement/layout") == Some(&json!("vee")));
    let arrangement = vee.and_then(|vee| vee.get("arrangement")).ok_or(Failure("There is no V engine.".into()))?;
    let path = wearbook_tests::checkout().join("tests/whole-engines/bases/sound-vee-8.json");
    let base: Value = serde_json::from_str(&std::fs::read_to_string(path)?)?;
    let prices = [
        price("main-journal", "machine", 0, 3_500),
        price("main-shell", "replace", 2_180, 0),
        price("rod-shell", "replace", 1_640, 0),
        price("piston", "replace", 8_000, 0),
    ];
    let changes = json!([
        { "do": "fill", "field": "customer", "text": "B. Lowland" },
        { "do": "fill", "field": "machine", "text": "Quarry loader" },
        { "do": "arrange", "arrangement": arrangement },
        { "do": "use-sheet", "sheet": base.get("sheet") },
        { "do": "use-prices", "prices": { "currency": "EUR", "hour": 6_000, "prices": prices } },
    ]);
    let view = act(book, "edits_append", json!({ "job": job, "changes": changes }), None)?;
    let screen = format!("#/job/{}/plan", job.as_str().unwrap_or_default());
    let settings = json!({ "shop_name": "", "shop_address": "", "last_screen": screen });
    act(book, "settings_set", json!({ "settings": settings }), None)?;
    Ok((job, items(&view, "/assessment/parts")))
}

fn items(value: &Value, at: &str) -> Vec<Value> {
    value.pointer(at).and_then(Value::as_array).cloned().unwrap_or_default()
}
