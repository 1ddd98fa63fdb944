//! Inside, outside, or too close to call.

use serde::{Deserialize, Serialize};

use super::Length;

/// Whether a reading conforms to a limit, given how far the reading can be trusted (the word of ISO 14253-1, from memory).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Conformity {
    /// Inside the limits by at least the uncertainty.
    Within,
    /// Too near a limit for the instrument: measure again, or with a better one.
    TooClose,
    /// Outside the limits by at least the uncertainty.
    Outside,
}

/// A limit and whether a part that just reaches it passes. Manuals say either "0.2 max" or "replace at 0.25 or more".
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Bound {
    /// The limit.
    pub at: Length,
    /// Whether a part exactly at the limit passes.
    pub passes: bool,
}

impl Bound {
    /// A limit that passes when just reached.
    pub const fn including(at: Length) -> Self {
        Self { at, passes: true }
    }
}

/// The range that is right; an open end sets no limit.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Bounds {
    /// Not below this.
    pub least: Option<Bound>,
    /// Not above this.
    pub most: Option<Bound>,
}

impl Conformity {
    /// Every one.
    pub const ALL: [Self; 3] = [Self::Within, Self::TooClose, Self::Outside];

    /// Of a value, or of all values from `low` to `high`, with the uncertainty of each.
    ///
    /// Conformity is proven only inside the limits reduced by the uncertainty, failure only outside the limits enlarged
    /// by it; between lies no proof (the decision rule of ISO 14253-1, from memory). With no uncertainty the answer is
    /// never "too close".
    pub fn of(low: Length, high: Length, uncertainty: Length, bounds: &Bounds) -> Self {
        let below = bounds.least.map(|bound| one_sided(-low, uncertainty, Bound { at: -bound.at, ..bound }));
        let above = bounds.most.map(|bound| one_sided(high, uncertainty, bound));
        below.into_iter().chain(above).max().unwrap_or(Self::Within)
    }

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Within => "within",
            Self::TooClose => "too close to call",
            Self::Outside => "outside",
        }
    }

    /// Of a clearance to expect, in words: what it says about the parts that are still to come.
    pub fn of_what_comes(self) -> &'static str {
        match self {
            Self::Within => "right in any case",
            Self::TooClose => "depends: measure the new parts",
            Self::Outside => "wrong in any case",
        }
    }
}

/// Against an upper limit.
fn one_sided(value: Length, uncertainty: Length, bound: Bound) -> Conformity {
    let passes = if bound.passes { value <= bound.at } else { value < bound.at };
    if passes && value + uncertainty <= bound.at {
        return Conformity::Within;
    }
    if !passes && value - uncertainty >= bound.at { Conformity::Outside } else { Conformity::TooClose }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[track_caller]
    fn at_most(value: i64, uncertainty: i64, limit: i64, expected: Conformity) {
        let bounds = Bounds { most: Some(Bound::including(Length::from_nanometres(limit))), ..Bounds::default() };
        let value = Length::from_nanometres(value);
        assert_eq!(Conformity::of(value, value, Length::from_nanometres(uncertainty), &bounds), expected);
    }

    // Limit 0.0010 in with U 0.0002 in: constructed after the rule of ISO 14253-1, from memory.
    #[test]
    fn three_values() {
        at_most(7, 2, 10, Conformity::Within);
        at_most(8, 2, 10, Conformity::Within);
        at_most(9, 2, 10, Conformity::TooClose);
        at_most(11, 2, 10, Conformity::TooClose);
        at_most(12, 2, 10, Conformity::Outside);
        at_most(13, 2, 10, Conformity::Outside);
    }

    #[test]
    fn without_uncertainty_the_limit_itself_passes_unless_it_is_said_to_fail() {
        at_most(10, 0, 10, Conformity::Within);
        at_most(11, 0, 10, Conformity::Outside);
        let fails =
            Bounds { most: Some(Bound { at: Length::from_nanometres(10), passes: false }), ..Bounds::default() };
        let of = |value| {
            Conformity::of(Length::from_nanometres(value), Length::from_nanometres(value), Length::default(), &fails)
        };
        assert_eq!((of(9), of(10)), (Conformity::Within, Conformity::Outside));
    }

    proptest! {
        #[test]
        fn no_uncertainty_leaves_two_values(value in -50i64..50, least in -50i64..50, width in 0i64..50, passes: bool) {
            let bound = |at| Some(Bound { at: Length::from_nanometres(at), passes });
            let bounds = Bounds { least: bound(least), most: bound(least + width) };
            let value = Length::from_nanometres(value);
            prop_assert_ne!(Conformity::of(value, value, Length::default(), &bounds), Conformity::TooClose);
        }

        #[test]
        fn more_uncertainty_never_proves_more(value in -50i64..50, limit in -50i64..50, u in 0i64..50, more in 0i64..50) {
            let bounds = Bounds { most: Some(Bound::including(Length::from_nanometres(limit))), ..Bounds::default() };
            let value = Length::from_nanometres(value);
            let of = |u| Conformity::of(value, value, Length::from_nanometres(u), &bounds);
            let (before, after) = (of(u), of(u + more));
            prop_assert!(after == before || after == Conformity::TooClose);
        }
    }
}
