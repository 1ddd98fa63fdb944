//! Scratched, pitted or marked journals.

use super::{Rule, Says, from, up_to};
use crate::decide::Outcome::{Machine, Polish};
use crate::engine::PartKind::{CamJournal, Crankpin, MainJournal};
use crate::wear::{Grade, Tag};

pub(super) const RULE: Rule = Rule {
    id: "journal-scratches",
    why: "A mark that catches a fingernail would cut the new bearing, so the journal is ground; one that is only seen or felt may polish out.",
    source: "TM 10-4320-307-24 (slight marks: polish with crocus cloth, else grind or replace); fingernail test: common practice.",
    says: Says::OnWear(&[
        up_to(Grade::TWO, &[MainJournal, Crankpin, CamJournal], &[Tag::Scoring, Tag::Pitting, Tag::Corrosion], Polish),
        from(
            Grade::THREE,
            &[MainJournal, Crankpin, CamJournal],
            &[Tag::Scoring, Tag::Pitting, Tag::Corrosion],
            Machine,
        ),
        up_to(Grade::ONE, &[MainJournal, Crankpin], &[Tag::Seizure], Polish),
        up_to(Grade::TWO, &[MainJournal, Crankpin], &[Tag::HandlingDamage], Polish),
        from(Grade::TWO, &[MainJournal, Crankpin], &[Tag::Seizure], Machine),
        from(Grade::THREE, &[MainJournal, Crankpin], &[Tag::HandlingDamage], Machine),
    ]),
};
