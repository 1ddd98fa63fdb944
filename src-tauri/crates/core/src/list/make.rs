//! From decisions, sizes and causes to the lists.

use super::bench::Bench;
use super::work::Shared;
use super::{ListItem, NotWanted, WorkList, caution, consent, operations, order};
use crate::cause::CauseReport;
use crate::job::{ItemKey, Job, ListKind, Step, Tick, Ticked};
use crate::money::{Charge, OwnCharge};
use crate::view::PartView;
use crate::words::capitalised;
use crate::work::Outcome;

/// Makes all lists.
pub(crate) fn lists(bench: &Bench<'_>) -> Vec<WorkList> {
    let Bench { engine, job, parts, causes, approval, answered, .. } = *bench;
    let work = Shared::of(engine, parts);
    let is_begun = job.is_begun();
    let items_of = |kind: ListKind| {
        let mut items = match kind {
            _ if !is_begun => vec![],
            ListKind::Order => order::order(bench, &work),
            ListKind::MachineShop | ListKind::RebuildHere | ListKind::Clean => operations::of_list(bench, kind),
            ListKind::LookAgain => look_again(parts),
            ListKind::PutRight => put_right(causes, job),
        };
        items.extend(own(job, kind));
        for item in &mut items {
            item.asked.quantity = item.quantity;
            item.tick = job.ticked(&item.asked).map(|ticked| ticked.tick.clone());
        }
        let mut items: Vec<ListItem> = items.into_iter().map(|item| item.with_steps(kind)).collect();
        caution::say(&mut items);
        consent::heed(approval, answered, &mut items);
        if kind == ListKind::Order {
            consent::ask_first(approval, &mut items);
        }
        consent::heed_refusal(job.refusal.as_ref(), &mut items);
        items
    };
    let all = ListKind::ALL.map(|kind| (kind, items_of(kind)));
    // A tick stays with its line on whatever list that stands.
    let stands =
        |ticked: &Ticked| all.iter().flat_map(|(_, items)| items).any(|item| job.ticked(&item.asked) == Some(ticked));
    let left: Vec<&Ticked> = job.ticks.iter().filter(|ticked| !stands(ticked)).collect();
    let note = if is_begun { "" } else { "Nothing has been examined yet." };
    let list = |(kind, items): (ListKind, Vec<ListItem>)| WorkList {
        kind,
        title: kind.title().into(),
        note: note.into(),
        not_wanted: not_wanted(job, kind, &left),
        done: items.iter().filter(|item| item.is_done()).count(),
        items,
    };
    all.into_iter().map(list).collect()
}

/// What was done about items that are no longer asked for, or not in that size.
fn not_wanted(job: &Job, kind: ListKind, left: &[&Ticked]) -> Vec<NotWanted> {
    let of_list = left.iter().filter(|ticked| job.list_of(&ticked.asked.key) == kind);
    of_list
        .map(|ticked| NotWanted {
            asked: ticked.asked.clone(),
            words: job.item_words(&ticked.asked),
            because: no_longer(kind, &ticked.tick).into(),
            tick: ticked.tick.clone(),
        })
        .collect()
}

fn no_longer(kind: ListKind, tick: &Tick) -> &'static str {
    match kind {
        _ if !tick.is_begun() => "Noted, not wanted now.",
        ListKind::Order if tick.at(Step::Fitted) > 0 => "Fitted, not asked for now.",
        ListKind::Order => "Ordered, not wanted now: send it back, or keep it.",
        ListKind::MachineShop if tick.result.is_some() || !tick.steps.is_empty() && tick.at(Step::Back) > 0 => {
            "Back from the machine shop, not asked for now."
        }
        ListKind::MachineShop => "Given to the machine shop, not wanted now: stop the machinist.",
        _ => "Done, not asked for now.",
    }
}

/// One item for each part that can't be judged yet.
fn look_again(parts: &[PartView]) -> Vec<ListItem> {
    let item = |view: &PartView| ListItem {
        parts: vec![view.part],
        because: view.decision.because().into(),
        ..ListItem::new(ItemKey::Part { list: ListKind::LookAgain, part: view.part }, view.label.clone(), 1)
    };
    let open = |view: &&PartView| view.decision.outcome == Outcome::CantSay && !view.decision.goes_along();
    parts.iter().filter(open).map(item).collect()
}

