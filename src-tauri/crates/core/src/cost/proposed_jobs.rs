//! The jobs in which a bill is put to the customer: a handful that can be weighed, instead of every line.

use super::scopes::Scopes;
use crate::decide::rules::{self, RuleId};
use crate::engine::{Part, PartKind};
use crate::job::{Complaint, Job};
use crate::money::{Charge, JobScope, Need, ProposedJob, QuoteLine};
use crate::view::PartView;
use crate::wear::{Grade, Tag};
use crate::words::counted;
use crate::work::Work;

/// Groups the lines of a bill into numbered jobs, those that are empty left out.
pub(super) fn proposed_jobs(job: &Job, lines: &[QuoteLine], parts: &[PartView]) -> Vec<ProposedJob> {
    let known = Scopes::of(job, lines, parts);
    let of_scope = |scope: JobScope| lines.iter().filter(|line| known.of_line(&line.of) == scope).collect::<Vec<_>>();
    let scopes = JobScope::ALL.into_iter().map(|scope| (scope, of_scope(scope))).filter(|(_, own)| !own.is_empty());
    scopes
        .zip(1..)
        .map(|((scope, own), number)| {
            let need = own.iter().map(|line| need_of(line, parts)).max().unwrap_or(Need::May);
            ProposedJob {
                of: scope,
                number,
                title: scope.title().into(),
                need,
                because: because(&known, scope, &own, parts),
                if_left: if_left(job, scope, need).into(),
                lines: own.iter().map(|line| line.of.clone()).collect(),
                net: own.iter().filter_map(|line| line.net).sum(),
                without_price: own.iter().filter(|line| line.net.is_none()).map(|_| 1).sum(),
            }
        })
        .collect()
}

fn views<'a>(line: &'a QuoteLine, parts: &'a [PartView]) -> impl DoubleEndedIterator<Item = &'a PartView> {
    parts.iter().filter(|view| line.parts.contains(&view.part))
}

/// How much a line is needed. What is renewed, machined or sleeved because of what was found must be; what is renewed at
/// every overhaul, tested or finished should be; what is only cleaned of light traces may be (common practice).
fn need_of(line: &QuoteLine, parts: &[PartView]) -> Need {
    let work = match &line.of {
        Charge::Standing(_) => return Need::Must,
        Charge::Own(_) => return Need::Should,
        Charge::Work(of) => of.work,
    };
    // What is dirty because of what went round with the oil, or is washed for other work, shows no damage of its own.
    let is_light = |view: &PartView| {
        let first = view.decision.reasons.first();
        view.worst.is_none_or(|worst| worst <= Grade::ONE)
            && first.is_none_or(|reason| rules::is_read_off_damage(reason.rule))
    };
    match work {
        Work::Machine | Work::WeldUp | Work::Sleeve | Work::Bush => Need::Must,
        Work::Replace if views(line, parts).any(is_worn_out) => Need::Must,
        Work::Clean if views(line, parts).all(is_light) => Need::May,
        Work::Replace
        | Work::Clean
        | Work::Polish
        | Work::Rebuild
        | Work::CrackTest
        | Work::Hone
        | Work::Fit
        | Work::Weigh
        | Work::Balance
        | Work::Measure => Need::Should,
    }
}

/// Whether something was found that a part can't go on with, or it would not be renewed at an overhaul as such.
fn is_worn_out(view: &PartView) -> bool {
    let is_brought = decided_by(view, rules::CAM_BEARINGS_WITH_WASH);
    !view.kind.row().always_renewed && !is_brought
        || view.worst.is_some_and(|worst| worst >= Grade::THREE)
        || view.is_measured_outside()
}

