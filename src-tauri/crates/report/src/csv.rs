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

fn harmless(cell: &str) -> String {
    let number = cell.parse::<f64>().is_ok();
    if !number && cell.starts_with(['=', '+', '-', '@', '\t', '\r']) { format!("'{cell}") } else { cell.to_owned() }
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
}
