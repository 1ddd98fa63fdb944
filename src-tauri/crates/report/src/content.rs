//! A paper as the template reads it: cleaned text as JSON, pictures and drawings by number.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::{Value, json};
use typst_kit::fonts::FontStore;
use wearbook_core::document::{
    Block, CustomersPage, FormDrawing, Image, MeasuredRow, Paper, Picture, PlanDrawing, ProposalHead, Reader, Section,
    Shown, Total, ZoneDrawing,
};
use wearbook_core::job::{Consent, PhotoId};

use crate::clean::{breakable, line, lines, shortened};
use crate::direction::isolated;
use crate::drawing;
use crate::fonts::fonts_for;
use crate::picture::Printable;
use crate::unbroken::unbroken;

/// The pictures of a paper that can be printed.
pub(crate) type Pictures = BTreeMap<PhotoId, Printable>;

/// Everything that the template needs.
pub(crate) struct Content {
    /// The text, with pictures and drawings referred to by their number.
    pub(crate) paper: Value,
    /// The pictures that can be printed.
    pub(crate) pictures: Vec<Printable>,
    /// The plans, as SVG.
    pub(crate) drawings: Vec<String>,
    /// The fonts to set it with, if the embedded ones lack letters.
    pub(crate) fonts: Option<FontStore>,
}

impl Content {
    /// Cleans all text, puts in every picture that is there, draws every plan.
    pub(crate) fn new(paper: &Paper, pictures: &Pictures) -> Self {
        let mut writer = Writer::new(pictures);
        let mut blocks: Vec<Value> = paper.blocks.iter().filter_map(|block| writer.block(block)).collect();
        let title = Some(line(&paper.title)).filter(|title| !title.is_empty()).unwrap_or_else(|| "Untitled".into());
        let subtitle = line(&paper.subtitle);
        let found = fonts_for(&format!("{title} {subtitle} {}", Value::from(blocks.clone())));
        if !found.missing.is_empty() {
            let own_page = |block: &Value| block["kind"] == "customers-page";
            let at = blocks.iter().take_while(|block| own_page(block)).count();
            blocks.insert(at, json!({ "kind": "caution", "text": notice(&found.missing) }));
        }
        // What a reader of files shows: which paper, whose, of which machine.
        let (customer, is_trade) = match &paper.reader {
            Reader::Customer(name) => (line(name), false),
            Reader::Trade => (String::new(), true),
        };
        let name = [title.clone(), customer, line(&paper.subject)];
        let name: Vec<String> = name.into_iter().filter(|part| !part.is_empty()).collect();
        let name = name.join(", ");
        let date = paper.date;
        let zone_key = writer.zone_key();
        let mut paper = json!({
            "title": title,
            "heading": isolated(&breakable(&shortened(&title, HEAD))),
            "subtitle": isolated(&breakable(&shortened(&subtitle, HEAD))),
            "short-title": isolated(&shortened(&title, 60)),
            "short-subtitle": isolated(&shortened(&line(&paper.subject), 60)),
            "name": name,
            "trade": is_trade,
            "zone-key": zone_key,
            "date": [date.year(), date.month(), date.day()],
            "blocks": blocks,
        });
        if !found.missing.is_empty() {
            replace(&mut paper, &found.missing);
        }
        Self { paper, pictures: writer.pictures, drawings: writer.drawings, fonts: found.store }
    }

    /// The same without pictures: each leaves its empty frame.
    pub(crate) fn without_pictures(paper: &Paper) -> Self {
        Self::new(paper, &Pictures::new())
    }
}

/// The pictures of a paper, in order.
pub(crate) fn pictures(paper: &Paper) -> impl Iterator<Item = &Picture> {
    printed(paper).map(|(picture, _)| picture)
}

/// The pictures of a paper, in order, each with its long side in pixels where it is printed at 300 to the inch: in
/// frames of 80 by 62 mm, of 55 by 44 mm on the customer's page, and of 40 by 32 mm.
pub(crate) fn printed(paper: &Paper) -> impl Iterator<Item = (&Picture, u32)> {
    paper.blocks.iter().flat_map(|block| {
        let (shown, side): (&[Shown], u32) = match block {
            Block::CustomersPage(page) => (&page.shown, 650),
            Block::Photos { shown, small: false } => (shown, 945),
            Block::Photos { shown, small: true } => (shown, 470),
            _ => (&[], 0),
        };
        shown.iter().filter_map(move |one| Some((one.photo()?, side)))
    })
}

