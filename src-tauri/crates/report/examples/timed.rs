//! Writes one paper, and the same content as a page with the pictures beside it, so that a browser's printing can be timed
//! against ours. Prints how long the paper took.
//!
//! Pictures that lie there from an earlier run are read and not drawn again: then the run times little but the paper.
//!
//! `cargo run --profile quick --workspace --example timed -- sixty|sixty-full|short|picture OUTDIR`: a report with sixty
//! photos, to be mailed or with the pictures as they are; the demo's short report; the demo's customer's page as a picture

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "shared with the tests")]

#[path = "../tests/jobs/mod.rs"]
mod jobs;

use std::collections::BTreeMap;
use std::error::Error;
use std::fmt::Write as _;
use std::fs;
use std::io::Cursor;
use std::path::Path;
use std::time::Instant;

use image::{ImageFormat, Rgb, RgbImage};
use wearbook_core::date::Date;
use wearbook_core::document::{Block, Extent, Image, Paper, Picture, PlanDrawing, Reader, Shown, customers_page};
use wearbook_core::engine::{Arrangement, Engine, Part};
use wearbook_core::job::PhotoId;
use wearbook_core::under_way::UnderWay;
use wearbook_core::view::Seen;
use wearbook_core::wear::Grade;
use wearbook_report::{Print, Resolution, pdf, png};

const PHOTOS: u32 = 60;
const FINDINGS: usize = 500;
/// As the app passes them for paper.
const SIZE: (u32, u32) = (1280, 960);

type Photos = BTreeMap<PhotoId, Vec<u8>>;

fn main() -> Result<(), Box<dyn Error>> {
    let mut arguments = std::env::args().skip(1);
    let (Some(what), Some(out)) = (arguments.next(), arguments.next()) else {
        return Err("Say what, and where to write it: timed sixty|sixty-full|short|picture OUTDIR".into());
    };
    let out = Path::new(&out);
    fs::create_dir_all(out)?;
    let (photos, paper) = match what.as_str() {
        "sixty" | "sixty-full" => {
            let photos = (0..PHOTOS).map(|nth| photo(out, nth)).collect::<Result<Photos, Box<dyn Error>>>()?;
            let paper = paper(&photos)?;
            (photos, paper)
        }
        "short" => demo(out, |job| jobs::report(job, Extent::Short))?,
        "picture" => demo(out, |job| jobs::written(job, customers_page))?,
        other => return Err(format!("There is no “{other}”: there are sixty, sixty-full, short, picture").into()),
    };
    let way = UnderWay::default();
    let source = |id: &PhotoId| photos.get(id).cloned();
    let pictures = if what == "sixty-full" { Resolution::Full } else { Resolution::Mail };
    let start = Instant::now();
    let (bytes, name) = if what == "picture" {
        (png(&paper, &source, &way)?, "paper.png")
    } else {
        (pdf(&paper, Print { pictures, ..Print::default() }, &source, &way)?, "paper.pdf")
    };
    println!("{} ms", start.elapsed().as_millis());
    fs::write(out.join(name), bytes)?;
    // Written once, for the browser: it is not what is timed.
    let page = out.join("page.html");
    if !page.exists() {
        let customers = wearbook_report::html(&paper, &source, &way)?;
        let (before, after) = customers.split_once("</main>").ok_or("the page has no main part")?;
        fs::write(page, format!("{before}{}</main>{after}", html(&paper)))?;
    }
    Ok(())
}

/// The demo's job written as a paper, and its photos, drawn if they are not there yet.
fn demo(out: &Path, write: impl FnOnce(&wearbook_core::job::Job) -> Paper) -> Result<(Photos, Paper), Box<dyn Error>> {
    let (job, small) = jobs::demo(false);
    let file = |id: &PhotoId| out.join(format!("{}.jpg", id.as_str()));
    if !small.keys().all(|id| file(id).exists()) {
        for (id, bytes) in jobs::demo(true).1 {
            fs::write(file(&id), bytes)?;
        }
    }
    let read = |id: PhotoId| fs::read(file(&id)).map(|bytes| (id, bytes));
    Ok((small.into_keys().map(read).collect::<Result<_, _>>()?, write(&job)))
}

