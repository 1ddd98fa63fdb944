//! What a paper is made from.

use serde::{Deserialize, Serialize};

use crate::assess::Assessment;
use crate::date::Date;
use crate::job::Job;

/// All that lies ready when a paper is written.
#[derive(Debug, Clone, Copy)]
pub struct Desk<'a> {
    /// What is known.
    pub job: &'a Job,
    /// What follows from it.
    pub assessment: &'a Assessment,
    /// The day on which the paper is handed over, where the shop is.
    pub date: Date,
    /// Who hands it over.
    pub shop: &'a Shop,
}

#[cfg(test)]
impl<'a> Desk<'a> {
    /// A desk with nothing on it but a job and what follows from it.
    pub(super) fn bare(job: &'a Job, assessment: &'a Assessment) -> Self {
        static NOBODY: Shop =
            Shop { name: String::new(), address: String::new(), phone: String::new(), conditions: String::new() };
        Self { job, assessment, date: Date::EPOCH, shop: &NOBODY }
    }
}

/// Who hands a paper over.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Shop {
    /// The shop's name; may be empty.
    pub name: String,
    /// Its address, on one or several lines; may be empty.
    pub address: String,
    /// The number at which it is called; may be empty.
    pub phone: String,
    /// Its own terms, for the sheet that is handed over at the end; may be empty.
    pub conditions: String,
}

impl Shop {
    /// Name, address and number, line by line; none that is blank.
    pub(super) fn lines(&self) -> impl Iterator<Item = String> {
        let named = self.name.lines().chain(self.address.lines()).map(str::trim).filter(|line| !line.is_empty());
        named.map(str::to_owned).chain(self.called())
    }

    /// Where it is called: "telephone 0100 200"; none where no number was entered.
    pub(super) fn called(&self) -> Option<String> {
        let number = self.phone.trim();
        (!number.is_empty()).then(|| format!("telephone {number}"))
    }
}

/// How much of a report.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Extent {
    /// What a customer needs to decide, and what it rests on: four sheets.
    #[default]
    Short,
    /// The same with its annexes: every finding and photo, sizes and forms, why it is decided so, what each job holds.
    Full,
}
