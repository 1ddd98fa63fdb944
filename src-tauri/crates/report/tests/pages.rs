//! Whole reports as other programs see them (pdftotext, pdffonts, qpdf, pdfinfo, where these are installed): nothing
//! leaves the sheet or lies on something else, every font is in the file, every picture has words, headings come in
//! order, and the file can be mailed.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "clippy.toml lets tests do so, but not the functions that they share"
)]

#[path = "../../core/tests/data/mod.rs"]
mod data;
#[path = "../../core/tests/entered/mod.rs"]
mod entered;
mod inputs;
mod jobs;
#[path = "outside/said.rs"]
mod said;

use inputs::whole;
use jobs::{
    Photos, SCRIPTS, TEXTS, demo, evidence, metal, more_machining, photo_id, proposed, report, signed, vee8,
    worn_everywhere, written,
};
use said::{said, squeezed};
use wearbook_core::document::{
    Block, Extent, Paper, PaperSize, Reader, closing_sheet, customers_page, evidence_sheet, goes_back, machine_shop,
    parts_counter, size_sheet, strip_down_order, work_list,
};
use wearbook_core::engine::Arrangement;
use wearbook_core::job::{Job, ListKind, TextField};
use wearbook_core::under_way::UnderWay;
use wearbook_report::{Print, Resolution, pdf, text};

const MAIL: usize = 5_000_000;
/// A millimetre in points.
const MM: f64 = 72.0 / 25.4;

/// Sets a paper and holds against it what holds for every paper; gives the file.
#[track_caller]
fn check(print: Print, paper: &Paper, photos: &Photos) -> Vec<u8> {
    let pdf = pdf(paper, print, &|id| photos.get(id).cloned(), &UnderWay::default()).unwrap();
    assert!(pdf.len() < MAIL, "{} bytes are too many for mail", pdf.len());
    nothing_lies_on_anything_else(print, &pdf);
    every_font_is_embedded(&pdf);
    the_file_is_sound(print, paper, &pdf);
    headings_come_in_order(paper, &pdf);
    the_plain_text_has_it_all(paper);
    pdf
}

/// A line of text on a page, from left to right and top to bottom.
#[derive(Debug, PartialEq)]
struct Line {
    page: usize,
    x: (f64, f64),
    y: (f64, f64),
    words: String,
}

fn lines(layout: &str) -> Vec<Line> {
    let number = |tag: &str, name: &str| -> f64 {
        let value = tag.split(&format!("{name}=\"")).nth(1).unwrap();
        value.split('"').next().unwrap().parse().unwrap()
    };
    let (mut page, mut lines) = (0, Vec::new());
    for tag in layout.lines().map(str::trim) {
        if tag.starts_with("<page ") {
            page += 1;
        } else if tag.starts_with("<line ") {
            let x = (number(tag, "xMin"), number(tag, "xMax"));
            let y = (number(tag, "yMin"), number(tag, "yMax"));
            lines.push(Line { page, x, y, words: String::new() });
        } else if tag.starts_with("<word ")
            && let (Some(line), Some(word)) = (lines.last_mut(), tag.split(['>', '<']).nth(2))
        {
            line.words += word;
            line.words += " ";
        }
    }
    lines
}

/// The frame of the sheet (ISO 5457) holds all text; and no two lines share more than a hair of room.
#[track_caller]
fn nothing_lies_on_anything_else(print: Print, pdf: &[u8]) {
    let Some(layout) = said("pdftotext", &["-bbox-layout", "FILE", "-"], pdf) else { return };
    let (width, height) = if print.size == PaperSize::A4 { (210.0 * MM, 297.0 * MM) } else { (612.0, 792.0) };
    let lines = lines(&layout);
    assert!(!lines.is_empty());
    assert_eq!(outside(&lines, (width, height)), Vec::<&Line>::new(), "outside the frame of the sheet");
    assert_eq!(on_others(&lines), Vec::<(&Line, &Line)>::new(), "one on the other");
    // The box of a letter is at least as high as its size: nothing is smaller than what drawings are lettered in. The numbers
    // on a photo grow and shrink with it; below it they stand again.
    let is_number = |line: &&Line| line.words.trim().parse::<u32>().is_ok();
    let small: Vec<&Line> =
        lines.iter().filter(|line| line.y.1 - line.y.0 < 6.4).filter(|line| !is_number(line)).collect();
    assert_eq!(small, Vec::<&Line>::new(), "smaller than 6.5 points");
}

