//! Debris has been round with the oil.

use super::{Rule, RuleId, Says, Scene, oil_ways};
use crate::engine::Part;
use crate::wear::{Grade, Tag};

pub(super) const RULE: Rule = Rule {
    id: RuleId("debris-in-the-oil-ways"),
    why: "What was embedded in the shells, came off them or lies in filter and sump is still in the oil galleries: they are opened, brushed and flushed, and the pump that carried it is taken apart.",
    source: "Common practice.",
    says: Says::OnPart(|scene, part, record| {
        let outcome = oil_ways::cleaned(part.kind).filter(|_| record.looked_at())?;
        let (other, tag) = debris(scene)?;
        let (label, seen) = (scene.engine.label(other), tag.row().name);
        Some((outcome, format!("{label}, {seen}: the debris went with the oil into its galleries.")))
    }),
};

/// From which grade on they have been round: specks all over a field, missing pieces, metal that is pushed over an edge or
/// loose; in filter and sump what tells of more than running in (a few thin flakes often are foreign matter: TM
/// 1-1500-204-23-1 para f, of aircraft).
const FROM: [(Tag, Grade); 9] = [
    (Tag::EmbeddedDebris, Grade::TWO),
    (Tag::LiningLoss, Grade::TWO),
    (Tag::Wiping, Grade::THREE),
    (Tag::FatigueCracks, Grade::THREE),
    (Tag::SoftFlakes, Grade::TWO),
    (Tag::Grit, Grade::TWO),
    (Tag::SteelSplinters, Grade::TWO),
    (Tag::SteelFlakes, Grade::THREE),
    (Tag::AluminiumFlakes, Grade::THREE),
];

/// Where debris was found that went round with the oil.
fn debris(scene: &Scene<'_>) -> Option<(Part, Tag)> {
    let parts =
        scene.engine.parts().iter().chain(scene.engine.outside().iter().filter(|part| oil_ways::holds_oil(**part)));
    parts.copied().find_map(|part| {
        let record = scene.job.parts.get(&part)?;
        let seen = FROM.iter().find(|(tag, from)| record.grade(*tag).is_some_and(|grade| grade >= *from));
        seen.map(|(tag, _)| (part, *tag))
    })
}

#[cfg(test)]
mod tests {
    use crate::assess::assess;
    use crate::decide::Reason;
    use crate::engine::{Arrangement, Engine};
    use crate::job::testing::{arrange, job_of};
    use crate::work::Outcome;
    use serde_json::{Value, json};

    /// What stands for crankshaft and pump of an engine in which all is clean but this.
    #[track_caller]
    fn check(part: &str, tag: &str, grade: u8, crankshaft: Outcome, pump: Outcome) {
        let arrangement = Arrangement::inline(4);
        let engine = Engine::new(arrangement.clone()).unwrap();
        let clean = engine.parts().iter().map(|part| json!({ "do": "clean", "part": part }));
        let found = json!({ "do": "tag", "part": part, "tag": tag, "grade": grade });
        let changes: Vec<Value> = std::iter::once(arrange(&arrangement)).chain(clean).chain([found]).collect();
        let assessment = assess(&job_of(&changes));
        let of = |part: &str| &assessment.part(part.parse().unwrap()).unwrap().decision;
        assert_eq!((of("crankshaft").outcome, of("oil-pump").outcome), (crankshaft, pump), "{part} {tag} {grade}");
        let is_told = |reason: &Reason| reason.because.contains(&engine.label(part.parse().unwrap()));
        assert_eq!(of("oil-pump").reasons.iter().any(is_told), pump != Outcome::PutBack);
    }

    /// Common practice; a few thin flakes are often foreign matter (TM 1-1500-204-23-1 para f), a trace of cream in a cold spot
    /// is condensation.
    #[test]
    fn what_went_round_with_the_oil_opens_its_ways() {
        use Outcome::{Clean, PutBack, RebuildHere};
        for (part, tag, from) in [
            ("rod-shell.2.upper", "embedded-debris", 2),
            ("main-shell.3.lower", "wiping", 3),
            ("main-shell.3.lower", "lining-loss", 2),
            ("rod-shell.1.upper", "fatigue-cracks", 3),
            ("oil-filter", "soft-flakes", 2),
            ("drain-plug", "steel-splinters", 2),
            ("drain-plug", "steel-flakes", 3),
            ("sump", "grit", 2),
            ("engine-oil", "milky", 2),
        ] {
            check(part, tag, from, Clean, RebuildHere);
            check(part, tag, from - 1, PutBack, PutBack);
        }
        check("air-cleaner", "grit", 4, PutBack, PutBack);
        check("oil-filler", "milky", 4, PutBack, PutBack);
        check("drain-plug", "fine-paste", 4, PutBack, PutBack);
    }
}
