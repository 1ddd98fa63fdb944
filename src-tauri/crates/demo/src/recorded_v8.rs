//! A V8 with everything on record, for timings and for the length of screens.

use serde_json::{Value, json};
use wearbook_core::engine::{Arrangement, Engine};
use wearbook_core::measure::Quantity;

/// A sheet with limits and a series.
const SHEET: &str = include_str!("../../core/examples/measured/sheet.json");

/// The first so many changes of a job in which every part is looked at, some are decided otherwise, and all are read
/// place by place, some twice.
///
/// # Errors
/// None that a change of this program's own could not mend: the sheet and the arrangement are part of it.
pub fn recorded_v8(changes: usize) -> Result<Vec<Value>, Box<dyn std::error::Error>> {
    let arrangement = Arrangement::vee(8);
    let engine = Engine::new(arrangement.clone())?;
    let mut all = vec![json!({ "do": "arrange", "arrangement": arrangement }), serde_json::from_str(SHEET)?];
    for (part, n) in engine.parts().iter().zip(0..) {
        let row = part.kind.row();
        all.push(match row.tags.get(n % row.tags.len().max(1)) {
            Some(tag) if n % 3 > 0 => {
                let zones: Vec<_> = row.zones.zones().iter().take(2).collect();
                json!({ "do": "tag", "part": part, "tag": tag, "grade": n % 4 + 1, "zones": zones })
            }
            _ => json!({ "do": "clean", "part": part }),
        });
        if n % 40 == 7 {
            let outcome = row.outcomes.get(n % row.outcomes.len().max(1));
            all.push(json!({ "do": "overrule", "part": part, "outcome": outcome, "reason": "The shop’s way." }));
        }
    }
    for part in [engine.parts(), engine.parts()].concat() {
        let sizes = part.kind.quantities().iter();
        for has in sizes.filter(|has| matches!(has.quantity, Quantity::Diameter | Quantity::Wall)) {
            for (spot, n) in has.spots.all().into_iter().zip(0..) {
                let value = format!("2.{:04} in", 9990 + n % 7);
                let reading = json!({ "part": part, "quantity": has.quantity, "spot": spot, "value": value });
                all.push(json!({ "do": "measure", "reading": reading }));
            }
        }
    }
    all.truncate(changes);
    Ok(all)
}
