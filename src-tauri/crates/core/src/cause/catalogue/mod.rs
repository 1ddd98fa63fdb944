//! The catalogue of causes: one file each, and one line each in [`ALL`].
//!
//! Chances marked "our judgement" are how often a mechanic would expect to find the sign on one such part of an engine
//! that suffers from the cause alone; the direction of every sign (which tag, on which half, in which zones) has the
//! source named.

mod barrel_journal;
mod bent_crankshaft;
mod bent_rod;
mod blocked_oil_way;
mod bond_failure;
mod broken_ring;
mod cam_fatigue;
mod cause;
mod cavitation;
mod corrosion;
mod detonation;
mod dirt_behind_shell;
mod dirt_in_oil;
mod dusty_air;
mod excessive_crush;
mod fillet_ride;
mod fuel_dilution;
mod fuel_wash;
mod hourglass_journal;
mod insufficient_crush;
mod leak;
mod misaligned_main_bores;
mod normal_wear;
mod oil_starvation;
mod out_of_round_journal;
mod oval_housing;
mod overheating;
mod overload;
mod poor_journal_finish;
mod prelude;
mod shifted_cap;
mod sign;
mod stuck_rings;
mod stuck_tappet;
mod tapered_journal;
mod tappet_did_not_turn;
mod thrust_cap_misaligned;
mod thrust_overload;
mod tight_pin;
mod tight_piston;

pub(super) use cause::todo;
pub use cause::{Cause, Todo, TodoRow};
pub use leak::{leak, leak_share};
pub use sign::{Along, Fault, Mirror, Presence, Severity, Side, Sign, Symptom};

use crate::wear::Tag;

/// Every cause, in no particular order: probability ranks them.
pub const ALL: [&Cause; 37] = [
    // Of the whole engine.
    &dirt_in_oil::CAUSE,
    &oil_starvation::CAUSE,
    &overheating::CAUSE,
    &corrosion::CAUSE,
    &fuel_dilution::CAUSE,
    &overload::CAUSE,
    &misaligned_main_bores::CAUSE,
    &bent_crankshaft::CAUSE,
    &poor_journal_finish::CAUSE,
    &dusty_air::CAUSE,
    &cavitation::CAUSE,
    &normal_wear::CAUSE,
    // Of one place.
    &dirt_behind_shell::CAUSE,
    &shifted_cap::CAUSE,
    &excessive_crush::CAUSE,
    &insufficient_crush::CAUSE,
    &oval_housing::CAUSE,
    &tapered_journal::CAUSE,
    &hourglass_journal::CAUSE,
    &barrel_journal::CAUSE,
    &fillet_ride::CAUSE,
    &out_of_round_journal::CAUSE,
    &blocked_oil_way::CAUSE,
    &bond_failure::CAUSE,
    &bent_rod::CAUSE,
    &detonation::CAUSE,
    &broken_ring::CAUSE,
    &fuel_wash::CAUSE,
    &tight_pin::CAUSE,
    &tight_piston::CAUSE,
    &stuck_rings::CAUSE,
    &tappet_did_not_turn::CAUSE,
    &stuck_tappet::CAUSE,
    &cam_fatigue::CAUSE,
    &thrust_overload::FRONT_FACE,
    &thrust_overload::REAR_FACE,
    &thrust_cap_misaligned::CAUSE,
];

/// The written form of the cause that is no fault.
pub const ORDINARY: &str = normal_wear::CAUSE.id;

