//! Each complaint answered by name: what was found explains it, in part, or not, and then it is said what lies outside the
//! parts that were looked at. Sound is weak evidence, so a complaint shifts the odds of causes little; load, temperature and
//! pressure tell more (sources of the rows).

use std::collections::{BTreeMap, BTreeSet};

use serde::Serialize;

use super::metal::{Metal, metal};
use super::trouble::{Found, Trouble};
use crate::engine::{Engine, Part, PartKind};
use crate::figure::Figure;
use crate::job::{Complaint, Job};
use crate::words::{capitalised, plural};

/// A complaint is explained from this probability on that something that was found made it, and in part from the lower
/// one (our judgement).
const EXPLAINED_FROM: f64 = 0.8;
const PARTLY_FROM: f64 = 0.4;
/// Below it nothing can be said while more than half of what could make it is not looked at.
const LOOKED_FROM: f64 = 0.5;

/// That something inside makes it although all that was looked at is clean (our judgement).
const PASSED_OVER: f64 = 0.02;
/// How much less often metal comes from what its kind does not point to (our judgement).
const NOT_POINTED_TO: f64 = 0.3;

/// How a complaint stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
#[serde(rename_all = "kebab-case")]
pub enum Answered {
    /// What was found explains it.
    Explained,
    /// What was found explains a part of it, or may.
    Partly,
    /// Nothing that was found explains it.
    NotExplained,
    /// Too little was looked at.
    CantSay,
}

impl Answered {
    /// By how likely it is that what was found made it, whether anything worth a name was, and which share of what could make
    /// it was looked at.
    fn of(probability: f64, is_something_found: bool, looked: f64) -> Self {
        match probability {
            p if p >= EXPLAINED_FROM && is_something_found => Self::Explained,
            p if p >= PARTLY_FROM && is_something_found => Self::Partly,
            _ if looked < LOOKED_FROM => Self::CantSay,
            _ => Self::NotExplained,
        }
    }

    /// In words, lower case.
    pub fn words(self) -> &'static str {
        match self {
            Self::Explained => "explained",
            Self::Partly => "partly explained",
            Self::NotExplained => "not explained",
            Self::CantSay => "can’t say yet",
        }
    }
}

/// The answer to a complaint, or to several that one thing explains.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ComplaintAnswer {
    /// The complaints.
    pub complaints: Vec<Complaint>,
    /// In words: "Low oil pressure; oil pressure low at idle only".
    pub told: String,
    /// How it stands.
    pub answered: Answered,
    /// The same in words: "explained".
    pub words: String,
    /// What is known of it beforehand, in sentences; may be empty.
    pub before: String,
    /// By what it is explained, likeliest first; may be empty.
    pub made_by: Vec<MadeBy>,
    /// What else it may come from, and what is still to be looked at, in sentences; may be empty.
    pub after: String,
    /// The parts that explain it; may be empty.
    pub parts: Vec<Part>,
    /// What would tell and is not all looked at, what tells most first; empty once it is explained.
    pub look: Vec<PartKind>,
    /// The probability that something that was found made it, 0 to 1; of several the least.
    pub probability: f64,
}

/// What can make a complaint.
struct Row {
    /// The troubles, each with the chance that it makes the complaint, wherever it is.
    by: &'static [(Trouble, f64)],
    /// How often it comes from outside the stripped engine.
    outside: f64,
    /// What shows that it is so, and not why.
    shown_by: Option<Trouble>,
    /// From what there, in words; and what else to look at.
    elsewhere: &'static str,
    /// Where this is written.
    source: &'static str,
}

