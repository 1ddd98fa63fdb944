//! One job from taking in to findings, of our own invention: the engine of a sawmill that has breathed its own dust.
//!
//! It is told as a person would do it, step by step, so that replaying it through the app's actions makes the demo job
//! with a real log, real photos and a real diagnosis.

mod drawings;
mod observations;
mod photos;
mod prices;
mod readings;

use std::collections::BTreeMap;

use wearbook_core::engine::{Arrangement, Part, Tappets};
use wearbook_core::job::{
    Answer, Change, Complaint, HistoryFact, Mark, MarkPlace, MarkSide, Marking, Markup, OnIntake, OnPart, TextField,
};
use wearbook_core::wear::{Grade, Tag, Zone};

use crate::picture::Subject;
use observations::{OBSERVATIONS, OUTSIDE, Observation, Seen};

/// One thing that the mechanic of the story did.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    /// Recorded a change.
    Record(Change),
    /// Took a photo of a part: what it shows, and the seed from which it is drawn.
    Photograph {
        /// The part.
        part: Part,
        /// What the photo shows.
        subject: Subject,
        /// The seed of the drawing.
        seed: u64,
    },
    /// Drew something over the first photo of a part.
    DrawOver {
        /// The part.
        part: Part,
        /// What was drawn.
        markup: Markup,
    },
    /// Took back the entry before.
    UndoLast,
}

/// The story.
pub fn steps() -> Vec<Step> {
    let mut steps = take_in();
    steps.extend(marks());
    steps.extend(OUTSIDE.iter().flat_map(|observation| look(observation, 0)));
    steps.extend((1..).zip(OBSERVATIONS).flat_map(|(seed, observation)| look(observation, seed)));
    steps.extend(readings::changes().into_iter().map(Step::Record));
    steps.extend(second_thoughts());
    steps.extend(prices::changes().into_iter().map(Step::Record));
    steps
}

/// One look: photos, what was seen, a remark. Photos are drawn from the seed.
fn look(observation: &Observation, seed: u64) -> Vec<Step> {
    // The tables are checked by a test; a part that can't be read is left out rather than stopping the demo.
    let Ok(part) = observation.part.parse::<Part>() else { return vec![] };
    let mut steps = Vec::new();
    let tags: BTreeMap<Tag, (Grade, &[Zone])> = match observation.seen {
        Seen::Clean => BTreeMap::new(),
        Seen::Tags(tags) => tags.iter().map(|(tag, grade, zones)| (*tag, (*grade, *zones))).collect(),
    };
    if observation.photo {
        let subjects = photos::photos_of(part, &tags).into_iter();
        steps.extend(subjects.zip(0..).map(|(subject, nth)| Step::Photograph { part, subject, seed: 10 * seed + nth }));
        let drawings = drawings::drawings_on(observation.part).into_iter();
        steps.extend(drawings.map(|markup| Step::DrawOver { part, markup }));
    }
    if tags.is_empty() {
        steps.push(Step::Record(Change::OnPart(OnPart::Clean { part })));
    }
    steps.extend(tags.into_iter().map(|(tag, (grade, zones))| {
        Step::Record(Change::OnPart(OnPart::Tag { part, tag, grade, zones: zones.iter().copied().collect() }))
    }));
    if !observation.note.is_empty() {
        steps.push(Step::Record(Change::OnPart(OnPart::Remark { part, text: observation.note.into() })));
    }
    steps
}

fn take_in() -> Vec<Step> {
    let text = |field, text: &str| Step::Record(Change::OnIntake(OnIntake::Fill { field, text: text.into() }));
    let recall = |fact, answer| Step::Record(Change::OnIntake(OnIntake::Recall { fact, answer }));
    let arrangement = Arrangement { tappets: Tappets::FlatHydraulic, ..Arrangement::inline(4) };
    vec![
        text(TextField::Customer, "Ilse Brandvold"),
        text(TextField::Contact, "ilse@alder-mill.example"),
        text(TextField::Machine, "Stationary engine of the Alder Creek saw bench"),
        text(TextField::EngineNumber, "stamped 40117"),
        text(TextField::Use, "6 140 hours"),
        text(
            TextField::Complaint,
            "Knocks under load when warm. Oil pressure low at idle; a new filter brought no change.",
        ),
        text(TextField::Remarks, "Air cleaner found torn, lid of the oil filler missing."),
        recall(HistoryFact::NeglectedOil, Answer::Yes),
        complain(Complaint::KnockUnderLoad),
        complain(Complaint::LowPressureAtIdle),
        recall(HistoryFact::Overheated, Answer::No),
        recall(HistoryFact::LongStorage, Answer::No),
        recall(HistoryFact::RecentRebuild, Answer::No),
        recall(HistoryFact::CoolantInOil, Answer::No),
        recall(HistoryFact::WorkedHard, Answer::Unknown),
        Step::Record(Change::OnIntake(OnIntake::Arrange { arrangement })),
    ]
}

