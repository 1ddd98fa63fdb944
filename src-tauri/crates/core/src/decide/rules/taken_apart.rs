//! An assembly and the parts into which it is taken apart.

use super::{Rule, RuleId, Says};
use crate::engine::{At, Part, PartKind};
use crate::work::Outcome;

pub(super) const RULE: Rule = Rule {
    id: RuleId("taken-apart"),
    why: "An oil pump or drive of which parts are worn is rebuilt with them; a pump whose body is lost is renewed whole, and what is renewed whole brings its parts.",
    source: "Common practice.",
    says: Says::OnSet(|scene, stands| {
        let one = |kind: PartKind| Part { kind, at: At::Engine };
        let mut all = Vec::new();
        for whole in [PartKind::OilPump, PartKind::AuxiliaryDrive] {
            let details: Vec<Part> = whole.details().iter().copied().map(one).collect();
            let named = |part: Part| scene.engine.label(part);
            let body = one(PartKind::PumpBody);
            let is_lost = whole == PartKind::OilPump && stands(body) == Outcome::Replace;
            if is_lost {
                let because = format!("{} is worn out, and is not to be had alone.", named(body));
                all.push((one(whole), Outcome::Replace, because));
            }
            if is_lost || stands(one(whole)) == Outcome::Replace {
                let because = format!("It comes with what it is part of, which is renewed: {}.", named(one(whole)));
                all.extend(details.iter().map(|part| (*part, Outcome::Replace, because.clone())));
                continue;
            }
            let is_worked = |part: &&Part| match stands(**part) {
                Outcome::Clean | Outcome::Machine | Outcome::Replace => true,
                // One that was looked at or measured, and is open.
                Outcome::CantSay => scene.job.seen_with(**part).is_none(),
                _ => false,
            };
            let worked: Vec<String> = details.iter().filter(is_worked).map(|part| named(*part)).collect();
            if !worked.is_empty() {
                let because = format!("It is taken apart and rebuilt for these: {}.", worked.join("; "));
                all.push((one(whole), Outcome::RebuildHere, because));
            } else if scene.job.is_taken_apart(one(whole)) {
                all.push((one(whole), Outcome::PutBack, "All of its parts were looked at one by one.".into()));
            }
        }
        all
    }),
};
