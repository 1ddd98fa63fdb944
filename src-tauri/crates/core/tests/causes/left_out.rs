//! Evidence left out, held against the same network without it. With so much evidence most subsets of shared causes
//! weigh next to nothing and are passed over: this shows that nothing is lost by it, not even of a near certainty.

use wearbook_core::cause::network::{Belief, CauseSeat, Network, Observation, PiecesAt};

use crate::random::Dice;

fn lacking(network: &Network, piece: usize, at: &dyn Fn(usize) -> bool) -> Network {
    let mut network = network.clone();
    for (_, site) in network.sites.iter_mut().enumerate().filter(|(number, _)| at(*number)) {
        let kept = |observation: &Observation| observation.piece != piece;
        site.observations.retain(kept);
        site.branches.iter_mut().for_each(|branch| branch.observations.retain(kept));
    }
    network
}

/// Both ways round, so that neither a near certainty nor a near impossibility is lost beside the other.
#[track_caller]
fn alike(one: Belief, other: Belief) {
    let ratio = one.odds() / other.odds();
    assert!(one.odds() == other.odds() || (ratio - 1.0).abs() < 1e-8, "odds {} are not {}", one.odds(), other.odds());
}

#[test]
fn leaving_out_is_the_same_as_not_having_seen() {
    let mut certain = 0;
    for seed in 0..40 {
        let network = Dice::new(1000 + seed).network_of(9, 12, 2, 45);
        let solution = network.solve().unwrap();
        certain += solution.shared().iter().filter(|belief| belief.odds() > 1e9 || belief.odds() < 1e-9).count();
        for piece in 0..3 {
            let all: Vec<PiecesAt> = (0..12).map(|site| PiecesAt { site, pieces: vec![piece] }).collect();
            let anew = lacking(&network, piece, &|_| true);
            let anew = anew.solve().unwrap().shared();
            for (one, other) in solution.shared_without(&all).into_iter().zip(anew) {
                alike(one, other);
            }
        }
        for (number, site) in network.sites.iter().enumerate() {
            let anew = lacking(&network, 1, &|site| site == number);
            let anew = anew.solve().unwrap();
            for (branch, states) in std::iter::once((None, site.states.len()))
                .chain(site.branches.iter().enumerate().map(|(n, branch)| (Some(n), branch.len())))
            {
                let seat = CauseSeat { site: number, branch };
                for state in 0..states {
                    let is = |other: usize| other == state;
                    let here = solution.hypothesis(seat, &is, &[]).unwrap();
                    let belief = here.without(&|observation| observation.piece == 1);
                    let other = anew.hypothesis(seat, &is, &[]).unwrap().belief();
                    if states > 1 && other.probability() > 0.0 {
                        alike(belief, other);
                    }
                }
            }
        }
    }
    assert!(certain >= 10, "{certain} beliefs beyond doubt: too few to show anything");
}
