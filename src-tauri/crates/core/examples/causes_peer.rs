//! Networks for a peer: a fully recorded V8's first place, its first two, and so on, as JSON lines, each with the
//! milliseconds that it takes to work it out, with the belief in every shared cause and in every state of every place.

mod recorded;

use std::collections::BTreeMap;
use std::io::Write;
use std::time::Instant;

use serde_json::json;
use wearbook_core::cause::network::{CauseSeat, Network, Site};
use wearbook_core::cause::network_of;
use wearbook_core::engine::{Arrangement, Engine};

fn main() {
    let arrangement = Arrangement::vee(8);
    let Ok(engine) = Engine::new(arrangement.clone()) else { return };
    let job = recorded::recorded(arrangement, &engine, recorded::every_tag);
    let whole = network_of(&engine, &job, &BTreeMap::new());
    for places in 1..=whole.sites.len() {
        let network = Network { sites: whole.sites.iter().take(places).cloned().collect(), ..whole.clone() };
        let start = Instant::now();
        let Ok(solution) = network.solve() else { continue };
        let shared: Vec<f64> = solution.shared().iter().map(|belief| belief.probability()).collect();
        let of = |(n, site): (usize, &Site)| -> Vec<Vec<f64>> {
            let branches = std::iter::once(None).chain((0..site.branches.len()).map(Some));
            branches.map(|branch| solution.states(CauseSeat { site: n, branch })).collect()
        };
        let places: Vec<_> = network.sites.iter().enumerate().map(of).collect();
        let ours_ms = start.elapsed().as_secs_f64() * 1e3;
        let observations: usize = network.sites.iter().map(|site| site.all_observations().count()).sum();
        let line = json!({ "observations": observations, "ours_ms": ours_ms, "shared": shared, "places": places, "network": network });
        // The peer stops reading once it has had enough.
        if writeln!(std::io::stdout(), "{line}").is_err() {
            return;
        }
    }
}