/// Lines outside the frame.
fn outside(lines: &[Line], (width, height): (f64, f64)) -> Vec<&Line> {
    let inside = |line: &&Line| {
        line.x.0 >= 20.0 * MM && line.x.1 <= width - 10.0 * MM && line.y.0 >= 10.0 * MM && line.y.1 <= height - 9.0 * MM
    };
    lines.iter().filter(|line| !inside(line)).collect()
}

/// Pairs of lines that share room on a page.
fn on_others(lines: &[Line]) -> Vec<(&Line, &Line)> {
    let overlap = |one: (f64, f64), other: (f64, f64)| one.1.min(other.1) - one.0.max(other.0);
    let mut pairs = Vec::new();
    for (nth, line) in lines.iter().enumerate() {
        for other in lines.iter().skip(nth + 1).take_while(|other| other.page == line.page) {
            // Boxes are as high as the font's tallest letters, and so touch where lines stand close.
            let lower = (line.y.1 - line.y.0).min(other.y.1 - other.y.0);
            if overlap(line.x, other.x) > 1.0 && overlap(line.y, other.y) > 0.45 * lower {
                pairs.push((line, other));
            }
        }
    }
    pairs
}

/// An ordinary engine's machine shop and parts counter each work from one page.
#[test]
fn other_trades_work_from_one_page() {
    let (job, photos) = demo(false);
    for job in [job.clone(), more_machining(job)] {
        for paper in [machine_shop, parts_counter] {
            for print in [A4, LETTER] {
                let pdf = check(print, &written(&proposed(job.clone()), paper), &photos);
                assert!(pages(&pdf).len() <= 1, "{} sheets of {:?}", pages(&pdf).len(), print.size);
            }
        }
    }
}

/// The customer's page is one page, before and after the answer, with what was found since, on either paper.
#[test]
fn the_customers_page_is_one_page() {
    let (job, photos) = demo(false);
    let answered = more_machining(signed(job.clone()));
    for job in [job.clone(), proposed(job.clone()), signed(job), answered] {
        for print in [A4, LETTER] {
            let sheets = pages(&check(print, &written(&job, customers_page), &photos)).len();
            assert!(sheets <= 1, "{sheets} sheets of {:?}", print.size);
        }
    }
}

#[test]
fn every_other_paper_is_laid_out_as_soundly() {
    let (job, photos) = demo(false);
    for job in [more_machining(signed(job)), Job::default(), whole("whole-bill")] {
        for paper in [closing_sheet, strip_down_order, goes_back, size_sheet, evidence_sheet] {
            for print in [A4, LETTER] {
                check(print, &written(&job, paper), &photos);
            }
        }
        for kind in ListKind::ALL {
            check(A4, &written(&job, |desk| work_list(desk, kind)), &photos);
        }
    }
}

