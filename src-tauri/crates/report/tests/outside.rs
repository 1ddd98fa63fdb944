//! The PDF as programs of others see it: qpdf, pdfinfo, pdftotext, where these are installed.

#![allow(clippy::unwrap_used, reason = "clippy.toml lets tests unwrap, but not the functions that they share")]

#[path = "outside/said.rs"]
mod said;

use std::io::Cursor;

use said::{said, squeezed};
use wearbook_core::date::Date;
use wearbook_core::document::{Block, Image, Paper, PaperSize, Picture, PlanDrawing, Reader, Shown};
use wearbook_core::engine::{Arrangement, Engine};
use wearbook_core::job::{Markup, PhotoId};
use wearbook_core::under_way::UnderWay;
use wearbook_core::view::Seen;
use wearbook_core::wear::Grade;
use wearbook_report::{NotSet, Print, pdf, text};

/// Text that would break, run or vanish if it were read as markup, or if nobody had thought of it.
const HOSTILE: [&str; 12] = [
    "#panic(\"read as code\")",
    "#import \"@preview/thing:1.0.0\": *",
    "$ sum_(i=0)^n $ and *bold* _it_ `raw` = heading",
    "[brackets] ] [ {braces} } \\ back \\",
    "@label <label> // comment /* open",
    "</text><script>alert(1)</script> & \"quotes\" 'single'",
    "bell \u{7} null \u{0} escape \u{1b}[31m delete \u{7f}",
    "turned \u{202e}txet\u{202c} back \u{2066}isolate\u{2069}",
    "עברית and Ελληνικά and кириллица",
    "- list\n+ list\n/ term: x\n= heading",
    "fi ffl office half-round",
    "%s %n ${x} {{x}} ../../etc/passwd",
];

fn photo_id(nth: u8) -> PhotoId {
    PhotoId::try_from(format!("{nth:064x}")).unwrap()
}

fn jpeg(width: u32, height: u32) -> Vec<u8> {
    let mut file = Cursor::new(Vec::new());
    image::DynamicImage::new_rgb8(width, height).write_to(&mut file, image::ImageFormat::Jpeg).unwrap();
    file.into_inner()
}

fn paper(blocks: Vec<Block>) -> Paper {
    let date = Date::new(2024, 11, 25).unwrap();
    Paper {
        title: "Condition report".into(),
        subtitle: "Yard loader, in-line 4".into(),
        subject: "Yard loader".into(),
        reader: Reader::Customer("Ada Quill".into()),
        date,
        blocks,
    }
}

/// Lines, and pictures under them; there is a frame where none is.
fn findings(lines: &[&str], pictures: Vec<Picture>) -> [Block; 2] {
    let shown = |picture: Picture| Shown { sentence: picture.alt.clone(), image: Image::Photo(picture) };
    [
        Block::Points(lines.iter().map(|line| (*line).to_owned()).collect()),
        Block::Photos { shown: pictures.into_iter().map(shown).collect(), small: false },
    ]
}

/// Something of every kind over a picture.
fn drawn() -> Vec<Markup> {
    vec![
        Markup::Outline { points: vec![(1000, 1000), (4000, 900), (2500, 5000)], note: "DRAWNNOTE seam".into() },
        Markup::Arrow { from: (9000, 9000), to: (5000, 5000), note: String::new() },
        Markup::Note { at: (0, 10_000), note: "DRAWNNOTE chip".into() },
    ]
}

/// One block of every kind.
fn full() -> Paper {
    let engine = Engine::new(Arrangement::inline(4)).unwrap();
    let ink = engine.parts().iter().map(|part| (*part, Seen::Worn, Some(Grade::THREE))).collect();
    let words = |words: &[&str]| words.iter().map(|word| (*word).to_owned()).collect::<Vec<_>>();
    let [points, photos] = findings(
        &["Scoring, grade 3"],
        vec![
            Picture { photo: photo_id(1), alt: "PICTUREALT one".into(), markups: drawn() },
            Picture { photo: photo_id(2), alt: "PICTUREALT two".into(), markups: vec![] },
        ],
    );
    paper(vec![
        Block::Lead("The summary.".into()),
        Block::Caution("Parts may be hot.".into()),
        Block::Heading { level: 1, text: "Engine".into() },
        Block::Facts(vec![("Hours".into(), "5120".into())]),
        Block::Heading { level: 2, text: "Plan".into() },
        Block::Plan(PlanDrawing { plan: engine.plan(), ink, alt: "PLANALT all parts worn".into() }),
        Block::NewPage,
        Block::Paragraph("A paragraph.".into()),
        Block::Points(words(&["one point", "another point"])),
        Block::Table {
            summary: "TABLESUMMARY parts".into(),
            head: words(&["Part", "What to do"]),
            widths: vec![2, 1],
            to_fill: false,
            rows: vec![words(&["Bore 1", "machine"])],
        },
        points,
        photos,
        Block::Contents,
        Block::Signature {
            name: "A. Harrow".into(),
            strokes: vec![vec![(1000, 2000), (9000, 8000)], vec![(9500, 8000)]],
        },
    ])
}

