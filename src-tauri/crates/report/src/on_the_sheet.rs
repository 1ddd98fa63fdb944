//! What was laid out, read off the typesetter's own pages: sizes of letters, and where pictures lie.

use typst::layout::{Frame, FrameItem, Point};
use typst_layout::PagedDocument;
use wearbook_core::document::{
    Extent, Paper, PaperSize, closing_sheet, condition_report, customers_page, goes_back, strip_down_order,
};
use wearbook_core::job::Job;
use wearbook_core::under_way::UnderWay;

use crate::content::Content;
use crate::pdf::laid_out;
use crate::world::Form;

#[path = "../tests/jobs/mod.rs"]
mod jobs;

use jobs::{TEXTS, demo, proposed, signed, vee8, written};

/// Every item with the place of its upper left corner.
fn each(frame: &Frame, at: Point, see: &mut dyn FnMut(Point, &FrameItem)) {
    for (place, item) in frame.items() {
        let at = at + *place;
        match item {
            FrameItem::Group(group) => {
                each(&group.frame, at + Point::new(group.transform.tx, group.transform.ty), see);
            }
            item => see(at, item),
        }
    }
}

fn set(form: Form, size: PaperSize, paper: &Paper) -> PagedDocument {
    laid_out(form, size, &Content::without_pictures(paper), &UnderWay::default()).unwrap()
}

/// The smallest letters of a paper outside drawings, in points.
fn smallest(document: &PagedDocument) -> f64 {
    let mut smallest = f64::INFINITY;
    for page in document.pages() {
        each(&page.frame, Point::zero(), &mut |_, item| {
            if let FrameItem::Text(text) = item {
                smallest = smallest.min(text.size.to_pt());
            }
        });
    }
    smallest
}

fn jobs() -> Vec<Job> {
    let (demo, _) = demo(false);
    vec![demo.clone(), proposed(demo.clone()), signed(demo), vee8(0, &TEXTS)]
}

/// Whatever a customer reads.
fn customers_papers(job: &Job) -> Vec<Paper> {
    let report = |extent| written(job, |desk| condition_report(desk, extent));
    let others = [customers_page, closing_sheet, strip_down_order, goes_back].map(|paper| written(job, paper));
    others.into_iter().chain([report(Extent::Short), report(Extent::Full)]).collect()
}

#[test]
fn a_customer_reads_nothing_smaller_than_nine_points() {
    for paper in jobs().iter().flat_map(customers_papers) {
        let smallest = smallest(&set(Form::Paper, PaperSize::A4, &paper));
        assert!(smallest >= 9.0 - 1e-6, "{}: letters of {smallest} points", paper.title);
    }
}

/// Three pixels to the point: 36 pixels are 12 points.
#[test]
fn the_picture_is_1080_pixels_wide_and_its_letters_are_36_high() {
    for job in jobs() {
        let document = set(Form::Picture, PaperSize::A4, &written(&job, customers_page));
        assert_eq!(document.pages().len(), 1);
        assert!((document.pages()[0].frame.width().to_pt() - 360.0).abs() < 1e-6);
        let smallest = smallest(&document);
        assert!(smallest >= 12.0 - 1e-6, "letters of {smallest} points");
    }
}

#[test]
fn the_file_of_the_picture_is_as_wide() {
    let (job, photos) = demo(false);
    let file = crate::png(&written(&signed(job), customers_page), &|id| photos.get(id).cloned(), &UnderWay::default());
    let picture = image::load_from_memory(&file.unwrap()).unwrap();
    assert_eq!(picture.width(), 1080);
    assert!(picture.height() > 2 * picture.width(), "{} high", picture.height());
}

/// Between the margins of the drafting sheet: 28 mm where it is filed, 18 mm on the other side.
#[test]
fn drawings_and_photos_stay_between_the_margins() {
    for size in [PaperSize::A4, PaperSize::Letter] {
        for paper in jobs().iter().flat_map(customers_papers) {
            let document = set(Form::Paper, size, &paper);
            for page in document.pages() {
                let mm = 72.0 / 25.4;
                let (left, right) = (28.0 * mm, page.frame.width().to_pt() - 18.0 * mm);
                each(&page.frame, Point::zero(), &mut |at, item| {
                    if let FrameItem::Image(_, own, _) = item {
                        let (from, to) = (at.x.to_pt(), (at.x + own.x).to_pt());
                        assert!(
                            from >= left - 0.1 && to <= right + 0.1,
                            "{}, {size:?}: a picture from {from} to {to}, margins at {left} and {right}",
                            paper.title
                        );
                    }
                });
            }
        }
    }
}
