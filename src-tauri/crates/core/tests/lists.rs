//! Whatever is found, measured and decided: every part with work stands on the list of its outcome, once, with a reason.

#![allow(clippy::unwrap_used, reason = "a test stops at what it did not expect")]

use std::collections::BTreeMap;

use proptest::prelude::*;
use serde_json::json;
use wearbook_core::assess::{Assessment, assess, assess_given};
use wearbook_core::cause::diagnose;
use wearbook_core::engine::{Arrangement, Camshaft, Engine, Part, PartKind};
use wearbook_core::job::{Change, DeviceId, EditId, ItemKey, Job, ListKind, OnIntake, OnList};
use wearbook_core::list::ListItem;
use wearbook_core::measure::{Phase, Quantity};
use wearbook_core::money::Charge;
use wearbook_core::wear::{Grade, Tag};
use wearbook_core::work::{Hands, Outcome, Work};

/// What a random person did.
#[derive(Debug, Clone)]
enum Did {
    Tag(Part, Tag, Grade),
    Clean(Part),
    Overrule(Part, Outcome),
    /// A bore or journal, in thousandths of an inch beyond or below the size of a new one.
    Measure(Part, i64),
    Choose(PartKind, Work),
}

impl Did {
    fn change(&self) -> Change {
        let reason = "So decided.";
        let json = match self {
            Self::Tag(part, tag, grade) => json!({ "do": "tag", "part": part, "tag": tag, "grade": grade }),
            Self::Clean(part) => json!({ "do": "clean", "part": part }),
            Self::Overrule(part, outcome) => {
                json!({ "do": "overrule", "part": part, "outcome": outcome, "reason": reason })
            }
            Self::Measure(part, thou) => {
                let (new, sign) = if part.kind == PartKind::Bore { (3_500, 1) } else { (2_500, -1) };
                let value = format!("{:.4} in", f64::from(i32::try_from(new + sign * thou).unwrap()) / 1_000.0);
                json!({ "do": "measure", "reading": { "part": part, "quantity": Quantity::Diameter, "phase": Phase::Found,
                    "spot": { "station": "middle", "direction": "a" }, "value": value } })
            }
            Self::Choose(kind, way) => json!({ "do": "choose-way", "kind": kind, "way": way, "reason": reason }),
        };
        serde_json::from_value(json).unwrap()
    }
}

fn arrangements() -> Vec<Arrangement> {
    let twin = Arrangement { camshaft: Camshaft::OverheadTwin, cam_bearings: 3, ..Arrangement::inline(2) };
    vec![Arrangement::inline(2), Arrangement::vee(4), twin, Arrangement::flat(4)]
}

fn did(parts: Vec<Part>) -> impl Strategy<Value = Did> {
    let is_sized = |part: &Part| matches!(part.kind, PartKind::Bore | PartKind::Crankpin | PartKind::MainJournal);
    let sized: Vec<Part> = parts.iter().copied().filter(is_sized).collect();
    let any = prop::sample::select(parts);
    let choices: Vec<(PartKind, Work)> = [PartKind::Bore, PartKind::Camshaft]
        .into_iter()
        .flat_map(|kind| kind.ways().iter().map(move |way| (kind, *way)))
        .collect();
    prop_oneof![
        4 => any.clone().prop_flat_map(|part| {
            let tags = prop::sample::select(part.kind.row().tags);
            (Just(part), tags, prop::sample::select(&Grade::ALL[..])).prop_map(|(part, tag, grade)| Did::Tag(part, tag, grade))
        }),
        2 => any.clone().prop_map(Did::Clean),
        2 => any.prop_flat_map(|part| {
            prop::sample::select(part.kind.row().outcomes).prop_map(move |outcome| Did::Overrule(part, outcome))
        }),
        4 => (prop::sample::select(sized), prop::sample::select(vec![0, 1, 3, 8, 18, 50])).prop_map(|(part, thou)| Did::Measure(part, thou)),
        1 => prop::sample::select(choices).prop_map(|(kind, way)| Did::Choose(kind, way)),
    ]
}

