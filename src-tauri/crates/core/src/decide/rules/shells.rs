//! What rules about bearing shells share: which shells belong to a place, and when one has failed. No rule itself.

use super::{Scene, shell_debris, shell_failure, shell_fatigue, shell_moved};
use crate::engine::{At, Part, PartKind};
use crate::job::PartRecord;

/// The finding that condemns a shell by itself, in a sentence.
pub(super) fn failure(part: Part, record: &PartRecord) -> Option<String> {
    let tables = [shell_failure::LINES, shell_debris::LINES, shell_fatigue::LINES, shell_moved::LINES];
    tables.into_iter().find_map(|lines| super::read(lines, part, record)).map(|(_, seen)| seen)
}

/// Every bearing shell of the engine of which something has been recorded.
pub(super) fn recorded<'a>(scene: &Scene<'a>) -> impl Iterator<Item = (Part, &'a PartRecord)> {
    let shells = scene.job.parts.iter().filter(|(part, _)| is_shell(**part) && scene.engine.has(**part));
    shells.map(|(part, record)| (*part, record))
}

/// The shells that run on a journal, or lie in a housing bore or rod, as far as something has been recorded of them.
pub(super) fn at<'a>(scene: &Scene<'a>, place: Part) -> impl Iterator<Item = (Part, &'a PartRecord)> {
    let arrangement = scene.engine.arrangement();
    recorded(scene).filter(move |(shell, _)| match (shell.at, place.at) {
        (At::MainHalf(n, _), At::Main(main)) => n == main,
        (At::CylinderHalf(n, _), At::Cylinder(cylinder)) => n == cylinder,
        (At::CylinderHalf(n, _), At::Crankpin(pin)) => arrangement.crankpin_of(n) == pin,
        _ => false,
    })
}

/// Whether it is a shell of a main or rod bearing.
pub(super) fn is_shell(part: Part) -> bool {
    matches!(part.kind, PartKind::MainShell | PartKind::RodShell)
}
