//! How a cause got into the engine: what must be put right, or it comes back. Each cause has ways in of its own, summed out
//! for it alone: what was found outside the parts changes the odds of the cause by as much as its ways in explain it, and
//! once the cause is believed the same finds say which way it was. No cause of the whole engine is added by them.

use super::catalogue::{Cause, TodoRow, todo};
use crate::engine::{At, Engine, Part, PartKind};
use crate::job::{Answer, HistoryFact, Job};
use crate::wear::{Grade, Tag};

/// A way in.
#[derive(Debug)]
pub(super) struct WayIn {
    pub(super) id: &'static str,
    /// In words, lower case: "a torn or missing air cleaner".
    pub(super) words: &'static str,
    /// The causes that come by it, each with the share of its cases in which it was open (our judgement).
    to: &'static [(&'static str, f64)],
    /// What it leaves to be found, with which chance (our judgement).
    finds: &'static [(PartKind, &'static [Tag], f64)],
    /// What is known of the past and speaks for it, with the factor of a *yes*; a *no* weighs as much the other way.
    past: &'static [(HistoryFact, f64)],
    /// Another cause through which it must have come, and what that has to say if it did not.
    pub(super) through: Option<(&'static str, &'static str)>,
    /// What is put right once it is found, and on which finds.
    right: Option<Right>,
}

/// What is put right about a way in that was found.
#[derive(Debug)]
struct Right {
    /// The finds that show it for itself: what others leave too is none.
    by: &'static [(PartKind, &'static [Tag])],
    todo: TodoRow,
}

/// How often such a find turns up without any of the ways in (our judgement).
const STRAY: f64 = 0.04;
/// What finds outside may change the odds of a cause by, at most: they are not the parts themselves (our judgement).
const MOST: f64 = 30.0;
const LEAST: f64 = 0.3;