fn both_pictures(_: &PhotoId) -> Option<Vec<u8>> {
    Some(jpeg(80, 60))
}

fn set(paper: &Paper) -> Vec<u8> {
    pdf(paper, Print::default(), &both_pictures, &UnderWay::default()).unwrap()
}

#[track_caller]
fn shows(pdf: &[u8], expected: &[&str]) {
    let Some(seen) = said("pdftotext", &["-raw", "FILE", "-"], pdf) else { return };
    let seen = squeezed(&seen);
    for line in expected {
        assert!(seen.contains(&squeezed(line)), "“{line}” is not in the PDF's text");
    }
}

#[test]
fn an_empty_paper_is_a_sheet_with_its_title() {
    let bytes = set(&paper(vec![]));
    shows(&bytes, &["Condition report", "Yard loader, in-line 4", "25 November 2024", "1 of 1"]);
    let nothing = Paper {
        title: String::new(),
        subtitle: String::new(),
        subject: String::new(),
        reader: Reader::Customer(String::new()),
        date: Date::new(1, 1, 1).unwrap(),
        blocks: vec![],
    };
    assert!(set(&nothing).starts_with(b"%PDF-"));
}

#[test]
fn every_block_is_printed() {
    let expected = ["The summary.", "Parts may be hot.", "Hours", "5120", "A paragraph.", "another point", "Bore 1"];
    shows(&set(&full()), &expected);
    shows(&set(&full()), &["Scoring, grade 3", "PICTUREALT two"]);
}

#[test]
fn the_file_is_sound_and_accessible() {
    let bytes = set(&full());
    if let Some(verdict) = said("qpdf", &["--check", "FILE"], &bytes) {
        assert!(verdict.contains("No syntax or stream encoding errors found"), "{verdict}");
    }
    if let Some(info) = said("pdfinfo", &["FILE"], &bytes) {
        for line in ["Title: Condition report, Ada Quill, Yard loader", "Tagged: yes", "A4"] {
            assert!(squeezed(&info).contains(&squeezed(line)), "“{line}” is not in {info}");
        }
        assert!(info.contains("2024"), "the date on the paper is the file's date: {info}");
    }
    if let Some(structure) = said("pdfinfo", &["-struct", "FILE"], &bytes) {
        for tag in ["H1", "H2", "Table", "TH", "LI", "Figure"] {
            assert!(structure.contains(tag), "no {tag} in {structure}");
        }
    }
    if let Some(objects) = said("qpdf", &["--json", "FILE"], &bytes) {
        let alts = objects.matches("\"/Alt\"").count();
        assert_eq!(alts, 5, "a plan on two sheets, two pictures and a signature");
        for words in [
            "PLANALT all parts worn",
            "PICTUREALT one",
            "PICTUREALT two",
            "Signature of A. Harrow",
            "TABLESUMMARY parts",
            "/Outlines",
            // PDF/UA-1 does not ask for heads of rows; a reader who hears a table does.
            "\"/Scope\": \"/Row\"",
            "\"/Scope\": \"/Column\"",
            // The contents lead to their chapters.
            "\"/Subtype\": \"/Link\"",
        ] {
            assert!(objects.contains(words), "“{words}” is not in the file");
        }
        assert!(objects.contains("\"/Lang\": \"u:en-GB\""), "no language");
    }
    if let Some(metadata) = said("pdfinfo", &["-meta", "FILE"], &bytes) {
        assert!(metadata.contains("pdfuaid:part"), "no mark of PDF/UA in {metadata}");
    }
}

#[test]
fn typed_text_is_never_markup() {
    for words in HOSTILE {
        let mut paper = full();
        paper.title = words.into();
        paper.subtitle = words.into();
        for kind in [Block::Paragraph, Block::Lead, Block::Caution] {
            paper.blocks.push(kind(words.into()));
        }
        paper.blocks.push(Block::Heading { level: 1, text: words.into() });
        paper.blocks.push(Block::Facts(vec![(words.into(), words.into())]));
        paper.blocks.push(Block::Points(vec![words.into()]));
        paper
            .blocks
            .extend(findings(&[words], vec![Picture { photo: photo_id(3), alt: words.into(), markups: vec![] }]));
        let bytes = set(&paper);
        assert!(text(&paper).chars().all(|letter| letter == '\n' || !letter.is_control()));
        // Right-to-left words are stored in another order than they were typed.
        if words.contains('ע') {
            shows(&bytes, &["Ελληνικά", "кириллица"]);
        } else {
            let kept: String =
                words.chars().filter(|letter| !"\u{202e}\u{202c}\u{2066}\u{2069}".contains(*letter)).collect();
            shows(&bytes, &[&kept]);
        }
    }
}

