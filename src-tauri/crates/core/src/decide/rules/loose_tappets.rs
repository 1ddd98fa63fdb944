//! A tappet that is too loose or too tight in its bore.

use super::{Rule, RuleId, Says};
use crate::engine::PartKind;
use crate::measure::{Conformity, Phase, Quantity};
use crate::sizing::{Blame, blame};
use crate::words::capitalised;
use crate::work::Outcome::{CantSay, Replace};

pub(super) const RULE: Rule = Rule {
    id: RuleId("loose-tappets"),
    why: "A {tappet} that a new one would put right is renewed; where a new one would be too loose as well, the bore is mended.",
    source: "TM 5-3810-206-35 p. 3-73 (beyond the most allowed: renewed); limits: the spec sheet.",
    says: Says::OnPart(|scene, part, _| {
        if part.kind != PartKind::Tappet {
            return None;
        }
        let figure = scene.measured.figures(part, Phase::Found).find(|own| own.quantity == Quantity::Clearance)?;
        let told = format!("{}: {}", capitalised(&figure.name), figure.because);
        match figure.verdict {
            Some(Conformity::Outside) => match blame(&scene.measured.readings, &scene.measured.figures, part)? {
                Blame::Tappet => Some((Replace, told)),
                // What is done about it, the rule about worn bores says.
                Blame::Bore => None,
                Blame::Open(words) => Some((CantSay, format!("{told} {words}"))),
            },
            Some(Conformity::TooClose) => Some((CantSay, told)),
            None if figure.is_open() => Some((CantSay, told)),
            None | Some(Conformity::Within) => None,
        }
    }),
};
