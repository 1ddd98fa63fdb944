//! What a person did, grouped by what it is about. In a log each form stands flat, told apart by its `do`; each subject has
//! a file with its forms, their border check, their effect and their sentences.

use serde::{Deserialize, Deserializer, Serialize};
use serde_json::Value;

use super::known::Job;
use super::on_intake::OnIntake;
use super::on_job::OnJob;
use super::on_list::OnList;
use super::on_money::OnMoney;
use super::on_part::OnPart;
use super::on_reading::OnReading;
use super::on_sheet::OnSheet;
use super::on_size::OnSize;
use super::refused::no_arrangement;
use super::{EditId, PhotoId, Refused};
use crate::engine::{self, Part};

/// What a person did, in the forms that this version knows.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(untagged)]
pub enum Change {
    /// What a person told of the engine as it came in: customer, past, layout, marks.
    OnIntake(OnIntake),
    /// What a person did to one part: photos, tags, remarks, a decision of their own.
    OnPart(OnPart),
    /// What a person measured, and with what.
    OnReading(OnReading),
    /// What a person entered of the engine’s manual.
    OnSheet(OnSheet),
    /// Which size was found or chosen, and which way is gone.
    OnSize(OnSize),
    /// What the shop charges, what it estimated and proposed, and what the customer answered.
    OnMoney(OnMoney),
    /// What was done about items of the lists, and items of the shop’s own.
    OnList(OnList),
    /// What was done to the whole job.
    OnJob(OnJob),
}

impl Change {
    /// Reads one of the forms of this version.
    ///
    /// # Errors
    /// What is wrong with it: its `do` is none that this version knows, or a field is missing, wrong or too many.
    pub fn read(value: &Value) -> Result<Self, serde_json::Error> {
        let told = value.get("do").and_then(Value::as_str);
        match told {
            Some(told) if OnIntake::DOES.contains(&told) => OnIntake::deserialize(value).map(Self::OnIntake),
            Some(told) if OnPart::DOES.contains(&told) => OnPart::deserialize(value).map(Self::OnPart),
            Some(told) if OnReading::DOES.contains(&told) => OnReading::deserialize(value).map(Self::OnReading),
            Some(told) if OnSheet::DOES.contains(&told) => OnSheet::deserialize(value).map(Self::OnSheet),
            Some(told) if OnSize::DOES.contains(&told) => OnSize::deserialize(value).map(Self::OnSize),
            Some(told) if OnMoney::DOES.contains(&told) => OnMoney::deserialize(value).map(Self::OnMoney),
            Some(told) if OnList::DOES.contains(&told) => OnList::deserialize(value).map(Self::OnList),
            Some(told) if OnJob::DOES.contains(&told) => OnJob::deserialize(value).map(Self::OnJob),
            Some(told) => Err(serde::de::Error::custom(format!("“{told}” in “do” is nothing that this version knows"))),
            None => Err(serde::de::Error::custom("it does not say in “do” what was done")),
        }
    }

    /// The part it is about, if it is about one.
    pub fn part(&self) -> Option<Part> {
        match self {
            Self::OnPart(change) => Some(change.part()),
            Self::OnReading(change) => change.part(),
            _ => None,
        }
    }

    /// The photo that it brings into the job, which is kept with it.
    pub fn photo(&self) -> Option<&PhotoId> {
        match self {
            Self::OnPart(OnPart::AddPhoto { photo, .. }) => Some(photo),
            Self::OnIntake(OnIntake::PhotographAncillary { photo, .. }) => photo.as_ref(),
            _ => None,
        }
    }

    /// In a sentence, for the history. Positions are named by the job's arrangement.
    pub(super) fn sentence(&self, job: &Job) -> String {
        match self {
            Self::OnIntake(change) => change.sentence(job),
            Self::OnPart(change) => change.sentence(job),
            Self::OnReading(change) => change.sentence(job),
            Self::OnSheet(change) => change.sentence(job),
            Self::OnSize(change) => change.sentence(job),
            Self::OnMoney(change) => change.sentence(job),
            Self::OnList(change) => change.sentence(job),
            Self::OnJob(change) => change.sentence(job),
        }
    }
}

impl<'de> Deserialize<'de> for Change {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::read(&Value::deserialize(deserializer)?).map_err(serde::de::Error::custom)
    }
}

