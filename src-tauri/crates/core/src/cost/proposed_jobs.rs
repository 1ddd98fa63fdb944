//! The jobs in which a bill is put to the customer: a handful that can be weighed, instead of every line.

use crate::job::{Complaint, Job};
use crate::money::{Charge, JobScope, Need, OwnCharge, PriceKey, ProposedJob, QuoteLine};
use crate::view::PartView;
use crate::wear::{Grade, Tag};
use crate::words::counted;
use crate::work::Work;

/// Groups the lines of a bill into numbered jobs, those that are empty left out.
pub(super) fn proposed_jobs(job: &Job, lines: &[QuoteLine], parts: &[PartView]) -> Vec<ProposedJob> {
    let of_scope = |scope: JobScope| lines.iter().filter(move |line| scope_of(job, &line.of) == scope);
    let scopes = JobScope::ALL.into_iter().filter(|scope| of_scope(*scope).next().is_some());
    scopes
        .zip(1..)
        .map(|(scope, number)| {
            let needed = |line: &QuoteLine| need_of(line, parts);
            let need = of_scope(scope).map(needed).max().unwrap_or(Need::May);
            let first = of_scope(scope).collect::<Vec<_>>().into_iter().rev().max_by_key(|line| needed(line));
            ProposedJob {
                of: scope,
                number,
                title: scope.title().into(),
                need,
                because: because(scope, first, parts),
                if_left: if_left(job, scope, need).into(),
                lines: of_scope(scope).map(|line| line.of.clone()).collect(),
                net: of_scope(scope).filter_map(|line| line.net).sum(),
                without_price: of_scope(scope).filter(|line| line.net.is_none()).map(|_| 1).sum(),
            }
        })
        .collect()
}

/// The job to which a line belongs: what is taken to pieces, machined and fitted together is agreed to together.
fn scope_of(job: &Job, of: &Charge) -> JobScope {
    match of {
        Charge::Work(PriceKey { kind, .. }) => JobScope::of(*kind),
        Charge::Own(OwnCharge { own }) => {
            let item = job.own_items.iter().find(|(edit, _)| edit.to_string() == *own);
            item.and_then(|(_, item)| item.scope).unwrap_or(JobScope::Further)
        }
        Charge::Standing(_) => JobScope::Assembly,
    }
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
    let is_light = |view: &PartView| view.worst.is_none_or(|worst| worst <= Grade::ONE);
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
    !view.kind.row().always_renewed
        || view.worst.is_some_and(|worst| worst >= Grade::THREE)
        || view.is_measured_outside()
}

/// Why, in a clause: the worst that was found of its parts, else the reason of the line that weighs most.
fn because(scope: JobScope, first: Option<&QuoteLine>, parts: &[PartView]) -> String {
    let Some(line) = first.filter(|_| scope != JobScope::Assembly) else {
        return "Whatever is done, it is put together again and run.".into();
    };
    let found: Vec<(&PartView, String)> = parts
        .iter()
        .filter(|view| JobScope::of(view.kind) == scope)
        .filter_map(|view| Some((view, found(view)?)))
        .collect();
    // What is only dirty, or goes along with another part, explains no bill as well as what is worn out.
    let weight = |view: &PartView| {
        let is_bad = view.worst.is_some_and(|worst| worst >= Grade::THREE);
        let is_work = matches!(view.decision.work(), Some(Work::Replace | Work::Machine));
        (is_bad, is_work, view.findings.first().is_some_and(|first| first.tag != Tag::Deposits), view.worst)
    };
    // The first of those that are equally bad.
    let worst = found.iter().rev().max_by_key(|(view, _)| weight(view));
    match worst {
        None => line.because.clone(),
        Some((view, clause)) => {
            let more = match found.len() {
                1 => String::new(),
                all => format!("; {} worn besides", counted(all - 1, "part is", "parts are")),
            };
            format!("{}: {clause}{more}.", view.label)
        }
    }
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
