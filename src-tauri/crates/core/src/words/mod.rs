//! Small rules of English that every sentence here needs, and the words that the shop chooses.

mod plain;
mod term;

pub(crate) use plain::Explaining;
pub use term::{Phrase, Term, Terms, Usage};

/// With a capital first letter.
pub(crate) fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// A part's or thing's name with its article: "a sump", "an oil filter".
pub(crate) fn a(name: &str) -> String {
    format!("{} {name}", if name.starts_with(['a', 'e', 'i', 'o']) { "an" } else { "a" })
}

/// The plural of a part's or thing's name.
pub(crate) fn plural(name: &str) -> String {
    if name.ends_with('s') { name.to_owned() } else { format!("{name}s") }
}

/// A number with the words for one or for several: "1 part", "7 parts".
pub(crate) fn counted(count: usize, one: &str, several: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { several })
}

/// The beginning of what a person typed, for a line of a history.
pub(crate) fn first_words(text: &str) -> String {
    const SHOWN: usize = 60;
    let text = text.trim();
    if text.chars().count() <= SHOWN {
        return text.to_owned();
    }
    let cut: String = text.chars().take(SHOWN).collect();
    format!("{}…", cut.trim_end())
}
