//! What a sheet says beside sizes and limits: how standard shells are graded, and what surfaces it asks for.

use super::finish::MAX_WORDS;
use super::{Finish, Journals, Sheet, ShellGrade, SizeGroup};

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

impl Sheet {
    /// The surface wanted on a group.
    pub fn finish_of(&self, group: SizeGroup) -> Option<&Finish> {
        self.finishes.iter().find(|finish| finish.of == group)
    }

    /// Enters a finish in place of the one of the same group; an empty one takes it off.
    pub fn state_finish(&mut self, finish: Finish) {
        self.finishes.retain(|old| old.of != finish.of);
        if !finish.surface.trim().is_empty() || !finish.hone_angle.trim().is_empty() {
            self.finishes.push(finish);
            self.finishes.sort_by_key(|finish| finish.of);
        }
    }

    /// Refuses what is too long, and an angle of honing where nothing is honed.
    ///
    /// # Errors
    /// A sentence: what is wrong with it, what would be right.
    pub fn check_finish(&self, finish: &Finish) -> Result<(), String> {
        if finish.of != SizeGroup::Bores && !finish.hone_angle.trim().is_empty() {
            return Err(format!("The {} are not honed: leave the angle of the hone’s marks empty.", finish.of.label()));
        }
        for (what, text) in [("finish", &finish.surface), ("angle of the hone’s marks", &finish.hone_angle)] {
            let long = text.chars().count();
            if long > MAX_WORDS {
                return Err(format!("The {what} has {long} characters: {MAX_WORDS} at most."));
            }
        }
        match self.finishes.iter().filter(|other| other.of == finish.of).count() {
            0 | 1 => Ok(()),
            _ => Err(format!("The finish of the {} stands on the sheet twice: once is right.", finish.of.label())),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(housing: &str, journal: &str, grade: &str) -> ShellGrade {
        let [housing, journal, grade] = [housing, journal, grade].map(str::to_owned);
        ShellGrade { journals: Journals::Mains, housing, journal, grade, source: String::new() }
    }

    fn bores(surface: &str, hone_angle: &str) -> Finish {
        let (surface, hone_angle) = (surface.to_owned(), hone_angle.to_owned());
        Finish { of: SizeGroup::Bores, surface, hone_angle, source: "WP 0012".into() }
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

    /// Published: NMWR 9-2815-220 WP 0012 (the angle).
    #[test]
    fn it_is_handed_on_in_the_manuals_words() {
        let mut sheet = Sheet::default();
        sheet.state_finish(bores("", "35 to 55° to the horizontal"));
        let words = sheet.finish_of(SizeGroup::Bores).map(Finish::words);
        assert_eq!(words.as_deref(), Some("hone marks 35 to 55° to the horizontal (WP 0012)"));
        sheet.state_finish(bores(" ", ""));
        assert_eq!(sheet.finish_of(SizeGroup::Bores), None);
    }

    #[test]
    fn a_journal_has_no_hone_marks() {
        let pins = Finish { of: SizeGroup::Crankpins, ..bores("", "45°") };
        let refusal = "The crankpins are not honed: leave the angle of the hone’s marks empty.";
        assert_eq!(Sheet::default().check_finish(&pins).unwrap_err(), refusal);
    }
}
