//! What the manual asks of a finished surface. It is handed on in its own words, printed and not judged.

use serde::{Deserialize, Serialize};

use super::{Sheet, SizeGroup};

/// How long each text may be, in characters.
const MAX_WORDS: usize = 120;

/// The surface wanted on the journals or bores of a group.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Finish {
    /// Of what.
    pub of: SizeGroup,
    /// The finish, as the manual gives it: "16 microinch or finer"; may be empty.
    #[serde(default)]
    pub surface: String,
    /// Of bores the angle of the hone's marks, and from what it is counted: manuals differ; may be empty.
    #[serde(default)]
    pub hone_angle: String,
    /// The manual's page.
    #[serde(default)]
    pub source: String,
}

impl Finish {
    /// "finish 16 microinch or finer, hone marks 35 to 55° to the horizontal (p. 6-103)".
    pub fn words(&self) -> String {
        let told = [("finish ", &self.surface), ("hone marks ", &self.hone_angle)];
        let told: Vec<String> = told
            .iter()
            .filter(|(_, text)| !text.trim().is_empty())
            .map(|(what, text)| format!("{what}{}", text.trim()))
            .collect();
        match self.source.trim() {
            "" => told.join(", "),
            source => format!("{} ({source})", told.join(", ")),
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

    fn bores(surface: &str, hone_angle: &str) -> Finish {
        let (surface, hone_angle) = (surface.to_owned(), hone_angle.to_owned());
        Finish { of: SizeGroup::Bores, surface, hone_angle, source: "WP 0012".into() }
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
