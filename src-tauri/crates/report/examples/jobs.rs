//! Writes the reports of whole jobs as PDF and text, to be looked at: the demo's in full, short and signed, and that of
//! a V8 with 120 photos, and names in other scripts.
//!
//! `cargo run -p wearbook-report --example jobs -- OUTDIR`

#[path = "../tests/jobs/mod.rs"]
mod jobs;

use std::error::Error;
use std::path::Path;
use std::time::Instant;

use jobs::{Photos, SCRIPTS, TEXTS, demo, evidence, metal, photo_id, report, signed, vee8};
use wearbook_core::document::{Extent, Paper, PaperSize};
use wearbook_core::job::Job;
use wearbook_report::{Print, pdf, text};

fn main() -> Result<(), Box<dyn Error>> {
    let out = std::env::args().nth(1).ok_or("Say where to write: jobs OUTDIR")?;
    let out = Path::new(&out);
    std::fs::create_dir_all(out)?;
    let a4 = Print::default();
    let (job, photos) = demo(true);
    write(out, "demo", a4, &report(&job, Extent::Full), &photos)?;
    write(out, "demo-short", Print { size: PaperSize::Letter, ..a4 }, &report(&job, Extent::Short), &photos)?;
    write(out, "evidence", a4, &evidence(&job), &photos)?;
    write(out, "demo-signed", Print { archive: true, ..a4 }, &report(&signed(job), Extent::Full), &photos)?;
    let photos: Photos = (0..120).map(|nth| (photo_id(nth), metal(nth, (1280, 960)))).collect();
    write(out, "vee8", a4, &report(&vee8(120, &TEXTS), Extent::Full), &photos)?;
    write(out, "scripts", a4, &report(&vee8(1, &SCRIPTS), Extent::Short), &photos)?;
    write(out, "empty", a4, &report(&Job::default(), Extent::Full), &photos)
}

fn write(out: &Path, name: &str, print: Print, paper: &Paper, photos: &Photos) -> Result<(), Box<dyn Error>> {
    let start = Instant::now();
    let pdf = pdf(paper, print, &|id| photos.get(id).cloned())?;
    println!("{name}: {} ms, {} kB", start.elapsed().as_millis(), pdf.len() / 1000);
    std::fs::write(out.join(format!("{name}.pdf")), pdf)?;
    std::fs::write(out.join(format!("{name}.txt")), text(paper))?;
    Ok(())
}
