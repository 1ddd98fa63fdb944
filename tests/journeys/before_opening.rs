//! Before anything is opened: what came with the engine, the strip-down order and the customer's yes from afar; then the work is
//! refused, and the engine goes back.

use crate::failure::{Outcome, ensure};
use crate::first_job::{holds, take_in};
use crate::page::Page;
use crate::stage::{Stage, on_both};
use crate::worn_engine::picture;

on_both!(journey);

async fn journey(stage: &mut Stage) -> Outcome {
    take_in(&stage.page).await?;
    note_what_came_with_it(stage).await?;
    enter_the_shops_terms(&stage.page).await?;
    order_the_strip_down(stage).await?;
    agree_by_telephone(stage).await?;
    find_something(&stage.page).await?;
    refuse_the_work(stage).await?;
    give_it_back(stage).await
}

async fn note_what_came_with_it(stage: &Stage) -> Outcome {
    let page = &stage.page;
    page.sheet("Take in").await?;
    page.press("link", "3 Past, order").await?;
    page.press("button", "Came with it…").await?;
    page.press("button", "Note it").await?;
    page.read("Say what came with the engine").await?;
    page.fill("What", "Starter").await?;
    page.fill("Remark: state, damage, number", "Cracked flange").await?;
    page.press("button", "Note it").await?;
    page.see("heading", "Starter").await?;
    let photo = stage.folders.file("starter.jpg", &picture()?)?;
    page.choose_file("Choose a photo: Starter", &photo).await?;
    page.see("img", "Photo: Starter").await?;
    page.saved().await
}

async fn enter_the_shops_terms(page: &Page) -> Outcome {
    page.press("button", "Before anything is opened…").await?;
    page.read("This job has no prices yet").await?;
    page.press("link", "Enter the shop’s prices").await?;
    page.see("heading", "Prices").await?;
    page.fill("Currency", "EUR").await?;
    page.fill("An hour of the shop’s time, EUR", "60").await?;
    page.fill("Tax, per cent", "19").await?;
    page.press("button", "Save currency, hour and tax").await?;
    page.read("An hour of the shop’s time: 60.00").await?;
    page.fill("Taking apart and looking", "400").await?;
    page.fill("Returning in boxes, if refused", "30").await?;
    page.fill("Longest time until it is back, days", "400").await?;
    page.fill("Gaskets and seals that opening destroys", "Head gasket").await?;
    page.press("button", "Save the strip-down terms").await?;
    page.read("the longest time is from 1 to 365 days").await?;
    page.fill("Longest time until it is back, days", "14").await?;
    page.press("button", "Save the strip-down terms").await?;
    // Once it is kept, the amount stands as it was read.
    page.until(async || {
        let kept = page.value("Taking apart and looking").await?;
        ensure(kept == "400.00", format!("The terms are not kept: {kept}."))
    })
    .await?;
    page.press("link", "Back to the job").await?;
    page.see("heading", "Take in, step 3 of 3").await
}

async fn order_the_strip_down(stage: &Stage) -> Outcome {
    let page = &stage.page;
    // Coming back, what was unfolded is unfolded.
    page.press("button", "Take the shop’s prices").await?;
    page.see("textbox", "Taking apart and looking").await?;
    ensure(page.value("Taking apart and looking").await? == "400.00", "The shop’s terms are not filled in.")?;
    ensure(page.value("Putting back together, if refused").await?.is_empty(), "A price was made up.")?;
    page.press_in("Old parts", "radio", "Wanted back").await?;
    // A page that ends here has lost nothing, and says so.
    page.client.refresh().await?;
    page.read("Entered last time, not saved yet.").await?;
    ensure(page.value("Taking apart and looking").await? == "400.00", "The order that was begun is lost.")?;
    page.press("button", "Save the order").await?;
    page.read("476.00").await?;
    page.read("no price yet").await?;
    page.read("511.70").await?;
    page.press("button", "Strip-down order (PDF)").await?;
    let paper = stage.saved_document("strip-down-order.pdf").await?;
    holds(
        stage,
        &paper,
        &["Before the engine is opened", "Starter: Cracked flange", "Head gasket", "476.00", "14 days"],
    )
}

/// A yes by telephone counts with number, date and time alone (16 CCR 3356(e)).
async fn agree_by_telephone(stage: &Stage) -> Outcome {
    let page = &stage.page;
    page.press("button", "Save the answer").await?;
    page.read("Say whether the customer agreed or refused.").await?;
    page.press_in("The customer’s answer", "radio", "Agreed").await?;
    page.press_in("How", "radio", "By telephone").await?;
    page.fill("Name", "A. Harrow").await?;
    page.press("button", "Save the answer").await?;
    page.read("The number is missing").await?;
    page.fill("Number or address", "0100 200").await?;
    page.press("button", "Save the answer").await?;
    page.read("The customer agreed: it may be opened.").await?;
    page.read("A. Harrow, by telephone, 0100 200").await?;
    page.saved().await
}

async fn find_something(page: &Page) -> Outcome {
    let job = page.address().await?.trim_end_matches("/intake/past").to_owned();
    page.go(&format!("{job}/part/piston.1"), "Piston 1").await?;
    page.press("button", "Scuffing").await?;
    page.press("button", "Grade 3: …").await?;
    page.see("button", "Scuffing, grade 3").await?;
    page.saved().await
}

async fn refuse_the_work(stage: &Stage) -> Outcome {
    let page = &stage.page;
    page.sheet("Hand over").await?;
    page.press("button", "The customer refuses the work").await?;
    page.press("button", "Yes, the work is refused").await?;
    page.read("Say how the engine goes back").await?;
    page.press_in("The engine goes back", "radio", "In boxes").await?;
    page.press("button", "Yes, the work is refused").await?;
    page.read("The engine goes back: in boxes.").await?;
    page.press("button", "What goes back (PDF)").await?;
    let paper = stage.saved_document("what-goes-back.pdf").await?;
    holds(stage, &paper, &["Pistons", "Starter", "not yet", "511.70", "I have received all that is listed here."])?;
    page.sheet("Lists").await?;
    page.press("link", "To order…").await?;
    page.see("heading", "To order").await?;
    page.unfold_all().await?;
    page.read("The customer refused the work: the engine goes back.").await
}

async fn give_it_back(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.sheet("Hand over").await?;
    page.unfold_all().await?;
    page.read("Came with the engine, not given back: Starter").await?;
    page.press("checkbox", "Starter…").await?;
    page.read("Nothing is open.").await?;
    page.saved().await?;
    page.press("button", "Close the job").await?;
    page.read("This job is closed since").await?;
    page.saved().await?;
    stage.kill_and_restart().await?;
    let page = &stage.page;
    page.go("#/jobs", "Jobs").await?;
    page.press("button", "Finished: 1 job").await?;
    page.read("refused by the customer").await
}
