//! Typed text made fit for paper: nothing invisible that could reorder or break a line, nothing endless.

/// Longest text kept, in characters: some ten printed pages, far more than anybody types into one field.
const MOST: usize = 20_000;
/// A word longer than this may be broken anywhere, or it would run off the sheet.
const LONG_WORD: usize = 22;
/// Characters between two places where a long word may be broken.
const STEP: usize = 11;
/// Allows a line break and shows nothing.
const ZERO_WIDTH_SPACE: char = '\u{200b}';

/// One line: every run of white space becomes one space. A no-break space stays: it holds a number to its unit.
pub(crate) fn line(text: &str) -> String {
    let text = kept(text);
    let words = text.split(|letter: char| letter.is_whitespace() && letter != '\u{a0}');
    words.filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ").trim().to_owned()
}

/// Several lines, as typed, without blank ones at either end.
pub(crate) fn lines(text: &str) -> String {
    let text = kept(text);
    let lines: Vec<String> = text.split('\n').map(line).collect();
    lines.join("\n").trim_matches('\n').to_owned()
}

/// Puts places to break into words that no sheet is wide enough for.
pub(crate) fn breakable(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for piece in text.split_inclusive(char::is_whitespace) {
        let long = piece.chars().count() > LONG_WORD;
        for (nth, letter) in piece.chars().enumerate() {
            if long && nth > 0 && nth % STEP == 0 {
                out.push(ZERO_WIDTH_SPACE);
            }
            out.push(letter);
        }
    }
    out
}

/// Shortens a line to at most this many characters, with an ellipsis where something is left out.
pub(crate) fn shortened(text: &str, most: usize) -> String {
    if text.chars().count() <= most {
        return text.to_owned();
    }
    let kept: String = text.chars().take(most.saturating_sub(1)).collect();
    format!("{}…", kept.trim_end())
}

/// Drops what must not reach paper and ends every line in the same way.
fn kept(text: &str) -> String {
    let text = text.replace("\r\n", "\n");
    let mut kept: String = text.chars().take(MOST).filter_map(as_printed).collect();
    if text.chars().nth(MOST).is_some() {
        kept.push_str(" … (cut short)");
    }
    kept
}

fn as_printed(letter: char) -> Option<char> {
    match letter {
        '\n' | '\r' | '\u{85}' | '\u{2028}' | '\u{2029}' => Some('\n'),
        '\t' | '\u{b}' | '\u{c}' => Some(' '),
        // Embeddings, overrides and isolates turn the reading order of all that follows, in a sentence not their own.
        '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => None,
        // Soft hyphens, byte order marks, annotation anchors and non-characters show nothing.
        '\u{ad}' | '\u{feff}' | '\u{fff9}'..='\u{fffb}' | '\u{fdd0}'..='\u{fdef}' => None,
        letter if u32::from(letter) & 0xfffe == 0xfffe => None,
        letter if letter.is_control() => None,
        letter => Some(letter),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn one_line(typed: &str, expected: &str) {
        assert_eq!(line(typed), expected);
    }

    #[test]
    fn a_line_keeps_what_can_be_read() {
        one_line("  Main 3,\tlower\r\nshell ", "Main 3, lower shell");
        one_line("#set $x$ [a] \\ @b", "#set $x$ [a] \\ @b");
        one_line("a\u{0}b\u{7}c\u{1b}[31m", "abc[31m");
        one_line("pay \u{202e}001\u{202c} now", "pay 001 now");
        one_line("0.25\u{a0}mm \u{a0} ", "0.25\u{a0}mm");
        one_line("شركة 日本 é", "شركة 日本 é");
        one_line("\u{ffff}\u{1fffe}\u{fdd0}\u{feff}", "");
    }

    #[test]
    fn lines_stay_lines() {
        assert_eq!(lines("\r\none\rtwo\u{2028} three \n\n"), "one\ntwo\nthree");
    }

    #[test]
    fn long_words_can_be_broken_and_short_ones_stay_whole() {
        assert_eq!(breakable("crankshaft journals"), "crankshaft journals");
        let broken = breakable(&"x".repeat(10_000));
        assert!(broken.split(ZERO_WIDTH_SPACE).all(|piece| piece.len() <= STEP));
        assert_eq!(broken.replace(ZERO_WIDTH_SPACE, ""), "x".repeat(10_000));
    }

    #[test]
    fn endless_text_is_cut_and_says_so() {
        let cut = line(&"y".repeat(1_000_000));
        assert!(cut.ends_with("y … (cut short)"));
        assert!(cut.len() < MOST + 40);
    }

    #[test]
    fn shortening_counts_characters_not_bytes() {
        assert_eq!(shortened("ééééé", 5), "ééééé");
        assert_eq!(shortened("éééé ét", 6), "éééé…");
    }
}
