//! The series of a sheet with what it leaves out filled in: standard less the undersize, standard plus the oversize.

use super::{Journals, Oversize, Sheet, Stated, Undersize};
use crate::engine::{At, Part, PartKind};
use crate::measure::{Length, Quantity};

/// A size to which journals are ground, filled in: nought is standard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ground {
    /// How much below standard.
    pub size: Length,
    /// The smallest and largest ground diameter.
    pub diameter: (Length, Length),
    /// The thinnest and thickest wall of a new shell, as far as known.
    pub wall: Option<(Length, Length)>,
    /// For slight wear, without grinding.
    pub without_grinding: bool,
    /// The manual's page, or how it was reckoned.
    pub source: String,
}

/// A size to which cylinders are bored, filled in: nought is standard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bored {
    /// How much above standard.
    pub size: Length,
    /// The smallest and largest finished bore.
    pub diameter: (Length, Length),
    /// The smallest and largest new piston, as far as known.
    pub piston: Option<(Length, Length)>,
    /// The manual's page, or how it was reckoned.
    pub source: String,
}

/// Any part of a kind: sizes of a series are the same at all of its positions.
pub(super) fn example_of(kind: PartKind) -> Part {
    let at = match kind {
        PartKind::MainJournal => At::Main(1),
        PartKind::Crankpin => At::Crankpin(1),
        PartKind::MainShell => At::MainHalf(1, crate::engine::Half::Upper),
        PartKind::RodShell => At::CylinderHalf(1, crate::engine::Half::Upper),
        _ => At::Cylinder(1),
    };
    Part { kind, at }
}

fn both((min, max): (Option<Length>, Option<Length>)) -> Option<(Length, Length)> {
    Some((min.or(max)?, max.or(min)?))
}

impl Sheet {
    /// Standard, as a row of the series; none if the sheet does not give the journals' diameter.
    pub fn standard_journal(&self, journals: Journals) -> Option<Ground> {
        Some(Ground {
            size: Length::default(),
            diameter: both(self.new_range(example_of(journals.kind()), Quantity::Diameter))?,
            wall: both(self.new_range(example_of(journals.shells()), Quantity::Wall)),
            without_grinding: false,
            source: "standard".into(),
        })
    }

    /// The undersizes of a group in order, each filled in from standard where the sheet leaves a figure out.
    pub fn ground_sizes(&self, journals: Journals) -> Vec<Ground> {
        let standard = self.standard_journal(journals);
        let mut sizes: Vec<Ground> = self
            .undersizes
            .iter()
            .filter(|row| row.journals == journals)
            .filter_map(|row| ground(row, standard.as_ref()))
            .collect();
        sizes.sort_by_key(|ground| ground.size);
        sizes
    }

    /// Standard, as a row of the series; none if the sheet does not give the bores' diameter.
    pub fn standard_bore(&self) -> Option<Bored> {
        Some(Bored {
            size: Length::default(),
            diameter: both(self.new_range(example_of(PartKind::Bore), Quantity::Diameter))?,
            piston: both(self.new_range(example_of(PartKind::Piston), Quantity::Diameter)),
            source: "standard".into(),
        })
    }

    /// The oversizes in order, each filled in from standard where the sheet leaves a figure out.
    pub fn bored_sizes(&self) -> Vec<Bored> {
        let standard = self.standard_bore();
        let mut sizes: Vec<Bored> = self.oversizes.iter().filter_map(|row| bored(row, standard.as_ref())).collect();
        sizes.sort_by_key(|bored| bored.size);
        sizes
    }
}

fn ground(row: &Undersize, standard: Option<&Ground>) -> Option<Ground> {
    let size = row.size.length;
    let length = |stated: &Option<Stated>| stated.as_ref().map(Stated::length);
    let given = both((length(&row.min), length(&row.max)));
    let reckoned = standard.map(|standard| (standard.diameter.0 - size, standard.diameter.1 - size));
    let thicker = size.times(1, 2);
    let wall = standard.and_then(|standard| standard.wall).map(|(min, max)| (min + thicker, max + thicker));
    Some(Ground {
        size,
        diameter: given.or(reckoned)?,
        wall: both((length(&row.wall_min), length(&row.wall_max))).or(wall),
        without_grinding: row.without_grinding,
        source: if given.is_some() { row.source.clone() } else { "standard less the undersize".into() },
    })
}

fn bored(row: &Oversize, standard: Option<&Bored>) -> Option<Bored> {
    let size = row.size.length;
    let length = |stated: &Option<Stated>| stated.as_ref().map(Stated::length);
    let given = both((length(&row.min), length(&row.max)));
    let reckoned = standard.map(|standard| (standard.diameter.0 + size, standard.diameter.1 + size));
    let piston = standard.and_then(|standard| standard.piston).map(|(min, max)| (min + size, max + size));
    Some(Bored {
        size,
        diameter: given.or(reckoned)?,
        piston: both((length(&row.piston_min), length(&row.piston_max))).or(piston),
        source: if given.is_some() { row.source.clone() } else { "standard plus the oversize".into() },
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sheet() -> Sheet {
        serde_json::from_value(serde_json::json!({
            "head": { "name": "" },
            "lines": [
                { "of": { "kind": "main-journal", "quantity": "diameter" }, "min": "2.999 in", "max": "3.000 in" },
                { "of": { "kind": "main-shell", "quantity": "wall" }, "min": "0.1245 in", "max": "0.1250 in" },
            ],
            "undersizes": [
                { "journals": "mains", "size": "0.020 in" },
                { "journals": "mains", "size": "0.010 in", "min": "2.989 in", "max": "2.990 in" },
            ],
        }))
        .unwrap()
    }

    // TM 5-4320-300-14 p. 6-103: 0.010 and 0.020 in undersize, journal and wall of the shell.
    #[test]
    fn what_is_left_out_follows_from_standard() {
        let sizes = sheet().ground_sizes(Journals::Mains);
        let row = |index: usize| {
            let row: &Ground = &sizes[index];
            let (wall_min, wall_max) = row.wall.unwrap();
            [row.diameter.0, row.diameter.1, wall_min, wall_max].map(|length| length.nanometres() / 2_540)
        };
        assert_eq!(row(0), [29_890, 29_900, 1_295, 1_300], "in order of size; the walls as printed");
        assert_eq!(row(1), [29_790, 29_800, 1_345, 1_350], "as printed");
        assert_eq!(sizes[1].source, "standard less the undersize");
        assert!(sheet().ground_sizes(Journals::Crankpins).is_empty());
    }
}
