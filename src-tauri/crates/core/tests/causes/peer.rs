//! The same networks by pgmpy, from full tables (`peer.py`), where a Python with pgmpy is at hand: `python3`, or what
//! `WEARBOOK_PYTHON` names.

use std::io::Write;
use std::process::{Command, Stdio};

use serde_json::Value;
use wearbook_core::cause::network::{CauseSeat, Network};

use crate::brute_force::{close, normalised, probabilities};
use crate::random::Dice;

const NETWORKS: u64 = 200;

#[test]
fn equals_pgmpy_on_two_hundred_random_networks() {
    let python = std::env::var("WEARBOOK_PYTHON").unwrap_or_else(|_| "python3".into());
    let has = Command::new(&python).args(["-c", "import pgmpy"]).output().is_ok_and(|output| output.status.success());
    if !has {
        println!("skipped: {python} has no pgmpy; WEARBOOK_PYTHON can name another Python");
        return;
    }
    let networks: Vec<Network> = (0..NETWORKS).map(|seed| Dice::new(10_000 + seed).network(3, 2, 2)).collect();
    let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/causes/peer.py");
    let mut child = Command::new(&python).arg(script).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
    let asked = serde_json::to_vec(&networks).unwrap();
    child.stdin.take().unwrap().write_all(&asked).unwrap();
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success());
    let told: Value = serde_json::from_slice(&output.stdout).unwrap();
    println!("Python {}, pgmpy {}", told["python"], told["pgmpy"]);
    let answers = told["answers"].as_array().unwrap();
    assert_eq!(answers.len(), networks.len());
    for (network, answer) in networks.iter().zip(answers) {
        let solution = network.solve().unwrap();
        close(&probabilities(&solution.shared()), &numbers(&answer["shared"]));
        let mut places = answer["places"].as_array().unwrap().iter();
        for (number, site) in network.sites.iter().enumerate() {
            close(
                &normalised(&solution.states(CauseSeat { site: number, branch: None })),
                &numbers(places.next().unwrap()),
            );
            for branch in 0..site.branches.len() {
                let seat = CauseSeat { site: number, branch: Some(branch) };
                close(&normalised(&solution.states(seat)), &numbers(places.next().unwrap()));
            }
        }
    }
}

fn numbers(value: &Value) -> Vec<f64> {
    value.as_array().unwrap().iter().map(|number| number.as_f64().unwrap()).collect()
}
