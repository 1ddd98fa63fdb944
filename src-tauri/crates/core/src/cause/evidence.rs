//! From what was recorded to what the model observes: which findings were seen, which were looked for and not seen.
//!
//! A part that nobody has looked at gives no finding at all, nor does a size that nobody has measured.

use std::collections::{BTreeMap, BTreeSet};

use rayon::prelude::*;

use super::catalogue::{Fault, Symptom};
use super::model::{Model, Seat};
use super::network::{AtSite, Branch, Finding, Network, Observed, Site};
use super::pattern::Pattern;
use crate::engine::{Arrangement, Half, Part, PartKind};
use crate::figure::Figure;
use crate::job::{Job, PartRecord};
use crate::measure::{Conformity, Phase, Quantity};
use crate::wear::{Grade, Tag};
use crate::words::plural;

/// Chance that somebody who calls a part clean or evenly worn has passed over damage that is there (our judgement).
pub const MISSED_ON_CLEAN: f64 = 0.05;
/// Chance that somebody who tags one kind of damage leaves out another that is there too (our judgement).
pub const MISSED_BESIDE_OTHER: f64 = 0.30;
/// Chance that somebody who tags damage does not bother to call the rest of the part evenly worn (our judgement).
pub const EVEN_LEFT_OUT: f64 = 0.80;
/// Chance that somebody calls an evenly worn part clean: that is an answer about damage rather than about the working
/// pattern (our judgement).
pub const EVEN_CALLED_CLEAN: f64 = 0.60;
/// Chance that a size which measured within its limit is beyond it somewhere else on the part (our judgement).
pub const MISSED_BY_MEASURING: f64 = 0.05;

/// What is told together when a cause of the whole engine is explained.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Topic {
    /// A tag was seen on parts of one kind and half.
    Seen(Tag, PartKind, Option<Half>),
    /// Parts of one kind and half were looked at and found without damage.
    Sound(PartKind, Option<Half>),
    /// A tag was not reported on parts that have other damage.
    NotAmong(Tag),
    /// A size was beyond its limit.
    Beyond(Fault, PartKind),
    /// A size was within its limit.
    Within(Fault, PartKind),
}

/// What one finding is about.
#[derive(Debug, Clone, Copy)]
pub(super) struct Note {
    pub(super) part: Part,
    pub(super) symptom: Symptom,
    pub(super) topic: Topic,
    pub(super) grade: Option<Grade>,
    pub(super) pattern: Option<Pattern>,
}

/// What was noted of a topic: the pieces of evidence at each site, and what they are about.
pub(super) type Noted = (Vec<AtSite>, Vec<Note>);

/// All that was recorded, as the model has it.
#[derive(Debug)]
pub(super) struct Evidence {
    pub(super) network: Network,
    /// For each site what its findings are about; a finding's piece is its number here.
    pub(super) notes: Vec<Vec<Note>>,
    /// Damage of which no cause of the catalogue has a word.
    pub(super) unspoken: Vec<Note>,
}

/// Gathers everything that the catalogue has a word about.
pub(super) fn gather(model: &Model<'_>, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>) -> Evidence {
    let sites = model.sites.iter().map(|(root, branches)| Site {
        states: root.states.iter().map(|state| state.prior).collect(),
        findings: vec![],
        branches: branches.iter().map(|spot| Branch { states: spot.given(root), findings: vec![] }).collect(),
    });
    let network = Network { priors: model.priors.clone(), sites: sites.collect() };
    let mut evidence = Evidence { network, notes: vec![vec![]; model.sites.len()], unspoken: vec![] };
    // The parts are gone through side by side; their order stays.
    let recorded = model.engine().parts().par_iter().flat_map_iter(|part| recorded(model, job, figures, *part));
    for (seat, finding, note) in recorded.collect::<Vec<Recorded>>() {
        evidence.add(seat, finding, note);
    }
    evidence
}

/// A finding at its place, if the catalogue has a word about it, and what it is about.
type Recorded = (Seat, Option<Finding>, Note);

/// What was recorded of a part.
fn recorded(model: &Model<'_>, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>, part: Part) -> Vec<Recorded> {
    let Some(seat) = model.seat(part) else { return vec![] };
    let record = job.parts.get(&part).filter(|record| record.looked_at());
    let looks = record
        .into_iter()
        .flat_map(|record| part.kind.row().tags.iter().map(|tag| look(model, seat, part, record, *tag)));
    let faults = figures.get(&part).map(|figures| faults(figures)).unwrap_or_default();
    let sizes = faults.into_iter().map(|(fault, beyond)| measure(model, seat, part, fault, beyond));
    looks.chain(sizes).collect()
}

fn look(model: &Model<'_>, seat: Seat, part: Part, record: &PartRecord, tag: Tag) -> Recorded {
    let sound = record.worst().is_none();
    let seen = record.tags.get(&tag);
    let pattern = seen.and_then(|seen| Pattern::of(part.kind.row().zones, &seen.zones));
    let topic = match seen {
        Some(_) => Topic::Seen(tag, part.kind, part.at.half()),
        None if sound => Topic::Sound(part.kind, part.at.half()),
        None => Topic::NotAmong(tag),
    };
    let symptom = Symptom::Seen(tag);
    let finding = model.finding(part, symptom, pattern, observed(record, tag, pattern));
    let note = Note { part, symptom, topic, grade: seen.map(|seen| seen.grade), pattern };
    (seat, finding, note)
}