impl Complaint {
    /// The chances are our judgement; what makes what is each row's source.
    fn row(self) -> Row {
        use Trouble::*;
        let row = |by, outside, elsewhere, source| Row { by, outside, shown_by: None, elsewhere, source };
        match self {
            Self::Knock => row(
                &[
                    (RodBearing, 0.7),
                    (MainBearing, 0.6),
                    (PistonSlap, 0.5),
                    (PinBush, 0.5),
                    (EndFloat, 0.3),
                    (Gears, 0.2),
                    (FuelInOil, 0.15),
                ],
                0.15,
                "flywheel bolts, engine mounting, driven parts, a sticking injector",
                "OD 1001 lesson 3; TM 55-1905-223-24-3 para 2-13 to 2-17; common practice",
            ),
            Self::KnockWithoutLoad => row(
                &[(RodBearing, 0.85), (PinBush, 0.25), (EndFloat, 0.1), (PistonSlap, 0.1)],
                0.12,
                "flywheel bolts, driven parts, a sticking injector",
                "OD 1001 lesson 3",
            ),
            Self::KnockUnderLoad => row(
                &[(MainBearing, 0.85), (RodBearing, 0.2), (EndFloat, 0.1)],
                0.15,
                "flywheel bolts, engine mounting, belt-driven parts",
                "OD 1001 lesson 3; TM 55-1905-223-24-3 para 2-13 to 2-17",
            ),
            Self::DoubleKnock => row(
                &[(PinBush, 0.85), (EndFloat, 0.2), (PistonSlap, 0.15)],
                0.12,
                "driven parts",
                "a military cause list (fragment); common practice",
            ),
            Self::KnockCold => row(
                &[(PistonSlap, 0.85), (PinBush, 0.1)],
                0.15,
                "exhaust joints, which tick until they are warm",
                "OD 1001 lesson 3; common practice",
            ),
            Self::KnockHot => row(
                // Thin oil makes a bearing knock that is not loose enough to do so by itself.
                &[(RodBearing, 0.7), (MainBearing, 0.6), (FuelInOil, 0.3), (PinBush, 0.3)],
                0.15,
                "oil that is too thin or of the wrong grade, flywheel bolts, driven parts",
                "TM 55-1905-223-24-3 para 2-13 to 2-17",
            ),
            Self::WorkedHard => row(
                &[(ChamberMarks, 0.7), (FatiguedShells, 0.7)],
                0.35,
                "the fuel’s octane, spark timing, cooling",
                "TM 5-4210-230-14&P-1 chart 18 A",
            ),
            Self::NoiseAtTheTop => row(
                &[(ValveTrain, 0.8)],
                0.3,
                "valve lash, rockers, valve stems and guides, the exhaust manifold",
                "TM 5-4210-230-14&P-1 chart 18 B",
            ),
            Self::LowOilPressure => row(
                &[
                    (OilPump, 0.7),
                    (MainBearing, 0.6),
                    (RodBearing, 0.6),
                    (PickUp, 0.6),
                    (FuelInOil, 0.6),
                    (OilLow, 0.6),
                    (CamBearing, 0.4),
                    (FilterPlugged, 0.3),
                ],
                0.25,
                "gauge and sender, relief valve, gallery plugs, filter, oil grade and level",
                "TM 5-3895-347-14P chart 7; TM 9-2320-272-24-2 table 4-1 item 7",
            ),
            Self::LowPressureAtIdle => row(
                &[(RodBearing, 0.85), (MainBearing, 0.85), (CamBearing, 0.5), (FuelInOil, 0.5), (OilPump, 0.4)],
                0.2,
                "gauge and sender, relief valve, oil grade",
                "OD 1001 lesson 4",
            ),
            Self::PressureSwings => row(
                &[(OilLow, 0.8), (PickUp, 0.8), (OilPump, 0.2)],
                0.25,
                "oil level, a line that draws air, relief valve, gauge",
                "FAA-H-8083-3B p. 16-13",
            ),
            Self::OilUsed => row(
                &[
                    (WetOutside, 0.8),
                    (Rings, 0.8),
                    (Bore, 0.7),
                    (PluggedAirCleaner, 0.7),
                    (BlockedBreather, 0.6),
                    (Grooves, 0.6),
                    (PistonDamage, 0.5),
                    (OilToCoolant, 0.5),
                    (RodBearing, 0.2),
                    (MainBearing, 0.1),
                ],
                0.35,
                "leaks first: covers, sump, seals, filter, cooler; then valve guides and their seals",
                "TM 5-4210-230-14&P-1 chart 16; NAVEDTRA 14075 p. 3-28; OD 1001 p. 119; TM 5-3820-256-24-5 section 2",
            ),
            Self::BlueSmoke => row(
                &[
                    (Rings, 0.8),
                    (Bore, 0.7),
                    (Grooves, 0.6),
                    (PistonDamage, 0.5),
                    (BlockedBreather, 0.4),
                    (PluggedAirCleaner, 0.3),
                    (RodBearing, 0.2),
                ],
                0.3,
                "valve guides and their seals, turbocharger, too much oil",
                "OD 1001 p. 119",
            ),
            Self::WhiteSmoke => row(
                &[(CrackedCasting, 0.6), (WaterInChamber, 0.5), (Rings, 0.3), (Bore, 0.3)],
                0.35,
                "head gasket and head, valve seating, injectors; a few minutes after a cold start it is ordinary",
                "a training text on exhaust smoke, taken to be naval (from memory)",
            ),
            Self::BlackSmoke => row(
                &[(PluggedAirCleaner, 0.7), (Rings, 0.2), (ValveTrain, 0.2)],
                0.6,
                "fuel, injection, air supply, timing, valve lash",
                "a training text on exhaust smoke, taken to be naval (from memory)",
            ),
            Self::BreatherFumes => row(
                &[(Rings, 0.85), (Bore, 0.7), (BlockedBreather, 0.5), (PistonDamage, 0.5), (Grooves, 0.4)],
                0.2,
                "turbocharger seal, head gasket",
                "NAVEDTRA 14075 p. 3-28; TM 5-3810-303-24 p. 11B-58",
            ),
            Self::CoolantUsed => row(
                &[(CoolantLeak, 0.85), (WaterInOil, 0.85), (CrackedCasting, 0.7), (CorePlugs, 0.7)],
                0.4,
                "hoses, radiator, pump, head gasket, oil cooler",
                "TM 9-2320-272-24-2 table 4-1 item 8",
            ),
            Self::CoolantInOil => Row {
                shown_by: Some(WaterInOil),
                ..row(
                    &[(CrackedCasting, 0.8), (CorePlugs, 0.5)],
                    0.3,
                    "head gasket, head, oil cooler, core plugs, cracks: test under pressure",
                    "TM 9-2320-272-24-2 table 4-1 item 8; OD 1001 lesson 4",
                )
            },
            Self::OilInCoolant => row(
                &[(CrackedCasting, 0.6)],
                0.5,
                "the oil cooler first, which passes oil while it runs; then head gasket, cracks: test under pressure",
                "TM 9-2320-272-24-2 table 4-1 item 8",
            ),
            Self::Overheated => row(
                &[
                    (CoolingFouled, 0.7),
                    (CoolantLow, 0.6),
                    (CoolantLeak, 0.4),
                    (CrackedCasting, 0.3),
                    (ChamberMarks, 0.2),
                ],
                0.6,
                "coolant level, belt, thermostat, radiator, timing, exhaust, brakes",
                "OD 1001 p. 152",
            ),
            Self::LowCompression => row(
                &[
                    (Rings, 0.8),
                    (Bore, 0.7),
                    (PistonDamage, 0.6),
                    (Seized, 0.5),
                    (BentRod, 0.4),
                    (Grooves, 0.4),
                    (ValveTrain, 0.25),
                ],
                0.25,
                "valves and seats, head gasket",
                "TM 5-4210-230-14&P-1 addendum 2",
            ),
            Self::WouldNotTurn => row(
                &[(Seized, 0.9), (BentRod, 0.5), (Gears, 0.2), (ValveTrain, 0.05)],
                0.2,
                "gearbox or driven machine, starter, liquid in a cylinder",
                "TM 5-3895-383-24 problem 29",
            ),
            Self::MetalInOil => row(
                &[
                    (RodBearing, 0.7),
                    (MainBearing, 0.7),
                    (Seized, 0.7),
                    (ValveTrain, 0.6),
                    (PistonDamage, 0.6),
                    (Gears, 0.6),
                    (CamBearing, 0.5),
                    (OilPump, 0.5),
                    (EndFloat, 0.4),
                    (Bore, 0.3),
                    (Rings, 0.3),
                ],
                0.1,
                "chips left by an earlier repair",
                "TM 1-1500-204-23-1 para f; NAVAIR 17-15-50.4",
            ),
            Self::FuelInOil => Row {
                shown_by: Some(FuelInOil),
                ..row(
                    &[(Rings, 0.3)],
                    0.5,
                    "injectors, fuel pump, connections in the head, long idling",
                    "TM 9-2320-272-24-2 table 4-1 item 8; TM 5-3895-347-14P chart 7; common practice",
                )
            },
        }
    }
}

