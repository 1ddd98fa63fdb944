//! A full crank by the thumb: one line of the sheet entered by hand, then tap after tap on the keys of the pad.

use crate::crank::{AS_FOUND, all_found_are_on_record, choose_micrometer, enter_but_for_one_line};
use crate::failure::{Outcome, ensure};
use crate::page::Page;
use crate::stage::{Stage, on_both};

on_both!(enter_but_for_one_line, journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Main 1, journal").await?;
    enter_the_diameter_of_the_mains(page).await?;

    page.sheet("Plan").await?;
    page.press("link", "Main 1, journal, clean").await?;
    page.press("link", "Measure").await?;
    choose_micrometer(page).await?;
    for (journal, values) in AS_FOUND {
        page.see("heading", &format!("{journal}…")).await?;
        for value in values {
            tap(page, value).await?;
        }
    }
    page.read("Nothing is missing.").await?;

    put_one_right(page).await?;
    all_found_are_on_record(page, 38).await?;
    page.sheet("Sizes").await?;
    page.read("Grind all to 0.010 in undersize").await?;
    page.see("listitem", "held 5 × main bearing shells, pairs, 0.010 in undersize …").await
}

async fn enter_the_diameter_of_the_mains(page: &Page) -> Outcome {
    page.sheet("Spec sheet").await?;
    page.press("link", "Add a line").await?;
    page.select("Part", "Main journal").await?;
    page.fill("Smallest new, in", "2.999").await?;
    page.fill("Largest new, in", "3.000").await?;
    page.fill("Wear limit: at least, in", "2.9975").await?;
    page.fill("Page", "p. 12").await?;
    page.press("button", "Save the line").await?;
    page.see("heading", "Spec sheet").await?;
    page.unfold("Main journal…").await?;
    page.read("2.9975").await
}

/// The leading digits are the neighbour's; only the last two are tapped, where that is offered.
async fn tap(page: &Page, value: &str) -> Outcome {
    let (lead, rest) = value.split_at(value.len() - 2);
    let begin = format!("Begin with {lead}…");
    let digits = if page.has("button", &begin).await? {
        page.press("button", &begin).await?;
        rest
    } else {
        value
    };
    for digit in digits.chars() {
        let name = if digit == '.' { "Point".to_owned() } else { digit.to_string() };
        page.press("button", &name).await?;
    }
    page.press("button", "Next").await
}

/// A slip at a place is asked about, both readings are kept, and the odd one can be taken back.
async fn put_one_right(page: &Page) -> Outcome {
    page.press("button", "Rear, B …").await?;
    for key in ["2", "Point", "2", "9", "4", "2", "Next"] {
        page.press("button", key).await?;
    }
    page.read("Really 2.2942 in?").await?;
    page.press("button", "It is so: Crankpin 4…").await?;
    gone(page, "Really 2.2942 in?").await?;
    page.saved().await?;
    // Twice on record: as read, and as sure. Taken back, the first asks again; then that goes too.
    page.unfold("Readings…").await?;
    page.press("button", "Take back Rear, B: 2.2942 in").await?;
    page.read("Really 2.2942 in?").await?;
    page.press("button", "Take back Rear, B: 2.2942 in").await?;
    gone(page, "Really 2.2942 in?").await?;
    page.see("button", "Rear, B 2.2492 in").await
}

async fn gone(page: &Page, words: &str) -> Outcome {
    page.until(async || ensure(!page.text().await?.contains(words), format!("“{words}” did not go away."))).await
}