fn measure(model: &Model<'_>, seat: Seat, part: Part, fault: Fault, beyond: bool) -> Recorded {
    let (topic, observed) = if beyond {
        (Topic::Beyond(fault, part.kind), Observed::Present)
    } else {
        (Topic::Within(fault, part.kind), Observed::Unreported { missed: MISSED_BY_MEASURING })
    };
    let symptom = Symptom::Measured(fault);
    let finding = model.finding(part, symptom, None, observed);
    (seat, finding, Note { part, symptom, topic, grade: None, pattern: None })
}

impl Evidence {
    fn add(&mut self, (site, branch): Seat, finding: Option<Finding>, note: Note) {
        let Some(mut finding) = finding else {
            // Handling damage is its own explanation.
            if note.grade.is_some() && note.symptom != Symptom::Seen(Tag::HandlingDamage) {
                self.unspoken.push(note);
            }
            return;
        };
        let (Some(notes), Some(site)) = (self.notes.get_mut(site), self.network.sites.get_mut(site)) else { return };
        finding.piece = notes.len();
        match branch {
            None => site.findings.push(finding),
            Some(branch) => {
                let Some(branch) = site.branches.get_mut(branch) else { return };
                branch.findings.push(finding);
            }
        }
        notes.push(note);
    }

    /// All topics: for each site at which something was found of it the pieces of evidence, and what they are about.
    pub(super) fn topics(&self) -> BTreeMap<Topic, Noted> {
        let mut topics: BTreeMap<Topic, Noted> = BTreeMap::new();
        for (site, notes) in self.notes.iter().enumerate() {
            for (piece, note) in notes.iter().enumerate() {
                let (sites, of_topic) = topics.entry(note.topic).or_default();
                match sites.last_mut() {
                    Some((last, pieces)) if *last == site => pieces.push(piece),
                    _ => sites.push((site, vec![piece])),
                }
                of_topic.push(*note);
            }
        }
        topics
    }
}

/// What the record of a part says about a tag.
fn observed(record: &PartRecord, tag: Tag, pattern: Option<Pattern>) -> Observed {
    match (record.grade(tag), pattern) {
        (Some(grade), Some(_)) => Observed::Located(grade.number()),
        (Some(grade), None) => Observed::Grade(grade.number()),
        (None, _) => Observed::Unreported { missed: missed(record, tag) },
    }
}

/// The chance with which somebody who made this record has passed the tag over.
pub(super) fn missed(record: &PartRecord, tag: Tag) -> f64 {
    match record.worst() {
        None if !tag.is_damage() => EVEN_CALLED_CLEAN,
        None => MISSED_ON_CLEAN,
        Some(_) if !tag.is_damage() => EVEN_LEFT_OUT,
        Some(_) => MISSED_BESIDE_OTHER,
    }
}

/// What the figures of a part, as it was found, say: each fault with whether it is there. Too close to call says nothing,
/// nor does a size without a limit.
fn faults(figures: &[Figure]) -> Vec<(Fault, bool)> {
    let mut all: BTreeMap<Fault, bool> = BTreeMap::new();
    let mut tell = |fault: Fault, beyond: bool| {
        let known = all.entry(fault).or_insert(beyond);
        *known = *known || beyond;
    };
    for figure in figures.iter().filter(|figure| figure.phase == Phase::Found) {
        let beyond = match figure.verdict {
            Some(Conformity::Outside) => true,
            Some(Conformity::Within) => false,
            Some(Conformity::TooClose) | None => continue,
        };
        // Where a size can be wrong in two ways, the first is the one above.
        let above = match figure.quantity {
            Quantity::Barrel => figure.high.nanometres() >= 0,
            Quantity::Clearance => figure.allowed.1.is_some_and(|most| figure.high > most),
            _ => true,
        };
        for (fault, is_above) in shown_by(figure.quantity).iter().zip([true, false]) {
            tell(*fault, beyond && above == is_above);
        }
    }
    all.into_iter().collect()
}

/// The faults that a quantity beyond its limit can show: one, or one above and one below.
pub(super) fn shown_by(quantity: Quantity) -> &'static [Fault] {
    match quantity {
        Quantity::OutOfRound => &[Fault::OutOfRound],
        Quantity::Taper => &[Fault::Tapered],
        Quantity::Barrel => &[Fault::Barrel, Fault::Hourglass],
        Quantity::Bend => &[Fault::Bent],
        Quantity::Twist => &[Fault::Twisted],
        Quantity::RunOut | Quantity::AdjacentRunOut | Quantity::AdjacentRunOutSquare => &[Fault::RunsOut],
        Quantity::LineAdjacent | Quantity::LineOverall => &[Fault::OutOfLine],
        Quantity::Wear | Quantity::LiftLoss | Quantity::HeightLoss => &[Fault::Worn],
        Quantity::Clearance => &[Fault::Loose, Fault::Tight],
        _ => &[],
    }
}