/// The check of the layout is worth something only if it sees what is wrong.
#[test]
fn what_lies_on_something_or_leaves_the_sheet_is_seen() {
    let line = |page, x: f64, y: f64| Line { page, x: (x, x + 100.0), y: (y, y + 12.0), words: String::new() };
    let seen = |lines: &[Line]| (outside(lines, (595.0, 842.0)).len(), on_others(lines).len());
    assert_eq!(seen(&[line(1, 80.0, 100.0), line(1, 80.0, 112.0), line(1, 190.0, 100.0)]), (0, 0));
    assert_eq!(seen(&[line(1, 80.0, 100.0), line(1, 80.0, 106.0)]), (0, 1));
    assert_eq!(seen(&[line(1, 80.0, 100.0), line(1, 170.0, 103.0)]), (0, 1));
    assert_eq!(seen(&[line(1, 80.0, 100.0), line(2, 80.0, 100.0)]), (0, 0), "on different pages");
    assert_eq!(seen(&[line(1, 500.0, 100.0), line(1, 20.0, 200.0), line(1, 80.0, 825.0)]), (3, 0));
    let page = r#"<page width="595" height="842">
        <line xMin="80.5" yMin="100" xMax="180" yMax="112">
          <word xMin="80.5" yMin="100" xMax="120" yMax="112">Main</word>
          <word xMin="125" yMin="100" xMax="180" yMax="112">3</word>"#;
    let read = lines(page);
    assert_eq!((read.len(), read[0].page, read[0].x, read[0].words.as_str()), (1, 1, (80.5, 180.0), "Main 3 "));
}

#[track_caller]
fn every_font_is_embedded(pdf: &[u8]) {
    let Some(fonts) = said("pdffonts", &["FILE"], pdf) else { return };
    let rows: Vec<&str> = fonts.lines().skip(2).collect();
    assert!(!rows.is_empty());
    for row in rows {
        // The columns end: … emb sub uni object ID.
        let columns: Vec<&str> = row.split_whitespace().rev().collect();
        assert_eq!((columns[4], columns[2]), ("yes", "yes"), "not embedded, or its text can’t be read: {row}");
    }
}

#[track_caller]
fn the_file_is_sound(print: Print, paper: &Paper, pdf: &[u8]) {
    if let Some(verdict) = said("qpdf", &["--check", "FILE"], pdf) {
        assert!(verdict.contains("No syntax or stream encoding errors found"), "{verdict}");
    }
    if let Some(info) = said("pdfinfo", &["FILE"], pdf) {
        let size = if print.size == PaperSize::A4 { "A4" } else { "612 x 792" };
        for words in ["Tagged: yes", "Title: ", size] {
            assert!(squeezed(&info).contains(&squeezed(words)), "“{words}” is not in {info}");
        }
    }
    if let Some(metadata) = said("pdfinfo", &["-meta", "FILE"], pdf) {
        assert!(metadata.contains("<pdfuaid:part>1<"), "no mark of PDF/UA-1: {metadata}");
        let archive = metadata.contains("<pdfaid:part>2<") && metadata.contains("<pdfaid:conformance>A<");
        assert_eq!(archive, print.archive, "{metadata}");
    }
    if let Some(objects) = said("qpdf", &["--json", "FILE"], pdf) {
        assert!(objects.contains("\"/Lang\": \"u:en-GB\""), "no language");
        let objects: serde_json::Value = serde_json::from_str(&objects).unwrap();
        let (mut figures, mut captions) = (0, 0);
        each_object(&objects, &mut |object| {
            captions += usize::from(object.get("/S").is_some_and(|kind| kind == "/Caption"));
            if object.get("/S").is_some_and(|kind| kind == "/Figure") {
                figures += 1;
                let words = object.get("/Alt").and_then(|alt| alt.as_str()).unwrap_or_default();
                // Text begins with the way in which it is written: u: or b:.
                assert!(words.len() > 4, "a picture without words: {object:?}");
            }
        });
        let drawn = paper.blocks.iter().map(figures_of).sum::<usize>();
        assert!(figures >= drawn, "{figures} pictures are marked, {drawn} were asked for");
        let told = paper.blocks.iter().map(captions_of).sum::<usize>();
        assert!(captions >= told, "{captions} captions are marked, {told} were asked for");
    }
}

fn each_object(value: &serde_json::Value, see: &mut impl FnMut(&serde_json::Map<String, serde_json::Value>)) {
    match value {
        serde_json::Value::Object(object) => {
            see(object);
            object.values().for_each(|value| each_object(value, see));
        }
        serde_json::Value::Array(values) => values.iter().for_each(|value| each_object(value, see)),
        _ => {}
    }
}

