//! What must hold of sizes whatever is measured: units change nothing, a worse reading never helps, the size is the
//! smallest that does, and without uncertainty every answer is yes or no.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop at once")]

use std::collections::{BTreeMap, BTreeSet};

use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::TestRunner;
use serde_json::{Value, json};
use wearbook_core::assess::{Assessment, assess_given};
use wearbook_core::cause::diagnose;
use wearbook_core::engine::Arrangement;
use wearbook_core::job::{Change, DeviceId, Edit, EditId, Job, RecordedChange};
use wearbook_core::measure::Conformity;
use wearbook_core::sheet::SizeGroup;
use wearbook_core::sizing::{Action, GroupPlan};

/// Lengths here are whole ten-thousandths of an inch.
type Tenths = i64;

/// Places on a journal; a bore has the same number of its own.
const PLACES: [(Option<usize>, Option<&str>); 7] = [
    (None, None),
    (Some(0), Some("a")),
    (Some(0), Some("b")),
    (Some(1), Some("a")),
    (Some(1), Some("b")),
    (Some(2), Some("a")),
    (Some(2), Some("b")),
];

/// A group of journals or bores.
#[derive(Debug, Clone)]
struct Group {
    group: SizeGroup,
    /// The smallest and largest new diameter.
    new: (Tenths, Tenths),
    /// Sizes beyond standard in order; the first may be one of shells for slight wear.
    series: Vec<Tenths>,
    slight: bool,
    /// How far beyond new it may wear, if the sheet says so.
    limit: Option<Tenths>,
    out_of_round: Option<Tenths>,
    taper: Option<Tenths>,
    parts: Vec<Measured>,
}

/// What was measured of one journal or bore.
#[derive(Debug, Clone)]
struct Measured {
    /// A diameter at each place where one was read.
    diameters: Vec<Option<Tenths>>,
    scratch: Option<Tenths>,
}

#[derive(Debug, Clone)]
struct Bench {
    groups: Vec<Group>,
    uncertainty: Tenths,
    clean_up: Tenths,
    general_rules: bool,
    /// A limit of wear of the bores, counted from an end of the new range or from neither.
    bore_wear: Option<(Tenths, Option<&'static str>)>,
    /// The deepest scratch that may be polished, and the deepest that may be machined.
    scratches: Option<(Tenths, Tenths)>,
}

#[derive(Debug, Clone, Copy)]
enum Unit {
    Inch,
    Millimetre,
}

impl Unit {
    /// A length as people type it; a ten-thousandth of an inch is 0.00254 mm exactly.
    fn text(self, length: Tenths) -> String {
        match self {
            Self::Inch => format!("{}.{:04} in", length / 10_000, length % 10_000),
            Self::Millimetre => format!("{}.{:05} mm", length * 254 / 100_000, length * 254 % 100_000),
        }
    }
}

/// Words of a group in the published form.
fn words(group: SizeGroup) -> (&'static str, &'static str, &'static str) {
    match group {
        SizeGroup::Mains => ("mains", "main-journal", "main-shell"),
        SizeGroup::Crankpins => ("crankpins", "crankpin", "rod-shell"),
        SizeGroup::Bores => ("bores", "bore", "piston"),
    }
}

impl Group {
    fn is_bore(&self) -> bool {
        self.group == SizeGroup::Bores
    }

    fn lines(&self, unit: Unit) -> Vec<Value> {
        let (_, kind, mate) = words(self.group);
        let of = |quantity: &str| json!({ "kind": kind, "quantity": quantity });
        let mut diameter = json!({ "of": of("diameter"), "min": unit.text(self.new.0), "max": unit.text(self.new.1) });
        if let Some(limit) = self.limit {
            let at = if self.is_bore() { self.new.1 + limit } else { self.new.0 - limit };
            diameter["limit"] = unit.text(at).into();
        }
        let form = [("out-of-round", self.out_of_round), ("taper", self.taper)];
        let form =
            form.iter().filter_map(|(name, limit)| Some(json!({ "of": of(name), "limit": unit.text((*limit)?) })));
        let mate = if self.is_bore() {
            json!({ "of": { "kind": mate, "quantity": "diameter" }, "min": unit.text(self.new.0 - 40), "max": unit.text(self.new.0 - 30) })
        } else {
            json!({ "of": { "kind": mate, "quantity": "wall" }, "min": unit.text(1_245), "max": unit.text(1_250) })
        };
        [diameter, mate].into_iter().chain(form).collect()
    }

    fn rows(&self, unit: Unit) -> Vec<Value> {
        let (group, ..) = words(self.group);
        let row = |(index, size): (usize, &Tenths)| match self.is_bore() {
            true => json!({ "size": unit.text(*size) }),
            false => {
                json!({ "journals": group, "size": unit.text(*size), "without_grinding": self.slight && index == 0 })
            }
        };
        self.series.iter().enumerate().map(row).collect()
    }

