//! Where on a part a finding lies: the pattern that the marked zones show. It is what tells a bent rod from a tapered
//! journal; the mechanic marks fields and never has to name it.

use std::collections::BTreeSet;

use crate::wear::{Zone, ZoneMap};

/// What the marked zones of one finding amount to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pattern {
    /// The front edge of a shell, journal or lobe only.
    Front,
    /// The rear edge only.
    Rear,
    /// Both edges and not the middle.
    Edges,
    /// A band in the middle of the width.
    Band,
    /// Along the left parting line only, seen from the rear looking to the front.
    Left,
    /// Along the right parting line only.
    Right,
    /// Along both parting lines and not the crown.
    Partings,
    /// Along the crown of a shell.
    Crown,
    /// A single field.
    Spot,
    /// Several fields that make no other pattern.
    Wide,
    /// The back of a shell only.
    Back,
    /// The back and a place on the running face.
    Through,
    /// The fillet of a journal.
    Fillet,
    /// Around the oil hole of a journal.
    OilHole,
    /// The upper half of a thrust face only.
    Upper,
    /// The lower half only.
    Lower,
    /// The nose of a lobe only.
    Nose,
    /// The centre of a tappet's foot only.
    Centre,
    /// The contact ring of the foot only.
    Ring,
    /// The edge of the foot only.
    Rim,
    /// The body of a tappet only.
    Body,
    /// The plunger of a tappet only.
    Plunger,
    /// The crown of a piston only.
    Head,
    /// The ring lands of a piston, with or without its crown.
    Lands,
    /// One side of a piston's skirt or of a bore: the thrust side or the opposite one.
    OneSide,
    /// Both sides of the skirt.
    Skirts,
    /// Beside the piston pin.
    Pins,
    /// In a bore: the sides towards its neighbours, where a piston that stands askew rubs.
    Askew,
    /// In a bore: the top of ring travel only.
    Top,
}

