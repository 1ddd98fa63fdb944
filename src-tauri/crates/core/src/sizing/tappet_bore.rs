//! Bores in which tappets slide: one that is worn is mended in the block, reamed for an oversize tappet or bushed for a
//! standard one, never by a new standard tappet alone (TM 10-3930-644-14&P: oversize tappets available, the bore may be
//! reamed; common practice).

use std::collections::BTreeMap;

use serde::Serialize;

use super::group::smallest_size;
use super::plan::sentence;
use super::read_back::{ReadBack, ReadBackLine, unmeasured};
use super::scratch::by_nail;
use super::words::{oversize_words, range_words, size_text};
use crate::engine::{Part, PartKind};
use crate::figure::{Figure, Readings, Value};
use crate::measure::{Conformity, Length, Phase, Quantity, Sense, in_unit};
use crate::money::PriceKey;
use crate::sheet::{Oversized, SizeRow};
use crate::words::plural;
use crate::work::{Outcome, Work};

/// What is done about the worn ones. The others stay as they are.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct TappetBores {
    /// How they are mended: `machine` is reamed, or `bush`.
    pub way: Work,
    /// The size that they and their tappets have afterwards, beyond standard in nanometres; none while it is not known.
    pub size: Option<Length>,
    /// The same in words: "0.010 in oversize", "standard"; empty while it is not known.
    pub size_shown: String,
    /// The finished bore, smallest and largest, in nanometres; none if the sheet does not tell.
    pub finished: Option<(Length, Length)>,
    /// The same in words; may be empty.
    pub finished_shown: String,
    /// Why, in a sentence.
    pub because: String,
    /// Why no oversize serves, in a sentence; empty where one does or none is known.
    pub no_size: String,
    /// What holds the work, each in a sentence; empty if nothing does.
    pub waits_for: Vec<String>,
    /// Each worn bore.
    pub bores: Vec<WornBore>,
}

/// A worn bore.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct WornBore {
    /// The bore.
    pub part: Part,
    /// Its name.
    pub label: String,
    /// Its diameter as found, in words; empty if it was not measured.
    pub found_shown: String,
    /// What is wrong with it, in a sentence without its name.
    pub fault: String,
}

/// They come back reamed or bushed, and are measured alike.
const TAPPET_BORES: PriceKey = PriceKey { kind: PartKind::TappetBore, work: Work::Machine };

impl TappetBores {
    /// Whether a bore is one of the worn.
    pub fn has(&self, bore: Part) -> bool {
        self.bores.iter().any(|own| own.part == bore)
    }

    /// What came back of them, beside what was asked for.
    pub(crate) fn read_back(&self, readings: &Readings<'_>) -> ReadBack {
        let parts: Vec<ReadBackLine> = self.bores.iter().map(|own| line(readings, self, own)).collect();
        ReadBack {
            group: None,
            of: TAPPET_BORES,
            quantity: Quantity::Diameter,
            label: plural(&PartKind::TappetBore.row().name.said(readings.engine.terms())),
            asked: [self.size_shown.as_str(), &self.finished_shown]
                .into_iter()
                .filter(|words| !words.is_empty())
                .collect::<Vec<_>>()
                .join(": "),
            confirmed: parts.iter().all(|line| line.problem.is_empty()),
            parts,
        }
    }
}

/// Of a tappet that is too loose or too tight in its bore, which of the two is to blame.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Blame {
    /// A new standard tappet puts it right.
    Tappet,
    /// With a new standard tappet it would still be too loose.
    Bore,
    /// It can’t be told: what would tell, in a sentence.
    Open(&'static str),
}

/// Which of a tappet and its bore is to blame for a clearance outside its limits; none where that is right. Judged as a pair:
/// each may be within its own limits and both together too loose.
pub fn blame(readings: &Readings<'_>, found: &BTreeMap<Part, Vec<Figure>>, tappet: Part) -> Option<Blame> {
    let clearance = figure(found, tappet, Quantity::Clearance)?;
    if clearance.verdict != Some(Conformity::Outside) {
        return None;
    }
    let Some(most) = clearance.allowed.1.filter(|_| !is_too_small(clearance)) else {
        return Some(Blame::Open("It is too tight: take off varnish and burrs and measure both again."));
    };
    let bore = bore_of(tappet);
    let Some(size) = diameter(readings, bore, Phase::Found) else {
        return Some(Blame::Open("Measure it and its bore: the clearance alone does not say which of them is worn."));
    };
    let (smallest, largest) = readings.job.sheet.new_range(tappet, Quantity::Diameter);
    if let Some(new) = smallest.or(largest) {
        return Some(if size.high - new > most { Blame::Bore } else { Blame::Tappet });
    }
    let verdict = |part| figure(found, part, Quantity::Diameter).and_then(|figure| figure.verdict);
    Some(match (verdict(bore), verdict(tappet)) {
        (Some(Conformity::Outside), _) | (_, Some(Conformity::Within)) => Blame::Bore,
        (Some(Conformity::Within), _) | (_, Some(Conformity::Outside)) => Blame::Tappet,
        _ => Blame::Open("Which of the two is worn the spec sheet does not tell: enter the diameter of a new one."),
    })
}

