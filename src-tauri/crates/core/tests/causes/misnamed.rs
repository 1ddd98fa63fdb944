//! The published patterns as another hand would have recorded them: tags under the names of what looks like them, grades a
//! step off, zones left out, damage overlooked and invented. What is stated must be as good as what the same model states
//! when it is told how that hand names things.
//!
//! What even that model takes for another more than once, and what would tell the two apart:
//!
//! - bond failure for cavitation: the edges of the patches (clean down to the steel, or washed out) and whether the loaded half
//!   has them;
//! - a tapered journal for a bent rod: the taper of the journal, bend and twist of the rod;
//! - a tappet that did not turn for surface fatigue: lift of its lobe, a straight edge over its foot;
//! - starvation for overheating: what was found in oil and sump, and whether the halves without load are blue too;
//! - fillet ride for a blocked oil way or an hourglass journal: the journal's fillet and its form over the width;
//! - with zones beside the right ones, an oval housing for a journal out of round: both measured; a shifted cap for too much
//!   crush: the step at the parting line, and the cap's mark.

use std::collections::{BTreeMap, BTreeSet};

use wearbook_core::cause::{Naming, probabilities_named};
use wearbook_core::engine::{Engine, PartKind};
use wearbook_core::job::Job;
use wearbook_core::wear::{Grade, Tag};

use crate::patterns::{Case, Entry, engine, published, recorded, singled};
use crate::random::Dice;

/// How often each pattern is recorded anew: by the likely names, and by the others.
const TIMES: u64 = 8;
const TIMES_OF_OTHERS: u64 = 4;

/// What looks alike to a hand that is not ours: other pairs than the model's, and each as likely as the next.
const ALIKE: &[&[Tag]] = {
    use Tag::*;
    &[
        &[Scoring, EmbeddedDebris, CopperShowing, Wiping],
        &[Pitting, Corrosion, Spalling, Rust],
        &[FatigueCracks, LiningLoss, Pitting],
        &[Wiping, Seizure, HotSpot],
        &[Scuffing, Scoring, Seizure],
        &[DishedFace, WornNose, Spalling],
        &[BrightBack, HotSpot],
    ]
};

/// A way in which a record differs from what is there.
struct Hand {
    name: &'static str,
    /// How often a tag has another name; by the list, or any that the kind allows.
    misnamed: f64,
    by_list: bool,
    /// How often a grade is one off, and zones are left out.
    off: f64,
    /// How often a zone is marked beside the right one.
    moved: f64,
    /// How often a tag is overlooked, and how often one is invented on a clean part.
    overlooked: f64,
    invented: f64,
    times: u64,
}

const AS_PUBLISHED: Hand = Hand {
    name: "as published",
    misnamed: 0.0,
    by_list: true,
    off: 0.0,
    moved: 0.0,
    overlooked: 0.0,
    invented: 0.0,
    times: 1,
};
const LOOK_ALIKES: Hand = Hand { name: "30 % by look-alikes", misnamed: 0.3, off: 0.3, times: TIMES, ..AS_PUBLISHED };
const ANY_NAME: Hand =
    Hand { name: "30 % any name", misnamed: 0.3, by_list: false, times: TIMES_OF_OTHERS, ..AS_PUBLISHED };
const ALL_OFF: Hand =
    Hand { name: "name, grade, zones", misnamed: 0.3, off: 0.5, times: TIMES_OF_OTHERS, ..AS_PUBLISHED };
const ZONES_MOVED: Hand = Hand { name: "30 % of zones beside", moved: 0.3, times: TIMES, ..AS_PUBLISHED };
const GAPS: Hand = Hand {
    name: "overlooked, invented",
    misnamed: 0.1,
    overlooked: 0.2,
    invented: 0.03,
    times: TIMES_OF_OTHERS,
    ..AS_PUBLISHED
};

/// The names that damage may have beside its right one.
fn others(kind: PartKind, tag: Tag, by_list: bool) -> Vec<Tag> {
    let possible = kind.row().tags.iter().copied().filter(|other| *other != tag && other.is_damage());
    if !by_list {
        return possible.filter(|other| *other != Tag::HandlingDamage).collect();
    }
    let alike: BTreeSet<Tag> =
        ALIKE.iter().filter(|group| group.contains(&tag)).flat_map(|group| group.iter().copied()).collect();
    possible.filter(|other| alike.contains(other)).collect()
}

/// The model that is told how this hand names things.
fn told(hand: &Hand) -> Naming {
    let called = |kind: PartKind, tag: Tag| {
        let names = if tag.is_damage() { others(kind, tag, hand.by_list) } else { vec![] };
        let each = hand.misnamed / names.len().max(1) as f64;
        names.into_iter().map(|name| (name, each)).collect()
    };
    let seen = 1.0 - hand.overlooked;
    Naming::new(called, [seen; 4], (hand.off / 2.0, hand.off / 2.0))
}