/// Chains: air to dust to rings and bearings (NAVEDTRA 14075 fig. 3-18; the last step is common practice); by-passed filter
/// (TM 9-6115-670-14&P p. 1-16); failed shell, filter and acid (TM 5-3810-300-24&P-3 1.3.4); coolant (TM 9-2320-272-24-2); dirt
/// and wrong assembly within hours of an overhaul (an insurer's claims, common practice); standing (common practice).
static ALL: [WayIn; 12] = {
    use PartKind::*;
    use Tag::*;
    [
        WayIn {
            id: "air-cleaner",
            words: "an air cleaner that leaks, is torn or missing",
            to: &[("dusty-air", 0.85), ("dirt-in-oil", 0.25)],
            finds: &[(AirCleaner, &[Torn, Missing, Grit], 0.85)],
            past: &[],
            through: Some(("dusty-air", "the cylinders show little dust")),
            right: Some(Right {
                by: &[(AirCleaner, &[Torn, Missing, Grit])],
                todo: todo("air-cleaner", "Renew the air cleaner and seal its joints before the engine runs."),
            }),
        },
        WayIn {
            id: "oil-filler",
            words: "an oil filler without its lid",
            to: &[("dirt-in-oil", 0.12)],
            finds: &[(OilFiller, &[Missing, Torn, Grit], 0.80)],
            past: &[],
            through: None,
            right: Some(Right {
                by: &[(OilFiller, &[Missing, Torn, Grit])],
                todo: todo("oil-filler", "Fit an oil filler lid that seals."),
            }),
        },
        WayIn {
            id: "filter-by-passed",
            words: "an oil filter that was full or by-passed",
            to: &[("dirt-in-oil", 0.20)],
            finds: &[(OilFilter, &[ByPassed, Plugged, Missing], 0.80)],
            past: &[(HistoryFact::NeglectedOil, 3.0)],
            through: None,
            right: Some(Right {
                by: &[(OilFilter, &[ByPassed, Plugged, Missing])],
                todo: todo("filter-by-passed", "Renew the oil filter and see that its by-pass valve closes."),
            }),
        },
        WayIn {
            id: "left-at-assembly",
            words: "dirt left in at an earlier repair",
            to: &[("dirt-in-oil", 0.18), ("dirt-behind-shell", 0.80)],
            finds: &[],
            past: &[(HistoryFact::RecentRebuild, 6.0)],
            through: None,
            right: None,
        },
        WayIn {
            id: "another-part",
            words: "metal from another part that wears",
            to: &[("dirt-in-oil", 0.15)],
            finds: &[
                (OilFilter, &[SoftFlakes, SteelSplinters, SteelFlakes, AluminiumFlakes], 0.70),
                (DrainPlug, &[SteelSplinters, SteelFlakes], 0.50),
            ],
            past: &[],
            through: None,
            right: None,
        },
        WayIn {
            id: "assembly",
            words: "a mistake at an earlier assembly",
            to: &[
                ("shifted-cap", 0.80),
                ("excessive-crush", 0.75),
                ("insufficient-crush", 0.65),
                ("fillet-ride", 0.85),
                ("oval-housing", 0.40),
                ("poor-journal-finish", 0.85),
                ("thrust-cap-misaligned", 0.80),
                ("blocked-oil-way", 0.50),
                ("tight-pin", 0.60),
                ("tight-piston", 0.70),
            ],
            finds: &[],
            past: &[(HistoryFact::RecentRebuild, 5.0)],
            through: None,
            right: None,
        },
        WayIn {
            id: "old-oil",
            words: "oil that was kept too long",
            to: &[("oil-starvation", 0.20), ("corrosion", 0.18), ("stuck-tappet", 0.60), ("dirt-in-oil", 0.06)],
            finds: &[(EngineOil, &[Thickened], 0.70), (Sump, &[Deposits], 0.60)],
            past: &[(HistoryFact::NeglectedOil, 8.0)],
            through: None,
            right: None,
        },
        WayIn {
            id: "low-oil",
            words: "too little oil in the sump",
            to: &[("oil-starvation", 0.35)],
            finds: &[(EngineOil, &[LowLevel], 0.75)],
            past: &[],
            through: None,
            right: Some(Right {
                by: &[(EngineOil, &[LowLevel])],
                todo: todo("low-oil", "Find where the oil went: a leak, or burnt."),
            }),
        },
        WayIn {
            id: "coolant",
            words: "coolant that got into the oil",
            to: &[("corrosion", 0.40)],
            finds: &[
                (EngineOil, &[Milky, HighLevel], 0.75),
                (Coolant, &[LowLevel, OilFilm, Leak], 0.60),
                (OilFiller, &[Milky], 0.50),
            ],
            past: &[(HistoryFact::CoolantInOil, 15.0)],
            through: None,
            right: Some(Right {
                by: &[(EngineOil, &[Milky]), (Coolant, &[OilFilm])],
                todo: todo("coolant", "Find where coolant gets into the oil: test the cooling under pressure."),
            }),
        },
        WayIn {
            id: "standing",
            words: "long standing, with water from the air",
            to: &[("corrosion", 0.30)],
            finds: &[],
            past: &[(HistoryFact::LongStorage, 8.0)],
            through: None,
            right: None,
        },
        WayIn {
            id: "fuel",
            words: "fuel that came past rings or pump",
            to: &[("fuel-dilution", 0.90), ("fuel-wash", 0.40)],
            finds: &[(EngineOil, &[FuelSmell, HighLevel], 0.85)],
            past: &[],
            through: None,
            right: Some(Right {
                by: &[(EngineOil, &[FuelSmell])],
                todo: todo("fuel", "Find where fuel gets into the oil: injectors or carburettor, fuel pump, choke."),
            }),
        },
        WayIn {
            id: "cooling",
            words: "a fault in the cooling",
            to: &[("overheating", 0.65)],
            finds: &[(Coolant, &[LowLevel, Leak, Deposits], 0.70)],
            past: &[],
            through: None,
            right: Some(Right {
                by: &[(Coolant, &[LowLevel, Leak, Deposits])],
                todo: todo("cooling", "Put the cooling right: leaks, scale, thermostat, belt."),
            }),
        },
    ]
};

