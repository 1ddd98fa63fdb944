//! What the mechanic of the story measured, and the spec sheet that he keeps for this engine: all invented.

use wearbook_core::job::{Change, OnIntake};

/// The instruments, the sheet and the readings, in the order of the work.
pub(super) fn changes() -> Vec<Change> {
    let mut changes = vec![
        instrument("mic-50-75", "50 to 75 mm micrometer", "micrometer", "0.001 mm", "0.003 mm"),
        instrument("bore-gauge", "Bore gauge 80 to 110 mm", "bore-gauge", "0.001 mm", "0.004 mm"),
        instrument("mic-75-100", "75 to 100 mm micrometer", "micrometer", "0.001 mm", "0.004 mm"),
        instrument("dial", "Dial indicator", "dial-indicator", "0.01 mm", "0.01 mm"),
        change(serde_json::json!({ "do": "use-sheet", "sheet": sheet() })),
    ];
    for (journal, values) in MAINS {
        changes.extend(journal_readings(&format!("main-journal.{journal}"), "found", values));
    }
    for (pin, values) in CRANKPINS {
        changes.extend(journal_readings(&format!("crankpin.{pin}"), "found", values));
    }
    changes.push(reading("crankpin.2", "scratch-depth", "dial", serde_json::json!({ "value": "0.04 mm" })));
    changes.push(reading("crankshaft", "end-float", "dial", serde_json::json!({ "value": "0.22 mm" })));
    for (cylinder, values, piston) in CYLINDERS {
        changes.extend(bore_readings(cylinder, "found", values));
        // The pistons lay in the sun beside the bench.
        let warm = serde_json::json!({ "value": piston, "warmth": { "celsius": 27, "material": "aluminium" } });
        changes.push(reading(&format!("piston.{cylinder}"), "diameter", "mic-75-100", warm));
    }
    // The block is back from boring; the shaft waits until all is known of its mains, for it goes once.
    for (cylinder, values) in BORED {
        changes.extend(bore_readings(cylinder, "machined", values));
    }
    changes
}

