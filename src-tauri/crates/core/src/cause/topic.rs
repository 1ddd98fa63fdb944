//! What is told together of all that was recorded.

use std::collections::BTreeSet;

use super::catalogue::{Fault, Symptom};
use super::network::{Observation, PiecesAt};
use super::pattern::Pattern;
use crate::engine::{Engine, Half, Part, PartKind};
use crate::wear::{Grade, Tag};
use crate::words::plural;

/// What is told together when a cause of the whole engine is explained.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Topic {
    /// A tag was seen on parts of one kind and half.
    Seen(Tag, PartKind, Option<Half>),
    /// Parts of one kind and half were looked at and found without damage.
    Sound(PartKind, Option<Half>),
    /// Shells of one kind and half were looked at from behind and found clean there.
    CleanBack(PartKind, Option<Half>),
    /// Parts with damage were not called evenly worn too.
    NotEven,
    /// Nothing was reported on parts beside the damage that they have.
    NothingElse,
    /// A size was beyond its limit.
    Beyond(Fault, PartKind),
    /// A size was within its limit.
    Within(Fault, PartKind),
}

/// What one finding is about.
#[derive(Debug, Clone, Copy)]
pub(super) struct Note {
    pub(super) part: Part,
    /// None where it is about everything that there could be to see and was not reported.
    pub(super) symptom: Option<Symptom>,
    pub(super) topic: Topic,
    pub(super) grade: Option<Grade>,
    pub(super) pattern: Option<Pattern>,
}

/// An observation, if the catalogue has a word about it, and what it is about.
pub(super) type Recorded = (Option<Observation>, Note);

/// What was noted of a topic.
#[derive(Debug, Clone, Default)]
pub(super) struct Noted {
    /// The pieces of evidence, site by site.
    pub(super) pieces: Vec<PiecesAt>,
    /// What they are about.
    pub(super) notes: Vec<Note>,
}

impl Topic {
    /// Whether something was found, rather than found not to be there.
    pub(super) fn is_found(self) -> bool {
        matches!(self, Self::Seen(..) | Self::Beyond(..))
    }

    /// Whether both are about the same, on whichever kind of part.
    pub(super) fn is_alike(self, other: Self) -> bool {
        match (self, other) {
            (Self::Seen(one, ..), Self::Seen(other, ..)) => one == other,
            (Self::Beyond(one, _), Self::Beyond(other, _)) => one == other,
            _ => self == other,
        }
    }
}

/// The parts of some notes, each once.
pub(super) fn parts(notes: &[Note]) -> Vec<Part> {
    let set: BTreeSet<Part> = notes.iter().map(|note| note.part).collect();
    set.into_iter().collect()
}

/// A topic in words: "scoring, grade 2 to 3, on 5 lower main bearing shells".
pub(super) fn words(topic: Topic, notes: &[Note], engine: &Engine) -> String {
    let parts: BTreeSet<Part> = notes.iter().map(|note| note.part).collect();
    match topic {
        Topic::Seen(tag, kind, half) => {
            let grades = || notes.iter().filter_map(|note| note.grade);
            let grade = match (grades().min(), grades().max()) {
                (Some(mildest), Some(worst)) if mildest < worst => {
                    format!("grade {} to {}", mildest.number(), worst.number())
                }
                (_, worst) => format!("grade {}", worst.map_or(0, Grade::number)),
            };
            let pattern = notes.first().and_then(|note| note.pattern).and_then(Pattern::words);
            let alike = notes.windows(2).all(|pair| match pair {
                [one, next] => one.pattern == next.pattern,
                _ => true,
            });
            let place = pattern.filter(|_| alike).map_or_else(String::new, |words| format!(" at {words}"));
            format!("{}, {grade},{place} on {}", tag.row().name, named(&parts, kind, half, engine))
        }
        Topic::Sound(kind, half) => format!("{} without damage", named(&parts, kind, half, engine)),
        Topic::CleanBack(kind, half) => format!("{} clean at the back", named(&parts, kind, half, engine)),
        Topic::NotEven => format!("{} not called evenly worn", counted(parts.len(), "worn part")),
        Topic::NothingElse => format!("nothing else noted on {}", counted(parts.len(), "worn part")),
        Topic::Beyond(fault, kind) => {
            format!("{} measured {}, beyond the limit", named(&parts, kind, None, engine), fault.words())
        }
        Topic::Within(fault, kind) => {
            format!("{} not measured {}", named(&parts, kind, None, engine), fault.words())
        }
    }
}

fn counted(n: usize, name: &str) -> String {
    if n == 1 { format!("one {name}") } else { format!("{n} {}", plural(name)) }
}

fn named(parts: &BTreeSet<Part>, kind: PartKind, half: Option<Half>, engine: &Engine) -> String {
    if parts.len() == 1 {
        return parts.first().map_or_else(String::new, |part| engine.label(*part).to_lowercase());
    }
    let half = match half {
        Some(Half::Upper) => "upper ",
        Some(Half::Lower) => "lower ",
        None => "",
    };
    format!("{} {half}{}", parts.len(), plural(&kind.row().name.said(engine.terms())))
}
