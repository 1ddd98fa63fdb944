//! Where everything of a plan stands on paper: sections side by side where they fit, one sheet after another.

use std::collections::BTreeMap;

use wearbook_core::engine::{Part, Plan, PlanCell, PlanSection, Symbol};
use wearbook_core::view::Seen;
use wearbook_core::wear::Grade;

use super::Point;
use super::hatch::Ink;
use super::outline::outline;
use super::packing::Packing;
use super::svg::{Anchor, Face, Svg};

/// Room for a drawing: the width of the text on A4, and a height that leaves place for a heading and the key.
const SHEET: (f64, f64) = (164.0, 200.0);
/// A symbol's cell.
const CELL: (f64, f64) = (11.6, 10.4);
/// A single item's cell: a field for the ink and the name beside it.
const ITEM: (f64, f64) = (41.0, 8.6);
/// Room for the row labels, and for each letter of a long one.
const LABELS: f64 = 13.0;
const LETTER: f64 = 1.5;
/// Room for a section's title and the heads of its columns.
const HEAD: f64 = 13.2;
/// Between two sections.
const GAP: f64 = 5.0;
/// One page of the plan.
#[derive(Debug)]
pub(crate) struct Page {
    /// The drawing.
    pub(crate) svg: String,
    /// Its width in millimetres.
    pub(crate) width: f64,
    /// The titles of the sections on it.
    pub(crate) titles: String,
}

type Looks = BTreeMap<Part, Ink>;

/// Draws a plan on as few pages as it can do with.
pub(crate) fn pages(plan: &Plan, ink: &[(Part, Seen, Option<Grade>)]) -> Vec<Page> {
    let looks: Looks = ink.iter().map(|(part, seen, worst)| (*part, Ink::of(*seen, *worst))).collect();
    let mut pages = vec![];
    let mut table = Table::new();
    let most_rows = table.rows();
    for tile in plan.sections.iter().flat_map(|section| tiles(section, most_rows)) {
        let at = table.packing.place(tile.size()).unwrap_or_else(|| {
            pages.extend(std::mem::replace(&mut table, Table::new()).finish());
            table.packing.place(tile.size()).unwrap_or_default()
        });
        tile.draw(&mut table.svg, at, &looks);
        table.title(tile.section);
    }
    pages.extend(table.finish());
    pages
}

/// Some rows of a section.
struct Tile<'a> {
    section: &'a PlanSection,
    first_row: u8,
    rows: u8,
}

/// Cuts a section into runs of about equal length.
fn tiles(section: &PlanSection, most_rows: u8) -> impl Iterator<Item = Tile<'_>> {
    let runs = section.rows.div_ceil(most_rows.max(1));
    let rows = section.rows.div_ceil(runs.max(1));
    (0..runs).map(move |run| {
        let first_row = run * rows;
        Tile { section, first_row, rows: rows.min(section.rows - first_row) }
    })
}

