//! Whatever is half entered is back in its place after the page was ended, and said to be so; it can be dropped, and is gone
//! once it is saved.

use std::time::Duration;

use serde_json::json;
use wearbook_app::Wearbook;

use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Stage, on_both};
use crate::worn_engine::{self, act};

on_both!(prepare, journey);

/// What stands over a form of which something was found.
const FOUND: &str = "Entered last time, not saved yet.";

/// A form: its screen and heading, what is unfolded one after the other to come to it, and a text for one of its fields.
struct Form(&'static str, &'static str, &'static [&'static str], &'static str, &'static str);

/// The forms of a job; what follows the job in the address.
const OF_A_JOB: &[Form] = &[
    Form("intake/past", "Take in, step 3 of 3", &["Came with it…"], "What", "Starter mo"),
    Form("intake/past", "Take in, step 3 of 3", &["Before anything is opened…"], "Taking apart and looking", "41"),
    Form("marks/rod.2", "Marks", &[], "What stands there", "2X"),
    Form("part/main-shell.1.lower", "Main 1, lower shell", &["What to do…"], "Reason", "One is on the"),
    Form("measure/bore.2", "Bore 2", &["Set up: …"], "The gauge is set to", "3.5"),
    Form("measure/main-journal.2/diameter", "Main 2, journal", &[], "Main 2, journal, front, A, in…", "2.24"),
    Form("sheet/head", "Manual and unit", &[], "Name", "Winch, sh"),
    Form("sheet/new.piston.diameter", "New line", &[], "Smallest new…", "3.49"),
    Form("sheet/new.bore.diameter", "New line", &["In proportion…"], "So much…", "0.0004"),
    Form("sheet/mains", "Undersizes of the mains", &[], "Undersize…", "0.0"),
    Form("sheet/grades-mains", "Grades of standard main shells", &[], "Page", "p. 1"),
    Form("sheet/finish", "Finish of journals and bores", &[], "Angle of the hone’s marks", "4"),
    Form("sheet/shelf", "Shelf of sheets", &[], "Under the name", "Copy of"),
    Form(
        "lists/order",
        "To order",
        &["5 × Main bearing shells, pairs…", "Part of it, number, supplier: Main bearing shells, pairs"],
        "Part number",
        "MS-02",
    ),
    Form("lists/order", "To order", &["Add an item of your own"], "What", "Gasket s"),
    Form("costs/bearings", "1 Crankshaft…", &["Change the price: 5 main…"], "Own time, minutes", "17"),
    Form("costs/other-engines", "Another engine", &["Enter what another…"], "Which engine", "Long mot"),
    Form("costs/estimate", "First estimate", &["Add a line…"], "What it was for", "Frei"),
    Form("costs/prices", "Prices of this job", &["Change currency…"], "Tax, per cent", "7"),
];

/// The forms of the shop.
const OF_THE_SHOP: &[Form] = &[
    Form("#/prices", "Prices", &["Change currency…"], "Tax, per cent", "8"),
    Form("#/prices", "Prices", &["Change the price: Main bearing shell…"], "Own time, minutes", "14"),
    Form("#/prices", "Prices", &["Enter the price: Freight"], "Amount, EUR", "9"),
    Form("#/prices", "Prices", &[], "Taking apart and looking", "41"),
    Form("#/prices", "Prices", &[], "A proposal holds for how many days", "3"),
    Form("#/label", "Find by its label", &[], "Code on the label", "AB12 CD"),
];

/// An engine of which everything has a form, with prices.
fn prepare(book: &Wearbook) -> Outcome {
    worn_engine::enter(book)?;
    let jobs = act(book, "job_list", json!({ "find": "", "finished": false, "most": 1 }), None)?;
    let job = jobs.pointer("/open/lines/0/job").cloned().unwrap_or_default();
    let prices = json!({ "currency": "EUR", "hour": 6000, "tax": { "rate": 2000, "rounding": "total" }, "prices": [
        { "of": { "kind": "main-shell", "work": "replace" }, "part": 2180, "machining": 0, "minutes": 12 },
    ] });
    act(book, "prices_keep", json!({ "prices": prices }), None)?;
    let take = json!([{ "do": "use-prices", "prices": prices }]);
    act(book, "edits_append", json!({ "job": job, "changes": take }), None)?;
    Ok(())
}

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    let job = page.address().await?.trim_end_matches("/plan").to_owned();
    for form in OF_A_JOB {
        is_back_and_can_be_dropped(page, &format!("{job}/{}", form.0), form).await?;
    }
    for form in OF_THE_SHOP {
        is_back_and_can_be_dropped(page, form.0, form).await?;
    }
    keeps_fields_tapped_before_a_grade(page, &job).await?;
    keeps_what_a_signature_stands_beside(page, &job).await?;
    goes_back_to_where_it_stood(page, &job).await?;
    is_gone_once_saved(page, &job).await?;
    outlives_a_kill(stage, &job).await
}

