//! Where earlier versions recorded what is now recorded of a part of its own.

use super::{Quantity, Reading};
use crate::engine::PartKind;

/// Of which part and quantity it is spoken now: the bore in which a tappet slides was once a quantity of the tappet, and is
/// now a part with a diameter.
pub fn present(kind: PartKind, quantity: Quantity) -> (PartKind, Quantity) {
    match (kind, quantity) {
        (PartKind::Tappet, Quantity::TappetBore) => (PartKind::TappetBore, Quantity::Diameter),
        as_it_is => as_it_is,
    }
}

impl Reading {
    /// The same reading, of the part that has the quantity now.
    pub fn in_present_form(&self) -> Self {
        let (kind, quantity) = present(self.part.kind, self.quantity);
        let mut reading = Self { quantity, ..self.clone() };
        reading.part.kind = kind;
        reading
    }
}

#[cfg(test)]
mod tests {
    use crate::job::testing::job_of;
    use serde_json::json;

    // Both parts have positions of the same form, so that a position is kept as it is.
    #[test]
    fn a_bore_that_was_recorded_of_its_tappet_is_read_of_the_bore() {
        for former in ["guide-bore", "tappet-bore"] {
            let place = json!({ "direction": "b" });
            let of_tappet = |quantity: &str, part: &str| json!({ "part": part, "quantity": quantity, "value": "22.11 mm", "spot": place });
            let line = |kind: &str, quantity: &str| json!({ "of": { "kind": kind, "quantity": quantity, "port": "intake" }, "min": "22.10 mm" });
            let log = |quantity: &str, part: &str, kind: &str, of: &str| {
                job_of(&[
                    json!({ "do": "arrange", "arrangement": crate::engine::Arrangement::inline(4) }),
                    json!({ "do": "use-sheet", "sheet": { "head": { "name": "Any" }, "lines": [line(kind, of)] } }),
                    json!({ "do": "state-line", "line": line(kind, of) }),
                    json!({ "do": "measure", "reading": of_tappet(quantity, part) }),
                ])
            };
            let old = log(former, "tappet.1.intake.1", "tappet", former);
            let new = log("diameter", "tappet-bore.1.intake.1", "tappet-bore", "diameter");
            assert_eq!(old, new);
            assert_eq!(old.readings.len(), 1);
            assert_eq!(old.sheet.lines.len(), 1);
        }
    }
}
