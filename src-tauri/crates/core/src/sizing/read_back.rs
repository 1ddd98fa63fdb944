//! What came back from the machine shop, beside what was asked for.

use serde::Serialize;

use super::plan::{Action, GroupPlan, PartPlan, sentence};
use crate::engine::{Part, PartKind};
use crate::figure::{Bench, Figure, Readings, Sizes, figures};
use crate::job::{ItemKey, Job, Step};
use crate::measure::{Conformity, Phase, Quantity};
use crate::money::PriceKey;
use crate::sheet::SizeGroup;
use crate::work::Work;

/// What came back of one group, of the bores of tappets, or of what is brought to a size of its own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ReadBack {
    /// The group; none of parts that go each by itself: bores of tappets, ends of rods.
    pub group: Option<SizeGroup>,
    /// To what is done what.
    pub of: PriceKey,
    /// What is read of each.
    pub quantity: Quantity,
    /// Of what, in words, plural: "main journals".
    pub label: String,
    /// What was asked for, in words.
    pub asked: String,
    /// Every part has been measured as machined and is right.
    pub confirmed: bool,
    /// Each part.
    pub parts: Vec<ReadBackLine>,
}

/// What came back of one part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ReadBackLine {
    /// The part.
    pub part: Part,
    /// Its name.
    pub label: String,
    /// The size as found, in words; empty if it was not measured.
    pub found_shown: String,
    /// The size as machined, in words; empty if it was not measured.
    pub shown: String,
    /// Whether size and form are right; none before it is measured.
    pub verdict: Option<Conformity>,
    /// What is wrong or missing, in a sentence without its name; empty if it is right.
    pub problem: String,
}

impl ReadBackLine {
    /// What is wrong or missing, in a sentence with its name; none if it is right.
    pub fn sentence(&self) -> Option<String> {
        (!self.problem.is_empty()).then(|| sentence(&self.label, &self.problem))
    }
}

/// Checks what was machined, sleeved or polished. None if nothing of the group is.
pub(crate) fn read_back(readings: &Readings<'_>, plan: &GroupPlan) -> Option<ReadBack> {
    let size = plan.size.filter(|_| plan.worked().next().is_some())?;
    let sizes = Sizes { groups: [(plan.group, size)].into(), ..Sizes::default() };
    let bench = Bench { readings, phase: Phase::Machined, sizes: &sizes };
    let parts: Vec<ReadBackLine> = plan.worked().map(|own| line(bench, plan, own)).collect();
    Some(ReadBack {
        group: Some(plan.group),
        of: of_plan(plan),
        quantity: Quantity::Diameter,
        label: plan.group.label().into(),
        asked: match plan.action {
            Action::Polish => format!("{}, polished", plan.size_shown),
            _ => format!("{}: {}", plan.size_shown, plan.finished_shown),
        },
        confirmed: parts.iter().all(|line| line.verdict == Some(Conformity::Within) && line.problem.is_empty()),
        parts,
    })
}

fn line(bench: Bench<'_>, plan: &GroupPlan, own: &PartPlan) -> ReadBackLine {
    let part = own.part;
    let of_form = |figure: &Figure| {
        matches!(figure.quantity, Quantity::Diameter | Quantity::OutOfRound | Quantity::Taper | Quantity::Barrel)
    };
    let machined: Vec<Figure> = figures(bench, part).into_iter().filter(of_form).collect();
    let verdict = machined.iter().filter_map(|figure| figure.verdict).max();
    let size = machined.iter().find(|figure| figure.quantity == Quantity::Diameter);
    let wrong = machined.iter().find(|figure| figure.verdict.is_some_and(|verdict| verdict != Conformity::Within));
    let problem = match (size, wrong) {
        (None, _) => unmeasured(bench.readings.job, of_plan(plan)),
        (Some(_), Some(figure)) => format!("{} {}", figure.name, figure.because),
        (Some(_), None) => missing(bench, part).unwrap_or_default(),
    };
    let verdict = if size.is_none() { None } else { verdict };
    // A finished part must lie in the finished range, however far a used one may wear; a polished one keeps its size.
    let finished = plan
        .finished
        .filter(|_| plan.action != Action::Polish)
        .zip(size)
        .map(|((low, high), size)| size.low >= low && size.high <= high);
    let (verdict, problem) = match (finished, verdict) {
        (Some(false), Some(Conformity::Within)) => (
            Some(Conformity::Outside),
            format!("it is {}; asked for was {}.", size.map_or("", |size| size.shown.as_str()), plan.finished_shown),
        ),
        _ => (verdict, problem),
    };
    ReadBackLine {
        part,
        label: own.label.clone(),
        found_shown: own.found_shown.clone(),
        shown: size.map_or_else(String::new, |size| size.shown.clone()),
        verdict,
        problem,
    }
}

fn of_plan(plan: &GroupPlan) -> PriceKey {
    let work = match plan.action {
        Action::Polish => Work::Polish,
        Action::Sleeve => Work::Sleeve,
        _ => Work::Machine,
    };
    PriceKey { kind: plan.group.kind(), work }
}

/// What is missing of a part that has no size as machined: before it came back, the work as well.
pub(super) fn unmeasured(job: &Job, of: PriceKey) -> String {
    let done = match (of.kind, of.work) {
        (_, Work::Polish) => "polished",
        (_, Work::Sleeve) => "sleeved",
        (PartKind::Bore, _) => "bored",
        (PartKind::MainJournal | PartKind::Crankpin | PartKind::CamJournal, _) => "ground",
        _ => "machined",
    };
    let line = ItemKey::Operation { kind: of.kind, work: Some(of.work) };
    let is_back = job.ticks.iter().any(|own| own.asked.key.is_about(&line) && own.tick.at(Step::Back) > 0);
    if is_back { format!("not measured since it was {done}.") } else { format!("not {done} and measured yet.") }
}

/// A part is machined round and straight only if that was measured.
fn missing(bench: Bench<'_>, part: Part) -> Option<String> {
    let has = part.kind.has(Quantity::Diameter)?;
    let read = |spot| {
        bench.readings.quantity(part, Quantity::Diameter, Phase::Machined).any(|standing| standing.reading.spot == spot)
    };
    let spots: Vec<String> =
        has.spots.needed().into_iter().filter(|spot| !read(*spot)).map(|spot| spot.label()).collect();
    (!spots.is_empty()).then(|| format!("measure it as machined at {}.", spots.join("; ")))
}
