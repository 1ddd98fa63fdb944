//! A row of the table of operations, and what it is read against.

use std::collections::BTreeMap;

use crate::decide::rules::{self, RuleId};
use crate::decide::{Decision, Reason};
use crate::engine::{Engine, Part, PartKind};
use crate::job::{ItemKey, Job, ListKind};
use crate::measure::Length;
use crate::sheet::SizeGroup;
use crate::sizing::{GroupPlan, Measured, ReadBack, plan_of};
use crate::work::{Hands, Outcome, Work};

/// When the turn of an operation comes on its piece (common practice): what may condemn a piece goes before what costs
/// money on it, and what makes dirt before what takes it out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// Washed, so that it can be seen and tested.
    Wash,
    /// Tested.
    Test,
    /// Brought into line, before anything is brought to a size along it.
    Straighten,
    /// Brought to a size.
    Machine,
    /// Given its surface.
    Finish,
    /// Cleaned of what the work left.
    Flush,
    /// Put together.
    Rebuild,
}

/// A row of the table.
#[derive(Debug)]
pub(super) struct Row {
    /// The work, by which it is priced.
    pub(super) work: Work,
    /// What is done, in words, lower case.
    pub(super) done: fn(PartKind) -> &'static str,
    /// When its turn comes.
    pub(super) stage: Stage,
    /// Who usually does it.
    pub(super) hands: Hands,
    /// Whether each part is a line of its own.
    pub(super) is_by_part: bool,
    /// What the hand that does it must mind.
    pub(super) mind: &'static str,
    /// Where the practice comes from.
    pub(super) source: &'static str,
    /// What brings it.
    pub(super) brought: fn(&Scene<'_>) -> Vec<Brought>,
}

impl Row {
    /// Whether what it leaves is what runs in the engine.
    pub(super) fn leaves_a_surface(&self) -> bool {
        matches!(self.work, Work::Machine | Work::Polish | Work::Hone | Work::Sleeve)
    }
}

/// An operation that something brings.
#[derive(Debug)]
pub(super) struct Brought {
    pub(super) kind: PartKind,
    /// In words, where they tell more than the row's own.
    pub(super) done: Option<String>,
    pub(super) parts: Vec<Part>,
    /// Which of the kind; empty where all are meant.
    pub(super) which: String,
    pub(super) size: Option<(Length, String)>,
    pub(super) because: String,
    pub(super) waits_for: Vec<String>,
    pub(super) is_right: bool,
    /// Whether it settles what is open about its piece, so that it does not wait for that.
    pub(super) settles: bool,
    /// The pieces of which it is asked whether they passed.
    pub(super) tested: Vec<Part>,
    /// Who usually does it, where that is not who the row says.
    pub(super) hands: Option<Hands>,
}

impl Brought {
    pub(super) fn new(kind: PartKind, parts: Vec<Part>, because: String) -> Self {
        Self {
            kind,
            done: None,
            parts,
            which: String::new(),
            size: None,
            because,
            waits_for: vec![],
            is_right: false,
            settles: false,
            tested: vec![],
            hands: None,
        }
    }
}

/// The engine, what was measured of it and what was decided.
#[derive(Debug)]
pub(super) struct Scene<'a> {
    pub(super) engine: &'a Engine,
    pub(super) measured: &'a Measured<'a>,
    read_back: &'a [ReadBack],
    decisions: BTreeMap<Part, &'a Decision>,
}

impl<'a> Scene<'a> {
    pub(super) fn new(
        engine: &'a Engine,
        measured: &'a Measured<'a>,
        read_back: &'a [ReadBack],
        decisions: &'a [Decision],
    ) -> Self {
        let decisions = engine.parts().iter().copied().zip(decisions).collect();
        Self { engine, measured, read_back, decisions }
    }

