//! A measured crank from the lists to the bill, the customer's yes, the trip to the machine shop with its test, the
//! read-back and the order; then a later reading, and the closing sheet.

use crate::crank::{AS_MACHINED, enter_measured};
use crate::failure::Outcome;
use crate::first_job::holds;
use crate::page::Page;
use crate::stage::{Stage, on_both};

on_both!(enter_measured, journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Main 1, journal").await?;
    agree(page).await?;
    go_and_come_back(page).await?;
    order_and_read_again(page).await?;
    page.sheet("Hand over").await?;
    page.press("button", "Closing sheet (PDF)").await?;
    let closing = stage.saved_document("closing.pdf").await?;
    holds(stage, &closing, &["Machined: before, wanted, after", "2.9896", "Main bearing shells", "Kept as evidence"])
}

/// From the list to the bill, and the customer's yes to each of its jobs.
async fn agree(page: &Page) -> Outcome {
    page.sheet("Lists").await?;
    page.press("link", "For the machine shop…").await?;
    page.read("Grind all to 0.010").await?;
    page.read("Test for cracks").await?;
    page.sheet("Costs").await?;
    page.read("1 Crankshaft, rods and bearings").await?;
    page.press("link", "1 Crankshaft, rods and bearings…").await?;
    page.read("5 main journals: grind").await?;
    page.press("link", "All costs").await?;
    page.press("link", "To the proposal").await?;
    page.press("button", "Make a proposal").await?;
    page.read("Must be done.").await?;
    page.read("If it is left: A bearing that lets go under load takes the crankshaft and the block with it.").await?;
    page.press_in("The same answer for all still open", "button", "Yes").await?;
    page.press_in("How", "radio", "Name typed on the screen").await?;
    page.fill("Name", "A. Harrow").await?;
    page.press("button", "Save the answer").await?;
    page.read("What was shown and answered").await
}

/// The one trip: sent, tested, back, and every journal measured.
async fn go_and_come_back(page: &Page) -> Outcome {
    page.sheet("Lists").await?;
    page.press("link", "For the machine shop…").await?;
    page.see("heading", "For the machine shop").await?;
    page.unfold_all().await?;
    page.press("button", "Sent: Main journals").await?;
    page.read("Sent").await?;
    page.press("button", "Result of the test: Crankshaft").await?;
    page.press_in("Crankshaft", "radio", "Passed").await?;
    page.press("button", "Save the result").await?;
    page.read("Say how it was tested").await?;
    page.fill("How it was tested", "Magnetic particles").await?;
    page.press("button", "Save the result").await?;
    page.press("button", "Back and right: 1").await?;
    page.read("Passed: Crankshaft").await?;
    page.press("button", "Back: Main journals").await?;
    page.sheet("Sizes").await?;
    page.see("listitem", "held 5 × main bearing shells, pairs, 0.010 in undersize …").await?;
    page.press("link", "Measure as machined: Main 1, journal").await?;
    page.press("button", "Set up: …").await?;
    page.press_in("Instrument", "radio", "2 to 3 in micrometer").await?;
    page.see("button", "Set up: Diameter · as machined · 2 to 3 in micrometer").await?;
    page.press("button", "Set up: …").await?;
    let values = AS_MACHINED.iter().flatten().map(|value| format!("{value}\n"));
    page.type_out(&values.collect::<String>()).await?;
    page.see("heading", "Crankpin 1…").await?;
    page.saved().await
}

/// What is free is ordered; a reading that asks for another size leaves the order in sight.
async fn order_and_read_again(page: &Page) -> Outcome {
    page.sheet("Lists").await?;
    page.press("link", "To order…").await?;
    page.unfold("5 × Main bearing shells, pairs…").await?;
    page.press("button", "New or exchange, old parts: Main bearing shells, pairs").await?;
    page.press_in("The old parts go", "radio", "Kept as evidence").await?;
    page.press("button", "Save: New or exchange, old parts: Main bearing shells, pairs").await?;
    page.press("button", "Ordered: Main bearing shells, pairs").await?;
    page.press("button", "Came: Main bearing shells, pairs").await?;
    page.saved().await?;
    let here = page.address().await?;
    let job = here.trim_end_matches("/lists/order").to_owned();
    page.go(&format!("{job}/measure/main-journal.3/diameter"), "Main 3, journal").await?;
    page.press("button", "Rear, A 2.9972 in").await?;
    page.type_out("2.9880\n").await?;
    page.saved().await?;
    page.sheet("Lists").await?;
    page.press("link", "To order…").await?;
    page.read("Ordered, not wanted now: send it back, or keep it.").await?;
    page.press("button", "Undo").await?;
    page.saved().await
}