/// What a cause itself leaves outside the parts, whichever way it came in, with which chance (our judgement).
const TRACES: [(&str, PartKind, Tag, f64); 6] = [
    // Soft metal is shells or bushes (common practice), whatever wore them.
    ("oil-starvation", PartKind::OilFilter, Tag::SoftFlakes, 0.45),
    ("overload", PartKind::OilFilter, Tag::SoftFlakes, 0.30),
    ("overheating", PartKind::OilFilter, Tag::SoftFlakes, 0.20),
    ("dirt-in-oil", PartKind::OilFilter, Tag::Grit, 0.40),
    ("dirt-in-oil", PartKind::Sump, Tag::Grit, 0.25),
    ("dirt-in-oil", PartKind::EngineOil, Tag::Grit, 0.20),
];

/// A way in and how likely it was that one, once the cause is believed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Likely {
    pub(super) way: &'static WayIn,
    /// 0 to 1.
    pub(super) probability: f64,
}

impl WayIn {
    /// How many times likelier what was found outside is if it came in this way than if it did not.
    fn by_finds(&self, job: &Job) -> f64 {
        self.finds.iter().map(|(kind, tags, chance)| by_find(job, *kind, tags, *chance)).product()
    }

    /// The same of what is known of the past.
    fn by_past(&self, job: &Job) -> f64 {
        let of_fact = |(fact, yes): &(HistoryFact, f64)| match job.history.get(fact) {
            Some(Answer::Yes) => *yes,
            Some(Answer::No) => 1.0 / yes,
            Some(Answer::Unknown) | None => 1.0,
        };
        self.past.iter().map(of_fact).product()
    }

    /// What was found that tells of it.
    pub(super) fn found(&self, job: &Job) -> Vec<Part> {
        let is_found = |part: &Part, tags: &[Tag]| {
            job.parts.get(part).is_some_and(|record| tags.iter().any(|tag| record.grade(*tag).is_some()))
        };
        let parts = self.finds.iter().map(|(kind, tags, _)| (Part { kind: *kind, at: At::Engine }, *tags));
        parts.filter(|(part, tags)| is_found(part, tags)).map(|(part, _)| part).collect()
    }

    /// Whether anything tells of it: a find, or what is known of the past.
    pub(super) fn is_known(&self, job: &Job) -> bool {
        let yes = |(fact, _): &(HistoryFact, f64)| job.history.get(fact) == Some(&Answer::Yes);
        !self.found(job).is_empty() || self.past.iter().any(yes)
    }

    /// Whether it is put right by itself: a lid, a cleaner, a leak.
    pub(super) fn is_open_door(&self) -> bool {
        self.right.is_some()
    }

    /// What is known of the past and would tell of it, and was not asked.
    pub(super) fn unasked(&self, job: &Job) -> impl Iterator<Item = HistoryFact> {
        self.past.iter().map(|(fact, _)| *fact).filter(|fact| !job.history.contains_key(fact))
    }

    /// What was not looked at and would tell of it.
    pub(super) fn open<'a>(&'a self, engine: &'a Engine, job: &'a Job) -> impl Iterator<Item = Part> + 'a {
        let parts = self.finds.iter().map(|(kind, ..)| Part { kind: *kind, at: At::Engine });
        parts.filter(|part| engine.has(*part) && !job.parts.get(part).is_some_and(|record| record.looked_at()))
    }
}

/// How many times likelier it is that this was found, or was not, with that chance than without.
fn by_find(job: &Job, kind: PartKind, tags: &[Tag], chance: f64) -> f64 {
    let record = job.parts.get(&Part { kind, at: At::Engine }).filter(|record| record.looked_at());
    match record.map(|record| tags.iter().any(|tag| record.grade(*tag).is_some())) {
        None => 1.0,
        Some(true) => chance / STRAY,
        Some(false) => (1.0 - chance) / (1.0 - STRAY),
    }
}

/// What a cause left outside the parts, as far as it was found.
pub(super) fn traces(cause: &Cause, job: &Job) -> Vec<(Part, Tag)> {
    let own = TRACES.iter().filter(|(id, ..)| *id == cause.id);
    let parts = own.map(|(_, kind, tag, _)| (Part { kind: *kind, at: At::Engine }, *tag));
    parts.filter(|(part, tag)| job.parts.get(part).is_some_and(|record| record.grade(*tag).is_some())).collect()
}

