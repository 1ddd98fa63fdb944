//! Calibration: engines drawn from the model, looked at with gaps as a mechanic leaves them, and what is stated of their
//! causes compared with what is so.

use std::collections::{BTreeMap, BTreeSet};

use wearbook_core::cause::catalogue::{Fault, Symptom};
use wearbook_core::cause::network::{CauseSeat, GRADES, Maker, Observed};
use wearbook_core::cause::{
    EVEN_CALLED_CLEAN, EVEN_LEFT_OUT, MISSED_BESIDE_OTHER, MISSED_BY_MEASURING, MISSED_ON_CLEAN, Model, Pattern,
    SiteStates, probabilities,
};
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::figure::Figure;
use wearbook_core::job::{Job, TagRecord};
use wearbook_core::measure::{Conformity, Quantity};
use wearbook_core::wear::{Grade, Tag, Zone};

use crate::patterns::figure;
use crate::random::Dice;

const ENGINES: usize = 5_000;
/// Share of parts whose sizes are measured where they have a fault of this kind at all, and of marks with zones.
const MEASURED: f64 = 0.3;
const ZONES_MARKED: f64 = 0.6;

/// What is the matter with a drawn engine, and what was recorded of it.
struct Drawn {
    causes: BTreeSet<&'static str>,
    job: Job,
    figures: BTreeMap<Part, Vec<Figure>>,
    looked: f64,
}

/// The states of everything in one drawn engine.
struct World {
    shared: Vec<bool>,
    states: BTreeMap<CauseSeat, usize>,
}

#[test]
fn what_is_stated_is_what_is_so() {
    let engine = Engine::new(Arrangement::inline(4)).unwrap();
    let halves = std::thread::scope(|scope| {
        let work = |from: usize| {
            let engine = &engine;
            scope.spawn(move || (from..ENGINES).step_by(2).map(|seed| one(engine, seed as u64)).collect::<Vec<_>>())
        };
        let threads = [work(0), work(1)];
        threads.map(|thread| thread.join().unwrap())
    });
    let all: Vec<Judged> = halves.into_iter().flatten().collect();
    let stated: Vec<(f64, bool)> = all.iter().flat_map(|judged| judged.stated.iter().copied()).collect();
    let brier = mean(stated.iter().map(|(p, so)| (p - f64::from(*so)) * (p - f64::from(*so))));
    let base = mean(stated.iter().map(|(_, so)| f64::from(*so)));
    println!("{ENGINES} engines, {} statements, of which {:.1} % are so", stated.len(), base * 100.0);
    println!("stated      so      statements");
    let mut error = 0.0;
    for decile in 0..10 {
        let of = |p: f64| ((p * 10.0) as usize).min(9) == decile;
        let here: Vec<&(f64, bool)> = stated.iter().filter(|(p, _)| of(*p)).collect();
        let said = mean(here.iter().map(|(p, _)| *p));
        let so = mean(here.iter().map(|(_, so)| f64::from(*so)));
        println!("{:5.1} %  {:5.1} %  {:7}", said * 100.0, so * 100.0, here.len());
        error += (said - so).abs() * here.len() as f64 / stated.len() as f64;
        // Three standard deviations of a share counted on so many, and little more.
        let chance = 3.0 * (said * (1.0 - said) / here.len() as f64).sqrt();
        assert!(here.len() < 200 || (said - so).abs() < 0.03 + chance, "stated {said}, so {so}");
    }
    println!("Brier score {brier:.4}; expected calibration error {error:.4}");
    println!("looked at   the cause ranked first is so, where anything is wrong or worn");
    let mut steps = vec![];
    for fifth in 0..5 {
        let here: Vec<&Judged> =
            all.iter().filter(|j| j.any).filter(|j| ((j.looked * 5.0) as usize).min(4) == fifth).collect();
        let right = mean(here.iter().map(|judged| f64::from(judged.first_is_so)));
        let bar = "#".repeat((right * 40.0).round() as usize);
        println!("{:3}–{:3} %   {:4.1} %  {bar}", fifth * 20, fifth * 20 + 20, right * 100.0);
        steps.push(right);
    }
    assert!(brier < 0.02, "Brier score {brier}");
    assert!(error < 0.005, "expected calibration error {error}");
    assert!(steps[4] > steps[0] + 0.1 && steps[4] > 0.85, "looking at more must help: {steps:?}");
}

