//! The full joint by plain enumeration, of another shape than the program: every cause, every state of every place and
//! branch, and for each observation every combination of who produced which grade. No product formula, no tables, no scaling.

use wearbook_core::cause::network::{Belief, CauseSeat, GRADES, Maker, Network, Observation, Observed, PiecesAt};

use crate::random::Dice;

/// What is believed: the shared causes, then the states of every place, then those of every branch.
pub(crate) struct Beliefs {
    pub(crate) shared: Vec<f64>,
    pub(crate) places: Vec<Vec<f64>>,
}

/// All states of one world: shared causes as bits, then one number each root and branch.
fn worlds(network: &Network) -> (Vec<usize>, usize) {
    let mut sizes = vec![];
    for site in &network.sites {
        sizes.push(site.states.len());
        sizes.extend(site.branches.iter().map(|branch| branch.len()));
    }
    (sizes, 1 << network.priors.len())
}

pub(crate) fn enumerate(network: &Network, out: &dyn Fn(usize, &Observation) -> bool) -> Beliefs {
    let (sizes, subsets) = worlds(network);
    let mut total = 0.0;
    let mut shared = vec![0.0; network.priors.len()];
    let mut places: Vec<Vec<f64>> = sizes.iter().map(|n| vec![0.0; *n]).collect();
    for subset in 0..subsets {
        let mut states = vec![0; sizes.len()];
        loop {
            let weight = weight(network, subset, &states, out);
            total += weight;
            for (cause, sum) in shared.iter_mut().enumerate() {
                *sum += if subset >> cause & 1 == 1 { weight } else { 0.0 };
            }
            for (place, state) in places.iter_mut().zip(&states) {
                place[*state] += weight;
            }
            // The next world, counting with a base of its own at each place.
            let Some(turn) = (0..sizes.len()).find(|n| states[*n] + 1 < sizes[*n]) else { break };
            states[turn] += 1;
            states[..turn].fill(0);
        }
    }
    let share = |sum: f64| sum / total;
    Beliefs {
        shared: shared.into_iter().map(share).collect(),
        places: places.into_iter().map(|place| place.into_iter().map(share).collect()).collect(),
    }
}

fn weight(network: &Network, subset: usize, states: &[usize], out: &dyn Fn(usize, &Observation) -> bool) -> f64 {
    let mut weight: f64 = 1.0;
    for (cause, prior) in network.priors.iter().enumerate() {
        weight *= if subset >> cause & 1 == 1 { *prior } else { 1.0 - prior };
    }
    let mut states = states.iter();
    for (number, site) in network.sites.iter().enumerate() {
        let root = *states.next().unwrap();
        weight *= site.states[root];
        for observation in site.observations.iter().filter(|observation| !out(number, observation)) {
            weight *= likelihood(observation, subset, None, root);
        }
        for branch in &site.branches {
            let own = *states.next().unwrap();
            weight *= branch.states[root][own];
            for observation in branch.observations.iter().filter(|observation| !out(number, observation)) {
                weight *= likelihood(observation, subset, Some(root), own);
            }
        }
    }
    weight
}

fn likelihood(observation: &Observation, subset: usize, root: Option<usize>, own: usize) -> f64 {
    let mut makers = vec![observation.leak];
    makers.extend(observation.shared.iter().filter(|(by, _)| subset >> by & 1 == 1).map(|(_, maker)| *maker));
    makers.extend(observation.root.iter().filter(|(by, _)| root == Some(*by)).map(|(_, maker)| *maker));
    makers.extend(observation.own.iter().filter(|(by, _)| own == *by).map(|(_, maker)| *maker));
    let by_grade = greatest_of(&makers);
    match observation.observed {
        Observed::Grade(grade) => by_grade[usize::from(grade)],
        Observed::Present => by_grade[1..].iter().sum(),
        Observed::Slight { missed } => by_grade[..2].iter().sum::<f64>() + missed * by_grade[2..].iter().sum::<f64>(),
        Observed::Unreported { missed } => by_grade[0] + missed * by_grade[1..].iter().sum::<f64>(),
        Observed::Located(grade) => {
            let grade = usize::from(grade);
            let made: Vec<f64> = makers.iter().map(|maker| exactly(maker, grade)).collect();
            let in_pattern: f64 = made.iter().zip(&makers).map(|(made, maker)| made * maker.share).sum();
            by_grade[grade] * in_pattern / made.iter().sum::<f64>()
        }
    }
}

