//! The engine as a plan: a grid of symbols along the crankshaft's centre line, the same on screen and on paper.
//!
//! Rows run from the front of the engine to the rear, columns from the cylinder across the rod to the crankshaft.
//! Only the places are computed here; whoever draws decides on ink and size.

use serde::Serialize;

use super::{Arrangement, At, Bank, Engine, Half, Part, PartKind, Port, Station};
use crate::words::{Phrase, Terms};

/// The outline by which a part is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Symbol {
    /// A half ring open to the right.
    ShellUpper,
    /// A half ring open to the left.
    ShellLower,
    /// A round section of a shaft.
    Journal,
    /// A bored square.
    Housing,
    /// A flat ring seen from its edge.
    Thrust,
    /// A rod with two eyes.
    Rod,
    /// A piston with its ring grooves.
    Piston,
    /// Three rings.
    Rings,
    /// A round bore.
    Bore,
    /// An egg.
    Lobe,
    /// A stem on a foot.
    Tappet,
    /// A thin rod with a ball at each end.
    Pushrod,
    /// A closed ring.
    Bush,
    /// A plain box for single items.
    Item,
}

/// One part in the grid.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct PlanCell {
    /// The part.
    pub part: Part,
    /// Column from 0.
    pub column: u8,
    /// Row from 0, within its section.
    pub row: u8,
    /// How it is drawn.
    pub symbol: Symbol,
    /// A few letters to stand in the symbol, several words one below the other; empty where the column says enough.
    pub mark: String,
    /// Which of two halves it is.
    pub half: Option<Half>,
    /// Which way its valve lets the charge flow.
    pub port: Option<Port>,
    /// The bank of its cylinder, where there are two.
    pub bank: Option<Bank>,
}

/// A part of the plan with its own rows.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct PlanSection {
    /// Its heading.
    pub title: String,
    /// Number of rows.
    pub rows: u8,
    /// Number of columns.
    pub columns: u8,
    /// The column on which the shaft's centre line runs, if a shaft runs through.
    pub centre_line: Option<u8>,
    /// What stands in each column, in words: the names of its kinds of part, one list each column. Empty where every
    /// part is named by its mark.
    pub column_heads: Vec<Vec<String>>,
    /// Row labels, front to rear, one each row; empty where a row needs none.
    pub row_labels: Vec<String>,
    /// The parts.
    pub cells: Vec<PlanCell>,
}

/// The whole plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Plan {
    /// Crankshaft with rods and pistons, valve gear, single items.
    pub sections: Vec<PlanSection>,
}

/// Columns of the crankshaft section: bore, piston, rings, rod (or housing bore, thrust face), upper shell, journal,
/// lower shell.
const CRANK_COLUMNS: u8 = 7;
/// The journals' column.
const JOURNAL_COLUMN: u8 = 5;
/// Single items stand several to a row.
const ITEM_COLUMNS: u8 = 4;

impl Engine {
    /// Lays the engine out as a plan in which every part has exactly one place.
    pub fn plan(&self) -> Plan {
        let (arrangement, terms) = (self.arrangement(), self.terms());
        let mut sections = vec![crank_section(arrangement, terms)];
        sections.extend(valve_section(arrangement, terms));
        sections.extend(tappet_bore_section(arrangement, terms));
        sections.extend(cam_bearing_section(arrangement, terms));
        let is_detail = |part: &Part| part.kind.detail_of().is_some();
        let is_item = |part: &Part| matches!(part.at, At::Engine | At::Camshaft(_)) && !is_detail(part);
        sections.push(items_section(self, Phrase("Single items"), is_item));
        sections.push(items_section(self, Phrase("Oil pump and auxiliary drive, taken apart"), is_detail));
        for cell in sections.iter_mut().flat_map(|section| &mut section.cells) {
            cell.bank = arrangement.bank_of(cell.part.at);
        }
        Plan { sections }
    }
}

/// A section under way.
#[derive(Default)]
struct Drawing {
    cells: Vec<PlanCell>,
    row_labels: Vec<String>,
}