struct Judged {
    stated: Vec<(f64, bool)>,
    looked: f64,
    any: bool,
    first_is_so: bool,
}

fn one(engine: &Engine, seed: u64) -> Judged {
    let drawn = draw(engine, &mut Dice::new(1_000_000 + seed));
    let told = probabilities(engine, &drawn.job, &drawn.figures);
    let first = told.iter().max_by(|a, b| a.1.total_cmp(b.1)).unwrap().0;
    Judged {
        stated: told.iter().map(|(id, p)| (*p, drawn.causes.contains(id))).collect(),
        looked: drawn.looked,
        any: !drawn.causes.is_empty(),
        first_is_so: drawn.causes.contains(first),
    }
}

fn draw(engine: &Engine, dice: &mut Dice) -> Drawn {
    let mut job = Job { arrangement: Some(engine.arrangement().clone()), ..Job::default() };
    let model = Model::new(engine, &job);
    let shared: Vec<bool> = model.priors.iter().map(|prior| dice.happens(*prior)).collect();
    let mut states = BTreeMap::new();
    for (site, SiteStates { root, branches }) in model.sites.iter().enumerate() {
        let priors: Vec<f64> = root.states.iter().map(|state| state.prior).collect();
        let of_root = dice.pick(&priors);
        states.insert(CauseSeat { site, branch: None }, of_root);
        for (n, branch) in branches.iter().enumerate() {
            states.insert(CauseSeat { site, branch: Some(n) }, dice.pick(&branch.given(root)[of_root]));
        }
    }
    let world = World { shared, states };
    let mut causes: BTreeSet<&'static str> =
        model.shared.iter().zip(&world.shared).filter(|(_, is)| **is).map(|(cause, _)| cause.id).collect();
    for (seat, place) in model.seats() {
        causes.extend(place.states[world.states[&seat]].cause.map(|cause| cause.id));
    }
    // Gaps as they are: one mechanic looks at nearly everything, another at a few parts.
    let thorough = dice.between(0.05, 1.0);
    let mut figures = BTreeMap::new();
    let mut looked = 0;
    for part in engine.parts() {
        if dice.happens(thorough) {
            looked += 1;
            look(&model, &world, *part, &mut job, dice);
        }
        let measured = measure(&model, &world, *part, thorough * MEASURED, dice);
        if !measured.is_empty() {
            figures.insert(*part, measured);
        }
    }
    Drawn { causes, job, figures, looked: looked as f64 / engine.parts().len() as f64 }
}

/// What there is to see on a part, and what a mechanic notes of it: seldom nothing of the damage, more often the worst alone.
fn look(model: &Model<'_>, world: &World, part: Part, job: &mut Job, dice: &mut Dice) {
    let mut there: Vec<(Tag, u8, Option<Pattern>)> = vec![];
    for tag in part.kind.row().tags {
        if let Some((grade, pattern)) = produce(model, world, part, Symptom::Seen(*tag), dice) {
            there.push((*tag, grade, pattern));
        }
    }
    there.sort_by_key(|(tag, grade, _)| (!tag.is_damage(), std::cmp::Reverse(*grade)));
    let record = job.parts.entry(part).or_default();
    let (all_missed, rest_missed) = (dice.happens(MISSED_ON_CLEAN), dice.happens(MISSED_BESIDE_OTHER));
    for (tag, grade, pattern) in there {
        let noted = record.worst().is_some();
        let missed = match (tag.is_damage(), noted) {
            (true, false) => all_missed,
            (true, true) => rest_missed,
            (false, false) => dice.happens(EVEN_CALLED_CLEAN),
            (false, true) => dice.happens(EVEN_LEFT_OUT),
        };
        if !missed {
            let zones = pattern.filter(|_| dice.happens(ZONES_MARKED)).map(|p| zones(part, p)).unwrap_or_default();
            record.tags.insert(tag, TagRecord { grade: Grade::try_from(grade).unwrap(), zones });
        }
    }
    record.clean = record.tags.is_empty();
}