impl Pattern {
    /// Every pattern that the drawing of a part can show.
    pub fn all(map: ZoneMap) -> &'static [Self] {
        use Pattern::*;
        match map {
            ZoneMap::Shell => &[Front, Rear, Edges, Band, Left, Right, Partings, Crown, Spot, Wide, Back, Through],
            ZoneMap::ThrustFace => &[Upper, Lower, Wide],
            ZoneMap::Journal => &[Front, Rear, Edges, Band, Fillet, OilHole, Wide],
            ZoneMap::Lobe => &[Front, Rear, Edges, Nose, Wide],
            ZoneMap::Tappet => &[Centre, Ring, Rim, Body, Plunger, Wide],
            ZoneMap::Piston => &[Head, Lands, OneSide, Skirts, Pins, Wide],
            ZoneMap::Bore => &[OneSide, Askew, Top, Wide],
            ZoneMap::None => &[],
        }
    }

    /// The pattern of some zones of a drawing; none if no zone is marked.
    pub fn of(map: ZoneMap, zones: &BTreeSet<Zone>) -> Option<Self> {
        let marked = Marked(zones);
        if zones.is_empty() {
            return None;
        }
        match map {
            ZoneMap::Shell => Some(marked.shell()),
            ZoneMap::ThrustFace => {
                Some(marked.first_of(&[(&[Zone::FaceUpper], Self::Upper), (&[Zone::FaceLower], Self::Lower)]))
            }
            ZoneMap::Journal if zones.contains(&Zone::Fillet) => Some(Self::Fillet),
            ZoneMap::Journal => Some(marked.first_of(&[
                (&[Zone::JournalFront], Self::Front),
                (&[Zone::JournalRear], Self::Rear),
                (&[Zone::JournalFront, Zone::JournalRear], Self::Edges),
                (&[Zone::JournalMiddle], Self::Band),
                (&[Zone::OilHole], Self::OilHole),
            ])),
            ZoneMap::Lobe => Some(marked.first_of(&[
                (&[Zone::LobeFrontEdge], Self::Front),
                (&[Zone::LobeRearEdge], Self::Rear),
                (&[Zone::LobeFrontEdge, Zone::LobeRearEdge], Self::Edges),
                (&[Zone::Nose], Self::Nose),
            ])),
            ZoneMap::Tappet => Some(marked.first_of(&[
                (&[Zone::FootCentre], Self::Centre),
                (&[Zone::FootRing], Self::Ring),
                (&[Zone::FootEdge], Self::Rim),
                (&[Zone::Body], Self::Body),
                (&[Zone::Plunger], Self::Plunger),
            ])),
            ZoneMap::Piston => Some(marked.first_of(&[
                (&[Zone::Crown], Self::Head),
                (&[Zone::Crown, Zone::RingLands], Self::Lands),
                (&[Zone::ThrustSkirt], Self::OneSide),
                (&[Zone::OppositeSkirt], Self::OneSide),
                (&[Zone::ThrustSkirt, Zone::OppositeSkirt], Self::Skirts),
                (&[Zone::PinBosses], Self::Pins),
            ])),
            ZoneMap::Bore => Some(marked.first_of(&[
                (&[Zone::TopThrust, Zone::TopOpposite, Zone::TopFront, Zone::TopRear], Self::Top),
                (&[Zone::TopThrust, Zone::MiddleThrust, Zone::BottomThrust], Self::OneSide),
                (&[Zone::TopOpposite, Zone::MiddleOpposite, Zone::BottomOpposite], Self::OneSide),
                (
                    &[
                        Zone::TopFront,
                        Zone::MiddleFront,
                        Zone::BottomFront,
                        Zone::TopRear,
                        Zone::MiddleRear,
                        Zone::BottomRear,
                    ],
                    Self::Askew,
                ),
            ])),
            ZoneMap::None => None,
        }
    }

    /// With front and rear exchanged.
    pub(super) fn end_for_end(self) -> Self {
        match self {
            Self::Front => Self::Rear,
            Self::Rear => Self::Front,
            other => other,
        }
    }

    /// With left and right exchanged.
    pub(super) fn side_for_side(self) -> Self {
        match self {
            Self::Left => Self::Right,
            Self::Right => Self::Left,
            other => other,
        }
    }

    /// With the upper and the lower half exchanged.
    pub(super) fn half_for_half(self) -> Self {
        match self {
            Self::Upper => Self::Lower,
            Self::Lower => Self::Upper,
            other => other,
        }
    }

    /// Whether it is its own mirror image.
    pub(super) fn is_symmetrical(self) -> bool {
        [self.end_for_end(), self.side_for_side(), self.half_for_half()].iter().all(|other| *other == self)
    }

    /// Where to look for it, in words that follow "look at": none where a place has no name of its own.
    pub(super) fn words(self) -> Option<&'static str> {
        match self {
            Self::Front => Some("the front edge"),
            Self::Rear => Some("the rear edge"),
            Self::Edges => Some("both edges"),
            Self::Band => Some("the middle of the width"),
            Self::Left => Some("the left parting line"),
            Self::Right => Some("the right parting line"),
            Self::Partings => Some("both parting lines"),
            Self::Crown => Some("the crown"),
            Self::Back | Self::Through => Some("the back"),
            Self::Fillet => Some("the fillet"),
            Self::OilHole => Some("the oil hole"),
            Self::Upper => Some("the upper half"),
            Self::Lower => Some("the lower half"),
            Self::Nose => Some("the nose"),
            Self::Centre => Some("the centre of the foot"),
            Self::Ring => Some("the contact ring of the foot"),
            Self::Rim => Some("the edge of the foot"),
            Self::Body => Some("the body"),
            Self::Plunger => Some("the plunger"),
            Self::Head => Some("the crown"),
            Self::Lands => Some("the ring lands"),
            Self::Pins => Some("the surface beside the pin"),
            Self::Askew => Some("the sides towards its neighbours"),
            Self::Top => Some("the top of ring travel"),
            Self::Spot | Self::Wide | Self::OneSide | Self::Skirts => None,
        }
    }

    /// The zone to tap for it, where one stands for it.
    pub(super) fn zone(self, map: ZoneMap) -> Option<Zone> {
        let alone = |zone: &&Zone| Self::of(map, &BTreeSet::from([**zone])) == Some(self);
        let preferred = match (map, self) {
            (ZoneMap::Shell, Self::Crown | Self::Band) => Some(Zone::MiddleCrown),
            (ZoneMap::Shell, Self::Edges) => Some(Zone::FrontCrown),
            (ZoneMap::Shell, Self::Partings) => Some(Zone::MiddleLeft),
            (ZoneMap::Shell, Self::Through) => Some(Zone::Back),
            (ZoneMap::Shell, Self::Spot) | (_, Self::Wide | Self::OneSide | Self::Top) => return None,
            _ => None,
        };
        preferred.or_else(|| map.zones().iter().find(alone).copied())
    }
}

struct Marked<'a>(&'a BTreeSet<Zone>);