/// The working pattern of an ordinary life, which needs no explanation.
pub const EVEN: Symptom = Symptom::Seen(Tag::LooksEven);

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::cause::network::MAX_SHARED;
    use crate::cause::pattern::Pattern;
    use crate::cause::place::PlaceKind;
    use crate::engine::{Arrangement, Engine, PartKind};
    use crate::job::former_put_right::FORMER;
    use crate::wear::ZoneMap;

    /// Ticks of long ago are kept under these words.
    #[test]
    fn what_was_ticked_by_its_words_is_still_there() {
        for (id, words, line) in FORMER {
            let cause = ALL.into_iter().find(|cause| cause.id == *id);
            assert!(cause.is_some_and(|cause| cause.todos().any(|todo| todo.id == *line)), "{id}: {words}");
        }
        assert!(FORMER.is_sorted());
    }

    #[test]
    fn the_catalogue_is_sound() {
        for cause in ALL {
            assert!(cause.prior > 0.0 && cause.prior < 1.0, "{}", cause.id);
            for list in [cause.check, cause.put_right] {
                assert!(!list.is_empty() && list.iter().all(|todo| todo.words.ends_with('.')), "{}", cause.id);
            }
            let ids: BTreeSet<&str> = cause.todos().map(|todo| todo.id).collect();
            assert_eq!(ids.len(), cause.todos().count(), "two lines of {} share an id", cause.id);
            let is_written = |id: &&str| id.bytes().all(|byte| byte.is_ascii_lowercase() || byte == b'-');
            assert!(ids.iter().all(is_written), "{ids:?}");
            assert!(cause.source.contains("ur judgement") && cause.plainly.ends_with('.'), "{}", cause.id);
            assert!(!cause.signs.is_empty(), "{}", cause.id);
            for sign in cause.signs {
                assert!(sign.chance > 0.0 && sign.chance < 0.95, "{} {:?}", cause.id, sign.symptom);
                let shares: f64 = sign.at.iter().map(|(_, share)| share).sum();
                assert!(shares <= 0.9 + 1e-12, "{} is too sure of where {:?} lies", cause.id, sign.symptom);
                for kind in sign.kinds {
                    let Symptom::Seen(tag) = sign.symptom else { continue };
                    assert!(kind.row().tags.contains(&tag), "{}: a {kind:?} can't be tagged {tag:?}", cause.id);
                    let shown = |(pattern, _): &(Pattern, f64)| Pattern::all(kind.row().zones).contains(pattern);
                    let named = sign.at.is_empty() || kind.row().zones == ZoneMap::None || sign.at.iter().any(shown);
                    assert!(named, "{}: no pattern of {tag:?} can lie on a {kind:?}", cause.id);
                }
            }
        }
        let mut ids: Vec<&str> = ALL.iter().map(|cause| cause.id).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), ALL.len(), "two causes share an id");
        assert!(ALL.iter().filter(|cause| cause.is_shared()).count() <= MAX_SHARED);
    }

    #[test]
    fn a_sign_is_given_once_for_each_kind_and_half() {
        let engine = Engine::new(Arrangement::vee(8)).unwrap();
        let along = Along { centrality: 0.5, remoteness: 0.5 };
        for cause in ALL {
            for part in engine.parts() {
                let seen = part.kind.row().tags.iter().map(|tag| Symptom::Seen(*tag));
                for symptom in seen.chain(Fault::ALL.map(Symptom::Measured)) {
                    for form in cause.forms() {
                        let signs = cause
                            .signs
                            .iter()
                            .filter(|sign| sign.on(*part, symptom, &|| along, *form).is_some())
                            .count();
                        assert!(signs <= 1, "{} speaks twice of {symptom:?} on {part}", cause.id);
                    }
                }
            }
        }
    }

    #[test]
    fn a_cause_of_one_place_speaks_only_of_parts_near_it() {
        use PlaceKind::*;
        let near = |reach: &[PlaceKind], kind: PartKind| match kind {
            PartKind::MainShell | PartKind::MainJournal | PartKind::HousingBore => reach.contains(&Main),
            PartKind::Crankpin => reach.contains(&Crankpin),
            PartKind::RodShell | PartKind::Rod => reach.contains(&Rod) || reach.contains(&Crankpin),
            PartKind::Piston | PartKind::Rings | PartKind::Bore => reach.contains(&Rod),
            PartKind::Tappet | PartKind::Lobe => reach.contains(&Valve),
            PartKind::ThrustFace => reach.contains(&Thrust),
            _ => false,
        };
        for cause in ALL.iter().filter(|cause| !cause.is_shared()) {
            for kind in cause.signs.iter().flat_map(|sign| sign.kinds) {
                assert!(near(cause.reach, *kind), "{} speaks of a {kind:?}", cause.id);
            }
        }
    }
}
