//! The photos that show it best: those that the mechanic picked, then the worst.

use std::cmp::Reverse;
use std::collections::BTreeSet;

use crate::assess::Assessment;
use crate::document::found::Recorded;
use crate::document::page::{Image, Shown};
use crate::document::zone_drawing::zones;
use crate::engine::Part;
use crate::job::{Job, PhotoId};
use crate::view::{Finding, OutsideView, PartView};
use crate::wear::Grade;

/// Photos on the page.
const MOST: usize = 3;

/// What may be shown.
struct Candidate<'a> {
    part: Part,
    /// The photo; none where the part is drawn.
    photo: Option<&'a PhotoId>,
    worst: Option<Grade>,
    /// Whether an arrow, an outline or a note says what to look at.
    is_marked: bool,
    shown: Shown,
}

/// At most three, of different kinds of part where there are so many: a third shell tells nothing new.
pub(super) fn shown(job: &Job, assessment: &Assessment) -> Vec<Shown> {
    worst_first(job, assessment, MOST)
}

/// What shows damage: the photos that were picked, then the worst photo of each kind of part, then the others, then drawings
/// of parts that nobody photographed.
pub(in crate::document) fn worst_first(job: &Job, assessment: &Assessment, most: usize) -> Vec<Shown> {
    let photos = assessment.parts.iter().flat_map(of_part);
    let outside = assessment.outside.iter().flat_map(of_outside);
    let mut all: Vec<Candidate<'_>> = photos.chain(outside).chain(assessment.parts.iter().filter_map(drawn)).collect();
    let picked = |own: &Candidate<'_>| {
        job.shown_photos.iter().position(|(part, photo)| *part == own.part && Some(photo) == own.photo)
    };
    all.retain(|own| own.worst.is_some() || own.is_marked || picked(own).is_some());
    all.sort_by_key(|own| {
        let sharpness = own.photo.and_then(|photo| job.sharpness.get(photo));
        (picked(own).unwrap_or(usize::MAX), own.photo.is_none(), Reverse((own.worst, own.is_marked, sharpness)))
    });
    let mut kinds = BTreeSet::new();
    let is_first = |own: &Candidate<'_>| kinds.insert((own.part.kind, own.photo.is_none())) || picked(own).is_some();
    let (first, rest): (Vec<_>, Vec<_>) = all.into_iter().partition(is_first);
    let mut told: Vec<Candidate<'_>> = first.into_iter().chain(rest).collect();
    told.sort_by_key(|own| own.photo.is_none());
    told.into_iter().take(most).map(|own| own.shown).collect()
}

fn of_part(view: &PartView) -> impl Iterator<Item = Candidate<'_>> {
    photographed(view.part, &Recorded::of_part(view), &view.photos)
}

fn of_outside(view: &OutsideView) -> impl Iterator<Item = Candidate<'_>> {
    photographed(view.part, &Recorded::of_outside(view), &view.photos)
}

fn photographed<'a>(
    part: Part,
    recorded: &Recorded<'_>,
    photos: &'a [PhotoId],
) -> impl Iterator<Item = Candidate<'a>> + use<'a> {
    let sentence = sentence(recorded.label, recorded.findings.first());
    let shown: Vec<Shown> = recorded.shown().map(|own| Shown { sentence: sentence.clone(), ..own }).collect();
    let worst = recorded.worst;
    photos.iter().zip(shown).map(move |(photo, shown)| {
        let is_marked = shown.photo().is_some_and(|picture| !picture.markups.is_empty());
        Candidate { part, photo: Some(photo), worst, is_marked, shown }
    })
}

/// A part that nobody photographed, with the zones that were marked.
fn drawn(view: &PartView) -> Option<Candidate<'_>> {
    if !view.photos.is_empty() {
        return None;
    }
    let image = Image::Zones(zones(view)?);
    let shown = Shown { image, sentence: sentence(&view.label, view.findings.first()) };
    Some(Candidate { part: view.part, photo: None, worst: view.worst, is_marked: true, shown })
}

/// "Rod 2, upper shell: scoring, grade 3 of 4."
fn sentence(label: &str, finding: Option<&Finding>) -> String {
    match finding {
        None => format!("{label}."),
        Some(finding) => format!("{label}: {}, grade {} of 4.", finding.name, finding.grade.number()),
    }
}

#[cfg(test)]
mod tests {
    use serde_json::{Value, json};

    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};

    /// Which photos are shown, by their first letter.
    #[track_caller]
    fn shows(changes: &[Value], expected: &str) {
        let all: Vec<Value> = [arrange(&Arrangement::inline(4))].iter().chain(changes).cloned().collect();
        let job = job_of(&all);
        let letter = |shown: &Shown| shown.photo()?.photo.as_str().chars().next();
        assert_eq!(shown(&job, &assess(&job)).iter().filter_map(letter).collect::<String>(), expected);
    }

    fn photo(part: &str, letter: &str, sharpness: Option<u16>) -> Value {
        match sharpness {
            Some(sharpness) => {
                json!({ "do": "add-photo", "part": part, "photo": letter.repeat(64), "sharpness": sharpness })
            }
            None => json!({ "do": "add-photo", "part": part, "photo": letter.repeat(64) }),
        }
    }

    fn scored(part: &str, grade: u8) -> Value {
        json!({ "do": "tag", "part": part, "tag": "scoring", "grade": grade })
    }

    #[test]
    fn the_worst_then_the_marked_then_the_sharpest() {
        let job = [
            photo("piston.1", "a", None),
            photo("piston.1", "b", Some(80)),
            photo("piston.1", "c", Some(120)),
            photo("piston.2", "d", Some(900)),
            scored("piston.1", 3),
            scored("piston.2", 2),
        ];
        shows(&job, "cba");
        let arrow = json!({ "shape": "arrow", "from": [100, 100], "to": [4000, 5000] });
        let marked = json!({ "do": "mark-up", "part": "piston.1", "photo": "a".repeat(64), "markup": arrow });
        shows(&[&job[..], &[marked]].concat(), "acb");
        let picked = json!({ "do": "show-photo", "part": "piston.2", "photo": "d".repeat(64), "shown": true });
        shows(&[&job[..], &[picked]].concat(), "dcb");
    }
}