/// A way in that was found, what is put right about it, and the finds that show it.
type Open = (&'static WayIn, &'static TodoRow, Vec<(Part, Tag, Grade)>);

/// Every way in that was found.
pub(super) fn to_close(job: &Job) -> Vec<Open> {
    let closed = |way: &'static WayIn| {
        let right = way.right.as_ref()?;
        let seen = |(kind, tags): &(PartKind, &'static [Tag])| {
            let part = Part { kind: *kind, at: At::Engine };
            let record = job.parts.get(&part);
            let graded = |tag: &Tag| Some((part, *tag, record?.grade(*tag)?));
            tags.iter().filter_map(graded).collect::<Vec<_>>()
        };
        let finds: Vec<(Part, Tag, Grade)> = right.by.iter().flat_map(seen).collect();
        (!finds.is_empty()).then_some((way, &right.todo, finds))
    };
    ALL.iter().filter_map(closed).collect()
}

fn of(cause: &Cause) -> impl Iterator<Item = (&'static WayIn, f64)> {
    let id = cause.id;
    ALL.iter().filter_map(move |way| Some((way, way.to.iter().find(|(to, _)| *to == id)?.1)))
}

/// By how much what was found outside changes the odds of a cause: as much as its ways in explain it, each of which may have
/// been open or not, whatever the others were; and as much as it explains its own traces.
pub(super) fn factor(cause: &Cause, job: &Job) -> f64 {
    let traces = TRACES.iter().filter(|(id, ..)| *id == cause.id);
    let traces: f64 = traces.map(|(_, kind, tag, chance)| by_find(job, *kind, &[*tag], *chance)).product();
    (by_ways(cause, job) * traces).clamp(LEAST, MOST)
}

/// By how much what was found of its ways in changes the odds of a cause.
fn by_ways(cause: &Cause, job: &Job) -> f64 {
    of(cause).map(|(way, share)| share * way.by_finds(job) + 1.0 - share).product()
}

/// The ways in of a cause, each with how likely it was open if the cause is so; likeliest first.
pub(super) fn ways_in(cause: &Cause, job: &Job) -> Vec<Likely> {
    let likely = |(way, share): (&'static WayIn, f64)| {
        let open = share * way.by_finds(job) * way.by_past(job);
        Likely { way, probability: open / (open + 1.0 - share) }
    };
    let mut ways: Vec<Likely> = of(cause).map(likely).collect();
    ways.sort_by(|a, b| b.probability.total_cmp(&a.probability));
    ways
}

#[cfg(test)]
mod tests {
    use std::io::Write;
    use std::process::{Command, Stdio};

