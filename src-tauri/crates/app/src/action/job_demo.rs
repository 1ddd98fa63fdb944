//! A job to look around in: an invented engine's story, with the pictures drawn here.

use rayon::prelude::*;
use wearbook_core::engine::Part;
use wearbook_core::job::{Change, EditId, Log, OnJob, OnPart, PhotoId};
use wearbook_core::under_way::UnderWay;
use wearbook_demo::picture::{Subject, draw, jpeg};
use wearbook_demo::scenario::{Step, steps};
use wearbook_photo::Developed;
use wearbook_store::{NewPhoto, StoreError, photo_id};

use super::edits_append::entered;
use crate::picture::facts;
use crate::{Error, Wearbook};

/// How it is begun.
pub type Arguments = super::Awaited;
/// The job.
pub type Reply = super::Added;

/// Draws the pictures and tells the story as if a person had, step by step: all of it or nothing.
///
/// # Errors
/// `stopped`; what the store says.
pub fn act(book: &Wearbook, Arguments { way }: Arguments) -> Result<Reply, Error> {
    let way = book.ways.begin(way);
    let steps = steps();
    let pictures = pictures(&steps, &way)?;
    let now = book.clock.now_millis();
    let device = book.store.read::<_, Error>(|ledger| Ok(ledger.device()?))?;
    let mut drawn = pictures.iter();
    let mut log = Log::default();
    for step in &steps {
        let change = match step {
            Step::Record(change) => change.clone(),
            Step::UndoLast => Change::OnJob(OnJob::Undo { edit: last(&log)? }),
            Step::DrawOver { part, markup } => {
                let photo = first_photo(&log, *part)?;
                Change::OnPart(OnPart::MarkUp { part: *part, photo, markup: Box::new(markup.clone()) })
            }
            Step::Photograph { part, .. } => {
                let picture = drawn.next().ok_or_else(broken)?;
                let photo = photo_id(&picture.original);
                let sharpness = Some(picture.developed.sharpness);
                Change::OnPart(OnPart::AddPhoto { part: *part, photo, sharpness })
            }
        };
        entered(&mut log, vec![change], now, device)?;
    }
    let job = book.store.write::<_, Error>(|ledger| {
        let job = ledger.create_job(now)?;
        for picture in &pictures {
            ledger.add_photo(job, picture.as_new()?, now)?;
        }
        ledger.entered_at(now)?;
        ledger.append(job, log.edits())?;
        Ok(job)
    })?;
    Ok(Reply { job })
}

/// A picture that was drawn, and what is shown of it.
struct Drawn {
    original: Vec<u8>,
    developed: Developed,
}

impl Drawn {
    fn of(subject: &Subject, seed: u64) -> Result<Self, Error> {
        let original = jpeg(&draw(subject, seed)).map_err(|error| Error::new("demo", error.to_string()))?;
        let developed = wearbook_photo::develop(&original)?;
        Ok(Self { original, developed })
    }

    fn as_new(&self) -> Result<NewPhoto<'_>, Error> {
        let Developed { facts: seen, screen, thumb, .. } = &self.developed;
        Ok(NewPhoto { original: &self.original, facts: facts(seen)?, screen, thumb })
    }
}

/// Each takes a second or two to draw, so they are drawn side by side.
fn pictures(steps: &[Step], way: &UnderWay) -> Result<Vec<Drawn>, Error> {
    let photographed = |step: &Step| match step {
        Step::Photograph { subject, seed, .. } => Some((subject.clone(), *seed)),
        _ => None,
    };
    let asked: Vec<(Subject, u64)> = steps.iter().filter_map(photographed).collect();
    way.expect(asked.len());
    let drawn = asked.par_iter().map(|(subject, seed)| {
        way.go_on().map_err(StoreError::from)?;
        let drawn = Drawn::of(subject, *seed)?;
        way.step().map_err(StoreError::from)?;
        Ok(drawn)
    });
    drawn.collect()
}

fn last(log: &Log) -> Result<EditId, Error> {
    log.latest().ok_or_else(broken)
}

fn first_photo(log: &Log, part: Part) -> Result<PhotoId, Error> {
    log.job().parts.get(&part).and_then(|record| record.photos.first()).cloned().ok_or_else(broken)
}

fn broken() -> Error {
    Error::new("demo", "The story of the demo does not fit itself: tell whoever gave you the program.")
}
