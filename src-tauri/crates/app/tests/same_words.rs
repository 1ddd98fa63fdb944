//! Screen and paper say the same: whatever words the page is sent of a clearance, a decision, a figure, a list or a
//! cause stand together in the papers, too.

#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing, reason = "a test may stop at once")]

#[path = "../../report/tests/jobs/mod.rs"]
mod jobs;

use jobs::{demo, signed, vee8, written};
use serde_json::{Value, json};
use wearbook_app::{Answer, Wearbook};
use wearbook_core::assess::Assessment;
use wearbook_core::document::{Desk, Extent, closing_sheet, condition_report, evidence_sheet, size_sheet, work_list};
use wearbook_core::job::{Job, ListKind};

/// What the page is sent: its tables, and what follows from a job.
#[derive(Clone)]
struct Sent {
    catalogue: Value,
    assessment: Value,
}

impl Sent {
    fn of(assessment: &Assessment) -> Self {
        let dir = tempfile::tempdir().unwrap();
        let book = Wearbook::open(dir.path()).unwrap();
        let Answer::Json(catalogue) = book.act("catalogue", json!({}), None).unwrap() else { panic!("no tables") };
        Self { catalogue: serde_json::from_str(&catalogue).unwrap(), assessment: json!(assessment) }
    }

    /// What a table of the catalogue says of an id; nothing where there is none.
    #[track_caller]
    fn words(&self, table: &str, id: &Value, column: &str) -> String {
        if id.is_null() {
            return String::new();
        }
        let entry = all(&self.catalogue[table]).find(|entry| entry["id"] == *id);
        entry.unwrap_or_else(|| panic!("{table} has no {id}"))[column].as_str().unwrap().to_owned()
    }

    /// The words of every thing that the page shows and a paper tells, each thing with the words that stand together.
    fn things(&self) -> Vec<Vec<String>> {
        let assessment = &self.assessment;
        let sizing = &assessment["sizing"];
        // Of sizes nothing is told before something was measured.
        let is_measured = all(&assessment["parts"]).any(|part| part["readings"] != json!([]));
        let sized = |table: &str| all(&sizing[table]).filter(move |_| is_measured);
        let clearances = sized("clearances").map(|line| {
            let verdict = self.words("conformities", &line["verdict"], "of_what_comes");
            [columns(line, &["label", "worst_case_shown", "likely_shown", "limits", "because"]), vec![verdict]].concat()
        });
        let groups = sized("groups").map(|plan| {
            let group = self.words("size_groups", &plan["group"], "label");
            [vec![group], columns(plan, &["found_shown", "words", "finished_shown", "because"])].concat()
        });
        let orders = sized("orders").map(|line| {
            let state = self.words("order_states", &line["state"], "words");
            [columns(line, &["what", "size_shown"]), vec![state]].concat()
        });
        let figures = all(&assessment["parts"]).flat_map(|part| {
            all(&part["figures"]).map(|figure| {
                let is_open = figure["verdict"].is_null() && figure["limits"] != "";
                let open = text(&self.catalogue["not_judged"]);
                let verdict = if is_open { open } else { self.words("conformities", &figure["verdict"], "words") };
                [vec![text(&part["label"]), verdict], columns(figure, &["name", "shown", "limits"])].concat()
            })
        });
        let proposed = |decision: &&Value| decision["looked_at"] == true || decision["outcome"] != "cant-say";
        // Why a part is treated so stands on the screen; papers tell what was found of it and what is done.
        let is_told = |part: &&Value| part["seen"] == "worn" && proposed(&&part["decision"]);
        let decisions = all(&assessment["parts"]).filter(is_told).map(|part| {
            let found = columns(&part["findings"][0], &["name"]);
            [found, vec![self.words("outcomes", &part["decision"]["outcome"], "words")]].concat()
        });
        let items = all(&assessment["lists"]).flat_map(|list| {
            // What came back and is right stands on the closing sheet.
            let open = all(&list["items"]).filter(|item| item["is_right"] == false);
            open.map(|item| {
                let waits = text(&item["waits_for"][0]);
                // What is put right is a sentence, and not counted.
                let quantity = if list["kind"] == "put-right" { String::new() } else { item["quantity"].to_string() };
                [columns(item, &["what", "detail", "because"]), vec![waits, quantity]].concat()
            })
        });
        let causes = || all(&assessment["causes"]["causes"]).filter(|cause| cause["told"] == true);
        let names = causes().map(|cause| columns(cause, &["name", "likelihood", "percent"]));
        // On paper three of those that are named are told at length, and three that are possible.
        let at_length = |named: bool| causes().filter(move |cause| cause["named"] == named).take(3);
        let plainly = at_length(true).chain(at_length(false)).map(|cause| columns(cause, &["plainly"]));
        let strong = |evidence: &&Value| evidence["strength"] != "slight";
        let evidence = causes().flat_map(|cause| {
            all(&cause["evidence_for"]).chain(all(&cause["evidence_against"])).filter(strong).map(|evidence| {
                let strength = self.words("strengths", &evidence["strength"], "words");
                [columns(evidence, &["words"]), vec![strength]].concat()
            })
        });
        let things = clearances.chain(groups).chain(orders).chain(figures).chain(decisions).chain(items);
        things.chain(names).chain(plainly).chain(evidence).collect()
    }

    /// Those whose words stand on no line of the papers.
    fn nowhere_in(&self, papers: &str) -> Vec<Vec<String>> {
        let lines: Vec<String> = papers.lines().map(str::to_lowercase).collect();
        let stands = |thing: &Vec<String>| {
            lines.iter().any(|line| thing.iter().all(|words| line.contains(&words.to_lowercase())))
        };
        self.things().into_iter().filter(|thing| !stands(thing)).collect()
    }
}

fn all(list: &Value) -> impl Iterator<Item = &Value> {
    list.as_array().into_iter().flatten()
}

fn columns(thing: &Value, names: &[&str]) -> Vec<String> {
    names.iter().map(|name| text(&thing[*name])).collect()
}

fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

fn papers(desk: &Desk<'_>) -> String {
    let mut papers = vec![condition_report(desk, Extent::Full)];
    papers.extend([size_sheet(desk), closing_sheet(desk), evidence_sheet(desk)]);
    papers.extend(ListKind::ALL.map(|kind| work_list(desk, kind)));
    papers.iter().map(wearbook_report::text).collect()
}

fn sent_and_papers(job: &Job) -> (Sent, String) {
    written(job, |desk| (Sent::of(desk.assessment), papers(desk)))
}

#[test]
fn what_the_screen_says_stands_on_paper() {
    for job in [signed(demo(false).0), vee8(0, &[]), Job::default()] {
        let (sent, papers) = sent_and_papers(&job);
        assert_eq!(sent.nowhere_in(&papers), Vec::<Vec<String>>::new());
    }
}

/// The comparison is worth something only if it sees another word in any of the tables.
#[test]
fn another_word_on_the_screen_is_seen() {
    let (sent, papers) = sent_and_papers(&demo(false).0);
    for (table, column) in [
        ("conformities", "words"),
        ("conformities", "of_what_comes"),
        ("size_groups", "label"),
        ("order_states", "words"),
        ("outcomes", "words"),
        ("strengths", "words"),
    ] {
        let mut other = sent.clone();
        for entry in other.catalogue[table].as_array_mut().unwrap() {
            entry[column] = json!("said in another way");
        }
        assert!(!other.nowhere_in(&papers).is_empty(), "{table}: {column}");
    }
}
