//! Words of the trade, explained once to a reader who does not know them.

use super::term::{Term, Usage};

/// Longest sentence that a customer is asked to read, in words.
pub(crate) const LONGEST_SENTENCE: usize = 20;

/// A word of the trade in the singular, lower case, and what it is in at most six words (common practice). A longer name
/// stands before a shorter one that is part of it.
const WORDS: [(&str, &str); 50] = [
    ("main bearing shell", "thin lining that carries the crankshaft"),
    ("rod bearing shell", "thin lining inside the rod’s eye"),
    ("main bearing", "where the crankshaft turns"),
    ("rod bearing", "between a rod and the crankshaft"),
    ("cam bearing", "where the camshaft turns"),
    ("cam lobe", "the bump that opens a valve"),
    ("oil pick-up", "pipe through which the pump sucks"),
    ("core plug", "disc that closes the cooling passage"),
    ("housing bore", "the hole that holds a bearing"),
    ("thrust bearing", "stop against sliding endwise"),
    ("thrust face", "stop against sliding endwise"),
    ("air cleaner", "filter that keeps dust out"),
    ("surface fatigue", "metal breaking up under repeated load"),
    ("embedded debris", "dirt pressed into the lining"),
    ("lining loss", "the lining has come off"),
    ("copper showing", "worn through to the layer below"),
    ("fuel wash", "fuel rinsing off the oil"),
    ("worn lobe", "its bump has lost height"),
    ("dished face", "worn hollow"),
    ("bright back", "polished by moving in its seat"),
    ("hot spot", "mark left by great heat"),
    ("sludge or varnish", "baked remains of old oil"),
    ("core bore", "hole left from casting"),
    ("line-bore", "bore all bearings in one line"),
    ("line-bored", "with all bearings bored in line"),
    ("line bore", "bore all bearings in one line"),
    ("crankpin", "where a rod grips the crankshaft"),
    ("journal", "where the shaft turns in bearings"),
    ("gallery", "oil passage in the casting"),
    ("galleries", "oil passages in the casting"),
    ("pushrod", "rod between tappet and valve"),
    ("undersize", "ground thinner, with thicker shells"),
    ("oversize", "bored wider, with larger pistons"),
    ("scoring", "scratches along the movement"),
    ("scuffing", "metal dragged where oil was missing"),
    ("spalling", "flakes broken out of a surface"),
    ("pitting", "small holes in the surface"),
    ("wiping", "lining smeared by heat"),
    ("corrosion", "metal eaten by acid or water"),
    ("seizure mark", "parts welded together by heat"),
    ("seizure", "parts welded together by heat"),
    ("bearing shell", "thin lining of a bearing"),
    ("shell", "thin lining of a bearing"),
    ("lobe", "the bump that opens a valve"),
    ("sleeve", "new wall pressed into a bore"),
    ("rod", "link from piston to crankshaft"),
    ("bore", "the wall of a cylinder"),
    ("ring", "seal between piston and bore"),
    ("sump", "pan that holds the oil"),
    ("of 4", "4 is the worst"),
];

/// What the shop's word for it is in six words, in either usage.
const CHOSEN: [(Term, &str); 3] = [
    (Term::Tappet, "follower on the cam"),
    (Term::EndFloat, "how far a shaft slides endwise"),
    (Term::PistonPin, "joins the piston to its rod"),
];

/// Explains each word of the trade where it first stands in a text that is read from top to bottom.
#[derive(Debug, Default)]
pub(crate) struct Explaining {
    explained: Vec<&'static str>,
}

impl Explaining {
    /// The text, with what a word means in brackets after it, unless the sentence would grow too long to be read.
    pub(crate) fn said(&mut self, text: &str) -> String {
        let mut said = text.to_owned();
        for (end, means) in unbracketed(text) {
            if self.explained.contains(&means) {
                continue;
            }
            // What was put in before moves the place along.
            let end = end + said.len() - text.len();
            let with = format!("{} ({means}){}", said.get(..end).unwrap_or(&said), said.get(end..).unwrap_or_default());
            if sentences(&with).all(|sentence| word_count(sentence) <= LONGEST_SENTENCE) {
                self.explained.push(means);
                said = with;
            }
        }
        said
    }
}

