//! Shells worn at opposite edges send the rod to be measured.

use std::collections::BTreeSet;

use super::{Rule, RuleId, Says};
use crate::engine::{At, Half, Part, PartKind};
use crate::measure::{Phase, Quantity};
use crate::wear::Zone;
use crate::work::Outcome;

const FRONT: [Zone; 3] = [Zone::FrontLeft, Zone::FrontCrown, Zone::FrontRight];
const REAR: [Zone; 3] = [Zone::RearLeft, Zone::RearCrown, Zone::RearRight];

pub(super) const RULE: Rule = Rule {
    id: RuleId("rod-of-edge-worn-shells"),
    why: "A rod that is bent or twisted wears its shells at opposite edges, whatever the wear is called; eyes can’t see the bend.",
    source: "NAVEDTRA 14075 (cracking at the opposite ends of the upper and the lower shell).",
    says: Says::OnPart(|scene, part, record| {
        let (PartKind::Rod, At::Cylinder(cylinder)) = (part.kind, part.at) else { return None };
        let edge = |half: Half, zones: &[Zone]| {
            let shell = Part { kind: PartKind::RodShell, at: At::CylinderHalf(cylinder, half) };
            let tags = scene.job.parts.get(&shell).map(|shell| &shell.tags).into_iter().flatten();
            let lies_there = |own: &BTreeSet<Zone>| !own.is_empty() && own.iter().all(|zone| zones.contains(zone));
            tags.into_iter().any(|(tag, seen)| tag.is_damage() && lies_there(&seen.zones))
        };
        let is_askew = edge(Half::Upper, &FRONT) && edge(Half::Lower, &REAR)
            || edge(Half::Upper, &REAR) && edge(Half::Lower, &FRONT);
        let measured =
            |quantity: Quantity| scene.measured.figures(part, Phase::Found).any(|figure| figure.quantity == quantity);
        let is_known = measured(Quantity::Bend) && measured(Quantity::Twist);
        (record.looked_at() && is_askew && !is_known)
            .then(|| (Outcome::CantSay, "Its shells are worn at opposite edges: measure bend and twist.".into()))
    }),
};
