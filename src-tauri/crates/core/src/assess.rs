//! What follows from a job: the one way out.
//!
//! [`assess`] is pure and is computed anew after every edit; nothing of it is stored. Each conclusion carries its
//! reasons, and what is missing to conclude more.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use crate::cause::{self, CauseReport, Memo, NextLook};
use crate::cost::{self, OtherEngines, Ways};
use crate::decide::{self, Decision};
use crate::engine::{Engine, Impossible, Part};
use crate::figure::Figure;
use crate::job::{
    Approval, Change, Excess, Job, ListKind, Log, Mark, MarkPlace, NoEffect, OnMoney, PartRecord, Refused,
};
use crate::list::{self, Bench, Open, WorkList};
use crate::measure::Phase;
use crate::money::{self, Difference, Quote};
use crate::operation::{self, Operation};
use crate::sheet::SizeGroup;
use crate::sizing::{GroupPlan, Measured, ReadBack, read_back};
use crate::view::{
    BeforeApart, Decided, OnShaft, OutsideView, PartView, Seen, Sizing, before_apart, outside, readings_of, view,
};
use crate::words::Terms;
use crate::work::{Outcome, Work};

/// Everything that follows from a job.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Assessment {
    /// The engine in a line, such as "in-line 6, 7 mains, thrust on main 4"; none before the arrangement is entered.
    pub engine: Option<String>,
    /// The words in which all of it is told.
    #[serde(skip)]
    pub terms: Terms,
    /// Every part in strip-down order; empty before the arrangement is entered.
    pub parts: Vec<PartView>,
    /// What is looked at beside the parts, in the order in which it is met; empty before the arrangement is entered.
    pub outside: Vec<OutsideView>,
    /// How much has been looked at.
    pub progress: Progress,
    /// The marks of caps and rods.
    pub marks: MarksView,
    /// What can be measured only while the engine is together, and before which part comes off.
    pub before_apart: Vec<BeforeApart>,
    /// The sizes: what is done with each group of journals or bores, clearances, orders.
    pub sizing: Sizing,
    /// What is hard to believe in the spec sheet, each in a sentence.
    pub sheet_doubts: Vec<String>,
    /// Why it happened, most likely first.
    pub causes: CauseReport,
    /// The lists that are worked.
    pub lists: Vec<WorkList>,
    /// What the rebuild costs.
    pub quote: Quote,
    /// What is to be done and stands on no line of it, in sentences.
    pub left_out: Vec<String>,
    /// Ways that serve the same end, priced side by side.
    pub ways: Vec<Ways>,
    /// What another engine would cost beside it.
    pub other_engines: OtherEngines,
    /// What changed since the first estimate.
    pub differences: Vec<Difference>,
    /// What was proposed to the customer.
    pub approval: Approval,
    /// Whether the work costs more than the customer agreed to, where they must be asked about it first.
    pub excess: Option<Excess>,
    /// What is still open before the job can be closed.
    pub still_open: Vec<Open>,
    /// What a reader must know about the record itself: entries of a newer version, entries for parts that the
    /// engine, as now arranged, does not have.
    pub notices: Vec<String>,
}

/// How much of the engine has been looked at.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Progress {
    /// Parts of the engine that ask for a look of their own.
    pub parts: usize,
    /// Parts that were looked at.
    pub looked: usize,
    /// Of these, parts with damage.
    pub worn: usize,
    /// Photos taken in.
    pub photos: usize,
}

/// The marks of caps and rods: what is noted, what is missing, what is odd.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct MarksView {
    /// Every cap and rod in strip-down order.
    pub places: Vec<MarkView>,
    /// Number of places without a note.
    pub missing: usize,
    /// Doubles, mismatches and gaps.
    pub warnings: Vec<String>,
}

/// One cap or rod.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct MarkView {
    /// Which.
    pub place: MarkPlace,
    /// Its name.
    pub label: String,
    /// The mark, once noted.
    pub mark: Option<Mark>,
}

