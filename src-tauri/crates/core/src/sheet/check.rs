//! What can't be true on a sheet, and what is hard to believe. Printed manuals have misprints, and a wrong digit here
//! would condemn a good crankshaft.

use super::{Line, Oversize, Sheet, SizeGroup, Stated, Undersize};
use crate::engine::PartKind;
use crate::measure::{Length, Quantity, Sense};

impl Sheet {
    /// Refuses a line that can't be true by itself or beside the rest of the sheet.
    ///
    /// # Errors
    /// A sentence: which figure, what is wrong with it, what would be right.
    pub fn check_line(&self, line: &Line) -> Result<(), String> {
        let label = line.of.label();
        let Some(has) = line.of.kind.has(line.of.quantity) else {
            return Err(format!(
                "A {} has no {} to give limits for.",
                line.of.kind.row().name,
                line.of.quantity.words()
            ));
        };
        if (line.of.quantity == Quantity::Other) == line.of.name.trim().is_empty() {
            return Err(format!("{label}: only a quantity of the manual’s own has a name, and it must have one."));
        }
        if let Some(station) = line.of.station
            && !has.spots.all().iter().any(|spot| spot.station == Some(station))
        {
            return Err(format!("{label}: it is not measured at “{}”.", station.label()));
        }
        if line.of.port.is_some() && !matches!(line.of.kind, PartKind::Lobe | PartKind::Tappet) {
            return Err(format!("{label}: only lobes and tappets are told apart by intake and exhaust."));
        }
        let figures = [("smallest", &line.min), ("largest", &line.max), ("limit", &line.limit)];
        if figures.iter().all(|(_, stated)| stated.is_none()) && line.rate.is_none() {
            return Err(format!("{label}: give a smallest or largest new size, or a limit."));
        }
        for (what, stated) in figures {
            if let Some(stated) = stated
                && stated.length() < Length::default()
            {
                return Err(format!("{label}: the {what} is {stated}, and can’t be less than nought."));
            }
        }
        if line.of.quantity == Quantity::Wall {
            no_foil(&label, &line.min)?;
            no_foil(&label, &line.max)?;
        }
        if let Some(rate) = &line.rate
            && (rate.per.length <= Length::default() || rate.by.length <= Length::default())
        {
            return Err(format!("{label}: the rate must be so much for each so much, both above nought."));
        }
        check_range(&label, line, has.sense)
    }

    /// Refuses an undersize that can't be true.
    ///
    /// # Errors
    /// A sentence: which figure, what is wrong with it, what would be right.
    pub fn check_undersize(&self, row: &Undersize) -> Result<(), String> {
        let label = format!("Undersize {} of the {}", row.size, row.journals.group().label());
        positive(&label, row.size.length)?;
        ordered(&label, "journal", &row.min, &row.max)?;
        ordered(&label, "wall", &row.wall_min, &row.wall_max)?;
        no_foil(&label, &row.wall_min)?;
        no_foil(&label, &row.wall_max)?;
        let standard = self.standard(row.journals.group());
        if let Some(standard) = &standard {
            let (_, largest) = standard.diameter;
            for stated in [&row.min, &row.max].into_iter().flatten() {
                if stated.length() >= largest {
                    return Err(format!(
                        "{label}: a journal of {stated} is not below standard. An undersize journal must be smaller than standard."
                    ));
                }
            }
        } else if row.min.is_none() || row.max.is_none() {
            return Err(format!(
                "{label}: enter the standard diameter first, or give the smallest and largest ground diameter."
            ));
        }
        Ok(())
    }

    /// Refuses an oversize that can't be true.
    ///
    /// # Errors
    /// A sentence: which figure, what is wrong with it, what would be right.
    pub fn check_oversize(&self, row: &Oversize) -> Result<(), String> {
        let label = format!("Oversize {}", row.size);
        positive(&label, row.size.length)?;
        ordered(&label, "bore", &row.min, &row.max)?;
        ordered(&label, "piston", &row.piston_min, &row.piston_max)?;
        match &self.standard(SizeGroup::Bores) {
            Some(standard) => {
                for stated in [&row.min, &row.max].into_iter().flatten() {
                    if stated.length() <= standard.diameter.0 {
                        return Err(format!(
                            "{label}: a bore of {stated} is not above standard. An oversize bore must be larger than standard."
                        ));
                    }
                }
            }
            None if row.min.is_none() || row.max.is_none() => {
                return Err(format!(
                    "{label}: enter the standard bore first, or give the smallest and largest finished bore."
                ));
            }
            None => {}
        }
        Ok(())
    }