    fn readings(&self, unit: Unit) -> Vec<Value> {
        let (_, kind, _) = words(self.group);
        let stations = if self.is_bore() { ["top", "middle", "bottom"] } else { ["front", "middle", "rear"] };
        let of_part = |(index, part): (usize, &Measured)| {
            let name = format!("{kind}.{}", index + 1);
            let diameters = PLACES.iter().zip(&part.diameters).filter_map(|((station, direction), diameter)| {
                let mut spot = json!({});
                if let (Some(station), Some(direction)) = (station, direction) {
                    spot = json!({ "station": stations[*station], "direction": direction });
                }
                Some(json!({ "part": name, "quantity": "diameter", "spot": spot, "value": unit.text((*diameter)?), "instrument": "mic" }))
            });
            let scratch = part.scratch.map(|depth| {
                json!({ "part": name, "quantity": "scratch-depth", "value": unit.text(depth), "instrument": "mic" })
            });
            diameters.chain(scratch).collect::<Vec<Value>>()
        };
        self.parts.iter().enumerate().flat_map(of_part).collect()
    }

    /// What each part cleans up at, by itself.
    fn cleans_up_at(&self, clean_up: Tenths) -> Vec<Tenths> {
        let each = |part: &Measured| {
            let diameters = || part.diameters.iter().flatten().copied();
            let away = 2 * part.scratch.unwrap_or(0) + clean_up;
            if self.is_bore() { Some(diameters().max()? + away) } else { Some(diameters().min()? - away) }
        };
        self.parts.iter().filter_map(each).collect()
    }

    /// The smallest size to which every part cleans up, tried one after the other.
    fn smallest_size(&self, clean_up: Tenths) -> Option<Tenths> {
        let cleans = self.cleans_up_at(clean_up);
        let fits = |size: Tenths| {
            let (low, high) = (self.new.0, self.new.1);
            cleans.iter().all(|at| if self.is_bore() { low + size >= *at } else { high - size <= *at })
        };
        let ground = self.series.iter().skip(usize::from(self.slight && !self.is_bore()));
        ground.copied().filter(|size| fits(*size)).min()
    }
}

impl Bench {
    fn entries(&self, unit: Unit) -> Vec<Value> {
        let mut lines: Vec<Value> = self.groups.iter().flat_map(|group| group.lines(unit)).collect();
        lines.push(json!({ "of": { "kind": "housing-bore", "quantity": "diameter" }, "min": unit.text(32_510), "max": unit.text(32_520) }));
        lines.push(json!({ "of": { "kind": "main-journal", "quantity": "clearance" }, "min": unit.text(10), "max": unit.text(40) }));
        if let Some((limit, datum)) = self.bore_wear {
            let mut line = json!({ "of": { "kind": "bore", "quantity": "wear" }, "limit": unit.text(limit) });
            if let Some(datum) = datum {
                line["datum"] = datum.into();
            }
            lines.push(line);
        }
        if let Some((polish, machine)) = self.scratches {
            for kind in ["main-journal", "crankpin"] {
                lines.push(json!({ "of": { "kind": kind, "quantity": "scratch-depth" }, "max": unit.text(polish), "limit": unit.text(polish + machine) }));
            }
        }
        let rows = |bores: bool| -> Vec<Value> {
            self.groups.iter().filter(|group| group.is_bore() == bores).flat_map(|group| group.rows(unit)).collect()
        };
        let head = json!({ "name": "", "clean_up": unit.text(self.clean_up), "general_rules": self.general_rules });
        let mic = json!({ "id": "mic", "name": "Micrometer", "kind": "micrometer", "resolution": unit.text(1), "uncertainty": unit.text(self.uncertainty) });
        let mut entries = vec![
            json!({ "do": "arrange", "arrangement": Arrangement::inline(2) }),
            json!({ "do": "use-sheet", "sheet": { "head": head, "lines": lines, "undersizes": rows(false), "oversizes": rows(true) } }),
            json!({ "do": "note-instrument", "instrument": mic }),
        ];
        let readings = self.groups.iter().flat_map(|group| group.readings(unit));
        entries.extend(readings.map(|reading| json!({ "do": "measure", "reading": reading })));
        entries
    }

