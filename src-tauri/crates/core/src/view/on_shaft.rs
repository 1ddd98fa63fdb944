//! What is done to the crankshaft itself, besides its sizes: what of it the bearings wait for.

use super::order_line::{OrderLine, held_or_free};
use crate::decide::{Decision, rules};
use crate::engine::{Engine, Part, PartKind, ThrustBearing};
use crate::measure::{Conformity, Phase, Quantity};
use crate::sheet::SizeGroup;
use crate::sizing::{Measured, bent_mains, thrust_back};
use crate::work::Outcome;

/// What the bearings wait for of what is done to the crankshaft itself.
#[derive(Debug)]
pub(crate) struct OnShaft {
    /// What holds all shells: the shaft was bent, and what its journals are like then is not known; each in a sentence.
    straightened: Vec<String>,
    /// Whether the shells of the thrust main have the flanges.
    is_flanged: bool,
    /// What the thrust faces were dressed to or are on the new shaft; none where they stay as they are.
    thrust: Option<Thrust>,
}

/// Thrust faces that are not what they were.
#[derive(Debug)]
enum Thrust {
    /// Not measured yet: why that matters, in a sentence.
    Open(&'static str),
    /// As measured, in words: "thrust width 1.2530 in".
    Known(String),
}

impl OnShaft {
    /// Of what was measured and decided.
    pub(crate) fn of(measured: &Measured<'_>, decisions: &[Decision]) -> Self {
        let engine = measured.readings.engine;
        let mut decided = engine.parts().iter().zip(decisions);
        let shaft = decided.find(|(part, _)| part.kind == PartKind::Crankshaft).map(|(_, decision)| decision);
        let is_worked = |rule| {
            shaft.is_some_and(|own| {
                let mut reasons = own.reasons.iter();
                own.outcome == Outcome::Machine
                    && reasons.any(|reason| reason.rule == rule && reason.outcome == Outcome::Machine)
            })
        };
        let is_new = shaft.is_some_and(|own| own.outcome == Outcome::Replace);
        let open = match is_new {
            true => Some("The crankshaft is replaced: measure the thrust width of the new one before ordering."),
            false => is_worked(rules::THRUST_FACES).then_some(
                "The thrust faces are dressed: measure their width when it is back, wider ones take thicker bearings.",
            ),
        };
        let is_straight = |part: &Part| {
            let mut back = measured.figures(*part, Phase::Machined);
            back.any(|own| own.quantity == Quantity::RunOut && own.verdict == Some(Conformity::Within))
        };
        let bent = bent_mains(measured).into_iter().map(|(part, _)| part).filter(|part| !is_straight(part));
        let unmeasured = |part: Part| {
            format!("{}: its run-out is not measured since the shaft was straightened.", engine.label(part))
        };
        Self {
            straightened: if is_worked(rules::BENT_CRANKSHAFT) { bent.map(unmeasured).collect() } else { vec![] },
            is_flanged: engine.arrangement().construction.thrust == Some(ThrustBearing::Flange),
            thrust: open.map(|open| thrust_back(measured).map_or(Thrust::Open(open), Thrust::Known)),
        }
    }

    /// What holds the shells of a group.
    pub(super) fn of_shells(&self, group: SizeGroup) -> Vec<String> {
        let flanges = match &self.thrust {
            Some(Thrust::Open(open)) if self.is_flanged && group == SizeGroup::Mains => Some((*open).to_owned()),
            _ => None,
        };
        self.straightened.iter().cloned().chain(flanges).collect()
    }

    /// The thrust bearing as a line with a size of its own, where its faces are not what they were; flanges come with
    /// their shells.
    pub(super) fn thrust_set(&self, engine: &Engine) -> Option<OrderLine> {
        let thrust = self.thrust.as_ref().filter(|_| !self.is_flanged)?;
        let faces = engine.parts().iter().copied().filter(|part| part.kind == PartKind::ThrustFace);
        let waits = match thrust {
            Thrust::Open(open) => vec![(*open).to_owned()],
            Thrust::Known(_) => vec![],
        };
        let line = held_or_free(PartKind::ThrustFace, "thrust bearing, set", None, &waits);
        Some(OrderLine {
            parts: faces.collect(),
            quantity: 1,
            size_shown: if let Thrust::Known(shown) = thrust {
                format!("for {shown}")
            } else {
                line.size_shown.clone()
            },
            ..line
        })
    }
}
