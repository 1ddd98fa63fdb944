//! To order: sized parts in their sizes, held or free, and everything else that is replaced.

use super::ListItem;
use super::work::{Shared, count, count_of, grouped};
use crate::engine::PartKind;
use crate::sheet::SizeGroup;
use crate::sizing::{Action, OrderLine, OrderState, Sizing};
use crate::view::PartView;
use crate::words::capitalised;
use crate::work::Outcome;

/// What comes in a size, held or free; then everything else that is replaced.
pub(super) fn order(work: &Shared<'_>, sizing: &Sizing) -> Vec<ListItem> {
    let mut replaced = work.with(Outcome::Replace);
    let mut items: Vec<ListItem> = Vec::new();
    for line in &sizing.orders {
        // Of what is ordered in more than one size, each part belongs to the line of its own.
        let views = replaced.get_mut(&line.kind).map(|left| of_line(work, sizing, line, left)).unwrap_or_default();
        if views.is_empty() {
            continue;
        }
        items.push(ListItem {
            what: capitalised(&line.what),
            quantity: if line.kind == PartKind::Piston { count(&views) } else { count_of(line.quantity) },
            waits_for: if line.state == OrderState::Held { line.waits_for.clone() } else { vec![] },
            ..grouped(format!("order {} {}", line.kind.row().id, line.size_shown), &views, line.size_shown.clone())
        });
    }
    for (kind, views) in replaced.iter().filter(|(_, views)| !views.is_empty()) {
        let mut item = work.grouped(format!("order {}", kind.row().id), views, detail(*kind, sizing));
        if *kind == PartKind::ThrustFace {
            (item.what, item.quantity) = ("Thrust bearing, set".into(), 1);
        }
        if let Some(carrier) = kind.comes_with() {
            item.waits_for
                .push(format!("It comes only with the {}, which is not replaced: decide.", carrier.row().name));
        }
        items.push(item);
    }
    items
}

/// Takes from the parts that are left those of a line: all where it is the only size of its kind.
fn of_line<'a>(
    work: &Shared<'a>,
    sizing: &Sizing,
    line: &OrderLine,
    left: &mut Vec<&'a PartView>,
) -> Vec<&'a PartView> {
    let of_its_size = |view: &PartView| {
        let mates = sizing.groups.iter().filter(|plan| plan.group.mate() == line.kind).flat_map(|plan| &plan.parts);
        let mut own = mates.filter(|own| work.is_mate(own.part, view.part)).peekable();
        own.peek().is_none() || own.any(|own| own.mate_shown == line.size_shown)
    };
    let is_only = sizing.orders.iter().filter(|other| other.kind == line.kind).count() == 1;
    let (views, rest) = left.iter().partition(|view| is_only || of_its_size(view));
    *left = rest;
    views
}

/// A piston that is renewed alone takes the size of its bore.
fn detail(kind: PartKind, sizing: &Sizing) -> String {
    let bores = sizing.groups.iter().find(|plan| plan.group == SizeGroup::Bores);
    let size = bores.filter(|plan| kind == PartKind::Piston && plan.action != Action::Open);
    size.map_or_else(String::new, |plan| plan.size_shown.clone())
}
