//! From what was tagged to what the photos must show.

use std::collections::BTreeMap;

use wearbook_core::engine::{Half as EngineHalf, Part, PartKind};
use wearbook_core::wear::{Grade, Tag, Zone};

use crate::picture::{
    Across, Around, BoreZone, Half, JournalZone, Kind, LobeZone, PistonZone, ShellZone, Subject, TappetZone, Wear,
};

type Tags<'a> = BTreeMap<Tag, (Grade, &'a [Zone])>;

/// The photos of a part with these tags: its face and, where that was marked, its back. None for a part that the
/// program can't draw.
pub(super) fn photos_of(part: Part, tags: &Tags<'_>) -> Vec<Subject> {
    let half = if part.at.half() == Some(EngineHalf::Upper) { Half::Upper } else { Half::Lower };
    let crown = ShellZone { across: Across::Middle, around: Around::Crown };
    match part.kind {
        PartKind::MainShell | PartKind::RodShell => {
            let face = Subject::Shell { half, back: false, wear: worn(tags, shell_zone, crown) };
            let back = tags.get(&Tag::BrightBack).map(|(grade, _)| {
                let wear = vec![Wear { kind: Kind::BrightBack, grade: grade.number(), zone: crown }];
                Subject::Shell { half, back: true, wear }
            });
            std::iter::once(face).chain(back).collect()
        }
        PartKind::MainJournal | PartKind::Crankpin => {
            vec![Subject::Journal { wear: worn(tags, journal_zone, JournalZone::Whole) }]
        }
        PartKind::Tappet => vec![Subject::Tappet { wear: worn(tags, tappet_zone, TappetZone::Whole) }],
        PartKind::Lobe => vec![Subject::Lobe { wear: worn(tags, lobe_zone, LobeZone::Nose) }],
        PartKind::Piston => vec![Subject::Piston { wear: worn(tags, piston_zone, PistonZone::Skirt) }],
        PartKind::Bore => vec![Subject::Bore { wear: worn(tags, bore_zone, BoreZone::Whole) }],
        _ => vec![],
    }
}

/// Every tag that can be drawn, once for each of its zones; without a zone, in the usual place.
fn worn<Z: Copy>(tags: &Tags<'_>, zone_of: fn(Zone) -> Option<Z>, usual: Z) -> Vec<Wear<Z>> {
    let mut wear = Vec::new();
    for (tag, (grade, zones)) in tags {
        let Some(kind) = kind_of(*tag) else { continue };
        let grade = grade.number();
        let mut drawn: Vec<Wear<Z>> =
            zones.iter().filter_map(|zone| zone_of(*zone)).map(|zone| Wear { kind, grade, zone }).collect();
        if drawn.is_empty() {
            drawn.push(Wear { kind, grade, zone: usual });
        }
        wear.append(&mut drawn);
    }
    wear
}

fn kind_of(tag: Tag) -> Option<Kind> {
    Some(match tag {
        Tag::Scoring => Kind::Scoring,
        Tag::EmbeddedDebris => Kind::EmbeddedDebris,
        Tag::Pitting => Kind::Pitting,
        Tag::HotSpot => Kind::HotSpot,
        Tag::CopperShowing => Kind::CopperShowing,
        Tag::Wiping => Kind::Wiping,
        Tag::FatigueCracks | Tag::LiningLoss => Kind::FatigueCracks,
        Tag::Corrosion => Kind::Corrosion,
        Tag::Rust => Kind::Rust,
        Tag::Scuffing | Tag::Seizure => Kind::Scuffing,
        Tag::Spalling => Kind::Spalling,
        Tag::DishedFace => Kind::Dished,
        Tag::WornNose => Kind::WornNose,
        Tag::LooksEven => Kind::Even,
        // Nothing that is drawn: a bright back has a picture of its own, and the rest can't be drawn.
        _ => return None,
    })
}

fn shell_zone(zone: Zone) -> Option<ShellZone> {
    let (across, around) = match zone {
        Zone::FrontLeft => (Across::Front, Around::LeftEdge),
        Zone::FrontCrown => (Across::Front, Around::Crown),
        Zone::FrontRight => (Across::Front, Around::RightEdge),
        Zone::MiddleLeft => (Across::Middle, Around::LeftEdge),
        Zone::MiddleCrown => (Across::Middle, Around::Crown),
        Zone::MiddleRight => (Across::Middle, Around::RightEdge),
        Zone::RearLeft => (Across::Rear, Around::LeftEdge),
        Zone::RearCrown => (Across::Rear, Around::Crown),
        Zone::RearRight => (Across::Rear, Around::RightEdge),
        _ => return None,
    };
    Some(ShellZone { across, around })
}

fn journal_zone(zone: Zone) -> Option<JournalZone> {
    match zone {
        Zone::JournalFront => Some(JournalZone::Front),
        Zone::JournalMiddle => Some(JournalZone::Middle),
        Zone::JournalRear => Some(JournalZone::Rear),
        _ => None,
    }
}

fn tappet_zone(zone: Zone) -> Option<TappetZone> {
    match zone {
        Zone::FootCentre => Some(TappetZone::Centre),
        Zone::FootRing => Some(TappetZone::Track),
        Zone::FootEdge => Some(TappetZone::Rim),
        _ => None,
    }
}

fn lobe_zone(zone: Zone) -> Option<LobeZone> {
    match zone {
        Zone::Nose => Some(LobeZone::Nose),
        Zone::Flanks => Some(LobeZone::NearFlank),
        Zone::BaseCircle => Some(LobeZone::Heel),
        _ => None,
    }
}

fn piston_zone(zone: Zone) -> Option<PistonZone> {
    match zone {
        Zone::RingLands => Some(PistonZone::Lands),
        Zone::ThrustSkirt | Zone::OppositeSkirt => Some(PistonZone::Skirt),
        _ => None,
    }
}

fn bore_zone(zone: Zone) -> Option<BoreZone> {
    match zone {
        Zone::TopThrust | Zone::TopOpposite | Zone::TopFront | Zone::TopRear => Some(BoreZone::Top),
        Zone::MiddleThrust | Zone::MiddleOpposite | Zone::MiddleFront | Zone::MiddleRear => Some(BoreZone::Middle),
        Zone::BottomThrust | Zone::BottomOpposite | Zone::BottomFront | Zone::BottomRear => Some(BoreZone::Bottom),
        _ => None,
    }
}
