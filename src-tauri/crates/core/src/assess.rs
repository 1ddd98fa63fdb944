//! What follows from a job: the one way out.
//!
//! [`assess`] is pure and is computed anew after every edit; nothing of it is stored. Each conclusion carries its
//! reasons, and what is missing to conclude more.

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use crate::cause::network::Memo;
use crate::cause::{self, CauseReport};
use crate::decide::{self, Decision, Outcome};
use crate::engine::{Engine, Part, PartKind};
use crate::figure::{Figure, Readings, doubt};
use crate::job::{CustomerAnswer, Drawn, EditId, Job, MarkPlace, PartRecord, PhotoId, Since, changed_since};
use crate::list::{self, Open, WorkList};
use crate::measure::{Length, Phase, Quantity, Reading, Spot};
use crate::money::{self, Difference, Quote, Ways};
use crate::sizing::{Measured, Sizing};
use crate::wear::{Grade, Tag, Zone};

/// Everything that follows from a job.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Assessment {
    /// The engine in a line, such as "in-line 6, 7 mains, thrust on main 4"; none before the arrangement is entered.
    pub engine: Option<String>,
    /// Every part in strip-down order; empty before the arrangement is entered.
    pub parts: Vec<PartView>,
    /// How much has been looked at.
    pub progress: Progress,
    /// The marks of caps and rods.
    pub marks: MarksView,
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
    /// Ways that serve the same end, priced side by side.
    pub ways: Vec<Ways>,
    /// What changed since the first estimate.
    pub differences: Vec<Difference>,
    /// What was proposed to the customer.
    pub approval: Approval,
    /// What is still open before the job can be closed.
    pub still_open: Vec<Open>,
    /// What a reader must know about the record itself: entries of a newer version, entries for parts that the
    /// engine, as now arranged, does not have.
    pub notices: Vec<String>,
}

/// What was proposed to the customer last, and what has become of it.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Approval {
    /// How many proposals there were: the number of the last one.
    pub version: usize,
    /// The edit that made the last proposal.
    pub proposal: Option<EditId>,
    /// Exactly what was shown.
    pub shown: Option<Quote>,
    /// What the customer answered.
    pub answer: Option<CustomerAnswer>,
    /// How the quote of now differs from it.
    pub since: Vec<Since>,
}

/// Whether somebody has looked at a part, and what they saw.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Seen {
    /// Nothing has been recorded: not the same as clean.
    NotLooked,
    /// Looked at and clean, or only evenly worn.
    Clean,
    /// Damage was tagged.
    Worn,
}

/// One part with all that is known and concluded about it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct PartView {
    /// The part.
    pub part: Part,
    /// Its kind.
    pub kind: PartKind,
    /// What a mechanic calls it.
    pub label: String,
    /// Looked at or not, and what was seen.
    pub seen: Seen,
    /// The worst grade of damage.
    pub worst: Option<Grade>,
    /// The tags, worst first.
    pub findings: Vec<Finding>,
    /// Photos in the order taken in.
    pub photos: Vec<PhotoId>,
    /// What is drawn over them, in the order in which it was drawn; photos with nothing on them are left out.
    pub drawn: BTreeMap<PhotoId, Vec<Drawn>>,
    /// The remark; empty if none.
    pub note: String,
    /// The readings, in the order in which they were taken; those that a later one at the same place replaced included.
    pub readings: Vec<ReadingView>,
    /// What follows from the readings.
    pub figures: Vec<Figure>,
    /// What to do about it.
    pub decision: Decision,
}

/// One tag on one part.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Finding {
    /// What.
    pub tag: Tag,
    /// Its name.
    pub name: String,
    /// How bad.
    pub grade: Grade,
    /// The grade's sentence.
    pub sentence: String,
    /// Where, in the order of the drawing.
    pub zones: Vec<Zone>,
}