/// What was found that makes a complaint.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct MadeBy {
    /// What it is: "worn or failed main bearing".
    pub words: String,
    /// The worst places: "Main 3, journal; Main 3, lower shell and 2 more".
    pub at: String,
    /// All places.
    pub parts: Vec<Part>,
}

/// Every complaint that was told, answered.
pub(super) fn answers(engine: &Engine, job: &Job, figures: &BTreeMap<Part, Vec<Figure>>) -> Vec<ComplaintAnswer> {
    if job.complaints.is_empty() {
        return vec![];
    }
    let found: BTreeMap<Trouble, Found> =
        Trouble::ALL.into_iter().map(|trouble| (trouble, trouble.found(engine, job, figures))).collect();
    let mut all: Vec<ComplaintAnswer> = Vec::new();
    for complaint in &job.complaints {
        let own = answer(*complaint, &found, engine, job);
        match all.iter_mut().find(|other| other.is_for_the_same(&own)) {
            Some(other) => other.join(own),
            None => all.push(own),
        }
    }
    for answer in &mut all {
        let told = [std::mem::take(&mut answer.after), still_to_look_at(&answer.look, engine)];
        answer.after = joined(told);
    }
    all
}

/// Sentences one after the other.
fn joined(sentences: impl IntoIterator<Item = String>) -> String {
    sentences.into_iter().filter(|sentence| !sentence.is_empty()).collect::<Vec<String>>().join(" ")
}

