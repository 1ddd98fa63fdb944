//! A figure stays on one line with its unit.

/// What follows a figure on our papers: the units of length, and the sign for per cent.
const UNITS: [&str; 3] = ["mm", "in", "%"];

/// Puts a no-break space between every figure and its unit.
pub(crate) fn unbroken(text: &str) -> String {
    let mut words = text.split(' ');
    let mut joined = words.next().unwrap_or_default().to_owned();
    for word in words {
        let after_figure = joined.ends_with(|letter: char| letter.is_ascii_digit());
        joined.push(if after_figure && begins_with_unit(word) { '\u{a0}' } else { ' ' });
        joined.push_str(word);
    }
    joined
}

fn begins_with_unit(word: &str) -> bool {
    let rest = UNITS.iter().find_map(|unit| word.strip_prefix(unit));
    rest.is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_stays_with_its_unit_and_words_are_left_alone() {
        for (text, joined) in [
            ("2.9890 to 2.9900 in", "2.9890 to 2.9900\u{a0}in"),
            ("grind all to 0.25 mm undersize", "grind all to 0.25\u{a0}mm undersize"),
            ("0.02 mm\n82 %.", "0.02\u{a0}mm\n82\u{a0}%."),
            ("7 inside, 3 mmm", "7 inside, 3 mmm"),
            ("look in the sheet  ", "look in the sheet  "),
        ] {
            assert_eq!(unbroken(text), joined);
        }
    }
}
