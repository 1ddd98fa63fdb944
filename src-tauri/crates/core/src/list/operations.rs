//! What is done, on the lists of who does it: the one complete trip to the machine shop, and the work and the cleaning here.

use super::ListItem;
use super::bench::Bench;
use super::work::count_of;
use crate::engine::{Engine, Part};
use crate::job::ListKind;
use crate::operation::Operation;
use crate::words::{capitalised, plural};
use crate::work::{Hands, Work};

/// The operations of one list, in the order of the work.
pub(super) fn of_list(bench: &Bench<'_>, kind: ListKind) -> Vec<ListItem> {
    let here = bench.operations.iter().filter(|own| list_of(own) == kind);
    here.map(|own| item(bench.engine, own)).collect()
}

/// The list on which an operation stands.
fn list_of(own: &Operation) -> ListKind {
    match (own.hands, own.of.work) {
        (Hands::MachineShop, _) => ListKind::MachineShop,
        (Hands::Here, Work::Clean) => ListKind::Clean,
        (Hands::Here, _) => ListKind::RebuildHere,
    }
}

fn item(engine: &Engine, own: &Operation) -> ListItem {
    // What there is but one of is named already; what is in one piece with it comes along.
    let of_kind: Vec<Part> = own.of_kind().copied().collect();
    let (what, detail) = match of_kind.as_slice() {
        [part] => (engine.label(*part), capitalised(&own.done)),
        _ => (capitalised(&plural(&own.of.kind.row().name.said(engine.terms()))), own.told()),
    };
    let detail = match &own.back {
        Some(back) => format!("{detail}; {}", back.asked),
        None => detail,
    };
    let detail = if own.finish.is_empty() { detail } else { format!("{detail}; {}", own.finish) };
    let item = ListItem {
        detail,
        parts: own.parts.clone(),
        because: own.because.clone(),
        waits_for: own.waits_for.clone(),
        of: Some(own.of.into()),
        hands: Some(own.hands),
        mind: own.mind.into(),
        is_right: own.is_right,
        tested: own.tested.clone(),
        ..ListItem::new(own.key.clone(), what, count_of(of_kind.len()))
    };
    // What has a size is asked for in it, sizes found and all else apart.
    if own.size_shown.is_empty() { item } else { item.in_size(own.size, &own.size_shown) }
}
