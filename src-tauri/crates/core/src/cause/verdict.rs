//! What can be said of the whole engine: that it is sound and that nothing was looked at yet are two answers.

use std::collections::BTreeMap;

use serde::Serialize;

use super::catalogue;
use super::natural::is_natural;
use super::wreck::wrecked_from;
use crate::engine::{Engine, Part};
use crate::figure::Figure;
use crate::job::{Job, PartRecord};

/// Fewest parts of interest that must have been looked at before a cause is named (our judgement: one rod's bearing
/// with its crankpin is not yet an engine).
const PARTS_BEFORE_NAMING: usize = 4;
/// The share of the parts of interest that must have been looked at before an engine is called sound (our judgement).
const SHARE_BEFORE_SOUND: f64 = 0.8;

/// What can be said of an engine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Verdict {
    /// Nothing has been looked at or measured.
    NothingExamined,
    /// Too little has been looked at.
    TooEarly,
    /// Nothing was found so far, and much is still to be looked at.
    SoundSoFar,
    /// Nearly all was looked at, and nothing was found but use.
    Sound,
    /// It is worn by ordinary use, and by nothing else that stands out.
    OrdinaryWear,
    /// Something was found, and no cause stands out.
    NoneStandsOut,
    /// One cause or several are likely.
    Named,
    /// So much is destroyed that the parts no longer show what began it.
    Wreck,
}

/// What was looked at, as far as it matters for the verdict.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Looked {
    /// Parts of which a cause of the catalogue has a word.
    pub(super) of_interest: usize,
    /// Of these, how many were looked at.
    pub(super) looked: usize,
    /// Parts with damage, or a size beyond its limit.
    pub(super) damaged: usize,
    /// Whether anything was looked at or measured at all.
    pub(super) is_begun: bool,
    /// Parts that are evenly worn, more than nearly new.
    pub(super) worn: usize,
    /// Whether bearings, cylinders and valve train are destroyed all three.
    pub(super) wreck: bool,
    /// Whether something was found outside the parts: at the oil, the coolant, the air cleaner.
    pub(super) outside: bool,
}

impl Looked {
    /// At an engine, as it was found.
    pub(super) fn at(engine: &Engine, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>) -> Self {
        let is_spoken_of = |part: &&Part| {
            catalogue::ALL.iter().any(|cause| cause.signs.iter().any(|sign| sign.kinds.contains(&part.kind)))
        };
        let looked = |part: &&Part| job.parts.get(part).is_some_and(PartRecord::looked_at);
        let of_interest = || engine.parts().iter().filter(is_spoken_of);
        let tags = |part: &Part| job.parts.get(part).map(|record| &record.tags).into_iter().flatten();
        let is_damaged = |part: &Part| {
            tags(part).any(|(tag, seen)| tag.is_damage() && !is_natural(part.kind, *tag, seen.grade))
                || figures.get(part).into_iter().flatten().any(Figure::is_found_outside)
        };
        let is_worn =
            |part: &Part| tags(part).any(|(tag, seen)| !tag.is_damage() && !is_natural(part.kind, *tag, seen.grade));
        let parts = engine.parts();
        Self {
            of_interest: of_interest().count(),
            looked: of_interest().filter(looked).count(),
            damaged: parts.iter().filter(|part| is_damaged(part)).count(),
            worn: parts.iter().filter(|part| is_worn(part)).count(),
            is_begun: job.is_begun(),
            wreck: wrecked_from(engine, job).is_some(),
            outside: engine.outside().iter().any(|part| tags(part).any(|(tag, _)| tag.is_damage())),
        }
    }

    /// Whether enough was looked at to name a cause.
    pub(super) fn is_enough(self) -> bool {
        self.looked >= PARTS_BEFORE_NAMING
    }

    fn is_nearly_all(self) -> bool {
        self.looked as f64 >= SHARE_BEFORE_SOUND * self.of_interest as f64
    }

    /// The verdict, `named` being whether a cause is likely beside ordinary wear, and `worn` whether that is.
    pub(super) fn verdict(self, named: bool, worn: bool) -> Verdict {
        let nearly_all = self.is_nearly_all();
        match self.damaged {
            _ if !self.is_begun => Verdict::NothingExamined,
            _ if !self.is_enough() => Verdict::TooEarly,
            _ if named => Verdict::Named,
            _ if self.wreck => Verdict::Wreck,
            0 if self.worn > 0 && nearly_all => Verdict::OrdinaryWear,
            0 if nearly_all => Verdict::Sound,
            0 => Verdict::SoundSoFar,
            _ if worn => Verdict::OrdinaryWear,
            _ => Verdict::NoneStandsOut,
        }
    }

