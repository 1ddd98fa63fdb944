//! The engine: how it is arranged, and every part position that follows from that.
//!
//! A position is never typed in: [`Engine::new`] derives all of them from an [`Arrangement`], and a [`Part`] that the
//! arrangement lacks is refused by [`Engine::require`].

mod arrangement;
mod at;
mod construction;
mod crankline;
mod kind;
mod outside;
mod part;
mod plan;
mod positions;
mod ways;
mod works;

#[cfg(test)]
pub(crate) use arrangement::examples as every_arrangement;
pub use arrangement::{Arrangement, Bank, Banks, Camshaft, End, FrontEnd, Impossible, Layout, Numbering, Tappets};
pub use at::{At, Half, Port};
pub use construction::{BoreWall, CamBore, Construction, Cooling, Cylinders, Heads, Ignition, ThrustBearing};
pub use crankline::{CrankLine, Station};
pub use kind::{KindRow, PartKind};
pub use part::{NotAPart, Part};
pub use plan::{Plan, PlanCell, PlanSection, Symbol};
pub use positions::Positions;

use std::collections::BTreeSet;

use crate::words::Terms;

/// An engine that can exist: a checked arrangement with all its parts in strip-down order, called by the shop's words.
#[derive(Debug, Clone, PartialEq)]
pub struct Engine {
    arrangement: Arrangement,
    terms: Terms,
    parts: Vec<Part>,
    outside: Vec<Part>,
    known: BTreeSet<Part>,
}

impl Engine {
    /// Derives all positions of an arrangement. Its parts are called by the words that stand where nobody has chosen.
    ///
    /// # Errors
    /// [`Impossible`] says which figure of the arrangement can't be true and what would be right.
    pub fn new(arrangement: Arrangement) -> Result<Self, Impossible> {
        Self::speaking(arrangement, Terms::default())
    }

    /// The same, with its parts called by the shop's words.
    ///
    /// # Errors
    /// As of [`Engine::new`].
    pub fn speaking(arrangement: Arrangement, terms: Terms) -> Result<Self, Impossible> {
        arrangement.check(terms)?;
        let parts = strip_down_order(&arrangement);
        let outside: Vec<Part> = PartKind::OUTSIDE.into_iter().flat_map(|kind| all_of(kind, &arrangement)).collect();
        let known = parts.iter().chain(&outside).copied().collect();
        Ok(Self { arrangement, terms, parts, outside, known })
    }

    /// The arrangement from which everything follows.
    pub fn arrangement(&self) -> &Arrangement {
        &self.arrangement
    }

    /// The words by which its parts are called.
    pub fn terms(&self) -> Terms {
        self.terms
    }

    /// The name a mechanic would call out: "Main 3, upper shell".
    pub fn label(&self, part: Part) -> String {
        part.label(&self.arrangement, self.terms)
    }

    /// All parts, in the order in which they come out of the engine (common practice: head bolts and pushrods,
    /// pump and drives, then rod by rod with its piston, main caps, crankshaft, tappets and camshaft, and the bare block last).
    pub fn parts(&self) -> &[Part] {
        &self.parts
    }

    /// What is looked at beside the parts, for what it tells of them, in the order in which it is met.
    pub fn outside(&self) -> &[Part] {
        &self.outside
    }

    /// Whether the engine has this part, or this beside its parts.
    pub fn has(&self, part: Part) -> bool {
        self.known.contains(&part)
    }

    /// The part, if this engine has it.
    ///
    /// # Errors
    /// [`NotAPart`] names the part that the arrangement lacks.
    pub fn require(&self, part: Part) -> Result<Part, NotAPart> {
        if self.has(part) { Ok(part) } else { Err(missing(part, &self.arrangement, self.terms)) }
    }

    /// The next part in strip-down order.
    pub fn after(&self, part: Part) -> Option<Part> {
        let here = self.parts.iter().position(|p| *p == part)?;
        self.parts.get(here + 1).copied()
    }

    /// The part before this one in strip-down order.
    pub fn before(&self, part: Part) -> Option<Part> {
        let here = self.parts.iter().position(|p| *p == part)?;
        self.parts.get(here.checked_sub(1)?).copied()
    }
}

/// The part, if an engine so arranged has it: the same as [`Engine::require`], without deriving every other part.
///
/// # Errors
/// [`NotAPart`] names the part that the arrangement lacks.
pub fn require(part: Part, arrangement: &Arrangement, terms: Terms) -> Result<Part, NotAPart> {
    let has = part.kind.row().positions.all(arrangement).contains(&part.at);
    if has { Ok(part) } else { Err(missing(part, arrangement, terms)) }
}

