//! What the shop of the story charges, and the estimate that it gave before the engine was opened: all invented.

use wearbook_core::engine::PartKind;
use wearbook_core::job::{Asked, ItemKey, ListKind, OwnItem, Step, StepTaken, Tick};
use wearbook_core::job::{Change, OnList, OnMoney};
use wearbook_core::money::{
    Applies, Charge, Currency, EstimateLine, EstimateRules, JobScope, Money, OldPart, Price, PriceKey, PriceList,
    Standing, StandingCharge, StandingPrice, StripDownTerms, Supply, Tax,
};
use wearbook_core::work::Work;

/// The price of a new part, of machining it, and the shop's minutes, for one piece each; in cents.
const PRICES: [(PartKind, Work, i64, i64, u32); 27] = [
    (PartKind::MainShell, Work::Replace, 2_180, 0, 12),
    (PartKind::RodShell, Work::Replace, 1_740, 0, 12),
    (PartKind::ThrustFace, Work::Replace, 3_400, 0, 15),
    (PartKind::Rings, Work::Replace, 4_150, 0, 20),
    (PartKind::Piston, Work::Replace, 9_600, 0, 30),
    (PartKind::CorePlugs, Work::Replace, 1_800, 0, 0),
    (PartKind::Tappet, Work::Replace, 1_420, 0, 8),
    (PartKind::Tappet, Work::Rebuild, 0, 0, 25),
    (PartKind::Tappet, Work::Clean, 0, 0, 15),
    (PartKind::MainJournal, Work::Machine, 0, 3_200, 0),
    (PartKind::Crankpin, Work::Machine, 0, 3_200, 0),
    (PartKind::Bore, Work::Machine, 0, 5_400, 10),
    (PartKind::Bore, Work::Sleeve, 6_000, 9_500, 20),
    (PartKind::Camshaft, Work::Replace, 24_800, 0, 60),
    (PartKind::Camshaft, Work::WeldUp, 0, 31_000, 60),
    (PartKind::CamBearing, Work::Replace, 1_900, 0, 20),
    (PartKind::CamBearing, Work::Fit, 0, 1_600, 0),
    (PartKind::OilPump, Work::Replace, 16_400, 0, 45),
    (PartKind::OilPump, Work::Rebuild, 2_800, 0, 120),
    (PartKind::OilPickup, Work::Clean, 0, 0, 15),
    (PartKind::Pushrod, Work::Clean, 0, 0, 5),
    (PartKind::RodBolts, Work::Replace, 4_600, 0, 0),
    (PartKind::Rod, Work::Fit, 0, 0, 5),
    (PartKind::Crankshaft, Work::Clean, 0, 0, 90),
    (PartKind::Crankshaft, Work::CrackTest, 0, 4_500, 0),
    (PartKind::Block, Work::Clean, 0, 8_500, 60),
    (PartKind::Block, Work::Fit, 0, 0, 40),
];

/// What stands on every bill of the shop.
const STANDING: [(Standing, i64, u32, Applies); 5] = [
    (Standing::StripDown, 0, 300, Applies::Always),
    (Standing::Assembly, 0, 540, Applies::Always),
    (Standing::Fluids, 5_200, 20, Applies::Always),
    (Standing::TestRun, 0, 90, Applies::Always),
    (Standing::Freight, 3_800, 0, Applies::WithMachining),
];

/// The shop's prices, its estimate, and what has been done so far.
pub(super) fn changes() -> Vec<Change> {
    let price = |(kind, work, part, machining, minutes)| Price {
        of: PriceKey { kind, work },
        part: Money::from_minor(part),
        machining: Money::from_minor(machining),
        minutes,
        hands: None,
    };
    let list = PriceList {
        currency: Currency::try_from("EUR".to_owned()).unwrap_or_default(),
        hour: Money::from_minor(6_800),
        tax: Tax { rate: 2_000, ..Tax::default() },
        prices: PRICES.into_iter().map(price).collect(),
        standing: STANDING
            .into_iter()
            .map(|(of, amount, minutes, applies)| StandingPrice {
                of,
                amount: Money::from_minor(amount),
                minutes,
                share: 0,
                applies,
            })
            .collect(),
        valid_days: Some(30),
        estimate_rules: EstimateRules::default(),
        strip_down: Some(StripDownTerms {
            strip_down: Some(Money::from_minor(62_000)),
            put_together: Some(Money::from_minor(54_000)),
            in_boxes: Some(Money::from_minor(8_500)),
            destroyed: "All gaskets, and the seals at both ends of the crankshaft.".into(),
            most_days: Some(21),
        }),
    };
    let estimate = |what: &str, of: &[(PartKind, Work)], net: i64| EstimateLine {
        what: what.into(),
        of: of.iter().map(|(kind, work)| Charge::Work(PriceKey { kind: *kind, work: *work })).collect(),
        net: Money::from_minor(net),
    };
    let standing = |what: &str, of: &[Standing], net: i64| EstimateLine {
        what: what.into(),
        of: of.iter().map(|standing| Charge::Standing(StandingCharge { standing: *standing })).collect(),
        net: Money::from_minor(net),
    };
    let lines = vec![
        estimate("Main bearings", &[(PartKind::MainShell, Work::Replace)], 18_000),
        estimate("Rod bearings", &[(PartKind::RodShell, Work::Replace)], 13_000),
        estimate("Piston rings", &[(PartKind::Rings, Work::Replace)], 26_000),
        estimate("Clean the block", &[(PartKind::Block, Work::Clean)], 15_300),
        standing("Strip-down and assembly", &[Standing::StripDown, Standing::Assembly], 95_200),
        standing("Oil, coolant and a test run", &[Standing::Fluids, Standing::TestRun], 17_500),
    ];
    vec![
        Change::OnMoney(OnMoney::UsePrices { prices: Box::new(list) }),
        Change::OnMoney(OnMoney::NoteEstimate { lines }),
        Change::OnList(OnList::AddItem {
            item: OwnItem {
                list: ListKind::Order,
                what: "Gasket set".into(),
                quantity: 1,
                because: "Every gasket is renewed at assembly.".into(),
                price: Some(Money::from_minor(9_400)),
                scope: Some(JobScope::Assembly),
            },
        }),
        tick(
            ItemKey::Order { kind: PartKind::CorePlugs, parts: vec![] },
            "Core plugs",
            Tick {
                steps: steps(&[(Step::Sent, "6 February"), (Step::Back, "9 February")]),
                part_number: "CP-40".into(),
                note: "From stock.".into(),
                ..Tick::default()
            },
        ),
        // The block was washed before it was bored.
        tick(
            ItemKey::Operation { kind: PartKind::Block, work: Some(Work::Clean) },
            "Cylinder block",
            Tick { steps: steps(&[(Step::Sent, "11 February"), (Step::Back, "16 February")]), ..Tick::default() },
        ),
        Change::OnList(OnList::SupplyParts {
            kind: PartKind::MainShell,
            supply: Supply { old: Some(OldPart::Evidence), ..Supply::default() },
        }),
    ]
}

fn tick(key: ItemKey, words: &str, tick: Tick) -> Change {
    let item = Asked { key, words: words.into(), size: None, quantity: 1 };
    Change::OnList(OnList::Tick { item, tick: Box::new(tick) })
}

fn steps(taken: &[(Step, &str)]) -> Vec<StepTaken> {
    taken.iter().map(|(step, date)| StepTaken { step: *step, done: 1, date: (*date).into() }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_price_is_possible() {
        for (kind, work, ..) in PRICES {
            assert!(kind.works().contains(&work), "{kind:?} {work:?}");
        }
    }
}