    /// Refuses a sheet with anything that can't be true.
    ///
    /// # Errors
    /// The first sentence found.
    pub fn check(&self) -> Result<(), String> {
        const MOST_ROWS: usize = 1_000;
        if self.lines.len() + self.undersizes.len() + self.oversizes.len() > MOST_ROWS {
            return Err(format!("The sheet has more than {MOST_ROWS} lines, which no manual has."));
        }
        if !(1..=100).contains(&self.head.guard_percent) {
            return Err("The share of the uncertainty that keeps away from a limit must be 1 to 100 per cent.".into());
        }
        self.lines.iter().try_for_each(|line| self.check_line(line))?;
        self.undersizes.iter().try_for_each(|row| self.check_undersize(row))?;
        self.oversizes.iter().try_for_each(|row| self.check_oversize(row))
    }

    /// What is hard to believe, each in a sentence: probably misprints, kept as entered.
    pub fn doubts(&self) -> Vec<String> {
        let mut doubts = Vec::new();
        self.doubt_neighbours(&mut doubts);
        self.doubt_general(&mut doubts);
        self.doubt_series(&mut doubts);
        for line in &self.lines {
            if line.of.quantity == Quantity::Lift
                && line.max.as_ref().or(line.min.as_ref()).is_some_and(|stated| stated.length() > LARGEST_LIFT)
            {
                doubts.push(format!("{}: this looks like the height of the lobe, not its lift.", line.of.label()));
            }
        }
        doubts
    }

    /// A limit of form ten times that of a like part in the same sheet.
    fn doubt_neighbours(&self, doubts: &mut Vec<String>) {
        const FORM: [Quantity; 3] = [Quantity::OutOfRound, Quantity::Taper, Quantity::Barrel];
        const ALIKE: [PartKind; 3] = [PartKind::MainJournal, PartKind::Crankpin, PartKind::CamJournal];
        let of_form = |line: &&Line| FORM.contains(&line.of.quantity) && ALIKE.contains(&line.of.kind);
        for line in self.lines.iter().filter(of_form) {
            let Some(most) = largest(line) else { continue };
            let smaller = self.lines.iter().filter(of_form).find(|other| {
                other.of.quantity == line.of.quantity && largest(other).is_some_and(|other| many_times(most, other))
            });
            if let Some(other) = smaller {
                doubts.push(format!(
                    "{} may be {}, ten times that of the {}: one of them is probably misprinted.",
                    line.of.label(),
                    largest_text(line),
                    other.of.kind.row().name
                ));
            }
        }
    }

    /// A limit of form ten times what is common practice.
    fn doubt_general(&self, doubts: &mut Vec<String>) {
        for line in &self.lines {
            if !matches!(line.of.quantity, Quantity::OutOfRound | Quantity::Taper) {
                continue;
            }
            let (Some(most), Some(part)) = (largest(line), Some(super::series::example_of(line.of.kind))) else {
                continue;
            };
            let general = self.general(part, line.of.quantity, Default::default());
            let Some(usual) = general.and_then(|limits| limits.bounds.most) else { continue };
            if many_times(most, usual.at) {
                doubts.push(format!(
                    "{} may be {}, ten times what is common practice: check it against another manual.",
                    line.of.label(),
                    largest_text(line)
                ));
            }
        }
    }

    /// Rows of a series that do not follow from standard.
    fn doubt_series(&self, doubts: &mut Vec<String>) {
        for group in SizeGroup::ALL {
            let Some(standard) = self.standard(group) else { continue };
            for row in self.series(group) {
                let label = format!("Size {} of the {}", self.in_unit(row.size), group.label());
                let (part, mate) = (group.kind().row().short, group.mate().row().short);
                self.doubt_row(doubts, &label, part, standard.diameter, row.diameter, group.step(row.size));
                if let (Some(new), Some(range)) = (standard.mate, row.mate) {
                    self.doubt_row(doubts, &label, mate, new, range, group.mate_step(row.size));
                }
            }
        }
    }