impl Tile<'_> {
    fn holds_items(&self) -> bool {
        self.section.cells.iter().any(|cell| cell.symbol == Symbol::Item)
    }

    fn cell(&self) -> (f64, f64) {
        if self.holds_items() { ITEM } else { CELL }
    }

    fn labels(&self) -> f64 {
        match self.section.row_labels.iter().map(|label| label.chars().count()).max() {
            None | Some(0) => 0.0,
            Some(letters) => LABELS.max(LETTER * u32::try_from(letters).map_or(0.0, f64::from)),
        }
    }

    fn head(&self) -> f64 {
        if self.holds_items() { HEAD - 5.2 } else { HEAD }
    }

    fn size(&self) -> (f64, f64) {
        let (width, height) = self.cell();
        let width = self.labels() + width * f64::from(self.section.columns);
        (width.max(3.0 * CELL.0 + LABELS), self.head() + height * f64::from(self.rows))
    }

    fn cells(&self) -> impl Iterator<Item = &PlanCell> {
        let rows = self.first_row..self.first_row + self.rows;
        self.section.cells.iter().filter(move |cell| rows.contains(&cell.row))
    }

    fn draw(&self, svg: &mut Svg, (left, top): Point, looks: &Looks) {
        let (cell_width, cell_height) = self.cell();
        let continued = if self.first_row > 0 { ", continued" } else { "" };
        let title = format!("{}{continued}", self.section.title);
        svg.letters((left, top + 2.0), Anchor::Start, Face::Words(3.7), &title);
        svg.line((left, top + 4.6), (left + self.size().0, top + 4.6));
        let middle = |column: u8, row: u8| {
            let x = left + self.labels() + (f64::from(column) + 0.5) * cell_width;
            (x, top + self.head() + (f64::from(row - self.first_row) + 0.5) * cell_height)
        };
        for (nth, label) in (0u8..).zip(&self.section.row_labels).skip(self.first_row.into()).take(self.rows.into()) {
            svg.letters((left, middle(0, nth).1), Anchor::Start, Face::Figures(2.4), label);
        }
        if self.holds_items() {
            self.cells().for_each(|cell| draw_item(svg, middle(cell.column, cell.row), cell, look(looks, cell)));
            return;
        }
        for (column, kinds) in (0u8..).zip(&self.section.column_heads) {
            for (nth, head) in (0u8..).zip(head_lines(kinds)) {
                let at = (middle(column, self.first_row).0, top + 7.6 + 2.9 * f64::from(nth));
                svg.letters(at, Anchor::Middle, Face::Italic(2.7), head);
            }
        }
        for cell in self.cells() {
            svg.shape(middle(cell.column, cell.row), &outline(cell.symbol).contours, look(looks, cell));
        }
        if let Some(column) = self.section.centre_line {
            let ((x, first), (_, last)) =
                (middle(column, self.first_row), middle(column, self.first_row + self.rows - 1));
            svg.centre_line((x, first - cell_height / 2.0), (x, last + cell_height / 2.0));
        }
        // The letters come last, on a clear ground: hatching and centre lines give way to lettering.
        self.cells().for_each(|cell| draw_mark(svg, middle(cell.column, cell.row), cell));
    }
}

/// The head of a column on two lines at most: two kinds of part, or the words of one.
fn head_lines(kinds: &[String]) -> Vec<&str> {
    if let [only] = kinds {
        return only.split_whitespace().collect();
    }
    // The longer name goes below, where there is more room at its sides.
    let mut lines: Vec<&str> = kinds.iter().take(2).map(String::as_str).collect();
    lines.sort_by_key(|line| line.len());
    lines
}

fn look(looks: &Looks, cell: &PlanCell) -> Ink {
    looks.get(&cell.part).copied().unwrap_or(Ink::Dashed)
}

fn draw_mark(svg: &mut Svg, (x, y): Point, cell: &PlanCell) {
    if cell.mark.is_empty() {
        return;
    }
    let mark = outline(cell.symbol).mark;
    let at = (x + mark.at.0, y + mark.at.1);
    if mark.free > 0.0 {
        svg.disc(at, mark.free);
    }
    if cell.symbol == Symbol::Thrust {
        for (y, word) in [-1.3, 1.3].into_iter().zip(cell.mark.split_whitespace()) {
            svg.letters((at.0, at.1 + y), Anchor::Start, Face::Italic(2.5), word);
        }
        return;
    }
    let size = if cell.mark.chars().count() > 2 { 1.9 } else { 2.3 };
    svg.letters(at, Anchor::Middle, Face::Figures(size), &cell.mark);
}

/// The longest line of an item's name, in letters.
const NAME: usize = 20;

fn draw_item(svg: &mut Svg, (x, y): Point, cell: &PlanCell, ink: Ink) {
    let left = x - ITEM.0 / 2.0;
    svg.shape((left + 4.4, y), &outline(cell.symbol).contours, ink);
    let lines = name_lines(&cell.mark);
    let pitch = 3.3;
    let first = y - pitch * (f64::from(u8::from(lines.len() > 1))) / 2.0;
    for (nth, line) in (0u8..).zip(&lines) {
        svg.letters((left + 10.4, first + pitch * f64::from(nth)), Anchor::Start, Face::Words(3.1), line);
    }
}

