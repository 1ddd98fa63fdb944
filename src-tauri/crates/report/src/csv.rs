//! A table for a spreadsheet.

/// Writes rows as CSV (RFC 4180) with a byte-order mark, by which spreadsheets know the encoding.
///
/// A cell that a spreadsheet would take for a formula gets an apostrophe before it: names are typed by people.
///
/// # Errors
/// [`csv::Error`] if the rows have different lengths.
pub fn csv(rows: &[Vec<String>]) -> Result<Vec<u8>, csv::Error> {
    let mut bytes = "\u{feff}".as_bytes().to_vec();
    let mut writer = csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(&mut bytes);
    for row in rows {
        writer.write_record(row.iter().map(|cell| harmless(cell)))?;
    }
    writer.flush()?;
    drop(writer);
    Ok(bytes)
}

/// By these a spreadsheet knows a formula; the wide ones of East Asian keyboards are taken for the same.
const FORMULA: [char; 8] = ['=', '+', '-', '@', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'];

/// Where another country's spreadsheet may begin a new cell inside of one that is not quoted for it.
const SEPARATORS: [char; 3] = [';', '|', '\n'];

fn harmless(cell: &str) -> String {
    if cell.parse::<f64>().is_ok() {
        return cell.to_owned();
    }
    let mut shown = String::with_capacity(cell.len());
    let mut begins = true;
    for letter in cell.chars() {
        let letter = match letter {
            // A line's end inside a cell is legible; other control characters are not.
            '\n' => '\n',
            letter if letter.is_control() => ' ',
            letter if is_direction(letter) => continue,
            letter => letter,
        };
        if begins && FORMULA.contains(&letter) {
            shown.push('\'');
        }
        begins = SEPARATORS.contains(&letter) || (begins && letter.is_whitespace());
        shown.push(letter);
    }
    shown
}

/// Turns the direction of what follows, so that a cell could read otherwise than it is (Unicode Standard Annex 9, explicit
/// directional embeddings, overrides, isolates and marks).
fn is_direction(letter: char) -> bool {
    matches!(letter, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_quoted_and_harmless() {
        let row = |cells: &[&str]| cells.iter().map(|cell| (*cell).to_owned()).collect::<Vec<_>>();
        let bytes = csv(&[row(&["part", "name"]), row(&["a, \"b\"", "=cmd()"]), row(&["-0.5", "-x"])]).unwrap();
        let text = String::from_utf8(bytes).unwrap();
        assert_eq!(text, "\u{feff}part,name\r\n\"a, \"\"b\"\"\",'=cmd()\r\n-0.5,'-x\r\n");
        assert!(csv(&[row(&["a"]), row(&["a", "b"])]).is_err());
    }

    /// The rules against formulas in CSV as the OWASP page “CSV Injection” lists them (from memory): the four signs, what stands
    /// behind a tab, a line's end or another separator, and their full-width forms.
    #[test]
    fn nothing_typed_becomes_a_formula_in_any_country() {
        for (typed, shown) in [
            ("\u{ff1d}1+1", "'\u{ff1d}1+1"),
            (" =1", " '=1"),
            ("\t@x", " '@x"),
            ("\r+x", " '+x"),
            ("a;=cmd()", "a;'=cmd()"),
            ("a|\u{ff0b}x", "a|'\u{ff0b}x"),
            ("line\n-x", "line\n'-x"),
            ("bell\u{7} and null\0", "bell  and null "),
            ("\u{202e}gnp.exe", "gnp.exe"),
            ("\u{2066}=x", "'=x"),
            ("-0.250", "-0.250"),
            ("0.05 \u{2013} 0.10", "0.05 \u{2013} 0.10"),
            ("half-worn; clean", "half-worn; clean"),
        ] {
            assert_eq!(harmless(typed), shown, "{typed:?}");
        }
    }
}
