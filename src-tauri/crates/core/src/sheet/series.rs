//! The series of sizes of a group, with what the sheet leaves out filled in: standard less the undersize, standard plus
//! the oversize.

use super::{Oversize, Oversized, Sheet, SizeGroup, Stated, Undersize};
use crate::engine::{At, Half, Part, PartKind, Port};
use crate::measure::{Length, Quantity, Sense};

/// A size to which a group is ground or bored, filled in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SizeRow {
    /// How far from standard: zero is standard.
    pub size: Length,
    /// The smallest and largest finished diameter.
    pub diameter: (Length, Length),
    /// The thinnest and thickest wall of a new shell, or the smallest and largest new piston, as far as known.
    pub mate: Option<(Length, Length)>,
    /// Shells for slight wear on journals that are not ground.
    pub without_grinding: bool,
    /// The manual's page, or how it was worked out.
    pub source: String,
}

impl SizeGroup {
    /// The group to which a kind of part belongs; none where it goes to no common size.
    pub fn of(kind: PartKind) -> Option<Self> {
        Self::ALL.into_iter().find(|group| group.kind() == kind)
    }

    /// The kind of part.
    pub fn kind(self) -> PartKind {
        match self {
            Self::Mains => PartKind::MainJournal,
            Self::Crankpins => PartKind::Crankpin,
            Self::Bores => PartKind::Bore,
        }
    }

    /// The kind of part that comes in the same size: shells, pistons.
    pub fn mate(self) -> PartKind {
        match self {
            Self::Mains => PartKind::MainShell,
            Self::Crankpins => PartKind::RodShell,
            Self::Bores => PartKind::Piston,
        }
    }

    /// Which way it wears, and so is machined.
    pub fn sense(self) -> Sense {
        if self == Self::Bores { Sense::Most } else { Sense::Least }
    }

    /// What a size does to the diameter: it takes off a journal, and adds to a bore.
    pub fn step(self, size: Length) -> Length {
        if self.sense() == Sense::Most { size } else { -size }
    }

    /// What a size does to the part that comes with it: half to each wall, all to a piston.
    pub fn mate_step(self, size: Length) -> Length {
        if self == Self::Bores { size } else { size.times(1, 2) }
    }

    pub(super) fn mate_quantity(self) -> Quantity {
        if self == Self::Bores { Quantity::Diameter } else { Quantity::Wall }
    }
}

/// Any part of a kind: the sizes of a series are the same at all of its positions.
pub(super) fn example_of(kind: PartKind) -> Part {
    let at = match kind {
        PartKind::MainJournal => At::Main(1),
        PartKind::Crankpin => At::Crankpin(1),
        PartKind::MainShell => At::MainHalf(1, Half::Upper),
        PartKind::RodShell => At::CylinderHalf(1, Half::Upper),
        PartKind::Tappet | PartKind::TappetBore => At::Valve(1, Port::Intake, 1),
        _ => At::Cylinder(1),
    };
    Part { kind, at }
}

impl Sheet {
    /// Standard, as a row of the series; none if the sheet does not give the diameter.
    pub fn standard(&self, group: SizeGroup) -> Option<SizeRow> {
        self.new_pair((group.kind(), Quantity::Diameter), (group.mate(), group.mate_quantity()))
    }

    /// The standard bore of what is brought to oversizes; none if the sheet does not give it.
    pub fn standard_bore(&self, of: Oversized) -> Option<SizeRow> {
        self.new_pair((of.kind(), Quantity::Diameter), (of.mate(), Quantity::Diameter))
    }

    /// A part and what runs in or on it, both new.
    fn new_pair(&self, (kind, of): (PartKind, Quantity), (mate, of_mate): (PartKind, Quantity)) -> Option<SizeRow> {
        Some(SizeRow {
            size: Length::default(),
            diameter: both(self.new_range(example_of(kind), of))?,
            mate: both(self.new_range(example_of(mate), of_mate)),
            without_grinding: false,
            source: "standard".into(),
        })
    }

