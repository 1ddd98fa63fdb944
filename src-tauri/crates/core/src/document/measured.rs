//! What was measured, for whoever wants to see it: every figure beside its limits, and the form of journals and bores.

use super::chapter::chapter;
use super::paper::{Bar, Block, FormDrawing, FormStation, MeasuredRow};
use crate::assess::Assessment;
use crate::engine::PartKind;
use crate::figure::Figure;
use crate::measure::{Conformity, Direction, Length, LengthUnit, Phase, Quantity, Station, in_unit};
use crate::sizing::Action;
use crate::view::{PartView, ReadingView};
use crate::words::{capitalised, counted, plural};

/// Rows of the short table.
const ROWS: usize = 14;

/// What is outside its limits or too close to call, outside first; how many others are within.
pub(super) fn beyond(assessment: &Assessment) -> Vec<Block> {
    let figures = || assessment.parts.iter().flat_map(|view| view.figures.iter().map(move |figure| (view, figure)));
    let judged: Vec<(&PartView, &Figure)> = figures().filter(|(_, figure)| is_judged(figure)).collect();
    let mut told: Vec<&(&PartView, &Figure)> =
        judged.iter().filter(|(_, figure)| figure.verdict != Some(Conformity::Within)).collect();
    told.sort_by_key(|(_, figure)| !figure.is_found_outside());
    let rows: Vec<MeasuredRow> = told.iter().take(ROWS).filter_map(|(view, figure)| line(view, figure)).collect();
    let more = told.len().saturating_sub(ROWS);
    let more =
        (more > 0).then(|| format!("{} of the kind stand in the sheet of sizes.", counted(more, "more", "more")));
    let within = judged.len() - told.len();
    let (one, several) =
        if told.is_empty() { ("figure is", "figures are") } else { ("other figure is", "other figures are") };
    let within = (within > 0).then(|| format!("{} within the limits.", counted(within, one, several)));
    let counts: Vec<String> = more.into_iter().chain(within).collect();
    let counts = (!counts.is_empty()).then(|| Block::Paragraph(counts.join(" ")));
    let summary = "What was measured outside its limits or too close to call.".into();
    let table = (!rows.is_empty()).then_some([Block::BarKey, Block::Measured { summary, rows }]);
    chapter("Measured", table.into_iter().flatten().chain(counts))
}

fn is_judged(figure: &Figure) -> bool {
    figure.phase == Phase::Found && !figure.limits.is_empty()
}

/// What is made of the groups of sizes, and the forms of the journals and bores that are not all within their limits. `unit` is that of the spec sheet.
pub(super) fn measured(assessment: &Assessment, unit: LengthUnit) -> Vec<Block> {
    let groups: Vec<String> = assessment
        .sizing
        .groups
        .iter()
        .filter(|plan| plan.action != Action::Open)
        .map(|plan| format!("{}: {}. {}", capitalised(plan.group.label()), plan.words, plan.because))
        .collect();
    let groups = (!groups.is_empty()).then_some(Block::Points(groups));
    let forms = [PartKind::MainJournal, PartKind::Crankpin, PartKind::Bore].into_iter();
    let forms = forms.flat_map(|kind| forms_of(kind, assessment, unit));
    chapter("Sizes and forms", groups.into_iter().chain(forms))
}

fn forms_of(kind: PartKind, assessment: &Assessment, unit: LengthUnit) -> Vec<Block> {
    let is_beyond = |figure: &Figure| is_judged(figure) && figure.verdict != Some(Conformity::Within);
    let beyond = |view: &&PartView| view.figures.iter().any(is_beyond);
    let views = assessment.parts.iter().filter(|view| view.kind == kind).filter(beyond);
    let forms: Vec<FormDrawing> = views.filter_map(|view| form(view, unit)).collect();
    if forms.is_empty() {
        return vec![];
    }
    let name = plural(&kind.row().name.said(assessment.terms));
    vec![Block::subheading(capitalised(&name)), Block::Forms { hollow: kind == PartKind::Bore, parts: forms }]
}

/// A figure of the engine as found; none without limits, which the sheet of sizes tells.
fn line(view: &PartView, figure: &Figure) -> Option<MeasuredRow> {
    if !is_judged(figure) {
        return None;
    }
    let general = if figure.general { " (general rule)" } else { "" };
    let bar = Bar {
        low: figure.low,
        high: figure.high,
        uncertainty: figure.uncertainty,
        allowed: figure.allowed,
        new: figure.new,
    };
    Some(MeasuredRow {
        part: view.label.clone(),
        what: figure.name.clone(),
        shown: figure.shown.clone(),
        limits: format!("{}{general}", figure.limits),
        verdict: figure.verdict_words().into(),
        bar,
    })
}

/// The diameters of a journal or bore as found, if they were taken at more than one place.
fn form(view: &PartView, unit: LengthUnit) -> Option<FormDrawing> {
    let stands = |reading: &&ReadingView| {
        reading.stands && reading.quantity == Quantity::Diameter && reading.phase == Phase::Found
    };
    let readings: Vec<&ReadingView> = view.readings.iter().filter(stands).collect();
    let at = |station: Station, direction: Direction| -> Option<Length> {
        let spot = |reading: &&&ReadingView| {
            reading.spot.station == Some(station) && reading.spot.direction == Some(direction)
        };
        readings.iter().find(spot).map(|reading| reading.length)
    };
    let order: &[Station] = match view.kind {
        PartKind::Bore => &[Station::Top, Station::Middle, Station::Bottom],
        _ => &[Station::Front, Station::Middle, Station::Rear],
    };
    let stations: Vec<FormStation> = order
        .iter()
        .map(|station| FormStation {
            name: station.label().into(),
            a: at(*station, Direction::A),
            b: at(*station, Direction::B),
        })
        .filter(|station| station.a.is_some() || station.b.is_some())
        .collect();
    if stations.len() < 2 {
        return None;
    }
    let told = |station: &FormStation| {
        let values: Vec<String> = [station.a, station.b].into_iter().flatten().map(|l| in_unit(l, unit)).collect();
        format!("{} {}", station.name, values.join(" and "))
    };
    let words: Vec<String> = stations.iter().map(told).collect();
    let alt = format!("{}, diameters: {}", view.label, words.join("; "));
    Some(FormDrawing { label: view.label.clone(), stations, alt })
}
