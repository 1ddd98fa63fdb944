//! What the plan of sizes says of journals and bores.

use super::{Rule, Says};
use crate::decide::Outcome;
use crate::engine::PartKind;
use crate::sheet::SizeGroup;
use crate::sizing::Action;

pub(super) const RULE: Rule = Rule {
    id: "common-size",
    why: "All journals of a group, or all bores, go to one size: the smallest listed one that cleans up the worst of them.",
    source: "TM 5-3805-262-34 p.4-50 (grind all journals of a kind); TM 5-4320-300-14 p.6-103 (series of undersizes); limits: the spec sheet.",
    says: Says::OnPart(|scene, part, _| {
        let plan = scene.measured.plan_of(part)?;
        match plan.action {
            Action::Machine => Some((Outcome::Machine, machined(plan))),
            Action::Replace if part.kind == PartKind::Bore => Some((Outcome::Replace, plan.because.clone())),
            Action::Replace => Some((Outcome::Replace, plan.because.clone())),
            Action::Polish if plan.settled => Some((Outcome::Polish, plan.because.clone())),
            Action::Keep | Action::UndersizeShells if plan.settled => Some((Outcome::PutBack, plan.because.clone())),
            Action::Keep | Action::UndersizeShells | Action::Polish | Action::Open => None,
        }
    }),
};

fn machined(plan: &crate::sizing::GroupPlan) -> String {
    let work = if plan.group == SizeGroup::Bores { "Bored" } else { "Ground" };
    match plan.size {
        Some(_) => format!("{work} to {}, {}. {}", plan.size_shown, plan.finished_shown, plan.because),
        None => plan.because.clone(),
    }
}
