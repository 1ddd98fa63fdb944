//! How many taps and scrolls the usual things take on a small phone. What they may take at most is kept here;
//! `scripts/bench tap-counts` counts a whole V8 besides, on this page and on that of an earlier commit.

use std::time::Duration;

use serde_json::{Value, json};
use wearbook_app::Wearbook;

use crate::crank::{enter_all, enter_measured};
use crate::failure::{Outcome, ensure, fail};
use crate::page::Page;
use crate::stage::{Look, Place, Stage, play_over};
use crate::worn_engine::act;

#[test]
fn of_a_part_a_mark_and_a_decision() -> Outcome {
    play_over(Place::Phone, Look::Light, enter_all, async |stage: &mut Stage| {
        kept(&parts_and_marks(&stage.page).await?)
    })
}

#[test]
fn of_a_reading_and_a_tick() -> Outcome {
    play_over(Place::Phone, Look::Light, enter_measured, async |stage: &mut Stage| {
        kept(&reading_and_tick(&stage.page).await?)
    })
}

#[test]
#[ignore = "a count: scripts/bench tap-counts"]
fn of_everything() -> Outcome {
    play_over(Place::Phone, Look::Light, enter_all, async |stage: &mut Stage| {
        parts_and_marks(&stage.page).await.map(|counts| counts.iter().for_each(tell))
    })?;
    play_over(Place::Phone, Look::Light, enter_measured, async |stage: &mut Stage| {
        reading_and_tick(&stage.page).await.map(|counts| counts.iter().for_each(tell))
    })?;
    for laid_out in [false, true] {
        play_over(Place::Phone, Look::Light, begin, async move |stage: &mut Stage| {
            whole_v8(&stage.page, laid_out).await.map(|counts| counts.iter().for_each(tell))
        })?;
    }
    Ok(())
}

/// A job of which nothing is known.
fn begin(book: &Wearbook) -> Outcome {
    let job = act(book, "job_create", json!({}), None)?.get("job").cloned().unwrap_or_default();
    let settings = json!({ "last_screen": format!("#/job/{}/intake", job.as_str().unwrap_or_default()) });
    act(book, "settings_set", json!({ "settings": settings }), None)?;
    Ok(())
}

/// What something took.
struct Count {
    what: &'static str,
    taps: u64,
    scrolls: u64,
    /// The most that it may take, of both.
    most: (u64, u64),
}

fn tell(Count { what, taps, scrolls, .. }: &Count) {
    println!("{what}: {taps} taps, {scrolls} scrolls");
}

fn kept(counts: &[Count]) -> Outcome {
    counts.iter().for_each(tell);
    let more: Vec<&str> = counts
        .iter()
        .filter(|Count { taps, scrolls, most, .. }| *taps > most.0 || *scrolls > most.1)
        .map(|Count { what, .. }| *what)
        .collect();
    ensure(more.is_empty(), format!("More taps or scrolls than before: {}.", more.join(", ")))
}

async fn parts_and_marks(page: &Page) -> Outcome<Vec<Count>> {
    let job = job_of(page).await?;
    let mut hand = Hand::new(page);

    page.go(&format!("{job}/part/main-shell.2.upper"), "Main 2, upper shell").await?;
    hand.tap("button", "Scoring").await?;
    hand.tap("button", "Grade 3: …").await?;
    hand.tap("button", "Front edge, crown").await?;
    hand.tap("link", "Next: …").await?;
    let shell = hand.count("A shell: tag, grade, field, on", (4, 0));

    page.go(&format!("{job}/part/rod-shell.2.upper"), "Rod 2, upper shell").await?;
    hand.clean_and_on().await?;
    let clean = hand.count("A clean part, and on", (1, 0));

    page.go(&format!("{job}/marks"), "Marks").await?;
    hand.mark(1).await?;
    let first = hand.count("The first mark", (4, 1));
    hand.mark(1).await?;
    let mark = hand.count("A mark like the one before", (1, 0));

    page.go(&format!("{job}/part/tappet.2.intake.1"), "Tappet 2, intake").await?;
    hand.tap("button", "What to do…").await?;
    hand.tap("radio", "Replace").await?;
    page.fill("Reason", "Too far gone to dress.").await?;
    hand.tap("button", "Save this decision").await?;
    let decision = hand.count("A decision of one’s own, but for its reason", (3, 2));
    Ok(vec![shell, clean, first, mark, decision])
}