/// Why, in a clause: the piece that is renewed with all that is part of it, else the worst that was found of its parts, else
/// the reason of the line that weighs most.
fn because(known: &Scopes<'_>, scope: JobScope, lines: &[&QuoteLine], parts: &[PartView]) -> String {
    if scope == JobScope::Assembly {
        return "Whatever is done, it is put together again and run.".into();
    }
    let of_scope = || parts.iter().filter(|view| known.of_kind(view.kind) == scope);
    let found: Vec<(&PartView, String)> = of_scope().filter_map(|view| Some((view, found(view)?))).collect();
    let lost = of_scope().find(|view| is_carrier(view.kind) && view.decision.work() == Some(Work::Replace));
    // Of a piece that is lost by what is part of it, that part is named; of several that are equally bad the first.
    let worst = |of: Option<Part>| {
        let counts = |(view, _): &&(&PartView, String)| of.is_none() || known.carrier(view.part) == of;
        let worst = found.iter().rev().filter(counts).max_by_key(|(view, _)| weight(view));
        worst.map(|(view, clause)| (*view, Some(clause.clone())))
    };
    let told = match lost {
        Some(lost) => match self::found(lost) {
            None => worst(Some(lost.part)).or(Some((lost, None))),
            own => Some((lost, own)),
        },
        None => worst(None),
    };
    let Some((view, clause)) = told else {
        let first = lines.iter().rev().max_by_key(|line| (need_of(line, parts), !is_routine(line, parts)));
        return first.map_or_else(String::new, |line| line.because.clone());
    };
    let others = found.iter().filter(|(other, _)| other.part != view.part).count();
    let besides = counted(others, "part is", "parts are");
    match clause {
        Some(clause) if others > 0 => format!("{}: {clause}; {besides} worn besides.", view.label),
        Some(clause) => format!("{}: {clause}.", view.label),
        None => format!("{}: {}", view.label, view.decision.because()),
    }
}

/// What is only dirty, a bolt, or goes along with another part, explains no bill as well as what is worn out.
fn weight(view: &PartView) -> (bool, bool, bool, bool, Option<Grade>) {
    let is_bad = view.worst.is_some_and(|worst| worst >= Grade::THREE);
    let is_work = matches!(view.decision.work(), Some(Work::Replace | Work::Machine));
    let is_bolt = matches!(view.kind, PartKind::HeadBolts | PartKind::MainCapBolts | PartKind::RodBolts);
    let is_damage = view.findings.first().is_some_and(|first| first.tag != Tag::Deposits);
    (is_bad, is_work, !is_bolt, is_damage, view.worst)
}

/// What brings other parts along when it is renewed.
fn is_carrier(kind: PartKind) -> bool {
    matches!(kind, PartKind::Block | PartKind::Crankshaft | PartKind::Camshaft)
}

/// Whether it is done at every overhaul or goes along with other work, whatever was found.
fn is_routine(line: &QuoteLine, parts: &[PartView]) -> bool {
    let routine = [rules::RENEWED_AT_OVERHAUL, rules::CAM_BEARINGS_WITH_WASH];
    views(line, parts).all(|view| routine.into_iter().any(|rule| decided_by(view, rule)))
}

fn decided_by(view: &PartView, rule: RuleId) -> bool {
    view.decision.overruled_because.is_none() && view.decision.reasons.first().is_some_and(|first| first.rule == rule)
}

/// What was found of a part that is no light trace: its worst damage, else a size out of its limits.
fn found(view: &PartView) -> Option<String> {
    let damage = view.findings.iter().find(|finding| finding.tag.is_damage() && finding.grade >= Grade::TWO);
    let outside = || view.figures.iter().find(|figure| figure.is_found_outside());
    damage
        .map(|finding| format!("{}, grade {} of 4", finding.name, finding.grade.number()))
        .or_else(|| outside().map(|figure| format!("{} out of its limits", figure.name.to_lowercase())))
}

/// Whether the customer told that it burns oil or has lost compression.
fn does_burn_oil(job: &Job) -> bool {
    let told = [Complaint::OilUsed, Complaint::BlueSmoke, Complaint::LowCompression, Complaint::BreatherFumes];
    told.iter().any(|own| job.complaints.contains(own))
}