/// The picture beside the page, drawn if it is not there yet.
fn photo(out: &Path, nth: u32) -> Result<(PhotoId, Vec<u8>), Box<dyn Error>> {
    let id = PhotoId::try_from(format!("{nth:064x}"))?;
    let file = out.join(format!("{}.jpg", id.as_str()));
    if !file.exists() {
        fs::write(&file, drawn(nth)?)?;
    }
    Ok((id, fs::read(&file)?))
}

/// A grey gradient with grain: about as hard to compress as a photo of metal.
fn drawn(nth: u32) -> Result<Vec<u8>, Box<dyn Error>> {
    let (width, height) = if nth % 5 == 4 { (SIZE.1, SIZE.0) } else { SIZE };
    let mut grain = nth.wrapping_mul(2_654_435_761) | 1;
    let picture = RgbImage::from_fn(width, height, |x, y| {
        grain ^= grain << 13;
        grain ^= grain >> 17;
        grain ^= grain << 5;
        let light = 60 + (x + 2 * y + 37 * nth) % 2900 / 20 + grain % 34;
        let light = u8::try_from(light.min(255)).unwrap_or(255);
        Rgb([light, light, light.saturating_sub(8)])
    });
    let mut file = Cursor::new(Vec::new());
    picture.write_to(&mut file, ImageFormat::Jpeg)?;
    Ok(file.into_inner())
}

fn paper(photos: &Photos) -> Result<Paper, Box<dyn Error>> {
    let engine = Engine::new(Arrangement::vee(8))?;
    let mut blocks = vec![
        Block::Lead(
            "The bearings have run with dirt in the oil. The crankshaft can be saved by grinding; all shells, the oil \
             pump and the filter are to be renewed, and every oil gallery must be opened and washed."
                .into(),
        ),
        Block::Caution(
            "The engine’s own manual governs all limits and torques. This report says what was seen; it advises, and \
             the mechanic decides."
                .into(),
        ),
        Block::Heading { level: 1, text: "The engine".into() },
        Block::Facts(vec![
            ("Machine".into(), "Wheel loader, yard no. 14".into()),
            ("Engine".into(), engine.arrangement().summary()),
            ("Hours".into(), "6 412".into()),
            ("Complaint".into(), "Oil pressure falls when hot; knock under load".into()),
        ]),
        Block::Heading { level: 1, text: "What was found".into() },
        Block::Plan(PlanDrawing {
            plan: engine.plan(),
            ink: ink(&engine),
            alt: "Plan of the engine, every part by severity.".into(),
        }),
        Block::NewPage,
        Block::Heading { level: 1, text: "Part by part".into() },
    ];
    let ids: Vec<&PhotoId> = photos.keys().collect();
    let parts: Vec<Part> = engine.parts().iter().copied().take(50).collect();
    let per_part = FINDINGS / parts.len();
    let mut ids = ids.into_iter();
    for (nth, part) in parts.iter().enumerate() {
        let name = engine.label(*part);
        let pictures = ids.by_ref().take(1 + usize::from(nth % 5 == 1));
        blocks.push(Block::Heading { level: 2, text: name.clone() });
        blocks.push(Block::Points((0..per_part).map(|line| finding(nth * per_part + line)).collect()));
        let picture =
            |id: &PhotoId| Picture { photo: id.clone(), alt: format!("{name}: running face"), markups: vec![] };
        let shown = pictures.map(|id| Shown { image: Image::Photo(picture(id)), sentence: name.clone() });
        blocks.push(Block::Photos { shown: shown.collect(), small: false });
    }
    blocks.push(Block::Heading { level: 1, text: "What to do".into() });
    blocks.push(Block::Table {
        summary: "Every part and what is to be done with it".into(),
        head: ["Part", "What to do", "Why"].map(String::from).into(),
        widths: vec![4, 2, 6],
        to_fill: false,
        rows: parts
            .iter()
            .map(|part| {
                [engine.label(*part), "replace".into(), "Scored deeper than it can be cleaned up".into()].into()
            })
            .collect(),
    });
    Ok(Paper {
        title: "Condition report".into(),
        subtitle: "Wheel loader, yard no. 14".into(),
        subject: "Wheel loader, yard no. 14".into(),
        reader: Reader::Customer(String::new()),
        date: Date::EPOCH,
        blocks,
    })
}

