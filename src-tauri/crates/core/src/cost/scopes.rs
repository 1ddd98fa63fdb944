//! To which job of a proposal each line of a bill belongs: what is taken to pieces, machined and fitted together is agreed to
//! together, and what other work brings goes with that work.

use crate::decide::rules;
use crate::engine::{Arrangement, Part, PartKind};
use crate::job::{EditId, Job};
use crate::money::{Charge, JobScope, OwnCharge, PriceKey, QuoteLine};
use crate::view::PartView;
use crate::work::{Outcome, Work};

/// The jobs to which the lines of one bill belong.
pub(super) struct Scopes<'a> {
    job: &'a Job,
    /// Of the hot wash, with the plugs that come out for it.
    wash: JobScope,
    /// Of new cam bearings.
    cam_bearings: JobScope,
}

impl<'a> Scopes<'a> {
    /// Of all lines of a bill but those that stand on every one.
    pub(super) fn of(job: &'a Job, lines: &[QuoteLine], parts: &[PartView]) -> Self {
        let has = |kind, work| lines.iter().any(|line| line.of == PriceKey { kind, work });
        let is_washed = has(PartKind::Block, Work::Clean);
        let is_in_block = job.arrangement.as_ref().is_some_and(Arrangement::is_cam_in_block);
        let wash = wash(lines, parts);
        // Bushes do not stand the wash: who agrees to it agrees to them (common practice).
        let cam_bearings = match () {
            () if is_in_block && is_washed => wash,
            () if is_in_block && has(PartKind::Block, Work::Replace) => JobScope::Block,
            () => JobScope::of(PartKind::CamBearing),
        };
        Self { job, wash, cam_bearings }
    }

    /// The job that a kind of part belongs to, once it is renewed.
    pub(super) fn of_kind(&self, kind: PartKind) -> JobScope {
        self.of_line(&PriceKey { kind, work: Work::Replace }.into())
    }

    /// The piece of which a part is one.
    pub(super) fn carrier(&self, part: Part) -> Option<Part> {
        part.comes_with(self.job.arrangement.as_ref()?)
    }

    /// The job of a line.
    pub(super) fn of_line(&self, of: &Charge) -> JobScope {
        match of {
            Charge::Work(PriceKey { kind: PartKind::Block, work: Work::Clean | Work::Fit }) => self.wash,
            Charge::Work(PriceKey { kind: PartKind::CorePlugs, .. }) => self.wash,
            Charge::Work(PriceKey { kind: PartKind::CamBearing, work: Work::Replace | Work::Fit }) => self.cam_bearings,
            Charge::Work(PriceKey { kind, .. }) => JobScope::of(*kind),
            Charge::Own(OwnCharge { own }) => {
                let named: Option<EditId> = own.parse().ok();
                let item = self.job.own_items.iter().find(|(edit, _)| Some(*edit) == named);
                item.and_then(|(_, item)| item.scope).unwrap_or(JobScope::Further)
            }
            Charge::Standing(_) => JobScope::Assembly,
        }
    }
}

/// The job of the wash: that which alone brings it, else the block's own.
fn wash(lines: &[QuoteLine], parts: &[PartView]) -> JobScope {
    let block = parts.iter().find(|view| view.kind == PartKind::Block);
    // Dirty, suspected, or by a person's word.
    let is_own = block.is_some_and(|view| {
        let own = &view.decision;
        let asks = own.reasons.iter().any(|reason| {
            reason.rule != rules::PIECE_OF_WORKED_PARTS && matches!(reason.outcome, Outcome::Clean | Outcome::Machine)
        });
        asks || own.overruled_because.is_some() || own.outcome == Outcome::CantSay
    });
    let works: Vec<PriceKey> = lines.iter().filter_map(|line| line.of.work()).collect();
    let on_block = |of: &PriceKey| match of.kind {
        PartKind::Block => !matches!(of.work, Work::Clean | Work::Fit),
        PartKind::HousingBore => true,
        _ => false,
    };
    if !works.contains(&PriceKey { kind: PartKind::Block, work: Work::Clean }) || is_own || works.iter().any(on_block) {
        return JobScope::Block;
    }
    let machined = works.iter().filter(|of| {
        let is_on_it = matches!(of.kind, PartKind::Bore | PartKind::TappetBore | PartKind::CamBearing);
        is_on_it && matches!(of.work, Work::Machine | Work::Sleeve | Work::Bush)
    });
    let mut bring: Vec<JobScope> = machined.map(|of| JobScope::of(of.kind)).collect();
    bring.dedup();
    if let [alone] = bring[..] { alone } else { JobScope::Block }
}
