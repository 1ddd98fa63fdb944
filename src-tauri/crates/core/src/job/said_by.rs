//! Who said yes or no, how, and what proves it: the same for every answer of a customer.

use serde::{Deserialize, Serialize};

use super::refused::{MAX_NAME, Refused, check_length};
use crate::date::Date;

/// A stroke of a signature: points from left to right and top to bottom in a square of 10 000 by 10 000.
pub type Stroke = Vec<(u16, u16)>;

/// What must be noted of an answer that came by telephone or message, so that it counts (16 CCR 3356(e): date, time, name
/// and number).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct FromAfar {
    /// The number that was called, or the address from which it was written.
    pub number: String,
    /// The day, as the shop writes dates.
    pub date: String,
    /// The time of day.
    pub time: String,
}

/// Who answered and how.
#[derive(Debug, Clone, Copy)]
pub struct SaidBy<'a> {
    /// Who.
    pub name: &'a str,
    /// How: "signed on the screen", "by telephone".
    pub way: &'a str,
    /// When and whence, if it came by telephone or message.
    pub afar: Option<&'a FromAfar>,
    /// The day on which it was noted, if that is known.
    pub said: Option<Date>,
    /// The signature, if it was drawn.
    pub signature: &'a [Stroke],
}

impl SaidBy<'_> {
    /// In a line: "A. Customer, by telephone, 0100 200, 3 May 2026 14:20";
    /// "A. Customer, signed on the screen, 3 May 2026".
    pub fn words(self) -> String {
        let at = match self.afar {
            Some(afar) => Some(format!("{} {}", afar.date.trim(), afar.time.trim())),
            None => self.said.map(Date::in_words),
        };
        let number = self.afar.map(|afar| afar.number.trim().to_owned());
        let told = [Some(self.name.trim().to_owned()), Some(self.way.trim().to_owned()), number, at];
        let told: Vec<String> = told.into_iter().flatten().filter(|part| !part.is_empty()).collect();
        told.join(", ")
    }

    /// Refuses an answer that proves nothing, or can't be kept.
    ///
    /// # Errors
    /// A sentence.
    pub(super) fn check(self) -> Result<(), Refused> {
        const MOST_POINTS: usize = 20_000;
        check_length("The name", self.name, MAX_NAME)?;
        check_length("The way", self.way, MAX_NAME)?;
        self.afar.map_or(Ok(()), check_afar)?;
        let refuse = |why: &str| Err(Refused(why.into()));
        if self.name.trim().is_empty() {
            return refuse("Say who answered: the name stands under the answer.");
        }
        if self.signature.iter().map(Vec::len).sum::<usize>() > MOST_POINTS {
            return refuse("The signature has too many strokes: clear it and sign again.");
        }
        if self.signature.iter().flatten().any(|(x, y)| *x > 10_000 || *y > 10_000) {
            return refuse("The signature leaves its field: clear it and sign again.");
        }
        Ok(())
    }
}

/// A yes from afar counts only with all that proves it (16 CCR 3356(e)).
fn check_afar(afar: &FromAfar) -> Result<(), Refused> {
    let told = [("The number", &afar.number), ("The date", &afar.date), ("The time", &afar.time)];
    told.into_iter().try_for_each(|(name, text)| {
        if text.trim().is_empty() {
            return Err(Refused(format!(
                "{name} is missing: without number, date and time an answer from afar does not count."
            )));
        }
        check_length(name, text, MAX_NAME)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(name: &str, afar: [&str; 3], refused: Option<&str>) {
        let [number, date, time] = afar.map(str::to_owned);
        let afar = FromAfar { number, date, time };
        let said = SaidBy { name, way: "by telephone", afar: Some(&afar), said: None, signature: &[] };
        let why = said.check().err().map(|refused| refused.to_string());
        assert_eq!(why.as_deref().map(|why| why.split_once(':').unwrap().0), refused);
    }

    /// By word a consent is recorded with date, time, name and number: 16 CCR 3356(e).
    #[test]
    fn a_yes_from_afar_counts_only_with_number_date_time_and_name() {
        check("A", ["0100 200", "2026-05-03", "14:20"], None);
        check("A", [" ", "2026-05-03", "14:20"], Some("The number is missing"));
        check("A", ["0100 200", "", "14:20"], Some("The date is missing"));
        check("A", ["0100 200", "2026-05-03", ""], Some("The time is missing"));
        check(" ", ["0100 200", "2026-05-03", "14:20"], Some("Say who answered"));
    }

    #[test]
    fn what_was_signed_here_has_its_day() {
        let said = Date::new(2026, 5, 3);
        let signed = SaidBy { name: "A", way: "signed on the screen", afar: None, said, signature: &[] };
        assert_eq!(signed.words(), "A, signed on the screen, 3 May 2026");
    }

    #[test]
    fn a_signature_stays_in_its_field() {
        #[track_caller]
        fn check(stroke: Vec<(u16, u16)>, is_kept: bool) {
            let signature = [stroke];
            let said = SaidBy { name: "A", way: "", afar: None, said: None, signature: &signature };
            assert_eq!(said.check().is_ok(), is_kept);
        }
        check(vec![(0, 10_000)], true);
        check(vec![(0, 10_001)], false);
        check(vec![(0, 0); 20_001], false);
    }
}