impl Assessment {
    /// All that is known and concluded about a part; none where the engine does not have it.
    pub fn part(&self, part: Part) -> Option<&PartView> {
        self.parts.iter().find(|view| view.part == part)
    }

    /// A list that is worked; none before the arrangement is entered.
    pub fn list(&self, kind: ListKind) -> Option<&WorkList> {
        self.lists.iter().find(|list| list.kind == kind)
    }

    /// The plan of a group of sizes; none before the arrangement is entered.
    pub fn plan(&self, group: SizeGroup) -> Option<&GroupPlan> {
        self.sizing.plan(group)
    }
}

/// Computes all that follows from a job.
pub fn assess(job: &Job) -> Assessment {
    let mut memo = Memo::default();
    assess_given(job, |engine, figures| cause::diagnose_with(engine, job, figures, &mut memo))
}

/// The same with causes from elsewhere, given the engine and the figures of its parts: most of the time goes into them,
/// and little of the rest depends on them.
pub fn assess_given(job: &Job, causes: impl FnOnce(Option<&Engine>, &Figures) -> CauseReport) -> Assessment {
    let engine = job.arrangement.clone().map(|arrangement| Engine::speaking(arrangement, job.terms));
    follow(job, engine.as_ref().map(Result::as_ref), causes)
}

/// The same of a job whose log is kept, with what an earlier assessment worked out: quicker when little has changed, and
/// never different.
pub fn assess_with(log: &Log, memo: &mut Memo) -> Assessment {
    let job = log.job();
    follow(job, log.engine(), |engine, figures| cause::diagnose_with(engine, job, figures, memo))
}

/// The look that would settle most of what is not known of the causes; none without an engine, or where no look would. It
/// is no part of the assessment, for it takes as long as all the rest, and few screens ask for it.
pub fn next_look(job: &Job, memo: &mut Memo) -> Option<NextLook> {
    let engine = Engine::speaking(job.arrangement.clone()?, job.terms).ok()?;
    cause::next_look(&engine, job, &Measured::of(&engine, job).figures, memo)
}

/// The figures of each part that was measured.
type Figures = BTreeMap<Part, Vec<Figure>>;

fn follow(
    job: &Job,
    engine: Option<Result<&Engine, &Impossible>>,
    causes: impl FnOnce(Option<&Engine>, &Figures) -> CauseReport,
) -> Assessment {
    let mut notices = Vec::new();
    if !job.unknown.is_empty() {
        notices.push(format!(
            "{} of this job’s entries come from a newer version of this program; they are kept but not shown.",
            job.unknown.len()
        ));
    }
    notices.extend(set_aside(job));
    if let Some(Err(impossible)) = engine {
        notices.push(format!("The arrangement can’t be right. {impossible}"));
    }
    let Some(Ok(engine)) = engine else {
        let causes = causes(None, &BTreeMap::new());
        return Assessment {
            engine: None,
            terms: job.terms,
            parts: vec![],
            outside: vec![],
            sizing: Sizing::default(),
            lists: vec![],
            quote: Quote::default(),
            left_out: vec![],
            ways: vec![],
            other_engines: OtherEngines::default(),
            differences: vec![],
            approval: Approval::default(),
            excess: None,
            still_open: list::not_given_back(job),
            sheet_doubts: job.sheet.doubts(job.terms),
            progress: Progress::default(),
            marks: MarksView::default(),
            before_apart: vec![],
            causes,
            notices,
        };
    };
    let stray =
        job.parts.iter().filter(|(part, record)| !engine.has(**part) && **record != PartRecord::default()).count();
    if stray > 0 {
        notices.push(format!(
            "{stray} parts were recorded that this engine, as arranged now, does not have; they are kept but not shown."
        ));
    }
    let measured = Measured::of(engine, job);
    let decisions = decide::decide(engine, job, &measured);
    let mut causes = causes(Some(engine), &measured.figures);
    let (parts, sizing, operations) = conclude(measured, decisions);
    list::strike_moot(&mut causes, &parts, job.terms);
    let outside = outside(engine, job);
    let of_parts = parts.iter().map(|view| &view.photos);
    let photos = of_parts.chain(outside.iter().map(|view| &view.photos)).map(Vec::len).sum();
    let progress = Progress {
        parts: parts.iter().filter(|view| view.is_looked_at_alone()).count(),
        looked: parts.iter().filter(|view| matches!(view.seen, Seen::Clean | Seen::Worn)).count(),
        worn: parts.iter().filter(|view| view.seen == Seen::Worn).count(),
        photos,
    };
    let quote = cost::quote(engine, job, &parts, &operations);
    let approval = job.approval(&quote);
    let answered = job.answered(&quote);
    let excess = job.excess(&quote);
    let lists = list::lists(&Bench {
        engine,
        job,
        parts: &parts,
        sizing: &sizing,
        operations: &operations,
        causes: &causes,
        quote: &quote,
        approval: &approval,
        answered: &answered,
    });
    Assessment {
        engine: Some(engine.arrangement().summary()),
        terms: job.terms,
        still_open: list::still_open(job, &lists, &parts, &sizing, &approval, excess.as_ref()),
        left_out: cost::left_out(job, &quote, &lists, &causes),
        lists,
        ways: cost::ways(job, &parts, &sizing),
        other_engines: cost::other_engines(job, &parts, &quote),
        differences: money::compare(&job.estimate, &quote),
        approval,
        excess,
        quote,
        parts,
        outside,
        sizing,
        sheet_doubts: job.sheet.doubts(job.terms),
        progress,
        marks: marks(engine, job),
        before_apart: before_apart(engine, job),
        causes,
        notices,
    }
}