impl Marked<'_> {
    /// The first pattern that holds all marked zones.
    fn first_of(&self, patterns: &[(&[Zone], Pattern)]) -> Pattern {
        let within = |(zones, _): &&(&[Zone], Pattern)| self.0.iter().all(|zone| zones.contains(zone));
        patterns.iter().find(within).map_or(Pattern::Wide, |(_, pattern)| *pattern)
    }

    fn shell(&self) -> Pattern {
        use Zone::*;
        if self.0.contains(&Back) {
            return if self.0.len() == 1 { Pattern::Back } else { Pattern::Through };
        }
        self.first_of(&[
            (&[MiddleCrown], Pattern::Spot),
            (&[FrontLeft], Pattern::Spot),
            (&[FrontRight], Pattern::Spot),
            (&[RearLeft], Pattern::Spot),
            (&[RearRight], Pattern::Spot),
            (&[FrontLeft, FrontCrown, FrontRight], Pattern::Front),
            (&[RearLeft, RearCrown, RearRight], Pattern::Rear),
            (&[FrontLeft, MiddleLeft, RearLeft], Pattern::Left),
            (&[FrontRight, MiddleRight, RearRight], Pattern::Right),
            (&[FrontCrown, RearCrown], Pattern::Edges),
            (&[FrontCrown, MiddleCrown, RearCrown], Pattern::Crown),
            (&[MiddleLeft, MiddleRight], Pattern::Partings),
            (&[MiddleLeft, MiddleCrown, MiddleRight], Pattern::Band),
            (&[FrontLeft, FrontRight, MiddleLeft, MiddleRight, RearLeft, RearRight], Pattern::Partings),
            (&[FrontLeft, FrontCrown, FrontRight, RearLeft, RearCrown, RearRight], Pattern::Edges),
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use Zone::*;

    #[track_caller]
    fn shows(map: ZoneMap, zones: &[Zone], pattern: Pattern) {
        assert_eq!(Pattern::of(map, &zones.iter().copied().collect()), Some(pattern));
        assert!(Pattern::all(map).contains(&pattern));
    }

    #[test]
    fn marked_zones_show_their_pattern() {
        use Pattern as P;
        shows(ZoneMap::Shell, &[FrontCrown], P::Front);
        shows(ZoneMap::Shell, &[RearLeft, RearCrown], P::Rear);
        shows(ZoneMap::Shell, &[FrontLeft, FrontCrown, RearCrown, RearRight], P::Edges);
        shows(ZoneMap::Shell, &[MiddleLeft, MiddleCrown, MiddleRight], P::Band);
        shows(ZoneMap::Shell, &[MiddleLeft], P::Left);
        shows(ZoneMap::Shell, &[FrontRight, MiddleRight], P::Right);
        shows(ZoneMap::Shell, &[FrontLeft, MiddleLeft, MiddleRight], P::Partings);
        shows(ZoneMap::Shell, &[MiddleCrown], P::Spot);
        shows(ZoneMap::Shell, &[FrontCrown, MiddleCrown], P::Crown);
        shows(ZoneMap::Shell, &[MiddleCrown, Back], P::Through);
        shows(ZoneMap::Shell, &[Back], P::Back);
        shows(ZoneMap::Shell, &[FrontLeft, MiddleCrown, RearRight], P::Wide);
        shows(ZoneMap::Journal, &[JournalFront, JournalMiddle, JournalRear], P::Wide);
        shows(ZoneMap::Journal, &[JournalFront, Fillet], P::Fillet);
        shows(ZoneMap::Tappet, &[FootCentre], P::Centre);
        shows(ZoneMap::Piston, &[Crown, RingLands], P::Lands);
        shows(ZoneMap::Piston, &[OppositeSkirt], P::OneSide);
        shows(ZoneMap::Bore, &[TopFront, BottomRear], P::Askew);
        shows(ZoneMap::Bore, &[MiddleThrust, BottomThrust], P::OneSide);
    }

    #[test]
    fn exchanging_front_and_rear_twice_changes_nothing() {
        for map in [ZoneMap::Shell, ZoneMap::Journal, ZoneMap::Lobe, ZoneMap::ThrustFace] {
            for pattern in Pattern::all(map) {
                assert_eq!(pattern.end_for_end().end_for_end(), *pattern);
                assert_eq!(pattern.side_for_side().side_for_side(), *pattern);
                assert_eq!(pattern.half_for_half().half_for_half(), *pattern);
                assert!(Pattern::all(map).contains(&pattern.end_for_end()));
            }
        }
    }
}