    /// In a sentence for the customer; empty where the causes tell it.
    pub(super) fn sentence(self, verdict: Verdict) -> String {
        match verdict {
            Verdict::NothingExamined => "Nothing has been examined yet.".into(),
            Verdict::TooEarly => "Not enough has been seen yet to say why the engine suffered.".into(),
            Verdict::SoundSoFar => format!(
                "Nothing was found so far, in {} of {} parts that tell of causes.",
                self.looked, self.of_interest
            ),
            Verdict::Sound if self.outside => "Nothing was found inside beyond the marks of use.".into(),
            Verdict::Sound => "The engine is sound: nothing was found beyond the marks of use.".into(),
            Verdict::OrdinaryWear => "Nothing but ordinary wear stands out.".into(),
            Verdict::NoneStandsOut if self.is_nearly_all() => {
                "Something is worn or damaged, and no cause known here stands out.".into()
            }
            Verdict::NoneStandsOut => "No single cause stands out yet: look at more parts.".into(),
            Verdict::Wreck => "So much is destroyed that the parts no longer show what began it.".into(),
            Verdict::Named => String::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    #[track_caller]
    fn says(changes: &[Value], verdict: Verdict, sentence: &str) {
        let report = assess(&job_of(changes)).causes;
        assert_eq!((report.verdict, report.summary.as_str()), (verdict, sentence), "{:#?}", report.causes[0]);
        assert!(report.causes.iter().all(|cause| !cause.named || verdict == Verdict::Named));
    }

    fn every(part_of: impl Fn(Part) -> Value) -> Vec<Value> {
        let arrangement = Arrangement::vee(8);
        let engine = Engine::new(arrangement.clone()).unwrap();
        let looks = engine.parts().iter().map(|part| part_of(*part));
        std::iter::once(arrange(&arrangement)).chain(looks).collect()
    }

    fn clean(part: Part) -> Value {
        json!({ "do": "clean", "part": part })
    }

    const SOUND: &str = "The engine is sound: nothing was found beyond the marks of use.";

    #[test]
    fn sound_and_not_examined_are_two_answers() {
        let vee = arrange(&Arrangement::vee(8));
        says(std::slice::from_ref(&vee), Verdict::NothingExamined, "Nothing has been examined yet.");
        let one = json!({ "do": "clean", "part": "piston.1" });
        let early = "Not enough has been seen yet to say why the engine suffered.";
        says(&[vee, one], Verdict::TooEarly, early);
        says(&every(clean), Verdict::Sound, SOUND);
    }

    /// Nearly new and clean are two words for one thing, and so do not turn the verdict.
    #[test]
    fn nearly_new_is_as_sound_as_clean() {
        let nearly_new = |part: Part| {
            if part.kind.row().tags.contains(&crate::wear::Tag::LooksEven) {
                json!({ "do": "tag", "part": part, "tag": "looks-even", "grade": 1 })
            } else {
                clean(part)
            }
        };
        says(&every(nearly_new), Verdict::Sound, SOUND);
        let wear = |changes: &[Value]| {
            let report = assess(&job_of(changes)).causes;
            report.causes.iter().find(|cause| cause.id == "normal-wear").unwrap().probability
        };
        assert!((wear(&every(clean)) - wear(&every(nearly_new))).abs() < 1e-12);
    }

    /// Published: see [`is_natural`].
    #[test]
    fn how_sound_shells_look_after_hours_is_no_damage() {
        for tag in ["pitting", "corrosion", "fatigue-cracks", "embedded-debris", "hot-spot"] {
            let looks = |part: Part| match part.kind.row().id {
                "main-shell" | "rod-shell" => json!({ "do": "tag", "part": part, "tag": tag, "grade": 1 }),
                _ => clean(part),
            };
            says(&every(looks), Verdict::Sound, SOUND);
            let worse = |part: Part| match part.kind.row().id {
                "main-shell" | "rod-shell" => json!({ "do": "tag", "part": part, "tag": tag, "grade": 3 }),
                _ => clean(part),
            };
            assert_ne!(assess(&job_of(&every(worse))).causes.verdict, Verdict::Sound, "{tag}");
        }
    }

    /// Milky oil in an engine whose parts are sound: it is sound inside, and not altogether.
    #[test]
    fn what_was_found_outside_is_not_passed_over() {
        let milky = json!({ "do": "tag", "part": "engine-oil", "tag": "milky", "grade": 3 });
        let inside = "Nothing was found inside beyond the marks of use.";
        says(&[&every(clean)[..], &[milky]].concat(), Verdict::Sound, inside);
        let outside = json!({ "do": "clean", "part": "engine-oil" });
        says(&[&every(clean)[..], &[outside]].concat(), Verdict::Sound, SOUND);
    }

    /// Nobody is sent to look on where all was looked at.
    #[test]
    fn what_no_cause_explains_is_said_so() {
        let stuck = |part: Part| match part.to_string().as_str() {
            "rings.2" => json!({ "do": "tag", "part": part, "tag": "deposits", "grade": 4 }),
            _ => clean(part),
        };
        let told = "Something is worn or damaged, and no cause known here stands out.";
        says(&every(stuck), Verdict::NoneStandsOut, told);
    }

    #[test]
    fn even_wear_all_over_is_ordinary() {
        let worn = |part: Part| match part.kind.row().id {
            "main-shell" | "rod-shell" => json!({ "do": "tag", "part": part, "tag": "looks-even", "grade": 3 }),
            _ => clean(part),
        };
        says(&every(worn), Verdict::OrdinaryWear, "Nothing but ordinary wear stands out.");
    }
}
