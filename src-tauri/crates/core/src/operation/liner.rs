//! Wet liners and barrels that are renewed, fitted.

use super::row::{Brought, Row, Stage};
use crate::engine::{Cylinders, PartKind};
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Fit,
    done: |_| "fit",
    stage: Stage::Rebuild,
    hands: Hands::Here,
    is_by_part: false,
    mind: "Never touch a new wall with a hone. Lubricate the seals as the manual says, and press by hand: a liner that needs force sits on a rolled seal.",
    source: "TM 5-6115-400-35 table 1, TM 9-2815-260-24 p. 5-87, TM 10-4320-307-24 p. 4-139 (projection over the block, and how far neighbours may differ); TM 5-3895-359-14&P (never hone a new liner); common practice.",
    brought: |scene| {
        let done = match scene.engine.arrangement().construction.cylinders {
            Some(Cylinders::WetLiners) => {
                "draw the old liners, clean and look over the counterbores, fit the new with new seals, measure how far each stands over the block"
            }
            Some(Cylinders::Barrels) => "fit the new barrels with new base gaskets, on clean faces",
            _ => return vec![],
        };
        // In a block that is renewed the cylinders come as it does.
        let bores = scene.with(PartKind::Bore, Work::Replace);
        if bores.is_empty() {
            return vec![];
        }
        let (which, because) = (scene.which(PartKind::Bore, &bores), scene.because(&bores));
        vec![Brought { which, done: Some(done.into()), ..Brought::new(PartKind::Bore, bores, because) }]
    },
};

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check};
    use crate::engine::{Arrangement, Construction, Cylinders};
    use crate::work::Work;
    use serde_json::json;

    #[test]
    fn what_is_renewed_as_a_piece_of_its_own_is_fitted_with_its_seals() {
        let engine = |cylinders| {
            let construction = Construction { cylinders: Some(cylinders), ..Construction::default() };
            Arrangement { construction, ..Arrangement::inline(4) }
        };
        let scored = json!({ "do": "tag", "part": "bore.1", "tag": "scoring", "grade": 4 });
        let liners = "draw the old liners, clean and look over the counterbores, fit the new with new seals, measure how far each stands over the block";
        let fitted = |done| Some(Line { done, waits: "", is_here: true });
        check(&engine(Cylinders::WetLiners), std::slice::from_ref(&scored), "bore", Work::Fit, fitted(liners));
        check(&engine(Cylinders::DrySleeves), &[scored], "bore", Work::Fit, None);
    }
}