#[test]
fn a_word_without_end_stays_on_the_sheet() {
    let word = "x".repeat(10_000);
    let bytes = set(&paper(vec![Block::Paragraph(word.clone()), Block::Points(vec![word])]));
    // What runs off the sheet is cut from the box of the page.
    let Some(seen) = said("pdftotext", &["-cropbox", "-nopgbrk", "FILE", "-"], &bytes) else { return };
    assert!(seen.matches('x').count() >= 20_000);
    let longest = seen.lines().map(|line| line.chars().count()).max();
    assert!(longest < Some(200), "a line of {longest:?} letters");
}

#[test]
fn a_picture_that_is_missing_or_broken_leaves_a_frame() {
    let mut cut = jpeg(300, 200);
    cut.truncate(200);
    for broken in [None, Some(vec![]), Some(b"not a picture".to_vec()), Some(vec![0xff; 64]), Some(cut)] {
        let bytes = pdf(&full(), Print::default(), &|_| broken.clone(), &UnderWay::default()).unwrap();
        shows(&bytes, &["picture missing", "PICTUREALT two", "Scoring, grade 3"]);
    }
}

#[test]
fn a_paper_that_nobody_waits_for_any_more_is_not_made() {
    let way = UnderWay::default();
    let at_the_first = |id: &PhotoId| {
        way.stop();
        both_pictures(id)
    };
    assert!(matches!(pdf(&full(), Print::default(), &at_the_first, &way), Err(NotSet::Stopped(_))));
    let way = UnderWay::default();
    assert!(pdf(&full(), Print::default(), &both_pictures, &way).is_ok());
    let (done, steps) = way.steps();
    assert!(done == steps && steps > 1, "{done} of {steps}");
}

#[test]
fn what_is_drawn_over_a_picture_is_printed_told_and_fit_for_the_archive() {
    let words = "1 DRAWNNOTE seam 2 DRAWNNOTE chip";
    shows(&set(&full()), &[words]);
    assert!(text(&full()).contains("1\u{a0}DRAWNNOTE seam 2\u{a0}DRAWNNOTE chip"));
    let archived =
        pdf(&full(), Print { archive: true, ..Print::default() }, &both_pictures, &UnderWay::default()).unwrap();
    shows(&archived, &[words]);
    let mut bare = full();
    for block in &mut bare.blocks {
        if let Block::Photos { shown, .. } = block {
            for one in shown.iter_mut() {
                let Image::Photo(picture) = &mut one.image else { continue };
                one.sentence = [vec![one.sentence.clone()], picture.notes()].concat().join("  ");
                picture.markups.clear();
            }
        }
    }
    // The words are the same; the lines must be in the file too.
    shows(&set(&bare), &[words]);
    assert!(set(&full()).len() > set(&bare).len() + 300);
}

#[test]
fn the_same_paper_gives_the_same_bytes() {
    assert!(set(&full()) == set(&full()));
}

#[test]
fn every_finding_is_printed_and_written_however_many() {
    let lines: Vec<String> = (0..500).map(|nth| format!("Finding {nth}: pitting, grade {}", 1 + nth % 4)).collect();
    let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
    let paper = paper(vec![Block::Points(lines.iter().map(|line| (*line).to_owned()).collect())]);
    shows(&set(&paper), &lines);
    for line in lines {
        assert!(text(&paper).contains(&format!("- {line}\n")), "{line}");
    }
}

#[test]
fn large_engines_are_drawn_too() {
    for arrangement in [Arrangement::inline(1), Arrangement::inline(12), Arrangement::vee(16), Arrangement::flat(6)] {
        let engine = Engine::new(arrangement).unwrap();
        let items: Vec<String> = engine.plan().sections.iter().map(|section| section.title.clone()).collect();
        let block = Block::Plan(PlanDrawing { plan: engine.plan(), ink: vec![], alt: "Plan".into() });
        let titles: Vec<&str> = items.iter().map(String::as_str).collect();
        shows(&set(&paper(vec![block])), &titles);
    }
}

#[test]
fn letter_paper_is_letter() {
    let bytes =
        pdf(&full(), Print { size: PaperSize::Letter, ..Print::default() }, &both_pictures, &UnderWay::default())
            .unwrap();
    if let Some(info) = said("pdfinfo", &["FILE"], &bytes) {
        assert!(info.contains("612 x 792 pts"), "{info}");
    }
}
