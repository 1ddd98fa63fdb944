//! The form of a round part from its diameters: out-of-round, taper, barrel or hourglass.

use std::collections::BTreeMap;

use super::{Direction, Length, Spot, Station};

/// Diameters by place, with the uncertainty of each.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Grid(pub BTreeMap<Spot, (Length, Length)>);

/// A measure of form: its value, its uncertainty and where it is worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Form {
    /// The value, on the diameter.
    pub value: Length,
    /// Its uncertainty: the root-sum-square of those of the readings it is made of.
    pub uncertainty: Length,
    /// Where: a station for out-of-round, a direction for taper and barrel.
    pub at: Spot,
}

impl Grid {
    /// The smallest diameter, where it is, and its uncertainty.
    pub fn smallest(&self) -> Option<(Spot, Length, Length)> {
        self.0.iter().map(|(spot, (length, u))| (*spot, *length, *u)).min_by_key(|(_, length, _)| *length)
    }

    /// The largest diameter, where it is, and its uncertainty.
    pub fn largest(&self) -> Option<(Spot, Length, Length)> {
        self.0.iter().map(|(spot, (length, u))| (*spot, *length, *u)).max_by_key(|(_, length, _)| *length)
    }

    /// Out-of-round: at each station the difference between its directions; the worst counts (common practice).
    pub fn out_of_round(&self) -> Option<Form> {
        self.worst_difference(|spot| spot.station, |station| Spot::new(station, None))
    }

    /// Taper: in each direction the difference between its stations; the worst counts. On a journal `ends` leaves the
    /// middle to [`Self::barrel`]; in a bore all levels count (NAVEDTRA 14076; cylindricity by two points).
    pub fn taper(&self, ends: bool) -> Option<Form> {
        let without_middle = Self(
            self.0
                .iter()
                .filter(|(spot, _)| !ends || spot.station != Some(Station::Middle))
                .map(|(spot, reading)| (*spot, *reading))
                .collect(),
        );
        without_middle.worst_difference(|spot| spot.direction, |direction| Spot::new(None, direction))
    }

    /// Barrel (above zero) or hourglass (below zero): in each direction the middle less the mean of the ends; the
    /// one farthest from zero counts.
    pub fn barrel(&self) -> Option<Form> {
        let along = |direction: Option<Direction>| {
            let at = |station| self.0.get(&Spot::new(Some(station), direction)).copied();
            let ((front, uf), (middle, um), (rear, ur)) =
                (at(Station::Front)?, at(Station::Middle)?, at(Station::Rear)?);
            Some(Form {
                value: (middle + middle - front - rear).times(1, 2),
                uncertainty: Length::root_sum_square([um, uf.times(1, 2), ur.times(1, 2)]),
                at: Spot::new(None, direction),
            })
        };
        [None, Some(Direction::A), Some(Direction::B)].into_iter().filter_map(along).max_by_key(|form| form.value.abs())
    }

    /// Over groups of spots: greatest less smallest within a group of two or more; the worst group.
    fn worst_difference<K: Ord>(&self, group: impl Fn(&Spot) -> K, at: impl Fn(K) -> Spot) -> Option<Form> {
        let mut groups: BTreeMap<K, Vec<(Length, Length)>> = BTreeMap::new();
        for (spot, reading) in &self.0 {
            groups.entry(group(spot)).or_default().push(*reading);
        }
        groups
            .into_iter()
            .filter_map(|(key, readings)| {
                let (low, ul) = readings.iter().min()?;
                let (high, uh) = readings.iter().max()?;
                let differ = (readings.len() > 1).then(|| *high - *low)?;
                Some(Form { value: differ, uncertainty: Length::root_sum_square([*ul, *uh]), at: at(key) })
            })
            .max_by_key(|form| form.value)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid(readings: &[(&str, &str, i64)]) -> Grid {
        let spot = |station: &str, direction: &str| Spot {
            station: serde_json::from_value(station.into()).unwrap(),
            direction: serde_json::from_value(direction.into()).unwrap(),
        };
        let one = Length::from_nanometres(1_000);
        Grid(readings.iter().map(|(s, d, v)| (spot(s, d), (Length::from_nanometres(*v), one))).collect())
    }

    // Readings constructed; the definitions are those of TM 5-3805-262-34 p. 4-23.
    #[test]
    fn a_journal_at_two_stations() {
        let journal = grid(&[
            ("front", "a", 69_811_900),
            ("front", "b", 69_801_740),
            ("rear", "a", 69_809_360),
            ("rear", "b", 69_794_120),
        ]);
        let round = journal.out_of_round().unwrap();
        assert_eq!((round.value.nanometres(), round.at.label().as_str()), (15_240, "rear"), "0.0006 in");
        let taper = journal.taper(true).unwrap();
        assert_eq!((taper.value.nanometres(), taper.at.label().as_str()), (7_620, "B"), "0.0003 in");
        assert_eq!(taper.uncertainty.nanometres(), 1_415, "the root of two, rounded up");
        assert_eq!(journal.barrel(), None, "no middle, no barrel");
    }

    #[test]
    fn barrel_and_hourglass_are_told_apart() {
        let form = |middle| {
            grid(&[("front", "a", 100), ("middle", "a", middle), ("rear", "a", 102)])
                .barrel()
                .unwrap()
                .value
                .nanometres()
        };
        assert_eq!((form(111), form(91)), (10, -10));
    }

    #[test]
    fn one_reading_has_no_form() {
        let lone = grid(&[("front", "a", 100)]);
        assert_eq!((lone.out_of_round(), lone.taper(true)), (None, None));
        assert_eq!(lone.smallest().map(|(_, length, _)| length.nanometres()), Some(100));
    }
}
