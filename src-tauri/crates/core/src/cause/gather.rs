//! From what was recorded to what the model observes: what was seen, and what was looked for and not seen.
//!
//! A part that nobody has looked at gives no observation at all, nor does a size that nobody has measured.

use std::collections::BTreeMap;

use rayon::prelude::*;

use super::catalogue::{Fault, Symptom};
use super::faults::faults;
use super::memo::Looks;
use super::missed::{MISSED_BY_MEASURING, missed};
use super::model::{Model, SiteStates};
use super::natural::is_natural;
use super::network::{Branch, CauseSeat, Network, Observation, Observed, PiecesAt, Site};
use super::pattern::Pattern;
use super::topic::{Note, Noted, Recorded, Topic};
use super::wreck::{is_destroyed, wrecked_from};
use crate::engine::{Part, PartKind};
use crate::figure::Figure;
use crate::job::{Job, PartRecord};
use crate::wear::Tag;

/// All that was recorded, as the model has it.
#[derive(Debug)]
pub(super) struct Gathered {
    pub(super) network: Network,
    /// For each site what its observations are about; an observation's piece is its number here.
    pub(super) notes: Vec<Vec<Note>>,
    /// Damage of which no cause of the catalogue has a word.
    pub(super) unspoken: Vec<Note>,
}

/// Gathers everything that the catalogue has a word about.
pub(super) fn gather(
    model: &Model<'_>,
    job: &Job,
    figures: &BTreeMap<Part, Vec<Figure>>,
    earlier: &mut Looks,
) -> Gathered {
    let sites = model.sites.iter().map(|SiteStates { root, branches }| Site {
        states: root.states.iter().map(|state| state.prior).collect(),
        observations: vec![],
        branches: branches.iter().map(|branch| Branch { states: branch.given(root), observations: vec![] }).collect(),
    });
    let network = Network { priors: model.priors.clone(), sites: sites.collect() };
    let mut gathered = Gathered { network, notes: vec![vec![]; model.sites.len()], unspoken: vec![] };
    let wrecked = wrecked_from(model.engine(), job);
    let tells = |part: &&Part| {
        !wrecked.is_some_and(|from| job.parts.get(part).is_some_and(|record| is_destroyed(record, from)))
    };
    *earlier = std::mem::take(earlier).of(model.engine().arrangement());
    // The parts are gone through side by side; their order stays.
    let parts = model.engine().parts().par_iter().filter(tells);
    let recorded: Vec<OfPart<'_>> = parts.filter_map(|part| recorded(model, job, figures, *part, earlier)).collect();
    for OfPart { seat, looked, sizes } in recorded {
        if let Some(OfLook { part, record, told, is_new }) = looked {
            if is_new {
                earlier.keep(part, record, told.clone());
            }
            told.into_iter().for_each(|(observation, note)| gathered.add(seat, observation, note));
        }
        sizes.into_iter().for_each(|(observation, note)| gathered.add(seat, observation, note));
    }
    gathered
}

/// What was recorded of a part.
struct OfPart<'a> {
    seat: CauseSeat,
    looked: Option<OfLook<'a>>,
    sizes: Vec<Recorded>,
}

/// What a look at a part told.
struct OfLook<'a> {
    part: Part,
    record: &'a PartRecord,
    told: Vec<Recorded>,
    /// Whether it was worked out anew.
    is_new: bool,
}

fn recorded<'a>(
    model: &Model<'_>,
    job: &'a Job,
    figures: &BTreeMap<Part, Vec<Figure>>,
    part: Part,
    earlier: &Looks,
) -> Option<OfPart<'a>> {
    let seat = model.seat(part)?;
    let looked = job.parts.get(&part).filter(|record| record.looked_at()).map(|record| {
        let known = earlier.told(part, record);
        let is_new = known.is_none();
        OfLook { part, record, told: known.unwrap_or_else(|| looks(model, part, record)), is_new }
    });
    let faults = figures.get(&part).map(|figures| faults(figures)).unwrap_or_default();
    let sizes = faults.into_iter().map(|(fault, beyond)| measure(model, part, fault, beyond)).collect();
    Some(OfPart { seat, looked, sizes })
}

/// What a look at a part told: what was seen there, each for itself; and that nothing else was, which is one answer.
fn looks(model: &Model<'_>, part: Part, record: &PartRecord) -> Vec<Recorded> {
    let sound = record.tags.iter().all(|(tag, seen)| !tag.is_damage() || is_natural(part.kind, *tag, seen.grade));
    let was_seen = |tag: &Tag| !is_of_back(part.kind, *tag) || record.back_looked_at();
    let is_told = |tag: &Tag| record.tags.contains_key(tag) || is_of_back(part.kind, *tag) && record.back_clean;
    let is_passed_over = |tag: &Tag| tag.is_damage() && !is_told(tag);
    let tags = part.kind.row().tags.iter().copied().filter(was_seen);
    let (unreported, told): (Vec<Tag>, Vec<Tag>) = tags.partition(is_passed_over);
    let mut all: Vec<Recorded> = told.into_iter().map(|tag| look(model, part, record, tag, sound)).collect();
    let missed = missed(sound, true);
    let unreported = unreported
        .into_iter()
        .filter_map(|tag| model.observation(part, Symptom::Seen(tag), None, Observed::Unreported { missed }));
    let topic = if sound { Topic::Sound(part.kind, part.at.half()) } else { Topic::NothingElse };
    let note = Note { part, symptom: None, topic, grade: None, pattern: None };
    all.extend(Observation::all_unreported(unreported.collect(), missed).map(|none| (Some(none), note)));
    all
}