impl Drawing {
    /// Begins a row and gives its number.
    fn row(&mut self, label: impl Into<String>) -> u8 {
        let row = self.rows();
        self.row_labels.push(label.into());
        row
    }

    /// The largest plan has 16 cylinders with three rows of valves each: far below 255.
    fn rows(&self) -> u8 {
        u8::try_from(self.row_labels.len()).unwrap_or(u8::MAX)
    }

    fn put(&mut self, kind: PartKind, at: At, column: u8, row: u8, symbol: Symbol, mark: impl Into<String>) {
        let part = Part { kind, at };
        let (half, port) = (at.half(), at.port());
        self.cells.push(PlanCell { part, column, row, symbol, mark: mark.into(), half, port, bank: None });
    }

    fn shells(&mut self, kind: PartKind, at: impl Fn(Half) -> At, row: u8) {
        self.put(kind, at(Half::Upper), JOURNAL_COLUMN - 1, row, Symbol::ShellUpper, "U");
        self.put(kind, at(Half::Lower), JOURNAL_COLUMN + 1, row, Symbol::ShellLower, "L");
    }

    fn finish(self, title: Phrase, columns: u8, centre_line: Option<u8>, terms: Terms) -> PlanSection {
        PlanSection {
            title: title.said(terms).into(),
            rows: self.rows(),
            columns,
            centre_line,
            column_heads: (0..columns).map(|column| column_head(&self.cells, column, terms)).collect(),
            row_labels: self.row_labels,
            cells: self.cells,
        }
    }
}