impl ComplaintAnswer {
    /// By what, what else it may come from, and what is still to be looked at, in sentences.
    pub fn because(&self) -> String {
        let made_by: Vec<String> = self.made_by.iter().map(|made| format!("{} ({})", made.words, made.at)).collect();
        let made_by = if made_by.is_empty() { String::new() } else { capitalised(&made_by.join("; ")) + "." };
        joined([self.before.clone(), made_by, self.after.clone()])
    }

    /// Whether the same is found to make both: then it is said once.
    fn is_for_the_same(&self, other: &Self) -> bool {
        let parts = |own: &Self| own.parts.iter().copied().collect::<BTreeSet<Part>>();
        self.answered == other.answered
            && match self.answered {
                Answered::Explained => parts(self) == parts(other),
                // What else it may come from is each complaint's own.
                Answered::Partly | Answered::NotExplained => false,
                Answered::CantSay => true,
            }
    }

    fn join(&mut self, other: Self) {
        self.told = format!("{}; {}", self.told, other.told.to_lowercase());
        self.complaints.extend(other.complaints);
        for (own, others) in [(&mut self.before, other.before), (&mut self.after, other.after)] {
            if *own != others {
                *own = joined([std::mem::take(own), others]);
            }
        }
        self.made_by.extend(other.made_by.into_iter().filter(|made| !self.made_by.contains(made)).collect::<Vec<_>>());
        self.look.extend(other.look.iter().filter(|kind| !self.look.contains(kind)).copied().collect::<Vec<_>>());
        self.probability = self.probability.min(other.probability);
    }
}

/// What was found that makes a complaint, and how much it weighs.
struct Maker<'a> {
    found: &'a Found,
    /// The chance that it makes the complaint where it is, and that it is there and does.
    chance: f64,
    weight: f64,
}

fn answer(complaint: Complaint, found: &BTreeMap<Trouble, Found>, engine: &Engine, job: &Job) -> ComplaintAnswer {
    let row = complaint.row();
    let metal = metal(job).filter(|_| complaint == Complaint::MetalInOil);
    let mut makers: Vec<Maker<'_>> = row
        .by
        .iter()
        .filter_map(|(trouble, chance)| {
            let found = found.get(trouble)?;
            let points_elsewhere = |metal: &Metal| !metal.from.is_empty() && !metal.from.contains(trouble);
            let chance = if metal.is_some_and(points_elsewhere) { chance * NOT_POINTED_TO } else { *chance };
            Some(Maker { found, chance, weight: found.anywhere() * chance })
        })
        .collect();
    let look = look(&makers);
    makers.sort_by(|a, b| b.weight.total_cmp(&a.weight));
    let inside = 1.0 - makers.iter().map(|maker| 1.0 - maker.weight).product::<f64>() * (1.0 - PASSED_OVER);
    // It is told, so something made it: what was found, or what lies outside of it.
    let probability = inside / (inside + (1.0 - inside) * row.outside);
    // What matters most for it must have been looked at.
    let looked: f64 = makers.iter().map(|maker| maker.chance * maker.found.share_looked_at()).sum();
    let all: f64 = makers.iter().map(|maker| maker.chance).sum();
    // Many small doubts are no explanation.
    let is_something_found = makers.first().is_some_and(|maker| maker.weight >= WORTH_NAMING);
    let answered = Answered::of(probability, is_something_found, looked / all);
    let look = if answered == Answered::Explained { vec![] } else { look };
    let (made_by, after) = reason(answered, &makers, &row, engine);
    let parts = made_by.iter().flat_map(|made| made.parts.iter().copied()).collect();
    let says = metal.map_or_else(String::new, |metal| metal.says.into());
    let shown = row.shown_by.and_then(|trouble| found.get(&trouble)).filter(|_| answered != Answered::Explained);
    let shown = shown.map_or_else(String::new, |found| it_is_so(found, engine));
    ComplaintAnswer {
        complaints: vec![complaint],
        told: complaint.words().into(),
        answered,
        words: answered.words().into(),
        before: joined([says, shown]),
        made_by,
        after,
        parts,
        look,
        probability,
    }
}

