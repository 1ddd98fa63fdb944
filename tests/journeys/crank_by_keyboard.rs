//! A full crank by the keyboard alone, with what people type: commas, units, the Tab key; no pointer touches the page.

use fantoccini::key::Key;

use crate::crank::{AS_FOUND, all_found_are_on_record, enter_all};
use crate::failure::{Outcome, ensure};
use crate::keyboard_only::{enter, space};
use crate::page::Page;
use crate::stage::{Stage, on_both};

on_both!(enter_all, journey);

async fn journey(stage: &mut Stage) -> Outcome {
    let page = &stage.page;
    page.see("heading", "Main 1, journal").await?;
    enter(page, "link", "Measure").await?;
    waits_for(page, "Main 1, journal, front, A, in inches").await?;
    take_the_micrometer(page).await?;
    page.tab_to("textbox", "Main 1, journal, front, A, in inches").await?;
    for (nth, value) in AS_FOUND.iter().flat_map(|(_, values)| values).enumerate() {
        let (text, last) = typed(value, nth);
        page.type_out(&text).await?;
        page.key(last.into()).await?;
    }
    page.read("Nothing is missing.").await?;
    // What is typed after the last place waits until a place is chosen.
    page.type_out("2.25\n").await?;
    page.read("choose a place first").await?;
    for _ in 0..4 {
        page.key(Key::Backspace.into()).await?;
    }
    page.key(Key::Up.into()).await?;
    waits_for(page, "Crankpin 4…").await?;
    all_found_are_on_record(page, 36).await
}

/// The same length in the ways in which people write it, and the key that ends it.
fn typed(value: &str, nth: usize) -> (String, Key) {
    match nth % 4 {
        0 => (value.to_owned(), Key::Enter),
        1 => (value.to_owned(), Key::Tab),
        2 => (format!("{value} in"), Key::Enter),
        _ => (format!("{value}in"), Key::Tab),
    }
}

/// The pad has the keyboard and says for which place.
async fn waits_for(page: &Page, name: &str) -> Outcome {
    page.see("textbox", name).await?;
    let focus = page.focus().await?;
    ensure(focus.role == "textbox", format!("The pad waits for a number, but the keyboard is at {focus:?}."))
}

async fn take_the_micrometer(page: &Page) -> Outcome {
    enter(page, "button", "Set up: …").await?;
    page.tab_to_group("Instrument").await?;
    for _ in 0..5 {
        if page.focus().await?.name == "2 to 3 in micrometer" {
            break;
        }
        // Upwards: “No instrument” is the last of the list, and not every browser goes round.
        page.key(Key::Up.into()).await?;
    }
    page.key(' ').await?;
    page.see("button", "Set up: Diameter · as found · 2 to 3 in micrometer").await?;
    space(page, "button", "Set up: …").await
}
