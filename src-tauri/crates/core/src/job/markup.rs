//! What a person draws over a photo to point at what matters. The picture itself stays as it was taken.

use serde::{Deserialize, Serialize};

use super::refused::{MAX_NAME, check_length};
use super::{EditId, Refused, Stroke};

/// Something drawn over a photo. Places are points from left to right and top to bottom of the upright picture, each
/// from edge to edge 0 to 10 000.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(tag = "shape", rename_all = "kebab-case", deny_unknown_fields)]
pub enum Markup {
    /// A closed line round something.
    Outline {
        /// Its points, in order.
        points: Stroke,
        /// What is to be seen there; may be empty.
        #[serde(default)]
        note: String,
    },
    /// An arrow to something.
    Arrow {
        /// Its tail.
        from: (u16, u16),
        /// Its tip.
        to: (u16, u16),
        /// What is to be seen there; may be empty.
        #[serde(default)]
        note: String,
    },
    /// A note at a place.
    Note {
        /// The place.
        at: (u16, u16),
        /// What is to be seen there.
        note: String,
    },
}

/// Something drawn over a photo, with the edit that drew it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Drawn {
    /// The edit, by which it can be undone.
    pub edit: EditId,
    /// What was drawn.
    pub markup: Markup,
}

/// The far edge of a picture.
const EDGE: u16 = 10_000;
/// Most points of an outline: a finger's line, thinned, has some hundred.
const MOST_POINTS: usize = 400;
/// An outline or an arrow smaller than this in both directions would not be seen.
const SMALLEST: u16 = 200;
/// Most things drawn on one photo; more would hide it.
pub(super) const MOST_ON_A_PHOTO: usize = 20;

impl Markup {
    /// Refuses what can't be drawn.
    ///
    /// # Errors
    /// A sentence.
    pub(super) fn check(&self) -> Result<(), Refused> {
        let refused = |why: &str| Err(Refused(why.into()));
        let points = self.points();
        if points.iter().any(|(x, y)| *x > EDGE || *y > EDGE) {
            return refused("It leaves the picture: places run from 0 to 10000 both ways.");
        }
        if points.len() > MOST_POINTS {
            return Err(Refused(format!("The outline has {} points: {MOST_POINTS} at most.", points.len())));
        }
        let reach = |of: fn(&(u16, u16)) -> u16| {
            let (least, most) = points.iter().map(of).fold((EDGE, 0), |(least, most), x| (least.min(x), most.max(x)));
            most.saturating_sub(least)
        };
        let is_small = reach(|(x, _)| *x) < SMALLEST && reach(|(_, y)| *y) < SMALLEST;
        match self {
            Self::Outline { points, .. } if points.len() < 3 => {
                return refused("An outline needs three points or more: draw it round what is to be seen.");
            }
            Self::Outline { .. } | Self::Arrow { .. } if is_small => {
                return Err(Refused(format!("The {} is too small to be seen: draw it larger.", self.words())));
            }
            Self::Note { .. } if self.note().is_empty() => {
                return refused("The note is empty: say what is to be seen there.");
            }
            _ => {}
        }
        check_length("The note", self.note(), MAX_NAME)
    }

    /// What is to be seen there; empty if nothing was said.
    pub fn note(&self) -> &str {
        match self {
            Self::Outline { note, .. } | Self::Arrow { note, .. } | Self::Note { note, .. } => note.trim(),
        }
    }

    /// Its kind in words.
    pub fn words(&self) -> &'static str {
        match self {
            Self::Outline { .. } => "outline",
            Self::Arrow { .. } => "arrow",
            Self::Note { .. } => "note",
        }
    }

    /// Where its number stands: the top of an outline, the tail of an arrow, the place of a note.
    pub fn anchor(&self) -> (u16, u16) {
        match self {
            Self::Outline { points, .. } => points.iter().min_by_key(|(_, y)| *y).copied().unwrap_or_default(),
            Self::Arrow { from, .. } => *from,
            Self::Note { at, .. } => *at,
        }
    }

    /// Its points.
    fn points(&self) -> Vec<(u16, u16)> {
        match self {
            Self::Outline { points, .. } => points.clone(),
            Self::Arrow { from, to, .. } => vec![*from, *to],
            Self::Note { at, .. } => vec![*at],
        }
    }
}