fn complain(complaint: Complaint) -> Step {
    Step::Record(Change::OnIntake(OnIntake::Complain { complaint, told: true }))
}

fn marks() -> Vec<Step> {
    let note = |place, text: &str, marking, side| {
        let mark = Mark { text: text.into(), marking, side: Some(side), points: None };
        Step::Record(Change::OnIntake(OnIntake::NoteMark { place, mark }))
    };
    let mut steps = Vec::new();
    for cylinder in 1..=4_u8 {
        let number = cylinder.to_string();
        steps.push(note(MarkPlace::Rod(cylinder), &number, Marking::Found, MarkSide::Left));
        steps.push(note(MarkPlace::RodCap(cylinder), &number, Marking::Found, MarkSide::Left));
    }
    for main in 1..=5_u8 {
        // The rear cap bore no number.
        let marking = if main == 5 { Marking::Made } else { Marking::Found };
        steps.push(note(MarkPlace::MainCap(main), &main.to_string(), marking, MarkSide::Underneath));
    }
    steps
}

/// What the mechanic took back or decided against the rules.
fn second_thoughts() -> Vec<Step> {
    let mut steps = Vec::new();
    if let (Ok(shell), Ok(pump)) = ("main-shell.4.upper".parse(), "oil-pump".parse()) {
        steps.push(Step::Record(Change::OnPart(OnPart::Tag {
            part: shell,
            tag: Tag::HotSpot,
            grade: Grade::ONE,
            zones: [Zone::FrontCrown].into(),
        })));
        steps.push(Step::UndoLast);
        steps.push(Step::Record(Change::OnPart(OnPart::Overrule {
            part: pump,
            outcome: wearbook_core::work::Outcome::Replace,
            reason: "A new pump costs less than the hours to rebuild this one.".into(),
        })));
    }
    steps
}

#[cfg(test)]
mod tests {
    use super::*;
    use wearbook_core::assess::assess;
    use wearbook_core::job::OnJob;
    use wearbook_core::job::{DeviceId, Edit, EditId, Job, RecordedChange};
    use wearbook_core::work::Outcome;

    /// The story without its photos.
    fn told() -> Job {
        let mut log: Vec<Edit> = Vec::new();
        for step in steps() {
            let change = match step {
                Step::Record(change) => change,
                Step::UndoLast => Change::OnJob(OnJob::Undo { edit: log.last().unwrap().id }),
                Step::Photograph { .. } | Step::DrawOver { .. } => continue,
            };
            let job = Job::fold(&log);
            assert_eq!(job.check(&change), Ok(()), "{change:?}");
            let id = EditId::next(log.last().map(|edit| edit.id), 1_000, DeviceId(1));
            log.push(Edit { id, change: RecordedChange::Known(change) });
        }
        Job::fold(&log)
    }

    #[test]
    fn every_observation_is_told() {
        for observation in OUTSIDE.iter().chain(OBSERVATIONS) {
            assert!(observation.part.parse::<Part>().is_ok(), "{}", observation.part);
        }
        let photos = OBSERVATIONS.iter().filter(|observation| observation.photo).count();
        let drawn = steps().iter().filter(|step| matches!(step, Step::Photograph { .. })).count();
        assert!(drawn >= photos, "every photo of the story can be drawn");
        assert!(photos >= 12, "a story with {photos} photos is thin");
        assert!(steps().iter().any(|step| matches!(step, Step::DrawOver { .. })), "something is drawn over a photo");
    }

