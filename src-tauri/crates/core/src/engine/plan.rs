//! The engine as a plan: a grid of symbols along the crankshaft's centre line, the same on screen and on paper.
//!
//! Rows run from the front of the engine to the rear, columns from the cylinder across the rod to the crankshaft.
//! Only the places are computed here; whoever draws decides on ink and size.

use serde::Serialize;

use super::{Arrangement, At, Engine, Half, Part, PartKind, Port, Station};

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
    /// Columns it takes.
    pub span: u8,
    /// How it is drawn.
    pub symbol: Symbol,
    /// A few letters to stand in the symbol.
    pub mark: String,
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
        let mut sections = vec![crank_section(self.arrangement())];
        sections.extend(valve_section(self.arrangement()));
        sections.extend(cam_bearing_section(self.arrangement()));
        sections.push(items_section(self));
        Plan { sections }
    }
}

struct Drawing {
    cells: Vec<PlanCell>,
}

impl Drawing {
    fn put(&mut self, kind: PartKind, at: At, column: u8, row: u8, symbol: Symbol, mark: impl Into<String>) {
        let part = Part { kind, at };
        self.cells.push(PlanCell { part, column, row, span: 1, symbol, mark: mark.into() });
    }

    fn shells(&mut self, kind: PartKind, at: impl Fn(Half) -> At, row: u8) {
        self.put(kind, at(Half::Upper), JOURNAL_COLUMN - 1, row, Symbol::ShellUpper, "U");
        self.put(kind, at(Half::Lower), JOURNAL_COLUMN + 1, row, Symbol::ShellLower, "L");
    }
}

fn crank_section(arrangement: &Arrangement) -> PlanSection {
    use PartKind::*;
    let mut drawing = Drawing { cells: vec![] };
    let mut row_labels = Vec::new();
    for station in arrangement.crank_line() {
        let row = count(&row_labels);
        match station {
            Station::Main(n) => {
                row_labels.push(format!("Main {n}"));
                if n == arrangement.thrust_main {
                    drawing.put(ThrustFace, At::ThrustSide(super::End::Front), 1, row, Symbol::Thrust, "front");
                    drawing.put(ThrustFace, At::ThrustSide(super::End::Rear), 2, row, Symbol::Thrust, "rear");
                }
                drawing.put(HousingBore, At::Main(n), JOURNAL_COLUMN - 2, row, Symbol::Housing, "");
                drawing.shells(MainShell, |half| At::MainHalf(n, half), row);
                drawing.put(MainJournal, At::Main(n), JOURNAL_COLUMN, row, Symbol::Journal, format!("M{n}"));
            }
            Station::Crankpin(pin) => {
                let cylinders = arrangement.cylinders_on_crankpin(pin);
                for (nth, cylinder) in (0u8..).zip(cylinders) {
                    let row = row + nth;
                    row_labels.push(format!("Cyl {cylinder}"));
                    drawing.put(Bore, At::Cylinder(cylinder), 0, row, Symbol::Bore, cylinder.to_string());
                    drawing.put(Piston, At::Cylinder(cylinder), 1, row, Symbol::Piston, "");
                    drawing.put(Rings, At::Cylinder(cylinder), 2, row, Symbol::Rings, "");
                    drawing.put(Rod, At::Cylinder(cylinder), 3, row, Symbol::Rod, "");
                    drawing.shells(RodShell, |half| At::CylinderHalf(cylinder, half), row);
                }
                drawing.put(Crankpin, At::Crankpin(pin), JOURNAL_COLUMN, row, Symbol::Journal, format!("P{pin}"));
            }
        }
    }
    PlanSection {
        title: "Crankshaft, rods and pistons".into(),
        rows: count(&row_labels),
        columns: CRANK_COLUMNS,
        centre_line: Some(JOURNAL_COLUMN),
        row_labels,
        cells: drawing.cells,
    }
}

fn valve_section(arrangement: &Arrangement) -> Option<PlanSection> {
    use PartKind::*;
    if arrangement.camshafts() == 0 {
        return None;
    }
    let mut drawing = Drawing { cells: vec![] };
    let mut row_labels = Vec::new();
    let tappets = !Tappet.row().positions.all(arrangement).is_empty();
    let per_valve = if tappets { 2 } else { 1 };
    let most = arrangement.valves_of(Port::Intake).max(arrangement.valves_of(Port::Exhaust));
    for cylinder in 1..=arrangement.cylinders {
        for nth in 1..=most {
            let row = count(&row_labels);
            row_labels.push(if nth == 1 { format!("Cyl {cylinder}") } else { String::new() });
            for (port, first, letter) in [(Port::Intake, 0, "in"), (Port::Exhaust, per_valve, "ex")] {
                if nth > arrangement.valves_of(port) {
                    continue;
                }
                let at = At::Valve(cylinder, port, nth);
                drawing.put(Lobe, at, first, row, Symbol::Lobe, letter);
                if tappets {
                    drawing.put(Tappet, at, first + 1, row, Symbol::Tappet, letter);
                }
            }
        }
    }
    Some(PlanSection {
        title: if tappets { "Cam lobes and tappets" } else { "Cam lobes" }.into(),
        rows: count(&row_labels),
        columns: 2 * per_valve,
        centre_line: None,
        row_labels,
        cells: drawing.cells,
    })
}

fn cam_bearing_section(arrangement: &Arrangement) -> Option<PlanSection> {
    use PartKind::*;
    let shafts = arrangement.camshafts();
    if shafts == 0 {
        return None;
    }
    let mut drawing = Drawing { cells: vec![] };
    let mut row_labels = Vec::new();
    for shaft in 1..=shafts {
        for bearing in 1..=arrangement.cam_bearings {
            let row = count(&row_labels);
            row_labels.push(if shafts > 1 { format!("{shaft} / {bearing}") } else { bearing.to_string() });
            let at = At::CamBearing(shaft, bearing);
            drawing.put(CamJournal, at, 0, row, Symbol::Journal, format!("C{bearing}"));
            drawing.put(CamBearing, at, 1, row, Symbol::Bush, "");
        }
    }
    Some(PlanSection {
        title: "Camshaft journals and bearings".into(),
        rows: count(&row_labels),
        columns: 2,
        centre_line: Some(0),
        row_labels,
        cells: drawing.cells,
    })
}

fn items_section(engine: &Engine) -> PlanSection {
    let is_item = |part: &&Part| matches!(part.at, At::Engine | At::Camshaft(_));
    let cells: Vec<PlanCell> = (0u8..)
        .zip(engine.parts().iter().filter(is_item))
        .map(|(nth, part)| PlanCell {
            part: *part,
            column: nth % ITEM_COLUMNS,
            row: nth / ITEM_COLUMNS,
            span: 1,
            symbol: Symbol::Item,
            mark: part.label(engine.arrangement()),
        })
        .collect();
    let rows = cells.last().map_or(0, |cell| cell.row + 1);
    PlanSection {
        title: "Single items".into(),
        rows,
        columns: ITEM_COLUMNS,
        centre_line: None,
        row_labels: vec![String::new(); usize::from(rows)],
        cells,
    }
}

/// The largest plan has 16 cylinders with three rows of valves each: far below 255.
fn count(labels: &[String]) -> u8 {
    u8::try_from(labels.len()).unwrap_or(u8::MAX)
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
            assert_eq!(parts, engine.known, "plan of {:?}", engine.arrangement());
        }
    }
}
