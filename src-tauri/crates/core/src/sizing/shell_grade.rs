//! Which grade of standard shells goes at each bearing, by the marks on block, rods and crankshaft, where the sheet has a
//! table of them.

use serde::Serialize;

use crate::engine::{At, Engine, Part};
use crate::job::Job;
use crate::sheet::Journals;

/// The bearings that take one grade.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS, schemars::JsonSchema))]
pub struct ShellsOfGrade {
    /// The grade, as the sheet names it.
    pub grade: String,
    /// The housings or rods in which they go, a pair in each.
    pub housings: Vec<Part>,
    /// The same in words: "Main 2", "Rod 3".
    pub labels: Vec<String>,
}

/// The grades of some bearings, and what keeps others from having one.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct ShellGrades {
    /// Those that are known, in the order of the bearings.
    pub(crate) known: Vec<ShellsOfGrade>,
    /// What is missing, each in a sentence.
    pub(crate) missing: Vec<String>,
}

/// The grades of the shells that run on some journals. Where the sheet has no table all is empty.
pub(crate) fn shell_grades(engine: &Engine, job: &Job, journals: Journals, on: &[Part]) -> ShellGrades {
    let mut all = ShellGrades::default();
    if !job.sheet.grades_shells_of(journals) {
        return all;
    }
    let mut unread: Vec<String> = Vec::new();
    let mut note_unread = |part: Part| {
        let label = engine.label(part);
        if !unread.contains(&label) {
            unread.push(label);
        }
    };
    for housing in engine.parts().iter().copied().filter(|part| part.kind == journals.housing()) {
        let Some(journal) = on.iter().copied().find(|journal| meets(engine, housing, *journal)) else { continue };
        let marks = (job.grade_marks.get(&housing), job.grade_marks.get(&journal));
        let (Some(own), Some(mate)) = marks else {
            [(housing, marks.0), (journal, marks.1)]
                .into_iter()
                .filter(|(_, mark)| mark.is_none())
                .for_each(|(part, _)| note_unread(part));
            continue;
        };
        let Some(row) = job.sheet.grade_for(journals, own, mate) else {
            let label = label(engine, housing);
            all.missing.push(format!("{label}: the sheet has no grade for marks {own} and {mate}: check all three."));
            continue;
        };
        match all.known.iter_mut().find(|known| known.grade == row.grade) {
            Some(known) => {
                known.housings.push(housing);
                known.labels.push(label(engine, housing));
            }
            None => all.known.push(ShellsOfGrade {
                grade: row.grade.clone(),
                housings: vec![housing],
                labels: vec![label(engine, housing)],
            }),
        }
    }
    if let Some(first) = unread.first() {
        all.missing.push(match unread.len() {
            1 => format!("The grade mark of {first} is not read yet."),
            n => format!("The grade marks of {first} and {} more are not read yet.", n - 1),
        });
    }
    all
}

/// Whether a housing closes round a journal.
fn meets(engine: &Engine, housing: Part, journal: Part) -> bool {
    match (housing.at, journal.at) {
        (At::Main(own), At::Main(other)) => own == other,
        (At::Cylinder(cylinder), At::Crankpin(pin)) => engine.arrangement().crankpin_of(cylinder) == pin,
        _ => false,
    }
}

/// "Main 2", "Rod 3".
fn label(engine: &Engine, housing: Part) -> String {
    match housing.at {
        At::Main(main) => format!("Main {main}"),
        _ => engine.label(housing),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Arrangement;
    use crate::job::testing::{arrange, job_of};
    use serde_json::{Value, json};

    fn read(part: &str, mark: &str) -> Value {
        json!({ "do": "read-mark", "part": part, "mark": mark })
    }

    fn row(housing: &str, journal: &str, grade: &str) -> Value {
        let grade = json!({ "journals": "mains", "housing": housing, "journal": journal, "grade": grade });
        json!({ "do": "state-grade", "grade": grade })
    }

    fn grades_of(changes: &[Value]) -> ShellGrades {
        let mut all = vec![arrange(&Arrangement::inline(2))];
        all.extend_from_slice(changes);
        let job = job_of(&all);
        let engine = Engine::new(Arrangement::inline(2)).unwrap();
        let mains: Vec<Part> = (1..=3).map(|n| format!("main-journal.{n}").parse().unwrap()).collect();
        shell_grades(&engine, &job, Journals::Mains, &mains)
    }

    #[test]
    fn without_a_table_shells_have_no_grade() {
        assert_eq!(grades_of(&[read("housing-bore.1", "A")]), ShellGrades::default());
    }

    #[test]
    fn each_bearing_takes_the_grade_of_its_two_marks() {
        let table = [row("A", "1", "3"), row("A", "2", "4"), row("B", "1", "4")];
        let mut changes = table.to_vec();
        for (n, (own, mate)) in [("A", "2"), ("A", "1"), ("b", "1 ")].into_iter().enumerate() {
            changes.push(read(&format!("housing-bore.{}", n + 1), own));
            changes.push(read(&format!("main-journal.{}", n + 1), mate));
        }
        let all = grades_of(&changes);
        let known: Vec<(&str, String)> =
            all.known.iter().map(|own| (own.grade.as_str(), own.labels.join(", "))).collect();
        assert_eq!(known, [("4", "Main 1, Main 3".into()), ("3", "Main 2".into())]);
        assert_eq!(all.missing, [""; 0]);
    }

    #[test]
    fn what_is_not_read_or_not_in_the_table_is_said() {
        let marks = [
            row("A", "1", "3"),
            read("housing-bore.1", "A"),
            read("housing-bore.2", "C"),
            read("main-journal.2", "1"),
            read("main-journal.3", "1"),
        ];
        let missing = [
            "Main 2: the sheet has no grade for marks C and 1: check all three.",
            "The grade marks of Main 1, journal and 1 more are not read yet.",
        ];
        assert_eq!(grades_of(&marks).missing, missing);
    }
}