fn finding(nth: usize) -> String {
    let tag = ["Scoring", "Embedded debris", "Pitting", "Copper showing", "Wiping"];
    let tag = tag.get(nth % tag.len()).copied().unwrap_or("Scoring");
    format!("Finding {nth}: {tag}, grade {}: catches a fingernail; at the front edge, crown", 1 + nth % 4)
}

/// Looks that show every step of the hatching.
fn ink(engine: &Engine) -> Vec<(Part, Seen, Option<Grade>)> {
    let looks = [
        (Seen::Worn, Some(Grade::TWO)),
        (Seen::Clean, None),
        (Seen::Worn, Some(Grade::THREE)),
        (Seen::NotLooked, None),
        (Seen::Worn, Some(Grade::ONE)),
        (Seen::Clean, None),
        (Seen::Worn, Some(Grade::FOUR)),
    ];
    engine.parts().iter().zip(looks.iter().cycle()).map(|(part, (seen, grade))| (*part, *seen, *grade)).collect()
}

/// What stands beside the customer's page, as a browser can print it.
fn html(paper: &Paper) -> String {
    let mut page = String::new();
    for block in &paper.blocks {
        // Writing to a string can't fail.
        let _ = write_block(&mut page, block);
    }
    page
}

fn write_block(page: &mut String, block: &Block) -> std::fmt::Result {
    match block {
        Block::Heading { level, text } => write!(page, "<h{0}>{text}</h{0}>", level + 1),
        Block::Paragraph(text) | Block::Lead(text) | Block::Caution(text) => write!(page, "<p>{text}</p>"),
        Block::Points(points) => points.iter().try_for_each(|point| write!(page, "<li>{point}</li>")),
        Block::Facts(facts) => facts.iter().try_for_each(|(name, value)| write!(page, "<p>{name}: {value}</p>")),
        Block::Table { head, rows, .. } => {
            write!(page, "<table><tr>{}</tr>", cells("th", head))?;
            rows.iter().try_for_each(|row| write!(page, "<tr>{}</tr>", cells("td", row)))?;
            write!(page, "</table>")
        }
        Block::Plan(plan) => write!(page, "<p>{}</p>", plan.alt),
        Block::Photos { shown, .. } => {
            shown.iter().filter_map(|one| Some((one.photo()?, &one.sentence))).try_for_each(|(picture, sentence)| {
                write!(
                    page,
                    "<figure><img src=\"{}.jpg\" alt=\"{}\"><figcaption>{sentence}</figcaption></figure>",
                    picture.photo.as_str(),
                    picture.alt
                )
            })
        }
        Block::Signature { name, .. } => write!(page, "<p>Signed: {name}</p>"),
        // The paper above has none of these.
        Block::CustomersPage(_)
        | Block::Contents
        | Block::Blanks(_)
        | Block::Measured { .. }
        | Block::BarKey
        | Block::Forms { .. } => Ok(()),
        Block::NewPage => write!(page, "<div style=\"break-after:page\"></div>"),
    }
}

fn cells(element: &str, texts: &[String]) -> String {
    texts.iter().map(|text| format!("<{element}>{text}</{element}>")).collect()
}
