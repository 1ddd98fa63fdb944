//! A paper as the template reads it: cleaned text as JSON, pictures and drawings by number.

use serde_json::{Value, json};
use wearbook_core::document::{Block, Paper, Picture};
use wearbook_core::job::PhotoId;

use crate::clean::{breakable, line, lines, shortened};
use crate::drawing;
use crate::picture::Printable;

/// Where a picture's bytes come from.
pub(crate) type Pictures<'a> = &'a mut dyn FnMut(&PhotoId) -> Option<Vec<u8>>;

/// Everything that the template needs.
#[derive(Debug)]
pub(crate) struct Content {
    /// The text, with pictures and drawings referred to by their number.
    pub(crate) paper: Value,
    /// The pictures that can be printed.
    pub(crate) pictures: Vec<Printable>,
    /// The plans, as SVG.
    pub(crate) drawings: Vec<String>,
}

impl Content {
    /// Cleans all text, asks for every picture once, draws every plan.
    pub(crate) fn new(paper: &Paper, pictures: Pictures<'_>) -> Self {
        let mut writer = Writer { bytes: pictures, pictures: vec![], drawings: vec![], depth: 0 };
        let blocks: Vec<Value> = paper.blocks.iter().filter_map(|block| writer.block(block)).collect();
        let title = Some(line(&paper.title)).filter(|title| !title.is_empty()).unwrap_or_else(|| "Untitled".into());
        let subtitle = line(&paper.subtitle);
        let (year, month, day) = paper.date;
        let paper = json!({
            "title": title,
            "heading": breakable(&title),
            "subtitle": breakable(&subtitle),
            "short-title": shortened(&title, 60),
            "short-subtitle": shortened(&subtitle, 60),
            "date": [year, month, day],
            "blocks": blocks,
        });
        Self { paper, pictures: writer.pictures, drawings: writer.drawings }
    }

    /// The same without pictures: each leaves its empty frame.
    pub(crate) fn without_pictures(paper: &Paper) -> Self {
        Self::new(paper, &mut |_| None)
    }
}

struct Writer<'a> {
    bytes: Pictures<'a>,
    pictures: Vec<Printable>,
    drawings: Vec<String>,
    /// Level of the last heading; the outline of an accessible PDF may not leave a level out.
    depth: u8,
}

impl Writer<'_> {
    /// The block as the template reads it; none when nothing would be printed.
    fn block(&mut self, block: &Block) -> Option<Value> {
        Some(match block {
            Block::Heading { level, text } => self.heading(*level, text)?,
            Block::Paragraph(text) => spoken("paragraph", text)?,
            Block::Lead(text) => spoken("lead", text)?,
            Block::Caution(text) => spoken("caution", text)?,
            Block::Points(points) => {
                let points = inked(points);
                if points.is_empty() {
                    return None;
                }
                json!({ "kind": "points", "points": points })
            }
            Block::Facts(facts) if facts.is_empty() => return None,
            Block::Facts(facts) => {
                let facts: Vec<[String; 2]> =
                    facts.iter().map(|(name, value)| [one_line(name), several_lines(value)]).collect();
                json!({ "kind": "facts", "facts": facts })
            }
            Block::Table { summary, head, widths, rows } => table(summary, head, widths, rows)?,
            Block::Plan { plan, ink, alt } => self.plan(drawing::sheets(plan, ink), alt)?,
            Block::Findings { part, seen, worst, lines, note, outcome, pictures } => json!({
                "kind": "findings",
                "level": self.depth.saturating_add(1),
                "part": one_line(part),
                "swatch": self.draw(drawing::swatch(*seen, *worst)),
                "lines": inked(lines),
                "note": several_lines(note),
                "outcome": one_line(outcome),
                "pictures": pictures.iter().map(|picture| self.picture(picture)).collect::<Vec<_>>(),
            }),
            Block::Signature { name, strokes } => json!({
                "kind": "signature",
                "drawing": (!strokes.is_empty()).then(|| self.draw(drawing::signature(strokes))),
                "name": one_line(name),
                "alt": format!("Signature of {}", line(name)),
            }),
            Block::NewPage => json!({ "kind": "new-page" }),
        })
    }

    fn heading(&mut self, level: u8, text: &str) -> Option<Value> {
        let text = one_line(text);
        if text.is_empty() {
            return None;
        }
        self.depth = level.clamp(1, self.depth.saturating_add(1)).min(2);
        Some(json!({ "kind": "heading", "level": self.depth, "text": text }))
    }

    fn plan(&mut self, sheets: Vec<drawing::Sheet>, alt: &str) -> Option<Value> {
        if sheets.is_empty() {
            return None;
        }
        let alt = worded(alt, "The engine as a plan");
        let mut placed = Vec::new();
        for (nth, sheet) in sheets.into_iter().enumerate() {
            let alt = if nth == 0 { alt.clone() } else { format!("The plan, continued: {}", line(&sheet.titles)) };
            placed.push(json!({ "drawing": self.draw(sheet.svg), "width": sheet.width, "alt": alt }));
        }
        let key: Vec<Value> = drawing::key()
            .into_iter()
            .map(|(svg, words)| json!({ "drawing": self.draw(svg), "words": words }))
            .collect();
        Some(json!({ "kind": "plan", "sheets": placed, "key": key }))
    }

    /// Takes a drawing in and gives its number.
    fn draw(&mut self, svg: String) -> usize {
        self.drawings.push(svg);
        self.drawings.len() - 1
    }

    fn picture(&mut self, picture: &Picture) -> Value {
        let alt = worded(&picture.alt, "Photo");
        let Some(printable) = (self.bytes)(&picture.photo).and_then(Printable::check) else {
            return json!({ "picture": null, "ratio": 4.0 / 3.0, "alt": alt, "caption": breakable(&alt) });
        };
        let number = self.pictures.len();
        let caption = breakable(&alt);
        let value = json!({
            "picture": number,
            "ratio": printable.ratio(),
            "alt": alt,
            "caption": caption,
        });
        self.pictures.push(printable);
        value
    }
}