/// Some zones that show a pattern.
fn zones(part: Part, pattern: Pattern) -> BTreeSet<Zone> {
    let all = part.kind.row().zones.zones();
    let map = part.kind.row().zones;
    let shows = |zones: &BTreeSet<Zone>| Pattern::of(map, zones) == Some(pattern);
    // The smallest set that shows it: one zone, two, three, or all of them.
    let one = all.iter().map(|zone| BTreeSet::from([*zone]));
    let two = all.iter().flat_map(|a| all.iter().map(|b| BTreeSet::from([*a, *b])));
    let three = all.iter().flat_map(|a| two.clone().map(|pair| &pair | &BTreeSet::from([*a])));
    one.chain(two.clone()).chain(three).chain([all.iter().copied().collect()]).find(shows).unwrap()
}

/// What the makers that are there make of a symptom.
fn produce(
    model: &Model<'_>,
    world: &World,
    part: Part,
    symptom: Symptom,
    dice: &mut Dice,
) -> Option<(u8, Option<Pattern>)> {
    let observation = model.observation(part, symptom, None, Observed::Present)?;
    let seat = model.seat(part).unwrap();
    let makers = |pattern: Option<Pattern>| -> Vec<Maker> {
        let observation = model.observation(part, symptom, pattern, Observed::Present).unwrap();
        let is =
            |links: &[(usize, Maker)], state: usize| links.iter().find(|(by, _)| *by == state).map(|(_, maker)| *maker);
        let mut makers = vec![observation.leak];
        makers.extend(observation.shared.iter().filter(|(by, _)| world.shared[*by]).map(|(_, maker)| *maker));
        if seat.branch.is_some() {
            makers.extend(is(&observation.root, world.states[&CauseSeat { branch: None, ..seat }]));
        }
        makers.extend(is(&observation.own, world.states[&seat]));
        makers
    };
    assert!(observation.leak.share > 0.0);
    let all = makers(None);
    let grade = all.iter().map(|maker| grade(maker, dice)).max().unwrap();
    if grade == 0 {
        return None;
    }
    let (patterns, _) = Model::patterns(part);
    if patterns.is_empty() {
        return Some((grade, None));
    }
    // One of them is answerable, in proportion to its own chance of making this grade.
    let made: Vec<f64> = all.iter().map(|m| m.grades.at_most(grade) - m.grades.below(grade)).collect();
    let answerable = dice.pick(&made);
    let shares: Vec<f64> = patterns.iter().map(|pattern| makers(Some(*pattern))[answerable].share).collect();
    assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-9);
    Some((grade, Some(patterns[dice.pick(&shares)])))
}

fn grade(maker: &Maker, dice: &mut Dice) -> u8 {
    let drawn = dice.chance();
    (0..GRADES as u8).find(|grade| drawn < maker.grades.at_most(*grade)).unwrap_or(4)
}

fn measure(model: &Model<'_>, world: &World, part: Part, chance: f64, dice: &mut Dice) -> Vec<Figure> {
    let quantity = |fault: Fault| match fault {
        Fault::OutOfRound => Some(Quantity::OutOfRound),
        Fault::Tapered => Some(Quantity::Taper),
        Fault::Bent => Some(Quantity::Bend),
        Fault::Twisted => Some(Quantity::Twist),
        Fault::RunsOut => Some(Quantity::RunOut),
        Fault::OutOfLine => Some(Quantity::LineOverall),
        Fault::Worn => Some(Quantity::Wear),
        Fault::WideGroove => Some(Quantity::GrooveClearance),
        Fault::Barrel | Fault::Hourglass | Fault::Loose | Fault::Tight | Fault::ThinRing => None,
    };
    let mut figures = vec![];
    for (fault, quantity) in Fault::ALL.into_iter().filter_map(|fault| Some((fault, quantity(fault)?))) {
        let symptom = Symptom::Measured(fault);
        if model.observation(part, symptom, None, Observed::Present).is_none() || !dice.happens(chance) {
            continue;
        }
        let there = produce(model, world, part, symptom, dice).is_some() && !dice.happens(MISSED_BY_MEASURING);
        figures.push(figure(quantity, if there { Conformity::Outside } else { Conformity::Within }));
    }
    figures
}

fn mean(numbers: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = numbers.fold((0.0, 0), |(sum, count), x| (sum + x, count + 1));
    sum / f64::from(count.max(1))
}