async fn is_back_and_can_be_dropped(page: &Page, address: &str, form: &Form) -> Outcome {
    let Form(_, heading, folds, field, text) = *form;
    page.go(address, heading).await?;
    for fold in folds {
        page.unfold(fold).await?;
    }
    let before = page.value(field).await?;
    page.fill(field, text).await?;
    page.client.refresh().await?;
    page.see("heading", heading).await?;
    page.see("button", "Drop it").await?;
    page.read(FOUND).await?;
    // Nothing is unfolded by hand: it stands where it was.
    holds(page, address, field, text).await?;
    page.press("button", "Drop it").await?;
    // What was unfolded for it alone may be folded again.
    for fold in folds {
        page.unfold(fold).await?;
    }
    holds(page, address, field, &before).await?;
    ensure(!page.has("button", "Drop it").await?, format!("{address}: “{field}” was not dropped."))
}

async fn holds(page: &Page, address: &str, field: &str, wanted: &str) -> Outcome {
    page.until(async || {
        let value = page.value(field).await?;
        ensure(value == wanted, format!("{address}: “{field}” says “{value}”, and “{wanted}” was entered."))
    })
    .await
}

/// A tag that is open stays open, with the fields that wait for its grade.
async fn keeps_fields_tapped_before_a_grade(page: &Page, job: &str) -> Outcome {
    page.go(&format!("{job}/part/main-shell.4.upper"), "Main 4, upper shell").await?;
    page.press("button", "Scoring").await?;
    page.press("button", "Front edge, crown").await?;
    page.client.refresh().await?;
    page.read(FOUND).await?;
    let pressed = page.attribute("button", "Front edge, crown", "aria-pressed").await?;
    ensure(pressed.as_deref() == Some("true"), "The field that was tapped is not marked any more.")?;
    page.press("button", "Grade 2: …").await?;
    page.see("button", "Scoring, grade 2").await?;
    page.saved().await?;
    page.client.refresh().await?;
    page.see("button", "Scoring, grade 2").await?;
    ensure(!page.has("button", "Drop it").await?, "What was saved is still said not to be.")
}

/// The signature itself is asked for anew.
async fn keeps_what_a_signature_stands_beside(page: &Page, job: &str) -> Outcome {
    page.go(&format!("{job}/approval"), "Approval").await?;
    page.press("button", "Make a proposal").await?;
    page.see("heading", "Proposal 1").await?;
    page.press_in("The same answer for all still open", "button", "Yes").await?;
    page.press_in("How", "radio", "Signed on the screen").await?;
    page.fill("Name", "A. Har").await?;
    page.draw_over("img", "Field for the signature, empty").await?;
    page.see("img", "Signature: 1 stroke").await?;
    page.client.refresh().await?;
    page.see("img", "Field for the signature, empty").await?;
    holds(page, "The answer", "Name", "A. Har").await?;
    page.read("Everything is answered.").await?;
    page.press("button", "Drop it").await?;
    page.read("0 of 4 answered").await
}

/// The screen stands where it stood, to a few lines.
async fn goes_back_to_where_it_stood(page: &Page, job: &str) -> Outcome {
    page.go(&format!("{job}/plan"), "Plan").await?;
    let scroll = "document.querySelector('.screen-main').scrollTo(0, 600)";
    page.client.execute(scroll, vec![]).await?;
    // It must stand still to be kept.
    tokio::time::sleep(Duration::from_millis(400)).await;
    page.client.refresh().await?;
    page.until(async || {
        let script = "return document.querySelector('.screen-main')?.scrollTop";
        let top = page.client.execute(script, vec![]).await?;
        ensure(top.as_f64().is_some_and(|top| (top - 600.0).abs() < 60.0), format!("The plan stands at {top}."))
    })
    .await
}

async fn is_gone_once_saved(page: &Page, job: &str) -> Outcome {
    page.go(&format!("{job}/lists/order"), "To order").await?;
    page.unfold("Add an item of your own").await?;
    page.fill("What", "Gasket set").await?;
    page.client.refresh().await?;
    page.read(FOUND).await?;
    page.press("button", "Add to the list").await?;
    page.saved().await?;
    page.client.refresh().await?;
    page.see("heading", "To order").await?;
    page.see("button", "Add an item of your own").await?;
    ensure(!page.has("button", "Drop it").await?, "What was saved is still said not to be.")
}

/// The whole program may be killed, too; and what was entered in one job shows in no other.
async fn outlives_a_kill(stage: &mut Stage, job: &str) -> Outcome {
    let page = &stage.page;
    page.go(&format!("{job}/intake/past"), "Take in, step 3 of 3").await?;
    page.unfold("Came with it…").await?;
    page.fill("What", "Starter mo").await?;
    // What is typed in the very last moment may still be on its way.
    tokio::time::sleep(Duration::from_millis(500)).await;
    stage.kill_and_restart().await?;
    let page = &stage.page;
    page.see("heading", "Take in, step 3 of 3").await?;
    page.read(FOUND).await?;
    holds(page, "The take-in", "What", "Starter mo").await?;
    page.go("#/jobs", "Jobs").await?;
    page.press("button", "New job").await?;
    page.press("link", "3 Past, order").await?;
    page.unfold("Came with it…").await?;
    holds(page, "Another job", "What", "").await
}