/// Pictures and drawings that must be told in words.
fn figures_of(block: &Block) -> usize {
    match block {
        Block::Forms { parts, .. } => parts.len(),
        // A photo that is missing leaves a frame with words, and is no figure.
        Block::Photos { shown, .. } => shown.iter().filter(|one| one.photo().is_none()).count(),
        Block::CustomersPage(page) => page.shown.iter().filter(|one| one.photo().is_none()).count(),
        Block::Signature { strokes, .. } => usize::from(!strokes.is_empty()),
        _ => 0,
    }
}

/// Drawings of parts, each with its words below.
fn captions_of(block: &Block) -> usize {
    let shown = match block {
        Block::Photos { shown, .. } => shown,
        Block::CustomersPage(page) => &page.shown,
        _ => return 0,
    };
    shown.iter().filter(|one| one.photo().is_none()).count()
}

/// In the order of reading, as `pdftotext` follows the content.
#[track_caller]
fn headings_come_in_order(paper: &Paper, pdf: &[u8]) {
    let Some(seen) = said("pdftotext", &["-raw", "FILE", "-"], pdf) else { return };
    let seen = squeezed(&seen);
    let mut from = 0;
    for block in &paper.blocks {
        let words = match block {
            Block::Heading { text, .. } => squeezed(text),
            _ => continue,
        };
        let at = seen.get(from..).and_then(|rest| rest.find(&words));
        from += at.unwrap_or_else(|| panic!("“{words}” is not there, or not in its place")) + words.len();
    }
}

#[track_caller]
fn the_plain_text_has_it_all(paper: &Paper) {
    let plain = squeezed(&text(paper)).to_uppercase();
    let has = |words: &str| assert!(plain.contains(&squeezed(words).to_uppercase()), "“{words}” is not in the text");
    for block in &paper.blocks {
        match block {
            Block::Heading { text, .. } | Block::Paragraph(text) | Block::Lead(text) => has(text),
            Block::Caution(text) => text.lines().for_each(has),
            Block::Points(points) => points.iter().for_each(|point| has(point)),
            Block::Facts(facts) => {
                facts.iter().for_each(|(name, value)| [name, value].into_iter().for_each(|t| has(t)))
            }
            Block::Table { rows, .. } => rows.iter().flatten().for_each(|cell| has(cell)),
            Block::CustomersPage(page) => {
                page.facts.iter().for_each(|(_, value)| has(value));
                page.told.iter().flat_map(|row| [&row.told, &row.found]).for_each(|words| has(words));
                page.jobs.iter().flat_map(|job| [&job.title, &job.because, &job.price]).for_each(|words| has(words));
                [&page.advice, &page.not_examined].into_iter().for_each(|words| has(words));
            }
            Block::Photos { shown, .. } => shown.iter().for_each(|one| has(&one.sentence)),
            Block::Plan(plan) => has(&plan.alt),
            Block::Measured { rows, .. } => {
                rows.iter().flat_map(|row| [&row.part, &row.shown, &row.limits]).for_each(|words| has(words));
            }
            Block::Forms { parts, .. } => parts.iter().for_each(|part| has(&part.alt)),
            Block::Blanks(names) => names.iter().for_each(|name| has(name)),
            Block::Signature { name, .. } => has(name),
            Block::BarKey | Block::NewPage | Block::Contents => {}
        }
    }
}

fn pages(pdf: &[u8]) -> Vec<String> {
    let seen = said("pdftotext", &["-layout", "FILE", "-"], pdf).unwrap_or_default();
    let mut pages: Vec<String> = seen.split('\u{c}').map(str::to_owned).collect();
    pages.pop();
    pages
}

const A4: Print = Print { size: PaperSize::A4, archive: false, pictures: Resolution::Mail };
const LETTER: Print = Print { size: PaperSize::Letter, ..A4 };
const ARCHIVE: Print = Print { archive: true, ..A4 };

