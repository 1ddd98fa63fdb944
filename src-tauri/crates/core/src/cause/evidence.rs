//! From what was recorded to what the model observes: which findings were seen, which were looked for and not seen.
//!
//! A part that nobody has looked at gives no finding at all.

use std::collections::{BTreeMap, BTreeSet};

use super::catalogue::{self, Cause};
use super::network::{Finding, Observed};
use crate::engine::{Arrangement, Engine, Half, Part, PartKind};
use crate::job::{Job, PartRecord};
use crate::wear::{Grade, Tag};
use crate::words::plural;

/// Chance that somebody who calls a part clean or evenly worn has passed over damage that is there (our judgement).
const MISSED_ON_CLEAN: f64 = 0.05;
/// Chance that somebody who tags one kind of damage leaves out another that is there too (our judgement).
const MISSED_BESIDE_OTHER: f64 = 0.30;

/// What is told together when the cause is explained.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Topic {
    /// A tag was seen on parts of one kind and half.
    Seen(Tag, PartKind, Option<Half>),
    /// Parts of one kind and half were looked at and found without damage.
    Sound(PartKind, Option<Half>),
    /// A tag was not reported on parts that have other damage.
    NotAmong(Tag),
}

/// One topic with its parts and its findings for the model.
#[derive(Debug, Clone, Default)]
pub(super) struct Piece {
    pub(super) parts: BTreeSet<Part>,
    pub(super) mildest: Option<Grade>,
    pub(super) worst: Option<Grade>,
    pub(super) findings: Vec<Finding>,
}

/// Gathers everything that the catalogue has a word about.
pub(super) fn gather(engine: &Engine, job: &Job, causes: &[&Cause]) -> BTreeMap<Topic, Piece> {
    let mut pieces: BTreeMap<Topic, Piece> = BTreeMap::new();
    for part in engine.parts() {
        let Some(record) = job.parts.get(part).filter(|record| record.looked_at()) else { continue };
        let sound = record.worst().is_none();
        for tag in part.kind.row().tags {
            let links = links(causes, *part, *tag, engine.arrangement());
            // *Clean* is an answer about damage, not about the working pattern.
            if links.is_empty() || (record.clean && !tag.is_damage()) {
                continue;
            }
            let grade = record.grade(*tag);
            let topic = match grade {
                Some(_) => Topic::Seen(*tag, part.kind, part.at.half()),
                None if sound => Topic::Sound(part.kind, part.at.half()),
                None => Topic::NotAmong(*tag),
            };
            let finding = Finding { leak: catalogue::leak(*tag), links, observed: observed(record, grade), count: 1 };
            pieces.entry(topic).or_default().add(*part, grade, finding);
        }
    }
    pieces
}

fn observed(record: &PartRecord, grade: Option<Grade>) -> Observed {
    match grade {
        Some(grade) => Observed::Grade(grade.number()),
        None if record.worst().is_none() => Observed::Unreported { missed: MISSED_ON_CLEAN },
        None => Observed::Unreported { missed: MISSED_BESIDE_OTHER },
    }
}

fn links(
    causes: &[&Cause],
    part: Part,
    tag: Tag,
    arrangement: &Arrangement,
) -> Vec<(usize, super::network::GradeChances)> {
    let centrality = part.at.main().map_or(0.0, |main| arrangement.centrality(main));
    causes
        .iter()
        .enumerate()
        .filter_map(|(index, cause)| Some((index, cause.signs.iter().find_map(|sign| sign.on(part, tag, centrality))?)))
        .collect()
}

impl Piece {
    /// Findings alike in everything are counted, not repeated: that keeps a fully recorded engine quick.
    fn add(&mut self, part: Part, grade: Option<Grade>, finding: Finding) {
        self.parts.insert(part);
        self.worst = self.worst.max(grade);
        self.mildest = match (self.mildest, grade) {
            (Some(mildest), Some(grade)) => Some(mildest.min(grade)),
            (mildest, grade) => mildest.or(grade),
        };
        let same = |other: &&mut Finding| {
            other.observed == finding.observed && other.links == finding.links && other.leak == finding.leak
        };
        match self.findings.iter_mut().find(same) {
            Some(other) => other.count += 1,
            None => self.findings.push(finding),
        }
    }

    /// In words: "scoring, grade 2 to 3, on 5 lower main bearing shells".
    pub(super) fn words(&self, topic: Topic, arrangement: &Arrangement) -> String {
        match topic {
            Topic::Seen(tag, kind, half) => {
                let grade = match (self.mildest, self.worst) {
                    (Some(mildest), Some(worst)) if mildest < worst => {
                        format!("grade {} to {}", mildest.number(), worst.number())
                    }
                    (_, worst) => format!("grade {}", worst.map_or(0, Grade::number)),
                };
                format!("{}, {grade}, on {}", tag.row().name, self.named(kind, half, arrangement))
            }
            Topic::Sound(kind, half) => format!("{} without damage", self.named(kind, half, arrangement)),
            Topic::NotAmong(tag) => match self.parts.len() {
                1 => format!("no {} noted on the one worn part where it could be", tag.row().name),
                n => format!("no {} noted on {n} worn parts where it could be", tag.row().name),
            },
        }
    }

    fn named(&self, kind: PartKind, half: Option<Half>, arrangement: &Arrangement) -> String {
        if self.parts.len() == 1 {
            return self.parts.first().map_or_else(String::new, |part| part.label(arrangement).to_lowercase());
        }
        let half = match half {
            Some(Half::Upper) => "upper ",
            Some(Half::Lower) => "lower ",
            None => "",
        };
        format!("{} {half}{}", self.parts.len(), plural(kind.row().name))
    }
}

/// Whether any cause of the catalogue has a word about this kind of part.
pub(super) fn speaks_of(causes: &[&Cause], part: Part) -> bool {
    causes.iter().any(|cause| cause.signs.iter().any(|sign| sign.kinds.contains(&part.kind)))
}
