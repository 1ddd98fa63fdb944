//! Signs: what a cause leaves, on which parts, where on them, and how often.

use crate::cause::pattern::Pattern;
use crate::engine::{At, End, Half, Part, PartKind};
use crate::wear::{Tag, ZoneMap};

/// What can be noticed on a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Symptom {
    /// It is seen.
    Seen(Tag),
    /// It is measured.
    Measured(Fault),
}

/// What measuring can show.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fault {
    /// Out of round beyond the limit.
    OutOfRound,
    /// Tapered beyond the limit.
    Tapered,
    /// Thicker in the middle, beyond the limit.
    Barrel,
    /// Thinner in the middle, beyond the limit.
    Hourglass,
    /// Bent beyond the limit: a crankshaft, a rod.
    Bent,
    /// Twisted beyond the limit: a rod.
    Twisted,
    /// Running out beyond the limit: a main journal, neighbouring mains together.
    RunsOut,
    /// Bores out of line beyond the limit.
    OutOfLine,
    /// Clearance above its limit.
    Loose,
    /// Clearance below its limit.
    Tight,
    /// Worn beyond its limit.
    Worn,
    /// Too much clearance in the grooves of a piston: the rings or the grooves have lost height.
    WideGroove,
    /// A ring gap wider than its bore's wear explains: the ring has lost radial thickness.
    ThinRing,
}

impl Fault {
    /// Every fault.
    pub const ALL: [Self; 13] = [
        Self::OutOfRound,
        Self::Tapered,
        Self::Barrel,
        Self::Hourglass,
        Self::Bent,
        Self::Twisted,
        Self::RunsOut,
        Self::OutOfLine,
        Self::Loose,
        Self::Tight,
        Self::Worn,
        Self::WideGroove,
        Self::ThinRing,
    ];

    /// In words, as measured.
    pub fn words(self) -> &'static str {
        match self {
            Self::OutOfRound => "out of round",
            Self::Tapered => "tapered",
            Self::Barrel => "barrel-shaped",
            Self::Hourglass => "hourglass-shaped",
            Self::Bent => "bent",
            Self::Twisted => "twisted",
            Self::RunsOut => "running out",
            Self::OutOfLine => "out of line",
            Self::Loose => "with too much clearance",
            Self::Tight => "with too little clearance",
            Self::Worn => "worn",
            Self::WideGroove => "wide in its ring grooves",
            Self::ThinRing => "with a wider gap than the bore explains",
        }
    }
}

/// A sign: on these parts the cause produces this symptom.
#[derive(Debug)]
pub struct Sign {
    /// On which kinds of part.
    pub kinds: &'static [PartKind],
    /// On which half, where there are two.
    pub side: Side,
    /// What.
    pub symptom: Symptom,
    /// With which chance on each such part, 0 to 1.
    pub chance: f64,
    /// How bad it tends to be.
    pub grades: Severity,
    /// In which patterns of zones it lies, each with its share. What the shares leave over is spread over all patterns
    /// that the part can show.
    pub at: &'static [(Pattern, f64)],
}

/// Halves of bearings by load. Combustion presses the rod's upper half onto the crankpin and the shaft into the lower
/// half of the mains (US marine-engineer examination item; TM 55-1905-221-14-3: lower main shells carry the load).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// Lower main shells, upper rod shells; and every part that has no halves.
    Loaded,
    /// The other halves.
    Unloaded,
    /// Both, or parts without halves.
    Any,
    /// Upper halves.
    Upper,
    /// Lower halves.
    Lower,
    /// Loaded main shells in proportion to how near they lie to the middle of the crankshaft.
    LoadedCentreWorst,
    /// Unloaded main shells, likewise.
    UnloadedCentreWorst,
    /// Both main shells and the journal, likewise.
    AnyCentreWorst,
    /// Loaded halves, the more the farther they lie from where the oil comes.
    LoadedFarWorst,
    /// Whatever lies along the crankshaft, likewise.
    AnyFarWorst,
    /// The front thrust face.
    FrontFace,
    /// The rear thrust face.
    RearFace,
}