async fn reading_and_tick(page: &Page) -> Outcome<Vec<Count>> {
    let job = job_of(page).await?;
    let mut hand = Hand::new(page);
    page.go(&format!("{job}/measure/main-journal.1"), "Main 1, journal…").await?;
    hand.tap("button", "Front, A …").await?;
    for key in ["2", "Point", "9", "9", "9", "3", "Next"] {
        hand.tap("button", key).await?;
    }
    let reading = hand.count("A reading of five digits, at a place of one’s own", (8, 0));

    page.go(&format!("{job}/lists/order"), "To order").await?;
    let step = "document.querySelector('.step, .item-tick').getAttribute('aria-label')";
    let name = page.client.execute(&format!("return {step}"), vec![]).await?;
    hand.tap("button", name.as_str().unwrap_or_default()).await?;
    let tick = hand.count("A line ticked", (1, 0));
    Ok(vec![reading, tick])
}

/// A V8 without any damage, from a new job to the report: part by part, or what lies beside its like at once.
async fn whole_v8(page: &Page, laid_out: bool) -> Outcome<Vec<Count>> {
    let mut hand = Hand::new(page);
    page.see("heading", "Take in…").await?;
    for (field, text) in [("Customer", "A. Harrow"), ("Machine", "Dredger winch")] {
        hand.tap("textbox", field).await?;
        page.fill(field, text).await?;
    }
    if hand.can("link", "Go on to the engine").await? {
        hand.tap("link", "Go on to the engine").await?;
        hand.tap("button", "V8").await?;
        hand.tap("button", "Save and go on").await?;
        hand.tap("link", "Go on to the …").await?;
    } else {
        hand.tap("radio", "V").await?;
        hand.tap("button", "Save the arrangement").await?;
        hand.tap("link", "Go on to the …").await?;
    }
    let taken_in = hand.count("A V8 taken in", NO_LIMIT);

    let job = job_of(page).await?;
    page.go(&format!("{job}/marks"), "Marks").await?;
    for n in (1..=8).flat_map(|n| [n, n]).chain(1..=5) {
        hand.mark(n).await?;
    }
    let marks = hand.count("Its 21 marks", NO_LIMIT);

    hand.tap("link", "Plan").await?;
    page.see("heading", "Plan").await?;
    if laid_out && hand.can("button", "Several clean at once").await? {
        hand.tap("button", "Several clean at once").await?;
        hand.all_at_once().await?;
    }
    hand.tap("link", "Next…").await?;
    while hand.clean_and_on().await? {}
    let parts = hand.count("Every part clean", NO_LIMIT);

    hand.tap("button", "Screens").await?;
    hand.tap("link", "Hand over").await?;
    hand.tap("button", "Save the report (PDF)").await?;
    let report = hand.count("Its report", NO_LIMIT);
    let all = [taken_in, marks, parts, report];
    let sum = |of: fn(&Count) -> u64| all.iter().map(of).sum();
    let whole = Count {
        what: "A V8 from nothing to its report",
        taps: sum(|count| count.taps),
        scrolls: sum(|count| count.scrolls),
        most: NO_LIMIT,
    };
    Ok(all.into_iter().chain([whole]).collect())
}

/// Only counted.
const NO_LIMIT: (u64, u64) = (u64::MAX, u64::MAX);

async fn job_of(page: &Page) -> Outcome<String> {
    page.until(async || {
        let address = page.address().await?;
        let job: Vec<&str> = address.split('/').take(3).collect();
        if job.len() < 3 { fail("No job is open.") } else { Ok(job.join("/")) }
    })
    .await
}

/// A thumb that counts.
struct Hand<'a> {
    page: &'a Page,
    taps: u64,
    scrolls: u64,
}