/// A topic in words: "scoring, grade 2 to 3, on 5 lower main bearing shells".
pub(super) fn words(topic: Topic, notes: &[Note], arrangement: &Arrangement) -> String {
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
            format!("{}, {grade},{place} on {}", tag.row().name, named(&parts, kind, half, arrangement))
        }
        Topic::Sound(kind, half) => format!("{} without damage", named(&parts, kind, half, arrangement)),
        Topic::NotAmong(Tag::LooksEven) => format!("{} not called evenly worn", counted(parts.len(), "worn part")),
        Topic::NotAmong(tag) => match parts.len() {
            1 => format!("no {} noted on the one worn part where it could be", tag.row().name),
            n => format!("no {} noted on {n} worn parts where it could be", tag.row().name),
        },
        Topic::Beyond(fault, kind) => {
            format!("{} measured {}, beyond the limit", named(&parts, kind, None, arrangement), fault.words())
        }
        Topic::Within(fault, kind) => {
            format!("{} not measured {}", named(&parts, kind, None, arrangement), fault.words())
        }
    }
}

fn counted(n: usize, name: &str) -> String {
    if n == 1 { format!("one {name}") } else { format!("{n} {}", plural(name)) }
}

fn named(parts: &BTreeSet<Part>, kind: PartKind, half: Option<Half>, arrangement: &Arrangement) -> String {
    if parts.len() == 1 {
        return parts.first().map_or_else(String::new, |part| part.label(arrangement).to_lowercase());
    }
    let half = match half {
        Some(Half::Upper) => "upper ",
        Some(Half::Lower) => "lower ",
        None => "",
    };
    format!("{} {half}{}", parts.len(), plural(kind.row().name))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::{Arrangement, Engine};
    use crate::measure::Length;

    fn figure(quantity: Quantity, verdict: Option<Conformity>, value: i64, phase: Phase) -> Figure {
        let length = Length::from_nanometres(value);
        Figure {
            quantity,
            name: String::new(),
            station: None,
            phase,
            low: length,
            high: length,
            shown: String::new(),
            at: String::new(),
            uncertainty: Length::default(),
            verdict,
            limits: String::new(),
            allowed: (Some(Length::from_nanometres(10)), Some(Length::from_nanometres(20))),
            new: (None, None),
            because: String::new(),
            source: String::new(),
            general: false,
        }
    }

    #[track_caller]
    fn says(quantity: Quantity, verdict: Option<Conformity>, value: i64, expected: &[(Fault, bool)]) {
        assert_eq!(faults(&[figure(quantity, verdict, value, Phase::Found)]), expected);
        let later = Phase::ALL.into_iter().find(|phase| *phase != Phase::Found).unwrap();
        assert_eq!(faults(&[figure(quantity, verdict, value, later)]), [], "only as it was found");
    }

    #[test]
    fn sizes_speak_by_their_verdict() {
        use Conformity::{Outside, TooClose, Within};
        says(Quantity::Taper, Some(Outside), 30, &[(Fault::Tapered, true)]);
        says(Quantity::Taper, Some(Within), 5, &[(Fault::Tapered, false)]);
        says(Quantity::Taper, Some(TooClose), 10, &[]);
        says(Quantity::Taper, None, 10, &[]);
        says(Quantity::Barrel, Some(Outside), -30, &[(Fault::Barrel, false), (Fault::Hourglass, true)]);
        says(Quantity::Barrel, Some(Outside), 30, &[(Fault::Barrel, true), (Fault::Hourglass, false)]);
        says(Quantity::Clearance, Some(Outside), 25, &[(Fault::Loose, true), (Fault::Tight, false)]);
        says(Quantity::Clearance, Some(Outside), 5, &[(Fault::Loose, false), (Fault::Tight, true)]);
    }

    /// Everything that can be recorded must leave a network that can be reckoned with.
    #[test]
    fn every_tag_and_size_of_every_part_is_sound_evidence() {
        for arrangement in [Arrangement::vee(8), Arrangement::flat(6), Arrangement::inline(1)] {
            let engine = Engine::new(arrangement).unwrap();
            let mut job = Job::default();
            let mut figures = BTreeMap::new();
            for part in engine.parts() {
                let record = job.parts.entry(*part).or_default();
                for (n, tag) in part.kind.row().tags.iter().enumerate() {
                    let zones = part.kind.row().zones.zones().iter().copied().skip(n % 3).take(n % 4).collect();
                    record.tags.insert(*tag, crate::job::TagRecord { grade: Grade::ALL[n % 4], zones });
                }
                let measured = part.kind.quantities().iter().enumerate();
                let verdict =
                    |n: usize| Some(if n.is_multiple_of(2) { Conformity::Outside } else { Conformity::Within });
                let of_part = measured.map(|(n, has)| figure(has.quantity, verdict(n), 30, Phase::Found));
                figures.insert(*part, of_part.collect());
            }
            let model = Model::new(&engine, &job);
            assert!(gather(&model, &job, &figures).network.solve().is_ok());
        }
    }
}