    /// It breathed its own dust, by a torn air cleaner and a filler without its lid. Its cylinders show little of it: one page
    /// says so where it names the way, and both ways are put right.
    #[test]
    fn the_story_tells_one_tale_of_its_causes() {
        let causes = assess(&told()).causes;
        let of = |id: &str| causes.causes.iter().find(|cause| cause.id == id).unwrap();
        let named: Vec<&str> =
            causes.causes.iter().filter(|cause| cause.named).map(|cause| cause.id.as_str()).collect();
        assert_eq!(named, ["dirt-in-oil", "tappet-did-not-turn", "cam-fatigue"]);
        let dirt = of("dirt-in-oil");
        assert!(of("dusty-air").probability < 0.25);
        let ways = [
            "an oil filler without its lid",
            "an air cleaner that leaks, is torn or missing (the cylinders show little dust)",
        ];
        assert_eq!(dirt.chain.ways[..2], ways);
        assert!(dirt.evidence_for.iter().any(|own| own.words.starts_with("scoring, grade 1 to 3, on 5 lower main")));
        assert!(
            dirt.evidence_against.iter().all(|own| !own.words.starts_with("scoring")),
            "{:?}",
            dirt.evidence_against
        );
        let closed: Vec<&str> = causes.to_close.iter().map(|way| way.id.as_str()).collect();
        assert_eq!(closed, ["air-cleaner", "oil-filler"]);
    }

    #[test]
    fn the_story_measures_and_orders() {
        use wearbook_core::sizing::Action;
        use wearbook_core::view::OrderState;
        let assessment = assess(&told());
        assert_eq!(assessment.sheet_doubts, Vec::<String>::new());
        let [mains, pins, bores] = assessment.sizing.groups.as_slice() else { panic!("three groups") };
        assert_eq!(
            (mains.action, mains.settled, mains.size_shown.as_str()),
            (Action::Machine, false, "0.25 mm undersize")
        );
        assert_eq!(pins.missing, []);
        assert_eq!((pins.action, pins.settled, pins.size_shown.as_str()), (Action::Machine, true, "0.25 mm undersize"));
        assert_eq!(
            (bores.action, bores.settled, bores.size_shown.as_str()),
            (Action::Machine, true, "0.25 mm oversize")
        );
        assert_eq!(pins.decided_by, "crankpin.2".parse().ok());
        let orders: Vec<(&str, usize, OrderState)> =
            assessment.sizing.orders.iter().map(|line| (line.what.as_str(), line.quantity, line.state)).collect();
        let expected = [
            ("main bearing shells, pairs", 5, OrderState::Held),
            ("rod bearing shells, pairs", 4, OrderState::Held),
            ("pistons", 4, OrderState::Free),
            ("piston rings, sets", 4, OrderState::Free),
        ];
        assert_eq!(orders, expected, "the shaft has not gone yet, for it goes once");
        let doubts =
            assessment.parts.iter().flat_map(|view| &view.readings).filter_map(|reading| reading.doubt.as_ref());
        assert_eq!(doubts.count(), 0);
        let unpriced: Vec<&str> =
            assessment.quote.lines.iter().filter(|line| line.net.is_none()).map(|line| line.what.as_str()).collect();
        assert_eq!(unpriced, Vec::<&str>::new(), "the shop of the story knows its prices");
        assert!(
            !assessment.differences.is_empty() && !assessment.ways.is_empty(),
            "something changed since the estimate"
        );
    }

    #[test]
    fn the_story_has_a_diagnosis_and_every_kind_of_outcome() {
        let assessment = assess(&told());
        assert!(assessment.causes.enough_seen);
        assert_eq!(assessment.causes.causes[0].id, "dirt-in-oil");
        assert!(assessment.causes.causes[0].probability > 0.9, "{}", assessment.causes.causes[0].probability);
        for outcome in [Outcome::PutBack, Outcome::Clean, Outcome::CantSay, Outcome::Machine, Outcome::Replace] {
            assert!(assessment.parts.iter().any(|view| view.decision.outcome == outcome), "{outcome:?}");
        }
        assert_eq!(assessment.marks.missing, 0);
        assert!(assessment.progress.looked < assessment.progress.parts, "something was not looked at");
        let found = assessment.outside.iter().filter(|view| view.worst.is_some());
        assert_eq!(found.count(), 5, "oil, filter, sump, and the two by which the dust came in");
    }
}
