//! What is judged, by what, and the figure that comes of it.

use serde::Serialize;

use super::standing::{Readings, Sizes, Value};
use crate::engine::{Part, PartKind};
use crate::measure::{
    Bound, Bounds, Conformity, Length, LengthUnit, Phase, Quantity, Station, in_unit, limits_in_unit, range,
};
use crate::sheet::{Limits, Proportions, SizeGroup};

/// A figure that follows from readings.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Figure {
    /// What.
    pub quantity: Quantity,
    /// In words: "ring gap, top ring".
    pub name: String,
    /// The station, where each station has its own figure.
    pub station: Option<Station>,
    /// When in the rebuild.
    pub phase: Phase,
    /// The smallest value, in nanometres.
    pub low: Length,
    /// The largest value, in nanometres; the same as the smallest for a single value.
    pub high: Length,
    /// The value as shown, rounded once.
    pub shown: String,
    /// Where the deciding value was read; may be empty.
    pub at: String,
    /// The expanded uncertainty, in nanometres; zero if no instrument was named.
    pub uncertainty: Length,
    /// What it says about the limits; none if there is no limit, or if something must be known first.
    pub verdict: Option<Conformity>,
    /// The limits in words: "0.0010 to 0.0040 in"; empty if there are none.
    pub limits: String,
    /// The least and the most that is allowed, in nanometres, to be drawn; an open end sets no limit.
    pub allowed: (Option<Length>, Option<Length>),
    /// The range of a new part at the size of this phase, in nanometres, as far as the sheet gives it.
    pub new: (Option<Length>, Option<Length>),
    /// Why, in a sentence.
    pub because: String,
    /// Who sets the limits; empty if nobody does.
    pub source: String,
    /// The limits are a general rule's, for want of the manual's.
    pub general: bool,
}

impl Figure {
    /// What stands for a verdict where there is a limit and something must be known first.
    pub const OPEN: &'static str = "open";

    /// Whether there is a limit and yet no verdict: something must be known first, as the reason says.
    pub fn is_open(&self) -> bool {
        self.verdict.is_none() && !self.limits.is_empty()
    }

    /// Whether it was beyond a limit as it was found.
    pub fn is_found_outside(&self) -> bool {
        self.phase == Phase::Found && self.verdict == Some(Conformity::Outside)
    }

    /// What it says about its limits, in words: [`Figure::OPEN`] where something must be known first, empty where
    /// there are none.
    pub fn verdict_words(&self) -> &'static str {
        match self.verdict {
            Some(verdict) => verdict.words(),
            None if self.is_open() => Self::OPEN,
            None => "",
        }
    }
}

/// Everything that is needed to conclude.
#[derive(Debug, Clone, Copy)]
pub struct Bench<'a> {
    /// The readings that stand.
    pub readings: &'a Readings<'a>,
    /// When in the rebuild.
    pub phase: Phase,
    /// To which sizes the groups have been brought in this phase.
    pub sizes: &'a Sizes,
}

