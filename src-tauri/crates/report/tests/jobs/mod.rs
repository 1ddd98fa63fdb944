//! Whole jobs to make reports of: the demo's story with its drawn photos, and a V8 that is worn everywhere.

#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "clippy.toml lets tests do so, but not the functions that they share"
)]
#![allow(dead_code, reason = "the tests and the example each use some of it")]

use std::collections::{BTreeMap, BTreeSet};
use std::io::Cursor;

use image::{ImageFormat, Rgb, RgbImage};
use wearbook_core::assess::assess;
use wearbook_core::date::Date;
use wearbook_core::document::{Desk, Extent, Paper, Shop, condition_report, evidence_sheet, page_to_propose};
use wearbook_core::engine::{Arrangement, Engine};
use wearbook_core::job::{
    Change, DeviceId, Edit, EditId, Job, OnJob, OnMoney, OnPart, PartRecord, PhotoId, RecordedChange, TagRecord,
    TextField,
};
use wearbook_core::wear::{Grade, Tag, Zone};
use wearbook_demo::picture;
use wearbook_demo::scenario::{Step, steps};

pub(crate) type Photos = BTreeMap<PhotoId, Vec<u8>>;

pub(crate) const DATE: Date = Date::new(2026, 3, 14).unwrap();

/// A paper of this job from our shop.
pub(crate) fn written<T>(job: &Job, paper: impl FnOnce(&Desk<'_>) -> T) -> T {
    let shop = Shop {
        name: "Alder Creek Engine Works".into(),
        address: "3 Mill Lane\nAlder Creek".into(),
        phone: "0100 200".into(),
        conditions: "Two years on our work, as long as oil is changed as the manual says.".into(),
    };
    paper(&Desk { job, assessment: &assess(job), date: DATE, shop: &shop })
}

pub(crate) fn report(job: &Job, extent: Extent) -> Paper {
    written(job, |desk| condition_report(desk, extent))
}

pub(crate) fn evidence(job: &Job) -> Paper {
    written(job, evidence_sheet)
}

pub(crate) fn photo_id(nth: usize) -> PhotoId {
    PhotoId::try_from(format!("{nth:064x}")).unwrap()
}

/// The demo's story; `photos` are drawn by the demo, or grey where only the words matter.
pub(crate) fn demo(drawn: bool) -> (Job, Photos) {
    let mut log: Vec<Edit> = Vec::new();
    let mut photos = Photos::new();
    for step in steps() {
        let change = match step {
            Step::Record(change) => change,
            Step::DrawOver { part, markup } => {
                let photo = Job::fold(&log).parts[&part].photos[0].clone();
                Change::OnPart(OnPart::MarkUp { part, photo, markup: Box::new(markup) })
            }
            Step::UndoLast => Change::OnJob(OnJob::Undo { edit: log.last().unwrap().id }),
            Step::Photograph { part, subject, seed } => {
                let photo = photo_id(photos.len());
                let bytes = if drawn {
                    picture::jpeg(&picture::draw(&subject, seed)).unwrap()
                } else {
                    metal(photos.len(), (320, 240))
                };
                photos.insert(photo.clone(), bytes);
                Change::OnPart(OnPart::AddPhoto { part, photo, sharpness: None })
            }
        };
        let id = EditId::next(log.last().map(|edit| edit.id), 1_000, DeviceId(1));
        log.push(Edit { id, change: RecordedChange::Known(change) });
    }
    (Job::fold(&log), photos)
}

/// The same with more for the machine shop: bearing seats to be line-bored, a rod to be resized, cracks to be
/// looked for.
pub(crate) fn more_machining(mut job: Job) -> Job {
    for (nth, (part, tag)) in
        [("housing-bore.2", "seizure"), ("rod.2", "bright-back"), ("timing-drive", "cracks")].into_iter().enumerate()
    {
        let change = serde_json::json!({ "do": "tag", "part": part, "tag": tag, "grade": 3 });
        job.apply(EditId::next(None, 1_900 + nth as u64, DeviceId(2)), &serde_json::from_value(change).unwrap());
    }
    job
}

/// The same after the customer was shown a proposal.
pub(crate) fn proposed(mut job: Job) -> Job {
    let assessment = assess(&job);
    let page = Some(Box::new(page_to_propose(&job, &assessment)));
    let (quote, made) = (Box::new(assessment.quote), Date::new(2026, 3, 12));
    job.apply(EditId::next(None, 2_001, DeviceId(2)), &Change::OnMoney(OnMoney::Propose { quote, made, page }));
    job
}

/// The same after the customer signed it.
pub(crate) fn signed(job: Job) -> Job {
    let mut job = proposed(job);
    let quote = job.proposals[0].quote.clone();
    let at = |nth: u64| EditId::next(None, 2_000 + nth, DeviceId(2));
    let jobs = quote.jobs.iter().enumerate().map(|(nth, asked)| {
        let answer = ["yes", "later", "yes", "no"][nth % 4];
        serde_json::json!({ "of": asked.of, "answer": answer })
    });
    let stroke: Vec<(u16, u16)> = (0..90u16)
        .map(|t| (600 + t * 95, 5_000 + (f64::from(t) / 4.0 + 2.0).sin().abs().mul_add(2_600.0, 0.0) as u16))
        .collect();
    let change = serde_json::json!({ "do": "answer-proposal", "answer": {
        "proposal": at(1), "jobs": jobs.collect::<Vec<_>>(), "name": "Ilse Brandvold", "way": "signed on the screen",
        "said": "2026-03-13",
        "signature": [stroke],
    } });
    job.apply(at(2), &serde_json::from_value(change).unwrap());
    job
}

/// A V8 with some damage on most of its parts, this many photos, and names as long as the demo's.
pub(crate) fn vee8(photo_count: usize, texts: &[(TextField, &str)]) -> Job {
    let arrangement = Arrangement::vee(8);
    let engine = Engine::new(arrangement.clone()).unwrap();
    let mut job = Job { arrangement: Some(arrangement), ..Job::default() };
    for (nth, part) in engine.parts().iter().enumerate() {
        if nth % 11 == 10 {
            continue;
        }
        let tags = part.kind.row().tags;
        let zones = part.kind.row().zones.zones();
        let tagged = tags.iter().skip(nth % 3).take(1 + nth % 3).filter(|tag| **tag != Tag::LooksEven);
        let record = |(k, tag): (usize, &Tag)| {
            let marked: BTreeSet<Zone> = zones.iter().copied().skip((nth + k) % 4).take(1 + nth % 3).collect();
            (
                *tag,
                TagRecord {
                    grade: [Grade::ONE, Grade::TWO, Grade::THREE, Grade::FOUR][(nth / 2 + k) % 4],
                    zones: marked,
                },
            )
        };
        let tags: BTreeMap<Tag, TagRecord> =
            if nth % 5 == 4 { BTreeMap::new() } else { tagged.enumerate().map(record).collect() };
        let note =
            if nth % 7 == 3 { "Looks as if the filter had been by-passed for a while.".into() } else { String::new() };
        job.parts.insert(*part, PartRecord { clean: tags.is_empty(), tags, note, ..PartRecord::default() });
    }
    let parts: Vec<_> = job.parts.keys().copied().collect();
    for nth in 0..photo_count {
        let part = parts[nth * 9 % parts.len()];
        job.parts.get_mut(&part).unwrap().photos.push(photo_id(nth));
    }
    job.texts = texts.iter().map(|(field, text)| (*field, (*text).to_owned())).collect();
    job
}

pub(crate) const TEXTS: [(TextField, &str); 5] = [
    (TextField::Customer, "Harrow & Daughters"),
    (TextField::Machine, "Wheel loader, yard no. 14"),
    (TextField::EngineNumber, "stamped 88203"),
    (TextField::Use, "6 412 hours"),
    (TextField::Complaint, "Oil pressure falls when hot; knock under load."),
];

/// Names in scripts that the embedded fonts lack, or that run from right to left.
pub(crate) const SCRIPTS: [(TextField, &str); 6] = [
    (TextField::Customer, "شركة النور 12"),
    (TextField::Contact, "שרה לוי, רחוב 5"),
    (TextField::Machine, "轮式装载机 14"),
    (TextField::EngineNumber, "номер 88203"),
    (TextField::Use, "6412 時間 きかい"),
    (TextField::Complaint, "Knock, says שרה, 12 March"),
];

/// About as hard to write small as a photo of metal: a gradient with grain and lines.
pub(crate) fn metal(nth: usize, (width, height): (u32, u32)) -> Vec<u8> {
    let nth = u32::try_from(nth).unwrap();
    let mut grain = nth.wrapping_mul(2_654_435_761) | 1;
    let picture = RgbImage::from_fn(width, height, |x, y| {
        grain ^= grain << 13;
        grain ^= grain >> 17;
        grain ^= grain << 5;
        let scratch = if (y + x / 9 + 13 * nth) % 37 < 2 { 40 } else { 0 };
        let light = 70 + (x + 2 * y + 37 * nth) % 2900 / 20 + grain % 22 - scratch;
        let light = u8::try_from(light.min(255)).unwrap();
        Rgb([light, light, light.saturating_sub(8)])
    });
    let mut file = Cursor::new(Vec::new());
    picture.write_to(&mut file, ImageFormat::Jpeg).unwrap();
    file.into_inner()
}

/// A V16 with more than 500 findings.
pub(crate) fn worn_everywhere() -> Job {
    let mut job = vee8(0, &TEXTS);
    let engine = Engine::new(Arrangement::vee(16)).unwrap();
    job.arrangement = Some(Arrangement::vee(16));
    let worn = |(nth, part): (usize, &wearbook_core::engine::Part)| {
        let tags = part.kind.row().tags.iter().filter(|tag| tag.is_damage()).take(3);
        let grade = Grade::ALL[nth % 4];
        let tags = tags.map(|tag| (*tag, TagRecord { grade, zones: BTreeSet::new() }));
        (*part, PartRecord { tags: tags.collect(), ..PartRecord::default() })
    };
    job.parts = engine.parts().iter().enumerate().map(worn).collect();
    let findings: usize = job.parts.values().map(|record| record.tags.len()).sum();
    assert!(findings >= 500, "{findings}");
    job
}
