//! The table by which a manual grades its standard shells: which goes between a housing and a journal of such marks.

use serde::{Deserialize, Serialize};

use super::Journals;

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

fn is_alike(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}
