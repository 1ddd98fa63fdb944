//! How long the causes of a fully recorded V8 take: worked out from nothing, again after one more tag; the same where every
//! part has every tag, the worst that a record can be; and with nothing looked at, where only the next look has work. Medians
//! in milliseconds, as JSON.

mod recorded;

use std::collections::BTreeMap;
use std::time::Instant;

use wearbook_core::cause::{Memo, diagnose_with, next_look};
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::Job;
use wearbook_core::wear::{Grade, Tag};

use recorded::{every_tag, recorded};

const RUNS: usize = 15;

fn main() {
    let arrangement = Arrangement::vee(8);
    let Ok(engine) = Engine::new(arrangement.clone()) else { return };
    let empty = Job { arrangement: Some(arrangement.clone()), ..Job::default() };
    let (whole, one_more) = of(&engine, &recorded(arrangement.clone(), &engine, as_stripped));
    let (every_tag, one_more_of_all) = of(&engine, &recorded(arrangement, &engine, every_tag));
    let next_look = median(|_| assert!(all(&engine, &empty, &mut Memo::default())));
    println!(
        "{{\"whole_ms\": {whole:.2}, \"one_more_tag_ms\": {one_more:.2}, \"next_look_ms\": {next_look:.2}, \
         \"every_tag_ms\": {every_tag:.2}, \"every_tag_one_more_ms\": {one_more_of_all:.2}}}"
    );
}

/// As a stripped engine is recorded: of five parts two are clean, two have one kind of damage, and one has two.
fn as_stripped(n: usize, tags: &'static [Tag]) -> Vec<Tag> {
    let damage = tags.iter().copied().filter(|tag| tag.is_damage());
    damage.cycle().skip(n % 7).take([0, 1, 0, 1, 2].get(n % 5).copied().unwrap_or(0)).collect()
}

/// All that can be told of the causes; whether there is a next look.
fn all(engine: &Engine, job: &Job, memo: &mut Memo) -> bool {
    let figures = BTreeMap::new();
    diagnose_with(Some(engine), job, &figures, memo);
    next_look(engine, job, &figures, memo).is_some()
}

/// Worked out from nothing, and again after one more tag.
fn of(engine: &Engine, job: &Job) -> (f64, f64) {
    let whole = median(|_| {
        all(engine, job, &mut Memo::default());
    });
    // A tag on one rod's shell is given another grade at each run.
    let mut changed = job.clone();
    let is_tagged = |part: &&Part| part.at.half().is_some() && job.parts.get(part).is_some_and(|record| !record.clean);
    let shell = engine.parts().iter().find(is_tagged);
    let mut memo = Memo::default();
    all(engine, &changed, &mut memo);
    let one_more = median(|run| {
        let record = shell.and_then(|shell| changed.parts.get_mut(shell));
        if let Some(tagged) = record.and_then(|record| record.tags.values_mut().next()) {
            tagged.grade = Grade::ALL.get(run % 4).copied().unwrap_or(Grade::ONE);
        }
        all(engine, &changed, &mut memo);
    });
    (whole, one_more)
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