/// Letters named in the notice before the rest is counted.
const MISSING_NAMED: usize = 12;

fn notice(missing: &BTreeSet<char>) -> String {
    let named: Vec<String> = missing.iter().take(MISSING_NAMED).map(|c| format!("U+{:04X}", u32::from(*c))).collect();
    let more = missing.len().saturating_sub(MISSING_NAMED);
    let more = if more > 0 { format!(" and {more} more") } else { String::new() };
    format!(
        "Some letters could not be printed, for no font on this device has them; each is shown as {REPLACEMENT}. The same paper as plain text has them all. They are {}{more}.",
        named.join(", ")
    )
}

/// What stands for a letter that can't be shown (Unicode, section 23.8).
const REPLACEMENT: char = '\u{fffd}';

/// Puts the replacement for every missing letter, everywhere.
pub(crate) fn replace(value: &mut Value, missing: &BTreeSet<char>) {
    match value {
        Value::String(text) if text.chars().any(|letter| missing.contains(&letter)) => {
            *text = text.chars().map(|letter| if missing.contains(&letter) { REPLACEMENT } else { letter }).collect();
        }
        Value::Array(values) => values.iter_mut().for_each(|value| replace(value, missing)),
        Value::Object(values) => values.values_mut().for_each(|value| replace(value, missing)),
        _ => {}
    }
}

/// Longest title or subtitle as it stands on the first page, in characters.
const HEAD: usize = 240;
/// Longest typed text on the customer's page, in characters.
const BRIEF: usize = 140;
/// Lines of the shop's address there.
const SHOP_LINES: usize = 5;

struct Writer<'a> {
    printable: &'a Pictures,
    pictures: Vec<Printable>,
    drawings: Vec<String>,
    /// Level of the last heading; the outline of an accessible PDF may not leave a level out.
    depth: u8,
}

