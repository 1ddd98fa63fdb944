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

/// Letters, digits and single spaces; at most 40 of them.
fn plain(text: &str) -> String {
    let letters: String = text.chars().map(|c| if c.is_alphanumeric() || c == '-' { c } else { ' ' }).collect();
    let words: Vec<&str> = letters.split_whitespace().collect();
    let cut: String = words.join(" ").chars().take(40).collect();
    cut.trim().to_owned()
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
    }
}
