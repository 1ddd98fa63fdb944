//! From findings to a chosen way, a signed approval and lists in hand; then a late find, a second version of the proposal,
//! and the end of the job.

use serde_json::json;

use crate::axe::{axe_core, violations};
use crate::failure::{Outcome, ensure};
use crate::first_job::holds;
use crate::page::Page;
use crate::stage::{Stage, on_both};
use crate::worn_engine;

on_both!(worn_engine::enter, journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Plan").await?;
    enter_the_shops_prices(page).await?;
    price_the_job(page).await?;
    choose_a_way(page).await?;
    work_the_order(stage).await?;
    agree_by_telephone(page).await?;
    see_what_is_held(page).await?;
    find_something_late(page).await?;
    agree_by_signature(page).await?;
    share_a_list(stage).await?;

    page.sheet("Hand over").await?;
    page.read("The customer has answered.").await?;
    page.press_in("How much of it", "radio", "Short").await?;
    page.press_in("Paper", "radio", "Letter").await?;
    page.press("button", "Save the report (PDF)").await?;
    let report = stage.saved_document("winch.pdf").await?;
    holds(stage, &report, &["Proposal 2", "A. Harrow, signed on the screen"])?;

    page.press("button", "Closing sheet (PDF)").await?;
    let closing = stage.saved_document("closing.pdf").await?;
    holds(stage, &closing, &["Part number", "MS-0250", "1 of 5", "Still open", "For the machine shop: Camshaft"])?;

    page.press("button", "Close the job").await?;
    page.read("This job is closed since").await?;
    page.saved().await?;
    stage.kill_and_restart().await?;
    let page = &stage.page;
    page.read("This job is closed since").await?;
    ensure(is_chosen(page, "Paper", "Letter").await?, "The size of paper was forgotten.")?;
    let here = page.address().await?;
    page.go("#/jobs", "Jobs").await?;
    page.read("No engine is on the bench.").await?;
    page.press("button", "Finished: 1 job").await?;
    page.read("A. Harrow · Dredger winch").await?;
    let job = here.trim_end_matches("/hand-over");
    page.go(&format!("{job}/part/rod.3"), "Rod 3").await?;
    page.press("button", "Looked at and clean").await?;
    page.read("This job is closed: open it again, under “Hand over”, before anything is changed.").await?;
    page.press("link", "Open it again to change anything").await?;
    page.press("button", "Open the job again").await?;
    page.see("button", "Close the job").await
}

async fn enter_the_shops_prices(page: &Page) -> Outcome {
    page.sheet("Costs").await?;
    page.press("link", "Enter the shop’s prices").await?;
    page.see("heading", "Prices").await?;
    page.fill("Currency", "EUR").await?;
    page.fill("An hour of the shop’s time, EUR", "60").await?;
    page.fill("Tax, per cent", "20").await?;
    page.press("button", "Save currency, hour and tax").await?;
    page.read("An hour of the shop’s time: 60.00").await?;
    page.select("Part", "Main bearing shell").await?;
    page.select("Work", "Replace").await?;
    page.fill("Part, EUR", "21.80").await?;
    page.fill("Own time, minutes", "12").await?;
    page.press("button", "Add to the list").await?;
    page.see("heading", "Main bearing shell: replace").await?;
    page.press("link", "Back to the job").await?;
    page.see("heading", "Costs").await
}