impl<'a> Writer<'a> {
    fn new(printable: &'a Pictures) -> Self {
        Writer { printable, pictures: vec![], drawings: vec![], depth: 0 }
    }

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
            Block::Table { summary, head, widths, rows, to_fill } => table(summary, head, widths, rows, *to_fill)?,
            Block::Blanks(names) if names.is_empty() => return None,
            Block::Blanks(names) => json!({ "kind": "blanks", "names": inked(names) }),
            Block::CustomersPage(page) => self.customers_page(page),
            Block::Photos { shown, .. } if shown.is_empty() => return None,
            Block::Photos { shown, small } => json!({
                "kind": "photos",
                "small": small,
                "shown": shown.iter().map(|one| self.shown(one)).collect::<Vec<_>>(),
            }),
            Block::Contents => json!({ "kind": "contents" }),
            Block::Plan(PlanDrawing { plan, ink, alt }) => self.plan(drawing::pages(plan, ink), alt)?,
            Block::Measured { summary, rows } => self.measured(summary, rows)?,
            Block::BarKey => json!({ "kind": "bar-key", "drawing": self.draw(drawing::sample()) }),
            Block::Forms { hollow, parts } => self.forms(*hollow, parts)?,
            Block::Signature { name, strokes } => json!({
                "kind": "signature",
                "drawing": (!strokes.is_empty()).then(|| self.draw(drawing::signature(strokes))),
                "name": one_line(name),
                "open": line(name).is_empty(),
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

    fn plan(&mut self, pages: Vec<drawing::Page>, alt: &str) -> Option<Value> {
        if pages.is_empty() {
            return None;
        }
        let alt = worded(alt, "The engine as a plan");
        let mut placed = Vec::new();
        for (nth, page) in pages.into_iter().enumerate() {
            let alt = if nth == 0 { alt.clone() } else { format!("The plan, continued: {}", line(&page.titles)) };
            placed.push(json!({ "drawing": self.draw(page.svg), "width": page.width, "alt": alt }));
        }
        Some(json!({ "kind": "plan", "pages": placed, "key": self.key() }))
    }

    fn key(&mut self) -> Vec<Value> {
        let steps = drawing::key().into_iter();
        steps.map(|(svg, words)| json!({ "drawing": self.draw(svg), "words": words })).collect()
    }

    /// The key of the grades alone, for parts that are drawn with their zones.
    fn zone_key(&mut self) -> Vec<Value> {
        drawing::grades().into_iter().map(|(svg, words)| json!([self.draw(svg), words])).collect()
    }

    fn customers_page(&mut self, page: &CustomersPage) -> Value {
        self.depth = 2;
        // It is one page: what was typed at length stands in full further on.
        let brief = |text: &str| isolated(&breakable(&shortened(&line(text), BRIEF)));
        let CustomersPage { proposal, total, .. } = page;
        let shown: Vec<Value> = page.shown.iter().map(|one| self.shown(one)).collect();
        let told = page.told.iter().map(|row| {
            json!({ "told": one_line(&row.told), "answer": one_line(&row.answer), "found": one_line(&row.found) })
        });
        let how = page.how.iter().map(|link| json!({ "head": link.head, "words": one_line(&link.words) }));
        let currency = total.as_ref().map(|total| total.currency.as_str()).unwrap_or_default();
        let jobs = page.jobs.iter().map(|job| {
            json!({
                "number": job.number,
                "title": one_line(&job.title),
                "because": one_line(&job.because),
                "if-left": one_line(&job.if_left),
                "need": job.need.words(),
                "price": job.price_figures(),
                "price-words": job.price_words(currency),
                "answer": job.answer.map(Consent::words),
            })
        });
        let choices = page.choices.iter().map(|choice| one_line(&choice.words()));
        let total = total.as_ref().map(|total| {
            json!({
                "currency": total.currency,
                "net": total.net,
                "tax": total.tax,
                "tax-rate": total.tax_rate,
                "gross": total.gross,
                "all": Total::ALL_JOBS,
                "agreed": total.agreed.as_ref().map(|own| {
                    json!({ "head": own.head(), "net": own.net, "tax": own.tax, "gross": own.gross })
                }),
                "sum-words": total.sum_words(),
                "left-out": one_line(&total.left_out),
                "beside": inked(&total.beside),
            })
        });
        let signature = &proposal.signature;
        json!({
            "kind": "customers-page",
            "headings": Section::ALL.map(|section| page.heading(section)),
            "shop": page.shop.iter().take(SHOP_LINES).map(|text| brief(text)).collect::<Vec<_>>(),
            "facts": page.facts.iter().map(|(name, value)| [one_line(name), brief(value)]).collect::<Vec<_>>(),
            "advice": one_line(&page.advice),
            "told": told.collect::<Vec<_>>(),
            "found": inked(&page.found),
            "shown": shown,
            "how": how.collect::<Vec<_>>(),
            "besides": inked(&page.besides),
            "jobs": jobs.collect::<Vec<_>>(),
            "choices": choices.collect::<Vec<_>>(),
            "total": total,
            "unpriced": one_line(&page.unpriced),
            "not-examined": one_line(&page.not_examined),
            "asked": inked(&page.asked),
            "proposal": {
                "number": proposal.number,
                "dates": proposal.dates(),
                "how-to-answer": ProposalHead::HOW_TO_ANSWER,
                "said-since": inked(&proposal.said_since),
                "since": inked(&proposal.since),
                "answered": brief(&proposal.answered),
                "is-open": proposal.is_open(),
                "signature": (!signature.is_empty()).then(|| self.draw(drawing::signature(signature))),
                "alt": format!("Signature of {}", line(&proposal.answered)),
            },
        })
    }

    fn measured(&mut self, summary: &str, rows: &[MeasuredRow]) -> Option<Value> {
        if rows.is_empty() {
            return None;
        }
        let rows: Vec<Value> = rows
            .iter()
            .map(|row| {
                let words = [&row.part, &row.what, &row.shown, &row.limits, &row.verdict].map(|text| one_line(text));
                json!({ "words": words, "drawing": self.draw(drawing::bar(&row.bar)) })
            })
            .collect();
        Some(json!({ "kind": "measured", "summary": worded(summary, "Table"), "rows": rows }))
    }

    fn forms(&mut self, hollow: bool, parts: &[FormDrawing]) -> Option<Value> {
        if parts.is_empty() {
            return None;
        }
        let (drawn, factor) = drawing::forms(hollow, parts);
        let drawn: Vec<Value> = drawn
            .into_iter()
            .zip(parts)
            .map(|(svg, part)| {
                let alt = worded(&part.alt, "The form of a part");
                json!({ "drawing": self.draw(svg), "label": one_line(&part.label), "alt": alt })
            })
            .collect();
        let across = if hollow {
            "Full line: along the crankshaft; dashes: across it"
        } else {
            "Full line: upright; dashes: across"
        };
        let new = if hollow { "narrowest" } else { "thickest" };
        let caption = format!(
            "{across}. Dots: the {new} place measured. Deviations are drawn {factor} times as large as they are."
        );
        Some(json!({ "kind": "forms", "parts": drawn, "caption": caption }))
    }

    fn shown(&mut self, shown: &Shown) -> Value {
        let mut value = match &shown.image {
            Image::Photo(picture) => self.picture(picture),
            Image::Zones(zones) => self.zones(zones),
        };
        if let Some(fields) = value.as_object_mut() {
            fields.insert("caption".into(), one_line(&shown.caption()).into());
        }
        value
    }

    fn zones(&mut self, zones: &ZoneDrawing) -> Value {
        json!({ "drawn": self.draw(drawing::zones(zones)), "alt": worded(&zones.alt, "The part with its zones") })
    }

    /// Takes a drawing in and gives its number.
    fn draw(&mut self, svg: String) -> usize {
        self.drawings.push(svg);
        self.drawings.len() - 1
    }

    fn picture(&mut self, picture: &Picture) -> Value {
        let told = worded(&picture.alt, "Photo");
        // Those who see the picture see its lines, too; only the numbers have to be explained to them.
        let with = |more: String| if more.is_empty() { told.clone() } else { format!("{told}. Drawn on it: {more}") };
        let (alt, caption) = (with(line(&picture.drawn())), breakable(&with(line(&picture.notes().join("; ")))));
        let Some(printable) = self.printable.get(&picture.photo) else {
            return json!({ "picture": null, "ratio": 4.0 / 3.0, "alt": alt, "caption": caption });
        };
        let number = self.pictures.len();
        let value = json!({
            "picture": number,
            "ratio": printable.ratio(),
            "alt": alt,
            "caption": caption,
        });
        self.pictures.push(printable.clone().with(&picture.markups));
        value
    }
}

fn table(summary: &str, head: &[String], widths: &[u8], rows: &[Vec<String>], to_fill: bool) -> Option<Value> {
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
        "kind": if to_fill { "form" } else { "table" },
        "summary": worded(summary, "Table"),
        "head": fitted(head),
        "widths": widths,
        "numeric": (0..head.len()).map(|column| is_numeric(rows, column)).collect::<Vec<bool>>(),
        "rows": rows.iter().map(|row| fitted(row)).collect::<Vec<_>>(),
    }))
}