    use super::*;
    use crate::cause::catalogue;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    fn cause(id: &str) -> &'static Cause {
        catalogue::ALL.into_iter().find(|cause| cause.id == id).unwrap()
    }

    fn job(changes: &[Value]) -> Job {
        job_of(&[&[arrange(&Arrangement::inline(4))], changes].concat())
    }

    fn tag(part: &str, tag: &str) -> Value {
        json!({ "do": "tag", "part": part, "tag": tag, "grade": 3 })
    }

    fn likeliest(id: &str, changes: &[Value]) -> (&'static str, f64) {
        let ways = ways_in(cause(id), &job(changes));
        (ways[0].way.id, ways[0].probability)
    }

    #[test]
    fn every_row_is_of_causes_and_of_finds_that_can_be_made() {
        for way in &ALL {
            assert!(!way.to.is_empty() && way.to.iter().all(|(id, _)| cause(id).id == *id), "{}", way.id);
            for (kind, tags, chance) in way.finds {
                assert!(kind.is_outside() && *chance > STRAY && *chance < 1.0, "{}", way.id);
                assert!(tags.iter().all(|tag| kind.row().tags.contains(tag)), "{} {kind:?}", way.id);
            }
        }
        for cause in catalogue::ALL {
            assert!(of(cause).all(|(_, share)| share > 0.0 && share < 1.0), "{}", cause.id);
            assert!((factor(cause, &Job::default()) - 1.0).abs() < 1e-12, "nothing looked at says nothing");
        }
    }

    /// One cause, two ways in.
    #[test]
    fn the_finds_tell_which_way_it_was() {
        let (way, likely) = likeliest("dirt-in-oil", &[tag("air-cleaner", "torn")]);
        assert!(way == "air-cleaner" && likely > 0.7, "{way} {likely}");
        let (way, likely) = likeliest("dirt-in-oil", &[tag("oil-filter", "by-passed")]);
        assert!(way == "filter-by-passed" && likely > 0.6, "{way} {likely}");
        let (way, _) = likeliest("dirt-in-oil", &[tag("oil-filler", "missing"), tag("oil-filter", "grit")]);
        assert_eq!(way, "oil-filler", "grit in the filter is there by whichever way it came");
        let rebuilt = json!({ "do": "recall", "fact": "recent-rebuild", "answer": "yes" });
        assert_eq!(likeliest("dirt-in-oil", &[rebuilt]).0, "left-at-assembly");
    }

    #[test]
    fn what_a_cause_leaves_tells_of_it_and_of_no_way_in() {
        for (id, kind, tag, chance) in TRACES {
            assert!(kind.is_outside() && kind.row().tags.contains(&tag) && chance > STRAY, "{id} {kind:?}");
            let is_of_way =
                |(way, _): (&WayIn, f64)| way.finds.iter().any(|(own, tags, _)| *own == kind && tags.contains(&tag));
            assert!(!of(cause(id)).any(is_of_way), "{id}: {kind:?} is told twice");
        }
        let grit = job(&[tag("oil-filter", "grit")]);
        assert!(factor(cause("dirt-in-oil"), &grit) > 3.0);
        assert!(!ways_in(cause("dirt-in-oil"), &grit).iter().any(|own| own.probability > 0.5));
    }

    #[test]
    fn what_was_found_clean_speaks_against_its_way() {
        let clean = json!({ "do": "clean", "part": "air-cleaner" });
        let (before, after) = (factor(cause("dusty-air"), &job(&[])), factor(cause("dusty-air"), &job(&[clean])));
        assert!(after < before, "{after} {before}");
        let torn = factor(cause("dusty-air"), &job(&[tag("air-cleaner", "torn")]));
        assert!(torn > 5.0 && torn <= MOST, "{torn}");
    }

    /// By plain enumeration over every set of ways in that were open: what the closed form gives.
    #[test]
    fn the_factor_is_the_sum_over_all_sets_of_ways_in() {
        let changes =
            [tag("engine-oil", "milky"), json!({ "do": "clean", "part": "oil-filler" }), tag("sump", "deposits")];
        let found = job(&changes);
        let ways: Vec<(&WayIn, f64)> = of(cause("corrosion")).collect();
        let (mut all, mut with_coolant) = (0.0, 0.0);
        for set in 0..1 << ways.len() {
            let is_open = |n: usize| set >> n & 1 == 1;
            let mut weight: f64 = 1.0;
            for (n, (way, share)) in ways.iter().enumerate() {
                weight *= if is_open(n) { *share } else { 1.0 - share };
                for (kind, tags, chance) in way.finds.iter().filter(|_| is_open(n)) {
                    let Some(record) = found.parts.get(&Part { kind: *kind, at: At::Engine }) else { continue };
                    let seen = tags.iter().any(|tag| record.tags.contains_key(tag));
                    weight *= if seen { chance / STRAY } else { (1.0 - chance) / (1.0 - STRAY) };
                }
            }
            all += weight;
            with_coolant += if (0..ways.len()).any(|n| is_open(n) && ways[n].0.id == "coolant") { weight } else { 0.0 };
        }
        assert!((factor(cause("corrosion"), &found) - all).abs() < 1e-12);
        let told = ways_in(cause("corrosion"), &found);
        let coolant = told.iter().find(|own| own.way.id == "coolant").unwrap();
        assert!((coolant.probability - with_coolant / all).abs() < 1e-12);
    }

    /// Every cause's ways in by pgmpy, from full tables (`tests/causes/peer_ways.py`), where a Python with pgmpy is at hand:
    /// `python3`, or what `WEARBOOK_PYTHON` names.
    #[test]
    fn pgmpy_says_the_same() {
        let python = std::env::var("WEARBOOK_PYTHON").unwrap_or_else(|_| "python3".into());
        let has = Command::new(&python).args(["-c", "import pgmpy"]).output().is_ok_and(|out| out.status.success());
        if !has {
            println!("skipped: {python} has no pgmpy; WEARBOOK_PYTHON can name another Python");
            return;
        }
        let mut asked: Vec<(&Cause, Job)> = Vec::new();
        for cause in catalogue::ALL.into_iter().filter(|cause| of(cause).next().is_some()) {
            // Each find not looked for, found, or looked for and not there, in turns that differ from case to case.
            asked.extend((0..5).map(|turn| {
                let finds = of(cause).flat_map(|(way, _)| way.finds).enumerate();
                let look = |(n, (kind, tags, _)): (usize, &(PartKind, &[Tag], f64))| {
                    let part = Part { kind: *kind, at: At::Engine }.to_string();
                    match (n * 2 + turn) % 3 {
                        0 => None,
                        1 => Some(json!({ "do": "tag", "part": part, "tag": tags[0], "grade": 2 })),
                        _ => Some(json!({ "do": "clean", "part": part })),
                    }
                };
                (cause, job(&finds.filter_map(look).collect::<Vec<Value>>()))
            }));
        }
        let cases: Vec<Value> = asked.iter().map(|(cause, job)| as_asked(cause, job)).collect();
        let script = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/causes/peer_ways.py");
        let mut child = Command::new(&python).arg(script).stdin(Stdio::piped()).stdout(Stdio::piped()).spawn().unwrap();
        child.stdin.take().unwrap().write_all(&serde_json::to_vec(&cases).unwrap()).unwrap();
        let output = child.wait_with_output().unwrap();
        assert!(output.status.success());
        let told: Vec<Value> = serde_json::from_slice(&output.stdout).unwrap();
        assert_eq!(told.len(), asked.len());
        let close = |own: f64, other: &Value| assert!((own - other.as_f64().unwrap()).abs() < 1e-9, "{own} {other}");
        for ((cause, job), told) in asked.iter().zip(&told) {
            let odds = cause.prior / (1.0 - cause.prior) * by_ways(cause, job);
            close(odds / (1.0 + odds), &told["cause"]);
            let likely = ways_in(cause, job);
            for ((way, _), told) in of(cause).zip(told["ways"].as_array().unwrap()) {
                close(likely.iter().find(|own| own.way.id == way.id).unwrap().probability, told);
            }
        }
        assert!(asked.len() >= 50, "{} cases", asked.len());
    }

    /// A case as the library reads it.
    fn as_asked(cause: &Cause, job: &Job) -> Value {
        let find = |(kind, tags, chance): &(PartKind, &[Tag], f64)| {
            let record = job.parts.get(&Part { kind: *kind, at: At::Engine }).filter(|record| record.looked_at());
            let seen = record.map(|record| tags.iter().any(|tag| record.tags.contains_key(tag)));
            json!({ "chance": chance, "stray": STRAY, "seen": seen })
        };
        let ways = of(cause)
            .map(|(way, share)| json!({ "share": share, "finds": way.finds.iter().map(find).collect::<Vec<Value>>() }));
        json!({ "prior": cause.prior, "ways": ways.collect::<Vec<Value>>() })
    }

    /// So that the closed form is exact, no two ways of one cause share a find.
    #[test]
    fn no_find_tells_of_two_ways_of_one_cause() {
        for cause in catalogue::ALL {
            let finds: Vec<(PartKind, Tag)> = of(cause)
                .flat_map(|(way, _)| way.finds)
                .flat_map(|(kind, tags, _)| tags.iter().map(|tag| (*kind, *tag)))
                .collect();
            let set: std::collections::BTreeSet<_> = finds.iter().collect();
            assert_eq!(set.len(), finds.len(), "{}: {finds:?}", cause.id);
        }
    }
}