/// How bad a sign tends to be: shares of grades 1 to 4 (our judgement).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[allow(missing_docs, reason = "the shares say it")]
pub enum Severity {
    Slight,
    Middling,
    Severe,
}

/// A cause of one place often comes in two forms, one the mirror image of the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mirror {
    /// It has one form only.
    None,
    /// Front and rear may be exchanged.
    Ends,
    /// Left and right may be exchanged.
    Sides,
    /// The upper and the lower half may be exchanged.
    Halves,
}

/// What a sign produces on one part.
#[derive(Debug, Clone, Copy)]
pub struct Presence<'a> {
    /// With which chance it produces it at all, 0 to 1.
    pub chance: f64,
    sign: &'a Sign,
    mirror: Mirror,
}

impl Severity {
    fn shares(self) -> [f64; 4] {
        match self {
            Self::Slight => [0.55, 0.30, 0.12, 0.03],
            Self::Middling => [0.25, 0.40, 0.25, 0.10],
            Self::Severe => [0.10, 0.25, 0.40, 0.25],
        }
    }
}

/// Patterns of what wears evenly or comes from everywhere (our judgement).
pub(super) const ALL_OVER: &[(Pattern, f64)] = &[(Pattern::Wide, 0.60), (Pattern::Crown, 0.12), (Pattern::Band, 0.05)];
/// Patterns of what comes from load: the middle of the loaded half (our judgement).
pub(super) const UNDER_LOAD: &[(Pattern, f64)] =
    &[(Pattern::Crown, 0.35), (Pattern::Wide, 0.30), (Pattern::Spot, 0.10), (Pattern::Band, 0.04)];

/// Patterns of what the oil carries everywhere and the load presses in: between the two (our judgement; embedded particles lie
/// mostly where the film is thinnest).
pub(super) const CARRIED_UNDER_LOAD: &[(Pattern, f64)] =
    &[(Pattern::Wide, 0.37), (Pattern::Crown, 0.29), (Pattern::Spot, 0.10), (Pattern::Band, 0.04)];

/// Where a part stands along the crankshaft.
#[derive(Debug, Clone, Copy)]
pub struct Along {
    /// 1 for the middle main, 0 for the ends and for what is not on a main.
    pub centrality: f64,
    /// 1 for what lies farthest from where the oil comes, 0 for the nearest, a half where that is not known.
    pub remoteness: f64,
}

/// By how much the chance is less next to where the oil comes, and more at the far end (our judgement).
const FAR_AND_NEAR: f64 = 0.45;
/// Nothing that is far is surer than this.
const SUREST: f64 = 0.95;

/// Least share of the chance that an end main keeps where the centre is worst (our judgement).
const END_MAIN_SHARE: f64 = 0.2;

impl Sign {
    /// Something that is seen, anywhere on the part.
    pub(super) const fn new(kinds: &'static [PartKind], side: Side, tag: Tag, chance: f64, grades: Severity) -> Self {
        Self { kinds, side, symptom: Symptom::Seen(tag), chance, grades, at: &[] }
    }

    /// Something that measuring shows.
    pub(super) const fn size(kinds: &'static [PartKind], fault: Fault, chance: f64) -> Self {
        let symptom = Symptom::Measured(fault);
        Self { kinds, side: Side::Any, symptom, chance, grades: Severity::Middling, at: &[] }
    }

    /// The same sign in these patterns.
    pub(super) const fn at(self, at: &'static [(Pattern, f64)]) -> Self {
        Self { at, ..self }
    }

    /// The same sign on this side.
    pub(super) const fn on_side(self, side: Side) -> Self {
        Self { side, ..self }
    }