/// Front A, front B, rear A, rear B of each journal, in millimetres.
type Journal = (u8, [&'static str; 4]);

const MAINS: [Journal; 5] = [
    (1, ["61.981 mm", "61.979 mm", "61.980 mm", "61.978 mm"]),
    (2, ["61.975 mm", "61.970 mm", "61.976 mm", "61.971 mm"]),
    (3, ["61.958 mm", "61.936 mm", "61.962 mm", "61.944 mm"]),
    (4, ["61.976 mm", "61.972 mm", "61.974 mm", "61.971 mm"]),
    (5, ["61.982 mm", "61.981 mm", "61.981 mm", "61.980 mm"]),
];
const CRANKPINS: [Journal; 4] = [
    (1, ["51.978 mm", "51.974 mm", "51.977 mm", "51.973 mm"]),
    (2, ["51.969 mm", "51.951 mm", "51.967 mm", "51.948 mm"]),
    (3, ["51.979 mm", "51.975 mm", "51.978 mm", "51.975 mm"]),
    (4, ["51.974 mm", "51.967 mm", "51.973 mm", "51.968 mm"]),
];
/// Bores at top, middle and bottom, along and across; and the skirt of the piston.
const CYLINDERS: [(u8, [&str; 6], &str); 4] = [
    (1, ["92.061 mm", "92.074 mm", "92.044 mm", "92.052 mm", "92.031 mm", "92.034 mm"], "91.956 mm"),
    (2, ["92.058 mm", "92.070 mm", "92.043 mm", "92.050 mm", "92.030 mm", "92.033 mm"], "91.957 mm"),
    (3, ["92.094 mm", "92.131 mm", "92.066 mm", "92.083 mm", "92.036 mm", "92.041 mm"], "91.931 mm"),
    (4, ["92.060 mm", "92.072 mm", "92.042 mm", "92.051 mm", "92.031 mm", "92.034 mm"], "91.955 mm"),
];

/// The same after boring.
const BORED: [(u8, [&str; 6]); 4] = [
    (1, ["92.261 mm", "92.260 mm", "92.261 mm", "92.260 mm", "92.259 mm", "92.260 mm"]),
    (2, ["92.260 mm", "92.260 mm", "92.259 mm", "92.260 mm", "92.260 mm", "92.259 mm"]),
    (3, ["92.262 mm", "92.261 mm", "92.260 mm", "92.261 mm", "92.260 mm", "92.261 mm"]),
    (4, ["92.260 mm", "92.261 mm", "92.260 mm", "92.260 mm", "92.260 mm", "92.261 mm"]),
];

fn sheet() -> serde_json::Value {
    let line = |kind: &str, quantity: &str, min: &str, max: &str, limit: &str, page: &str| {
        let mut line = serde_json::json!({ "of": { "kind": kind, "quantity": quantity }, "source": page });
        for (name, figure) in [("min", min), ("max", max), ("limit", limit)] {
            if !figure.is_empty()
                && let Some(fields) = line.as_object_mut()
            {
                fields.insert(name.into(), figure.into());
            }
        }
        line
    };
    let undersizes: Vec<serde_json::Value> = ["mains", "crankpins"]
        .into_iter()
        .flat_map(|journals| {
            ["0.25 mm", "0.50 mm", "0.75 mm"].map(|size| serde_json::json!({ "journals": journals, "size": size }))
        })
        .collect();
    let oversizes = ["0.25 mm", "0.50 mm", "1.00 mm"].map(|size| serde_json::json!({ "size": size }));
    serde_json::json!({
        "head": { "name": "Saw bench engine, 92 mm bore", "source": "The mill’s own manual", "unit": "millimetre", "clean_up": "0.02 mm" },
        "lines": [
            line("main-journal", "diameter", "61.975 mm", "61.985 mm", "61.955 mm", "p. 31"),
            line("main-journal", "out-of-round", "", "", "0.015 mm", "p. 31"),
            line("main-journal", "taper", "", "", "0.010 mm", "p. 31"),
            line("main-journal", "clearance", "0.030 mm", "0.075 mm", "0.110 mm", "p. 32"),
            line("crankpin", "diameter", "51.965 mm", "51.985 mm", "51.945 mm", "p. 33"),
            line("crankpin", "out-of-round", "", "", "0.015 mm", "p. 33"),
            line("crankpin", "taper", "", "", "0.010 mm", "p. 33"),
            line("crankpin", "clearance", "0.030 mm", "0.075 mm", "0.110 mm", "p. 33"),
            line("main-shell", "wall", "1.990 mm", "1.997 mm", "1.970 mm", "p. 32"),
            line("rod-shell", "wall", "1.490 mm", "1.497 mm", "1.470 mm", "p. 33"),
            line("housing-bore", "diameter", "66.009 mm", "66.019 mm", "66.025 mm", "p. 30"),
            line("rod", "big-end-bore", "55.010 mm", "55.020 mm", "55.026 mm", "p. 34"),
            line("crankshaft", "end-float", "0.08 mm", "0.20 mm", "0.35 mm", "p. 31"),
            line("bore", "diameter", "92.000 mm", "92.020 mm", "92.110 mm", "p. 27"),
            line("bore", "taper", "", "", "0.060 mm", "p. 27"),
            line("bore", "out-of-round", "", "", "0.040 mm", "p. 27"),
            line("piston", "diameter", "91.935 mm", "91.950 mm", "91.890 mm", "p. 28"),
            line("piston", "clearance", "0.050 mm", "0.085 mm", "0.180 mm", "p. 28")
        ],
        "undersizes": undersizes,
        "oversizes": oversizes,
    })
}

fn journal_readings(part: &str, phase: &str, values: [&str; 4]) -> Vec<Change> {
    let places = [("front", "a"), ("front", "b"), ("rear", "a"), ("rear", "b")];
    let one = |((station, direction), value): ((&str, &str), &str)| {
        let spot = serde_json::json!({ "station": station, "direction": direction });
        reading(part, "diameter", "mic-50-75", serde_json::json!({ "spot": spot, "phase": phase, "value": value }))
    };
    places.into_iter().zip(values).map(one).collect()
}

fn bore_readings(cylinder: u8, phase: &str, values: [&str; 6]) -> Vec<Change> {
    let places = ["top", "middle", "bottom"].into_iter().flat_map(|station| [(station, "a"), (station, "b")]);
    let one = |((station, direction), value): ((&str, &str), &str)| {
        let spot = serde_json::json!({ "station": station, "direction": direction });
        let more = serde_json::json!({ "spot": spot, "phase": phase, "value": value });
        reading(&format!("bore.{cylinder}"), "diameter", "bore-gauge", more)
    };
    places.zip(values).map(one).collect()
}

fn reading(part: &str, quantity: &str, instrument: &str, more: serde_json::Value) -> Change {
    let mut reading = serde_json::json!({ "part": part, "quantity": quantity, "instrument": instrument });
    if let (Some(fields), serde_json::Value::Object(more)) = (reading.as_object_mut(), more) {
        fields.extend(more);
    }
    change(serde_json::json!({ "do": "measure", "reading": reading }))
}

fn instrument(id: &str, name: &str, kind: &str, resolution: &str, uncertainty: &str) -> Change {
    change(serde_json::json!({ "do": "note-instrument", "instrument": {
        "id": id, "name": name, "kind": kind, "resolution": resolution, "uncertainty": uncertainty, "checked": "1 February",
    } }))
}

/// The forms of the published JSON are the shortest way to write all this down. A slip becomes a remark on the job, and
/// the test of the story finds it.
fn change(json: serde_json::Value) -> Change {
    serde_json::from_value(json).unwrap_or_else(|error| {
        Change::OnIntake(OnIntake::Fill {
            field: wearbook_core::job::TextField::Remarks,
            text: format!("slip in the story: {error}"),
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_readings_are_told_without_a_slip() {
        for change in changes() {
            assert!(!matches!(change, Change::OnIntake(OnIntake::Fill { .. })), "{change:?}");
        }
    }
}