    /// The oversizes of the bores of tappets, in order.
    pub fn tappet_oversizes(&self) -> Vec<SizeRow> {
        let standard = self.standard_bore(Oversized::Tappets);
        // They grow as bores and pistons do.
        let filled = |row: Given<'_>| row.filled(SizeGroup::Bores, standard.as_ref());
        let mut rows: Vec<SizeRow> =
            self.oversizes_of(Oversized::Tappets).map(Given::from).filter_map(filled).collect();
        rows.sort_by_key(|row| row.size);
        rows
    }

    /// The oversizes of one or the other, as entered.
    pub(super) fn oversizes_of(&self, of: Oversized) -> impl Iterator<Item = &Oversize> {
        self.oversizes.iter().filter(move |row| row.of == of)
    }

    /// The sizes of a group beyond standard, in order.
    pub fn series(&self, group: SizeGroup) -> Vec<SizeRow> {
        let standard = self.standard(group);
        let filled = |row: Given<'_>| row.filled(group, standard.as_ref());
        let mut rows: Vec<SizeRow> = if group == SizeGroup::Bores {
            self.oversizes_of(Oversized::Cylinders).map(Given::from).filter_map(filled).collect()
        } else {
            let of_group = |row: &&Undersize| row.journals.group() == group;
            self.undersizes.iter().filter(of_group).map(Given::from).filter_map(filled).collect()
        };
        rows.sort_by_key(|row| row.size);
        rows
    }

    /// The row of a size, standard being zero; none if the sheet does not list it.
    pub fn row(&self, group: SizeGroup, size: Length) -> Option<SizeRow> {
        if size == Length::default() {
            return self.standard(group);
        }
        self.series(group).into_iter().find(|row| row.size == size)
    }
}

/// A row as entered, of either series.
struct Given<'a> {
    size: Length,
    diameter: (&'a Option<Stated>, &'a Option<Stated>),
    mate: (&'a Option<Stated>, &'a Option<Stated>),
    without_grinding: bool,
    source: &'a str,
}

impl<'a> From<&'a Undersize> for Given<'a> {
    fn from(row: &'a Undersize) -> Self {
        Self {
            size: row.size.length,
            diameter: (&row.min, &row.max),
            mate: (&row.wall_min, &row.wall_max),
            without_grinding: row.without_grinding,
            source: &row.source,
        }
    }
}

impl<'a> From<&'a Oversize> for Given<'a> {
    fn from(row: &'a Oversize) -> Self {
        Self {
            size: row.size.length,
            diameter: (&row.min, &row.max),
            mate: (&row.piston_min, &row.piston_max),
            without_grinding: false,
            source: &row.source,
        }
    }
}

impl Given<'_> {
    fn filled(self, group: SizeGroup, standard: Option<&SizeRow>) -> Option<SizeRow> {
        let range = |(min, max): (&Option<Stated>, &Option<Stated>)| {
            let length = |stated: &Option<Stated>| stated.as_ref().map(Stated::length);
            both((length(min), length(max)))
        };
        let moved = |(min, max): (Length, Length), step: Length| (min + step, max + step);
        let worked_out = standard.map(|standard| moved(standard.diameter, group.step(self.size)));
        let mate = standard.and_then(|standard| standard.mate).map(|mate| moved(mate, group.mate_step(self.size)));
        let given = range(self.diameter);
        Some(SizeRow {
            size: self.size,
            diameter: given.or(worked_out)?,
            mate: range(self.mate).or(mate),
            without_grinding: self.without_grinding,
            source: if given.is_some() { self.source.to_owned() } else { "worked out from standard".into() },
        })
    }
}

/// A range of which one end may stand for both.
fn both((min, max): (Option<Length>, Option<Length>)) -> Option<(Length, Length)> {
    Some((min.or(max)?, max.or(min)?))
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
        let sizes = sheet().series(SizeGroup::Mains);
        let row = |index: usize| {
            let row: &SizeRow = &sizes[index];
            let (wall_min, wall_max) = row.mate.unwrap();
            [row.diameter.0, row.diameter.1, wall_min, wall_max].map(|length| length.nanometres() / 2_540)
        };
        assert_eq!(row(0), [29_890, 29_900, 1_295, 1_300], "in order of size; the walls as printed");
        assert_eq!(row(1), [29_790, 29_800, 1_345, 1_350], "as printed");
        assert_eq!(sizes[1].source, "worked out from standard");
        assert!(sheet().series(SizeGroup::Crankpins).is_empty());
    }
}
