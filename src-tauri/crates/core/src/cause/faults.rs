//! What sizes say of faults.

use std::collections::BTreeMap;

use super::catalogue::Fault;
use crate::figure::Figure;
use crate::measure::{Conformity, Length, Phase, Quantity};

/// What the figures of a part, as it was found, say: each fault with whether it is there. Too close to call says nothing,
/// nor does a size without a limit.
pub(super) fn faults(figures: &[Figure]) -> Vec<(Fault, bool)> {
    let mut all: BTreeMap<Fault, bool> = BTreeMap::new();
    let mut tell = |fault: Fault, beyond: bool| {
        let known = all.entry(fault).or_insert(beyond);
        *known = *known || beyond;
    };
    for figure in figures.iter().filter(|figure| figure.phase == Phase::Found) {
        let beyond = match figure.verdict {
            Some(Conformity::Outside) => true,
            Some(Conformity::Within) => false,
            Some(Conformity::TooClose) | None => continue,
        };
        // Where a size can be wrong in two ways, the first is the one above.
        let above = match figure.quantity {
            Quantity::Barrel => figure.high.nanometres() >= 0,
            Quantity::Clearance => figure.allowed.1.is_some_and(|most| figure.high > most),
            _ => true,
        };
        for (fault, is_above) in shown_by(figure.quantity).iter().zip([true, false]) {
            tell(*fault, beyond && above == is_above);
        }
    }
    if let Some(thin) = is_thin(figures) {
        all.insert(Fault::ThinRing, thin);
    }
    all.into_iter().collect()
}

/// A gap that is wider than new and bore explain by so much is the ring's own loss; by less than the half of it, it is not
/// (our judgement: 0.1 mm of gap are 0.016 mm of radial thickness).
const OWN_LOSS: Length = Length::from_nanometres(100_000);

/// Whether a ring has lost radial thickness: its gap has grown by more than its bore's wear explains, π times that (geometry);
/// none where that is not known, or too close to call. Dust takes the height of rings instead.
fn is_thin(figures: &[Figure]) -> Option<bool> {
    let found = || figures.iter().filter(|figure| figure.phase == Phase::Found);
    let growth = found().find(|figure| figure.quantity == Quantity::GapGrowth)?.high;
    let gaps = found().filter(|figure| figure.quantity == Quantity::RingGap);
    let own = gaps.filter_map(|gap| Some(gap.high - gap.new.1? - growth)).max()?;
    match own {
        own if own >= OWN_LOSS => Some(true),
        own if own + own < OWN_LOSS => Some(false),
        _ => None,
    }
}

/// The faults that a quantity beyond its limit can show: one, or one above and one below.
pub(super) fn shown_by(quantity: Quantity) -> &'static [Fault] {
    match quantity {
        Quantity::OutOfRound => &[Fault::OutOfRound],
        Quantity::Taper => &[Fault::Tapered],
        Quantity::Barrel => &[Fault::Barrel, Fault::Hourglass],
        Quantity::Bend => &[Fault::Bent],
        Quantity::Twist => &[Fault::Twisted],
        Quantity::RunOut | Quantity::AdjacentRunOut | Quantity::AdjacentRunOutSquare => &[Fault::RunsOut],
        Quantity::LineAdjacent | Quantity::LineOverall => &[Fault::OutOfLine],
        // What has a limit of its own has no other for its wear.
        Quantity::Diameter | Quantity::Wear | Quantity::LiftLoss | Quantity::HeightLoss => &[Fault::Worn],
        Quantity::Clearance => &[Fault::Loose, Fault::Tight],
        Quantity::GrooveClearance => &[Fault::WideGroove],
        _ => &[],
    }
}

/// A figure to be judged, for tests.
#[cfg(test)]
pub(super) fn figure(quantity: Quantity, verdict: Option<Conformity>, value: i64, phase: Phase) -> Figure {
    let length = Length::from_nanometres(value);
    Figure {
        quantity,
        name: String::new(),
        station: None,
        phase,
        low: length,
        high: length,
        shown: String::new(),
        at: String::new(),
        uncertainty: Length::default(),
        verdict,
        limits: String::new(),
        allowed: (Some(Length::from_nanometres(10)), Some(Length::from_nanometres(20))),
        new: (None, None),
        because: String::new(),
        source: String::new(),
        general: false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn says(quantity: Quantity, verdict: Option<Conformity>, value: i64, expected: &[(Fault, bool)]) {
        assert_eq!(faults(&[figure(quantity, verdict, value, Phase::Found)]), expected);
        let later = Phase::ALL.into_iter().find(|phase| *phase != Phase::Found).unwrap();
        assert_eq!(faults(&[figure(quantity, verdict, value, later)]), [], "only as it was found");
    }

    /// The figures of a worked case: the bore is worn by 0.002 in, the gap has grown by 0.019 in, so 0.0020 in of radial
    /// thickness are gone; the other way round the bore explains all of it (own arithmetic).
    #[test]
    fn a_gap_that_its_bore_does_not_explain_is_a_thin_ring() {
        let inch = |ten_thousandths: i64| Length::from_nanometres(ten_thousandths * 2_540);
        let of = |quantity, high| Figure { high, ..figure(quantity, None, 0, Phase::Found) };
        let gap = |high: i64| Figure { new: (Some(inch(120)), Some(inch(220))), ..of(Quantity::RingGap, inch(high)) };
        let growth = of(Quantity::GapGrowth, crate::figure::gap_growth(inch(20)));
        assert_eq!(faults(&[gap(410), growth.clone()]), [(Fault::ThinRing, true)]);
        assert_eq!(faults(&[gap(280), growth.clone()]), [(Fault::ThinRing, false)]);
        assert_eq!(faults(&[gap(312), growth]), [], "too close to call");
        assert_eq!(faults(&[gap(410)]), [], "the bore was not measured");
    }

    #[test]
    fn sizes_speak_by_their_verdict() {
        use Conformity::{Outside, TooClose, Within};
        says(Quantity::Taper, Some(Outside), 30, &[(Fault::Tapered, true)]);
        says(Quantity::Taper, Some(Within), 5, &[(Fault::Tapered, false)]);
        says(Quantity::Taper, Some(TooClose), 10, &[]);
        says(Quantity::Taper, None, 10, &[]);
        says(Quantity::Barrel, Some(Outside), -30, &[(Fault::Barrel, false), (Fault::Hourglass, true)]);
        says(Quantity::Barrel, Some(Outside), 30, &[(Fault::Barrel, true), (Fault::Hourglass, false)]);
        says(Quantity::Clearance, Some(Outside), 25, &[(Fault::Loose, true), (Fault::Tight, false)]);
        says(Quantity::Clearance, Some(Outside), 5, &[(Fault::Loose, false), (Fault::Tight, true)]);
    }
}