fn by_another_hand(hand: &Hand, engine: &Engine, case: &Case, dice: &mut Dice) -> Vec<Entry> {
    let mut all = vec![];
    for mut entry in singled(engine, &case.entries) {
        let kind = entry.parts.parse::<wearbook_core::engine::Part>().unwrap().kind;
        if let Some(tag) = entry.tag.filter(|tag| tag.is_damage()) {
            if dice.happens(hand.overlooked) {
                entry = Entry { tag: None, grade: None, zones: vec![], clean: true, ..entry };
                all.push(entry);
                continue;
            }
            let names = others(kind, tag, hand.by_list);
            if dice.happens(hand.misnamed) && !names.is_empty() {
                entry.tag = Some(names[dice.below(names.len())]);
            }
        } else if entry.clean && dice.happens(hand.invented) {
            let names = others(kind, Tag::HandlingDamage, false);
            if !names.is_empty() {
                let (tag, grade) = (Some(names[dice.below(names.len())]), Some(Grade::ONE));
                entry = Entry { tag, grade, clean: false, ..entry };
            }
        }
        if let Some(grade) = entry.grade
            && dice.happens(hand.off)
        {
            let step = if dice.happens(0.5) { grade.number() + 1 } else { grade.number() - 1 };
            entry.grade = Some(Grade::try_from(step).unwrap_or(grade));
        }
        if dice.happens(hand.off / 2.0) {
            entry.zones.clear();
        }
        let drawn = kind.row().zones.zones();
        for zone in &mut entry.zones {
            if hand.moved > 0.0 && dice.happens(hand.moved) {
                let at = drawn.iter().position(|other| other == zone).unwrap();
                let beside = if dice.happens(0.5) { at + 1 } else { at + drawn.len() - 1 };
                *zone = drawn[beside % drawn.len()];
            }
        }
        all.push(entry);
    }
    all
}

/// The shares of records whose cause stands first, and among the first three.
#[derive(Default)]
struct Score {
    first: f64,
    three: f64,
    of: f64,
}

impl Score {
    fn count(&mut self, told: &BTreeMap<&str, f64>, cause: &str) -> usize {
        let rank = ranked(told, cause).position(|id| id == cause).unwrap_or(usize::MAX);
        self.first += f64::from(rank == 0);
        self.three += f64::from(rank < 3);
        self.of += 1.0;
        rank
    }

    fn shares(&self) -> (f64, f64) {
        (self.first / self.of * 100.0, self.three / self.of * 100.0)
    }
}

/// The causes, likeliest first. Ordinary wear is no row among them, unless it is what was published.
fn ranked<'a>(told: &BTreeMap<&'a str, f64>, cause: &str) -> impl Iterator<Item = &'a str> {
    let mut ranked: Vec<(&str, f64)> = told.iter().map(|(id, probability)| (*id, *probability)).collect();
    ranked.retain(|(id, _)| *id != "normal-wear" || cause == "normal-wear");
    ranked.sort_by(|a, b| b.1.total_cmp(&a.1));
    ranked.into_iter().map(|(id, _)| id)
}

/// The shares of ours and of the model that is told, for each pattern recorded so many times; what was lost, and what even
/// the model that is told takes for another.
fn compare(hand: &Hand) -> (Score, Score, Vec<String>) {
    let (mut ours, mut ideal) = (Score::default(), Score::default());
    let told = told(hand);
    let mut lost: BTreeMap<String, usize> = BTreeMap::new();
    for (n, case) in published().iter().enumerate() {
        let engine = engine(&case.engine);
        for time in 0..hand.times {
            let mut dice = Dice::new(7_000 + n as u64 * 100 + time);
            let (job, figures): (Job, _) = recorded(&engine, &by_another_hand(hand, &engine, case, &mut dice));
            let by = |naming: &Naming| probabilities_named(&engine, &job, &figures, naming);
            let rank = ours.count(&by(Naming::ours()), &case.cause);
            let best = by(&told);
            if ideal.count(&best, &case.cause) > 0
                && let Some(taken_for) = ranked(&best, &case.cause).next()
            {
                *lost.entry(format!("told all: {} taken for {taken_for}", case.cause)).or_default() += 1;
            }
            if rank > 0 {
                let how = if rank < 3 { "not first" } else { "not among three" };
                *lost.entry(format!("{how}: {}", case.pattern)).or_default() += 1;
            }
        }
    }
    (ours, ideal, lost.into_iter().map(|(pattern, times)| format!("{times} × {pattern}")).collect())
}

#[track_caller]
fn holds(hand: &Hand, least: (f64, f64), below_ideal: f64) {
    let (ours, ideal, lost) = compare(hand);
    let ((first, three), (best, best_three)) = (ours.shares(), ideal.shares());
    println!("{}: first {first:.1} % (told {best:.1}), in three {three:.1} % (told {best_three:.1})", hand.name);
    println!("  {}", lost.join("\n  "));
    assert!(first >= least.0 || first >= best - below_ideal, "{}: first {first:.1}, told {best:.1}", hand.name);
    assert!(three >= least.1 || three >= best_three - below_ideal, "{}: in three {three:.1}", hand.name);
}

#[test]
fn as_published_nothing_is_lost() {
    holds(&AS_PUBLISHED, (100.0, 100.0), 0.0);
}

#[test]
fn look_alikes_are_seen_through() {
    holds(&LOOK_ALIKES, (95.0, 99.0), 1.0);
}

#[test]
fn whatever_it_is_called() {
    holds(&ANY_NAME, (100.0, 100.0), 3.0);
    holds(&ALL_OFF, (100.0, 100.0), 3.0);
    holds(&GAPS, (100.0, 100.0), 3.0);
}

/// Each sign leaves some room for other patterns than its own; the model knows no more of zones marked beside the right ones
/// (our judgement: it is enough).
#[test]
fn zones_marked_beside_the_right_ones_are_mostly_forgiven() {
    holds(&ZONES_MOVED, (92.0, 95.0), 0.0);
}