/// What is done about the worn bores; none where there are none.
pub(super) fn tappet_bores(readings: &Readings<'_>, found: &BTreeMap<Part, Vec<Figure>>) -> Option<TappetBores> {
    let of_kind = readings.engine.parts().iter().copied().filter(|part| part.kind == PartKind::TappetBore);
    let worn = |bore: Part| {
        Some(WornBore {
            part: bore,
            label: readings.engine.label(bore),
            found_shown: diameter(readings, bore, Phase::Found).map_or_else(String::new, |size| shown(readings, &size)),
            fault: fault(readings, found, bore)?,
        })
    };
    let bores: Vec<WornBore> = of_kind.filter_map(worn).collect();
    let first = bores.first()?;
    let fault = sentence(&first.label, &first.fault);
    let chosen = readings.job.chosen_ways.get(&PartKind::TappetBore).map(|chosen| chosen.way);
    let reamed = reamed(readings, &bores);
    let is_bushed = chosen == Some(Work::Bush) || !reamed.no_size.is_empty();
    let sheet = &readings.job.sheet;
    let row = if is_bushed { sheet.standard_bore(Oversized::Tappets) } else { reamed.row };
    let size = if is_bushed { Some(Length::default()) } else { row.as_ref().map(|row| row.size) };
    let finished = row.map(|row| row.diameter);
    let because = match (is_bushed, reamed.because.as_str()) {
        (true, _) if reamed.no_size.is_empty() => fault,
        (true, _) => format!("{fault} {}", reamed.no_size),
        (false, "") => fault,
        (false, more) => format!("{fault} {more}"),
    };
    Some(TappetBores {
        way: if is_bushed { Work::Bush } else { Work::Machine },
        size,
        size_shown: size.map_or_else(String::new, |size| oversize_words(size, readings)),
        finished,
        finished_shown: finished.map_or_else(String::new, |range| range_words(range, readings)),
        because,
        no_size: reamed.no_size,
        waits_for: if is_bushed { vec![] } else { reamed.waits_for },
        bores,
    })
}

/// To which oversize worn bores are reamed: one for all of them, since one reamer and one tappet then serve (our judgement).
#[derive(Default)]
struct Reamed {
    row: Option<SizeRow>,
    because: String,
    no_size: String,
    waits_for: Vec<String>,
}

fn reamed(readings: &Readings<'_>, bores: &[WornBore]) -> Reamed {
    let series = readings.job.sheet.tappet_oversizes();
    if series.is_empty() {
        return Reamed {
            because: "The oversize is not known yet: the machinist names it.".into(),
            ..Reamed::default()
        };
    }
    let unmeasured = bores.iter().filter(|own| own.found_shown.is_empty());
    let waits_for: Vec<String> = unmeasured
        .map(|own| sentence(&own.label, "measure its diameter in two directions: the oversize follows from it."))
        .collect();
    let allowance = readings.job.sheet.clean_up();
    let sizes = bores.iter().filter_map(|own| Some((own, diameter(readings, own.part, Phase::Found)?)));
    let Some((worst, size)) = sizes.max_by_key(|(_, size)| size.high) else {
        return Reamed { waits_for, ..Reamed::default() };
    };
    let pick = |cleans: Length| smallest_size(&series, Sense::Most, Length::default(), cleans);
    let cleans = size.high + allowance;
    let at = in_unit(cleans, readings.unit());
    let (row, unlucky) = (pick(cleans), pick(cleans + size.uncertainty));
    let mut waits_for = waits_for;
    if row != unlucky {
        let words = format!(
            "it cleans up at {at}, too close to tell which oversize that takes: measure it again, or with a surer instrument."
        );
        waits_for.push(sentence(&worst.label, &words));
    }
    match row {
        Some(row) => Reamed {
            because: format!(
                "{} cleans up at {at}, and {} is the smallest oversize that reaches that.",
                worst.label,
                size_text(row.size, readings)
            ),
            row: Some(row.clone()),
            waits_for,
            no_size: String::new(),
        },
        None => Reamed {
            no_size: format!("{} cleans up at {at}, and no listed oversize is that large.", worst.label),
            ..Reamed::default()
        },
    }
}

