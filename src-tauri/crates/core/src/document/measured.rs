//! What was measured, for whoever wants to see it: every figure beside its limits, and the form of journals and bores.

use super::chapter::chapter;
use super::paper::{Bar, Block, FormDrawing, FormStation, MeasuredRow};
use crate::assess::Assessment;
use crate::engine::PartKind;
use crate::figure::Figure;
use crate::measure::{Direction, Length, LengthUnit, Phase, Quantity, Station, in_unit};
use crate::sizing::Action;
use crate::view::{PartView, ReadingView};
use crate::words::{capitalised, plural};

/// The chapter; nothing if nothing was measured. `unit` is that of the spec sheet.
pub(super) fn measured(assessment: &Assessment, unit: LengthUnit) -> Vec<Block> {
    let groups: Vec<String> = assessment
        .sizing
        .groups
        .iter()
        .filter(|plan| plan.action != Action::Open)
        .map(|plan| format!("{}: {}. {}", capitalised(plan.group.label()), plan.words, plan.because))
        .collect();
    let tables: Vec<Block> = PartKind::ALL.into_iter().flat_map(|kind| of_kind(kind, assessment, unit)).collect();
    let groups = (!groups.is_empty()).then_some(Block::Points(groups));
    let key = (!tables.is_empty()).then_some(Block::BarKey);
    chapter("What was measured", groups.into_iter().chain(key).chain(tables))
}

fn of_kind(kind: PartKind, assessment: &Assessment, unit: LengthUnit) -> Vec<Block> {
    let views = || assessment.parts.iter().filter(move |view| view.kind == kind);
    let rows: Vec<MeasuredRow> = views().flat_map(|view| view.figures.iter().filter_map(|f| line(view, f))).collect();
    let forms: Vec<FormDrawing> = views().filter_map(|view| form(view, unit)).collect();
    if rows.is_empty() && forms.is_empty() {
        return vec![];
    }
    let name = kind.row().name.said(assessment.terms);
    let name = if views().count() == 1 { name.into() } else { plural(&name) };
    let mut blocks = vec![Block::subheading(capitalised(&name))];
    if !forms.is_empty() {
        blocks.push(Block::Forms { hollow: kind == PartKind::Bore, parts: forms });
    }
    if !rows.is_empty() {
        blocks.push(Block::Measured { summary: format!("What was measured of the {name}, beside its limits."), rows });
    }
    blocks
}

/// A figure of the engine as found; none without limits, which the sheet of sizes tells.
fn line(view: &PartView, figure: &Figure) -> Option<MeasuredRow> {
    if figure.phase != Phase::Found || figure.limits.is_empty() {
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
    if !matches!(view.kind, PartKind::MainJournal | PartKind::Crankpin | PartKind::Bore) {
        return None;
    }
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