/// The ways in that were found, and what the likely causes ask to be checked or put right; not on what goes to the scrap.
/// What several ask for stands once.
fn put_right(causes: &CauseReport, job: &Job) -> Vec<ListItem> {
    let ways = causes.to_close.iter().map(|way| {
        let key = ItemKey::PutRight { cause: WAY_IN.into(), check: way.id.clone() };
        ListItem {
            parts: way.parts.clone(),
            because: format!("{}.", way.found.join("; ")),
            ..ListItem::new(key, way.todo.clone(), 1)
        }
    });
    let told = causes.causes.iter().filter(|cause| cause.told);
    let by_causes = told.flat_map(|cause| {
        cause.check.iter().chain(&cause.put_right).filter(|todo| todo.moot.is_empty()).map(|todo| {
            let key = ItemKey::PutRight { cause: cause.id.clone(), check: todo.id.into() };
            ListItem {
                because: format!("{}: {}, {}.", capitalised(&cause.name), cause.likelihood, cause.percent),
                ..ListItem::new(key, todo.words.clone(), 1)
            }
        })
    });
    let check = |item: &ListItem| match &item.asked.key {
        ItemKey::PutRight { check, .. } => Some(check.clone()),
        _ => None,
    };
    ways.chain(by_causes).fold(vec![], |mut all: Vec<ListItem>, item| {
        // One that was ticked stays: its tick is of it alone.
        let is_ticked = job.ticked(&item.asked).is_some();
        match all.iter_mut().find(|own| !is_ticked && own.what == item.what && check(own) == check(&item)) {
            Some(same) => same.because = format!("{} {}", same.because, item.because),
            None => all.push(item),
        }
        all
    })
}

/// The written form under which a way in is put right, in place of a cause's.
const WAY_IN: &str = "way-in";

