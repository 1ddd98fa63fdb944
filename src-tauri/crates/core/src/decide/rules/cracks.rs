//! Cracked parts.

use super::{Rule, RuleId, Says, from};
use crate::engine::PartKind::{
    Block, Bore, Camshaft, Crankpin, Crankshaft, HeadBolts, HousingBore, MainCapBolts, MainJournal, OilPickup, OilPump,
    Piston, PumpBody, PumpCover, PumpGears, Pushrod, Rod, RodBolts, TappetBore, TimingDrive,
};
use crate::wear::{Grade, Tag};
use crate::work::Outcome::Replace;

pub(super) const RULE: Rule = Rule {
    id: RuleId("cracks"),
    why: "A cracked part is not used again.",
    source: "AC 43.13-1B (crack: replace); TM 9-2815-255-24 and TM 9-4310-397-14 (crack at 45 degrees from an oil hole: reject); common practice.",
    says: Says::OnWear(&[from(Grade::TWO, KINDS, &[Tag::Cracks], Replace)]),
};

const KINDS: &[crate::engine::PartKind] = &[
    Crankshaft,
    MainJournal,
    Crankpin,
    Rod,
    Piston,
    Block,
    Bore,
    HousingBore,
    Camshaft,
    TappetBore,
    OilPump,
    PumpGears,
    PumpBody,
    PumpCover,
    OilPickup,
    TimingDrive,
    Pushrod,
    MainCapBolts,
    RodBolts,
    HeadBolts,
];
