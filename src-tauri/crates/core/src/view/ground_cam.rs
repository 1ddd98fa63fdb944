//! Bearings for cam journals that are ground: they come in the size that these have when they are back.

use super::decided::Decided;
use super::order_line::{OrderLine, held_or_free};
use crate::engine::{Part, PartKind};
use crate::figure::Readings;
use crate::sizing::cam_journal_back;

/// A line for each such bearing, for each has a size of its own.
pub(super) fn cam_bearings(readings: &Readings<'_>, decided: &Decided<'_>) -> Vec<OrderLine> {
    let engine = readings.engine;
    let ground =
        engine.parts().iter().filter(|part| part.kind == PartKind::CamJournal && decided.machined.contains(part));
    let ground: Vec<(Part, Part)> =
        ground.map(|journal| (*journal, Part { kind: PartKind::CamBearing, at: journal.at })).collect();
    // In the casting the seat is bushed to the journal, and nothing is bought.
    let bought = ground.into_iter().filter(|(_, bearing)| decided.replaced.contains(bearing));
    let name = PartKind::CamBearing.row().name.said(engine.terms());
    let line = |(journal, bearing): (Part, Part)| {
        let back = cam_journal_back(readings, journal);
        let label = engine.label(journal);
        let waits = match back {
            Some(_) => vec![],
            None => vec![format!("{label} is ground: measure it when it is back, its bearing comes to that size.")],
        };
        let line = held_or_free(PartKind::CamBearing, &name, None, &waits);
        let size_shown = back.map_or_else(|| line.size_shown.clone(), |size| format!("for {label}, {size}"));
        OrderLine { parts: vec![bearing], quantity: 1, size_shown, ..line }
    };
    bought.map(line).collect()
}