/// A name on at most two lines.
fn name_lines(name: &str) -> Vec<String> {
    let mut lines: Vec<String> = vec![String::new()];
    for word in name.split_whitespace() {
        let full =
            lines.last().is_some_and(|line| !line.is_empty() && line.chars().count() + word.chars().count() >= NAME);
        if full && lines.len() < 2 {
            lines.push(String::new());
        }
        if let Some(line) = lines.last_mut() {
            let space = if line.is_empty() { "" } else { " " };
            *line += &format!("{space}{word}");
        }
    }
    lines.iter().map(|line| crate::clean::shortened(line, NAME + 3)).collect()
}

/// A sheet under way.
#[derive(Debug, Default)]
struct Table {
    packing: Packing,
    svg: Svg,
    titles: Vec<String>,
}

impl Table {
    fn new() -> Self {
        Self { packing: Packing::new(SHEET, GAP), ..Self::default() }
    }

    /// Rows of symbols that there is room for below a section's head.
    fn rows(&self) -> u8 {
        let fits = |rows: &u8| HEAD + CELL.1 * f64::from(*rows) <= self.packing.room.1;
        (1..=u8::MAX).take_while(fits).last().unwrap_or(1)
    }

    fn title(&mut self, section: &PlanSection) {
        self.titles.push(section.title.clone());
    }

    /// The finished sheet; none when nothing is on it.
    fn finish(mut self) -> Option<Page> {
        self.titles.dedup();
        let titles = self.titles.join(", ");
        let svg = self.svg.finish((self.packing.room.0, self.packing.bottom + 1.0), 1.0);
        (!titles.is_empty()).then_some(Page { svg, width: SHEET.0, titles })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::engine::{Arrangement, Engine};

    fn drawn(arrangement: Arrangement) -> Vec<Page> {
        let engine = Engine::new(arrangement).unwrap();
        let ink: Vec<_> = engine.parts().iter().map(|part| (*part, Seen::Clean, None)).collect();
        pages(&engine.plan(), &ink)
    }

    #[test]
    fn every_item_is_named_once() {
        let engine = Engine::new(Arrangement::inline(6)).unwrap();
        let all: String = drawn(Arrangement::inline(6)).iter().map(|page| page.svg.as_str()).collect();
        let plan = engine.plan();
        let cells = plan.sections.iter().flat_map(|section| &section.cells);
        let items = cells.filter(|cell| cell.symbol == Symbol::Item);
        let lines: Vec<String> = items.flat_map(|cell| name_lines(&cell.mark)).collect();
        for line in &lines {
            // Two names may share a line: a drive, and its shaft.
            let named = lines.iter().filter(|other| *other == line).count();
            assert_eq!(all.matches(&format!(">{line}<")).count(), named, "{line}");
        }
    }

    #[test]
    fn small_engines_take_one_sheet_and_large_ones_go_on() {
        for cylinders in 1..=6 {
            // With everything taken apart; what is looked at with another part is left out where a paper is made.
            assert!(drawn(Arrangement::inline(cylinders)).len() <= 3, "in-line {cylinders}");
        }
        for cylinders in [2, 4, 6, 8, 10, 12, 16] {
            assert!((1..=6).contains(&drawn(Arrangement::vee(cylinders)).len()), "V{cylinders}");
        }
    }

    #[test]
    fn what_was_not_looked_at_is_dashed() {
        let engine = Engine::new(Arrangement::inline(4)).unwrap();
        let unseen = pages(&engine.plan(), &[]);
        let dashed = |page: &Page| page.svg.matches(r#"stroke-dasharray="0.9 0.75""#).count();
        assert_eq!(unseen.iter().map(dashed).sum::<usize>(), engine.parts().len());
        assert_eq!(drawn(Arrangement::inline(4))[0].svg.matches(r#"stroke-dasharray="0.9 0.75""#).count(), 0);
    }

    #[test]
    fn names_take_two_lines_at_most() {
        assert_eq!(name_lines("Oil pump"), ["Oil pump"]);
        assert_eq!(name_lines("Distributor or pump drive"), ["Distributor or pump", "drive"]);
        assert_eq!(name_lines(&"long ".repeat(20)).len(), 2);
    }
}