/// Tells of entries that are kept and do nothing, each reason once.
fn set_aside(job: &Job) -> impl Iterator<Item = String> {
    let count = |is: fn(&NoEffect) -> bool| job.without_effect.values().filter(|why| is(why)).count();
    let told = [
        (count(|why| *why == NoEffect::Closed), "came after the job was closed and wait until it is opened again"),
        (
            count(|why| *why == NoEffect::Ahead),
            "are dated ahead and wait until their time: check the clocks of your devices",
        ),
        (count(|why| matches!(why, NoEffect::Unfit { .. })), "do not fit and have no effect: the history tells why"),
    ];
    let told = told.into_iter().filter(|(count, _)| *count > 0);
    told.map(|(count, what)| format!("Of this job’s entries, {count} {what}."))
}

/// What was measured of an engine and decided about each of its parts, as it is shown, and what is done to it.
fn conclude(measured: Measured<'_>, decisions: Vec<Decision>) -> (Vec<PartView>, Sizing, Vec<Operation>) {
    let of_groups = measured.plans.iter().filter_map(|plan| read_back(&measured.readings, plan));
    let of_tappet_bores = measured.tappet_bores.iter().map(|plan| plan.read_back(&measured.readings));
    let read_back: Vec<ReadBack> = of_groups.chain(of_tappet_bores).collect();
    let operations = operation::operations(measured.readings.engine, &measured, &read_back, &decisions);
    let read_back = read_back.into_iter().chain(operations.iter().filter_map(|own| own.back.clone())).collect();
    let on_shaft = OnShaft::of(&measured, &decisions);
    let Measured { readings, plans, tappet_bores, mut figures } = measured;
    let engine = readings.engine;
    let with = |work: Work| -> BTreeSet<Part> {
        let decided = engine.parts().iter().zip(&decisions);
        decided.filter(|(_, decision)| decision.work() == Some(work)).map(|(part, _)| *part).collect()
    };
    let (replaced, machined) = (with(Work::Replace), with(Work::Machine));
    let decided = Decided { replaced: &replaced, machined: &machined, on_shaft: &on_shaft };
    let sizing = Sizing::of(&readings, plans, tappet_bores, read_back, &decided);
    let parts = engine
        .parts()
        .iter()
        .zip(decisions)
        .map(|(part, decision)| {
            let mut of_part = figures.remove(part).unwrap_or_default();
            // What is renewed is not measured again: with a new bore only the new piston counts, once it was measured.
            let is_measured = |phase: Phase| readings.of(*part).iter().any(|standing| standing.reading.phase == phase);
            let is_renewed = decision.outcome == Outcome::Replace;
            of_part.retain(|figure| figure.phase == Phase::Found || !is_renewed || is_measured(figure.phase));
            PartView { readings: readings_of(&readings, *part), figures: of_part, ..view(&readings, *part, decision) }
        })
        .collect();
    (parts, sizing, operations)
}

