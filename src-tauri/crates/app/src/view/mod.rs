//! What the page is shown of a job: the state, the list, the history.

mod history;
mod job_line;
mod job_view;
mod shot;
mod undo;

pub use history::HistoryLine;
pub(crate) use history::history;
pub use job_line::JobLine;
pub(crate) use job_line::{SUMMARY, compared, plain as searched, summary, summary_of_open};
pub use job_view::JobView;
pub use shot::Shot;
pub use undo::Said;

use wearbook_core::date::Date;
use wearbook_core::job::{Job, TextField};

/// A name under which a person would look for a job's file: date, customer, machine, in letters that every file system
/// takes.
pub(crate) fn file_name(job: &Job, date: Date, extension: &str) -> String {
    let mut name = date.to_string();
    for field in [TextField::Customer, TextField::Machine] {
        let words = job.texts.get(&field).map(|text| plain(text)).unwrap_or_default();
        if !words.is_empty() {
            name.push(' ');
            name.push_str(&words);
        }
    }
    format!("{name}.{extension}")
}

/// Most bytes of one of the two names: with both, the day and the ending a file's name has less than the 255 bytes that file
/// systems take.
const MOST_BYTES: usize = 100;

/// Letters, digits and single spaces; at most 40 of them.
fn plain(text: &str) -> String {
    let letters: String = text.chars().map(|c| if c.is_alphanumeric() || c == '-' { c } else { ' ' }).collect();
    let words: Vec<&str> = letters.split_whitespace().collect();
    let words = words.join(" ");
    let ends = words.char_indices().map(|(at, letter)| at + letter.len_utf8());
    let end = ends.take(40).take_while(|end| *end <= MOST_BYTES).last().unwrap_or_default();
    words.get(..end).unwrap_or_default().trim().to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn named(customer: &str, expected: &str) {
        let job = Job { texts: [(TextField::Customer, customer.to_owned())].into(), ..Job::default() };
        assert_eq!(file_name(&job, Date::new(2030, 1, 2).unwrap(), "pdf"), expected);
    }

    #[test]
    fn file_names_suit_every_file_system() {
        named("A. Customer", "2030-01-02 A Customer.pdf");
        named("../../etc/passwd", "2030-01-02 etc passwd.pdf");
        named("Zoë: \"C:\\x\"\n", "2030-01-02 Zoë C x.pdf");
        named("", "2030-01-02.pdf");
        named(&"a".repeat(500), &format!("2030-01-02 {}.pdf", "a".repeat(40)));
        // Four bytes each in UTF-8.
        named(&"\u{20000}".repeat(500), &format!("2030-01-02 {}.pdf", "\u{20000}".repeat(25)));
    }
}