fn own(job: &Job, kind: ListKind) -> Vec<ListItem> {
    let items = job.own_items.iter().filter(|(_, item)| item.list == kind);
    items
        .map(|(edit, item)| ListItem {
            because: if item.because.trim().is_empty() { "Added by hand.".into() } else { item.because.clone() },
            of: item.is_charged().then(|| Charge::Own(OwnCharge { own: edit.to_string() })),
            ..ListItem::new(ItemKey::Own { edit: *edit }, item.what.clone(), item.quantity)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::{Assessment, assess, assess_given};
    use crate::cause::diagnose;
    use crate::engine::{Arrangement, PartKind};
    use crate::job::former_put_right::FORMER;
    use crate::job::testing::{arrange, job_of, then};
    use serde_json::{Value, json};

    fn list(assessment: &Assessment, kind: ListKind) -> &WorkList {
        assessment.list(kind).unwrap()
    }

    #[test]
    fn a_tick_stays_with_its_item_whatever_the_item_is_called() {
        let tick = |item: Value| json!({ "do": "tick", "item": item, "tick": { "done": 1, "date": "3 May" } });
        let clean = json!({ "do": "clean", "part": "block" });
        let renamed = json!({ "key": { "of": "order", "kind": "core-plugs" }, "words": "Welsh plugs" });
        for item in [json!("order core-plugs"), renamed] {
            let assessment = assess(&job_of(&[arrange(&Arrangement::inline(2)), clean.clone(), tick(item)]));
            let order = list(&assessment, ListKind::Order);
            assert_eq!((order.done, order.not_wanted.len()), (1, 0));
            let plugs = order.items.iter().find(|item| item.what == "Core plugs").unwrap();
            assert_eq!(plugs.tick.as_ref().map(|tick| tick.date.as_str()), Some("3 May"));
        }
    }

    /// An engine whose bearings have run in dirt.
    fn dirty(item: &Value) -> Job {
        let mut job = job_of(&[arrange(&Arrangement::inline(4))]);
        for n in 1..=5 {
            let shell = format!("main-shell.{n}.lower");
            then(&mut job, n + 1, &json!({ "do": "tag", "part": shell, "tag": "embedded-debris", "grade": 3 }));
        }
        then(&mut job, 7, &json!({ "do": "tick", "item": item, "tick": { "done": 1 } }));
        job
    }

    #[track_caller]
    fn is_done(assessment: &Assessment, key: &ItemKey) {
        let items = &list(assessment, ListKind::PutRight).items;
        let done: Vec<&ItemKey> = items.iter().filter(|item| item.is_done()).map(|item| &item.asked.key).collect();
        assert_eq!(done, [key]);
    }

    #[test]
    fn a_line_of_the_catalogue_may_be_reworded() {
        let (cause, words, check) = FORMER.iter().find(|(cause, ..)| *cause == "dirt-in-oil").unwrap();
        let key = ItemKey::PutRight { cause: (*cause).into(), check: (*check).into() };
        let asked = json!({ "key": key, "words": words });
        // As it was once kept, under its words, and as it is kept now.
        for item in [json!(format!("right {cause} {words}")), asked] {
            let job = dirty(&item);
            is_done(&assess(&job), &key);
            let reworded = assess_given(&job, |engine, figures| {
                let mut report = diagnose(engine, &job, figures);
                for told in
                    report.causes.iter_mut().flat_map(|cause| cause.check.iter_mut().chain(&mut cause.put_right))
                {
                    told.words = "Told in quite another way.".into();
                }
                report
            });
            is_done(&reworded, &key);
        }
    }

    /// A lid that is missing is fitted and a torn cleaner renewed, whatever came of it; what was looked at is not asked for.
    #[test]
    fn each_way_in_that_was_found_is_put_right_once() {
        let tag = |part: &str, tag: &str, grade: u8| json!({ "do": "tag", "part": part, "tag": tag, "grade": grade });
        let mut changes = vec![arrange(&Arrangement::inline(4)), json!({ "do": "clean", "part": "block" })];
        changes.extend([tag("air-cleaner", "torn", 3), tag("oil-filler", "missing", 4)]);
        let asked = |changes: &[Value]| -> Vec<String> {
            let assessment = assess(&job_of(changes));
            list(&assessment, ListKind::PutRight).items.iter().map(|item| item.what.clone()).collect()
        };
        let ways =
            ["Renew the air cleaner and seal its joints before the engine runs.", "Fit an oil filler lid that seals."];
        assert_eq!(asked(&changes), ways);
        changes.push(tag("oil-filter", "grit", 3));
        changes.extend((1..=5).map(|n| tag(&format!("main-shell.{n}.lower"), "embedded-debris", 3)));
        changes.extend(
            (1..=4).flat_map(|n| [format!("bore.{n}"), format!("piston.{n}")]).map(|part| tag(&part, "scoring", 2)),
        );
        let asked = asked(&changes);
        assert_eq!(asked[..2], ways);
        let again =
            |what: &&String| what.contains("filter open") || what.contains("way in") || what.contains("cleaner's");
        assert_eq!(asked.iter().find(again), None, "{asked:?}");
        assert!(asked.iter().any(|what| what.starts_with("Open every oil gallery")), "{asked:?}");
    }

    /// A tappet that did not turn and one whose face breaks up both ask for a new camshaft: it stands once, with both reasons, and
    /// what was ticked for either stays.
    #[test]
    fn what_two_causes_ask_for_stands_once() {
        let tag = |part: &str, tag: &str, grade: u8| json!({ "do": "tag", "part": part, "tag": tag, "grade": grade });
        let mut job = job_of(&[
            arrange(&Arrangement::inline(4)),
            tag("tappet.2.intake.1", "dished-face", 3),
            tag("lobe.2.intake.1", "worn-nose", 3),
            tag("tappet.3.intake.1", "pitting", 3),
            tag("lobe.3.intake.1", "pitting", 3),
        ]);
        let renewals = |job: &Job| -> Vec<(String, bool)> {
            let assessment = assess(job);
            let items = list(&assessment, ListKind::PutRight).items.iter();
            let own = items.filter(|item| item.what.starts_with("Renew camshaft"));
            own.map(|item| (item.because.clone(), item.is_done())).collect()
        };
        let once = renewals(&job);
        assert!(once.len() == 1 && once[0].0.matches(", cylinder ").count() == 2, "{once:?}");
        for cause in ["tappet-did-not-turn", "cam-fatigue"] {
            let key = ItemKey::PutRight { cause: cause.into(), check: "renew-camshaft".into() };
            let asked = json!({ "key": key, "words": "Renew camshaft." });
            let nth = job.ticks.len() as u64 + 20;
            then(&mut job, nth, &json!({ "do": "tick", "item": asked, "tick": { "done": 1 } }));
        }
        assert_eq!(renewals(&job).iter().map(|(_, done)| *done).collect::<Vec<_>>(), [true, true]);
    }

    #[test]
    fn nothing_is_put_right_on_what_is_scrapped() {
        let embedded = |n: u8| json!({ "do": "tag", "part": format!("main-shell.{n}.lower"), "tag": "embedded-debris", "grade": 3 });
        let mut changes = vec![arrange(&Arrangement::inline(4))];
        changes.extend((1..=5).map(embedded));
        let asked = |changes: &[Value]| -> Vec<String> {
            let assessment = assess(&job_of(changes));
            list(&assessment, ListKind::PutRight).items.iter().map(|item| item.what.clone()).collect()
        };
        let particles = "Remove particles that are pressed into the journals before new shells go in.";
        assert!(asked(&changes).iter().any(|what| what == particles));
        changes.push(json!({ "do": "tag", "part": "crankshaft", "tag": "cracks", "grade": 4 }));
        let with_a_new_shaft = asked(&changes);
        assert!(with_a_new_shaft.iter().all(|what| what != particles), "{with_a_new_shaft:?}");
        assert!(!with_a_new_shaft.is_empty(), "the rest stays");
    }

    #[test]
    fn one_kind_in_two_sizes_is_told_apart_by_its_parts() {
        let sheet = json!({ "do": "use-sheet", "sheet": {
            "head": { "name": "Any", "source": "", "unit": "inch" },
            "lines": [{ "of": { "kind": "main-journal", "quantity": "diameter" }, "min": "2.999 in", "max": "3.000 in",
                "limit": "2.9975 in", "source": "" }],
            "undersizes": [{ "journals": "mains", "size": "0.002 in", "min": "2.997 in", "max": "2.998 in",
                "without_grinding": true, "source": "" }], "oversizes": [] } });
        let mut changes = vec![arrange(&Arrangement::inline(1)), sheet];
        for (n, size) in [(1, "2.9995 in"), (2, "2.9972 in")] {
            let part = format!("main-journal.{n}");
            changes.push(json!({ "do": "clean", "part": part }));
            for (station, direction) in [("front", "a"), ("front", "b"), ("rear", "a"), ("rear", "b")] {
                let spot = json!({ "station": station, "direction": direction });
                let reading = json!({ "part": part, "quantity": "diameter", "spot": spot, "value": size });
                changes.push(json!({ "do": "measure", "reading": reading }));
            }
        }
        let assessment = assess(&job_of(&changes));
        let shells = list(&assessment, ListKind::Order).items.iter().filter_map(|item| match &item.asked.key {
            ItemKey::Order { kind: PartKind::MainShell, parts } => Some((item.detail.as_str(), parts.as_slice())),
            _ => None,
        });
        let shells: Vec<(&str, Vec<String>)> =
            shells.map(|(size, parts)| (size, parts.iter().map(ToString::to_string).collect())).collect();
        let of_main = |n: u8| vec![format!("main-shell.{n}.lower"), format!("main-shell.{n}.upper")];
        assert_eq!(shells, [("0.002 in undersize", of_main(2)), ("standard", of_main(1))]);
    }

    #[test]
    fn a_tick_goes_along_to_the_other_list() {
        let of = json!({ "kind": "crankpin", "work": "polish" });
        let scored = json!({ "do": "tag", "part": "crankpin.1", "tag": "scoring", "grade": 2 });
        let by_hand = json!({ "do": "overrule", "part": "crankpin.1", "outcome": "polish", "reason": "It cleans up." });
        let item = json!({ "key": { "of": "machine", "kind": "crankpin", "work": "polish" } });
        let tick = json!({ "do": "tick", "item": item, "tick": { "done": 1 } });
        let here = json!({ "do": "give-work", "of": of, "hands": "here" });
        let assessment = assess(&job_of(&[arrange(&Arrangement::inline(4)), scored, by_hand, tick, here]));
        let done = &list(&assessment, ListKind::RebuildHere).items;
        assert!(done.iter().any(|item| item.what == "Crankpin 1" && item.tick.is_some()), "{done:#?}");
        assert!(assessment.lists.iter().all(|list| list.not_wanted.is_empty()));
    }

    #[test]
    fn what_was_ordered_and_is_no_longer_wanted_stays_known() {
        let tick = json!({ "do": "tick", "item": "order main-shell 0.010 in undersize",
            "tick": { "done": 5, "part_number": "MS-10", "note": "Ordered by telephone." } });
        let assessment = assess(&job_of(&[arrange(&Arrangement::inline(4)), tick]));
        let order = list(&assessment, ListKind::Order);
        assert_eq!(order.done, 0, "of these shells the size is not known yet");
        let left: Vec<(&str, &str)> =
            order.not_wanted.iter().map(|left| (left.words.as_str(), left.tick.part_number.as_str())).collect();
        assert_eq!(left, [("Main bearing shells, 0.010 in undersize", "MS-10")]);
    }
}
