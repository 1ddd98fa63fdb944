//! The plugs of the block fitted: core plugs are always new, and those of the galleries go in again where they came out
//! for the hot wash.

use super::come::block_awaited;
use super::row::{Brought, Row, Stage};
use super::wash::{is_air_cooled, washed};
use crate::engine::PartKind;
use crate::work::{Hands, Work};

pub(super) const ROW: Row = Row {
    work: Work::Fit,
    done: |_| "fit the gallery plugs and new core plugs, with sealer",
    stage: Stage::Rebuild,
    // Whoever closes a gallery has looked through it: the shop, once all else has been done to the block.
    hands: Hands::Here,
    is_by_part: false,
    mind: "After the last wash, each gallery looked through first. Count the plugs that came out. Drive a core plug by its rim, never by its crown.",
    source: "Common practice.",
    brought: |scene| {
        let washed = washed(scene);
        if !washed.is_empty() {
            let done = is_air_cooled(scene).then(|| "fit the gallery plugs, with sealer".into());
            let because = "They came out for the hot wash, and one that is forgotten costs the oil pressure.";
            return vec![Brought { done, ..Brought::new(PartKind::Block, washed, because.into()) }];
        }
        if scene.with(PartKind::CorePlugs, Work::Replace).is_empty() {
            return vec![];
        }
        let block = scene.parts(PartKind::Block, |_| true);
        let because = "New core plugs are driven in where the old came out.";
        vec![Brought {
            done: Some("fit the new core plugs, with sealer".into()),
            waits_for: block_awaited(scene),
            ..Brought::new(PartKind::Block, block, because.into())
        }]
    },
};

#[cfg(test)]
mod tests {
    use super::super::testing::{Line, check, lines_of};
    use crate::engine::{Arrangement, Construction, Cooling};
    use crate::work::Work;
    use serde_json::json;
    use std::slice::from_ref;

    #[test]
    fn plugs_go_in_again_where_they_came_out() {
        let water = Arrangement::inline(4);
        let construction = Construction { cooling: Some(Cooling::Air), ..Construction::default() };
        let air = Arrangement { construction, ..Arrangement::inline(4) };
        let clean = json!({ "do": "clean", "part": "block" });
        let dirty = json!({ "do": "tag", "part": "block", "tag": "deposits", "grade": 3 });
        let lost = json!({ "do": "tag", "part": "block", "tag": "cracks", "grade": 4 });
        let free = |done| Some(Line { done, waits: "", is_here: true });
        // Whoever orders core plugs drives them in, whether or not the block is washed hot.
        check(&water, from_ref(&clean), "block", Work::Fit, free("fit the new core plugs, with sealer"));
        check(&air, &[clean], "block", Work::Fit, None);
        let awaited = Line {
            done: "fit the new core plugs, with sealer",
            waits: "The new block has not come yet.",
            is_here: true,
        };
        check(&water, &[lost], "block", Work::Fit, Some(awaited));
        check(
            &water,
            from_ref(&dirty),
            "block",
            Work::Fit,
            free("fit the gallery plugs and new core plugs, with sealer"),
        );
        check(&air, from_ref(&dirty), "block", Work::Fit, free("fit the gallery plugs, with sealer"));
        let order = lines_of(&water, &[dirty]);
        let works: Vec<Work> = order.iter().map(|own| own.of.work).collect();
        assert_eq!(works, [Work::Clean, Work::Fit, Work::Fit], "washed, cam bearings in, plugs last");
    }
}