fn table(summary: &str, head: &[String], widths: &[u8], rows: &[Vec<String>]) -> Option<Value> {
    if head.is_empty() || rows.is_empty() {
        return None;
    }
    let fitted = |row: &[String]| -> Vec<String> {
        let cells = row.iter().map(|cell| several_lines(cell));
        cells.chain(std::iter::repeat(String::new())).take(head.len()).collect()
    };
    let widths: Vec<u8> =
        widths.iter().map(|width| (*width).max(1)).chain(std::iter::repeat(1)).take(head.len()).collect();
    Some(json!({
        "kind": "table",
        "summary": worded(summary, "Table"),
        "head": fitted(head),
        "widths": widths,
        "rows": rows.iter().map(|row| fitted(row)).collect::<Vec<_>>(),
    }))
}

fn spoken(kind: &str, text: &str) -> Option<Value> {
    let text = several_lines(text);
    if text.is_empty() { None } else { Some(json!({ "kind": kind, "text": text })) }
}

/// The lines that have something on them.
fn inked(texts: &[String]) -> Vec<String> {
    texts.iter().map(|text| one_line(text)).filter(|text| !text.is_empty()).collect()
}

fn one_line(text: &str) -> String {
    breakable(&line(text))
}

fn several_lines(text: &str) -> String {
    breakable(&lines(text))
}

/// The words, or others where there are none: a picture without words can't be read aloud.
fn worded(text: &str, otherwise: &str) -> String {
    let text = line(text);
    if text.is_empty() { otherwise.into() } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::assess::Seen;

    fn levels(blocks: Vec<Block>) -> Vec<u64> {
        let paper = Paper { title: "T".into(), subtitle: String::new(), date: (2024, 1, 1), blocks };
        let content = Content::without_pictures(&paper);
        let blocks = content.paper["blocks"].as_array().unwrap().clone();
        blocks.iter().map(|block| block["level"].as_u64().unwrap()).collect()
    }

    fn heading(level: u8) -> Block {
        Block::Heading { level, text: "H".into() }
    }

    fn findings() -> Block {
        Block::Findings {
            part: "P".into(),
            seen: Seen::Clean,
            worst: None,
            lines: vec![],
            note: String::new(),
            outcome: String::new(),
            pictures: vec![],
        }
    }

    #[test]
    fn no_heading_leaves_a_level_out() {
        assert_eq!(levels(vec![findings(), heading(2), findings(), heading(2), findings()]), [1, 1, 2, 2, 3]);
        assert_eq!(levels(vec![heading(0), heading(200), heading(1), findings()]), [1, 2, 1, 2]);
    }

    #[test]
    fn a_crooked_table_is_made_straight() {
        let value =
            table("", &["a".into(), "b".into()], &[0], &[vec!["1".into()], vec!["1".into(), "2".into(), "3".into()]]);
        let value = value.unwrap();
        assert_eq!(value["rows"], json!([["1", ""], ["1", "2"]]));
        assert_eq!(value["widths"], json!([1, 1]));
    }
}
