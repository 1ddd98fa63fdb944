//! A row of the table, and where it may show.

use serde::Serialize;

use crate::engine::PartKind;
use crate::wear::Tag;
use crate::work::Work;

/// What can hurt, and what to do about it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct Caution {
    /// Its written form.
    pub id: &'static str,
    /// What it is about, in a word or two.
    pub about: &'static str,
    /// What to do and what not, in at most 25 words.
    pub line: &'static str,
    /// Where it comes from: a published document, "common practice" or "from memory".
    pub source: &'static str,
    /// The parts in the hand.
    #[serde(skip)]
    pub(super) kinds: &'static [PartKind],
    /// What such a part shows, and of which kinds; [`ANY`] of whichever.
    #[serde(skip)]
    pub(super) tags: &'static [(Tag, &'static [PartKind])],
    /// What is done to parts, and of which kinds; [`ANY`] of whichever.
    #[serde(skip)]
    pub(super) works: &'static [(Work, &'static [PartKind])],
    /// The screens of the page.
    #[serde(skip)]
    pub(super) screens: &'static [Screen],
    /// Whether it concerns a customer, who may get the old parts back.
    #[serde(skip)]
    pub(super) is_for_customer: bool,
}

/// Parts of whichever kind.
pub(super) const ANY: &[PartKind] = &[];

/// A screen on which something is begun that can hurt, before any part is in the hand. Called as the page calls it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "kebab-case")]
pub enum Screen {
    /// The engine comes in and is put on the stand.
    Intake,
    /// Caps and rods are read, and marked where nobody marked them.
    Marks,
}

impl Screen {
    /// Every one.
    pub const ALL: [Self; 2] = [Self::Intake, Self::Marks];
}