async fn price_the_job(page: &Page) -> Outcome {
    page.press("button", "Take the shop’s prices").await?;
    // The links stand elsewhere once the prices are in.
    page.read("at least 169.00").await?;
    page.press("link", "1 Crankshaft, rods and bearings…").await?;
    page.see("link", "All costs").await?;
    // The part, and twelve minutes at 60.00 an hour: 33.80 a pair, and the engine has five.
    page.read("169.00").await?;
    page.press("link", "All costs").await?;
    page.press("link", "2 Bores, pistons and rings…").await?;
    page.press("button", "Enter the price: 4 piston ring sets: replace").await?;
    page.fill("Part, EUR", "41.505").await?;
    page.press("button", "Save the price: 4 piston ring sets: replace").await?;
    page.read("“41.505” has too many decimals: EUR has 2.").await?;
    page.fill("Part, EUR", "41.50").await?;
    page.press("checkbox", "Keep it for the shop too").await?;
    page.press("button", "Save the price: 4 piston ring sets: replace").await?;
    page.read("166.00").await?;
    page.go("#/prices", "Prices").await?;
    page.see("heading", "Piston ring set: replace").await?;
    page.press("link", "Back to the job").await?;
    page.see("heading", "2 Bores, pistons and rings").await
}

/// A late look shows a worn camshaft: it can be renewed or welded up.
async fn choose_a_way(page: &Page) -> Outcome {
    let here = page.address().await?;
    let job = here.split("/costs").next().unwrap_or_default();
    page.go(&format!("{job}/part/lobe.1.intake.1"), "Lobe 1, intake").await?;
    page.press("button", "Worn lobe").await?;
    page.press("button", "Grade 3: …").await?;
    page.saved().await?;
    page.sheet("Costs").await?;
    page.press("link", "The worn camshaft…").await?;
    page.read("A new camshaft").await?;
    page.press("button", "Choose the way: The worn camshaft").await?;
    page.press_in("Way", "radio", "Weld up and regrind the old one").await?;
    page.press("button", "Save this choice").await?;
    page.read("The reason is empty").await?;
    page.fill("Reason", "No new one can be had.").await?;
    page.press("button", "Save this choice").await?;
    page.read("You chose this way. Reason: No new one can be had.").await?;
    page.press("link", "All costs").await?;
    page.read("More than one way: weld up and regrind").await?;
    page.sheet("Lists").await?;
    page.press("link", "For the machine shop…").await?;
    page.see("heading", "For the machine shop").await?;
    page.unfold_all().await?;
    page.see("button", "Sent: Camshaft").await?;
    page.read("Weld up and regrind").await
}

async fn work_the_order(stage: &Stage) -> Outcome {
    let page = &stage.page;
    page.sheet("Lists").await?;
    page.press("link", "To order…").await?;
    page.see("heading", "To order").await?;
    page.unfold_all().await?;
    page.press("button", "Ordered: Core plugs").await?;
    page.read("0 of").await?;
    page.press("button", "Came: Core plugs").await?;
    page.read("1 of").await?;
    page.press("button", "Part of it, number, supplier: Main bearing shells, pairs").await?;
    page.press("button", "One more: How many of 5: Came").await?;
    page.fill("Part number", "MS-0250").await?;
    page.fill("Supplier and note", "Telephoned").await?;
    page.press("button", "Save: Main bearing shells, pairs").await?;
    page.read("Came 1 of 5").await?;
    page.press("button", "Add an item of your own").await?;
    page.fill("What", "Gasket set").await?;
    page.press("button", "Add to the list").await?;
    page.see("button", "Ordered: Gasket set").await?;
    page.press("button", "Save this list (PDF)").await?;
    let order = stage.saved_document("order.pdf").await?;
    holds(stage, &order, &["To order", "Gasket set", "MS-0250", "Telephoned"])?;
    // What put it there is one tap away.
    page.press("link", "Main 3, lower shell").await?;
    page.see("heading", "Main 3, lower shell").await
}