/// Sizes of journals and bores to go by, shells for slight wear among them.
fn sheet() -> Change {
    let line = |kind: &str, new: &str, limit: &str| json!({ "of": { "kind": kind, "quantity": "diameter" }, "min": new, "max": new, "limit": limit, "source": "" });
    let undersize = |journals: &str, size: &str, slight: bool| json!({ "journals": journals, "size": size, "without_grinding": slight, "source": "" });
    let sheet = json!({
        "head": { "name": "Any", "source": "", "unit": "inch" },
        "lines": [line("bore", "3.500 in", "3.502 in"), line("main-journal", "2.500 in", "2.4985 in"), line("crankpin", "2.500 in", "2.4985 in")],
        "undersizes": [undersize("mains", "0.002 in", true), undersize("mains", "0.010 in", false), undersize("crankpins", "0.010 in", false)],
        "oversizes": [{ "size": "0.010 in", "source": "" }, { "size": "0.020 in", "source": "" }],
    });
    serde_json::from_value(json!({ "do": "use-sheet", "sheet": sheet })).unwrap()
}

fn any_job() -> impl Strategy<Value = Job> {
    prop::sample::select(arrangements()).prop_flat_map(|arrangement| {
        let parts = Engine::new(arrangement.clone()).unwrap().parts().to_vec();
        prop::collection::vec(did(parts), 0..16).prop_map(move |done| {
            let mut changes = vec![Change::OnIntake(OnIntake::Arrange { arrangement: arrangement.clone() }), sheet()];
            changes.extend(done.iter().map(Did::change));
            let mut job = Job::default();
            for (change, n) in changes.iter().zip(1..) {
                assert_eq!(job.check(change), Ok(()), "{change:?}");
                job.apply(EditId::next(None, n, DeviceId(1)), change);
            }
            job
        })
    })
}

fn items(assessment: &Assessment) -> impl Iterator<Item = (ListKind, &ListItem)> {
    assessment.lists.iter().flat_map(|list| list.items.iter().map(|item| (list.kind, item)))
}

/// The items of some lists on which a part stands.
fn items_of<'a>(assessment: &'a Assessment, part: Part, on: &[ListKind]) -> Vec<&'a ListItem> {
    let of_part = items(assessment).filter(|(kind, item)| on.contains(kind) && item.parts.contains(&part));
    of_part.map(|(_, item)| item).collect()
}

/// The lists of what is done.
const DONE: [ListKind; 3] = [ListKind::MachineShop, ListKind::RebuildHere, ListKind::Clean];

/// Whether anybody has looked at, measured or decided anything: before that lists are empty.
fn is_begun(assessment: &Assessment) -> bool {
    assessment.lists.iter().all(|list| list.note.is_empty())
}