/// The numbers under which the notes on one photo are told, in the order in which they were drawn: 1 for the first that
/// has a note; none for what has none.
pub fn numbers<'a>(markups: impl IntoIterator<Item = &'a Markup>) -> Vec<Option<usize>> {
    let mut last = 0;
    let number = |markup: &Markup| {
        (!markup.note().is_empty()).then(|| {
            last += 1;
            last
        })
    };
    markups.into_iter().map(number).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, arranged, edit, job_of};
    use crate::job::{Change, Job};
    use serde_json::{Value, json};

    const PHOTO: &str = "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa";

    fn drawing(markup: Value) -> Change {
        serde_json::from_value(json!({"do": "mark-up", "part": "piston.1", "photo": PHOTO, "markup": markup})).unwrap()
    }

    fn job() -> Job {
        job_of(&[arrange(&Arrangement::inline(4)), json!({"do": "add-photo", "part": "piston.1", "photo": PHOTO})])
    }

    #[track_caller]
    fn refused(markup: Value, because: &str) {
        assert_eq!(job().check(&drawing(markup)).unwrap_err().to_string(), because);
    }

    #[test]
    fn what_is_drawn_is_kept_with_its_photo_in_order() {
        let mut job = job();
        let arrow = drawing(json!({"shape": "arrow", "from": [100, 100], "to": [4000, 5000], "note": " step "}));
        let ring = drawing(json!({"shape": "outline", "points": [[10, 900], [500, 20], [900, 900]]}));
        for (n, change) in (2..).zip([&arrow, &ring]) {
            assert_eq!(job.check(change), Ok(()));
            job.apply(edit(n), change);
        }
        let piston = "piston.1".parse().unwrap();
        let drawn: Vec<&Markup> = job.parts[&piston].drawn.values().flatten().map(|drawn| &drawn.markup).collect();
        assert_eq!(drawn.iter().map(|markup| markup.anchor()).collect::<Vec<_>>(), [(100, 100), (500, 20)]);
        assert_eq!(numbers(drawn.iter().copied()), [Some(1), None]);
        assert_eq!(drawn[0].note(), "step");
    }

    #[test]
    fn what_cannot_be_seen_or_read_is_refused() {
        refused(
            json!({"shape": "arrow", "from": [100, 100], "to": [150, 290]}),
            "The arrow is too small to be seen: draw it larger.",
        );
        refused(
            json!({"shape": "outline", "points": [[0, 0], [9000, 9000]]}),
            "An outline needs three points or more: draw it round what is to be seen.",
        );
        refused(json!({"shape": "outline", "points": vec![[5, 5]; 401]}), "The outline has 401 points: 400 at most.");
        refused(
            json!({"shape": "note", "at": [10, 10_001], "note": "x"}),
            "It leaves the picture: places run from 0 to 10000 both ways.",
        );
        refused(
            json!({"shape": "note", "at": [10, 10], "note": " "}),
            "The note is empty: say what is to be seen there.",
        );
        refused(
            json!({"shape": "note", "at": [10, 10], "note": "x".repeat(201)}),
            "The note has 201 characters: 200 at most.",
        );
    }

    #[test]
    fn a_photo_must_be_there_and_have_room() {
        let note = drawing(json!({"shape": "note", "at": [10, 10], "note": "x"}));
        let none = arranged(Arrangement::inline(4));
        assert!(none.check(&note).unwrap_err().to_string().starts_with("This part has no such photo"));
        let mut full = job();
        (2..22).for_each(|n| full.apply(edit(n), &note));
        assert_eq!(full.check(&note).unwrap_err().to_string(), "20 things are drawn on this photo: remove one first.");
    }
}
