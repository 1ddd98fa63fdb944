//! A shop with some engines: one is found by what was typed into it, and the engine that comes back is known by its
//! number, with what it was left with.

use serde_json::{Value, json};
use wearbook_app::Wearbook;

use crate::crank::enter_measured;
use crate::failure::{Failure, Outcome, ensure};
use crate::stage::{Stage, on_both};
use crate::worn_engine::act;

on_both!(enter, journey);

/// Enough jobs to be searched; in one of them the crank was ground, shells were ordered and the job was closed.
fn enter(book: &Wearbook) -> Outcome {
    enter_measured(book)?;
    let list = act(book, "job_list", json!({}), None)?;
    let job = list.pointer("/open/lines/0/job").cloned().unwrap_or_default();
    let view = act(book, "job_open", json!({ "job": job }), None)?;
    let lists = view.pointer("/assessment/lists").and_then(Value::as_array).cloned().unwrap_or_default();
    let order = lists.iter().find(|list| list.get("kind") == Some(&json!("order")));
    let item = order.and_then(|list| list.pointer("/items/0/asked")).cloned();
    let item = item.ok_or(Failure("Nothing is to order.".into()))?;
    let tick = json!({ "done": 1, "date": "2026-03-05", "part_number": "K 4101", "note": "" });
    let changes = json!([
        { "do": "fill", "field": "customer", "text": "Ö. Åland" },
        { "do": "fill", "field": "machine", "text": "Mill 3" },
        { "do": "fill", "field": "engine-number", "text": "No. 40 117/b" },
        { "do": "tick", "item": item, "tick": tick },
        { "do": "close", "closed": true },
    ]);
    act(book, "edits_append", json!({ "job": job, "changes": changes }), None)?;
    for (customer, machine) in [
        ("A. Harrow", "Dredger winch"),
        ("B. Fenn", "Saw bench"),
        ("C. Reed", "Hay press"),
        ("D. Marsh", "Ferry, port side"),
        ("E. Weir", "Ferry, starboard"),
        ("F. Sluice", "Pump house"),
    ] {
        let job = act(book, "job_create", json!({}), None)?.get("job").cloned().unwrap_or_default();
        let changes = json!([
            { "do": "fill", "field": "customer", "text": customer },
            { "do": "fill", "field": "machine", "text": machine },
        ]);
        act(book, "edits_append", json!({ "job": job, "changes": changes }), None)?;
    }
    Ok(())
}

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.go("#/jobs", "Jobs").await?;
    page.fill("Find a job", "ferry starb").await?;
    page.read("1 of 7").await?;
    page.see("link", "E. Weir · Ferry, starboard…").await?;
    ensure(!page.has("link", "D. Marsh · Ferry, port side…").await?, "The other side of the ferry is shown too.")?;
    page.fill("Find a job", "aland").await?;
    page.see("link", "Ö. Åland · Mill 3…").await?;
    page.fill("Find a job", "lathe").await?;
    page.read("0 of 7").await?;

    page.press("button", "New job").await?;
    page.see("heading", "Take in, step 1 of 3").await?;
    page.fill("Customer", "Ö. Åland").await?;
    page.unfold("Engine number, hours, remarks…").await?;
    page.fill("Engine number", "no 40117 B").await?;
    page.press("link", "Go on to the engine").await?;
    page.see("heading", "This engine was here before").await?;
    page.press("button", "As it was left").await?;
    page.unfold("Fitted then").await?;
    page.read("No. K 4101").await?;
    page.press("button", "Note it in the remarks").await?;
    page.read("Stands in the remarks.").await?;
    page.press("button", "Take this layout").await?;
    page.see("button", "Take as found").await?;
    page.press("button", "Take as found").await?;
    page.saved().await?;
    page.sheet("Sizes").await?;
    page.unfold_all().await?;
    page.read("0.010 in undersize").await
}
