//! What metal in oil, filter and sump tells: its kind says where to look first.

use super::trouble::Trouble;
use crate::engine::PartKind;
use crate::job::Job;
use crate::wear::{Grade, Tag};

/// What such metal says.
#[derive(Debug)]
pub(super) struct Metal {
    /// In a sentence.
    pub(super) says: &'static str,
    /// What it comes from.
    pub(super) from: &'static [Trouble],
}

/// Where metal is found.
const WHERE: [PartKind; 4] = [PartKind::EngineOil, PartKind::OilFilter, PartKind::DrainPlug, PartKind::Sump];

// Of engines of aircraft, of which only the idea carries over: TM 1-1500-204-23-1 para f.
const SPLINTERS: Metal = Metal {
    says: "Steel in grains or splinters: a hard part is failing.",
    from: &[Trouble::ValveTrain, Trouble::Gears, Trouble::OilPump, Trouble::Rings],
};
const STEEL_WITH_ALUMINIUM: Metal = Metal {
    says: "Thin steel together with aluminium: a piston or its rings before any bearing.",
    from: &[Trouble::PistonDamage, Trouble::Rings, Trouble::Bore],
};
const ALUMINIUM: Metal = Metal { says: "Aluminium: a piston first.", from: &[Trouble::PistonDamage] };
const MUCH_STEEL: Metal = Metal {
    says: "So many thin flakes of steel come from a part that is failing.",
    from: &[Trouble::ValveTrain, Trouble::Gears, Trouble::OilPump, Trouble::Rings, Trouble::Bore],
};
const A_LITTLE_STEEL: Metal =
    Metal { says: "A few thin flakes of steel and nothing else are often foreign matter.", from: &[] };
// Common practice.
const SOFT: Metal = Metal {
    says: "Soft metal: shells or bushes.",
    from: &[Trouble::RodBearing, Trouble::MainBearing, Trouble::CamBearing, Trouble::EndFloat],
};

/// What the metal that was found says; none where none was.
pub(super) fn metal(job: &Job) -> Option<&'static Metal> {
    let worst = |tag: Tag| {
        let records = job.parts.iter().filter(|(part, _)| WHERE.contains(&part.kind));
        records.filter_map(|(_, record)| record.grade(tag)).max()
    };
    let steel = worst(Tag::SteelFlakes);
    // Splinters are told from a trace on: grade 1.
    if worst(Tag::SteelSplinters) > Some(Grade::ONE) {
        return Some(&SPLINTERS);
    }
    match (steel, worst(Tag::AluminiumFlakes), worst(Tag::SoftFlakes)) {
        (Some(_), Some(_), _) => Some(&STEEL_WITH_ALUMINIUM),
        (_, _, Some(_)) => Some(&SOFT),
        (_, Some(_), _) => Some(&ALUMINIUM),
        (Some(grade), ..) if grade > Grade::TWO => Some(&MUCH_STEEL),
        (Some(_), ..) => Some(&A_LITTLE_STEEL),
        (None, None, None) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::json;

    #[track_caller]
    fn says(finds: &[(&str, &str, u8)], said: Option<&str>) {
        let tags =
            finds.iter().map(|(part, tag, grade)| json!({ "do": "tag", "part": part, "tag": tag, "grade": grade }));
        let changes: Vec<_> = std::iter::once(arrange(&Arrangement::inline(4))).chain(tags).collect();
        assert_eq!(metal(&job_of(&changes)).map(|metal| metal.says), said);
    }

    #[test]
    fn each_kind_of_metal_points_somewhere_else() {
        says(&[], None);
        says(&[("drain-plug", "fine-paste", 3)], None);
        says(&[("oil-filter", "steel-splinters", 1)], None);
        says(&[("sump", "steel-splinters", 2), ("oil-filter", "soft-flakes", 3)], Some(SPLINTERS.says));
        says(&[("drain-plug", "steel-flakes", 2), ("sump", "aluminium-flakes", 1)], Some(STEEL_WITH_ALUMINIUM.says));
        says(&[("oil-filter", "aluminium-flakes", 2)], Some(ALUMINIUM.says));
        says(&[("engine-oil", "soft-flakes", 2)], Some(SOFT.says));
        says(&[("drain-plug", "steel-flakes", 3)], Some(MUCH_STEEL.says));
        says(&[("drain-plug", "steel-flakes", 2)], Some(A_LITTLE_STEEL.says));
    }
}
