//! A part drawn with the zones that were marked.

use serde::Serialize;

use crate::view::PartView;
use crate::wear::{Grade, Zone, ZoneMap};

/// A part with its marked zones.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ZoneDrawing {
    /// Which drawing.
    pub map: ZoneMap,
    /// The marked zones, each with the worst grade that was marked there.
    pub marked: Vec<(Zone, Grade)>,
    /// The drawing in words.
    pub alt: String,
}

/// The part with its marked zones, each in the ink of the worst that was marked there; none if nothing was marked.
pub(super) fn zones(view: &PartView) -> Option<ZoneDrawing> {
    let map = view.kind.row().zones;
    let marked: Vec<(Zone, Grade)> =
        map.zones().iter().filter_map(|zone| Some((*zone, worst_at(view, *zone)?))).collect();
    if map == ZoneMap::None || marked.is_empty() {
        return None;
    }
    let words: Vec<String> =
        marked.iter().map(|(zone, grade)| format!("{}, grade {}", zone.label(), grade.number())).collect();
    Some(ZoneDrawing { map, alt: format!("Drawing of {}, hatched: {}", view.label, words.join("; ")), marked })
}

fn worst_at(view: &PartView, zone: Zone) -> Option<Grade> {
    let damage = view.findings.iter().filter(|finding| finding.tag.is_damage());
    damage.filter(|finding| finding.zones.contains(&zone)).map(|finding| finding.grade).max()
}
