//! Worn bores of tappets bushed and brought back to standard, and rods whose bush of the small end is renewed.

use super::ream::mended;
use super::row::{Brought, Row, Scene, Stage};
use crate::engine::PartKind;
use crate::measure::Quantity::SmallEndBore;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Bush,
    done: |kind| match kind {
        PartKind::Rod => "renew the bush of the small end with the machinist’s own, finished to its pin",
        _ => "bush with the machinist’s own, and ream to standard",
    },
    stage: Stage::Machine,
    hands: Hands::MachineShop,
    is_by_part: false,
    mind: "A bush must not cover an oil feed: drill it through where there is one.",
    source: "Common practice.",
    brought: |scene| {
        let bores = mended(scene, Work::Bush, |_| "bush with the machinist’s own, and ream to standard".into());
        bores.into_iter().chain(small_ends(scene)).collect()
    },
};

/// Rods whose small end is out of its limits.
fn small_ends(scene: &Scene<'_>) -> Option<Brought> {
    let mut rods = scene.with(PartKind::Rod, Work::Machine);
    rods.retain(|rod| {
        let mut figures = scene.measured.figures.get(rod).into_iter().flatten();
        figures.any(|figure| figure.quantity == SmallEndBore && figure.is_found_outside())
    });
    let (which, because) = (scene.which(PartKind::Rod, &rods), scene.because(&rods));
    (!rods.is_empty()).then(|| Brought { which, ..Brought::new(PartKind::Rod, rods, because) })
}

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::Arrangement;
    use crate::work::Work;
    use serde_json::{Value, json};

    #[test]
    fn a_small_end_gets_a_bush_and_a_big_end_is_resized() {
        let worn = |quantity: &str| -> [Value; 2] {
            let line = json!({ "of": { "kind": "rod", "quantity": quantity }, "limit": "22.05 mm" });
            let reading = json!({ "part": "rod.1", "quantity": quantity, "value": "22.20 mm" });
            [json!({ "do": "state-line", "line": line }), json!({ "do": "measure", "reading": reading })]
        };
        let bush = Line {
            done: "renew the bush of the small end with the machinist’s own, finished to its pin",
            waits: "",
            is_here: false,
        };
        let resize = Line {
            done: "resize the big end; check for bend and twist",
            waits: "The new bolts go along, and have not come yet.",
            is_here: false,
        };
        let looked = json!({ "do": "clean", "part": "rod.1" });
        for (ends, bushed, resized) in [
            (&["small-end-bore"][..], Some(bush), None),
            (&["big-end-bore"], None, Some(resize)),
            (&["small-end-bore", "big-end-bore"], Some(Line { waits: resize.waits, ..bush }), Some(resize)),
        ] {
            let changes: Vec<Value> =
                [looked.clone()].into_iter().chain(ends.iter().flat_map(|end| worn(end))).collect();
            check(&Arrangement::inline(1), &changes, "rod", Work::Bush, bushed);
            check(&Arrangement::inline(1), &changes, "rod", Work::Machine, resized);
        }
    }
}