fn look(model: &Model<'_>, part: Part, record: &PartRecord, tag: Tag, sound: bool) -> Recorded {
    let seen = record.tags.get(&tag).filter(|seen| !is_natural(part.kind, tag, seen.grade));
    let pattern = seen.and_then(|seen| Pattern::of(part.kind.row().zones, &seen.zones));
    let topic = match seen {
        Some(_) => Topic::Seen(tag, part.kind, part.at.half()),
        None if is_of_back(part.kind, tag) => Topic::CleanBack(part.kind, part.at.half()),
        None if sound => Topic::Sound(part.kind, part.at.half()),
        None if tag.is_damage() => Topic::NothingElse,
        None => Topic::NotEven,
    };
    let symptom = Symptom::Seen(tag);
    let observation = model.observation(part, symptom, pattern, observed(part.kind, record, tag, pattern, sound));
    let note = Note { part, symptom: Some(symptom), topic, grade: seen.map(|seen| seen.grade), pattern };
    (observation, note)
}

fn measure(model: &Model<'_>, part: Part, fault: Fault, beyond: bool) -> Recorded {
    let (topic, observed) = if beyond {
        (Topic::Beyond(fault, part.kind), Observed::Present)
    } else {
        (Topic::Within(fault, part.kind), Observed::Unreported { missed: MISSED_BY_MEASURING })
    };
    let symptom = Symptom::Measured(fault);
    let observation = model.observation(part, symptom, None, observed);
    (observation, Note { part, symptom: Some(symptom), topic, grade: None, pattern: None })
}

impl Gathered {
    fn add(&mut self, CauseSeat { site, branch }: CauseSeat, observation: Option<Observation>, note: Note) {
        let Some(mut observation) = observation else {
            // Handling damage is its own explanation.
            if note.grade.is_some() && note.symptom != Some(Symptom::Seen(Tag::HandlingDamage)) {
                self.unspoken.push(note);
            }
            return;
        };
        let (Some(notes), Some(site)) = (self.notes.get_mut(site), self.network.sites.get_mut(site)) else { return };
        observation.piece = notes.len();
        match branch {
            None => site.observations.push(observation),
            Some(branch) => {
                let Some(branch) = site.branches.get_mut(branch) else { return };
                branch.observations.push(observation);
            }
        }
        notes.push(note);
    }

    /// All topics with what was noted of each.
    pub(super) fn topics(&self) -> BTreeMap<Topic, Noted> {
        let mut topics: BTreeMap<Topic, Noted> = BTreeMap::new();
        for (site, notes) in self.notes.iter().enumerate() {
            for (piece, note) in notes.iter().enumerate() {
                let noted = topics.entry(note.topic).or_default();
                match noted.pieces.last_mut() {
                    Some(last) if last.site == site => last.pieces.push(piece),
                    _ => noted.pieces.push(PiecesAt { site, pieces: vec![piece] }),
                }
                noted.notes.push(*note);
            }
        }
        topics
    }
}

/// Whether a tag tells of the back of a part, at which a look by itself is needed.
pub(super) fn is_of_back(kind: PartKind, tag: Tag) -> bool {
    tag == Tag::BrightBack && kind.has_back()
}

/// What the record of a part says about a tag.
fn observed(kind: PartKind, record: &PartRecord, tag: Tag, pattern: Option<Pattern>, sound: bool) -> Observed {
    let missed = missed(sound || is_of_back(kind, tag) && record.back_clean, tag.is_damage());
    match (record.grade(tag), pattern) {
        (Some(grade), _) if is_natural(kind, tag, grade) => Observed::Slight { missed },
        (Some(grade), Some(_)) => Observed::Located(grade.number()),
        (Some(grade), None) => Observed::Grade(grade.number()),
        // Clean and nearly new are two words for one thing.
        (None, _) if !tag.is_damage() && sound => Observed::Slight { missed },
        (None, _) => Observed::Unreported { missed },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cause::faults::figure;
    use crate::engine::{Arrangement, Engine};
    use crate::measure::{Conformity, Phase};
    use crate::wear::Grade;

    /// Everything that can be recorded must leave a network that can be solved.
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
            assert!(gather(&model, &job, &figures, &mut Looks::default()).network.solve().is_ok());
        }
    }
}