#[test]
fn the_demo_short_and_full_to_mail_and_for_the_archive() {
    let (job, photos) = demo(false);
    let job = signed(job);
    for (print, other) in [(A4, LETTER), (ARCHIVE, ARCHIVE)] {
        let short = check(other, &report(&job, Extent::Short), &photos);
        let full = check(print, &report(&job, Extent::Full), &photos);
        let (short, full) = (pages(&short), pages(&full));
        for (pages, most) in [(short, 4), (full, 10)].iter().filter(|(pages, _)| !pages.is_empty()) {
            assert!(pages.len() <= *most, "{} pages, {most} at most", pages.len());
            // The first page alone is what the customer decides by.
            for words in [
                "Ilse Brandvold, signed on the screen",
                "Alder Creek Engine Works",
                "worth rebuilding",
                "What you told us, what we found",
                "How it happened",
                "Proposal 1: what to decide",
                "made on 12 March 2026, valid until 11 April 2026",
                "Not examined",
                "Agreed on 13 March 2026",
                "All jobs",
                "With tax, EUR",
            ] {
                assert!(
                    squeezed(&pages[0]).contains(&squeezed(words)),
                    "“{words}” is not on the first page: {}",
                    pages[0]
                );
            }
        }
    }
}

#[test]
fn a_hundred_and_twenty_photos_can_be_mailed_and_are_large_where_asked() {
    let photos: Photos = (0..120).map(|nth| (photo_id(nth), metal(nth, (1280, 960)))).collect();
    let job = vee8(120, &TEXTS);
    let paper = report(&job, Extent::Full);
    let small = check(A4, &paper, &photos);
    assert_eq!(small.windows(9).filter(|bytes| bytes == b"DCTDecode").count(), 120, "every photo is in it");
    let full = Print { pictures: Resolution::Full, ..A4 };
    let large = pdf(&paper, full, &|id| photos.get(id).cloned(), &UnderWay::default()).unwrap();
    assert!(large.len() > 2 * small.len(), "{} and {} bytes", large.len(), small.len());
    check(LETTER, &report(&job, Extent::Short), &photos);
}

#[test]
fn few_photos_and_none() {
    for count in [0, 1] {
        let photos: Photos = (0..count).map(|nth| (photo_id(nth), metal(nth, (600, 800)))).collect();
        for extent in [Extent::Short, Extent::Full] {
            check(A4, &report(&vee8(count, &TEXTS), extent), &photos);
        }
    }
}

#[test]
fn jobs_that_have_hardly_begun() {
    let arranged = Job { arrangement: Some(Arrangement::inline(1)), ..Job::default() };
    for job in [Job::default(), arranged] {
        for (print, extent) in [(A4, Extent::Full), (LETTER, Extent::Short)] {
            check(print, &report(&job, extent), &Photos::new());
        }
    }
    check(A4, &evidence(&Job::default()), &Photos::new());
}

#[test]
fn the_largest_engine_with_names_that_never_end() {
    let endless = "Schwungradzahnkranzbefestigungsschraubensicherungsblech ".repeat(12);
    let unbroken = "x".repeat(400);
    let texts = [
        (TextField::Customer, endless.as_str()),
        (TextField::Machine, unbroken.as_str()),
        (TextField::EngineNumber, unbroken.as_str()),
        (TextField::Complaint, endless.as_str()),
        (TextField::Remarks, unbroken.as_str()),
    ];
    check(A4, &report(&vee8(3, &texts), Extent::Full), &Photos::new());
    let arranged = Job { arrangement: Some(Arrangement::vee(16)), ..Job::default() };
    let pdf = check(LETTER, &report(&arranged, Extent::Full), &Photos::new());
    assert!(pages(&pdf).len() <= 1, "nobody has looked at it");
}

#[test]
fn five_hundred_findings() {
    check(A4, &report(&worn_everywhere(), Extent::Full), &Photos::new());
}