    fn assessed(&self, unit: Unit) -> Assessment {
        let mut job = Job::default();
        let mut edits = Vec::new();
        for entry in self.entries(unit) {
            let change: Change = serde_json::from_value(entry).unwrap();
            // Readings are not held against each other; only the first entries change what is allowed.
            if edits.len() < 4 {
                job = Job::fold(&edits);
            }
            job.check(&change).unwrap();
            let id = EditId::next(None, edits.len() as u64, DeviceId(1));
            edits.push(Edit { id, change: RecordedChange::Known(change) });
        }
        let job = Job::fold(&edits);
        // Sizes know nothing of causes: those of an engine of which nothing is known are had at once.
        assess_given(&job, |_, _| diagnose(None, &job, &BTreeMap::new()))
    }
}

/// All that is concluded, without the words: those name units and steps.
fn conclusions(assessment: &Assessment) -> Vec<String> {
    let sizing = &assessment.sizing;
    let figures = assessment.parts.iter().flat_map(|view| {
        view.figures.iter().map(|f| {
            format!("{} {:?} {:?} {:?} {:?} {:?}", view.part, f.quantity, f.low, f.high, f.uncertainty, f.verdict)
        })
    });
    let plans = sizing.groups.iter().map(|p| {
        format!("{:?} {:?} {:?} {:?} {:?} {}", p.group, p.action, p.size, p.finished, p.decided_by, p.settled)
    });
    let parts = sizing
        .groups
        .iter()
        .flat_map(|plan| &plan.parts)
        .map(|p| format!("{} {:?} {:?}", p.part, p.cleans_up_at, p.take_off));
    let clearances =
        sizing.clearances.iter().map(|c| format!("{} {:?} {:?} {:?}", c.part, c.worst_case, c.likely, c.verdict));
    let orders = sizing.orders.iter().map(|o| format!("{:?} {:?} {} {:?}", o.kind, o.size, o.quantity, o.state));
    let decisions = assessment.parts.iter().map(|view| format!("{} {:?}", view.part, view.decision.outcome));
    figures.chain(plans).chain(parts).chain(clearances).chain(orders).chain(decisions).collect()
}

/// A part worn by up to so much beyond new, uneven by up to so much from place to place.
fn measured(new: (Tenths, Tenths), bore: bool, worn: Tenths, uneven: Tenths) -> impl Strategy<Value = Measured> {
    let places = prop::collection::vec(prop::option::weighted(0.5, 0..=uneven), PLACES.len());
    let scratch = prop::option::weighted(0.05, 1i64..150);
    (0..=worn, places, scratch).prop_map(move |(worn, places, scratch)| Measured {
        diameters: places
            .into_iter()
            .map(|place| place.map(|off| if bore { new.0 + worn + off } else { new.1 - worn - off }))
            .collect(),
        scratch,
    })
}

/// A group, from hardly used to worn out, or not measured at all.
fn group(group: SizeGroup, new: (Tenths, Tenths), parts: usize) -> impl Strategy<Value = Group> {
    let limit = |most: Tenths| prop::option::of(0..most);
    let bore = group == SizeGroup::Bores;
    let used = prop::sample::select(vec![(4, 2), (10, 4), (25, 4), (150, 14), (450, 30)]);
    let parts = used.prop_flat_map(move |(worn, uneven)| {
        prop_oneof![
            9 => prop::collection::vec(measured(new, bore, worn, uneven), parts),
            1 => Just(vec![Measured { diameters: vec![None; PLACES.len()], scratch: None }; parts]),
        ]
    });
    let series = prop::sample::subsequence(vec![20i64, 100, 200, 300, 400], 1..=5);
    (series, any::<bool>(), limit(20), limit(15), limit(15), parts).prop_map(
        move |(series, slight, limit, out_of_round, taper, parts)| Group {
            group,
            new,
            slight: slight && series.first() == Some(&20),
            series,
            limit,
            out_of_round,
            taper,
            parts,
        },
    )
}

prop_compose! {
    fn bench()(
        mains in group(SizeGroup::Mains, (29_990, 30_000), 3),
        pins in group(SizeGroup::Crankpins, (24_990, 25_000), 2),
        bores in group(SizeGroup::Bores, (40_000, 40_010), 2),
        uncertainty in 0i64..4,
        clean_up in 0i64..30,
        general_rules: bool,
        bore_wear in prop::option::of((0i64..80, prop::sample::select(vec![None, Some("min"), Some("max")]))),
        scratches in prop::option::of((0i64..80, 1i64..100)),
    ) -> Bench {
        Bench { groups: vec![mains, pins, bores], uncertainty, clean_up, general_rules, bore_wear, scratches }
    }
}

/// A worse reading: at a place not yet read, a diameter worn beyond all others of its part; or a deeper scratch.
#[derive(Debug, Clone)]
struct Worse {
    group: usize,
    part: usize,
    place: usize,
    /// How much further; a new scratch is so deep.
    by: Tenths,
    scratch: bool,
}

impl Worse {
    /// Adds the reading; nothing if the place is taken or nothing was read of that part.
    fn add(&self, bench: &Bench) -> Option<Bench> {
        let mut bench = bench.clone();
        let group = bench.groups.get_mut(self.group)?;
        let bore = group.is_bore();
        let parts = group.parts.len();
        let part = group.parts.get_mut(self.part % parts)?;
        if self.scratch {
            part.scratch = Some(part.scratch.unwrap_or(0) + self.by);
            return Some(bench);
        }
        let read = || part.diameters.iter().flatten().copied();
        let worse = if bore { read().max()? + self.by } else { read().min()? - self.by };
        let place = part.diameters.get_mut(self.place)?;
        place.is_none().then_some(())?;
        *place = Some(worse);
        Some(bench)
    }
}

prop_compose! {
    fn worse()(group in 0usize..3, part in 0usize..3, place in 0usize..PLACES.len(), by in 0i64..200, scratch: bool) -> Worse {
        Worse { group, part, place, by: if scratch { by + 1 } else { by }, scratch }
    }
}

fn plan(assessment: &Assessment, group: SizeGroup) -> &GroupPlan {
    assessment.plan(group).unwrap()
}

/// Properties of a few kinds of bench would say little: among some hundred there must be every action and verdict.
#[test]
fn benches_differ() {
    let mut runner = TestRunner::deterministic();
    let (mut actions, mut verdicts) = (BTreeSet::new(), BTreeSet::new());
    for _ in 0..100 {
        let assessment = bench().new_tree(&mut runner).unwrap().current().assessed(Unit::Inch);
        actions.extend(assessment.sizing.groups.iter().map(|plan| plan.action));
        verdicts.extend(assessment.parts.iter().flat_map(|view| &view.figures).map(|figure| figure.verdict));
    }
    use Action::{Keep, Machine, Open, Polish, Replace, Sleeve, UndersizeShells};
    assert!(
        actions.is_superset(&[Open, Keep, Polish, UndersizeShells, Machine, Sleeve, Replace].into()),
        "{actions:?}"
    );
    assert_eq!(verdicts.len(), 4, "three verdicts and none: {verdicts:?}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn the_same_lengths_in_millimetres_conclude_the_same(bench in bench()) {
        prop_assert_eq!(conclusions(&bench.assessed(Unit::Inch)), conclusions(&bench.assessed(Unit::Millimetre)));
    }

    #[test]
    fn a_worse_reading_never_helps((bench, worse) in (bench(), worse())) {
        let Some(worn) = worse.add(&bench) else { return Ok(()) };
        let (before, after) = (bench.assessed(Unit::Inch), worn.assessed(Unit::Inch));
        for (before, after) in before.sizing.groups.iter().zip(&after.sizing.groups) {
            prop_assert!(after.action >= before.action, "{:?} became {:?}: {}", before.action, after.action, after.because);
            if after.action == before.action {
                prop_assert!(after.size >= before.size || after.size.is_none(), "{} became {}", before.size_shown, after.size_shown);
            }
        }
    }

    #[test]
    fn the_size_is_the_smallest_that_cleans_up_all(bench in bench()) {
        let assessment = bench.assessed(Unit::Inch);
        for group in &bench.groups {
            let plan = plan(&assessment, group.group);
            let smallest = group.smallest_size(bench.clean_up);
            let size = plan.size.map(|size| size.nanometres() / 2_540);
            let measured = !group.cleans_up_at(bench.clean_up).is_empty();
            match plan.action {
                Action::Machine if measured && smallest.is_some() => prop_assert_eq!(size, smallest),
                Action::Machine => prop_assert_eq!(size, None),
                Action::Replace => {
                    let deepest = group.parts.iter().filter_map(|part| part.scratch).max();
                    let too_deep = !group.is_bore() && bench.scratches.zip(deepest).is_some_and(|((polish, machine), deepest)| deepest > polish + machine);
                    prop_assert!(too_deep || smallest.is_none(), "{}", plan.because);
                }
                // Nobody chose: bores are sleeved where no size is left.
                Action::Sleeve => {
                    prop_assert!(group.is_bore() && smallest.is_none(), "{}", plan.because);
                    prop_assert_eq!(size, Some(0));
                }
                Action::Renew => prop_assert!(false, "these engines have no liners or barrels"),
                Action::Open => prop_assert!(!measured),
                Action::Keep | Action::Polish | Action::UndersizeShells => prop_assert_eq!(size, Some(0)),
            }
        }
    }

    #[test]
    fn without_uncertainty_nothing_is_too_close(bench in bench()) {
        let assessment = Bench { uncertainty: 0, ..bench }.assessed(Unit::Inch);
        for figure in assessment.parts.iter().flat_map(|view| &view.figures) {
            prop_assert_ne!(figure.verdict, Some(Conformity::TooClose), "{}", figure.because);
        }
        for plan in &assessment.sizing.groups {
            prop_assert!(plan.missing.iter().all(|missing| !missing.words.contains("too close")), "{:?}", plan.missing);
        }
    }
}
