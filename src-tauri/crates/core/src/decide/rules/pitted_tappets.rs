//! Tappets with a few pits, on which manuals disagree.

use super::{Rule, RuleId, Says, WearLine, at, read};
use crate::engine::PartKind::Tappet;
use crate::sheet::Dispute;
use crate::wear::{Grade, Tag};
use crate::work::Outcome::{PutBack, Replace};

const SLIGHT: &[WearLine] = &[at(Grade::ONE, &[Tappet], &[Tag::Pitting], Replace)];

pub(super) const RULE: Rule = Rule {
    id: RuleId("pitted-tappets"),
    why: "Manuals disagree on a foot with a few pits: some reject it, one lets it go back. The spec sheet says which is followed; more than a few pits reject it by all.",
    source: "Aircraft piston-engine overhaul manual, para 6-45, and TM 9-4310-397-14 (reject); TM 10-3930-644-14&P (slightly pitted is acceptable).",
    says: Says::OnPart(|scene, part, record| {
        let (_, seen) = read(SLIGHT, part, record)?;
        let is_lenient = scene.job.sheet.follows_other(Dispute::PittedTappets);
        let outcome = if is_lenient { PutBack } else { Replace };
        Some((outcome, format!("{seen} {}", Dispute::PittedTappets.sentence(is_lenient, scene.engine.terms()))))
    }),
};
