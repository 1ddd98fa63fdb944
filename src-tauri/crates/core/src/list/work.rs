//! What work each part has of its own, and what comes along with other work.

use std::collections::BTreeMap;

use super::ListItem;
use crate::engine::{Engine, Part, PartKind};
use crate::job::ItemKey;
use crate::view::PartView;
use crate::words::{Terms, capitalised, plural};
use crate::work::{Outcome, Work};

/// The parts with each its own work, and those that come along with another: lobes with a new camshaft, bores with a new
/// block.
#[derive(Debug)]
pub(super) struct Shared<'a> {
    own: Vec<&'a PartView>,
    brought: BTreeMap<Part, Vec<&'a PartView>>,
    engine: &'a Engine,
}

impl<'a> Shared<'a> {
    pub(super) fn of(engine: &'a Engine, parts: &'a [PartView]) -> Self {
        let carrier = |view: &PartView| {
            let with = view.part.comes_with(engine.arrangement())?;
            let carrier = parts.iter().find(|other| other.part == with)?;
            let work = view.decision.work().filter(|work| matches!(work, Work::Replace | Work::WeldUp))?;
            (carrier.decision.work() == Some(work)).then_some(with)
        };
        let mut brought: BTreeMap<Part, Vec<&PartView>> = BTreeMap::new();
        let mut own = Vec::new();
        for view in parts {
            match carrier(view) {
                Some(with) => brought.entry(with).or_default().push(view),
                None => own.push(view),
            }
        }
        Self { own, brought, engine }
    }

    /// The shop's words.
    pub(super) fn terms(&self) -> Terms {
        self.engine.terms()
    }

    /// The engine.
    pub(super) fn engine(&self) -> &'a Engine {
        self.engine
    }

    /// Those that come along with a part.
    pub(super) fn brought_by(&self, part: Part) -> impl Iterator<Item = &'a PartView> + '_ {
        self.brought.get(&part).into_iter().flatten().copied()
    }

    /// How many of a kind the engine has.
    pub(super) fn all_of(&self, kind: PartKind) -> usize {
        let brought = self.brought.values().flatten();
        self.own.iter().chain(brought).filter(|view| view.kind == kind).count()
    }

    /// Those of one outcome, by kind.
    pub(super) fn with(&self, outcome: Outcome) -> BTreeMap<PartKind, Vec<&'a PartView>> {
        let mut by_kind: BTreeMap<PartKind, Vec<&PartView>> = BTreeMap::new();
        for view in self.own.iter().filter(|view| view.decision.outcome == outcome) {
            by_kind.entry(view.kind).or_default().push(view);
        }
        by_kind
    }

    /// Parts of one kind in one item, with those that come along, and the reason of the worst of them.
    pub(super) fn grouped(&self, key: ItemKey, views: &[&PartView], detail: String) -> ListItem {
        let mut item = grouped(key, views, detail, self.terms());
        let brought = views.iter().filter_map(|view| self.brought.get(&view.part)).flatten();
        item.parts.extend(brought.map(|view| view.part));
        item
    }
}

/// Parts of one kind in one item, with the reason of the worst of them.
pub(super) fn grouped(key: ItemKey, views: &[&PartView], detail: String, terms: Terms) -> ListItem {
    let kind = views.first().map_or(PartKind::Block, |view| view.kind);
    let worst = views.iter().max_by_key(|view| view.worst);
    let name = kind.row().name.said(terms);
    let name = if views.len() > 1 { plural(&name) } else { name.into() };
    ListItem {
        detail,
        parts: views.iter().map(|view| view.part).collect(),
        because: worst.map_or_else(String::new, |view| view.decision.because().into()),
        ..ListItem::new(key, capitalised(&name), count(views))
    }
}

pub(super) fn count(views: &[&PartView]) -> u32 {
    count_of(views.len())
}

pub(super) fn count_of(pieces: usize) -> u32 {
    u32::try_from(pieces).unwrap_or(u32::MAX)
}
