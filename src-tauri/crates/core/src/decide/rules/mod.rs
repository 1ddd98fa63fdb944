//! The rules: one file each, one line each in [`ALL`]. The order is that in which reasons of equal severity are told;
//! rules about sets come last, each after those whose outcomes it reads.

mod adjacent_clearances;
mod bearings_of_ground_cam_journals;
mod bent_crankshaft;
mod big_ends;
mod block_as_one;
mod bolts_of_resized_rods;
mod bore_damage;
mod both_halves;
mod cam_bearing_damage;
mod cam_bearings_with_wash;
mod camshaft_as_one;
mod common_size;
mod coolant_met_oil;
mod cracks;
mod crankshaft_as_one;
mod crankshaft_of_worn_mains;
mod debris_in_the_oil_ways;
mod deck_flatness;
mod detail_clearances;
mod dirty_tappets;
mod drive_damage;
mod fastener_damage;
mod ground_journals;
mod heat_on_a_shaft;
mod housing_damage;
mod journal_of_a_scored_shell;
mod journal_of_thinned_shells;
mod journal_scratches;
mod journals_as_a_group;
mod judged;
mod line_of_bores;
mod lobe_damage;
mod lobe_of_a_spalled_tappet;
mod loose_tappets;
mod measure_first;
mod new_cam_new_tappets;
mod new_crank_new_shells;
mod new_tappet_old_cam;
mod not_looked_at;
mod nothing_found;
mod oil_pickup_damage;
mod oil_pump_damage;
mod oil_ways;
mod one_bearing_failed;
mod outside_limits;
mod piece_of_worked_parts;
mod piston_damage;
mod pistons_to_bores;
mod pitted_tappets;
mod pump_part_damage;
mod pushrod_damage;
mod renewed_at_overhaul;
mod renewed_caps;
mod rod_damage;
mod rod_of_edge_worn_shells;
mod rod_shells_to_copper;
mod roller_damage;
mod rule;
mod rust_and_dirt;
mod seat_of_a_moved_shell;
mod seat_of_pinched_shells;
mod seen_along;
mod shell_debris;
mod shell_failure;
mod shell_fatigue;
mod shell_moved;
mod shells;
mod surface;
mod taken_apart;
mod tappet_bore_damage;
mod tappet_damage;
mod tappets_to_bores;
mod tested_for_cracks;
mod thrust_faces;
mod water_in_the_oil_ways;
mod worn_tappet_bores;

pub use bolts_of_resized_rods::is_resized;
pub use cam_bearings_with_wash::is_washed;
pub use coolant_met_oil::coolant_met_oil;
pub use rule::{Rule, RuleId, Says, Scene, Verdict, WearLine};
pub(super) use rule::{at, from, read, up_to};

/// A crack that can't stay: no other way of putting the part right serves.
pub const CRACKS: RuleId = cracks::RULE.id;
/// All of a group go to one size, or stay.
pub const COMMON_SIZE: RuleId = common_size::RULE.id;
/// A piece that goes along with what is machined on it.
pub const PIECE_OF_WORKED_PARTS: RuleId = piece_of_worked_parts::RULE.id;
/// A part that is looked at with another.
pub const SEEN_ALONG: RuleId = seen_along::RULE.id;
/// New pistons because the bores get another size.
pub const PISTONS_TO_BORES: RuleId = pistons_to_bores::RULE.id;
/// New rod bolts for those rods alone that are resized.
pub const BOLTS_OF_RESIZED_RODS: RuleId = bolts_of_resized_rods::RULE.id;
/// The deck is not flat, or is to be measured.
pub const DECK_FLATNESS: RuleId = deck_flatness::RULE.id;
/// Renewed whatever it looks like.
pub const RENEWED_AT_OVERHAUL: RuleId = renewed_at_overhaul::RULE.id;
/// Cam bearings that are renewed because of a wash, or of a new camshaft.
pub const CAM_BEARINGS_WITH_WASH: RuleId = cam_bearings_with_wash::RULE.id;
/// The crankshaft is bent.
pub const BENT_CRANKSHAFT: RuleId = bent_crankshaft::RULE.id;
/// The thrust faces of the crankshaft are worn.
pub const THRUST_FACES: RuleId = thrust_faces::RULE.id;
/// The journal is to be measured before anything can be said.
pub const MEASURE_FIRST: RuleId = measure_first::RULE.id;

/// Whether a rule reads nothing but the damage of the part itself.
pub fn is_read_off_damage(id: RuleId) -> bool {
    ALL.iter().any(|rule| rule.id == id && matches!(rule.says, Says::OnWear(_)))
}