async fn agree_by_telephone(page: &Page) -> Outcome {
    page.sheet("Costs").await?;
    page.press("link", "To the proposal").await?;
    page.press("button", "Make a proposal").await?;
    page.see("heading", "Proposal 1").await?;
    page.press_in("1 Crankshaft, rods and bearings", "radio", "Yes").await?;
    page.press_in("2 Bores, pistons and rings", "radio", "Later").await?;
    page.press_in("The same answer for all still open", "button", "No").await?;
    page.press("button", "Save the answer").await?;
    page.read("Say how it was answered").await?;
    page.press_in("How", "radio", "By telephone").await?;
    page.press("button", "Save the answer").await?;
    page.read("The number is missing").await?;
    page.fill("Number or address", "0100 200").await?;
    page.press("button", "Save the answer").await?;
    page.read("Say who answered").await?;
    page.fill("Name", "A. Harrow").await?;
    page.press("button", "Save the answer").await?;
    page.read("What was shown and answered").await?;
    page.read("A. Harrow, by telephone, 0100 200").await?;
    page.read("Nothing has changed since.").await
}

/// Nothing is ordered against a no.
async fn see_what_is_held(page: &Page) -> Outcome {
    page.sheet("Lists").await?;
    page.press("link", "To order…").await?;
    page.see("heading", "To order").await?;
    page.unfold_all().await?;
    page.read("The customer said no to job").await?;
    page.read("The customer put off job 2, Bores, pistons and rings.").await
}

async fn find_something_late(page: &Page) -> Outcome {
    let here = page.address().await?;
    let job = here.trim_end_matches("/lists/order").to_owned();
    page.go(&format!("{job}/part/oil-pump"), "Oil pump").await?;
    page.press("button", "Scoring").await?;
    page.press("button", "Grade 4: …").await?;
    page.see("button", "Scoring, grade 4").await?;
    page.saved().await?;
    page.sheet("Hand over").await?;
    page.read("The customer has answered; some of it has changed since.").await?;
    page.press("link", "To the approval").await?;
    page.see("heading", "Proposal 1").await?;
    page.read("Changed since, and not agreed yet").await?;
    page.read("Oil pump: replace").await?;
    page.read("Added since: Scoring, grade 4").await
}

async fn agree_by_signature(page: &Page) -> Outcome {
    page.press("button", "Make a new version").await?;
    page.see("heading", "Proposal 2").await?;
    page.press_in("The same answer for all still open", "button", "Yes").await?;
    page.press_in("How", "radio", "Signed on the screen").await?;
    page.fill("Name", "A. Harrow").await?;
    page.press("button", "Save the answer").await?;
    page.read("Sign in the field, or choose another way.").await?;
    is_accessible(page, "the customer’s view").await?;
    page.draw_over("img", "Field for the signature, empty").await?;
    page.see("img", "Signature: 1 stroke").await?;
    page.press("button", "Save the answer").await?;
    page.see("img", "Signature").await?;
    page.read("A. Harrow, signed on the screen").await?;
    is_accessible(page, "the answer").await
}

/// One list alone leaves as text and as a table.
async fn share_a_list(stage: &Stage) -> Outcome {
    let page = &stage.page;
    page.sheet("Lists").await?;
    page.press("link", "To order…").await?;
    page.see("heading", "To order").await?;
    page.unfold("This list on paper").await?;
    page.press("button", "Copy as text").await?;
    page.see("textbox", "The list as text").await?;
    page.press("button", "Save as a table (CSV)").await?;
    let table = String::from_utf8(stage.saved_document("order.csv").await?)?;
    ensure(table.contains("MS-0250") && table.contains("Oil pump"), format!("The table lacks something:\n{table}"))
}

async fn is_accessible(page: &Page, screen: &str) -> Outcome {
    page.client.execute(&axe_core()?, vec![]).await?;
    let found = violations(page, screen).await?;
    ensure(found.is_empty(), found.join("\n"))
}

async fn is_chosen(page: &Page, group: &str, name: &str) -> Outcome<bool> {
    let script = "return [...document.querySelectorAll('fieldset')]
        .filter((group) => group.querySelector('legend').innerText === arguments[0])
        .flatMap((group) => [...group.querySelectorAll('label')])
        .some((label) => label.innerText.trim() === arguments[1] && label.control.checked)";
    Ok(page.client.execute(script, vec![json!(group), json!(name)]).await?.as_bool() == Some(true))
}
