//! Exact inference held against a reference outside the project: a noisy-OR network of five causes and four observations
//! with the posterior for all 81 sets of evidence, by enumeration; pgmpy 1.1.2 (VariableElimination) agrees with the
//! reference to 4.4e-16. The file lies beside the checkout, in `../shared/data/noisy-or`.

use std::path::Path;

use wearbook_core::cause::network::{GradeChances, Maker, Network, Observation, Observed, Site};

#[test]
fn equals_the_reference_for_every_set_of_evidence() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../../../shared/data/noisy-or/reference.json");
    let Ok(text) = std::fs::read_to_string(&path) else {
        println!("skipped: no reference at {}", path.display());
        return;
    };
    let reference: serde_json::Value = serde_json::from_str(&text).unwrap();
    let numbers = |value: &serde_json::Value| -> Vec<(String, f64)> {
        value.as_object().unwrap().iter().map(|(name, number)| (name.clone(), number.as_f64().unwrap())).collect()
    };
    // A binary observation is a graded one that only has grades 0 and 1.
    let binary = |chance: f64| Maker { grades: GradeChances::new(chance, [1.0, 0.0, 0.0, 0.0]), share: 1.0 };
    let priors = numbers(&reference["prior"]);
    let index = |name: &str| priors.iter().position(|(cause, _)| cause == name).unwrap();
    let mut compared = 0;
    for case in reference["cases"].as_array().unwrap() {
        let observations = numbers(&case["evidence"])
            .into_iter()
            .map(|(observation, seen)| {
                let shared = numbers(&reference["link"][&observation])
                    .iter()
                    .map(|(cause, p)| (index(cause), binary(*p)))
                    .collect();
                let leak = binary(reference["leak"][&observation].as_f64().unwrap());
                let observed = Observed::Grade(if seen > 0.5 { 1 } else { 0 });
                Observation { piece: 0, observed, leak, shared, root: vec![], own: vec![] }
            })
            .collect();
        let site = Site { states: vec![1.0], observations, branches: vec![] };
        let network = Network { priors: priors.iter().map(|(_, prior)| *prior).collect(), sites: vec![site] };
        let posterior = network.solve().unwrap().shared();
        for (cause, expected) in numbers(&case["posterior"]) {
            let computed = posterior[index(&cause)].probability();
            assert!(
                (computed - expected).abs() < 1e-12,
                "{cause} given {}: {computed}, expected {expected}",
                case["evidence"]
            );
            compared += 1;
        }
    }
    assert_eq!(compared, 81 * 5, "the reference has five causes for each of 81 sets of evidence");
}