impl Job {
    /// The border of the log: whether a change fits this job. Whether a proposal is what follows from the job can only be
    /// said above: [`assess::check`](crate::assess::check).
    ///
    /// # Errors
    /// [`Refused`] with a sentence for the person who made it.
    pub fn check(&self, change: &Change) -> Result<(), Refused> {
        self.check_open(change)?;
        if let Some(part) = change.part() {
            self.check_part(part)?;
        }
        match change {
            Change::OnIntake(change) => change.check(self),
            Change::OnPart(change) => change.check(self),
            Change::OnReading(change) => change.check(self),
            Change::OnSheet(change) => change.check(self),
            Change::OnSize(change) => change.check(self),
            Change::OnMoney(change) => change.check(self),
            Change::OnList(change) => change.check(self),
            Change::OnJob(change) => change.check(self),
        }?;
        self.fits(change)
    }

    /// Whether a change has an effect on this job: asked of every edit in the fold, wherever it came from. It refuses less
    /// than the border does: not what an arrangement, an instrument or a line of the sheet that is entered later, or entered
    /// anew, will make right. It never takes longer the more the job holds.
    ///
    /// # Errors
    /// [`Refused`] with a sentence for the history.
    pub(super) fn fits(&self, change: &Change) -> Result<(), Refused> {
        match change {
            Change::OnIntake(change) => change.fits(self),
            Change::OnPart(change) => change.fits(self),
            Change::OnReading(change) => change.fits(self),
            Change::OnSheet(change) => change.fits(self),
            Change::OnSize(change) => change.fits(self),
            Change::OnMoney(change) => change.fits(self),
            Change::OnList(change) => change.fits(self),
            Change::OnJob(change) => change.fits(self),
        }
    }

    /// A job that is closed stays as it was handed over, until it is opened again.
    fn check_open(&self, change: &Change) -> Result<(), Refused> {
        let opens = match change {
            Change::OnJob(OnJob::Close { .. }) => true,
            Change::OnJob(OnJob::Undo { edit }) => self.closed == Some(*edit),
            _ => false,
        };
        if self.closed.is_some() && !opens {
            return Err(Refused(
                "This job is closed: open it again, under “Hand over”, before anything is changed.".into(),
            ));
        }
        Ok(())
    }

    fn check_part(&self, part: Part) -> Result<(), Refused> {
        let arrangement = self.arrangement.as_ref().ok_or_else(no_arrangement)?;
        arrangement.check(self.terms).map_err(|impossible| Refused(impossible.0))?;
        engine::require(part, arrangement, self.terms).map(|_| ()).map_err(|missing| Refused(missing.0))
    }

