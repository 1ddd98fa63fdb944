//! The table by which a manual grades its standard shells: which goes between a housing and a journal of such marks.

use serde::{Deserialize, Serialize};

use super::{Journals, Sheet};

/// How long a mark or the name of a grade may be, in characters.
pub(crate) const MAX_MARK: usize = 20;

/// A row of the table: the marks that meet, and the grade of the standard shells that go between them.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct ShellGrade {
    /// Of the shells of which journals.
    pub journals: Journals,
    /// The mark of the housing: on the block for a main bearing, on the rod for a rod bearing.
    pub housing: String,
    /// The mark of the journal on the crankshaft.
    pub journal: String,
    /// The grade, as the parts counter knows it.
    pub grade: String,
    /// The manual's page.
    #[serde(default)]
    pub source: String,
}

impl ShellGrade {
    /// Whether it stands for such marks, however they are written.
    pub fn is_for(&self, journals: Journals, housing: &str, journal: &str) -> bool {
        self.journals == journals && is_alike(&self.housing, housing) && is_alike(&self.journal, journal)
    }
}

impl ShellGrade {
    /// Refuses a row that says nothing.
    ///
    /// # Errors
    /// A sentence: what is wrong with it, what would be right.
    pub fn check(&self) -> Result<(), String> {
        let fields =
            [("mark of the housing", &self.housing), ("mark of the journal", &self.journal), ("grade", &self.grade)];
        for (what, typed) in fields {
            match typed.trim().chars().count() {
                0 => return Err(format!("The {what} is empty: enter it as the manual’s table gives it.")),
                long if long > MAX_MARK => {
                    return Err(format!("The {what} has {long} characters: {MAX_MARK} at most."));
                }
                _ => {}
            }
        }
        Ok(())
    }
}

impl Sheet {
    /// Whether the standard shells of such journals come in grades.
    pub fn grades_shells_of(&self, journals: Journals) -> bool {
        self.grades.iter().any(|row| row.journals == journals)
    }

    /// The row for such marks.
    pub fn grade_for(&self, journals: Journals, housing: &str, journal: &str) -> Option<&ShellGrade> {
        self.grades.iter().find(|row| row.is_for(journals, housing, journal))
    }

    /// Enters a row in place of the one for the same marks, or as a further one.
    pub fn state_grade(&mut self, row: ShellGrade) {
        let same = self.grades.iter_mut().find(|old| old.is_for(row.journals, &row.housing, &row.journal));
        match same {
            Some(old) => *old = row,
            None => self.grades.push(row),
        }
    }
}

fn is_alike(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(housing: &str, journal: &str, grade: &str) -> ShellGrade {
        let [housing, journal, grade] = [housing, journal, grade].map(str::to_owned);
        ShellGrade { journals: Journals::Mains, housing, journal, grade, source: String::new() }
    }

    #[test]
    fn marks_are_met_however_they_are_written() {
        let mut sheet = Sheet::default();
        sheet.state_grade(row("A", "1", "4"));
        sheet.state_grade(row("B", "1", "5"));
        sheet.state_grade(row(" a ", "1", "3"));
        assert_eq!(sheet.grades.len(), 2);
        assert_eq!(sheet.grade_for(Journals::Mains, "a", " 1 ").map(|row| row.grade.as_str()), Some("3"));
        assert_eq!(sheet.grade_for(Journals::Crankpins, "A", "1"), None);
        assert_eq!(sheet.grade_for(Journals::Mains, "A", "2"), None);
    }

    #[test]
    fn a_row_that_says_nothing_is_refused() {
        let refusal = |row: &ShellGrade| row.check().unwrap_err();
        let empty = "The mark of the journal is empty: enter it as the manual’s table gives it.";
        assert_eq!(refusal(&row("A", " ", "4")), empty);
        assert_eq!(refusal(&row("A", "1", &"4".repeat(21))), "The grade has 21 characters: 20 at most.");
    }
}
