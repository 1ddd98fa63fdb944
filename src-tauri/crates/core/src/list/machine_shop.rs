//! One complete trip to the machine shop.

use super::ListItem;
use super::work::{Shared, grouped};
use crate::engine::PartKind;
use crate::job::ItemKey;
use crate::sizing::{Action, Missing};
use crate::view::Sizing;
use crate::words::capitalised;
use crate::work::{Outcome, Work};

/// Groups that go to one size, with the sizes found and wanted; then every other part to be machined.
pub(super) fn machine_shop(work: &Shared<'_>, sizing: &Sizing) -> Vec<ListItem> {
    let terms = work.terms();
    let mut machined = work.with(Outcome::Machine);
    let mut items = Vec::new();
    for plan in sizing.groups.iter().filter(|plan| plan.machined().next().is_some()) {
        let Some(views) = machined.remove(&plan.group.kind()) else { continue };
        let done = match plan.action {
            Action::Sleeve => format!("sleeve and finish to {}", plan.size_shown),
            _ => plan.words.clone(),
        };
        let wanted = if plan.finished_shown.is_empty() { String::new() } else { format!(", {}", plan.finished_shown) };
        let found: Vec<String> = plan
            .machined()
            .filter(|part| !part.found_shown.is_empty())
            .map(|part| format!("{} {}", part.label, part.found_shown))
            .collect();
        let found = if found.is_empty() { String::new() } else { format!("; found: {}", found.join("; ")) };
        let work = if plan.action == Action::Sleeve { Work::Sleeve } else { Work::Machine };
        let key = ItemKey::Machine { kind: plan.group.kind(), work: Some(work) };
        let item = grouped(key, &views, format!("{}{wanted}{found}", capitalised(&done)), terms);
        let mut item = item.in_size(plan.size, &plan.size_shown);
        item.because.clone_from(&plan.because);
        if !plan.settled {
            item.waits_for = plan.missing.iter().map(Missing::sentence).collect();
        }
        items.push(item);
    }
    items.extend(machined.iter().map(|(kind, views)| {
        let way = views.iter().find_map(|view| view.decision.way);
        let done = way.map_or_else(|| done_to(*kind), Work::words);
        let parts: Vec<&str> = views.iter().map(|view| view.label.as_str()).collect();
        // What there is but once is named already.
        let which = if parts == [capitalised(&kind.row().name.said(terms))] {
            String::new()
        } else {
            format!(": {}", parts.join("; "))
        };
        let key = ItemKey::Machine { kind: *kind, work: Some(way.unwrap_or(Work::Machine)) };
        work.grouped(key, views, format!("{}{which}", capitalised(done)))
    }));
    items
}

/// What a machine shop does to a part of a kind that goes to no common size (common practice).
fn done_to(kind: PartKind) -> &'static str {
    match kind {
        PartKind::MainJournal | PartKind::Crankpin | PartKind::CamJournal => "grind",
        PartKind::Bore => "bore or hone",
        PartKind::HousingBore => "measure; line-bore or hone to size",
        PartKind::Rod => "resize the big end; check for bend and twist",
        PartKind::Lobe | PartKind::Camshaft => "regrind; check for run-out",
        PartKind::Crankshaft => "test for cracks and run-out; straighten or dress what is damaged",
        PartKind::Block => "test for cracks; dress or face what is damaged",
        _ => "machine",
    }
}
