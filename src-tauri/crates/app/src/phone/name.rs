//! What a file of ours is called where it goes.

/// The longest name, in bytes, with its ending: file systems take 255, and receivers put something before it.
const LONGEST: usize = 120;

/// A name that every system takes, and that no other file of the same parcel has.
pub(super) fn outgoing(name: &str, taken: &[String]) -> String {
    let (stem, ending) = match name.rsplit_once('.') {
        Some((stem, ending)) if is_ending(ending) => (stem, format!(".{ending}")),
        _ => (name, String::new()),
    };
    let plain: String = stem.chars().map(|sign| if is_plain(sign) { sign } else { ' ' }).collect();
    let words: Vec<&str> = plain.split_whitespace().collect();
    let joined = words.join(" ");
    let stem = joined.trim_matches(['.', ' ']);
    let stem = if stem.is_empty() { "wearbook" } else { stem };
    (1..)
        .map(|nth| {
            let nth = if nth == 1 { String::new() } else { format!(" {nth}") };
            format!("{}{nth}{ending}", cut(stem, LONGEST.saturating_sub(nth.len() + ending.len())))
        })
        .find(|name| !taken.contains(name))
        .unwrap_or_default()
}

fn is_ending(ending: &str) -> bool {
    (1..=8).contains(&ending.len()) && ending.bytes().all(|byte| byte.is_ascii_alphanumeric())
}

/// Separators of paths, signs that a system forbids, and what can't be seen.
fn is_plain(sign: char) -> bool {
    let turns = matches!(sign, '\u{200e}' | '\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}');
    !sign.is_control() && !turns && !"/\\:*?\"<>|".contains(sign)
}

/// As much as fits, whole letters only.
fn cut(text: &str, most: usize) -> &str {
    let end = (0..=most.min(text.len())).rev().find(|end| text.is_char_boundary(*end)).unwrap_or(0);
    text.get(..end).unwrap_or_default().trim_end()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::phone::cases;

    #[test]
    fn names_are_plain_short_and_each_their_own() {
        for case in cases("names") {
            let taken: Vec<String> = serde_json::from_value(case["taken"].clone()).unwrap();
            let named = outgoing(case["name"].as_str().unwrap(), &taken);
            assert_eq!(named, case["as"].as_str().unwrap(), "{}", case["because"]);
        }
    }
}
