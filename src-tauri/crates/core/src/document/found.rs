//! What was found, part by part, and what was looked at without finding damage.

use std::collections::BTreeMap;

use super::chapter::chapter;
use super::grouping::{by_kind, grouped, named};
use super::page::{Image, Shown};
use super::paper::Block;
use super::picture::Picture;
use crate::assess::Assessment;
use crate::job::{Drawn, PhotoId};
use crate::money::JobScope;
use crate::view::{Finding, OutsideView, PartView, Seen};
use crate::wear::{Grade, Zone};
use crate::words::capitalised;

/// Every part with damage or a remark, one table each for what is agreed to together; parts of which the same is told stand
/// in one row.
pub(super) fn findings(assessment: &Assessment) -> Vec<Block> {
    let told = |scope: JobScope| -> Vec<Block> {
        let views: Vec<&PartView> = assessment
            .parts
            .iter()
            .filter(|view| JobScope::of(view.kind) == scope)
            .filter(|view| view.seen == Seen::Worn || !view.note.is_empty())
            .collect();
        let rows = grouped(&views, |view| (view.kind, seen(view), to_do(view)));
        let rows =
            rows.into_iter().map(|((_, seen, to_do), group)| [capitalised(&named(&group, assessment)), seen, to_do]);
        let table = Block::table(
            format!("{}: each part with what was seen and what is to be done.", scope.title()),
            [("Part", 8), ("Seen", 22), ("What to do", 6)],
            rows,
        );
        if views.is_empty() { vec![] } else { vec![Block::subheading(scope.title()), table] }
    };
    JobScope::ALL.into_iter().flat_map(told).collect()
}

fn seen(view: &PartView) -> String {
    let note = if view.note.is_empty() { String::new() } else { format!("Remark: {}", view.note) };
    let lines: Vec<String> = view.findings.iter().map(finding_in_row).collect();
    let clean = if view.seen == Seen::Clean && lines.is_empty() { "Looked at and clean." } else { "" };
    let back = if view.back_clean { "Back looked at and clean." } else { "" };
    let told = [lines.join(" "), clean.to_owned(), back.to_owned(), note];
    told.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}

fn finding_in_row(finding: &Finding) -> String {
    let place =
        if finding.zones.is_empty() { String::new() } else { format!(" Where: {}.", zone_words(&finding.zones)) };
    format!("{}, grade {}.{place}", capitalised(&finding.name), finding.grade.number())
}

fn to_do(view: &PartView) -> String {
    let words = capitalised(view.decision.words());
    // Why stands with the other reasons.
    if view.decision.overruled_because.is_some() { format!("{words}, by the mechanic") } else { words }
}

/// All photos, small, in the order of the strip-down.
pub(super) fn photos(assessment: &Assessment) -> Vec<Block> {
    let of_parts = assessment.parts.iter().map(Recorded::of_part);
    let all = assessment.outside.iter().map(Recorded::of_outside).chain(of_parts);
    let shown: Vec<Shown> = all.flat_map(|recorded| recorded.shown().collect::<Vec<_>>()).collect();
    chapter("Photos", (!shown.is_empty()).then_some(Block::Photos { shown, small: true }))
}

/// What shows no damage; apart from it what is evenly worn, and what only measuring finds fault with.
pub(super) fn clean(assessment: &Assessment) -> Vec<Block> {
    let clean = || assessment.parts.iter().filter(|view| view.seen == Seen::Clean && view.note.is_empty());
    let of = |is: &dyn Fn(&PartView) -> bool, lead: &str| -> Option<Block> {
        let views: Vec<&PartView> = clean().filter(|view| is(view)).collect();
        let kinds = by_kind(&views, assessment);
        (!kinds.is_empty()).then(|| Block::Paragraph(format!("{lead}: {}.", kinds.join("; "))))
    };
    let is_worn = |view: &PartView| view.findings.iter().any(|finding| finding.grade > Grade::ONE);
    let told = [
        of(&|view| !view.is_measured_outside() && !is_worn(view), "Sound"),
        of(&|view| !view.is_measured_outside() && is_worn(view), "Evenly worn"),
        of(&PartView::is_measured_outside, "To the eye without damage, but outside the limits as measured"),
    ];
    chapter("Looked at and without damage", told.into_iter().flatten())
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
}

impl<'a> Recorded<'a> {
    /// Of a part.
    pub(super) fn of_part(view: &'a PartView) -> Self {
        Self {
            label: &view.label,
            seen: view.seen,
            worst: view.worst,
            back_clean: view.back_clean,
            findings: &view.findings,
            photos: &view.photos,
            drawn: &view.drawn,
        }
    }

    /// Of what lies outside the parts.
    pub(super) fn of_outside(view: &'a OutsideView) -> Self {
        Self {
            label: &view.label,
            seen: view.seen,
            worst: view.worst,
            back_clean: false,
            findings: &view.findings,
            photos: &view.photos,
            drawn: &view.drawn,
        }
    }

    /// Its photos with what they show.
    pub(super) fn shown(&self) -> impl Iterator<Item = Shown> {
        let told = match self.findings {
            [] => self.lines().join(" "),
            all => all.iter().map(|finding| finding.name.as_str()).collect::<Vec<_>>().join(", "),
        };
        let sentence = match told.trim_end_matches('.') {
            "" => format!("{}.", self.label),
            told => format!("{}: {told}.", self.label),
        };
        self.photos.iter().zip(1..).map(move |(photo, nth)| Shown {
            image: Image::Photo(self.picture(photo, nth)),
            sentence: sentence.clone(),
        })
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

    /// One of its photos, with what is drawn over it.
    pub(super) fn picture(&self, photo: &PhotoId, nth: usize) -> Picture {
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
