//! How long files take to be taken in and folded, whatever they hold: one line for each that is named.
//!
//! `cargo run --profile quick -p wearbook-store --example take_in FILE…`

#![allow(clippy::print_stdout, reason = "an example prints")]

use std::time::Instant;

use wearbook_core::job::Job;
use wearbook_core::under_way::UnderWay;
use wearbook_store::{PhotoFacts, PhotoFormat, Store, StoreError};

fn main() -> Result<(), StoreError> {
    for file in std::env::args_os().skip(1) {
        let dir = tempfile::tempdir()?;
        let store = Store::open(dir.path())?;
        let bytes = std::fs::metadata(&file)?.len();
        let check = |_: &[u8]| Ok(PhotoFacts { format: PhotoFormat::Jpeg, width: 1, height: 1 });
        let start = Instant::now();
        let imported = store.import(std::fs::File::open(&file)?, 1, &check, &UnderWay::default());
        let taken = start.elapsed();
        println!("{}: {} MB, taken in {taken:.2?}", file.display(), bytes / 1_000_000);
        match imported {
            Err(refused) => println!("  refused: {refused}"),
            Ok(imported) => {
                let edits = store.read::<_, StoreError>(|ledger| ledger.edits(imported.job))?;
                let start = Instant::now();
                let job = Job::fold(&edits);
                let (folded, aside) = (start.elapsed(), job.without_effect.len());
                println!("  {} entries folded {folded:.2?}, {aside} without effect", edits.len());
                println!("  refused: {:?}", imported.refused);
            }
        }
    }
    Ok(())
}