fn exactly(maker: &Maker, grade: usize) -> f64 {
    maker.grades.at_most[grade] - if grade == 0 { 0.0 } else { maker.grades.at_most[grade - 1] }
}

/// The chance of each greatest grade, over every combination of what each maker produced.
fn greatest_of(makers: &[Maker]) -> [f64; GRADES] {
    let mut by_grade = [0.0; GRADES];
    let mut grades = vec![0; makers.len()];
    loop {
        let chance: f64 = makers.iter().zip(&grades).map(|(maker, grade)| exactly(maker, *grade)).product();
        by_grade[*grades.iter().max().unwrap()] += chance;
        // The next combination, counting in base five.
        let Some(turn) = grades.iter().position(|grade| *grade < GRADES - 1) else { return by_grade };
        grades[turn] += 1;
        grades[..turn].fill(0);
    }
}

#[track_caller]
pub(crate) fn close(program: &[f64], other: &[f64]) {
    assert_eq!(program.len(), other.len());
    for (one, two) in program.iter().zip(other) {
        assert!((one - two).abs() < 1e-9, "{program:?} is not {other:?}");
    }
}

pub(crate) fn probabilities(beliefs: &[Belief]) -> Vec<f64> {
    beliefs.iter().map(|belief| belief.probability()).collect()
}

pub(crate) fn normalised(weights: &[f64]) -> Vec<f64> {
    let sum: f64 = weights.iter().sum();
    weights.iter().map(|weight| weight / sum).collect()
}

#[test]
fn equals_brute_force_on_two_hundred_random_networks() {
    let mut places = 0;
    for seed in 0..200 {
        let network = Dice::new(seed).network(4, 2, 2);
        let solution = network.solve().unwrap();
        let all = enumerate(&network, &|_, _| false);
        close(&probabilities(&solution.shared()), &all.shared);
        let everywhere: Vec<usize> = (0..network.sites.len()).collect();
        // One piece of evidence left out, at all places or only at the first; everything left out at all but the first.
        for (piece, at) in [(0, &everywhere[..]), (1, &everywhere[..1])] {
            let out: Vec<PiecesAt> = at.iter().map(|site| PiecesAt { site: *site, pieces: vec![piece] }).collect();
            let brute = enumerate(&network, &|site, observation| at.contains(&site) && observation.piece == piece);
            close(&probabilities(&solution.shared_without(&out)), &brute.shared);
        }
        let mut place = 0;
        for (number, site) in network.sites.iter().enumerate() {
            let others: Vec<usize> = everywhere.iter().copied().filter(|other| *other != number).collect();
            let out = |observation: &Observation| observation.piece == 1;
            let without = enumerate(&network, &|site, observation| site == number && observation.piece == 1);
            let forgotten = enumerate(&network, &|site, _| site != number);
            let branches = std::iter::once(None).chain((0..site.branches.len()).map(Some));
            for branch in branches {
                let seat = CauseSeat { site: number, branch };
                let believed = solution.states(seat);
                close(&normalised(&believed), &all.places[place]);
                for state in 0..believed.len() {
                    let is = |other: usize| other == state;
                    let at = |forgetting: &[usize]| solution.hypothesis(seat, &is, forgetting).unwrap();
                    close(&[at(&[]).without(&out).probability()], &[without.places[place][state]]);
                    close(&[at(&others).belief().probability()], &[forgotten.places[place][state]]);
                }
                place += 1;
                places += 1;
            }
        }
    }
    assert!(places > 400);
}
