//! What can't be true on a sheet: refused. Printed manuals have misprints, and a wrong digit here would condemn a good
//! crankshaft.

use super::{Line, Oversize, Oversized, Sheet, ShellGrade, Stated, Undersize};
use crate::measure::{Length, Quantity, Sense};
use crate::words::{Phrase, Terms, capitalised};

const TAPPETS: Phrase = Phrase("{tappets}");
const BY_PORT: Phrase = Phrase("only lobes, {tappets}, their bores and pushrods are told apart by intake and exhaust.");

impl Sheet {
    /// Most rows of one sheet, of all its tables together.
    pub(crate) const MOST_ROWS: usize = 1_000;

    /// All rows of all its tables.
    pub(crate) fn rows(&self) -> usize {
        let sizes = self.undersizes.len() + self.oversizes.len();
        self.lines.len() + sizes + self.grades.len() + self.finishes.len()
    }

    /// Refuses a line that can't be true by itself or beside the rest of the sheet.
    ///
    /// # Errors
    /// A sentence: which figure, what is wrong with it, what would be right.
    pub fn check_line(&self, line: &Line, terms: Terms) -> Result<(), String> {
        let line = &line.in_present_form();
        let label = capitalised(&line.of.label(terms));
        let Some(has) = line.of.kind.has(line.of.quantity) else {
            return Err(format!(
                "A {} has no {} to give limits for.",
                line.of.kind.row().name.said(terms),
                line.of.quantity.words(terms)
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
        if line.of.port.is_some() && !line.of.kind.is_by_port() {
            return Err(format!("{label}: {}", BY_PORT.said(terms)));
        }
        let figures = [("smallest", &line.min), ("largest", &line.max), ("limit", &line.limit)];
        if figures.iter().all(|(_, stated)| stated.is_none()) && line.rate.is_none() {
            return Err(format!("{label}: give a smallest or largest new size, or a limit."));
        }
        for (what, stated) in figures {
            if let Some(stated) = stated
                && stated.length() < Length::default()
            {
                return Err(format!("{label}: the {what} is {stated}, and can’t be less than zero."));
            }
        }
        if line.of.quantity == Quantity::Wall {
            no_foil(&label, &line.min)?;
            no_foil(&label, &line.max)?;
        }
        if let Some(rate) = &line.rate
            && (rate.per.length <= Length::default() || rate.by.length <= Length::default())
        {
            return Err(format!("{label}: the rate must be so much for each so much, both above zero."));
        }
        check_range(&label, line, if line.limit_is_least { Sense::Least } else { has.sense })
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
    pub fn check_oversize(&self, row: &Oversize, terms: Terms) -> Result<(), String> {
        let (label, mate) = match row.of {
            Oversized::Cylinders => (format!("Oversize {}", row.size), "piston".into()),
            Oversized::Tappets => {
                (format!("Oversize {} of the {}", row.size, TAPPETS.said(terms)), row.of.mate().row().name.said(terms))
            }
        };
        positive(&label, row.size.length)?;
        ordered(&label, "bore", &row.min, &row.max)?;
        ordered(&label, &mate, &row.piston_min, &row.piston_max)?;
        match &self.standard_bore(row.of) {
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
    pub fn check(&self, terms: Terms) -> Result<(), String> {
        if self.rows() > Self::MOST_ROWS {
            return Err(format!("The sheet has more than {} lines, which no manual has.", Self::MOST_ROWS));
        }
        if !(1..=100).contains(&self.head.guard_percent) {
            return Err("The margin to a limit must be 1 to 100 per cent of the uncertainty.".into());
        }
        self.lines.iter().try_for_each(|line| self.check_line(line, terms))?;
        self.undersizes.iter().try_for_each(|row| self.check_undersize(row))?;
        self.oversizes.iter().try_for_each(|row| self.check_oversize(row, terms))?;
        self.grades.iter().try_for_each(ShellGrade::check)?;
        self.finishes.iter().try_for_each(|finish| self.check_finish(finish))
    }
}

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
            | Depth
            | BigEndBore
            | BearingBore
            | SmallEndBore
            | PinBore
            | PinDiameter
            | LobeHeight
            | BaseCircle
            | Lift
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
        Err(format!("{label}: the size must be above zero; standard is a line of the sheet."))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::{Value, json};

    /// A sheet of a main journal of 2.999 to 3.000 in and a bore of 4.000 to 4.001 in.
    fn sheet() -> Sheet {
        let line = |kind: &str, min: &str, max: &str| json!({ "of": { "kind": kind, "quantity": "diameter" }, "min": min, "max": max });
        serde_json::from_value(json!({
            "head": { "name": "" },
            "lines": [line("main-journal", "2.999 in", "3.000 in"), line("bore", "4.000 in", "4.001 in")],
        }))
        .unwrap()
    }

    /// A line about one quantity with its figures.
    fn line(kind: &str, quantity: &str, figures: Value) -> Line {
        let mut line = figures;
        let fields = line.as_object_mut().unwrap();
        let of = fields.entry("of").or_insert(json!({}));
        of["kind"] = kind.into();
        of["quantity"] = quantity.into();
        serde_json::from_value(line).unwrap()
    }

    #[track_caller]
    fn refused(kind: &str, quantity: &str, figures: Value, because: &str) {
        assert_eq!(sheet().check_line(&line(kind, quantity, figures), Terms::default()).unwrap_err(), because);
    }

    #[track_caller]
    fn taken(kind: &str, quantity: &str, figures: Value) {
        assert_eq!(sheet().check_line(&line(kind, quantity, figures), Terms::default()), Ok(()));
    }

    #[test]
    fn a_line_that_can_not_be_true_is_refused() {
        refused("piston", "ring-gap", json!({ "limit": "1 mm" }), "A piston has no ring gap to give limits for.");
        refused(
            "piston",
            "other",
            json!({ "limit": "1 mm" }),
            "Piston, other: only a quantity of the manual’s own has a name, and it must have one.",
        );
        refused(
            "piston",
            "diameter",
            json!({ "of": { "name": "skirt" }, "limit": "1 mm" }),
            "Piston, diameter: only a quantity of the manual’s own has a name, and it must have one.",
        );
        refused(
            "bore",
            "diameter",
            json!({ "of": { "station": "front" }, "min": "4 in" }),
            "Cylinder bore, diameter, front: it is not measured at “front”.",
        );
        refused(
            "bore",
            "diameter",
            json!({ "of": { "port": "intake" }, "min": "4 in" }),
            "Cylinder bore, diameter, intake: only lobes, tappets, their bores and pushrods are told apart by intake and exhaust.",
        );
        refused(
            "bore",
            "diameter",
            json!({}),
            "Cylinder bore, diameter: give a smallest or largest new size, or a limit.",
        );
        refused(
            "bore",
            "wear",
            json!({ "limit": "-0.2 mm" }),
            "Cylinder bore, wear: the limit is -0.2 mm, and can’t be less than zero.",
        );
        refused(
            "bore",
            "taper",
            json!({ "rate": { "by": "0.0005 in", "per": "0 in", "of": "diameter" } }),
            "Cylinder bore, taper: the rate must be so much for each so much, both above zero.",
        );
        refused(
            "bore",
            "taper",
            json!({ "rate": { "by": "-0.0005 in", "per": "1 in", "of": "diameter" } }),
            "Cylinder bore, taper: the rate must be so much for each so much, both above zero.",
        );
    }

    // Slips of printed manuals: columns that swapped places, limits of the wrong line, points that moved.
    #[test]
    fn figures_that_contradict_each_other_are_refused() {
        refused(
            "crankpin",
            "diameter",
            json!({ "min": "2.8634 in", "max": "2.8444 in" }),
            "Crankpin, diameter: the smallest size 2.8634 in is larger than the largest 2.8444 in. Are they swapped?",
        );
        refused(
            "crankpin",
            "diameter",
            json!({ "min": "0.2749 in", "max": "2.750 in" }),
            "Crankpin, diameter: 0.2749 in is less than half of 2.750 in. A digit or the point is wrong in one of them.",
        );
        refused(
            "crankpin",
            "diameter",
            json!({ "min": "2.749 in", "max": "2.750 in", "limit": "2.7495 in" }),
            "Crankpin, diameter: the limit 2.7495 in is above the smallest new size 2.749 in. Wear makes this smaller, so the limit must be below.",
        );
        refused(
            "crankpin",
            "clearance",
            json!({ "max": "0.066 mm", "limit": "0.03 mm" }),
            "Crankpin, clearance: the limit 0.03 mm is below the largest new size 0.066 mm. Wear makes this larger, so the limit must be above.",
        );
        taken("crankpin", "diameter", json!({ "min": "2.749 in", "max": "2.750 in", "limit": "2.749 in" }));
        taken("crankpin", "clearance", json!({ "min": "0.0010 in", "max": "0.0040 in", "limit": "0.0040 in" }));
    }

    // TM 9-2815-225-34&P prints 0.00942 in for 0.0942.
    #[test]
    fn a_wall_like_foil_is_refused() {
        let thin = |figure: &str| {
            format!(
                "Rod bearing shell, wall: a wall of {figure} is thinner than that of any shell. A digit or the point is wrong."
            )
        };
        refused("rod-shell", "wall", json!({ "min": "0.00942 in" }), &thin("0.00942 in"));
        refused("rod-shell", "wall", json!({ "max": "0.49 mm" }), &thin("0.49 mm"));
        taken("rod-shell", "wall", json!({ "min": "0.0942 in", "limit": "0.093 in" }));
        taken("rod-shell", "wall", json!({ "min": "0.5 mm" }));
    }

    #[track_caller]
    fn undersize(row: Value, expected: Result<(), &str>) {
        let row: Undersize = serde_json::from_value(row).unwrap();
        assert_eq!(sheet().check_undersize(&row), expected.map_err(str::to_owned));
    }

    #[test]
    fn an_undersize_is_smaller_than_standard() {
        undersize(json!({ "journals": "mains", "size": "0.010 in", "min": "2.989 in", "max": "2.990 in" }), Ok(()));
        undersize(
            json!({ "journals": "mains", "size": "0 in" }),
            Err("Undersize 0 in of the main journals: the size must be above zero; standard is a line of the sheet."),
        );
        undersize(
            json!({ "journals": "mains", "size": "0.010 in", "min": "2.990 in", "max": "2.989 in" }),
            Err(
                "Undersize 0.010 in of the main journals: the smallest journal 2.990 in is larger than the largest 2.989 in. Are they swapped?",
            ),
        );
        undersize(
            json!({ "journals": "mains", "size": "0.010 in", "wall_min": "0.1300 in", "wall_max": "0.1295 in" }),
            Err(
                "Undersize 0.010 in of the main journals: the smallest wall 0.1300 in is larger than the largest 0.1295 in. Are they swapped?",
            ),
        );
        undersize(
            json!({ "journals": "mains", "size": "0.010 in", "wall_min": "0.01295 in" }),
            Err(
                "Undersize 0.010 in of the main journals: a wall of 0.01295 in is thinner than that of any shell. A digit or the point is wrong.",
            ),
        );
        undersize(
            json!({ "journals": "mains", "size": "0.010 in", "min": "3.009 in", "max": "3.010 in" }),
            Err(
                "Undersize 0.010 in of the main journals: a journal of 3.009 in is not below standard. An undersize journal must be smaller than standard.",
            ),
        );
        undersize(
            json!({ "journals": "crankpins", "size": "0.010 in" }),
            Err(
                "Undersize 0.010 in of the crankpins: enter the standard diameter first, or give the smallest and largest ground diameter.",
            ),
        );
        undersize(json!({ "journals": "crankpins", "size": "0.010 in", "min": "2.489 in", "max": "2.490 in" }), Ok(()));
    }

    #[track_caller]
    fn oversize(row: Value, expected: Result<(), &str>) {
        let row: Oversize = serde_json::from_value(row).unwrap();
        assert_eq!(sheet().check_oversize(&row, Terms::default()), expected.map_err(str::to_owned));
    }

    #[test]
    fn an_oversize_is_larger_than_standard() {
        oversize(json!({ "size": "0.010 in" }), Ok(()));
        oversize(
            json!({ "size": "-0.010 in" }),
            Err("Oversize -0.010 in: the size must be above zero; standard is a line of the sheet."),
        );
        oversize(
            json!({ "size": "0.010 in", "min": "4.011 in", "max": "4.010 in" }),
            Err("Oversize 0.010 in: the smallest bore 4.011 in is larger than the largest 4.010 in. Are they swapped?"),
        );
        oversize(
            json!({ "size": "0.010 in", "piston_min": "4.008 in", "piston_max": "4.007 in" }),
            Err(
                "Oversize 0.010 in: the smallest piston 4.008 in is larger than the largest 4.007 in. Are they swapped?",
            ),
        );
        oversize(
            json!({ "size": "0.010 in", "min": "3.990 in", "max": "3.991 in" }),
            Err(
                "Oversize 0.010 in: a bore of 3.990 in is not above standard. An oversize bore must be larger than standard.",
            ),
        );
        let row: Oversize = serde_json::from_value(json!({ "size": "0.010 in" })).unwrap();
        assert_eq!(
            Sheet::default().check_oversize(&row, Terms::default()).unwrap_err(),
            "Oversize 0.010 in: enter the standard bore first, or give the smallest and largest finished bore."
        );
    }

    #[test]
    fn a_whole_sheet_is_held_against_its_border() {
        let mut long = sheet();
        long.lines = vec![line("bore", "wear", json!({ "limit": "0.2 mm" })); 1_001];
        assert_eq!(
            long.check(Terms::default()).unwrap_err(),
            "The sheet has more than 1000 lines, which no manual has."
        );
        let mut unguarded = sheet();
        unguarded.head.guard_percent = 0;
        assert_eq!(
            unguarded.check(Terms::default()).unwrap_err(),
            "The margin to a limit must be 1 to 100 per cent of the uncertainty."
        );
        let mut wrong = sheet();
        wrong.lines.push(line("bore", "taper", json!({})));
        assert!(wrong.check(Terms::default()).unwrap_err().starts_with("Cylinder bore, taper"));
        assert_eq!(sheet().check(Terms::default()), Ok(()));
    }
}
