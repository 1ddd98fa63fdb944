//! A full crank by a micrometer with a keyboard plug: digits and the Enter key without a pause, place after place. Then
//! the plan, the ground journals, and the held order becomes free.

use crate::crank::{AS_FOUND, AS_MACHINED, all_found_are_on_record, choose_micrometer, enter_all};
use crate::failure::{Outcome, ensure};
use crate::stage::{Stage, on_both};

on_both!(enter_all, journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Main 1, journal").await?;
    page.press("link", "Measure").await?;
    choose_micrometer(page).await?;
    // The keyboard is with the fold of the set-up now; the first digit must find its way all the same.
    let (mains, crankpins) = AS_FOUND.split_at(5);
    page.type_out(&burst(mains.iter().flat_map(|(_, values)| values))).await?;
    page.see("heading", "Crankpin 1…").await?;
    page.saved().await?;

    // Half done, the program is killed: it comes back to the next place, with the same micrometer in the hand.
    stage.kill_and_restart().await?;
    let page = &stage.page;
    page.see("textbox", "Crankpin 1 (cylinder 1 and 5), front, A, in inches").await?;
    page.see("button", "Set up: Diameter · as found · 2 to 3 in micrometer").await?;
    page.type_out(&burst(crankpins.iter().flat_map(|(_, values)| values))).await?;
    page.read("Nothing is missing.").await?;
    page.see("button", "Rear, B 2.2492 in").await?;
    all_found_are_on_record(page, 36).await?;

    page.sheet("Sizes").await?;
    page.read("Grind all to 0.010 in undersize").await?;
    page.see("listitem", "held 5 × main bearing shells, pairs, 0.010 in undersize …").await?;
    page.see("listitem", "free to order 8 × rod bearing shells, pairs, standard").await?;

    page.press("link", "Measure as machined: Main 1, journal").await?;
    page.see("button", "Set up: Diameter · as machined · 2 to 3 in micrometer").await?;
    page.type_out(&burst(AS_MACHINED.iter().flatten())).await?;
    page.see("heading", "Crankpin 1…").await?;
    page.see("button", "Front, A not read").await?;

    page.sheet("Sizes").await?;
    page.see("listitem", "free to order 5 × main bearing shells, pairs, 0.010 in undersize").await?;
    let text = page.text().await?;
    ensure(text.contains("all right"), format!("The mains that came back are not confirmed.\n{text}"))
}

/// What the plug sends: each value and the Enter key.
fn burst<'a>(values: impl Iterator<Item = &'a &'a str>) -> String {
    values.map(|value| format!("{value}\n")).collect()
}
