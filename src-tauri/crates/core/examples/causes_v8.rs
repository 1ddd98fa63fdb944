//! How long the causes of a fully recorded V8 take: worked out from nothing, again after one more tag, and with nothing
//! looked at, where only the next look has work. Medians in milliseconds, as JSON.

mod recorded;

use std::collections::BTreeMap;
use std::time::Instant;

use wearbook_core::cause::network::Memo;
use wearbook_core::cause::{diagnose, diagnose_with};
use wearbook_core::engine::{Arrangement, Engine};
use wearbook_core::job::Job;
use wearbook_core::wear::Grade;

const RUNS: usize = 15;

fn main() {
    let arrangement = Arrangement::vee(8);
    let Ok(engine) = Engine::new(arrangement.clone()) else { return };
    let empty = Job { arrangement: Some(arrangement.clone()), ..Job::default() };
    let full = recorded::fully(arrangement, &engine);
    // A tag on one rod's shell is given another grade at each run.
    let mut changed = full.clone();
    let shell = engine.parts().iter().copied().find(|part| part.at.half().is_some());
    let mut memo = Memo::default();
    diagnose_with(Some(&engine), &changed, &BTreeMap::new(), &mut memo);
    let figures = BTreeMap::new();
    let whole = median(|_| {
        diagnose(Some(&engine), &full, &figures);
    });
    let one_more = median(|run| {
        let record = shell.and_then(|shell| changed.parts.get_mut(&shell));
        if let Some(tagged) = record.and_then(|record| record.tags.values_mut().next()) {
            tagged.grade = Grade::ALL.get(run % 4).copied().unwrap_or(Grade::ONE);
        }
        diagnose_with(Some(&engine), &changed, &figures, &mut memo);
    });
    let next_look = median(|_| {
        let report = diagnose(Some(&engine), &empty, &figures);
        assert!(report.next_look.is_some());
    });
    let parts = engine.parts().len();
    println!(
        "{{\"parts\": {parts}, \"full_ms\": {whole:.2}, \"one_more_tag_ms\": {one_more:.2}, \"next_look_ms\": {next_look:.2}}}"
    );
}

fn median(mut work: impl FnMut(usize)) -> f64 {
    let mut times: Vec<f64> = (0..RUNS)
        .map(|run| {
            let start = Instant::now();
            work(run);
            start.elapsed().as_secs_f64() * 1e3
        })
        .collect();
    times.sort_by(f64::total_cmp);
    times.get(RUNS / 2).copied().unwrap_or(f64::NAN)
}
