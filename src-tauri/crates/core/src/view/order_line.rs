//! A line of an order, held or free.

use serde::Serialize;

use crate::engine::{Part, PartKind};
use crate::measure::Length;
use crate::sizing::ShellsOfGrade;

/// Whether a line may be ordered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum OrderState {
    /// The readings it rests on do not all exist: not to be ordered yet.
    Held,
    /// Free to order.
    Free,
}

impl OrderState {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Held, Self::Free];

    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Held => "held",
            Self::Free => "free to order",
        }
    }
}

/// One line of an order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct OrderLine {
    /// The kind of part; of shells a pair each bearing.
    pub kind: PartKind,
    /// What, in words: "main bearing shells, pairs".
    pub what: String,
    /// The size beyond standard, in nanometres; none while it is not known.
    pub size: Option<Length>,
    /// The size in words: "0.010 in undersize", "size not known yet".
    pub size_shown: String,
    /// The parts that it is for: of shells those that run on the journals of this size.
    pub parts: Vec<Part>,
    /// How many: pairs of shells, pistons, sets of rings.
    pub quantity: usize,
    /// Of standard shells the grade for each bearing, where the sheet grades them; else empty.
    pub grades: Vec<ShellsOfGrade>,
    /// Held or free.
    pub state: OrderState,
    /// What it waits for, each in a sentence; empty if it is free.
    pub waits_for: Vec<String>,
}

/// A line without its parts.
pub(super) fn held_or_free(kind: PartKind, what: &str, size: Option<(Length, &str)>, waits: &[String]) -> OrderLine {
    OrderLine {
        kind,
        what: what.into(),
        size: size.map(|(size, _)| size),
        size_shown: size.map_or("size not known yet", |(_, shown)| shown).into(),
        parts: vec![],
        grades: vec![],
        quantity: 0,
        state: if waits.is_empty() { OrderState::Free } else { OrderState::Held },
        waits_for: waits.to_vec(),
    }
}
