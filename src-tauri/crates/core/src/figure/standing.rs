//! The readings that stand: of several at one place in one phase, the last.

use std::collections::BTreeMap;

use crate::engine::{At, Engine, Part};
use crate::job::{EditId, Job};
use crate::measure::{Grid, Length, LengthUnit, Phase, Quantity, Reading, Spot, Station};
use crate::sheet::SizeGroup;

/// The sizes to which parts have been brought in a phase; standard where nothing is given.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Sizes {
    /// Of groups.
    pub groups: BTreeMap<SizeGroup, Length>,
    /// Of bores of tappets that are reamed, with the tappets that run in them.
    pub tappets: BTreeMap<At, Length>,
}

/// One reading that stands, corrected.
#[derive(Debug, Clone, Copy)]
pub struct Standing<'a> {
    /// The edit that took it.
    pub edit: EditId,
    /// As it was taken.
    pub reading: &'a Reading,
    /// The corrected value at 20 °C.
    pub length: Length,
    /// The expanded uncertainty of the instrument; zero if none is named.
    pub uncertainty: Length,
    /// The step to which it is known: the instrument's resolution or the last digit typed.
    pub step: Length,
}

/// A value from readings, or a range of values that belong together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Value {
    /// The smallest.
    pub low: Length,
    /// The largest; the same for a single value.
    pub high: Length,
    /// The expanded uncertainty of each.
    pub uncertainty: Length,
    /// The step at which it is shown.
    pub step: Length,
    /// Where the smallest was read.
    pub low_at: Spot,
    /// Where the largest was read.
    pub high_at: Spot,
}

impl Value {
    /// A single value.
    pub fn single(length: Length, uncertainty: Length, step: Length, at: Spot) -> Self {
        Self { low: length, high: length, uncertainty, step, low_at: at, high_at: at }
    }
}

/// All readings that stand, by part.
#[derive(Debug)]
pub struct Readings<'a> {
    /// The engine.
    pub engine: &'a Engine,
    /// All that is known.
    pub job: &'a Job,
    by_part: BTreeMap<Part, Vec<Standing<'a>>>,
}

impl<'a> Readings<'a> {
    /// Of a job.
    pub fn new(engine: &'a Engine, job: &'a Job) -> Self {
        let mut by_part: BTreeMap<Part, Vec<Standing<'a>>> = BTreeMap::new();
        for taken in &job.readings {
            let reading = &taken.reading;
            let instrument = reading.instrument.as_ref().and_then(|id| job.instruments.get(id));
            let standing = Standing {
                edit: taken.edit,
                reading,
                length: reading.length(instrument),
                uncertainty: instrument.map_or(Length::default(), |instrument| instrument.uncertainty.length.abs()),
                step: instrument.map_or_else(|| reading.value.step(), |instrument| instrument.resolution.length),
            };
            let of_part = by_part.entry(reading.part).or_default();
            match of_part.iter_mut().find(|earlier| same_place(earlier.reading, reading)) {
                Some(earlier) => *earlier = standing,
                None => of_part.push(standing),
            }
        }
        Self { engine, job, by_part }
    }

    /// Whether nothing at all was measured.
    pub fn is_empty(&self) -> bool {
        self.by_part.is_empty()
    }

    /// All that stand for a part, in the order in which their places were first measured.
    pub fn of(&self, part: Part) -> &[Standing<'a>] {
        self.by_part.get(&part).map_or(&[], Vec::as_slice)
    }

    /// The readings of one quantity of a part in one phase.
    pub fn quantity(&self, part: Part, quantity: Quantity, phase: Phase) -> impl Iterator<Item = &Standing<'a>> {
        self.of(part)
            .iter()
            .filter(move |standing| standing.reading.quantity == quantity && standing.reading.phase == phase)
    }

    /// The latest phase, not after `phase`, in which a quantity of a part was measured.
    pub fn latest(&self, part: Part, quantity: Quantity, phase: Phase) -> Option<Phase> {
        let read = |p: &Phase| *p <= phase && self.quantity(part, quantity, *p).next().is_some();
        Phase::ALL.into_iter().rev().find(read)
    }

    /// The readings of one quantity by place.
    pub fn grid(&self, part: Part, quantity: Quantity, phase: Phase) -> Grid {
        Grid(
            self.quantity(part, quantity, phase)
                .map(|standing| (standing.reading.spot, (standing.length, standing.uncertainty)))
                .collect(),
        )
    }

    /// All readings of one quantity, at one station if given, as a range.
    pub fn value(&self, part: Part, quantity: Quantity, phase: Phase, station: Option<Station>) -> Option<Value> {
        let here: Vec<&Standing> = self
            .quantity(part, quantity, phase)
            .filter(|standing| station.is_none() || standing.reading.spot.station == station)
            .collect();
        let low = here.iter().min_by_key(|standing| standing.length)?;
        let high = here.iter().max_by_key(|standing| standing.length)?;
        Some(Value {
            low: low.length,
            high: high.length,
            uncertainty: here.iter().map(|standing| standing.uncertainty).max()?,
            step: here.iter().map(|standing| standing.step).max()?,
            low_at: low.reading.spot,
            high_at: high.reading.spot,
        })
    }

    /// The coarsest step in which a quantity was read.
    pub fn step(&self, part: Part, quantity: Quantity, phase: Phase) -> Length {
        self.quantity(part, quantity, phase).map(|standing| standing.step).max().unwrap_or_default()
    }

    /// The sizes that the groups had when they were found.
    pub fn found_sizes(&self) -> Sizes {
        let groups = self.job.found_sizes.iter().map(|(group, size)| (*group, size.length)).collect();
        Sizes { groups, ..Sizes::default() }
    }

    /// The unit in which results are shown.
    pub fn unit(&self) -> LengthUnit {
        self.job.sheet.head.unit
    }
}

fn same_place(one: &Reading, other: &Reading) -> bool {
    one.quantity == other.quantity
        && one.phase == other.phase
        && one.spot == other.spot
        && one.name.trim().eq_ignore_ascii_case(other.name.trim())
}