    fn doubt_row(
        &self,
        doubts: &mut Vec<String>,
        label: &str,
        what: &str,
        standard: (Length, Length),
        row: (Length, Length),
        step: Length,
    ) {
        // A little off is usual (selective fits); beyond the width of the range itself it is not, nor is another width.
        let width = standard.1 - standard.0;
        let off = (row.0 - standard.0 - step).abs().max((row.1 - standard.1 - step).abs());
        let widened = ((row.1 - row.0) - width).abs();
        if off > width || widened > width.times(1, 10) {
            doubts.push(format!(
                "{label}: {what} {} to {}; from standard {} to {} would follow.",
                self.in_unit(row.0),
                self.in_unit(row.1),
                self.in_unit(standard.0 + step),
                self.in_unit(standard.1 + step)
            ));
        }
    }

    fn in_unit(&self, length: Length) -> String {
        super::in_unit(length, self.head.unit)
    }
}

/// Lifts of lobes stay well below; heights of lobes lie above (our judgement).
const LARGEST_LIFT: Length = Length::from_nanometres(20_000_000);

/// Half a millimetre: the steel back of the thinnest shells alone is thicker (our judgement). TM 9-2815-225-34&P prints
/// 0.00942 in for 0.0942.
const THINNEST_WALL: Length = Length::from_nanometres(500_000);

fn no_foil(label: &str, wall: &Option<Stated>) -> Result<(), String> {
    match wall {
        Some(wall) if wall.length() < THINNEST_WALL => {
            Err(format!("{label}: a wall of {wall} is thinner than that of any shell. A digit or the point is wrong."))
        }
        _ => Ok(()),
    }
}

fn check_range(label: &str, line: &Line, sense: Sense) -> Result<(), String> {
    ordered(label, "size", &line.min, &line.max)?;
    if let (Some(min), Some(max)) = (&line.min, &line.max)
        && is_size(line.of.quantity)
        && min.length().times(2, 1) < max.length()
    {
        return Err(format!(
            "{label}: {min} is less than half of {max}. A digit or the point is wrong in one of them."
        ));
    }
    let Some(limit) = &line.limit else { return Ok(()) };
    match sense {
        Sense::Least => {
            if let Some(new) = line.min.as_ref().filter(|min| limit.length() > min.length()) {
                return Err(format!(
                    "{label}: the limit {limit} is above the smallest new size {new}. Wear makes this smaller, so the limit must be below."
                ));
            }
        }
        Sense::Most => {
            if let Some(new) = line.max.as_ref().filter(|max| limit.length() < max.length()) {
                return Err(format!(
                    "{label}: the limit {limit} is below the largest new size {new}. Wear makes this larger, so the limit must be above."
                ));
            }
        }
    }
    Ok(())
}

/// Sizes proper, whose range is narrow; clearances and losses may range widely.
fn is_size(quantity: Quantity) -> bool {
    use Quantity::*;
    matches!(
        quantity,
        Diameter
            | Wall
            | Thickness
            | ThrustWidth
            | Length
            | BigEndBore
            | SmallEndBore
            | PinBore
            | PinDiameter
            | LobeHeight
            | BaseCircle
            | Lift
            | GuideBore
    )
}

fn ordered(label: &str, what: &str, min: &Option<Stated>, max: &Option<Stated>) -> Result<(), String> {
    match (min, max) {
        (Some(min), Some(max)) if min.length() > max.length() => {
            Err(format!("{label}: the smallest {what} {min} is larger than the largest {max}. Are they swapped?"))
        }
        _ => Ok(()),
    }
}

fn positive(label: &str, size: Length) -> Result<(), String> {
    if size > Length::default() {
        Ok(())
    } else {
        Err(format!("{label}: the size must be above nought; standard is a line of the sheet."))
    }
}

/// The most that a line allows.
fn largest(line: &Line) -> Option<Length> {
    line.limit.as_ref().or(line.max.as_ref()).map(Stated::length)
}

fn largest_text(line: &Line) -> String {
    line.limit.as_ref().or(line.max.as_ref()).map_or_else(String::new, Stated::to_string)
}

/// Ten times, give or take rounding.
fn many_times(large: Length, small: Length) -> bool {
    small > Length::default() && large >= small.times(9, 1)
}
