//! What every paper is made of, to be looked at and compared.

#![allow(clippy::unwrap_used, reason = "clippy.toml lets tests do so, but not the functions that they share")]
#![allow(dead_code, reason = "the tests and the example each use some of it")]

use wearbook_core::job::Job;

use crate::entered::Whole;
use crate::jobs::{
    Photos, SCRIPTS, TEXTS, demo, metal, more_machining, photo_id, proposed, signed, vee8, worn_everywhere,
};

/// A job with its photos, from which every paper is made.
pub(crate) struct Input {
    pub(crate) name: &'static str,
    pub(crate) job: Job,
    pub(crate) photos: Photos,
}

/// What papers are made of to be looked at: an ordinary engine before and after the answer, one that nobody has looked at, a
/// sound one, one that is destroyed, one with 120 photos, one with 500 findings, names in other scripts, nothing at all.
pub(crate) const INPUTS: [&str; 11] = [
    "demo",
    "demo-proposed",
    "demo-signed",
    "demo-machined",
    "untouched",
    "sound-v8",
    "destroyed-v8",
    "photos-120",
    "findings-500",
    "scripts",
    "empty",
];

/// One of [`INPUTS`].
pub(crate) fn input(name: &'static str) -> Input {
    let of = |job| Input { name, job, photos: Photos::new() };
    let demo = |answer: fn(Job) -> Job| {
        let (job, photos) = demo(true);
        Input { name, job: answer(job), photos }
    };
    match name {
        "demo" => demo(|job| job),
        "demo-proposed" => demo(proposed),
        "demo-signed" => demo(signed),
        "demo-machined" => demo(|job| proposed(more_machining(job))),
        "untouched" => of(whole("untouched")),
        "sound-v8" => of(whole("vee-8-sound")),
        "destroyed-v8" => of(whole("everything-destroyed")),
        "photos-120" => {
            let photos = (0..120).map(|nth| (photo_id(nth), metal(nth, (1280, 960)))).collect();
            Input { name, job: vee8(120, &TEXTS), photos }
        }
        "findings-500" => of(worn_everywhere()),
        "scripts" => of(vee8(0, &SCRIPTS)),
        _ => of(Job::default()),
    }
}

/// One of `tests/whole-engines`.
pub(crate) fn whole(name: &str) -> Job {
    let mut job = Whole::named(name).job();
    job.texts = TEXTS.iter().map(|(field, text)| (*field, (*text).to_owned())).collect();
    job
}