/// Of the causes, lists take nothing but what is to be put right: those of an engine of which nothing is known are had at once.
fn without_causes(job: &Job) -> Assessment {
    assess_given(job, |_, _| diagnose(None, job, &BTreeMap::new()))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn every_part_stands_on_the_list_of_its_outcome(job in any_job()) {
        let assessment = without_causes(&job);
        for view in assessment.parts.iter().filter(|_| is_begun(&assessment)) {
            let (part, outcome) = (view.part, view.decision.outcome);
            let ordered = items_of(&assessment, part, &[ListKind::Order]).len();
            prop_assert_eq!(ordered, usize::from(outcome == Outcome::Replace), "{} is to be {:?}", part, outcome);
            let looked = items_of(&assessment, part, &[ListKind::LookAgain]).len();
            let open = outcome == Outcome::CantSay && !view.decision.goes_along();
            prop_assert_eq!(looked, usize::from(open), "{} is to be {:?}", part, outcome);
            let done = items_of(&assessment, part, &DONE);
            let works = [Outcome::Clean, Outcome::RebuildHere, Outcome::Polish, Outcome::Machine];
            if works.contains(&outcome) && !view.decision.goes_along() {
                prop_assert!(!done.is_empty(), "{} is to be {:?}, and nobody does it", part, outcome);
            }
            // What is renewed is not worked on, but the new one is fitted, weighed, balanced and measured.
            let work = |item: &&ListItem| item.of.as_ref().and_then(Charge::work).map(|of| of.work);
            let of_new = |work| matches!(work, Some(Work::Fit | Work::Weigh | Work::Balance | Work::Measure));
            let is_worked = done.iter().any(|item| !of_new(work(item)));
            prop_assert!(outcome != Outcome::Replace || !is_worked, "{} is renewed: {:?}", part, done);
            let mut works: Vec<_> = done.iter().map(|item| item.of.clone()).collect();
            works.sort_unstable();
            let all = works.len();
            works.dedup();
            prop_assert_eq!(works.len(), all, "{} has the same done twice: {:?}", part, done);
        }
    }

    #[test]
    fn the_machine_shop_is_told_what_to_do(job in any_job()) {
        let assessment = without_causes(&job);
        for (_, item) in items(&assessment).filter(|(kind, _)| *kind == ListKind::MachineShop) {
            let names_only = item.parts.iter().any(|part| {
                assessment.parts.iter().any(|view| view.part == *part && item.detail.starts_with(&view.label))
            });
            prop_assert!(!item.detail.is_empty() && !names_only, "{:?}", item);
        }
    }

    #[test]
    fn what_is_charged_is_what_is_listed(job in any_job()) {
        let assessment = without_causes(&job);
        let listed: Vec<_> = items(&assessment).filter_map(|(_, item)| item.of.clone()).collect();
        for of in &listed {
            let charged = assessment.quote.lines.iter().filter(|line| line.of == *of).count();
            prop_assert_eq!(charged, 1, "{:?} is listed", of);
        }
        for line in assessment.quote.lines.iter().filter(|_| is_begun(&assessment)) {
            prop_assert!(listed.contains(&line.of), "{:?} is charged and not listed", line.of);
            for part in &line.parts {
                let on = items_of(&assessment, *part, &ListKind::ALL);
                prop_assert!(on.iter().any(|item| item.of.as_ref() == Some(&line.of)), "{} is charged and not listed", part);
            }
        }
    }

    #[test]
    fn a_line_that_is_moved_takes_all_with_it(job in any_job()) {
        let before = without_causes(&job);
        let moved = items(&before).filter(|(kind, _)| DONE.contains(kind)).map(|(kind, item)| (kind, item.clone()));
        for (list, item) in moved {
            let (of, hands) = (item.of.as_ref().and_then(Charge::work).unwrap(), item.hands.unwrap());
            let other = if hands == Hands::Here { Hands::MachineShop } else { Hands::Here };
            let give = Change::OnList(OnList::GiveWork { of, hands: other });
            prop_assert_eq!(job.check(&give), Ok(()));
            let mut given = job.clone();
            given.apply(EditId::next(None, 1_000, DeviceId(1)), &give);
            let after = without_causes(&given);
            let now: Vec<_> = items(&after).filter(|(_, own)| own.asked.key == item.asked.key).collect();
            prop_assert_eq!(now.len(), 1, "{:?}", item.asked.key);
            let (kind, own) = now[0];
            prop_assert_ne!(kind, list);
            prop_assert_eq!((own.hands, &own.parts, own.quantity), (Some(other), &item.parts, item.quantity));
            let orders = |assessment: &Assessment| -> Vec<_> {
                items(assessment).filter(|(kind, _)| *kind == ListKind::Order).map(|(_, own)| own.clone()).collect()
            };
            prop_assert_eq!(orders(&after), orders(&before), "orders wait for the work, whoever does it");
            let charged = |assessment: &Assessment| assessment.quote.lines.iter().filter(|line| line.of == of).count();
            prop_assert_eq!(charged(&after), charged(&before));
        }
    }
}

proptest! {
    // The causes are worked out each time, for what is to be put right.
    #![proptest_config(ProptestConfig::with_cases(30))]

    #[test]
    fn what_puts_a_cause_right_is_charged_or_said_to_be_apart(job in any_job()) {
        let assessment = assess(&job);
        let is_named = |id: &str| assessment.causes.causes.iter().any(|own| own.named && own.put_right.iter().any(|todo| todo.id == id));
        let of_cause = items(&assessment).any(|(kind, item)| match &item.asked.key {
            ItemKey::PutRight { check, .. } => kind == ListKind::PutRight && !item.is_done() && is_named(check),
            _ => false,
        });
        let is_priced = items(&assessment).any(|(kind, item)| kind == ListKind::PutRight && item.of.is_some());
        let said = assessment.left_out.iter().any(|words| words.contains("right"));
        prop_assert!(!of_cause || is_priced || said, "{:?}", assessment.left_out);
    }

    #[test]
    fn nothing_stands_on_a_list_without_a_reason(job in any_job()) {
        let assessment = assess(&job);
        let mut ids: Vec<_> = items(&assessment).map(|(_, item)| &item.asked.key).collect();
        ids.sort_unstable();
        let before = ids.len();
        ids.dedup();
        prop_assert_eq!(ids.len(), before, "two items share an id");
        for (_, item) in items(&assessment) {
            prop_assert!(!item.because.trim().is_empty() && item.quantity > 0, "{:?}", item);
        }
    }
}
