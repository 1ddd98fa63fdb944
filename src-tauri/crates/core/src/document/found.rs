//! What was found, part by part, and what was looked at without finding damage.

use std::collections::BTreeMap;

use super::chapter::chapter;
use super::grouping::by_kind;
use super::paper::{Block, Picture, ZoneDrawing};
use crate::assess::Assessment;
use crate::job::{Drawn, PhotoId};
use crate::view::{Finding, PartView, Seen};
use crate::wear::{Grade, Zone, ZoneMap};
use crate::words::capitalised;

/// Parts with pictures in the short report.
const WORST_SHOWN: usize = 4;

/// Every part with damage, a picture or a remark.
pub(super) fn findings(assessment: &Assessment) -> impl Iterator<Item = Block> {
    assessment.parts.iter().filter(|view| !is_bare(view) || view.seen == Seen::Worn).map(part)
}

/// What shows no damage; apart from it what is evenly worn, and what only measuring finds fault with.
pub(super) fn clean(assessment: &Assessment) -> Vec<Block> {
    let of = |is: &dyn Fn(&PartView) -> bool, lead: &str| -> Vec<Block> {
        let clean = assessment.parts.iter().filter(|view| view.seen == Seen::Clean && is_bare(view));
        let views: Vec<&PartView> = clean.filter(|view| is(view)).collect();
        let points: Vec<String> = by_kind(&views, assessment).iter().map(|kind| capitalised(kind)).collect();
        match (points.is_empty(), lead.is_empty()) {
            (true, _) => vec![],
            (false, true) => vec![Block::Points(points)],
            (false, false) => vec![Block::Paragraph(lead.into()), Block::Points(points)],
        }
    };
    let is_worn = |view: &PartView| view.findings.iter().any(|finding| finding.grade > Grade::ONE);
    let sound = of(&|view| !view.is_measured_outside() && !is_worn(view), "");
    let worn = of(&|view| !view.is_measured_outside() && is_worn(view), "Evenly worn:");
    let outside = of(&PartView::is_measured_outside, "To the eye without damage, but outside the limits as measured:");
    chapter("Looked at and without damage", sound.into_iter().chain(worn).chain(outside))
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
    let recorded = Recorded {
        label: &view.label,
        seen: view.seen,
        worst: view.worst,
        back_clean: view.back_clean,
        findings: &view.findings,
        photos: &view.photos,
        drawn: &view.drawn,
        note: &view.note,
    };
    recorded.block(view.decision.words(), zones(view))
}

/// What was recorded of something that somebody had in the hand.
pub(super) struct Recorded<'a> {
    pub(super) label: &'a str,
    pub(super) seen: Seen,
    pub(super) worst: Option<Grade>,
    pub(super) back_clean: bool,
    pub(super) findings: &'a [Finding],
    pub(super) photos: &'a [PhotoId],
    pub(super) drawn: &'a BTreeMap<PhotoId, Vec<Drawn>>,
    pub(super) note: &'a str,
}

impl Recorded<'_> {
    /// Told with its pictures.
    pub(super) fn block(&self, outcome: &str, zones: Option<ZoneDrawing>) -> Block {
        Block::Findings {
            part: self.label.into(),
            seen: self.seen,
            worst: self.worst,
            lines: self.lines(),
            note: self.note.into(),
            outcome: outcome.into(),
            zones,
            pictures: self.photos.iter().zip(1..).map(|(photo, nth)| self.picture(photo, nth)).collect(),
        }
    }

    /// What was seen, a line each finding.
    pub(super) fn lines(&self) -> Vec<String> {
        let mut lines: Vec<String> = self.findings.iter().map(finding_line).collect();
        match self.seen {
            Seen::Clean if self.findings.is_empty() => lines.push("Looked at and clean.".into()),
            Seen::NotLooked if !self.photos.is_empty() => lines.push("Photographed, not yet judged.".into()),
            _ => {}
        }
        if self.back_clean {
            lines.push("Back looked at and clean.".into());
        }
        lines
    }

    fn picture(&self, photo: &PhotoId, nth: usize) -> Picture {
        let seen = if self.findings.is_empty() {
            self.lines().join(" ")
        } else {
            self.findings.iter().map(|finding| finding.name.as_str()).collect::<Vec<_>>().join(", ")
        };
        let which = match self.photos.len() {
            0 | 1 => String::new(),
            several => format!(", photo {nth} of {several}"),
        };
        let markups = self.drawn.get(photo).into_iter().flatten().map(|drawn| drawn.markup.clone()).collect();
        Picture { photo: photo.clone(), alt: format!("{}{which}: {seen}", self.label), markups }
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
