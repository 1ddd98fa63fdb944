//! One operation, as it follows from a row of the table and what brings it.

use super::row::{Brought, Row, Scene, Stage, by_part};
use crate::engine::{Arrangement, Part, PartKind};
use crate::job::{ItemKey, Job};
use crate::measure::Length;
use crate::money::PriceKey;
use crate::sheet::{Finish, SizeGroup};
use crate::sizing::{Known, ReadBack, own_size};
use crate::words::capitalised;
use crate::work::Hands;

/// One thing done to the parts of one kind.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Operation {
    /// What a tick of it is kept under.
    pub key: ItemKey,
    /// To what is done what: by this it is priced, agreed to and given to one or the other.
    pub of: PriceKey,
    /// The kind of the piece that is carried: the crankshaft with all its journals.
    pub piece: PartKind,
    /// What is done, in words, lower case: "grind all to 0.010 in undersize, 2.4890 to
    /// 2.4900 in", "resize the big end; check for bend and twist".
    pub done: String,
    /// Which parts, in words; empty where all of the kind are meant.
    pub which: String,
    /// The parts to which it is done.
    pub parts: Vec<Part>,
    /// The size that they have afterwards, beyond standard in nanometres; none where it is open or there is none.
    pub size: Option<Length>,
    /// The same in words; empty where there is none.
    pub size_shown: String,
    /// The surface that the manual asks for, in its words; empty where it says nothing.
    pub finish: String,
    /// What brings it, in a sentence.
    pub because: String,
    /// What it waits for, each in a sentence; empty if nothing holds it.
    pub waits_for: Vec<String>,
    /// When its turn comes on its piece.
    pub stage: Stage,
    /// Who does it.
    pub hands: Hands,
    /// What the hand that does it must mind; may be empty.
    pub mind: &'static str,
    /// Where the practice comes from.
    pub source: &'static str,
    /// Whether it settles what is open about its piece.
    pub settles: bool,
    /// The pieces of which it is asked whether they passed; empty where it is no test.
    pub tested: Vec<Part>,
    /// Whether it has come back and all of it was measured and is right: then it is behind.
    pub is_right: bool,
    /// What came back of parts that are brought each to a size of its own; none of others, and where the sheet says none.
    pub back: Option<ReadBack>,
}

impl Operation {
    /// The parts that are charged: those in one piece with them come along.
    pub fn of_kind(&self) -> impl Iterator<Item = &Part> {
        self.parts.iter().filter(|part| part.kind == self.of.kind)
    }

    /// What is done, and to which of the parts: "Resize the big end: Rod 2".
    pub fn told(&self) -> String {
        let done = capitalised(&self.done);
        if self.which.is_empty() { done } else { format!("{done}: {}", self.which) }
    }
}

/// What is carried to have something done to such a part.
pub fn piece_of(kind: PartKind, arrangement: &Arrangement) -> PartKind {
    match kind {
        PartKind::CamBearing if arrangement.is_cam_in_block() => PartKind::Block,
        _ => kind.comes_with(arrangement).unwrap_or(kind),
    }
}

/// Who does it by a person's word for this job, else by the shop's own custom.
fn hands(job: &Job, of: PriceKey) -> Option<Hands> {
    job.hands.get(&of).copied().or_else(|| job.prices.price(of)?.hands)
}

pub(super) fn operation(scene: &Scene<'_>, row: &Row, brought: Brought) -> Operation {
    let of = PriceKey { kind: brought.kind, work: row.work };
    let known = Known { readings: &scene.measured.readings, figures: &scene.measured.figures };
    let back = own_size(&known, of, &brought.parts);
    let surface = SizeGroup::of(of.kind).filter(|_| row.leaves_a_surface());
    Operation {
        finish: surface.and_then(|group| scene.job().sheet.finish_of(group)).map(Finish::words).unwrap_or_default(),
        key: match brought.parts.as_slice() {
            [part] if row.is_by_part => by_part(row.work, *part),
            _ => ItemKey::Operation { kind: of.kind, work: Some(of.work) },
        },
        of,
        piece: piece_of(of.kind, scene.engine.arrangement()),
        done: brought.done.unwrap_or_else(|| (row.done)(of.kind).into()),
        which: brought.which,
        parts: brought.parts,
        size: brought.size.as_ref().map(|(size, _)| *size),
        size_shown: brought.size.map_or_else(String::new, |(_, shown)| shown),
        because: brought.because,
        waits_for: brought.waits_for,
        stage: row.stage,
        hands: hands(scene.job(), of).or(brought.hands).unwrap_or(row.hands),
        mind: row.mind,
        source: row.source,
        settles: brought.settles,
        tested: brought.tested,
        is_right: brought.is_right || back.as_ref().is_some_and(|back| back.confirmed),
        back,
    }
}