/// Where what was told was found to be so, in a sentence; empty where it was not.
fn it_is_so(found: &Found, engine: &Engine) -> String {
    let labels: Vec<String> = found.at.iter().map(|(part, _)| engine.label(*part).to_lowercase()).collect();
    if labels.is_empty() { String::new() } else { format!("It is so: {}.", labels.join(", ")) }
}

/// What is not all looked at, what makes the complaint most often first.
fn look(makers: &[Maker<'_>]) -> Vec<PartKind> {
    let mut makers: Vec<&Maker<'_>> = makers.iter().collect();
    makers.sort_by(|a, b| b.chance.total_cmp(&a.chance));
    let mut kinds: Vec<PartKind> = Vec::new();
    for kind in makers.iter().flat_map(|maker| &maker.found.open).map(|part| part.kind) {
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    }
    kinds
}

/// Places named with an answer, and kinds of part that are still to be looked at.
const NAMED: usize = 3;
/// A trouble that explains less than this is not named, nor one that explains less than this share of the likeliest.
const WORTH_NAMING: f64 = 0.1;
const BESIDE_THE_LIKELIEST: f64 = 0.25;

/// What makes it, and what else it may come from.
fn reason(answered: Answered, makers: &[Maker<'_>], row: &Row, engine: &Engine) -> (Vec<MadeBy>, String) {
    let elsewhere = row.elsewhere;
    match answered {
        Answered::CantSay => (vec![], String::new()),
        Answered::NotExplained => (vec![], format!("Nothing that was looked at makes it. Outside of it: {elsewhere}.")),
        Answered::Explained | Answered::Partly => {
            let least = makers.first().map_or(0.0, |first| first.weight * BESIDE_THE_LIKELIEST).max(WORTH_NAMING);
            let named = makers.iter().filter(|maker| maker.weight >= least).take(NAMED);
            let or = if answered == Answered::Partly { format!("Or: {elsewhere}.") } else { String::new() };
            (named.map(|maker| made_by(maker.found, engine)).collect(), or)
        }
    }
}

fn made_by(found: &Found, engine: &Engine) -> MadeBy {
    let least = found.at.first().map_or(0.0, |(_, likely)| likely * 0.5);
    let parts: Vec<Part> = found.at.iter().filter(|(_, likely)| *likely >= least).map(|(part, _)| *part).collect();
    let labels: Vec<String> = parts.iter().take(NAMED).map(|part| engine.label(*part)).collect();
    let more = parts.len().saturating_sub(NAMED);
    let more = if more == 0 { String::new() } else { format!(" and {more} more") };
    MadeBy { words: found.trouble.row().name.into(), at: format!("{}{more}", labels.join("; ")), parts }
}

/// In a sentence; empty where nothing is left.
fn still_to_look_at(kinds: &[PartKind], engine: &Engine) -> String {
    if kinds.is_empty() {
        return String::new();
    }
    let name = |kind: PartKind| {
        let name = kind.row().name.said(engine.terms());
        let several = engine.parts().iter().filter(|part| part.kind == kind).count() > 1;
        if several { plural(&name) } else { name.into_owned() }
    };
    let named: Vec<String> = kinds.iter().take(NAMED).map(|kind| name(*kind)).collect();
    let more = match kinds.len().saturating_sub(NAMED) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    format!("Still to look at: {}{more}.", named.join(", "))
}

/// Where it is written what makes a complaint.
pub fn source(complaint: Complaint) -> &'static str {
    complaint.row().source
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    fn told(complaint: &str) -> Value {
        json!({ "do": "complain", "complaint": complaint, "told": true })
    }

    fn tag(part: &str, tag: &str, grade: u8) -> Value {
        json!({ "do": "tag", "part": part, "tag": tag, "grade": grade })
    }

    /// Everything but some parts called clean, with what is told and found.
    fn otherwise_clean(changes: &[Value]) -> ComplaintAnswer {
        let arrangement = Arrangement::inline(4);
        let engine = Engine::new(arrangement.clone()).unwrap();
        let named: Vec<&str> = changes.iter().filter_map(|change| change["part"].as_str()).collect();
        let all = engine.parts().iter().chain(engine.outside());
        let clean = all.map(ToString::to_string).filter(|part| !named.contains(&part.as_str()));
        let clean: Vec<Value> = clean.map(|part| json!({ "do": "clean", "part": part })).collect();
        let all: Vec<Value> = [arrange(&arrangement)].into_iter().chain(clean).chain(changes.to_vec()).collect();
        let answers = assess(&job_of(&all)).causes.answers;
        assert_eq!(answers.len(), 1);
        answers[0].clone()
    }

    #[track_caller]
    fn says(changes: &[Value], answered: Answered, because: &str) {
        let answer = otherwise_clean(changes);
        assert_eq!((answer.answered, answer.because().contains(because)), (answered, true), "{answer:?}");
    }

    /// OD 1001 lesson 3: a sharp knock without load is a rod bearing, a dull thud under load a main bearing.
    #[test]
    fn a_knock_is_answered_by_its_bearing() {
        let rod = [tag("rod-shell.3.upper", "copper-showing", 4), tag("rod-shell.3.lower", "wiping", 3)];
        let sharp = [&[told("knock-without-load")], &rod[..]].concat();
        says(&sharp, Answered::Explained, "Worn or failed rod bearing (Rod 3");
        let dull = [&[told("knock-under-load")], &rod[..]].concat();
        says(&dull, Answered::Partly, "flywheel bolts");
        let mains = [told("knock-under-load"), tag("main-shell.2.lower", "copper-showing", 3)];
        says(&mains, Answered::Explained, "main bearing");
        says(&[told("knock-under-load")], Answered::NotExplained, "flywheel bolts");
    }

    /// TM 5-3895-347-14P chart 7: low pressure has sixteen causes, of which bearings are one.
    #[test]
    fn low_pressure_in_a_sound_engine_is_not_explained() {
        says(&[told("low-oil-pressure")], Answered::NotExplained, "gauge and sender");
        let worn: Vec<Value> = (1..=4).map(|n| tag(&format!("rod-shell.{n}.upper"), "copper-showing", 2)).collect();
        let at_idle = [&[told("low-pressure-at-idle")], &worn[..]].concat();
        says(&at_idle, Answered::Explained, "rod bearing");
        let one = [told("low-pressure-at-idle"), tag("rod-shell.2.upper", "copper-showing", 2)];
        says(&one, Answered::Partly, "rod bearing");
    }

    /// TM 5-4210-230-14&P-1 chart 16: leakage comes first; O5: a plugged air cleaner pulls the oil over.
    #[test]
    fn oil_is_used_by_rings_or_pulled_over() {
        let rings = [told("oil-used"), tag("rings.2", "deposits", 3)];
        says(&rings, Answered::Explained, "rings");
        let plugged = [told("oil-used"), tag("air-cleaner", "plugged", 4)];
        says(&plugged, Answered::Explained, "Plugged air cleaner");
        says(&[told("oil-used")], Answered::NotExplained, "leaks first");
    }

    /// What was told once is no explanation of itself: milky oil tells where the coolant went, and not by which way.
    #[test]
    fn what_was_told_does_not_explain_itself() {
        let milky = tag("engine-oil", "milky", 3);
        says(&[told("coolant-in-oil"), milky.clone()], Answered::NotExplained, "test under pressure");
        says(&[told("coolant-used"), milky], Answered::Explained, "into the oil (Engine oil)");
        says(&[told("fuel-in-oil"), tag("engine-oil", "fuel-smell", 3)], Answered::NotExplained, "injectors");
        says(&[told("coolant-used"), tag("coolant", "leak", 4)], Answered::Explained, "Coolant leak");
        says(&[told("overheated"), tag("coolant", "low-level", 4)], Answered::Partly, "Too little coolant");
    }

    #[test]
    fn metal_that_points_elsewhere_is_explained_less() {
        let worn = [told("metal-in-oil"), tag("rod-shell.2.upper", "copper-showing", 3)];
        let with = |metal: &str| otherwise_clean(&[&worn[..], &[tag("oil-filter", metal, 3)]].concat()).probability;
        assert!(with("soft-flakes") > with("steel-splinters") + 0.1);
        says(&[told("metal-in-oil")], Answered::NotExplained, "chips left");
    }

    /// Even wear is no trouble before its running layer is gone.
    #[test]
    fn a_bearing_worn_through_evenly_is_worn_out() {
        let worn = |grade: u8| -> Vec<Value> {
            let shells = (1..=5).map(|n| tag(&format!("main-shell.{n}.lower"), "looks-even", grade));
            std::iter::once(told("low-pressure-at-idle")).chain(shells).collect()
        };
        says(&worn(2), Answered::NotExplained, "gauge");
        says(&worn(4), Answered::Explained, "main bearing");
    }

    /// TM 9-2320-272-24-2 item 8: everything clean is no answer to coolant in the oil, and never "fuel".
    #[test]
    fn coolant_in_a_clean_engine_asks_for_a_pressure_test() {
        says(&[told("coolant-in-oil")], Answered::NotExplained, "test under pressure");
    }

    /// Navy Engineman 3, testing lubricating oil: cloudy oil shows that there is water, and the leak is to be found.
    #[test]
    fn that_it_is_so_does_not_explain_it() {
        let milky = [told("coolant-in-oil"), tag("engine-oil", "milky", 3)];
        says(&milky, Answered::NotExplained, "It is so: engine oil. Nothing that was looked at makes it.");
        let plug = [&milky[..], &[tag("core-plugs", "rust", 4)]].concat();
        says(&plug, Answered::Partly, "It is so: engine oil. Core plug that is eaten away");
        says(&[&milky[..], &[tag("block", "cracks", 3)]].concat(), Answered::Explained, "Crack in block or bore");
    }

    /// TM 9-2815-220-24 WP 0138: fine scratches are no reason to discard a shell.
    #[test]
    fn many_light_scores_make_no_knock() {
        let scored = |grade| -> Vec<Value> {
            let shells = (1..=4).flat_map(|n| ["upper", "lower"].map(|half| format!("rod-shell.{n}.{half}")));
            shells.map(|shell| tag(&shell, "scoring", grade)).collect()
        };
        says(&[&[told("knock")], &scored(2)[..]].concat(), Answered::NotExplained, "flywheel bolts");
        says(&[&[told("knock")], &scored(4)[..]].concat(), Answered::Explained, "rod bearing");
    }

    /// TM 55-1905-221-14-3: the loaded halves show distress first, of the mains too.
    #[test]
    fn hard_work_shows_on_the_mains_too() {
        let cracked = [told("worked-hard"), tag("main-shell.2.lower", "fatigue-cracks", 3)];
        says(&cracked, Answered::Explained, "Bearing shells fatigued by load (Main 2, lower shell)");
    }

    #[test]
    fn what_one_thing_explains_is_answered_once() {
        let worn: Vec<Value> = (1..=4).map(|n| tag(&format!("rod-shell.{n}.upper"), "copper-showing", 3)).collect();
        let told = [told("low-pressure-at-idle"), told("low-oil-pressure")];
        let answer = otherwise_clean(&[&told[..], &worn[..]].concat());
        assert_eq!(answer.complaints, [Complaint::LowOilPressure, Complaint::LowPressureAtIdle]);
        assert_eq!(answer.told, "Low oil pressure; oil pressure low at idle only");
    }

    #[test]
    fn before_anything_is_looked_at_nothing_is_said() {
        let answers = assess(&job_of(&[arrange(&Arrangement::inline(4)), told("knock")])).causes.answers;
        assert_eq!(answers[0].answered, Answered::CantSay);
        assert!(answers[0].because().starts_with("Still to look at: rod bearing shells, crankpins, "), "{answers:?}");
    }

    #[test]
    fn each_threshold_has_two_sides() {
        use Answered::{CantSay, Explained, NotExplained, Partly};
        let near = 1e-9;
        for (probability, found, looked, answered) in [
            (EXPLAINED_FROM, true, 0.0, Explained),
            (EXPLAINED_FROM - near, true, 1.0, Partly),
            (PARTLY_FROM, true, 0.0, Partly),
            (PARTLY_FROM - near, true, 1.0, NotExplained),
            (EXPLAINED_FROM, false, 1.0, NotExplained),
            (0.0, false, LOOKED_FROM, NotExplained),
            (0.0, false, LOOKED_FROM - near, CantSay),
        ] {
            assert_eq!(Answered::of(probability, found, looked), answered, "{probability} {found} {looked}");
        }
    }

    /// Each complaint by what makes it most often, at the worst grade, a lighter one, and the marks of use, which make none; and
    /// in an engine that is clean. As a rebuilder would answer (the rows' sources; judgement).
    #[test]
    fn every_complaint_can_be_answered_both_ways() {
        use Answered::{Explained, NotExplained, Partly};
        let cases = [
            (Complaint::Knock, ("rod-shell.3.upper", "copper-showing"), [Explained, Partly]),
            (Complaint::KnockWithoutLoad, ("rod-shell.3.upper", "copper-showing"), [Explained, Explained]),
            (Complaint::KnockUnderLoad, ("main-shell.3.lower", "copper-showing"), [Explained, Partly]),
            (Complaint::KnockHot, ("rod-shell.3.upper", "copper-showing"), [Explained, Partly]),
            (Complaint::WorkedHard, ("rod-shell.2.upper", "fatigue-cracks"), [Explained, Partly]),
            (Complaint::NoiseAtTheTop, ("tappet.2.intake.1", "dished-face"), [Explained, Partly]),
            (Complaint::LowOilPressure, ("oil-pump", "scoring"), [Explained, Partly]),
            (Complaint::LowPressureAtIdle, ("main-shell.3.lower", "copper-showing"), [Explained, Partly]),
            (Complaint::PressureSwings, ("engine-oil", "low-level"), [Explained, Partly]),
            (Complaint::OilUsed, ("as-received", "leak"), [Explained, Partly]),
            (Complaint::BlueSmoke, ("rings.2", "scuffing"), [Explained, Partly]),
            (Complaint::WhiteSmoke, ("bore.2", "cracks"), [Explained, Partly]),
            (Complaint::BlackSmoke, ("air-cleaner", "plugged"), [Partly, Partly]),
            (Complaint::BreatherFumes, ("rings.2", "scuffing"), [Explained, Partly]),
            (Complaint::CoolantUsed, ("coolant", "leak"), [Explained, Partly]),
            (Complaint::CoolantInOil, ("block", "cracks"), [Explained, Partly]),
            (Complaint::OilInCoolant, ("block", "cracks"), [Partly, Partly]),
            (Complaint::Overheated, ("coolant", "deposits"), [Partly, Partly]),
            (Complaint::LowCompression, ("rings.2", "scuffing"), [Explained, Partly]),
            (Complaint::WouldNotTurn, ("main-shell.3.lower", "seizure"), [Explained, Partly]),
            (Complaint::MetalInOil, ("rod-shell.3.upper", "lining-loss"), [Explained, Explained]),
        ];
        for (complaint, (part, find), answered) in cases {
            let told = json!({ "do": "complain", "complaint": complaint, "told": true });
            for (grade, answered) in [4, 2, 1].into_iter().zip(answered.into_iter().chain([NotExplained])) {
                let answer = otherwise_clean(&[told.clone(), tag(part, find, grade)]);
                assert_eq!(answer.answered, answered, "{complaint:?}, grade {grade}: {answer:?}");
                let named = answer.parts.iter().any(|own| own.to_string() == part);
                assert_eq!(named, answered != NotExplained, "{complaint:?}: {answer:?}");
            }
            assert_eq!(otherwise_clean(&[told]).answered, NotExplained, "{complaint:?}");
        }
        // Nothing that is seen makes these: a size does, or they are told of the oil itself.
        let by_size = [Complaint::DoubleKnock, Complaint::KnockCold, Complaint::FuelInOil];
        for complaint in Complaint::ALL.into_iter().filter(|own| !cases.iter().any(|(of, ..)| of == own)) {
            assert!(by_size.contains(&complaint), "{complaint:?} has no case");
            let told = json!({ "do": "complain", "complaint": complaint, "told": true });
            assert_eq!(otherwise_clean(&[told]).answered, NotExplained, "{complaint:?}");
        }
        for complaint in Complaint::ALL {
            let row = complaint.row();
            assert!(row.outside > 0.0 && !row.elsewhere.is_empty() && !source(complaint).is_empty());
            assert!(row.by.iter().all(|(_, chance)| *chance > 0.0 && *chance < 1.0));
        }
    }
}