    /// Adds what a change does. [`Job::fold`] is the way to a whole job: it also settles what was undone. Total: a change
    /// that no longer fits (its part has gone with a corrected arrangement) is still recorded; the assessment leaves out
    /// what the engine lacks.
    pub fn apply(&mut self, id: EditId, change: &Change) {
        match change {
            Change::OnIntake(change) => change.apply(id, self),
            Change::OnPart(change) => change.apply(id, self),
            Change::OnReading(change) => change.apply(id, self),
            Change::OnSheet(change) => change.apply(id, self),
            Change::OnSize(change) => change.apply(id, self),
            Change::OnMoney(change) => change.apply(id, self),
            Change::OnList(change) => change.apply(id, self),
            Change::OnJob(change) => change.apply(id, self),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;
    use crate::job::testing::{arranged, edit};

    fn job() -> Job {
        arranged(Arrangement::inline(4))
    }

    #[track_caller]
    fn refused(json: Value, because: &str) {
        let change: Change = serde_json::from_value(json).unwrap();
        assert_eq!(job().check(&change).unwrap_err().to_string(), because);
    }

    /// What serde expects in `do` of a subject's forms.
    fn expected<T: serde::de::DeserializeOwned>() -> Vec<String> {
        let refusal = serde_json::from_value::<T>(serde_json::json!({ "do": "?" })).err().unwrap().to_string();
        let quoted = refusal.split('`').skip(3).step_by(2);
        quoted.map(str::to_owned).collect()
    }

    #[test]
    fn every_form_is_read_under_its_subject() {
        assert_eq!(expected::<OnIntake>(), OnIntake::DOES);
        assert_eq!(expected::<OnPart>(), OnPart::DOES);
        assert_eq!(expected::<OnReading>(), OnReading::DOES);
        assert_eq!(expected::<OnSheet>(), OnSheet::DOES);
        assert_eq!(expected::<OnSize>(), OnSize::DOES);
        assert_eq!(expected::<OnMoney>(), OnMoney::DOES);
        assert_eq!(expected::<OnList>(), OnList::DOES);
        assert_eq!(expected::<OnJob>(), OnJob::DOES);
    }

    #[test]
    fn what_does_not_fit_is_refused_with_a_sentence() {
        use serde_json::json;
        refused(
            json!({"do": "clean", "part": "piston.5"}),
            "This engine has no piston 5: its arrangement is in-line 4, 5 mains, thrust on main 3.",
        );
        refused(
            json!({"do": "tag", "part": "piston.1", "tag": "copper-showing", "grade": 1}),
            "A piston can't be tagged “copper showing”.",
        );
        refused(
            json!({"do": "tag", "part": "piston.1", "tag": "scuffing", "grade": 1, "zones": ["nose"]}),
            "A piston has no zone “nose”.",
        );
        refused(
            json!({"do": "tag", "part": "oil-filter", "tag": "pitting", "grade": 1}),
            "An oil filter can't be tagged “pitting”.",
        );
        refused(
            json!({"do": "overrule", "part": "sump", "outcome": "replace", "reason": "Dented."}),
            "Nothing is decided about a sump: it is only recorded.",
        );
        refused(
            json!({"do": "measure", "reading": {"part": "oil-filler", "quantity": "diameter", "value": "40 mm"}}),
            "An oil filler has no diameter to measure.",
        );
        refused(
            json!({"do": "overrule", "part": "main-shell.1.upper", "outcome": "put-back", "reason": "hurry"}),
            "“put back” is not possible for a main bearing shell: choose replace.",
        );
        refused(
            json!({"do": "choose-way", "kind": "bore", "way": "weld-up", "reason": "hurry"}),
            "“weld up and regrind” is no way to choose for a cylinder bore: choose bore all to the next size, with new pistons; or sleeve those that need it, and keep the pistons that are sound; or a new block, with new pistons.",
        );
        refused(
            json!({"do": "choose-way", "kind": "piston", "way": "replace", "reason": "hurry"}),
            "There is only one way for a piston: nothing to choose.",
        );
        refused(
            json!({"do": "choose-way", "kind": "camshaft", "way": "weld-up", "reason": " "}),
            "The reason is empty: say why this way is chosen.",
        );
        refused(
            json!({"do": "overrule", "part": "piston.1", "outcome": "put-back", "reason": " "}),
            "The reason is empty: say why you decide otherwise.",
        );
        refused(
            json!({"do": "note-mark", "place": {"main-cap": 6}, "mark": {"text": "6", "marking": "found", "side": null, "points": null}}),
            "This engine has no main cap 6.",
        );
        refused(
            json!({"do": "fill", "field": "customer", "text": "x".repeat(10_001)}),
            "The text has 10001 characters: 10000 at most.",
        );
    }

    #[test]
    fn a_closed_job_stays_as_it_is_until_it_is_opened_again() {
        let clean = Change::OnPart(OnPart::Clean { part: "piston.1".parse().unwrap() });
        let mut job = job();
        job.apply(edit(7), &Change::OnJob(OnJob::Close { closed: true }));
        for change in [&clean, &Change::OnJob(OnJob::Undo { edit: edit(3) })] {
            assert!(job.check(change).unwrap_err().to_string().starts_with("This job is closed: open it again"));
        }
        for change in [Change::OnJob(OnJob::Undo { edit: edit(7) }), Change::OnJob(OnJob::Close { closed: false })] {
            assert_eq!(job.check(&change), Ok(()));
        }
        job.apply(edit(8), &Change::OnJob(OnJob::Close { closed: false }));
        assert_eq!(job.check(&clean), Ok(()));
    }

    #[test]
    fn parts_need_an_arrangement_first() {
        let change = Change::OnPart(OnPart::Clean { part: "piston.1".parse().unwrap() });
        assert_eq!(
            Job::default().check(&change).unwrap_err().to_string(),
            "The engine has no arrangement yet: enter its layout first."
        );
    }
}
