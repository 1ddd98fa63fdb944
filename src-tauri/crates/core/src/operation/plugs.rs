//! The plugs that came out for the hot wash, fitted again: core plugs are always new, gallery plugs where they are driven in.

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
        let block = washed(scene);
        if block.is_empty() {
            return vec![];
        }
        let done = is_air_cooled(scene).then(|| "fit the gallery plugs, with sealer".into());
        let because = "They came out for the hot wash, and one that is forgotten costs the oil pressure.";
        vec![Brought { done, ..Brought::new(PartKind::Block, block, because.into()) }]
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
        check(&water, &[clean], "block", Work::Fit, None);
        check(&water, &[lost], "block", Work::Fit, None);
        let free = |done| Some(Line { done, waits: "", is_here: true });
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