/// Whether a column holds amounts or counts, which are set to the right; the first one names its row.
fn is_numeric(rows: &[Vec<String>], column: usize) -> bool {
    let cells = || rows.iter().filter_map(|row| row.get(column)).filter(|cell| !cell.is_empty());
    let is_amount = |cell: &String| cell.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '−' | '\u{202f}'));
    column > 0 && cells().filter(|cell| is_amount(cell)).count() * 2 > cells().count()
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
    isolated(&breakable(&unbroken(&line(text))))
}

fn several_lines(text: &str) -> String {
    isolated(&breakable(&unbroken(&lines(text))))
}

/// The words, or others where there are none: a picture without words can't be read aloud.
fn worded(text: &str, otherwise: &str) -> String {
    let text = line(text);
    if text.is_empty() { otherwise.into() } else { text }
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::date::Date;

    fn levels(blocks: Vec<Block>) -> Vec<u64> {
        let paper = Paper {
            title: "T".into(),
            subtitle: String::new(),
            subject: String::new(),
            reader: Reader::Customer(String::new()),
            date: Date::EPOCH,
            blocks,
        };
        let content = Content::without_pictures(&paper);
        let blocks = content.paper["blocks"].as_array().unwrap().clone();
        blocks.iter().map(|block| block["level"].as_u64().unwrap()).collect()
    }

    fn heading(level: u8) -> Block {
        Block::Heading { level, text: "H".into() }
    }

    #[test]
    fn no_heading_leaves_a_level_out() {
        assert_eq!(levels(vec![heading(2), heading(2), heading(1), heading(2)]), [1, 2, 1, 2]);
        assert_eq!(levels(vec![heading(0), heading(200), heading(1)]), [1, 2, 1]);
    }

    #[test]
    fn a_crooked_table_is_made_straight() {
        let value = table(
            "",
            &["a".into(), "b".into()],
            &[0],
            &[vec!["1".into()], vec!["1".into(), "2".into(), "3".into()]],
            false,
        );
        let value = value.unwrap();
        assert_eq!(value["rows"], json!([["1", ""], ["1", "2"]]));
        assert_eq!(value["widths"], json!([1, 1]));
    }
}