/// What is wrong with a bore so that it can’t stay; none where nothing is, and where a person keeps it.
fn fault(readings: &Readings<'_>, found: &BTreeMap<Part, Vec<Figure>>, bore: Part) -> Option<String> {
    let record = readings.job.parts.get(&bore);
    match record.and_then(|record| record.overrule.as_ref()) {
        Some(overrule) if overrule.outcome == Outcome::Machine => return Some(overrule.reason.clone()),
        Some(_) => return None,
        None => {}
    }
    let torn = bore.kind.row().tags.iter().find_map(|tag| {
        let grade = record?.grade(*tag)?;
        let is_torn = by_nail(bore.kind, *tag, grade) == Some(Outcome::Machine);
        is_torn.then(|| format!("{}, grade {}.", tag.row().name, grade.number()))
    });
    let of_size = || figure(found, bore, Quantity::Diameter).filter(|figure| is_too_large(figure));
    let worn = || of_size().map(|figure| format!("{} {}", figure.name, figure.because));
    let loose = || {
        let tappet = Part { kind: PartKind::Tappet, at: bore.at };
        let clearance = figure(found, tappet, Quantity::Clearance)?;
        let is_bore = blame(readings, found, tappet) == Some(Blame::Bore);
        is_bore.then(|| {
            let named = readings.engine.label(tappet);
            format!("a new one would be too loose in it as well. {named}: {} {}", clearance.name, clearance.because)
        })
    };
    torn.or_else(worn).or_else(loose)
}

/// Whether a bore is beyond its limit on the side of wear.
fn is_too_large(figure: &Figure) -> bool {
    figure.verdict == Some(Conformity::Outside) && figure.allowed.1.is_some() && !is_too_small(figure)
}

/// Whether a value that is outside is so on the side of the least that is allowed.
fn is_too_small(figure: &Figure) -> bool {
    let (below, above) =
        (figure.allowed.0.map(|least| figure.low < least), figure.allowed.1.map(|most| figure.high > most));
    below == Some(true) && above != Some(true)
}

/// What came back of one bore: it must have been measured in both directions, and lie within the finished range where the
/// sheet tells it.
fn line(readings: &Readings<'_>, plan: &TappetBores, own: &WornBore) -> ReadBackLine {
    let part = own.part;
    let size = diameter(readings, part, Phase::Machined);
    let (verdict, problem) = match (&size, plan.finished) {
        (None, _) => (None, unmeasured(readings.job, TAPPET_BORES)),
        (Some(_), _) if !missing(readings, part).is_empty() => {
            (None, format!("measure it as machined at {}.", missing(readings, part).join("; ")))
        }
        (Some(size), Some((low, high))) if size.low < low || size.high > high => {
            let asked = format!("it is {}; asked for was {}.", shown(readings, size), plan.finished_shown);
            (Some(Conformity::Outside), asked)
        }
        (Some(_), Some(_)) => (Some(Conformity::Within), String::new()),
        (Some(_), None) if plan.size.is_none() => {
            (None, "which oversize it has is not known: enter it on the spec sheet.".to_owned())
        }
        (Some(_), None) => (None, String::new()),
    };
    ReadBackLine {
        part,
        label: own.label.clone(),
        found_shown: own.found_shown.clone(),
        shown: size.map_or_else(String::new, |size| shown(readings, &size)),
        verdict,
        problem,
    }
}

/// Places at which it was not measured as machined.
fn missing(readings: &Readings<'_>, bore: Part) -> Vec<String> {
    let spots = bore.kind.has(Quantity::Diameter).map(|has| has.spots.needed()).unwrap_or_default();
    let read = |spot| {
        let mut all = readings.quantity(bore, Quantity::Diameter, Phase::Machined);
        all.any(|standing| standing.reading.spot == spot)
    };
    spots.into_iter().filter(|spot| !read(*spot)).map(|spot| spot.label()).collect()
}

fn bore_of(tappet: Part) -> Part {
    Part { kind: PartKind::TappetBore, at: tappet.at }
}

fn diameter(readings: &Readings<'_>, bore: Part, phase: Phase) -> Option<Value> {
    readings.value(bore, Quantity::Diameter, phase, None)
}

fn shown(readings: &Readings<'_>, size: &Value) -> String {
    range_words((size.low, size.high), readings)
}

fn figure(found: &BTreeMap<Part, Vec<Figure>>, part: Part, quantity: Quantity) -> Option<&Figure> {
    let of_part = found.get(&part)?;
    of_part.iter().find(|figure| figure.phase == Phase::Found && figure.quantity == quantity)
}