/// How long a report is at most: what a customer reads is four sheets, what they may look up a few more.
#[test]
fn no_report_is_longer_than_it_has_to_be() {
    for (name, short, full) in [("untouched", 1, 1), ("vee-8-sound", 2, 5), ("everything-destroyed", 4, 16)] {
        let job = whole(name);
        for (extent, most) in [(Extent::Short, short), (Extent::Full, full)] {
            for print in [A4, LETTER] {
                let sheets = pages(&check(print, &report(&job, extent), &Photos::new())).len();
                assert!(sheets <= most, "{name}: {sheets} sheets of {:?}, {most} at most", print.size);
            }
        }
    }
    for job in [vee8(120, &TEXTS), worn_everywhere(), vee8(0, &SCRIPTS)] {
        for print in [A4, LETTER] {
            let sheets = pages(&check(print, &report(&job, Extent::Short), &Photos::new())).len();
            assert!(sheets <= 4, "{sheets} sheets of {:?}", print.size);
        }
    }
}

/// The names as they should come out, and where a system without fonts for them says so.
#[test]
fn names_in_other_scripts() {
    let paper = report(&vee8(1, &SCRIPTS), Extent::Full);
    let pdf = check(A4, &paper, &Photos::new());
    let Some(seen) = said("pdftotext", &["FILE", "-"], &pdf) else { return };
    if seen.contains("could not be printed") {
        eprintln!("skipped: this system has no fonts for Arabic, Chinese or Japanese (scripts/setup tests)");
        return;
    }
    for words in ["轮式装载机", "номер 88203", "きかい"] {
        assert!(seen.contains(words), "“{words}” is not in the text");
    }
    // Read from right to left, or as an extractor gives it back: the letters are all there.
    let letters = |text: &str, of: std::ops::RangeInclusive<char>| text.chars().filter(|c| of.contains(c)).count();
    assert!(letters(&seen, '\u{5d0}'..='\u{5ea}') >= 14, "Hebrew is missing: {seen}");
    assert!(letters(&seen, '\u{600}'..='\u{6ff}') >= 8, "Arabic is missing: {seen}");
}

/// Where each word stands tells the order in which it is read on paper.
#[test]
fn a_right_to_left_name_keeps_its_own_figures_and_no_others() {
    let paper = Paper {
        title: "T".into(),
        subtitle: String::new(),
        subject: String::new(),
        reader: Reader::Customer(String::new()),
        date: jobs::DATE,
        blocks: vec![
            Block::Paragraph("Signed by שרה, 12 March".into()),
            Block::Facts(vec![("Name".into(), "שרה 34".into())]),
        ],
    };
    let pdf = check(A4, &paper, &Photos::new());
    let Some(layout) = said("pdftotext", &["-bbox", "FILE", "-"], &pdf) else { return };
    let x = |word: &str| -> Vec<f64> {
        let lines = layout.lines().filter(|line| line.contains("<word ") && line.contains(word));
        lines.map(|line| line.split("xMin=\"").nth(1).unwrap().split('"').next().unwrap().parse().unwrap()).collect()
    };
    // Some extractors turn the letters of a word round.
    let names: Vec<f64> = x("שרה").into_iter().chain(x("הרש")).collect();
    assert_eq!(names.len(), 2, "{layout}");
    assert!(names[0] < x("12")[0], "the sentence goes on to the right of the name: {layout}");
    assert!(x("34")[0] < names[1], "within a name that is written so, a figure follows on the left: {layout}");
}

#[test]
fn letters_that_no_font_has_are_told() {
    let texts = [(TextField::Customer, "A \u{e123} B")];
    for print in [A4, ARCHIVE] {
        let pdf = check(print, &report(&vee8(0, &texts), Extent::Short), &Photos::new());
        let Some(seen) = said("pdftotext", &["FILE", "-"], &pdf) else { return };
        assert!(seen.contains("could not be printed") && seen.contains("U+E123"), "{seen}");
        assert!(squeezed(&seen).contains("A\u{fffd}B"), "{seen}");
    }
}
