//! How long a fully measured V8 takes from its log to its assessment: every journal, bore, piston, shell and housing read
//! at all of its places; fold and assess, the median of many runs.
//!
//! `measure_v8 LOG` writes the log to a file as JSON, for a peer to read, and prints the median in milliseconds.

mod timing;

use wearbook_core::engine::{Arrangement, Engine, PartKind};
use wearbook_core::job::{Change, OnIntake, OnPart, OnReading};
use wearbook_core::measure::Quantity;

/// A sheet with limits and a series.
const SHEET: &str = include_str!("measured/sheet.json");

fn main() {
    let arrangement = Arrangement::vee(8);
    let Ok(engine) = Engine::new(arrangement.clone()) else { return };
    let mut changes = vec![Change::OnIntake(OnIntake::Arrange { arrangement })];
    changes.extend(serde_json::from_str(SHEET));
    for part in engine.parts() {
        changes.push(Change::OnPart(OnPart::Clean { part: *part }));
        let sizes = part
            .kind
            .quantities()
            .iter()
            .filter(|has| has.quantity == Quantity::Diameter || has.quantity == Quantity::Wall);
        for (spot, n) in sizes.flat_map(|has| has.spots.all()).zip(0..) {
            let value = format!("{}.{:04} in", 2, 9990 + n % 7);
            let reading =
                serde_json::json!({ "part": part, "quantity": size_of(part.kind), "spot": spot, "value": value });
            let reading = serde_json::from_value(reading).ok().map(Box::new);
            changes.extend(reading.map(|reading| Change::OnReading(OnReading::Measure { reading })));
        }
    }
    timing::time(changes);
}

fn size_of(kind: PartKind) -> Quantity {
    if kind.has(Quantity::Diameter).is_some() { Quantity::Diameter } else { Quantity::Wall }
}