/// Every rule.
pub const ALL: [&Rule; 70] = [
    &renewed_at_overhaul::RULE,
    &shell_failure::RULE,
    &shell_debris::RULE,
    &shell_fatigue::RULE,
    &shell_moved::RULE,
    &both_halves::RULE,
    &rod_shells_to_copper::RULE,
    &one_bearing_failed::RULE,
    &adjacent_clearances::RULE,
    &journal_of_a_scored_shell::RULE,
    &journal_of_thinned_shells::RULE,
    &lobe_of_a_spalled_tappet::RULE,
    &seat_of_a_moved_shell::RULE,
    &not_looked_at::RULE,
    &seen_along::RULE,
    &cracks::RULE,
    &tested_for_cracks::RULE,
    &heat_on_a_shaft::RULE,
    &journal_scratches::RULE,
    &measure_first::RULE,
    &bore_damage::RULE,
    &common_size::RULE,
    &tappet_bore_damage::RULE,
    &worn_tappet_bores::RULE,
    &outside_limits::RULE,
    &bent_crankshaft::RULE,
    &thrust_faces::RULE,
    &loose_tappets::RULE,
    &big_ends::RULE,
    &line_of_bores::RULE,
    &deck_flatness::RULE,
    &renewed_caps::RULE,
    &rod_of_edge_worn_shells::RULE,
    &seat_of_pinched_shells::RULE,
    &crankshaft_of_worn_mains::RULE,
    &piston_damage::RULE,
    &pitted_tappets::RULE,
    &tappet_damage::RULE,
    &dirty_tappets::RULE,
    &roller_damage::RULE,
    &pushrod_damage::RULE,
    &lobe_damage::RULE,
    &cam_bearing_damage::RULE,
    &housing_damage::RULE,
    &rod_damage::RULE,
    &oil_pump_damage::RULE,
    &pump_part_damage::RULE,
    &detail_clearances::RULE,
    &oil_pickup_damage::RULE,
    &drive_damage::RULE,
    &fastener_damage::RULE,
    &rust_and_dirt::RULE,
    &debris_in_the_oil_ways::RULE,
    &water_in_the_oil_ways::RULE,
    &nothing_found::RULE,
    &crankshaft_as_one::RULE,
    &new_crank_new_shells::RULE,
    &journals_as_a_group::RULE,
    &ground_journals::RULE,
    &piece_of_worked_parts::RULE,
    &block_as_one::RULE,
    &bolts_of_resized_rods::RULE,
    &pistons_to_bores::RULE,
    &tappets_to_bores::RULE,
    &camshaft_as_one::RULE,
    &bearings_of_ground_cam_journals::RULE,
    &cam_bearings_with_wash::RULE,
    &new_cam_new_tappets::RULE,
    &new_tappet_old_cam::RULE,
    &taken_apart::RULE,
];

/// Not a rule but a person's word, told among the reasons.
pub const CHOSEN_WAY: Rule = Rule {
    id: RuleId("chosen-way"),
    why: "Where more than one way serves, the shop and its customer choose.",
    source: "The shop’s choice.",
    says: Says::OnWear(&[]),
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::PartKind;
    use crate::wear::Grade;
    use crate::work::Outcome;

    #[test]
    fn rules_are_well_formed() {
        let mut ids: Vec<&str> = ALL.iter().map(|rule| rule.id.as_str()).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), ALL.len(), "two rules share an id");
        for rule in ALL {
            assert!(rule.why.ends_with('.') && !rule.source.is_empty(), "{}", rule.id.as_str());
            let Says::OnWear(lines) = &rule.says else { continue };
            for line in *lines {
                for kind in line.kinds {
                    for tag in line.tags {
                        assert!(
                            kind.row().tags.contains(tag),
                            "{}: a {kind:?} can't be tagged {tag:?}",
                            rule.id.as_str()
                        );
                    }
                    assert_eq!(
                        line.ask.is_empty(),
                        line.outcome != Outcome::CantSay,
                        "{}: what can't be said yet names the look or reading that would decide, and nothing else does",
                        rule.id.as_str()
                    );
                    let possible = kind.row().outcomes;
                    assert!(
                        line.outcome == Outcome::CantSay || possible.contains(&line.outcome),
                        "{}: {:?} is not possible for a {kind:?}",
                        rule.id.as_str(),
                        line.outcome
                    );
                }
            }
        }
    }

    #[test]
    fn a_worse_grade_never_reads_a_milder_line() {
        let lines = || {
            ALL.iter()
                .filter_map(|rule| if let Says::OnWear(lines) = &rule.says { Some(*lines) } else { None })
                .flatten()
        };
        for kind in PartKind::ALL {
            for tag in kind.row().tags {
                let outcome = |grade: &Grade| {
                    let about = |line: &&WearLine| {
                        line.kinds.contains(&kind) && line.tags.contains(tag) && (line.from..=line.to).contains(grade)
                    };
                    lines().filter(about).map(|line| line.outcome).max()
                };
                let by_grade: Vec<Option<Outcome>> = Grade::ALL.iter().map(outcome).collect();
                assert!(by_grade.is_sorted(), "{kind:?} {tag:?} {by_grade:?}");
            }
        }
    }
}
