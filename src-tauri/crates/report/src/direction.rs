//! Names written from right to left within English sentences.
//!
//! Without a mark, the algorithm of Unicode (UAX 9) takes figures and commas beside such a name for part of it, and
//! sets them on its wrong side. An isolate holds it together. Marks that a person typed have been taken out before
//! (`clean`), so that every isolate that reaches paper is ours and closed.

/// First strong isolate, and its end.
const OPEN: char = '\u{2068}';
const CLOSE: char = '\u{2069}';

/// Every line with its right-to-left parts isolated: the whole of a line that begins so, for then a person wrote it;
/// else each run from the first such letter to the last before English goes on.
pub(crate) fn isolated(text: &str) -> String {
    if !text.chars().any(runs_left) {
        return text.to_owned();
    }
    text.split('\n').map(line).collect::<Vec<_>>().join("\n")
}

fn line(line: &str) -> String {
    let first = line.chars().find(|letter| letter.is_alphabetic());
    if first.is_some_and(runs_left) {
        return format!("{OPEN}{line}{CLOSE}");
    }
    let mut out = String::with_capacity(line.len() + 8);
    // What stands after the last right-to-left letter of an open run, and may or may not belong to it.
    let mut between = String::new();
    let mut open = false;
    for letter in line.chars() {
        match (open, runs_left(letter), letter.is_alphabetic()) {
            (false, true, _) => {
                open = true;
                out.extend([OPEN, letter]);
            }
            (true, true, _) => {
                out.push_str(&std::mem::take(&mut between));
                out.push(letter);
            }
            (true, false, true) => {
                open = false;
                out.push(CLOSE);
                out.push_str(&std::mem::take(&mut between));
                out.push(letter);
            }
            (true, false, false) => between.push(letter),
            (false, false, _) => out.push(letter),
        }
    }
    if open {
        out.push(CLOSE);
    }
    out + &between
}

/// Letters of the scripts that run from right to left, by their blocks (UAX 9, section 3.2, and the allocation of
/// Unicode).
fn runs_left(letter: char) -> bool {
    matches!(
        letter,
        '\u{590}'..='\u{8ff}'
            | '\u{fb1d}'..='\u{fdff}'
            | '\u{fe70}'..='\u{fefc}'
            | '\u{10800}'..='\u{10fff}'
            | '\u{1e800}'..='\u{1efff}'
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(typed: &str, expected: &str) {
        let shown = isolated(typed).replace(OPEN, "<").replace(CLOSE, ">");
        assert_eq!(shown, expected);
    }

    #[test]
    fn names_keep_to_themselves() {
        check("A. Customer, 12 Mill Lane", "A. Customer, 12 Mill Lane");
        check("Signature of שרה לוי, 12 March", "Signature of <שרה לוי>, 12 March");
        check("from שרה to לוי: replace", "from <שרה> to <לוי>: replace");
        check("שרה 12, Haifa", "<שרה 12, Haifa>");
        check("Piston 1\nمحرك ٣", "Piston 1\n<محرك ٣>");
        check("(3) שרה", "<(3) שרה>");
    }
}