impl Bench<'_> {
    /// Makes a figure of a value: finds the limits and judges.
    pub(super) fn judge(
        self,
        part: Part,
        quantity: Quantity,
        name: &str,
        station: Option<Station>,
        value: Value,
        proportions: Proportions,
    ) -> Figure {
        let limits = self.readings.job.sheet.limits(part, quantity, name, station, proportions);
        let limits = limits.map(|limits| self.resized(part, quantity, limits));
        self.judge_by(part, quantity, name, station, value, limits)
    }

    /// Makes a figure of a value and the limits that hold for it.
    pub(super) fn judge_by(
        self,
        part: Part,
        quantity: Quantity,
        name: &str,
        station: Option<Station>,
        value: Value,
        limits: Option<Limits>,
    ) -> Figure {
        let unit = self.readings.unit();
        let guard = i64::from(self.readings.job.sheet.head.guard_percent);
        let uncertainty = value.uncertainty.times(guard, 100);
        let terms = self.readings.engine.terms();
        let words = if quantity == Quantity::Other { name.trim().into() } else { quantity.words(terms) };
        let bounds = limits.as_ref().map(|limits| limits.bounds).filter(|bounds| *bounds != Bounds::default());
        let verdict = bounds.map(|bounds| Conformity::of(value.low, value.high, uncertainty, &bounds));
        let low_decides = bounds.is_some_and(|bounds| {
            let below = Bounds { least: bounds.least, most: None };
            bounds.most.is_none()
                || (bounds.least.is_some()
                    && Conformity::of(value.low, value.high, uncertainty, &below)
                        == verdict.unwrap_or(Conformity::Within)
                    && verdict != Some(Conformity::Within))
        });
        let general = limits.as_ref().is_some_and(|limits| limits.general);
        let limits_text = bounds.map_or_else(String::new, |bounds| limits_in_unit(&bounds, unit));
        let shown = range(value.low, value.high, value.step, unit);
        Figure {
            quantity,
            name: station.map_or_else(|| words.to_string(), |station| format!("{words}, {}", station.label())),
            station,
            phase: self.phase,
            low: value.low,
            high: value.high,
            at: if low_decides { value.low_at.label() } else { value.high_at.label() },
            uncertainty,
            verdict,
            because: because(
                &shown,
                uncertainty,
                unit,
                verdict,
                &limits_text,
                general,
                &part.kind.row().short.said(terms),
            ),
            shown,
            limits: limits_text,
            allowed: bounds.map_or((None, None), |Bounds { least, most }| (least.map(|b| b.at), most.map(|b| b.at))),
            new: limits.as_ref().map_or((None, None), |limits| limits.new),
            source: limits.as_ref().map_or_else(String::new, |limits| limits.source.clone()),
            general,
        }
    }

    /// Limits of a diameter, moved to the size that the group has been brought to.
    pub(super) fn resized(self, part: Part, quantity: Quantity, limits: Limits) -> Limits {
        if quantity != Quantity::Diameter && quantity != Quantity::Wall {
            return limits;
        }
        let Some(Resized { range, step }) = self.size_of(part) else { return limits };
        // What a size may wear below or above its own new range, standard may too.
        let moved = |bound: Option<Bound>, standard: Option<Length>, here: Option<Length>| {
            bound.map(|bound| {
                let at = match (standard, here) {
                    (Some(standard), Some(here)) => here - (standard - bound.at),
                    _ => bound.at + step,
                };
                Bound { at, ..bound }
            })
        };
        let (low, high) = range.map_or((None, None), |(low, high)| (Some(low), Some(high)));
        Limits {
            bounds: Bounds {
                least: moved(limits.bounds.least, limits.new.0, low),
                most: moved(limits.bounds.most, limits.new.1, high),
            },
            new: (low.or(limits.new.0.map(|min| min + step)), high.or(limits.new.1.map(|max| max + step))),
            ..limits
        }
    }

    /// The size to which a part has been brought, if not standard.
    fn size_of(self, part: Part) -> Option<Resized> {
        let sheet = &self.readings.job.sheet;
        let is_moved = |size: &Length| *size != Length::default();
        if let PartKind::Tappet | PartKind::TappetBore = part.kind {
            let size = self.sizes.tappets.get(&part.at).copied().filter(is_moved)?;
            let row = sheet.tappet_oversizes().into_iter().find(|row| row.size == size);
            let range = row.and_then(|row| if part.kind == PartKind::Tappet { row.mate } else { Some(row.diameter) });
            return Some(Resized { range, step: size });
        }
        let group = SizeGroup::ALL.into_iter().find(|group| [group.kind(), group.mate()].contains(&part.kind))?;
        let size = self.sizes.groups.get(&group).copied().filter(is_moved)?;
        let row = sheet.row(group, size);
        Some(if part.kind == group.mate() {
            Resized { range: row.and_then(|row| row.mate), step: group.mate_step(size) }
        } else {
            Resized { range: row.map(|row| row.diameter), step: group.step(size) }
        })
    }
}

/// A part brought to a size: its new range there, as far as known, and how far that is from standard.
struct Resized {
    range: Option<(Length, Length)>,
    step: Length,
}

fn because(
    shown: &str,
    uncertainty: Length,
    unit: LengthUnit,
    verdict: Option<Conformity>,
    limits: &str,
    general: bool,
    part: &str,
) -> String {
    // As fine as sizes are given, never less than it is.
    let step = unit.usual_step().nanometres().max(1);
    let nanometres = uncertainty.nanometres();
    let doubt = in_unit(Length::from_nanometres(nanometres + (step - nanometres.rem_euclid(step)) % step), unit);
    let trust = if uncertainty == Length::default() { String::new() } else { format!(" ± {doubt}") };
    let allowed = |rule: &str| format!("allowed is {limits}{rule}");
    let rule = if general { " by general rule" } else { "" };
    match verdict {
        None => format!("{shown}{trust}; no limit is entered for this {part}."),
        Some(Conformity::Within) => format!("{shown}{trust} is right: {}.", allowed(rule)),
        Some(Conformity::Outside) => format!("{shown}{trust} is out: {}.", allowed(rule)),
        Some(Conformity::TooClose) => format!(
            "{shown}{trust} is too close to call: {}. Measure again, or with an instrument that is surer than {}.",
            allowed(rule),
            doubt
        ),
    }
}