/// What happens if a job is left (common practice).
fn if_left(job: &Job, scope: JobScope, need: Need) -> &'static str {
    match (scope, need) {
        (JobScope::Bearings, Need::Must) => {
            "A bearing that lets go under load takes the crankshaft and the block with it."
        }
        (JobScope::Bearings, _) => "Used shells do not bed in a second time as they did: they wear sooner.",
        (JobScope::Cylinders, Need::Must) if does_burn_oil(job) => {
            "It goes on burning oil or losing compression, and the damage grows."
        }
        (JobScope::Cylinders, Need::Must) => "The damage grows: sooner or later it burns oil and loses compression.",
        (JobScope::Cylinders, _) => "Disturbed rings seal worse than before: it may burn oil.",
        (JobScope::Block, Need::Must) => "New parts can’t last in it: what is worn or cracked there spoils them.",
        (JobScope::Block, _) => "Dirt left in its passages reaches the new bearings.",
        (JobScope::ValveGear, Need::Must) => "It wears on, and its metal goes through the oil to the new bearings.",
        (JobScope::ValveGear, _) => "Light marks and dirt left there wear on.",
        (JobScope::OilAndDrives, Need::Must) => "It may fail: then the oil stops, and all that was renewed is lost.",
        (JobScope::OilAndDrives, _) => "Dirt left there goes to the new bearings first.",
        (JobScope::Further, _) => "It is not supplied or not done.",
        (JobScope::Assembly, _) => "The engine stays in parts.",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assess::assess;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use crate::money::PriceKey;
    use serde_json::{Value, json};

    /// Number, what it is about, and how much it is needed.
    #[track_caller]
    fn check(changes: &[Value], expected: &[(u32, JobScope, Need)]) {
        let changes: Vec<Value> = [arrange(&Arrangement::inline(4))].iter().chain(changes).cloned().collect();
        let quote = assess(&job_of(&changes)).quote;
        let jobs: Vec<_> = quote.jobs.iter().map(|job| (job.number, job.of, job.need)).collect();
        assert_eq!(jobs, expected, "{:#?}", quote.jobs);
        let of_jobs: usize = quote.jobs.iter().map(|job| quote.lines_of(job).count()).sum();
        assert_eq!(of_jobs, quote.lines.len(), "every line belongs to one job");
        for job in &quote.jobs {
            assert!(!job.because.is_empty() && !job.if_left.is_empty(), "{job:?}");
            assert_eq!(job.net, quote.lines_of(job).filter_map(|line| line.net).sum(), "{job:?}");
        }
    }

    fn tag(part: &str, tag: &str, grade: u8) -> Value {
        json!({ "do": "tag", "part": part, "tag": tag, "grade": grade })
    }

    #[test]
    fn what_failed_must_be_done_and_what_is_renewed_anyway_should_be() {
        let sound = [json!({ "do": "clean", "part": "crankpin.1" })];
        let anyway = [
            (1, JobScope::Bearings, Need::Should),
            (2, JobScope::Cylinders, Need::Should),
            (3, JobScope::Block, Need::Should),
        ];
        check(&sound, &anyway);
        let worn = [tag("rod-shell.2.upper", "copper-showing", 3), tag("lobe.1.intake.1", "worn-nose", 4)];
        let asked = [
            (1, JobScope::Bearings, Need::Must),
            (2, JobScope::Cylinders, Need::Should),
            (3, JobScope::Block, Need::Should),
            (4, JobScope::ValveGear, Need::Must),
        ];
        check(&worn, &asked);
    }

    fn jobs(changes: &[Value]) -> Vec<ProposedJob> {
        let clean = ["crankshaft", "block", "crankpin.1"].map(|part| json!({ "do": "clean", "part": part }));
        let changes: Vec<Value> =
            [arrange(&Arrangement::inline(4))].iter().chain(&clean).chain(changes).cloned().collect();
        assess(&job_of(&changes)).quote.jobs
    }

    /// A hot wash eats the lining of cam bearings: who says yes to it says yes to new ones (common practice).
    #[test]
    fn what_the_wash_brings_is_agreed_to_with_it() {
        let holds = |changes: &[Value], of: JobScope, what: &[(PartKind, Work)]| {
            let jobs = jobs(changes);
            let own = jobs.iter().find(|job| job.of == of).unwrap();
            for (kind, work) in what {
                assert!(own.lines.iter().any(|line| *line == PriceKey { kind: *kind, work: *work }), "{own:#?}");
            }
            assert!(jobs.iter().all(|job| job.of != JobScope::ValveGear), "{jobs:#?}");
        };
        use PartKind::{Block, CamBearing, CorePlugs};
        let with_it =
            [(Block, Work::Clean), (CamBearing, Work::Replace), (CamBearing, Work::Fit), (CorePlugs, Work::Replace)];
        holds(&[tag("rod-shell.2.upper", "embedded-debris", 3)], JobScope::Block, &with_it);
        holds(&[tag("bore.2", "scoring", 3)], JobScope::Cylinders, &with_it);
        holds(&[tag("bore.2", "scoring", 3), tag("block", "deposits", 3)], JobScope::Block, &with_it);
        holds(&[tag("block", "cracks", 4)], JobScope::Block, &[(CamBearing, Work::Replace)]);
    }

    #[test]
    fn what_weighs_most_tells_why() {
        let why = |changes: &[Value]| {
            let block = jobs(changes).into_iter().find(|job| job.of == JobScope::Block).unwrap();
            (block.because, block.need)
        };
        let lost = [tag("block", "cracks", 3), tag("head-bolts", "bent", 4)];
        let (because, need) = why(&lost);
        assert!(because.starts_with("Cylinder block: ") && need == Need::Must, "{because}");
        let (because, need) = why(&[tag("rod-shell.2.upper", "embedded-debris", 3)]);
        assert!(because.starts_with("Rod 2, upper shell") && need == Need::Should, "{because}");
    }

    #[test]
    fn the_worst_finding_tells_why() {
        let changes = [
            arrange(&Arrangement::inline(4)),
            tag("rod-shell.2.upper", "scoring", 2),
            tag("rod-shell.3.upper", "copper-showing", 4),
        ];
        let quote = assess(&job_of(&changes)).quote;
        let told = &quote.jobs[0].because;
        assert!(told.starts_with("Rod 3"), "{told}");
    }

    #[test]
    fn what_stands_on_every_bill_is_a_job_of_its_own() {
        let standing = json!({ "do": "use-prices", "prices": { "currency": "EUR", "hour": 6000, "tax": { "rate": 1900 },
            "prices": [], "standing": [{ "of": "assembly", "minutes": 600 }] } });
        let gasket =
            json!({ "do": "add-item", "item": { "list": "order", "what": "Seal", "quantity": 1, "price": 900 } });
        let changes =
            [arrange(&Arrangement::inline(4)), json!({ "do": "clean", "part": "crankpin.1" }), standing, gasket];
        let quote = assess(&job_of(&changes)).quote;
        let last: Vec<_> = quote.jobs.iter().rev().take(2).map(|job| (job.of, job.net.minor(), job.need)).collect();
        assert_eq!(last, [(JobScope::Assembly, 60_000, Need::Must), (JobScope::Further, 900, Need::Should)]);
    }

    #[test]
    fn an_own_item_is_agreed_to_with_the_job_that_it_belongs_to() {
        let item = json!({ "list": "order", "what": "Seal", "quantity": 1, "price": 900, "scope": "bearings" });
        let add = json!({ "do": "add-item", "item": item });
        let jobs = [
            (1, JobScope::Bearings, Need::Should),
            (2, JobScope::Cylinders, Need::Should),
            (3, JobScope::Block, Need::Should),
        ];
        check(&[json!({ "do": "clean", "part": "crankpin.1" }), add], &jobs);
    }
}
