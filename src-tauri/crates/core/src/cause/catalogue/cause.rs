//! A cause, as the catalogue has it.

use std::borrow::Cow;

use serde::Serialize;

use super::sign::{Mirror, Sign};
use crate::cause::place::PlaceKind;
use crate::engine::{Arrangement, PartKind};
use crate::job::HistoryFact;
use crate::words::{Phrase, Terms};

/// A cause and the pattern that it leaves.
#[derive(Debug)]
pub struct Cause {
    /// The written form.
    pub id: &'static str,
    /// The name, lower case, with the places of the shop's words.
    pub(super) name: &'static str,
    /// The sentence for the customer, likewise.
    pub(super) plainly: &'static str,
    /// How often an engine that comes in for a rebuild suffers from it, before anything is seen; 0 to 1. For a cause of
    /// one place: at some place or other.
    pub prior: f64,
    /// The kinds of place at which it can be; none for a cause of the whole engine.
    pub reach: &'static [PlaceKind],
    /// Whether it has a mirror image.
    pub mirror: Mirror,
    /// Whether an engine can have it.
    pub fits: fn(&Arrangement) -> bool,
    /// What is known of the engine's past, and by which factor it changes the odds.
    pub shifts: &'static [(HistoryFact, f64)],
    /// The signs it leaves.
    pub signs: &'static [Sign],
    /// What to check before assembly.
    pub check: &'static [TodoRow],
    /// What to put right before assembly.
    pub put_right: &'static [TodoRow],
    /// Where the figures come from.
    pub source: &'static str,
}

/// Something to check or to put right before assembly, as the catalogue has it.
#[derive(Debug)]
pub struct TodoRow {
    /// The written form: see [`Todo::id`].
    pub id: &'static str,
    /// In words, a sentence, with the places of the shop's words.
    pub(super) words: &'static str,
    /// The kinds of piece on which it is work or a test: pointless where all of them are renewed.
    on: &'static [PartKind],
    /// What it asks to be looked at: done once all of it was.
    pub(in crate::cause) looks: &'static [PartKind],
    /// The way in that it closes: asked for by that way itself, once it is found.
    pub(in crate::cause) way: &'static str,
}

pub(in crate::cause) const fn todo(id: &'static str, words: &'static str) -> TodoRow {
    TodoRow { id, words, on: &[], looks: &[], way: "" }
}

/// What a worn cam asks for, whatever wore it.
pub(super) const RENEW_CAMSHAFT: TodoRow =
    todo("renew-camshaft", "Renew camshaft and {tappets} together; never fit old {tappets} to a new cam.");

impl TodoRow {
    /// It is work or a test on these pieces.
    pub(super) const fn on(self, kinds: &'static [PartKind]) -> Self {
        Self { on: kinds, ..self }
    }

    /// It is a look at these, outside the parts.
    pub(super) const fn looking_at(self, kinds: &'static [PartKind]) -> Self {
        Self { looks: kinds, ..self }
    }

    /// It closes this way in.
    pub(super) const fn of_way(self, way: &'static str) -> Self {
        Self { way, ..self }
    }
}

/// Something to check or to put right before assembly.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Todo {
    /// The written form, such as `cut-filter`; with its cause's it names the line, whatever the words become.
    pub id: &'static str,
    /// In words, a sentence.
    pub words: String,
    /// Why it is not needed after all, lower case: "the crankshaft is renewed"; empty where it is.
    pub moot: String,
    /// The kinds of piece on which it is work or a test; none where it is about no piece.
    #[serde(skip)]
    #[cfg_attr(feature = "schema", ts(skip))]
    pub on: &'static [PartKind],
}

impl Todo {
    /// With why it is not needed, where it is not.
    pub fn sentence(&self) -> String {
        if self.moot.is_empty() { self.words.clone() } else { format!("{} Not needed: {}.", self.words, self.moot) }
    }
}

impl TodoRow {
    /// In the shop's words.
    pub fn said(&self, terms: Terms) -> Todo {
        Todo { id: self.id, words: Phrase(self.words).said(terms).into(), moot: String::new(), on: self.on }
    }
}

impl Cause {
    /// The name, lower case, in the shop's words.
    pub fn name(&self, terms: Terms) -> Cow<'static, str> {
        Phrase(self.name).said(terms)
    }

    /// The sentence for the customer, in the shop's words.
    pub fn plainly(&self, terms: Terms) -> Cow<'static, str> {
        Phrase(self.plainly).said(terms)
    }

    /// Everything to check and to put right before assembly, in this order.
    pub fn todos(&self) -> impl Iterator<Item = &'static TodoRow> {
        self.check.iter().chain(self.put_right)
    }

    /// Whether it is the wear that every engine has with time, against which causes stand out.
    pub fn is_ordinary(&self) -> bool {
        self.id == "normal-wear"
    }

    /// Whether it is of the whole engine, not of one place.
    pub fn is_shared(&self) -> bool {
        self.reach.is_empty()
    }

    /// Whether it is at fault with a bearing's shells, and not only with what lies above it.
    pub fn is_of_bearing(&self) -> bool {
        let shells = [PartKind::MainShell, PartKind::RodShell];
        let first = self.signs.first();
        first.is_some_and(|sign| sign.kinds.iter().any(|kind| shells.contains(kind)))
    }

    /// The forms in which it can be at a place.
    pub fn forms(&self) -> &'static [Mirror] {
        match self.mirror {
            Mirror::None => &[Mirror::None],
            Mirror::Ends => &[Mirror::None, Mirror::Ends],
            Mirror::Sides => &[Mirror::None, Mirror::Sides],
            Mirror::Halves => &[Mirror::None, Mirror::Halves],
        }
    }
}

/// For causes that any engine can have.
pub(super) const fn any(_: &Arrangement) -> bool {
    true
}
