//! The walk of a hand with an instrument: what is read one after the other without putting it down.

use super::Quantity;
use crate::engine::PartKind;

impl PartKind {
    /// The kinds that are walked with the same instrument in the hand, in the order of the walk: on a crankshaft the mains,
    /// then the crankpins (common practice).
    pub fn walked_with(self) -> &'static [Self] {
        const CRANKSHAFT: &[PartKind] = &[PartKind::MainJournal, PartKind::Crankpin];
        if CRANKSHAFT.contains(&self) { CRANKSHAFT } else { &[] }
    }
}

impl Quantity {
    /// The quantities that are read together, part by part: a lobe over its nose, then across its heel.
    pub fn read_with(self) -> &'static [Self] {
        const LOBE: &[Quantity] = &[Quantity::LobeHeight, Quantity::BaseCircle];
        if LOBE.contains(&self) { LOBE } else { &[] }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whoever_is_walked_with_others_is_among_them() {
        for kind in PartKind::ALL {
            assert!(kind.walked_with().is_empty() || kind.walked_with().contains(&kind), "{kind:?}");
        }
        for quantity in Quantity::ALL {
            assert!(quantity.read_with().is_empty() || quantity.read_with().contains(&quantity), "{quantity:?}");
        }
    }

    #[test]
    fn what_is_read_together_is_read_of_the_same_part() {
        for quantity in Quantity::ALL {
            for other in quantity.read_with() {
                let together = |kind: &PartKind| kind.has(quantity).is_some() == kind.has(*other).is_some();
                assert!(PartKind::ALL.iter().all(together), "{quantity:?} and {other:?}");
            }
        }
    }
}