    /// What the sign produces on a part, or nothing if it does not concern the part; `along` is asked only where it does.
    pub fn on(&self, part: Part, symptom: Symptom, along: &dyn Fn() -> Along, mirror: Mirror) -> Option<Presence<'_>> {
        if symptom != self.symptom || !self.kinds.contains(&part.kind) {
            return None;
        }
        let half = match (part.at.half(), mirror) {
            (Some(Half::Upper), Mirror::Halves) => Some(Half::Lower),
            (Some(Half::Lower), Mirror::Halves) => Some(Half::Upper),
            (half, _) => half,
        };
        let front = part.at == At::ThrustSide(if mirror == Mirror::Ends { End::Rear } else { End::Front });
        let loaded = half.map(|half| (half == Half::Lower) == (part.kind == PartKind::MainShell));
        let graded = || END_MAIN_SHARE + (1.0 - END_MAIN_SHARE) * along().centrality;
        let far = || 1.0 + FAR_AND_NEAR * (2.0 * along().remoteness - 1.0);
        let share = match (self.side, loaded, half) {
            (Side::Any, ..) | (Side::Loaded, Some(true) | None, _) | (Side::Unloaded, Some(false), _) => 1.0,
            (Side::Upper, _, Some(Half::Upper)) | (Side::Lower, _, Some(Half::Lower)) => 1.0,
            (Side::LoadedCentreWorst, Some(true), _) | (Side::UnloadedCentreWorst, Some(false), _) => graded(),
            (Side::AnyCentreWorst, ..) => graded(),
            (Side::LoadedFarWorst, Some(true) | None, _) | (Side::AnyFarWorst, ..) => far(),
            (Side::FrontFace, None, _) if front => 1.0,
            (Side::RearFace, None, _) if !front => 1.0,
            _ => return None,
        };
        let chance = (self.chance * share).min(self.chance.max(SUREST));
        Some(Presence { chance, sign: self, mirror })
    }
}

impl Presence<'_> {
    /// With which chance it produces grade 1, 2, 3, 4.
    pub fn grades(&self) -> [f64; 4] {
        self.sign.grades.shares().map(|share| share * self.chance)
    }

    /// The chance that what it produces shows this pattern, 0 to 1; over all patterns of a drawing they sum to 1.
    pub fn share(&self, map: ZoneMap, pattern: Pattern) -> f64 {
        share(self.sign.at, map, self.mirrored(pattern))
    }

    /// Whether it shows this pattern, of which it has one that is named; whatever it is where none is.
    pub fn shows(&self, pattern: Pattern) -> bool {
        let seen_as = self.mirrored(pattern);
        self.sign.at.is_empty() || self.sign.at.iter().any(|(own, _)| *own == seen_as)
    }

    /// The pattern that it shows most often, if any is named.
    pub fn usual_pattern(&self, map: ZoneMap) -> Option<Pattern> {
        let named = self.sign.at.iter().filter(|(pattern, _)| Pattern::all(map).contains(pattern));
        let (pattern, _) = named.max_by(|a, b| a.1.total_cmp(&b.1))?;
        Some(self.mirrored(*pattern))
    }

    /// A pattern as the mirror image has it.
    fn mirrored(&self, pattern: Pattern) -> Pattern {
        match self.mirror {
            Mirror::None => pattern,
            Mirror::Ends => pattern.end_for_end(),
            Mirror::Sides => pattern.side_for_side(),
            Mirror::Halves => pattern.half_for_half(),
        }
    }
}

/// The share of a pattern where some are named and the rest is spread over all.
pub(super) fn share(named: &[(Pattern, f64)], map: ZoneMap, pattern: Pattern) -> f64 {
    let all = Pattern::all(map);
    let shown = || named.iter().filter(|(pattern, _)| all.contains(pattern));
    let rest = 1.0 - shown().map(|(_, share)| share).sum::<f64>();
    let own: f64 = shown().filter(|(other, _)| *other == pattern).map(|(_, share)| share).sum();
    // An unmarked drawing has no patterns; then everything is in the one.
    if all.is_empty() { 1.0 } else { own + rest / all.len() as f64 }
}
