//! What was found, part by part, and what was looked at without finding damage.

use super::chapter::chapter;
use super::grouping::by_kind;
use super::paper::{Block, Picture, ZoneDrawing};
use crate::assess::Assessment;
use crate::view::{Finding, PartView, Seen};
use crate::wear::{Grade, Zone, ZoneMap};
use crate::words::capitalised;

/// Parts with pictures in the short report.
const WORST_SHOWN: usize = 4;

/// Every part with damage, a picture or a remark.
pub(super) fn findings(assessment: &Assessment) -> impl Iterator<Item = Block> {
    assessment.parts.iter().filter(|view| !is_bare(view) || view.seen == Seen::Worn).map(part)
}

/// What is sound.
pub(super) fn clean(assessment: &Assessment) -> Vec<Block> {
    let clean: Vec<&PartView> =
        assessment.parts.iter().filter(|view| view.seen == Seen::Clean && is_bare(view)).collect();
    let kinds = by_kind(&clean, assessment);
    let points = kinds.iter().map(|kind| capitalised(kind)).collect();
    chapter("Looked at and without damage", (!kinds.is_empty()).then_some(Block::Points(points)))
}

/// Nothing but what was seen is known of it: no picture, no remark.
fn is_bare(view: &PartView) -> bool {
    view.photos.is_empty() && view.note.is_empty()
}

/// The few parts that a customer should see: the worst that were photographed, else the worst.
pub(super) fn worst(assessment: &Assessment) -> Vec<Block> {
    let mut worn: Vec<&PartView> = assessment.parts.iter().filter(|view| view.seen == Seen::Worn).collect();
    worn.sort_by_key(|view| std::cmp::Reverse((!view.photos.is_empty(), view.worst)));
    worn.truncate(WORST_SHOWN);
    chapter("The worst of what was found", worn.into_iter().map(part))
}

fn part(view: &PartView) -> Block {
    let mut lines: Vec<String> = view.findings.iter().map(finding_line).collect();
    match view.seen {
        Seen::Clean if view.findings.is_empty() => lines.push("Looked at and clean.".into()),
        Seen::NotLooked => lines.push("Photographed, not yet judged.".into()),
        _ => {}
    }
    let seen = if view.findings.is_empty() {
        lines.join(" ")
    } else {
        view.findings.iter().map(|finding| finding.name.as_str()).collect::<Vec<_>>().join(", ")
    };
    let several = view.photos.len() > 1;
    Block::Findings {
        part: view.label.clone(),
        seen: view.seen,
        worst: view.worst,
        lines,
        note: view.note.clone(),
        outcome: view.decision.words().into(),
        zones: zones(view),
        pictures: view
            .photos
            .iter()
            .zip(1..)
            .map(|(photo, nth)| {
                let which = if several { format!(", photo {nth} of {}", view.photos.len()) } else { String::new() };
                let markups = view.drawn.get(photo).into_iter().flatten().map(|drawn| drawn.markup.clone()).collect();
                Picture { photo: photo.clone(), alt: format!("{}{which}: {seen}", view.label), markups }
            })
            .collect(),
    }
}

fn finding_line(finding: &Finding) -> String {
    let place =
        if finding.zones.is_empty() { String::new() } else { format!(" Where: {}.", zone_words(&finding.zones)) };
    format!("{}, grade {} of 4. {}{place}", capitalised(&finding.name), finding.grade.number(), finding.sentence)
}

fn zone_words(zones: &[Zone]) -> String {
    zones.iter().copied().map(Zone::label).collect::<Vec<_>>().join("; ")
}

/// The part with its marked zones, each in the ink of the worst that was marked there; none if nothing was marked.
fn zones(view: &PartView) -> Option<ZoneDrawing> {
    let map = view.kind.row().zones;
    let marked: Vec<(Zone, Grade)> =
        map.zones().iter().filter_map(|zone| Some((*zone, worst_at(view, *zone)?))).collect();
    if map == ZoneMap::None || marked.is_empty() {
        return None;
    }
    let words: Vec<String> =
        marked.iter().map(|(zone, grade)| format!("{}, grade {}", zone.label(), grade.number())).collect();
    Some(ZoneDrawing { map, alt: format!("Drawing of {}, hatched: {}", view.label, words.join("; ")), marked })
}

fn worst_at(view: &PartView, zone: Zone) -> Option<Grade> {
    let damage = view.findings.iter().filter(|finding| finding.tag.is_damage());
    damage.filter(|finding| finding.zones.contains(&zone)).map(|finding| finding.grade).max()
}