/// The kinds of part in a column, in the order in which they are met.
fn column_head(cells: &[PlanCell], column: u8, terms: Terms) -> Vec<String> {
    // Thrust faces and single items carry their names themselves.
    let is_named = |cell: &&PlanCell| matches!(cell.symbol, Symbol::Thrust | Symbol::Item);
    let mut names = Vec::new();
    for cell in cells.iter().filter(|cell| cell.column == column && !is_named(cell)) {
        let name = kind_in_column(cell.part, terms);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names
}

fn kind_in_column(part: Part, terms: Terms) -> String {
    let name = part.kind.row().short.said(terms);
    match part.at {
        At::MainHalf(_, Half::Upper) | At::CylinderHalf(_, Half::Upper) => format!("upper {name}"),
        At::MainHalf(_, Half::Lower) | At::CylinderHalf(_, Half::Lower) => format!("lower {name}"),
        At::Valve(_, Port::Intake, _) => format!("intake {name}"),
        At::Valve(_, Port::Exhaust, _) => format!("exhaust {name}"),
        _ => name.into(),
    }
}

fn crank_section(arrangement: &Arrangement, terms: Terms) -> PlanSection {
    use PartKind::*;
    let mut drawing = Drawing::default();
    for station in arrangement.crank_line() {
        match station {
            Station::Main(n) => {
                let row = drawing.row(format!("Main {n}"));
                if n == arrangement.thrust_main {
                    drawing.put(ThrustFace, At::ThrustSide(super::End::Front), 1, row, Symbol::Thrust, "thrust front");
                    drawing.put(ThrustFace, At::ThrustSide(super::End::Rear), 2, row, Symbol::Thrust, "thrust rear");
                }
                drawing.put(HousingBore, At::Main(n), JOURNAL_COLUMN - 2, row, Symbol::Housing, "");
                drawing.shells(MainShell, |half| At::MainHalf(n, half), row);
                drawing.put(MainJournal, At::Main(n), JOURNAL_COLUMN, row, Symbol::Journal, format!("M{n}"));
            }
            Station::Crankpin(pin) => {
                let first_row = drawing.rows();
                for cylinder in arrangement.cylinders_on_crankpin(pin) {
                    let row = drawing.row(format!("Cyl {cylinder}"));
                    drawing.put(Bore, At::Cylinder(cylinder), 0, row, Symbol::Bore, cylinder.to_string());
                    drawing.put(Piston, At::Cylinder(cylinder), 1, row, Symbol::Piston, "");
                    drawing.put(Rings, At::Cylinder(cylinder), 2, row, Symbol::Rings, "");
                    drawing.put(Rod, At::Cylinder(cylinder), 3, row, Symbol::Rod, "");
                    drawing.shells(RodShell, |half| At::CylinderHalf(cylinder, half), row);
                }
                drawing.put(Crankpin, At::Crankpin(pin), JOURNAL_COLUMN, first_row, Symbol::Journal, format!("P{pin}"));
            }
        }
    }
    drawing.finish(Phrase("Crankshaft, rods and pistons"), CRANK_COLUMNS, Some(JOURNAL_COLUMN), terms)
}

fn valve_section(arrangement: &Arrangement, terms: Terms) -> Option<PlanSection> {
    use PartKind::*;
    if arrangement.camshafts() == 0 {
        return None;
    }
    let mut drawing = Drawing::default();
    let tappets = !Tappet.row().positions.all(arrangement).is_empty();
    let pushrods = !Pushrod.row().positions.all(arrangement).is_empty();
    let per_valve = 1 + u8::from(tappets) + u8::from(pushrods);
    let most = arrangement.valves_of(Port::Intake).max(arrangement.valves_of(Port::Exhaust));
    for cylinder in 1..=arrangement.cylinders {
        for nth in 1..=most {
            let row = drawing.row(if nth == 1 { format!("Cyl {cylinder}") } else { String::new() });
            for (port, first, letter) in [(Port::Intake, 0, "in"), (Port::Exhaust, per_valve, "ex")] {
                if nth > arrangement.valves_of(port) {
                    continue;
                }
                let at = At::Valve(cylinder, port, nth);
                drawing.put(Lobe, at, first, row, Symbol::Lobe, letter);
                if tappets {
                    drawing.put(Tappet, at, first + 1, row, Symbol::Tappet, letter);
                }
                if pushrods {
                    drawing.put(Pushrod, at, first + 2, row, Symbol::Pushrod, "");
                }
            }
        }
    }
    let title = match (tappets, pushrods) {
        (_, true) => "Cam lobes, {tappets} and pushrods",
        (true, false) => "Cam lobes and {tappets}",
        (false, false) => "Cam lobes",
    };
    Some(drawing.finish(Phrase(title), 2 * per_valve, None, terms))
}

/// The bores lie in the block, seen when the tappets are out: a drawing of their own keeps that of the valve gear readable.
fn tappet_bore_section(arrangement: &Arrangement, terms: Terms) -> Option<PlanSection> {
    let all = PartKind::TappetBore.row().positions.all(arrangement);
    if all.is_empty() {
        return None;
    }
    let mut drawing = Drawing::default();
    let intake = arrangement.valves_of(Port::Intake);
    for cylinder in 1..=arrangement.cylinders {
        let row = drawing.row(format!("Cyl {cylinder}"));
        for at in all.iter().copied().filter(|at| at.cylinder() == Some(cylinder)) {
            let At::Valve(_, port, nth) = at else { continue };
            let (before, letter) = if port == Port::Intake { (0, "in") } else { (intake, "ex") };
            drawing.put(PartKind::TappetBore, at, before + nth - 1, row, Symbol::Bush, letter);
        }
    }
    let columns = intake + arrangement.valves_of(Port::Exhaust);
    Some(drawing.finish(Phrase("Bores of the {tappets}"), columns, None, terms))
}

fn cam_bearing_section(arrangement: &Arrangement, terms: Terms) -> Option<PlanSection> {
    use PartKind::*;
    let shafts = arrangement.camshafts();
    if shafts == 0 {
        return None;
    }
    let mut drawing = Drawing::default();
    for shaft in 1..=shafts {
        for bearing in 1..=arrangement.cam_bearings {
            let row = drawing.row(match shafts {
                1 => format!("Bearing {bearing}"),
                _ => format!("Shaft {shaft}, bearing {bearing}"),
            });
            let at = At::CamBearing(shaft, bearing);
            drawing.put(CamJournal, at, 0, row, Symbol::Journal, format!("C{bearing}"));
            drawing.put(CamBearing, at, 1, row, Symbol::Bush, "");
        }
    }
    Some(drawing.finish(Phrase("Camshaft journals and bearings"), 2, Some(0), terms))
}

fn items_section(engine: &Engine, title: Phrase, is_item: impl Fn(&Part) -> bool) -> PlanSection {
    let mut drawing = Drawing::default();
    for (nth, part) in (0u8..).zip(engine.parts().iter().filter(|part| is_item(part))) {
        let (column, row) = (nth % ITEM_COLUMNS, nth / ITEM_COLUMNS);
        if column == 0 {
            drawing.row("");
        }
        drawing.put(part.kind, part.at, column, row, Symbol::Item, engine.label(*part));
    }
    drawing.finish(title, ITEM_COLUMNS, None, engine.terms())
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    #[test]
    fn every_part_has_one_place_and_no_two_share_it() {
        for arrangement in crate::engine::arrangement::examples() {
            let engine = Engine::new(arrangement).unwrap();
            let plan = engine.plan();
            let mut parts = BTreeSet::new();
            for section in &plan.sections {
                let mut places = BTreeSet::new();
                assert_eq!(section.row_labels.len(), usize::from(section.rows));
                assert_eq!(section.column_heads.len(), usize::from(section.columns));
                for cell in &section.cells {
                    assert!(
                        places.insert((cell.row, cell.column)),
                        "two parts at {:?} of {}",
                        (cell.row, cell.column),
                        section.title
                    );
                    assert!(
                        cell.row < section.rows && cell.column < section.columns,
                        "{cell:?} lies outside {}",
                        section.title
                    );
                    assert!(parts.insert(cell.part), "{} is drawn twice", cell.part);
                }
            }
            assert_eq!(parts, engine.parts().iter().copied().collect(), "plan of {:?}", engine.arrangement());
        }
    }
    /// Whoever sees the plan for the first time must be able to say what each symbol stands for.
    #[test]
    fn of_a_v_what_belongs_to_a_cylinder_has_its_bank() {
        let bank = |arrangement, part: &str| {
            let (plan, part) = (Engine::new(arrangement).unwrap().plan(), part.parse::<Part>().unwrap());
            plan.sections.iter().flat_map(|section| &section.cells).find(|cell| cell.part == part).unwrap().bank
        };
        let of_a_v = ["bore.1", "rod-shell.5.lower", "main-journal.1"].map(|part| bank(Arrangement::vee(8), part));
        assert_eq!(of_a_v, [Some(Bank::Left), Some(Bank::Right), None]);
        assert_eq!(bank(Arrangement::inline(4), "bore.1"), None);
    }

    #[test]
    fn every_part_is_named_in_words() {
        for arrangement in crate::engine::arrangement::examples() {
            for section in Engine::new(arrangement).unwrap().plan().sections {
                for cell in &section.cells {
                    let head = &section.column_heads[usize::from(cell.column)];
                    let name = cell.part.kind.row().short.said(Terms::default());
                    let is_headed = head.iter().any(|kind| kind.ends_with(&*name));
                    assert!(is_headed || cell.mark.len() > 3, "{} stands unnamed below {head:?}", cell.part);
                }
            }
        }
    }

    #[track_caller]
    fn heads(arrangement: Arrangement, section: usize, expected: &[&str]) {
        let plan = Engine::new(arrangement).unwrap().plan();
        let heads: Vec<String> = plan.sections[section].column_heads.iter().map(|kinds| kinds.join("/")).collect();
        assert_eq!(heads, expected);
    }

    #[test]
    fn columns_say_what_stands_in_them() {
        let crank = ["bore", "piston", "rings", "housing bore/rod", "upper shell", "journal/crankpin", "lower shell"];
        heads(Arrangement::inline(4), 0, &crank);
        let valve_gear =
            ["intake lobe", "intake tappet", "intake pushrod", "exhaust lobe", "exhaust tappet", "exhaust pushrod"];
        heads(Arrangement::inline(4), 1, &valve_gear);
        heads(Arrangement::inline(4), 2, &["intake tappet bore", "exhaust tappet bore"]);
        heads(Arrangement::inline(4), 3, &["cam journal", "cam bearing"]);
        heads(Arrangement::inline(4), 4, &["", "", "", ""]);
    }
}