/// Where the words of the trade end that stand in a text, from left to right, with what they mean.
fn unbracketed(text: &str) -> Vec<(usize, &'static str)> {
    let lower = text.to_lowercase();
    // Letters whose small form is longer would shift every place.
    if lower.len() != text.len() {
        return vec![];
    }
    let mut taken: Vec<(usize, usize)> = Vec::new();
    let mut found: Vec<(usize, &'static str)> = Vec::new();
    for (word, means) in every_word() {
        for (start, _) in lower.match_indices(word) {
            let end = end_of(&lower, start, word);
            // A part of a word that stands there in full is none.
            let Some(end) = end.filter(|end| taken.iter().all(|(from, to)| *end <= *from || start >= *to)) else {
                continue;
            };
            taken.push((start, end));
            // Not between a part and its number.
            let is_numbered =
                lower.get(end..).is_some_and(|rest| rest.trim_start().starts_with(|c: char| c.is_ascii_digit()));
            if !is_numbered {
                found.push((end, means));
            }
        }
    }
    found.sort_by_key(|(end, _)| *end);
    found
}

fn every_word() -> impl Iterator<Item = (&'static str, &'static str)> {
    let usages = Usage::ALL.into_iter();
    let chosen = usages.flat_map(|usage| CHOSEN.map(|(term, means)| (term.name(usage), means)));
    chosen.chain(WORDS)
}

/// Where a word ends that begins at a place, alone or in the plural; none if it is only a part of another.
fn end_of(lower: &str, start: usize, word: &str) -> Option<usize> {
    let is_letter = |c: Option<char>| c.is_some_and(char::is_alphabetic);
    let (before, rest) = (lower.get(..start)?, lower.get(start + word.len()..)?);
    let plural = usize::from(rest.starts_with('s'));
    let after = rest.get(plural..)?;
    let stands = !is_letter(before.chars().next_back()) && !is_letter(after.chars().next());
    (stands && !after.starts_with(['-', '’'])).then_some(start + word.len() + plural)
}

/// The sentences of a text.
pub(crate) fn sentences(text: &str) -> impl Iterator<Item = &str> {
    text.split(['\n', '?', '!']).flat_map(|part| part.split(". ")).map(str::trim).filter(|part| !part.is_empty())
}

/// How many words a sentence has.
pub(crate) fn word_count(sentence: &str) -> usize {
    sentence.split_whitespace().filter(|word| word.chars().any(char::is_alphanumeric)).count()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn says(texts: &[&str], expected: &[&str]) {
        let mut explaining = Explaining::default();
        let said: Vec<String> = texts.iter().map(|text| explaining.said(text)).collect();
        assert_eq!(said, expected);
    }

    #[test]
    fn a_word_is_explained_where_it_first_stands_and_only_there() {
        says(
            &["Scoring of a journal.", "More scoring; the journal is out."],
            &[
                "Scoring (scratches along the movement) of a journal (where the shaft turns in bearings).",
                "More scoring; the journal is out.",
            ],
        );
        says(&["Tappet 3", "A tappet", "A lifter"], &["Tappet 3", "A tappet (follower on the cam)", "A lifter"]);
    }

    #[test]
    fn an_explanation_splits_no_name() {
        says(&["Seizure marks, grade 2"], &["Seizure marks (parts welded together by heat), grade 2"]);
        says(&["To be line-bored."], &["To be line-bored (with all bearings bored in line)."]);
    }

    #[test]
    fn a_part_of_a_longer_word_is_not_one() {
        says(&["Bored and offering"], &["Bored and offering"]);
        says(&["A rod bearing"], &["A rod bearing (between a rod and the crankshaft)"]);
        says(&["Ⱥ scoring"], &["Ⱥ scoring"]);
    }

    #[test]
    fn no_sentence_grows_too_long() {
        let long = "It has been seen on each of the several places where two of them ran with scoring before.";
        says(&[long, "Scoring."], &[long, "Scoring (scratches along the movement)."]);
    }

    #[test]
    fn every_word_is_explained_in_six_and_a_longer_one_stands_before_its_part() {
        for (word, means) in every_word() {
            assert!(word_count(means) <= 6, "{word}: {means}");
        }
        for (nth, (word, _)) in WORDS.iter().enumerate() {
            let shorter = WORDS.iter().take(nth).find(|(earlier, _)| word.split(' ').any(|own| own == *earlier));
            assert_eq!(shorter, None, "{word}");
        }
    }
}
