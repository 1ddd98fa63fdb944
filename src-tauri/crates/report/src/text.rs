//! The paper as plain text, to be pasted into a message.

use wearbook_core::document::{Block, MeasuredRow, Paper};

use crate::clean::{line, lines};
use crate::page_text::page_text;

/// Writes the paper as plain text: paragraphs on one line each, points and findings as lines that begin with "- ".
///
/// Pictures are counted, not shown. There are no control characters but the line feed.
pub fn text(paper: &Paper) -> String {
    let mut parts = vec![join([line(&paper.title), line(&paper.subtitle), paper.date.to_string()])];
    parts.extend(paper.blocks.iter().map(block));
    parts.retain(|part| !part.is_empty());
    parts.join("\n\n") + "\n"
}

fn block(block: &Block) -> String {
    match block {
        Block::Heading { level: 1, text } => line(text).to_uppercase(),
        Block::Heading { text, .. } => line(text),
        Block::Paragraph(text) | Block::Lead(text) => lines(text),
        Block::Caution(text) => format!("Caution: {}", lines(text)),
        Block::Points(points) => join(points.iter().map(|text| point(text))),
        Block::Facts(facts) => join(facts.iter().map(|(name, value)| format!("{}: {}", line(name), line(value)))),
        Block::Table { head, rows, .. } => join(rows.iter().map(|row| table_row(head, row))),
        Block::Blanks(names) => join(names.iter().map(|name| format!("{}:", line(name)))),
        Block::CustomersPage(page) => page_text(page),
        Block::Photos { shown, .. } => join(shown.iter().map(|one| point(&one.caption()))),
        Block::Contents => String::new(),
        Block::Plan(plan) => lines(&plan.alt),
        Block::Measured { rows, .. } => join(rows.iter().map(measured)),
        Block::BarKey => String::new(),
        Block::Forms { parts, .. } => join(parts.iter().map(|part| point(&part.alt))),
        Block::Signature { name, .. } if line(name).is_empty() => "Date, name and signature:".into(),
        Block::Signature { name, .. } => format!("Signed: {}", line(name)),
        Block::NewPage => String::new(),
    }
}

fn measured(row: &MeasuredRow) -> String {
    let (part, what, shown) = (line(&row.part), line(&row.what), line(&row.shown));
    format!("- {part}, {what}: {shown}; limits: {}; {}", line(&row.limits), line(&row.verdict))
}

fn point(text: &str) -> String {
    format!("- {}", line(text))
}

/// The first cell names the row; the others follow, each after its column's head.
fn table_row(head: &[String], row: &[String]) -> String {
    let cells = head.iter().zip(row).enumerate().filter(|(_, (_, cell))| !line(cell).is_empty());
    let named = cells.map(|(column, (head, cell))| match column {
        0 => line(cell),
        _ => format!("{}: {}", line(head), line(cell)),
    });
    format!("- {}", named.collect::<Vec<_>>().join("; "))
}

fn join(parts: impl IntoIterator<Item = String>) -> String {
    let parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    parts.join("\n")
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::date::Date;
    use wearbook_core::document::Reader;

    fn paper(blocks: Vec<Block>) -> Paper {
        let date = Date::new(2024, 3, 9).unwrap();
        Paper {
            title: "Condition report".into(),
            subtitle: "Loader, in-line 6".into(),
            subject: String::new(),
            reader: Reader::Customer(String::new()),
            date,
            blocks,
        }
    }

    #[track_caller]
    fn check(block: Block, expected: &str) {
        assert_eq!(
            text(&paper(vec![block])),
            format!("Condition report\nLoader, in-line 6\n2024-03-09\n\n{expected}\n")
        );
    }

    #[test]
    fn every_block_reads_as_plain_lines() {
        let owned = |words: &[&str]| words.iter().map(|word| (*word).to_owned()).collect::<Vec<_>>();
        check(Block::Heading { level: 1, text: "Findings".into() }, "FINDINGS");
        check(Block::Caution("Hot.\u{7}".into()), "Caution: Hot.");
        check(Block::Points(owned(&["one", "two\nlines"])), "- one\n- two lines");
        check(Block::Facts(vec![("Hours".into(), "5120".into())]), "Hours: 5120");
        check(
            Block::Table {
                summary: String::new(),
                head: owned(&["Part", "What to do", "Why"]),
                widths: vec![1, 1, 1],
                to_fill: false,
                rows: vec![owned(&["Bore 1", "machine", ""]), owned(&["Bore 2", "", "clean"])],
            },
            "- Bore 1; What to do: machine\n- Bore 2; Why: clean",
        );
    }

    #[test]
    fn an_empty_paper_is_its_title() {
        assert_eq!(text(&paper(vec![])), "Condition report\nLoader, in-line 6\n2024-03-09\n");
    }
}