fn missing(part: Part, arrangement: &Arrangement, terms: Terms) -> NotAPart {
    NotAPart(format!(
        "This engine has no {}: its arrangement is {}.",
        part.label(arrangement, terms).to_lowercase(),
        arrangement.summary()
    ))
}

fn all_of(kind: PartKind, arrangement: &Arrangement) -> impl Iterator<Item = Part> + use<> {
    kind.row().positions.all(arrangement).into_iter().map(move |at| Part { kind, at })
}

fn strip_down_order(arrangement: &Arrangement) -> Vec<Part> {
    use PartKind::*;
    let of = |kind: PartKind| all_of(kind, arrangement);
    let of_half = |kind: PartKind, half: Half| of(kind).filter(move |p| p.at.half() == Some(half));
    let mut parts: Vec<Part> = Vec::new();
    parts.extend([HeadBolts, Pushrod, OilPump].into_iter().flat_map(of));
    parts.extend(OilPump.details().iter().copied().flat_map(of));
    parts.extend([OilPickup, TimingDrive, AuxiliaryDrive].into_iter().flat_map(of));
    parts.extend(AuxiliaryDrive.details().iter().copied().flat_map(of));
    for cylinder in 1..=arrangement.cylinders {
        let here = |p: &Part| p.at.cylinder() == Some(cylinder);
        // The cap comes off with the lower shell, then the rod goes out with piston and rings.
        parts.extend(of_half(RodShell, Half::Lower).filter(here));
        parts.extend(of_half(RodShell, Half::Upper).filter(here));
        parts.extend([Rod, Piston, Rings].into_iter().flat_map(of).filter(here));
    }
    parts.extend(of(RodBolts));
    parts.extend(of(MainCapBolts));
    parts.extend(of_half(MainShell, Half::Lower));
    parts.extend(of(Crankshaft));
    parts.extend(of_half(MainShell, Half::Upper));
    parts.extend([ThrustFace, MainJournal, Crankpin].into_iter().flat_map(of));
    parts.extend([Tappet, Camshaft, Lobe, CamJournal, CamBearing].into_iter().flat_map(of));
    parts.extend([Bore, HousingBore, TappetBore, Block, CorePlugs].into_iter().flat_map(of));
    parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn every_position_of_every_kind_appears_exactly_once() {
        for arrangement in arrangement::examples() {
            let engine = Engine::new(arrangement.clone()).unwrap();
            let expected: usize = PartKind::ALL.into_iter().map(|kind| all_of(kind, &arrangement).count()).sum();
            let met = engine.parts().len() + engine.outside().len();
            assert_eq!(met, expected, "strip-down order forgets or repeats a part of {arrangement:?}");
            assert_eq!(engine.known.len(), expected, "a part appears twice in {arrangement:?}");
        }
    }

    #[test]
    fn an_arrangement_tells_of_each_part_what_its_engine_does() {
        for one in arrangement::examples() {
            let engine = Engine::new(one).unwrap();
            for part in arrangement::examples().into_iter().step_by(9).flat_map(|other| strip_down_order(&other)) {
                assert_eq!(require(part, engine.arrangement(), Terms::default()), engine.require(part));
            }
        }
    }

    #[test]
    fn stepping_forwards_then_backwards_returns() {
        let engine = Engine::new(Arrangement::inline(6)).unwrap();
        let mut part = engine.parts()[0];
        let mut steps = 0;
        while let Some(next) = engine.after(part) {
            assert_eq!(engine.before(next), Some(part));
            part = next;
            steps += 1;
        }
        assert_eq!(steps + 1, engine.parts().len());
    }

    #[test]
    fn a_part_that_the_arrangement_lacks_is_refused_by_name() {
        let engine = Engine::new(Arrangement::inline(4)).unwrap();
        let refusal = engine.require("main-shell.6.upper".parse().unwrap()).unwrap_err();
        assert_eq!(
            refusal.to_string(),
            "This engine has no main 6, upper shell: its arrangement is in-line 4, 5 mains, thrust on main 3."
        );
    }

    proptest! {
        #[test]
        fn part_names_survive_the_round_trip(cylinders in 1u8..=16) {
            let engine = Engine::new(Arrangement::inline(cylinders)).unwrap();
            for part in engine.parts() {
                prop_assert_eq!(part.to_string().parse::<Part>().unwrap(), *part);
            }
        }
    }
}