    pub(super) fn job(&self) -> &'a Job {
        self.measured.readings.job
    }

    /// The parts of a kind of which something is so, in strip-down order.
    pub(super) fn parts(&self, kind: PartKind, is: impl Fn(&Decision) -> bool) -> Vec<Part> {
        let of_kind = self.engine.parts().iter().filter(|part| part.kind == kind);
        of_kind.filter(|part| self.decisions.get(part).is_some_and(|decision| is(decision))).copied().collect()
    }

    /// The parts of a kind to which such work is done.
    pub(super) fn with(&self, kind: PartKind, work: Work) -> Vec<Part> {
        self.parts(kind, |decision| decision.work() == Some(work))
    }

    /// What is done to the parts of some kinds whose decision asks for such work, with the reason of the worst of them.
    pub(super) fn decided(&self, kinds: &[PartKind], work: Work) -> Vec<Brought> {
        let of_kind = kinds.iter().map(|kind| (*kind, self.with(*kind, work)));
        of_kind
            .filter(|(_, parts)| !parts.is_empty())
            .map(|(kind, parts)| Brought {
                which: self.which(kind, &parts),
                ..Brought::new(kind, parts.clone(), self.because(&parts))
            })
            .collect()
    }

    /// The same of a piece for a reason of its own: what is done to its journals or bores alone has operations of its own.
    pub(super) fn decided_itself(&self, piece: PartKind, work: Work) -> Vec<Brought> {
        let mut all = self.decided(&[piece], work);
        all.retain(|own| {
            let by_hand = |part: &Part| self.decision(*part).is_some_and(|own| own.overruled_because.is_some());
            own.parts.iter().any(by_hand) || self.reason(&own.parts, work).is_some()
        });
        all
    }

    /// Whether a piece is machined because of a rule of its own.
    pub(super) fn is_worked_itself(&self, piece: PartKind, rule: RuleId) -> bool {
        let own = self.with(piece, Work::Machine).into_iter().filter_map(|part| self.decision(part));
        let mut reasons = own.flat_map(|own| &own.reasons);
        reasons.any(|reason| reason.rule == rule && reason.outcome == Outcome::Machine)
    }

    /// Whether parts of a kind are machined or polished.
    pub(super) fn works_on(&self, kind: PartKind) -> bool {
        [Work::Machine, Work::Polish].into_iter().any(|work| !self.with(kind, work).is_empty())
    }

    /// Whether journals of the crankshaft are.
    pub(super) fn works_on_journals(&self) -> bool {
        self.works_on(PartKind::MainJournal) || self.works_on(PartKind::Crankpin)
    }

    /// The reason of the part with the worst damage, of several alike the first.
    pub(super) fn because(&self, parts: &[Part]) -> String {
        let worst = |part: &Part| self.job().parts.get(part).and_then(|record| record.worst());
        let decided = parts.iter().rev().max_by_key(|part| worst(part)).and_then(|part| self.decisions.get(part));
        decided.map_or_else(String::new, |decision| decision.because().into())
    }

    /// Which parts, in words; empty where all of the kind are meant.
    pub(super) fn which(&self, kind: PartKind, parts: &[Part]) -> String {
        if parts.len() == self.parts(kind, |_| true).len() {
            return String::new();
        }
        let labels: Vec<String> = parts.iter().map(|part| self.engine.label(*part)).collect();
        labels.join("; ")
    }

    /// The first reason of their own that asks for such work on one of these parts.
    pub(super) fn reason(&self, parts: &[Part], work: Work) -> Option<&'a Reason> {
        let reasons = parts.iter().filter_map(|part| self.decision(*part)).flat_map(|own| &own.reasons);
        reasons
            .into_iter()
            .find(|reason| Work::of(reason.outcome) == Some(work) && reason.rule != rules::PIECE_OF_WORKED_PARTS)
    }

    pub(super) fn decision(&self, part: Part) -> Option<&'a Decision> {
        self.decisions.get(&part).copied()
    }

    /// The parts that can't be judged yet and are part of a piece of that kind, or it itself.
    pub(super) fn open_on(&self, piece: PartKind) -> Vec<Part> {
        let is_on = |part: &Part| part.kind == piece || part.kind.comes_with(self.engine.arrangement()) == Some(piece);
        let is_open =
            |part: &Part| self.decision(*part).is_some_and(|own| own.outcome == Outcome::CantSay && !own.goes_along());
        self.engine.parts().iter().copied().filter(|part| is_on(part) && is_open(part)).collect()
    }

    pub(super) fn plan(&self, group: SizeGroup) -> Option<&'a GroupPlan> {
        plan_of(&self.measured.plans, group)
    }

    /// Whether all of a group came back and is right.
    pub(super) fn is_right(&self, group: SizeGroup) -> bool {
        self.read_back.iter().any(|back| back.group == Some(group) && back.confirmed)
    }

    /// Whether all bores of tappets that were worn came back and are right.
    pub(super) fn are_tappet_bores_right(&self) -> bool {
        self.read_back.iter().any(|back| back.of.kind == PartKind::TappetBore && back.confirmed)
    }
}

/// The key of what is done to one part as a line of its own.
pub(super) fn by_part(work: Work, part: Part) -> ItemKey {
    let list = if work == Work::Clean { ListKind::Clean } else { ListKind::RebuildHere };
    ItemKey::Part { list, part }
}