/// One reading.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ReadingView {
    /// The edit that took it, by which it can be undone.
    pub edit: EditId,
    /// What was measured.
    pub quantity: Quantity,
    /// The name of a quantity of the manual's own; else empty.
    pub name: String,
    /// Where.
    pub spot: Spot,
    /// When in the rebuild.
    pub phase: Phase,
    /// As it was entered.
    pub value: String,
    /// The whole reading as it was taken, so that it can be given again as sure.
    pub taken: Reading,
    /// Corrected, at 20 °C, in nanometres.
    pub length: Length,
    /// With what; empty if no instrument was named.
    pub instrument: String,
    /// Whether it stands: no later one was taken at its place.
    pub stands: bool,
    /// A question, if it is hard to believe.
    pub doubt: Option<String>,
}

/// How much of the engine has been looked at.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Progress {
    /// Parts of the engine.
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
    pub mark: Option<crate::job::Mark>,
}

/// Computes all that follows from a job.
pub fn assess(job: &Job) -> Assessment {
    assess_with(job, &mut Memo::default())
}

/// The same, with what an earlier assessment worked out: quicker when little has changed, and never different.
pub fn assess_with(job: &Job, memo: &mut Memo) -> Assessment {
    let mut notices = Vec::new();
    if !job.unknown.is_empty() {
        notices.push(format!(
            "{} of this job’s entries come from a newer version of this program; they are kept but not shown.",
            job.unknown.len()
        ));
    }
    let engine = match job.arrangement.clone().map(Engine::new) {
        Some(Ok(engine)) => Some(engine),
        Some(Err(impossible)) => {
            notices.push(format!("The arrangement can’t be right. {impossible}"));
            None
        }
        None => None,
    };
    let Some(engine) = engine else {
        let causes = cause::diagnose(None, job, &BTreeMap::new());
        return Assessment {
            engine: None,
            parts: vec![],
            sizing: Sizing::default(),
            lists: vec![],
            quote: Quote::default(),
            ways: vec![],
            differences: vec![],
            approval: Approval::default(),
            still_open: vec![],
            sheet_doubts: job.sheet.doubts(),
            progress: Progress::default(),
            marks: MarksView::default(),
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
    let measured = Measured::of(&engine, job);
    let decisions = decide::decide(&engine, job, &measured);
    let causes = cause::diagnose_with(Some(&engine), job, &measured.figures, memo);
    let blank = PartRecord::default();
    let Measured { readings, mut sizing, mut figures } = measured;
    let replaced: BTreeSet<Part> = engine
        .parts()
        .iter()
        .zip(&decisions)
        .filter(|(_, decision)| decision.outcome == Outcome::Replace)
        .map(|(part, _)| *part)
        .collect();
    sizing.settle(&readings, &|part| replaced.contains(&part));
    let parts: Vec<PartView> = engine
        .parts()
        .iter()
        .zip(decisions)
        .map(|(part, decision)| PartView {
            readings: readings_of(&readings, *part),
            figures: figures.remove(part).unwrap_or_default(),
            ..view(&engine, *part, job.parts.get(part).unwrap_or(&blank), decision)
        })
        .collect();
    let progress = Progress {
        parts: parts.len(),
        looked: parts.iter().filter(|view| view.seen != Seen::NotLooked).count(),
        worn: parts.iter().filter(|view| view.seen == Seen::Worn).count(),
        photos: parts.iter().map(|view| view.photos.len()).sum(),
    };
    let quote = money::quote(&parts, &job.prices);
    let approval = approval(job, &quote);
    let lists = list::lists(&engine, job, &parts, &sizing, &causes, &approval);
    Assessment {
        engine: Some(engine.arrangement().summary()),
        still_open: list::still_open(&lists, &parts, &sizing, &approval),
        lists,
        ways: money::ways(job, &parts, &sizing),
        differences: money::compare(&job.estimate, &quote),
        approval,
        quote,
        parts,
        sizing,
        sheet_doubts: job.sheet.doubts(),
        progress,
        marks: marks(&engine, job),
        causes,
        notices,
    }
}

fn view(engine: &Engine, part: Part, record: &PartRecord, decision: Decision) -> PartView {
    let mut findings: Vec<Finding> = record
        .tags
        .iter()
        .map(|(tag, tagged)| Finding {
            tag: *tag,
            name: tag.row().name.into(),
            grade: tagged.grade,
            sentence: grade_sentence(*tag, tagged.grade).into(),
            zones: tagged.zones.iter().copied().collect(),
        })
        .collect();
    findings.sort_by_key(|finding| (std::cmp::Reverse(finding.grade), finding.tag));
    PartView {
        part,
        kind: part.kind,
        label: part.label(engine.arrangement()),
        seen: match (record.looked_at(), record.worst()) {
            (false, _) => Seen::NotLooked,
            (true, None) => Seen::Clean,
            (true, Some(_)) => Seen::Worn,
        },
        worst: record.worst(),
        findings,
        photos: record.photos.clone(),
        drawn: record.drawn.clone().into_iter().filter(|(photo, _)| record.photos.contains(photo)).collect(),
        note: record.note.clone(),
        readings: vec![],
        figures: vec![],
        decision,
    }
}

fn approval(job: &Job, quote: &Quote) -> Approval {
    let Some(last) = job.proposals.last() else { return Approval::default() };
    Approval {
        version: job.proposals.len(),
        proposal: Some(last.edit),
        shown: Some(last.quote.clone()),
        answer: last.answer.clone(),
        since: changed_since(&last.quote, quote),
    }
}

fn readings_of(readings: &Readings<'_>, part: Part) -> Vec<ReadingView> {
    let job = readings.job;
    let of_part = job.readings.iter().filter(|taken| taken.reading.part == part);
    of_part
        .map(|taken| {
            let reading = &taken.reading;
            let instrument = reading.instrument.as_ref().and_then(|id| job.instruments.get(id));
            let standing = readings.of(part).iter().find(|standing| standing.edit == taken.edit);
            ReadingView {
                edit: taken.edit,
                quantity: reading.quantity,
                name: reading.name.clone(),
                spot: reading.spot,
                phase: reading.phase,
                value: reading.value.to_string(),
                taken: reading.clone(),
                length: reading.length(instrument),
                instrument: instrument.map_or_else(String::new, |instrument| instrument.name.clone()),
                stands: standing.is_some(),
                doubt: standing.and_then(|standing| doubt(readings, standing)),
            }
        })
        .collect()
}

/// The sentence of a tag's grade.
pub fn grade_sentence(tag: Tag, grade: Grade) -> &'static str {
    let index = usize::from(grade.number()) - 1;
    tag.row().grades.get(index).copied().unwrap_or("")
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
    use crate::job::{Change, DeviceId};
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
        let mut job = Job::default();
        for (at, change) in (1..).zip(changes) {
            let change: Change = serde_json::from_value(change).unwrap();
            job.apply(EditId::next(None, at, DeviceId(1)), &change);
        }
        job
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
        let mut job = Job::default();
        for (at, change) in (1..).zip(changes) {
            let change: Change = serde_json::from_value(change).unwrap();
            assert_eq!(job.check(&change), Ok(()));
            job.apply(EditId::next(None, at, DeviceId(1)), &change);
        }
        let piston = |job: &Job| {
            let clearances = assess(job).sizing.clearances;
            clearances.into_iter().find(|clearance| clearance.part.kind == PartKind::Piston).unwrap()
        };
        let millimetres = |hundredths: i64| Length::from_nanometres(hundredths * 10_000);
        let kept = piston(&job);
        assert_eq!(kept.because, "Bore measured, piston measured.");
        assert_eq!(kept.worst_case, (millimetres(9), millimetres(9)));
        let scuffed = json!({ "do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 4, "zones": [] });
        job.apply(EditId::next(None, 99, DeviceId(1)), &serde_json::from_value(scuffed).unwrap());
        let replaced = piston(&job);
        assert_eq!(replaced.because, "Bore measured, piston by the sheet.");
        assert_eq!(replaced.worst_case, (millimetres(5), millimetres(6)));
    }
}