/// What the rebuild costs as it follows from a job.
fn quote_of(job: &Job) -> Quote {
    let Some(Ok(engine)) = job.arrangement.clone().map(|arrangement| Engine::speaking(arrangement, job.terms)) else {
        return Quote::default();
    };
    let measured = Measured::of(&engine, job);
    let decisions = decide::decide(&engine, job, &measured);
    let (parts, _, operations) = conclude(measured, decisions);
    cost::quote(&engine, job, &parts, &operations)
}

/// Whether a change fits a job: the border of the log, and that a proposal is exactly what follows from the job.
///
/// # Errors
/// [`Refused`] with a sentence for the person who made it.
pub fn check(job: &Job, change: &Change) -> Result<(), Refused> {
    job.check(change)?;
    match change {
        // What the customer signs must be what followed from the job: never a figure typed past it.
        Change::OnMoney(OnMoney::Propose { quote, .. }) if quote_of(job) != **quote => {
            Err(Refused("The proposal is not what follows from the job now: open it anew.".into()))
        }
        _ => Ok(()),
    }
}

fn marks(engine: &Engine, job: &Job) -> MarksView {
    let places = MarkPlace::all(engine.arrangement())
        .into_iter()
        .map(|place| MarkView { place, label: place.label(), mark: job.marks.get(&place).cloned() })
        .collect();
    MarksView { places, missing: job.marks_missing().len(), warnings: job.mark_warnings() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::PartKind;
    use crate::job::testing::{job_of, then};
    use crate::measure::{Length, Quantity};
    use crate::view::ReadingView;
    use serde_json::json;

    /// A crank ground to 0.010 in undersize, measured with a bore gauge's way of reading.
    fn job() -> Job {
        let changes = [
            json!({ "do": "arrange", "arrangement": crate::engine::Arrangement::inline(4) }),
            json!({ "do": "use-sheet", "sheet": {
                "head": { "name": "TM", "source": "", "unit": "inch" },
                "lines": [{ "of": { "kind": "crankpin", "quantity": "diameter" },
                    "min": "2.499 in", "max": "2.500 in", "limit": "2.498 in", "source": "" }],
                "undersizes": [{ "journals": "crankpins", "size": "0.010 in", "source": "" }], "oversizes": [] } }),
            json!({ "do": "choose-size", "group": "crankpins", "size": "0.010 in", "reason": "Ground." }),
            json!({ "do": "measure", "reading": { "part": "crankpin.1", "quantity": "diameter", "phase": "machined",
                "spot": { "station": "front", "direction": "a" }, "value": "-0.0005 in", "set_to": "2.49 in" } }),
        ];
        job_of(&changes)
    }

    #[test]
    fn a_figure_tells_what_is_allowed_and_what_is_new_at_its_size() {
        let assessment = assess(&job());
        let pin = assessment.parts.iter().find(|part| part.label == "Crankpin 1").unwrap();
        let diameter = pin.figures.iter().find(|figure| figure.quantity == Quantity::Diameter).unwrap();
        let inches = |ten_thousandths: i64| Some(Length::from_nanometres(ten_thousandths * 2_540));
        assert_eq!(diameter.allowed, (inches(24_880), inches(24_900)));
        assert_eq!(diameter.new, (inches(24_890), inches(24_900)));
    }

    #[test]
    fn a_reading_shows_all_that_belongs_to_it() {
        let assessment = assess(&job());
        let readings: Vec<&ReadingView> = assessment.parts.iter().flat_map(|part| &part.readings).collect();
        assert_eq!(readings.len(), 1);
        assert_eq!(readings[0].taken.set_to.as_ref().map(ToString::to_string).as_deref(), Some("2.49 in"));
        assert_eq!(readings[0].length, Length::from_nanometres(24_895 * 2_540));
    }

    #[test]
    fn the_old_piston_is_not_judged_in_the_new_bore() {
        let reading = |part: &str, spot: serde_json::Value, phase: &str, value: &str| json!({ "do": "measure", "reading": { "part": part, "quantity": "diameter", "spot": spot, "phase": phase, "value": value } });
        let mut changes = vec![
            json!({ "do": "arrange", "arrangement": crate::engine::Arrangement::inline(1) }),
            reading("piston.1", json!({}), "found", "91.92 mm"),
            json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 4 }),
        ];
        for station in ["top", "middle", "bottom"] {
            let spots = ["a", "b"].map(|direction| json!({ "station": station, "direction": direction }));
            changes.extend(spots.map(|spot| reading("bore.1", spot, "machined", "92.26 mm")));
        }
        let late = |changes: &[serde_json::Value]| {
            let parts = assess(&job_of(changes)).parts;
            let piston = parts.into_iter().find(|view| view.kind == PartKind::Piston).unwrap();
            piston.figures.iter().filter(|figure| figure.phase == Phase::Machined).count()
        };
        assert_eq!(late(&changes), 0);
        changes.push(reading("piston.1", json!({}), "machined", "92.20 mm"));
        assert!(late(&changes) > 0, "the new one is");
    }

    #[test]
    fn a_clearance_rests_on_the_old_piston_only_while_it_stays() {
        let line = |kind: &str, min: &str, max: &str, limit: &str| json!({ "of": { "kind": kind, "quantity": "diameter" }, "min": min, "max": max, "limit": limit, "source": "" });
        let reading = |part: &str, station: &str, direction: &str, value: &str| {
            let spot = json!({ "station": station, "direction": direction });
            json!({ "do": "measure", "reading": { "part": part, "quantity": "diameter", "spot": spot, "value": value } })
        };
        let mut changes = vec![
            json!({ "do": "arrange", "arrangement": crate::engine::Arrangement::inline(1) }),
            json!({ "do": "use-sheet", "sheet": { "head": { "name": "A", "source": "", "unit": "millimetre" },
                "lines": [line("bore", "92.00 mm", "92.02 mm", "92.10 mm"), line("piston", "91.95 mm", "91.96 mm", "91.90 mm")],
                "undersizes": [], "oversizes": [] } }),
            json!({ "do": "measure", "reading": { "part": "piston.1", "quantity": "diameter", "value": "91.92 mm" } }),
        ];
        for station in ["top", "middle", "bottom"] {
            changes.extend(["a", "b"].map(|direction| reading("bore.1", station, direction, "92.01 mm")));
        }
        let mut job = job_of(&changes);
        let piston = |job: &Job| {
            let clearances = assess(job).sizing.clearances;
            clearances.into_iter().find(|clearance| clearance.part.kind == PartKind::Piston).unwrap()
        };
        let millimetres = |hundredths: i64| Length::from_nanometres(hundredths * 10_000);
        let kept = piston(&job);
        assert_eq!(kept.because, "Bore measured, piston measured.");
        assert_eq!(kept.worst_case, (millimetres(9), millimetres(9)));
        let scuffed = json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 4, "zones": [] });
        then(&mut job, 99, &scuffed);
        let replaced = piston(&job);
        assert_eq!(replaced.because, "Bore measured, piston by the sheet.");
        assert_eq!(replaced.worst_case, (millimetres(5), millimetres(6)));
    }
}
