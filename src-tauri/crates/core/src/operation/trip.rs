//! One piece, one trip: nothing goes to the machine shop while it is open what else is to be done to the same piece there.

use super::one::Operation;
use super::row::Scene;
use crate::words::capitalised;
use crate::work::Hands;

/// Holds what would go too early. What is back and right has had its trip.
pub(super) fn hold(scene: &Scene<'_>, all: &mut [Operation]) {
    let goes = |own: &Operation| own.hands == Hands::MachineShop && !own.is_right && !own.settles;
    let mut pieces: Vec<_> = all.iter().filter(|own| goes(own)).map(|own| own.piece).collect();
    pieces.dedup();
    for piece in pieces {
        let open = scene.open_on(piece);
        let name = piece.row().name.said(scene.engine.terms());
        let first = match open.as_slice() {
            [] => {
                let mut held = all.iter().filter(|own| own.piece == piece && goes(own));
                held.find_map(|own| own.waits_for.first().cloned())
            }
            [part] => Some(format!("{} can’t be judged yet.", scene.engine.label(*part))),
            [part, more @ ..] => {
                Some(format!("{} and {} more can’t be judged yet.", scene.engine.label(*part), more.len()))
            }
        };
        let Some(first) = first else { continue };
        let because = [capitalised(&first), format!("The {name} goes once, with all that is done to it.")];
        for own in all.iter_mut().filter(|own| own.piece == piece && goes(own) && own.waits_for.is_empty()) {
            own.waits_for.extend(because.clone());
        }
    }
}
