//! What the plan of sizes says of journals and bores.

use super::{Rule, RuleId, Says};
use crate::engine::Part;
use crate::sheet::SizeGroup;
use crate::sizing::{Action, GroupPlan};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("common-size"),
    why: "All journals of a group, or all bores, go to one size: the smallest listed one that cleans up the worst of them.",
    source: "TM 5-3805-262-34 p.4-50 (grind all journals of a kind); TM 5-4320-300-14 p.6-103 (series of undersizes); TM 5-3805-281-24-2 (liners: replaced); limits: the spec sheet.",
    says: Says::OnPart(|scene, part, _| {
        let plan = scene.measured.plan_of(part)?;
        match plan.action {
            Action::Machine => Some((Outcome::Machine, machined(plan))),
            Action::Sleeve => sleeved(plan, part),
            Action::Renew => renewed(plan, part),
            Action::Replace => Some((Outcome::Replace, plan.because.clone())),
            Action::Polish if plan.settled => {
                let is_polished = plan.worked().any(|own| own.part == part);
                Some((if is_polished { Outcome::Polish } else { Outcome::PutBack }, plan.because.clone()))
            }
            Action::Keep | Action::UndersizeShells if plan.settled => Some((Outcome::PutBack, plan.because.clone())),
            Action::Keep | Action::UndersizeShells | Action::Polish | Action::Open => None,
        }
    }),
};

/// Of sleeved bores only those at fault; the others stay once that is settled.
fn sleeved(plan: &GroupPlan, part: Part) -> Option<(Outcome, String)> {
    let is_at_fault = plan.machined().any(|own| own.part == part);
    let finished = if plan.finished_shown.is_empty() { String::new() } else { format!(", {}", plan.finished_shown) };
    if is_at_fault {
        return Some((
            Outcome::Machine,
            format!("Sleeved and finished to {}{finished}. {}", plan.size_shown, plan.because),
        ));
    }
    plan.settled
        .then(|| (Outcome::PutBack, format!("It is within limits and stays {}; others are sleeved.", plan.size_shown)))
}

/// Of liners and barrels only those at fault; the others stay once that is settled.
fn renewed(plan: &GroupPlan, part: Part) -> Option<(Outcome, String)> {
    if plan.parts.iter().any(|own| own.part == part && own.at_fault) {
        return Some((Outcome::Replace, plan.because.clone()));
    }
    plan.settled.then(|| (Outcome::PutBack, "It is within limits and stays; others are renewed.".into()))
}

fn machined(plan: &GroupPlan) -> String {
    let work = if plan.group == SizeGroup::Bores { "Bored" } else { "Ground" };
    match plan.size {
        Some(_) => format!("{work} to {}, {}. {}", plan.size_shown, plan.finished_shown, plan.because),
        None => plan.because.clone(),
    }
}