impl<'a> Hand<'a> {
    fn new(page: &'a Page) -> Self {
        Self { page, taps: 0, scrolls: 0 }
    }

    /// What was counted since the last time.
    fn count(&mut self, what: &'static str, most: (u64, u64)) -> Count {
        let count = Count { what, taps: self.taps, scrolls: self.scrolls, most };
        (self.taps, self.scrolls) = (0, 0);
        count
    }

    async fn tap(&mut self, role: &str, name: &str) -> Outcome {
        self.tap_in("", role, name).await
    }

    async fn tap_in(&mut self, group: &str, role: &str, name: &str) -> Outcome {
        let scrolls = self.page.until(async || match self.page.scrolls_to(group, role, name).await? {
            Some(scrolls) => Ok(scrolls),
            None => fail(format!("There is no {role} “{name}”.")),
        });
        self.scrolls += scrolls.await?;
        self.page.press_in(group, role, name).await?;
        self.taps += 1;
        Ok(())
    }

    /// Whether it is there now.
    async fn can(&self, role: &str, name: &str) -> Outcome<bool> {
        self.page.has(role, name).await
    }

    /// Says that the part is clean and goes on, unless it is the last.
    async fn clean_and_on(&mut self) -> Outcome<bool> {
        let heading = "return document.querySelector('h1').innerText";
        let before = self.page.client.execute(heading, vec![]).await?;
        // A second tap of a double tap is not taken.
        tokio::time::sleep(Duration::from_millis(550)).await;
        if self.can("button", "Clean, on to …").await? {
            self.tap("button", "Clean, on to …").await?;
        } else {
            self.tap("button", "Looked at and clean").await?;
            if !self.can("link", "Next: …").await? {
                return Ok(false);
            }
            self.tap("link", "Next: …").await?;
        }
        self.page
            .until(async || {
                let now = self.page.client.execute(heading, vec![]).await?;
                ensure(now != before, format!("The walk stays at {now}."))
            })
            .await?;
        Ok(true)
    }

    /// Every kind of which several lie beside each other.
    async fn all_at_once(&mut self) -> Outcome {
        let first = "const kind = document.querySelector('.at-once-kind button')
            return [kind?.getAttribute('aria-label'), parseInt(kind?.innerText)]";
        loop {
            let asked = self.page.client.execute(first, vec![]).await?;
            let kind = asked.get(0).and_then(Value::as_str);
            let parts = asked.get(1).and_then(Value::as_u64);
            let (Some(kind), Some(parts)) = (kind, parts) else { return Ok(()) };
            self.tap("button", kind).await?;
            self.tap("button", &format!("All {parts} clean")).await?;
            self.page
                .until(async || {
                    let now = self.page.client.execute(first, vec![]).await?;
                    ensure(now != asked, format!("“{kind}” stays."))
                })
                .await?;
        }
    }

    /// Notes the mark that is asked for: this number on the left, pointing to the front.
    async fn mark(&mut self, number: u8) -> Outcome {
        // What is missing still, and what is asked for: both have gone on once it is saved.
        let asked =
            "const missing = [...document.querySelectorAll('main a')].filter((a) => a.innerText.includes('not noted'))
            return [missing.length, ...[...document.querySelectorAll('main h2')].map((h2) => h2.innerText)]";
        let before = self.page.client.execute(asked, vec![]).await?;
        tokio::time::sleep(Duration::from_millis(450)).await;
        if !self.can("button", "Note …").await? {
            self.tap("button", &format!("Fill in {number}")).await?;
            self.tap_in("On the side", "radio", "Left").await?;
            self.tap_in("Arrow or tang points to the", "radio", "Front").await?;
        }
        let save = if self.can("button", "Note …").await? { "Note …" } else { "Save and go on" };
        self.tap("button", save).await?;
        self.page
            .until(async || {
                let now = self.page.client.execute(asked, vec![]).await?;
                let goes_on = (0..2).all(|at| now.get(at) != before.get(at));
                ensure(goes_on, format!("Mark {number} was not taken: {now} after {before}."))
            })
            .await
    }
}
