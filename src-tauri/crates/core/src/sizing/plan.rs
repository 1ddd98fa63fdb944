//! The plan of one group: what is done with it and why.

use serde::Serialize;

use crate::engine::Part;
use crate::measure::Length;
use crate::sheet::SizeGroup;

/// What is done with a group.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Action {
    /// Nothing can be said before more is measured.
    Open,
    /// It stays as it is.
    Keep,
    /// It is polished and keeps its size.
    Polish,
    /// It keeps its size, and takes shells made for slight wear.
    UndersizeShells,
    /// It is ground or bored to the size.
    Machine,
    /// The bores that need it are sleeved and finished to the size that the others keep.
    Sleeve,
    /// The liners or barrels that need it are renewed, the others stay: each is a piece of its own.
    Renew,
    /// No listed size cleans it up, or damage goes too deep.
    Replace,
}

impl Action {
    /// What is done with a group, in words, lower case. `size` is the size in words; empty while it is not known.
    pub(super) fn words(self, group: SizeGroup, size: &str) -> String {
        let is_bored = group == SizeGroup::Bores;
        let machine = if is_bored { "bore" } else { "grind" };
        match self {
            Self::Open => "can’t say yet".into(),
            Self::Keep => "keep as they are".into(),
            Self::Polish => if is_bored { "hone" } else { "polish" }.into(),
            Self::UndersizeShells => "keep, with shells for slight wear".into(),
            Self::Machine if size.is_empty() => format!("{machine}; size not known yet"),
            Self::Machine => format!("{machine} all to {size}"),
            Self::Sleeve => format!("sleeve those that need it, the others stay {size}"),
            Self::Renew => format!("renew those that need it, the others stay {size}"),
            Self::Replace => "replace".into(),
        }
    }
}

/// The plan of a group.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct GroupPlan {
    /// The group.
    pub group: SizeGroup,
    /// What is done.
    pub action: Action,
    /// The same in words, lower case: "grind all to 0.010 in undersize".
    pub words: String,
    /// The size that it has afterwards: zero is standard. None while it is open or when it is replaced.
    pub size: Option<Length>,
    /// The size in words: "0.010 in undersize", "standard"; empty while it is open.
    pub size_shown: String,
    /// The size that it had when found, in words.
    pub found_shown: String,
    /// The finished diameter, smallest and largest, in nanometres.
    pub finished: Option<(Length, Length)>,
    /// The finished diameter as shown.
    pub finished_shown: String,
    /// The part that decides: the one that needs the most.
    pub decided_by: Option<Part>,
    /// Why, in a sentence.
    pub because: String,
    /// The person's reason, where they chose another size.
    pub chosen_because: Option<String>,
    /// Whether all that it rests on has been looked at and measured, and nothing is too close to call.
    pub settled: bool,
    /// Why no listed size puts it right, in a sentence; none where one does, or where that is not known yet.
    pub no_size: Option<String>,
    /// What is missing.
    pub missing: Vec<Missing>,
    /// Each part of the group.
    pub parts: Vec<PartPlan>,
    /// What should be looked at again about the group, each in a sentence.
    pub notices: Vec<String>,
}

/// Something without which a plan is not settled.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Missing {
    /// What has to be done.
    pub lack: Lack,
    /// The part that it is about; none where it is about the sheet.
    pub part: Option<Part>,
    /// Its name; empty where it is about the sheet.
    pub label: String,
    /// In a sentence without the name.
    pub words: String,
}

/// What has to be done about something missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Lack {
    /// The part is to be measured, or measured again.
    Reading,
    /// The part is to be looked at.
    Look,
    /// The spec sheet is to be filled in.
    Sheet,
}

impl Missing {
    pub(super) fn reading(part: Part, label: String, words: String) -> Self {
        Self { lack: Lack::Reading, part: Some(part), label, words }
    }

    pub(super) fn look(part: Part, label: String, words: String) -> Self {
        Self { lack: Lack::Look, part: Some(part), label, words }
    }

    pub(super) fn sheet(words: String) -> Self {
        Self { lack: Lack::Sheet, part: None, label: String::new(), words }
    }

    /// In a sentence with the name.
    pub fn sentence(&self) -> String {
        if self.part.is_none() { self.words.clone() } else { sentence(&self.label, &self.words) }
    }
}

/// A sentence about a part with its name: "Crankpin 1: look at it; scratches count."
pub(super) fn sentence(label: &str, words: &str) -> String {
    format!("{label}: {words}")
}

/// The plan of a group.
pub fn plan_of(plans: &[GroupPlan], group: SizeGroup) -> Option<&GroupPlan> {
    plans.iter().find(|plan| plan.group == group)
}

impl GroupPlan {
    /// The parts that go to the machine shop: all of a group that is ground or bored, of sleeved bores those at fault.
    pub fn machined(&self) -> impl Iterator<Item = &PartPlan> {
        self.parts.iter().filter(|part| match self.action {
            Action::Machine => true,
            Action::Sleeve => part.at_fault,
            _ => false,
        })
    }

    /// What holds parts that are to be machined while the plan brings none of them to a size, in a sentence.
    pub fn ask_size(&self) -> String {
        format!("Choose the size first: the plan for the {} says “{}”.", self.group.label(), self.words)
    }

    /// The parts of which it is seen only when they are back what size they have: those machined, and those polished, for
    /// what does not clean up is ground.
    pub fn worked(&self) -> impl Iterator<Item = &PartPlan> {
        let polished = self.parts.iter().filter(|part| self.action == Action::Polish && part.polish);
        self.machined().chain(polished)
    }
}

/// One part within the plan of its group.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct PartPlan {
    /// The part.
    pub part: Part,
    /// Its name.
    pub label: String,
    /// The diameter as found, in words; empty if it was not measured.
    pub found_shown: String,
    /// The size at which it cleans up: the worst diameter less wear, scratches and allowance, in nanometres.
    pub cleans_up_at: Option<Length>,
    /// What is taken off or out on the diameter, from its worst place to the middle of the finished range; in
    /// nanometres.
    pub take_off: Option<Length>,
    /// The same in words; empty if nothing is taken off.
    pub take_off_shown: String,
    /// Whether it is itself worn, out of form or damaged so that it can't stay: else it only goes along with its group.
    pub at_fault: bool,
    /// Whether it has light damage that may polish out.
    pub polish: bool,
    /// What is wrong with it as found, each in a sentence without its name.
    pub faults: Vec<String>,
    /// The size beyond standard of the shell or piston that goes with it, in nanometres; none while it is not known.
    pub mate: Option<Length>,
    /// The same in words; empty while it is not known.
    pub mate_shown: String,
}
